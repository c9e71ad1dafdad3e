/** How the parameters and results of the functions of the trade are told to people. */
import type { DimensionName } from "../quantities/dimension.ts";
import { dimensionNamed } from "../quantities/dimension.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import { NO_UNIT, unit } from "../quantities/unit.ts";
import { frictionWords } from "../trade/friction.ts";
import type { Parameter, Returns } from "../trade/function.ts";
import { materialNames } from "../trade/materials.ts";
import { quantityFromSi } from "./si.ts";
import { dimensionWithArticle } from "./value.ts";

/** What a parameter takes: `a torque, as in 0 N.m`, `a thread, as in M10x1.25`. */
export function takes(parameter: Parameter): string {
  switch (parameter.is) {
    case "quantity":
      return `${named(parameter.dimension)} (${parameter.unit})`;
    case "any quantity":
      return parameter.among === undefined ? "a quantity" : parameter.among.map(named).join(" or ");
    case "number":
      if (parameter.unit === "%") return "a share, as in 60 % or 0.6";
      return parameter.whole ? "a whole number" : "a plain number";
    case "thread":
      return "a thread, as in M10x1.25 or 3/8-24 UNF";
    case "class":
      return "a strength class, as in class 8.8 or grade 5";
    case "material":
      return `a material (${materialNames.join(", ")})`;
    case "friction":
      return `a nut factor, as in 0.2, or a word for one (${frictionWords.join(", ")})`;
    case "text":
      return `a text, as in ${parameter.expected}`;
  }
}

/** The range of a parameter in its customary unit: `0 N.m to 10000 N.m`; undefined where there is none to tell. */
export function rangeOfParameter(parameter: Parameter): string | undefined {
  switch (parameter.is) {
    case "quantity":
    case "number":
      return between(parameter.min, parameter.max, parameter.unit);
    case "any quantity":
      return parameter.min === 0 ? "not negative" : undefined;
    default:
      return undefined;
  }
}

/** `0.05 to 0.6`, `at least 50 mm`, `at most 1 mm`; the bounds are in SI units. */
export function between(min: number | undefined, max: number | undefined, unitText?: string): string {
  const written = (bound: number) =>
    formatQuantity(quantityFromSi(bound, unitText === undefined ? NO_UNIT : unit(unitText)));
  if (min === undefined) return max === undefined ? "" : `at most ${written(max)}`;
  return max === undefined ? `at least ${written(min)}` : `${written(min)} to ${written(max)}`;
}

/** What a function gives: `a force, kN`. */
export function gives(returns: Returns): string {
  switch (returns.is) {
    case "quantity":
      return `${named(returns.dimension)}, ${returns.unit}`;
    case "same quantity":
      return "a quantity of the kind of its arguments";
    case "number":
      return returns.unit === "%" ? "a share, %" : "a plain number";
    case "limits":
      return `limits: a lower and an upper ${named(returns.dimension).replace(/^an? /, "")}, ${returns.unit}`;
  }
}

function named(name: DimensionName): string {
  return dimensionWithArticle(dimensionNamed(name));
}
