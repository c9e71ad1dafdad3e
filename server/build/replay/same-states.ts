/**
 * States that came out as they did in the build before become the same objects again: what was made of them (`Kept`) is
 * then known to hold.
 */
import type { Replay } from "./replay.ts";

/** Tables of states, which are made anew for each reading of the diary. */
const STATES = [
  "parts",
  "joints",
  "systems",
  "snags",
  "jobs",
  "holds",
  "gauges",
  "supply",
] as const satisfies readonly (keyof Replay)[];

/** Tables of tables. */
const NESTED = ["settings", "tests", "holdTests"] as const satisfies readonly (keyof Replay)[];

/** Tables of what never changes. */
const LASTING = ["readings", "calculated", "disturbed"] as const satisfies readonly (keyof Replay)[];

/**
 * Both diaries have been read to their end: none of their states changes any more. A table of which all states are the
 * same becomes the same as a whole.
 */
export function takeOverSameStates(replay: Replay, before: Replay): void {
  for (const name of STATES) takeOver<object>(replay[name], before[name], areSame);
  for (const name of NESTED)
    takeOver<ReadonlyMap<unknown, unknown>>(replay[name], before[name], areSameTables);
  for (const name of [...STATES, ...NESTED, ...LASTING])
    if (areSameTables(replay[name], before[name])) Object.assign(replay, { [name]: before[name] });
}

function takeOver<State>(
  states: ReadonlyMap<unknown, State>,
  before: ReadonlyMap<unknown, State>,
  areSame: (one: State, other: State) => boolean,
): void {
  for (const [key, state] of states) {
    const known = before.get(key);
    if (known !== undefined && known !== state && areSame(state, known))
      (states as Map<unknown, State>).set(key, known);
  }
}

/** What a state holds is replaced, never changed in place: the same object says the same. */
function areSame(one: object, other: object): boolean {
  const ours = one as Readonly<Record<string, unknown>>;
  const theirs = other as Readonly<Record<string, unknown>>;
  for (const field in ours) if (ours[field] !== theirs[field]) return false;
  return true;
}

/** The same values under the same keys, in the same order. */
function areSameTables(one: ReadonlyMap<unknown, unknown>, other: ReadonlyMap<unknown, unknown>): boolean {
  if (one === other) return true;
  if (one.size !== other.size) return false;
  const others = other.entries();
  for (const [key, value] of one) {
    const [otherKey, otherValue] = others.next().value ?? [];
    if (key !== otherKey || value !== otherValue) return false;
  }
  return true;
}
