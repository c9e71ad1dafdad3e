/** Fits: a clearance or interference between two things that are measured or sized. */
import type { Quantity } from "../quantities/quantity.ts";
import { convert, subtract } from "../quantities/quantity.ts";
import { isFault, unlessFault } from "../quantities/quantity-fault.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge } from "../quantities/verdict.ts";
import { Calculator } from "./calculations.ts";
import type { Characteristic } from "./characteristic.ts";
import { combinedUncertainty, isQuantity } from "./characteristic.ts";
import type { Standing } from "./standing.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

export interface JudgedFit {
  readonly record: SourcedRecord<"fit">;
  /** What goes in. */
  readonly inner: Characteristic;
  /** What it goes into. */
  readonly outer: Characteristic;
  readonly outerNode: TreeNode;
  readonly outerName: string;
  /** Clearance or interference, as the fit says it, in the unit of its limits. */
  readonly actual: Quantity;
  readonly verdict: Verdict;
}

/** The fits of a thing that can be judged: both sides are known, and one at least was measured. */
export function fitsOf(standing: Standing, node: TreeNode): readonly JudgedFit[] {
  return standing.definitions.all(node, "fit").flatMap((record) => {
    const judged = judgeFit(standing, node, record);
    return judged === undefined ? [] : [judged];
  });
}

function judgeFit(standing: Standing, node: TreeNode, record: SourcedRecord<"fit">): JudgedFit | undefined {
  const { name, other, sense, limits } = record.record;
  const { node: outerNode, name: outerName } = standing.names.member(
    standing.definitions,
    other,
    record.turns,
  );
  if (outerNode === undefined) return undefined;
  const calculator = new Calculator(standing);
  const inner = calculator.characteristic(node, name);
  const outer = calculator.characteristic(outerNode, outerName);
  if (!isQuantity(inner) || !isQuantity(outer)) return undefined;
  // Two nominal sizes are the same figure as a rule, and say nothing of the two parts.
  if (inner.fact === undefined && outer.fact === undefined) return undefined;
  const actual =
    sense === "clearance" ? subtract(outer.value, inner.value) : subtract(inner.value, outer.value);
  const unit = (limits.upper ?? limits.lower ?? limits.nominal)?.unit;
  if (unit === undefined || isFault(actual)) return undefined;
  const inUnit = convert(actual, unit);
  if (isFault(inUnit)) return undefined;
  const verdict = unlessFault(judge([inUnit], combinedUncertainty(inner, outer), limits, 0));
  return verdict && { record, inner, outer, outerNode, outerName, actual: inUnit, verdict };
}
