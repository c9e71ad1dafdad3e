/** Limits that a `calc:` answers: one of the same name in the same block, or further down the branch of an assembly. */
import { unlessFault } from "../quantities/quantity-fault.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge } from "../quantities/verdict.ts";
import type { Calculation } from "./calculation.ts";
import { Calculator } from "./calculations.ts";
import { newestKnown } from "./characteristic.ts";
import { nearShare } from "./judgement.ts";
import type { Standing } from "./standing.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";
import { below } from "./tree/node.ts";

export interface CalculatedLimit {
  readonly limit: SourcedRecord<"limit">;
  readonly calculation: Calculation;
  /** Undefined where the calculation has no value, or one that the limit cannot judge. */
  readonly verdict: Verdict | undefined;
}

/** The limits of a thing that are judged by calculations; one that was measured is judged by its readings. */
export function calculatedLimits(standing: Standing, node: TreeNode): readonly CalculatedLimit[] {
  const limits = standing.definitions
    .all(node, "limit")
    .filter(({ record }) => newestKnown(standing, node, record.name) === undefined);
  if (limits.length === 0) return [];
  const calculator = new Calculator(standing);
  return limits.flatMap((limit) =>
    calculationsFor(standing, calculator, node, limit.record.name).map((calculation) => ({
      limit,
      calculation,
      verdict: verdictOn(standing, calculation, limit),
    })),
  );
}

function calculationsFor(
  standing: Standing,
  calculator: Calculator,
  node: TreeNode,
  name: string,
): readonly Calculation[] {
  const own = calculator.ofThing(node).filter((calculation) => calculation.name === name);
  if (own.length > 0 || node.kind !== "assembly") return own.slice(-1);
  return [...below(node)]
    .filter((inner) => standing.definitions.all(inner, "limit").every(({ record }) => record.name !== name))
    .flatMap((inner) => calculator.ofThing(inner).filter((calculation) => calculation.name === name));
}

function verdictOn(
  standing: Standing,
  { outcome }: Calculation,
  { record }: SourcedRecord<"limit">,
): Verdict | undefined {
  if (outcome.is !== "value" || outcome.value.kind !== "quantity") return undefined;
  return unlessFault(judge([outcome.value.quantity], undefined, record.limits, nearShare(standing)));
}
