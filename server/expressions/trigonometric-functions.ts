/** Sine and its kind: of angles with their unit, and back to degrees. */
import type { Decimal } from "../quantities/decimal.ts";
import { dimensionNamed } from "../quantities/dimension.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert, formatQuantity } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { NO_UNIT, unit } from "../quantities/unit.ts";
import { arccosine, arcsine, arctangent, cosine, sine, tangent } from "./angles.ts";
import type { BuiltInFunction } from "./built-in-function.ts";
import { noNumber, ofOne } from "./built-in-function.ts";
import { derivedQuantity } from "./derived-quantity.ts";
import { plainNumber } from "./quantity-arithmetic.ts";
import { refuse } from "./refusal.ts";
import type { Value } from "./value.ts";
import { describeQuantity, quantityValue } from "./value.ts";

const TRIGONOMETRY = {
  sin: { words: "Sine", compute: sine },
  cos: { words: "Cosine", compute: cosine },
  tan: { words: "Tangent", compute: tangent },
} as const;

function trigonometric(name: keyof typeof TRIGONOMETRY): BuiltInFunction {
  const { words, compute } = TRIGONOMETRY[name];
  return {
    name,
    parameters: [{ name: "angle", doc: "An angle with its unit; a bare number is refused." }],
    returns: "a plain number",
    summary: `${words} of an angle.`,
    formula: `${name} angle`,
    example: name === "tan" ? "300 mm * tan(1.5 deg)" : `${name}(30 deg)`,
    call: ofOne((value) => {
      if (value.kind !== "quantity") return noNumber(name, value, 0);
      const angle = convert(value.quantity, unit("deg"));
      if (isFault(angle) || value.quantity.dimension !== dimensionNamed("angle")) {
        return refuse(
          "wrong-dimension",
          `${name} takes an angle, such as 30 deg, not ${describeQuantity(value.quantity)}`,
          {
            operand: 0,
            units: ["deg", "rad"],
          },
        );
      }
      const result = compute(angle.value);
      return result === undefined
        ? refuse("out-of-range-argument", `${name} has no value at ${formatQuantity(value.quantity)}`, {
            operand: 0,
          })
        : fromNumber(result, value.quantity, NO_UNIT);
    }),
  };
}

const INVERSES = {
  asin: { words: "sine", compute: arcsine, bounded: true },
  acos: { words: "cosine", compute: arccosine, bounded: true },
  atan: { words: "tangent", compute: arctangent, bounded: false },
} as const;

function inverse(name: keyof typeof INVERSES): BuiltInFunction {
  const { words, compute, bounded } = INVERSES[name];
  return {
    name,
    parameters: [{ name: "x", doc: bounded ? "A plain number from -1 to 1." : "A plain number." }],
    returns: "an angle, deg",
    summary: `Angle that has this ${words}.`,
    formula: `${name.slice(1)}⁻¹ x`,
    example: name === "atan" ? "atan(3 mm / 340 mm)" : `${name}(0.5)`,
    call: ofOne((value) => {
      if (value.kind !== "quantity") return noNumber(name, value, 0);
      const number = plainNumber(value.quantity);
      if (number === undefined) {
        return refuse(
          "wrong-dimension",
          `${name} takes a plain number, not ${describeQuantity(value.quantity)}`,
          {
            operand: 0,
          },
        );
      }
      if (bounded && number.abs().greaterThan(1)) {
        return refuse(
          "out-of-range-argument",
          `${name} takes a number from -1 to 1, not ${formatQuantity(value.quantity)}`,
          {
            operand: 0,
          },
        );
      }
      return fromNumber(compute(number), value.quantity, unit("deg"));
    }),
  };
}

/** A result with the figures of its argument; exact where its digits end, as those of sin(30 deg) do. */
function fromNumber(result: Decimal, argument: Quantity, to: Quantity["unit"]): Value {
  return quantityValue(derivedQuantity(result, to, argument.figures, argument.exact));
}

export const trigonometricFunctions: readonly BuiltInFunction[] = [
  ...(["sin", "cos", "tan"] as const).map(trigonometric),
  ...(["asin", "acos", "atan"] as const).map(inverse),
];
