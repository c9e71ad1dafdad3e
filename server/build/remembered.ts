/**
 * A result kept with what it was made from: as long as every input is the same object or value, it is not computed
 * again. Lowered facts and records stay the same objects from one derivation to the next while their block is untouched,
 * so what is kept with them survives an edit elsewhere, and goes when they go.
 */
export class Remembered<Key extends object, Result> {
  private readonly kept = new WeakMap<
    Key,
    { readonly inputs: readonly unknown[]; readonly result: Result }
  >();

  /** The result kept with a key, if it was made from these inputs; else it is computed and kept. */
  of(key: Key, inputs: readonly unknown[], compute: () => Result): Result {
    const known = this.kept.get(key);
    if (known !== undefined && isSame(known.inputs, inputs)) return known.result;
    const result = compute();
    this.kept.set(key, { inputs, result });
    return result;
  }
}

/** What is kept under a key: it is made the first time that it is asked for. */
export function madeOnce<Key, Made>(
  kept: {
    readonly get: (key: Key) => Made | undefined;
    readonly set: (key: Key, made: Made) => unknown;
  },
  key: Key,
  make: () => Made,
): Made {
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = make();
  kept.set(key, made);
  return made;
}

/** Whether two lists hold the same objects and values, in the same order. */
export function isSame(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one === other) return true;
  if (one.length !== other.length) return false;
  for (let index = 0; index < one.length; index++) if (one[index] !== other[index]) return false;
  return true;
}

/** How many objects and values two lists begin with alike. */
export function sharedBeginning(one: readonly unknown[], other: readonly unknown[]): number {
  const most = Math.min(one.length, other.length);
  let count = 0;
  while (count < most && one[count] === other[count]) count++;
  return count;
}

/**
 * How many items two lists have alike at their beginnings, and at their ends beyond that.
 *
 * @param isKept whether an item of the list before is the one of the list now, by their indexes
 */
export function sharedEnds(
  before: { readonly length: number },
  now: { readonly length: number },
  isKept: (then: number, now: number) => boolean,
): { readonly start: number; readonly end: number } {
  const most = Math.min(before.length, now.length);
  let start = 0;
  while (start < most && isKept(start, start)) start++;
  let end = 0;
  while (end < most - start && isKept(before.length - 1 - end, now.length - 1 - end)) end++;
  return { start, end };
}
