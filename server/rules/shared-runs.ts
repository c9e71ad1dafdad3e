/** What two lists share, in the same order: to tell what has come and gone at the price of looking at each item once. */

/** A stretch that both lists have. */
export interface Run {
  /** Where it begins in the list before. */
  readonly then: number;
  /** Where it begins in the list now. */
  readonly now: number;
  readonly length: number;
}

/** So many items may have come or gone in a row before what lies behind them is only looked for from the end. */
const FAR = 64;

type IsSame<T> = (one: T, other: T) => boolean;

export function sharedRuns<T>(
  before: readonly T[],
  now: readonly T[],
  isSame: IsSame<T> = isIdentical,
): readonly Run[] {
  const runs: Run[] = [];
  let next: Omit<Run, "length"> | undefined = { then: 0, now: 0 };
  while (next !== undefined) {
    const length = lengthOfRun(before, now, next, isSame);
    if (length > 0) runs.push({ ...next, length });
    const end: Omit<Run, "length"> = { then: next.then + length, now: next.now + length };
    next = nextShared(before, now, end, isSame);
    if (next === undefined) runs.push(...sharedEnd(before, now, end, isSame));
  }
  return runs;
}

function isIdentical(one: unknown, other: unknown): boolean {
  return one === other;
}

function lengthOfRun<T>(
  before: readonly T[],
  now: readonly T[],
  from: Omit<Run, "length">,
  isSame: IsSame<T>,
): number {
  const most = Math.min(before.length - from.then, now.length - from.now);
  let length = 0;
  while (length < most && isSame(before[from.then + length] as T, now[from.now + length] as T)) length++;
  return length;
}

/** The nearest items behind a place that are the same. */
function nextShared<T>(
  before: readonly T[],
  now: readonly T[],
  from: Omit<Run, "length">,
  isSame: IsSame<T>,
): Omit<Run, "length"> | undefined {
  const goneAtMost = Math.min(FAR, before.length - from.then - 1);
  const comeAtMost = Math.min(FAR, now.length - from.now - 1);
  for (let both = 1; both <= goneAtMost + comeAtMost; both++) {
    for (let gone = Math.max(0, both - comeAtMost); gone <= Math.min(both, goneAtMost); gone++) {
      const [then, at] = [from.then + gone, from.now + both - gone];
      if (isSame(before[then] as T, now[at] as T)) return { then, now: at };
    }
  }
  return undefined;
}

/** What the lists share at their ends, behind a place. */
function sharedEnd<T>(
  before: readonly T[],
  now: readonly T[],
  from: Omit<Run, "length">,
  isSame: IsSame<T>,
): readonly Run[] {
  const most = Math.min(before.length - from.then, now.length - from.now);
  let length = 0;
  let [then, at] = [before.length, now.length];
  while (length < most && isSame(before[then - 1] as T, now[at - 1] as T)) {
    length++;
    then--;
    at--;
  }
  return length === 0 ? [] : [{ then, now: at, length }];
}

/** Puts what belongs to the shared items of the list before in the places of those of the list now. */
export function carryOver<T>(runs: readonly Run[], before: readonly T[], into: T[]): void {
  for (const { then, now, length } of runs)
    for (let index = 0; index < length; index++) into[now + index] = before[then + index] as T;
}

/** The indexes of a list of this length that lie in no run. */
export function outside(runs: readonly Run[], side: "then" | "now", length: number): readonly number[] {
  const indexes: number[] = [];
  let index = 0;
  for (const run of runs) {
    while (index < run[side]) indexes.push(index++);
    index += run.length;
  }
  while (index < length) indexes.push(index++);
  return indexes;
}
