/** The words nearest to one that was not understood, for "did you mean". */

/**
 * The candidates that are few changes away (a letter added, left out, replaced, or two swapped): none for a word of
 * two letters, one from three, two from six, and so on; nearest first, ties in the order given. Case counts half.
 */
export function nearest(word: string, candidates: Iterable<string>, most = 3): string[] {
  const reach = Math.max(0, Math.ceil((word.length - 2) / 3));
  const near: { readonly candidate: string; readonly distance: number }[] = [];
  const small = word.toLowerCase();
  for (const candidate of candidates) {
    if (candidate === word || Math.abs(candidate.length - word.length) > reach) continue;
    const plain = distance(small, candidate.toLowerCase(), reach);
    if (plain <= reach) near.push({ candidate, distance: plain === 0 ? 0.5 : plain });
  }
  return near
    .sort((a, b) => a.distance - b.distance)
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

/**
 * Optimal string alignment: the least number of single changes and swaps of neighbours from one to the other. Of words that
 * are further apart than `reach` it says no more than that, as most of those that are compared are after a few letters.
 */
function distance(from: string, to: string, reach: number): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  let leastBefore = 0;
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let best = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) best = Math.min(best, (beforeLast[column - 2] ?? 0) + 1);
      if (best < least) least = best;
      current.push(best);
    }
    // What follows is made of the last two rows: it is no less than the last, and more than the one before.
    if (least > reach && leastBefore >= reach) return least;
    leastBefore = least;
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
}
