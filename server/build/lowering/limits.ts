/** Limits: bounds, tolerances and classes of ISO 286, with everything in one dimension. */
import { withArticle } from "../../../grammar/article.ts";
import type { LimitsNode, QuantityNode, Span } from "../../../grammar/syntax.ts";
import { decimal } from "../../quantities/decimal.ts";
import { describeDimension } from "../../quantities/dimension.ts";
import type { Limits, LimitsFault } from "../../quantities/limits.ts";
import { asymmetricLimits, boundLimits, nominalLimits, toleranceLimits } from "../../quantities/limits.ts";
import type { NumberRead } from "../../quantities/number.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import {
  asDifference,
  compare,
  formatQuantity,
  hasDimension,
  quantityOf,
  writtenQuantity,
} from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import type { Unit } from "../../quantities/unit.ts";
import { isUnitFault, readUnit, unit } from "../../quantities/unit.ts";
import { isFaulty } from "../../trade/function.ts";
import { deviationsOf, readToleranceClass } from "../../trade/iso286.ts";
import type { Due } from "./due.ts";
import { ANY } from "./due.ts";
import type { ValueLowering } from "./values.ts";
import { isBare } from "./values.ts";

/** What a value must satisfy; a bare bound takes the unit of the one beside it. */
export function lowerLimits(lowering: ValueLowering, node: LimitsNode, due: Due = ANY): Limits | undefined {
  const limits = lowerBounds(lowering, node, due);
  if (limits === undefined || node.fresh === undefined) return limits;
  const fresh = lowerFresh(lowering, node.fresh, limits);
  return fresh === undefined ? limits : { ...limits, fresh };
}

/** The same, of a magnitude: no bound of it is below nought. */
export function lowerMagnitudes(lowering: ValueLowering, node: LimitsNode, due: Due): Limits | undefined {
  const limits = lowerLimits(lowering, node, due);
  const least = limits?.lower ?? limits?.nominal ?? limits?.upper;
  return least === undefined || lowering.notNegative(node, least) === undefined ? undefined : limits;
}

/** The same, where a figure without a unit says nothing: what a gauge reads. */
export function lowerLimitsWithUnit(lowering: ValueLowering, node: LimitsNode): Limits | undefined {
  const figures = node.form === "bounds" ? [node.lower, node.upper] : [];
  const written = figures.flatMap((figure) => figure ?? []);
  const last = written.at(-1);
  return last !== undefined && written.every(isBare)
    ? lowering.complainOfBare(last, ANY)
    : lowerLimits(lowering, node);
}

function lowerBounds(lowering: ValueLowering, node: LimitsNode, due: Due): Limits | undefined {
  switch (node.form) {
    case "bounds":
      return betweenBounds(lowering, node, due);
    case "tolerance": {
      const nominal = lowering.quantity(node.nominal, due, { fallback: unitOfTolerance(node) });
      if (nominal === undefined) return undefined;
      const tolerance = lowering.quantity(node.tolerance, ANY, {
        fallback: nominal.unit,
        hint: nominal.unit,
      });
      if (tolerance === undefined) return undefined;
      return isOfNominal(tolerance, nominal)
        ? checked(lowering, node, toleranceLimits(nominal, asDifference(tolerance)))
        : refuseUnlike(lowering, node.tolerance, nominal);
    }
    case "asymmetric":
      return aroundNominal(lowering, node, due);
    case "iso286":
      return ofClass(lowering, node);
    case "nominal": {
      const nominal = lowering.quantity(node.nominal, due);
      return nominal && nominalLimits(nominal);
    }
  }
}

/** A bare bound takes the unit of the other, so the one with a unit is read first; one slip is one complaint. */
function betweenBounds(
  lowering: ValueLowering,
  node: LimitsNode & { readonly form: "bounds" },
  due: Due,
): Limits | undefined {
  const first =
    node.upper === undefined || (isBare(node.upper) && node.lower !== undefined && !isBare(node.lower))
      ? node.lower
      : node.upper;
  if (first === undefined) return undefined;
  const known = lowering.quantity(first, due);
  if (known === undefined) return undefined;
  const second = first === node.upper ? node.lower : node.upper;
  const other = second && lowering.quantity(second, ANY, { fallback: known.unit, hint: known.unit });
  if (second !== undefined && other === undefined) return undefined;
  if (second !== undefined && other !== undefined && isFault(compare(known, other)))
    return refuseUnlike(lowering, second, known);
  const [lower, upper] = first === node.upper ? [other, known] : [known, other];
  return checked(lowering, node, boundLimits(lower, upper));
}

