/** Settings as wanted and as set: the newest of what was set and measured under that name. */
import { decimal } from "../quantities/decimal.ts";
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge } from "../quantities/verdict.ts";
import type { NamedDefinition } from "./definitions.ts";
import { uncertaintyFor } from "./judgement.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact } from "./states.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

/** A setting as it was adjusted or found, in the terms of the one wanted: each side or both together. */
export interface AsSet {
  readonly values: readonly [Quantity, ...Quantity[]];
  readonly uncertainty: Quantity | undefined;
  readonly setup: NamedDefinition | undefined;
  readonly fact: DatedFact<"set" | "measured">;
}

export interface SettingCheck {
  readonly wanted: SourcedRecord<"setting">;
  /** Newest first; one for each setup. */
  readonly asSet: readonly AsSet[];
  /** What is of another kind than the setting, a length for an angle: it says nothing of it. */
  readonly unlike: readonly AsSet[];
  /** Of the newest; undefined where it was never set. */
  readonly verdict: Verdict | undefined;
}

/** Every setting that a thing asks for, with what was made of it. */
export function settingsOf(standing: Standing, node: TreeNode): readonly SettingCheck[] {
  return standing.definitions.all(node, "setting").map((wanted) => {
    const values = [...setValues(standing, node, wanted), ...readValues(standing, node, wanted)];
    const isUnlike = (one: AsSet) => verdictOf(one, wanted) === undefined;
    const newestFirst = values.filter((one) => !isUnlike(one)).sort((a, b) => b.fact.order - a.fact.order);
    const bySetup = new Map<NamedDefinition | undefined, AsSet>();
    for (const one of newestFirst) if (!bySetup.has(one.setup)) bySetup.set(one.setup, one);
    const [newest] = newestFirst;
    const verdict = newest && verdictOf(newest, wanted);
    return { wanted, asSet: [...bySetup.values()], unlike: values.filter(isUnlike), verdict };
  });
}

/** What one value proves about a setting; undefined where they cannot be compared. */
export function verdictOf(
  { values, uncertainty }: AsSet,
  { record }: SourcedRecord<"setting">,
): Verdict | undefined {
  return unlessFault(judge(values, uncertainty, boundsOf(record.limits), 0));
}

/** A setting without a tolerance is wanted exactly as written. */
function boundsOf(limits: Limits): Limits {
  const { lower, upper, nominal } = limits;
  return lower === undefined && upper === undefined && nominal !== undefined
    ? { lower: nominal, upper: nominal }
    : limits;
}

function setValues({ settings }: Standing, node: TreeNode, { record }: SourcedRecord<"setting">): AsSet[] {
  return [...(settings.get(node)?.values() ?? [])]
    .filter(({ name }) => name === record.name)
    .map(({ value, each, setup, gauge, fact }) => ({
      values: [inTermsOf(record.each, value, each)],
      uncertainty: uncertaintyFor(undefined, gauge, value),
      setup,
      fact,
    }));
}

/** A value of one side is half of the two together, and the other way round: toe. */
function inTermsOf(wantedEach: boolean, value: Quantity, each: boolean): Quantity {
  if (wantedEach === each) return value;
  return { ...value, value: each ? value.value.times(2) : value.value.div(decimal(2)), places: undefined };
}

function readValues(standing: Standing, node: TreeNode, { record }: SourcedRecord<"setting">): AsSet[] {
  const readings = standing.parts.get(node)?.item.readings ?? standing.readings.get(node) ?? [];
  return readings
    .filter(({ name }) => name === record.name)
    .map(({ values, uncertainty, setup, fact }) => ({ values, uncertainty, setup, fact }));
}
