/** Ends of the server that nobody asked for: a few are accidents, many in a short time are not. */

/** More ends than these within so many ms are no accident. */
const MOST = 4;
const WITHIN = 3 * 60_000;

export class Accidents {
  private ends: readonly number[] = [];

  /** Takes note of an end. True while it may pass for an accident. @param now ms */
  another(now: number): boolean {
    this.ends = [...this.ends, now].filter((end) => end > now - WITHIN);
    return this.ends.length <= MOST;
  }
}
