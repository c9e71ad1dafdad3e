/** Readings against limits: the verdict of the newest reading of an item, with the definitions in force. */
import type { Decimal } from "../quantities/decimal.ts";
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { add, asDifference, hasDimension } from "../quantities/quantity.ts";
import type { QuantityFault } from "../quantities/quantity-fault.ts";
import { isFault, unlessFault } from "../quantities/quantity-fault.ts";
import { expandedFromResolution, gaugeUncertainty, uncertaintyOf } from "../quantities/uncertainty.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge, judgeExactly } from "../quantities/verdict.ts";
import type { NamedDefinition } from "./definitions.ts";
import { NEAR_SHARE } from "./figures.ts";
import type { DefinitionRecord, RecordWord } from "./lowering/definition-record.ts";
import type { LoweredFact } from "./lowering/fact.ts";
import { Remembered } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import type { Item, Reading } from "./states.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "gathered">;

/** A limit record and what a reading proves about it. */
export interface JudgedLimit {
  readonly limit: SourcedRecord<"limit">;
  readonly reading: Reading;
  readonly verdict: Verdict;
}

/** The limits of a characteristic that can be judged: those whose dimension is the reading's. */
export function judgeReading(standing: Defined, reading: Reading): readonly JudgedLimit[] {
  const near = nearShare(standing);
  return standing.definitions
    .all(reading.node, "limit")
    .filter(({ record }) => record.name === reading.name)
    .flatMap((limit) => {
      const verdict = verdictOn(reading, limit.record, near);
      return verdict === undefined ? [] : [{ limit, reading, verdict }];
    });
}

/** Verdicts by the record of the limit, which the readings of many things may share, and by the fact of the reading. */
const verdicts = new WeakMap<DefinitionRecord<"limit">, Remembered<LoweredFact, Verdict | undefined>>();

function verdictOn(
  { values, gauge, fact: { fact } }: Reading,
  limit: DefinitionRecord<"limit">,
  near: Decimal,
): Verdict | undefined {
  const ofLimit = verdicts.get(limit) ?? new Remembered<LoweredFact, Verdict | undefined>();
  verdicts.set(limit, ofLimit);
  return ofLimit.of(fact, [near, gauge && precisionOf(gauge)], () => {
    const uncertainty = (value: Quantity) => uncertaintyFor(fact.uncertainty, gauge, value);
    return unlessFault(judge(values, uncertainty, limit.limits, near));
  });
}

type Precision = DefinitionRecord<"uncertainty"> | DefinitionRecord<"resolution">;

/** The record of a gauge from which its uncertainty follows. */
export function precisionOf(gauge: NamedDefinition): Precision | undefined {
  return recordOf(gauge, "uncertainty") ?? recordOf(gauge, "resolution");
}

/** The share of a limit's zone below which a reading is near: the vehicle's `near:`, else the usual figure. */
export function nearShare({ definitions, gathered }: Defined): Decimal {
  return definitions.one(gathered.tree.root, "near")?.record.share ?? NEAR_SHARE;
}

/**
 * The readings that count, by characteristic and setup: the newest of the whole, and those of single spots (`at "…"`)
 * since. A reading at one spot says nothing of another, and one under a setup nothing of another setup, so neither
 * overtakes the other; a reading that names no spot is of the whole and overtakes them all.
 */
export function newestReadings({ readings }: Pick<Item, "readings">): readonly Reading[] {
  const known = remembered.get(readings);
  if (known !== undefined) return known;
  const newest = newestAmong(readings);
  remembered.set(readings, newest);
  return newest;
}

const remembered = new WeakMap<readonly Reading[], readonly Reading[]>();

function newestAmong(readings: readonly Reading[]): readonly Reading[] {
  const newest = new Map<string, Map<string, Reading>>();
  for (const reading of readings) {
    const { spot } = reading.fact.fact;
    const key = `${reading.name} ${reading.setup?.name ?? ""}`;
    const known = newest.get(key);
    if (known === undefined || spot === undefined) newest.set(key, new Map([[spot ?? "", reading]]));
    else known.set(spot, reading);
  }
  return [...newest.values()].flatMap((spots) => [...spots.values()]);
}