function aroundNominal(
  lowering: ValueLowering,
  node: LimitsNode & { readonly form: "asymmetric" },
  due: Due,
): Limits | undefined {
  const behind = node.unit;
  // `54 +0.1/-0.2 mm`: the unit stands once, behind both.
  const once = behind && isBare(node.nominal) ? lowering.unit(behind, due) : undefined;
  if (behind !== undefined && isBare(node.nominal) && once === undefined) return undefined;
  const nominal = lowering.quantity(node.nominal, due, { fallback: once });
  if (nominal === undefined) return undefined;
  const written = once ?? (behind ? lowering.unit(behind, due, nominal.unit) : nominal.unit);
  const above = lowering.number(node.above);
  const below = lowering.number(node.below);
  if (written === undefined || above === undefined || below === undefined) return undefined;
  const deviation = (read: NumberRead) => asDifference(writtenQuantity(read, written));
  if (behind !== undefined && isFault(compare(deviation(above), asDifference(nominal))))
    return refuseUnit(lowering, behind, nominal);
  return checked(lowering, node, asymmetricLimits(nominal, deviation(above), deviation(below)));
}

/** `25 h6`: the limits of size of a class of ISO 286, in mm. */
function ofClass(
  lowering: ValueLowering,
  node: LimitsNode & { readonly form: "iso286" },
): Limits | undefined {
  const size = lowering.number(node.size);
  if (size === undefined) return undefined;
  const tolerance = readToleranceClass(node.toleranceClass.text);
  if (tolerance === undefined)
    return lowering.complain("unreadable-value", node.toleranceClass, "a class of ISO 286, such as h6 or H7");
  const deviations = deviationsOf(size.value.toNumber(), tolerance);
  if (isFaulty(deviations)) {
    const outOfSize = deviations.fault.kind === "out-of-range";
    return outOfSize
      ? lowering.complain("unreadable-value", node.size, "a size of more than 0 and up to 500 mm")
      : lowering.complain(
          "unreadable-value",
          node.toleranceClass,
          `a class that ISO 286-1 has at ${node.size.text} mm`,
        );
  }
  const deviation = (micrometres: number) => quantityOf(decimal(micrometres).div(1000), unit("mm"));
  const nominal = writtenQuantity(size, unit("mm"));
  return checked(
    lowering,
    node,
    asymmetricLimits(nominal, deviation(deviations.upper), deviation(deviations.lower)),
  );
}

/** The size when new: of the same kind, and not beyond the limit that it wears towards. */
function lowerFresh(
  lowering: ValueLowering,
  node: QuantityNode,
  { lower, upper, nominal }: Limits,
): Quantity | undefined {
  const bound = lower ?? upper ?? nominal;
  const fresh = lowering.quantity(node, ANY, { fallback: bound?.unit, hint: bound?.unit });
  if (fresh === undefined || bound === undefined) return fresh;
  if (isFault(compare(fresh, bound))) return refuseUnlike(lowering, node, bound);
  const beyond =
    (lower !== undefined && compare(fresh, lower) === -1) ||
    (upper !== undefined && compare(fresh, upper) === 1);
  if (!beyond) return fresh;
  const limit =
    lower !== undefined && compare(fresh, lower) === -1
      ? `min ${formatQuantity(lower)}`
      : `max ${upper && formatQuantity(upper)}`;
  return lowering.complain("unreadable-value", node, `a size when new that is within ${limit}`);
}

/** `54 ± 0.1 mm`: the unit stands once, behind both; a percentage says nothing of what is measured. */
function unitOfTolerance({
  nominal,
  tolerance,
}: LimitsNode & { readonly form: "tolerance" }): Unit | undefined {
  const { unit: node } = tolerance.parts[0];
  const read = node && isBare(nominal) ? readUnit(node.text) : undefined;
  return read === undefined || isUnitFault(read) || read.dimension.name === "ratio" ? undefined : read;
}

function isOfNominal(tolerance: Quantity, nominal: Quantity): boolean {
  if (hasDimension(tolerance, "ratio"))
    return tolerance.unit.symbol === "%" || hasDimension(nominal, "ratio");
  return !isFault(compare(asDifference(tolerance), asDifference(nominal)));
}

/** A figure of another kind than the one that it belongs to. */
export function refuseUnlike(lowering: ValueLowering, node: QuantityNode, like: Quantity): undefined {
  const written = node.parts[0].unit;
  return written === undefined
    ? lowering.complain("wrong-dimension", node, expectedLike(like))
    : refuseUnit(lowering, written, like);
}

function refuseUnit(lowering: ValueLowering, { start, end }: Span, like: Quantity): undefined {
  const { symbol } = like.unit;
  const fixes = symbol === "" ? [] : [{ start, end, text: symbol, title: `Write ${symbol}`, sure: false }];
  return lowering.complain("wrong-dimension", { start, end }, expectedLike(like), { fixes });
}

function expectedLike(like: Quantity): string {
  return `${withArticle(describeDimension(like.dimension))}, as in ${formatQuantity(like)}`;
}

/** Limits that contradict themselves are refused. */
function checked(lowering: ValueLowering, node: LimitsNode, read: Limits | LimitsFault): Limits | undefined {
  if (!("fault" in read)) return read;
  const expected =
    read.fault === "limits-crossed"
      ? "the lower figure before the upper one"
      : "limits that leave room between them";
  return lowering.complain("unreadable-value", node, expected, { reason: read.message });
}

export function saysEach(node: LimitsNode | undefined): boolean {
  if (node === undefined) return false;
  return Object.values(node).some(
    (value) => typeof value === "object" && "each" in value && value.each === true,
  );
}
