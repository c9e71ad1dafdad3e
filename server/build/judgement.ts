/** Readings against limits: the verdict of the newest reading of an item, with the definitions in force. */
import { decimal } from "../quantities/decimal.ts";
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { expandedFromResolution, gaugeUncertainty, uncertaintyOf } from "../quantities/uncertainty.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge } from "../quantities/verdict.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { DefinitionRecord, RecordWord } from "./lowering/definition-record.ts";
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
  return standing.definitions
    .all(reading.node, "limit")
    .filter(({ record }) => record.name === reading.name)
    .flatMap((limit) => {
      const verdict = judge(reading.values, reading.uncertainty, limit.record.limits, nearShare(standing));
      return isFault(verdict) ? [] : [{ limit, reading, verdict }];
    });
}

/** The share of a limit's zone below which a reading is near: the vehicle's `near:`, else 10 %. */
export function nearShare({ definitions, gathered }: Defined) {
  return definitions.one(gathered.tree.root, "near")?.record.share ?? DEFAULT_NEAR;
}

const DEFAULT_NEAR = decimal("0.1");

/** The newest reading of each characteristic of an item. */
export function newestReadings(item: Item): readonly Reading[] {
  return [...new Map(item.readings.map((reading) => [reading.name, reading])).values()];
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
  if (stated !== undefined) return stated;
  if (gauge === undefined) return undefined;
  const uncertainty = recordOf(gauge, "uncertainty");
  if (uncertainty !== undefined) {
    const read = uncertaintyOf(gaugeUncertainty(uncertainty.quantity), reading);
    return isFault(read) ? undefined : read;
  }
  const resolution = recordOf(gauge, "resolution");
  return resolution && expandedFromResolution(resolution.quantity);
}

/** The last record of a word in a named definition. */
export function recordOf<W extends RecordWord>(
  definition: NamedDefinition,
  word: W,
): DefinitionRecord<W> | undefined {
  return recordsOf(definition, word).at(-1);
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

/** Whether a gauge can read a value: within one of the ranges it states, or it states none of that dimension. */
export function gaugeReads(gauge: NamedDefinition, value: Quantity): boolean | undefined {
  const verdicts = (recordOf(gauge, "reads")?.ranges ?? []).flatMap((range: Limits) => {
    const verdict = judge([value], undefined, range, 0);
    return isFault(verdict) ? [] : [verdict.verdict !== "outside"];
  });
  return verdicts.length === 0 ? undefined : verdicts.includes(true);
}

/** The limits of a thing's characteristic that no reading of its item has answered. */
export function unmeasuredLimits(
  standing: Defined,
  node: TreeNode,
  item: Item,
): readonly SourcedRecord<"limit">[] {
  const measured = new Set(item.readings.map(({ name }) => name));
  return standing.definitions.all(node, "limit").filter(({ record }) => !measured.has(record.name));
}