/** The newest reading of each limited characteristic of a part's item that is outside a limit. */
export function outsideLimits(standing: Defined, item: Item): readonly JudgedLimit[] {
  return newestReadings(item)
    .flatMap((reading) => judgeReading(standing, reading))
    .filter(({ verdict }) => verdict.verdict === "outside");
}

/** Expanded uncertainty of a reading: what it states, else its gauge's, else that of the gauge's resolution, else none. */
export function uncertaintyFor(
  stated: Quantity | undefined,
  gauge: NamedDefinition | undefined,
  reading: Quantity,
): Quantity | undefined {
  const precision = gauge && precisionOf(gauge);
  return uncertainties.of(reading, [stated, precision], () => uncertaintyAfresh(stated, precision, reading));
}

/** What was last said of each reading: a diary says the same few figures over and over. */
const uncertainties = new Remembered<Quantity, Quantity | undefined>();

function uncertaintyAfresh(
  stated: Quantity | undefined,
  precision: Precision | undefined,
  reading: Quantity,
): Quantity | undefined {
  const uncertainty = unlessFault(uncertaintyKnown(stated, precision, reading));
  if (uncertainty === undefined) return undefined;
  // A gauge for something else has nothing to say of this reading.
  return isFault(add(asDifference(reading), asDifference(uncertainty))) ? undefined : uncertainty;
}

function uncertaintyKnown(
  stated: Quantity | undefined,
  precision: Precision | undefined,
  reading: Quantity,
): Quantity | QuantityFault | undefined {
  const whole = stated ?? (precision?.word === "uncertainty" ? precision.quantity : undefined);
  if (whole !== undefined) {
    // A share of a reading that is itself in percent is in points.
    return hasDimension(reading, "ratio")
      ? asDifference(whole)
      : uncertaintyOf(gaugeUncertainty(whole), reading);
  }
  return precision && expandedFromResolution(precision.quantity);
}

/** The last record of a word in a named definition. */
export function recordOf<W extends RecordWord>(
  definition: NamedDefinition,
  word: W,
): DefinitionRecord<W> | undefined {
  const found = definition.records.findLast(({ record }) => record.word === word);
  return found?.record as DefinitionRecord<W> | undefined;
}

/** Every record of a word in a named definition. */
export function recordsOf<W extends RecordWord>(
  { records }: NamedDefinition,
  word: W,
): readonly DefinitionRecord<W>[] {
  const found: readonly DefinitionRecord[] = records
    .map(({ record }) => record)
    .filter((record) => record.word === word);
  return found as unknown as readonly DefinitionRecord<W>[];
}

/** The ranges that a gauge states. */
export function rangesOf(gauge: NamedDefinition): readonly Limits[] {
  return recordOf(gauge, "reads")?.ranges ?? [];
}

/** Whether a gauge can read a value: within one of the ranges it states; undefined where it states none. */
export function gaugeReads(gauge: NamedDefinition, value: Quantity): boolean | undefined {
  const ranges = rangesOf(gauge);
  if (ranges.length === 0) return undefined;
  return ranges.some((range) => {
    const verdict = judgeExactly(value, range);
    return !isFault(verdict) && verdict.verdict !== "outside";
  });
}

/** The limits of a thing that no reading of its item has answered, and that no `calc:` of its own answers. */
export function unmeasuredLimits(
  standing: Defined,
  node: TreeNode,
  { readings }: Pick<Item, "readings">,
): readonly SourcedRecord<"limit">[] {
  const answered = new Set([
    ...readings.map(({ name }) => name),
    ...standing.definitions.all(node, "calc").map(({ record }) => record.name),
  ]);
  return standing.definitions.all(node, "limit").filter(({ record }) => !answered.has(record.name));
}
