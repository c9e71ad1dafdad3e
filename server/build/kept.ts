/**
 * Verdicts kept from one build to the next, for as long as everything that they looked at is as it was: a state that
 * nothing has touched stays the same object, and so does a definition.
 */
import type { Finding } from "./finding.ts";
import { Lookups } from "./lookups.ts";
import { isSame } from "./remembered.ts";
import { Review } from "./review.ts";
import type { Standing } from "./standing.ts";

export class Kept<Key extends object, Result> {
  private readonly kept = new WeakMap<
    Key,
    { readonly inputs: readonly unknown[]; readonly lookups: Lookups; readonly result: Result }
  >();

  /**
   * The result kept with a key, if it would be the same again; else it is computed. While a diary is still being read
   * its states change under one's hands, and nothing is kept.
   *
   * @param inputs what it is made from besides what it looks up in the standing that it is given
   */
  of<S extends Standing>(
    standing: S,
    key: Key,
    inputs: readonly unknown[],
    compute: (standing: S | Review) => Result,
  ): Result {
    if (!(standing instanceof Review) || !standing.keeps) return compute(standing);
    const { source } = standing;
    const known = this.kept.get(key);
    if (known !== undefined && isSame(known.inputs, inputs) && known.lookups.holdIn(source))
      return known.result;
    const lookups = new Lookups(source);
    const result = compute(new Review(lookups.noteIn(source), true));
    lookups.close();
    this.kept.set(key, { inputs, lookups, result });
    return result;
  }
}

/** Complaints that are made again as they are, for as long as they would be the same. */
export function complainOnce<Key extends object>(
  kept: Kept<Key, readonly Finding[]>,
  review: Review,
  key: Key,
  inputs: readonly unknown[],
  complain: (review: Review) => void,
): void {
  const complaints = kept.of(review, key, inputs, (own) => complaintsIn(own, complain));
  for (const finding of complaints) review.findings.push(finding);
}

const NOTHING: readonly Finding[] = [];

/** What is complained of in a computation. */
export function complaintsIn(review: Review, complain: (review: Review) => void): readonly Finding[] {
  const { findings } = review;
  const before = findings.length;
  complain(review);
  return findings.length === before ? NOTHING : findings.splice(before);
}
