/** What is asked of things: limits, torques and all other records, as they are in force today at both revisions. */
import type { BlockWord } from "../../../grammar/syntax.ts";
import { entriesIn } from "../../../grammar/vocabulary/vocabulary.ts";
import type { Build } from "../../build/build.ts";
import { torqueLimits } from "../../build/joint-torque.ts";
import type { DefinitionRecord, RecordWord } from "../../build/lowering/definition-record.ts";
import { recordKey } from "../../build/lowering/definition-record.ts";
import { placeAt, textAt } from "../../build/source.ts";
import type { SourcedRecord } from "../../build/tree/node.ts";
import type { Limits } from "../../quantities/limits.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { compare, equal } from "../../quantities/quantity.ts";
import type { Change, ChangeKind } from "./change.ts";
import { change, inAfter, inBefore } from "./change.ts";
import type { PairedThings, Thing } from "./things.ts";
import { spaced } from "./things.ts";
import type { Wording } from "./wording.ts";

/** A build, and how its lines read with every reference in full. */
export interface WordedBuild {
  readonly build: Build;
  readonly wording: Wording;
}

export function definitionChanges(before: WordedBuild, after: WordedBuild, { both }: PairedThings): Change[] {
  const root = { before: vehicleOf(before.build), after: vehicleOf(after.build) };
  return [root, ...both].flatMap((pair) =>
    new ThingComparison(before, after, pair.before, pair.after).changes(),
  );
}

function vehicleOf({ standing: { gathered } }: Build): Thing {
  const { root } = gathered.tree;
  const { title, header, path } = root;
  const records = gathered.written.records(root);
  // A build without a vehicle has no records of one, so its header is never shown.
  return { what: "vehicle", ref: path, title, header, records, node: root, named: undefined } as Thing;
}

class ThingComparison {
  private readonly before: WordedBuild;
  private readonly after: WordedBuild;
  private readonly old: Thing;
  private readonly later: Thing;

  constructor(before: WordedBuild, after: WordedBuild, old: Thing, later: Thing) {
    this.before = before;
    this.after = after;
    this.old = old;
    this.later = later;
  }

  changes(): Change[] {
    const [was, is] = [byKey(this.before.build, this.old), byKey(this.after.build, this.later)];
    const keys = new Set([...was.keys(), ...is.keys()]);
    return [
      ...this.titleChanges(),
      ...[...keys].flatMap((key) => this.recordChanges(was.get(key) ?? [], is.get(key) ?? [])),
    ];
  }

  private titleChanges(): Change[] {
    const [was, is] = [this.old.title, this.later.title];
    if (was === is) return [];
    const quoted = (title: string | undefined) => title && `"${title}"`;
    const at = inAfter(this.later.header);
    return [
      change({ ...this.about(), kind: "definition-changed", before: quoted(was), after: quoted(is), at }),
    ];
  }

  private about(): Pick<Change, "ref" | "what" | "title"> {
    const { ref, what, title } = this.later;
    return { ref, what, title };
  }

  /** Of one word and name: records that are in both are left out, the others paired in order. */
  private recordChanges(was: readonly SourcedRecord[], is: readonly SourcedRecord[]): Change[] {
    const texts = {
      was: was.map((record) => this.before.wording.of(placeOf(record))),
      is: is.map((record) => this.after.wording.of(placeOf(record))),
    };
    const gone = was.filter((_, index) => !texts.is.includes(texts.was[index] as string));
    const come = is.filter((_, index) => !texts.was.includes(texts.is[index] as string));
    return Array.from({ length: Math.max(gone.length, come.length) }, (_, index) =>
      this.recordChange(gone[index], come[index]),
    ).flat();
  }

  private recordChange(old: SourcedRecord | undefined, later: SourcedRecord | undefined): Change[] {
    const kind = this.kindOf(old, later);
    if (kind === undefined) return [];
    return [
      change({
        ...this.about(),
        kind,
        before: old && sayRecord(old),
        after: later && sayRecord(later),
        standsOut: standsOut(kind, old),
        at: later === undefined ? inBefore(old && placeOf(old)) : inAfter(placeOf(later)),
      }),
    ];
  }

