/**
 * What came out as it did in the build before becomes the same object again: what was made of it (`Kept`) is then known
 * to hold.
 */
import { areSameDecimals } from "../../quantities/decimal.ts";
import type { Finding } from "../finding.ts";
import type { Differences } from "../memory.ts";
import type { TableName } from "../standing.ts";
import { TABLES } from "../standing.ts";
import type { Replay } from "./replay.ts";
import type { SharedTable } from "./state-table.ts";

/**
 * Both diaries have been read to their end: nothing of them changes any more.
 *
 * @param count so many findings were there before a day was read that is other
 * @param moments those that are kept of the new one
 * @returns what is other in each table
 */
export function takeOverWhatIsSame(
  replay: Replay,
  before: Replay,
  count: number,
  moments: readonly Replay[],
): Differences {
  const differences = new Map<TableName, readonly unknown[]>();
  for (const name of TABLES) {
    const [table, known] = [replay[name], before[name]] as [Table, Table];
    const ofMoments = moments.map((moment) => moment[name] as Table);
    const { differing, table: one } = table.takeOver(known, same, ofMoments);
    if (differing.length > 0) differences.set(name, differing);
    Object.assign(replay, { [name]: one });
  }
  replay.shareLost(before);
  const { findings } = replay;
  for (let index = count; index < findings.length; index++)
    findings[index] = same(findings[index] as Finding, before.findings[index]);
  return differences;
}

type Table = SharedTable<unknown, unknown>;

/**
 * The old value where the new one says the same; else the new one, with all in it that says the same as before. Plain
 * objects, lists and tables are looked into, as far as they are made anew with each reading of the diary.
 */
function same<Value>(value: Value, before: unknown): Value;
function same(value: unknown, before: unknown): unknown {
  if (value === before || !isObject(value) || !isObject(before)) return value;
  if (proven.get(value) === before) return before;
  const one = inside(value, before);
  if (one === before) proven.set(value, before);
  return one;
}

/** What was found to say the same as what: states come again from the moment where reading begins. */
const proven = new WeakMap<object, object>();

function inside(value: object, before: object): object {
  if (Array.isArray(value)) return Array.isArray(before) ? sameList(value, before) : value;
  if (value instanceof Map) return before instanceof Map ? sameTable(value, before) : value;
  if (areSameDecimals(value, before)) return before;
  return isMadeAnew(value) && isMadeAnew(before) ? sameFields(value, before) : value;
}

function sameList(list: readonly unknown[], before: readonly unknown[]): readonly unknown[] {
  let taken: unknown[] | undefined;
  let isSame = list.length === before.length;
  for (const [index, value] of list.entries()) {
    const one = same(value, before[index]);
    if (one !== value) {
      taken ??= [...list];
      taken[index] = one;
    }
    isSame &&= one === before[index];
  }
  return isSame ? before : (taken ?? list);
}

/** A table in a table of states. */
function sameTable(
  table: ReadonlyMap<unknown, unknown>,
  before: ReadonlyMap<unknown, unknown>,
): ReadonlyMap<unknown, unknown> {
  const entries = [...table].map(([key, value]) => [key, same(value, before.get(key))] as const);
  const known = before.entries();
  const isSame =
    entries.length === before.size &&
    entries.every(([key, value]) => {
      const [keyBefore, valueBefore] = known.next().value ?? [];
      return key === keyBefore && value === valueBefore;
    });
  return isSame ? before : new Map(entries);
}

function sameFields(value: Fields, before: Fields): Fields {
  let taken: Record<string, unknown> | undefined;
  const fields = Object.keys(value);
  let isSame = fields.length === Object.keys(before).length;
  for (const field of fields) {
    const one = same(value[field], before[field]);
    if (one !== value[field]) {
      taken ??= { ...value };
      taken[field] = one;
    }
    isSame &&= one === before[field];
  }
  return isSame ? before : (taken ?? value);
}

type Fields = Readonly<Record<string, unknown>>;

/** Nodes, definitions, blocks, facts as they are written and as they are dated are the same only as the same object. */
const LASTING = ["children", "records", "block", "word", "order"] as const;

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

function isMadeAnew(value: object): value is Fields {
  if (Object.getPrototypeOf(value) !== Object.prototype) return false;
  return LASTING.every((field) => !(field in value));
}
