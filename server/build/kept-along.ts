/**
 * Results along a list that changes little from one time to the next: only of what has come into it they are made. It
 * costs less than to ask for each item what is kept with it.
 */
import { isSame, sharedEnds } from "./remembered.ts";

interface Along<Result> {
  readonly inputs: readonly unknown[];
  readonly lists: readonly (readonly unknown[])[];
  readonly results: readonly Result[];
}

export class KeptAlong<Result> {
  private readonly kept = new WeakMap<object, Along<Result>>();

  /**
   * The results for each index of some lists of one length.
   *
   * @param key what the lists are of: it stays the same object as they change
   * @param inputs what all results are made from besides
   * @param lists what the result of an index is made from is at this index in each of them
   */
  of(
    key: object,
    inputs: readonly unknown[],
    lists: readonly [readonly unknown[], ...(readonly unknown[])[]],
    make: (index: number) => Result,
  ): readonly Result[] {
    const known = this.kept.get(key);
    const before = known !== undefined && isSame(known.inputs, inputs) ? known : undefined;
    if (before !== undefined && isSame(before.lists, lists)) return before.results;
    const results = goneOnFrom(before, lists, make);
    this.kept.set(key, { inputs, lists, results });
    return results;
  }
}

function goneOnFrom<Result>(
  before: Along<Result> | undefined,
  lists: readonly [readonly unknown[], ...(readonly unknown[])[]],
  make: (index: number) => Result,
): readonly Result[] {
  const { length } = lists[0];
  const { results: known, lists: then } = before ?? { results: [], lists: [] };
  const { start, end } = sharedEnds(known, lists[0], (old, index) => {
    for (let nth = 0; nth < lists.length; nth++) if (lists[nth]?.[index] !== then[nth]?.[old]) return false;
    return true;
  });
  const results = known.slice(0, start);
  for (let index = start; index < length - end; index++) results.push(make(index));
  for (let index = known.length - end; index < known.length; index++) results.push(known[index] as Result);
  return results;
}