  /** Undefined where both say the same in other words. */
  private kindOf(old: SourcedRecord | undefined, later: SourcedRecord | undefined): ChangeKind | undefined {
    const word = (later ?? old)?.record.word;
    if (word === "torque")
      return old !== undefined && later !== undefined && this.isSameTorque(old.record, later.record)
        ? undefined
        : "torque-changed";
    if (word === "limit" && old === undefined) return "limit-added";
    if (word === "limit" && later === undefined) return "limit-removed";
    const [was, is] = [old && limitsOf(old.record), later && limitsOf(later.record)];
    if (was === undefined || is === undefined) return "definition-changed";
    return ofLimits(was, is, word === "limit");
  }

  private isSameTorque(was: DefinitionRecord, is: DefinitionRecord): boolean {
    const [old, later] = [this.old.node, this.later.node];
    if (was.word !== "torque" || is.word !== "torque" || old === undefined || later === undefined)
      return false;
    if (was.torque.form !== "limits" || is.torque.form !== "limits")
      return was.torque.form === is.torque.form;
    if (was.torque.toSlot !== is.torque.toSlot || !sameQuantity(was.torque.then, is.torque.then))
      return false;
    const first = torqueLimits(this.before.build.standing, old);
    const second = torqueLimits(this.after.build.standing, later);
    return (
      first !== undefined &&
      second !== undefined &&
      sameQuantity(first.lower, second.lower) &&
      sameQuantity(first.upper, second.upper)
    );
  }
}

/** The records in force, by word and name. */
function byKey({ standing }: Build, { what, node, records }: Thing): ReadonlyMap<string, SourcedRecord[]> {
  const inForce =
    node === undefined
      ? records
      : entriesIn(what as BlockWord).flatMap(({ word }) =>
          word === "today" ? [] : standing.definitions.all(node, word as RecordWord),
        );
  const grouped = new Map<string, SourcedRecord[]>();
  for (const record of inForce) {
    const key = recordKey(record.record);
    const same = grouped.get(key);
    if (same === undefined) grouped.set(key, [record]);
    else same.push(record);
  }
  return grouped;
}

function placeOf({ site, record: { at } }: SourcedRecord) {
  return placeAt(site, at);
}

/** `thickness min 8.4 mm` of a limit, else the word before it: `lock split_pin`. */
function sayRecord(sourced: SourcedRecord): string {
  const { word } = sourced.record;
  const text = spaced(textAt(placeOf(sourced)));
  const value = text.slice(word.length).replace(/^\s*:/, "").trim();
  return word === "limit" || word === "torque" ? value : `${word} ${value}`;
}

function limitsOf(record: DefinitionRecord): Limits | undefined {
  if (record.word === "pair") return { upper: record.within };
  return "limits" in record ? record.limits : undefined;
}

/** @param strict whether what is moved without being widened is loosened too: a setting is moved on purpose */
function ofLimits(was: Limits, is: Limits, strict: boolean): ChangeKind | undefined {
  const moved = [outwards(was.upper, is.upper, 1), outwards(was.lower, is.lower, -1)];
  if (moved.some(Number.isNaN)) return "definition-changed";
  const [looser, tighter] = [moved.some((by) => by > 0), moved.some((by) => by < 0)];
  if (looser && (strict || !tighter)) return "limit-loosened";
  if (tighter && !looser) return "limit-tightened";
  if (looser || !sameQuantity(was.fresh, is.fresh) || !sameQuantity(was.nominal, is.nominal))
    return "definition-changed";
  return undefined;
}

/**
 * Above zero where a bound lets more through, or is there no longer.
 * @param outward 1 of an upper bound, -1 of a lower one
 */
function outwards(was: Quantity | undefined, is: Quantity | undefined, outward: 1 | -1): number {
  if (was === undefined || is === undefined) return Number(was !== undefined) - Number(is !== undefined);
  const order = compare(is, was);
  return typeof order === "number" ? order * outward : Number.NaN;
}

function sameQuantity(one: Quantity | undefined, other: Quantity | undefined): boolean {
  return one === undefined || other === undefined ? one === other : equal(one, other);
}

/** What guards against harm; less of it is seen first. */
const GUARDS: ReadonlySet<RecordWord> = new Set<RecordWord>([
  "safety",
  "second_check",
  "single_use",
  "lock",
  "mark",
  "life",
  "expires",
  "recheck",
  "test",
]);

function standsOut(kind: ChangeKind, old: SourcedRecord | undefined): boolean {
  if (kind === "definition-changed") return old !== undefined && GUARDS.has(old.record.word);
  if (kind === "torque-changed") return old !== undefined;
  return kind === "limit-loosened" || kind === "limit-removed";
}
