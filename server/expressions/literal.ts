/** From the numbers and units of the tree to values. */
import type { NumberNode, QuantityNode, Span, UnitNode } from "../../grammar/syntax.ts";
import { compoundQuantity } from "../quantities/compound.ts";
import { readCurrency } from "../quantities/money.ts";
import type { NumberRead } from "../quantities/number.ts";
import { isNumberFault, readNumber } from "../quantities/number.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { writtenQuantity } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import type { UnitFault } from "../quantities/unit.ts";
import { isUnitFault, NO_UNIT, readUnit } from "../quantities/unit.ts";
import { unknownUnit } from "./arithmetic.ts";
import type { ExpressionFault } from "./refusal.ts";
import type { Value } from "./value.ts";
import { quantityValue, shortened } from "./value.ts";

/** A quantity, money (`62.00 GBP`) or a price (`40 GBP/h`), as its unit says. */
export function literal(node: QuantityNode): Value | ExpressionFault {
  const [first, ...others] = node.parts;
  const parts: Quantity[] = [];
  for (const { number, unit } of node.parts) {
    const read = readNumber(number.text);
    if (isNumberFault(read)) return unreadableNumber(number, read.fault);
    const found = unit === undefined ? NO_UNIT : readUnit(unit.text);
    if (isUnitFault(found)) {
      const money = others.length === 0 && first.unit !== undefined ? monetary(read, first.unit) : undefined;
      return money ?? noSuchUnit(unit ?? number, found);
    }
    parts.push(writtenQuantity(read, found));
  }
  const [only, ...further] = parts;
  if (only === undefined) return fault(node, "unreadable-expression", "a number was expected");
  if (further.length === 0) return quantityValue(only);
  const whole = compoundQuantity([only, ...further]);
  return isFault(whole) ? fault(node, "unreadable-expression", whole.message) : quantityValue(whole);
}

/** An amount of a currency, or a price for one of a unit; undefined where the unit names no currency. */
function monetary({ value }: NumberRead, { text }: UnitNode): Value | undefined {
  const [code = "", ...rest] = text.split("/");
  const currency = readCurrency(code);
  if (typeof currency !== "string") return undefined;
  const money = { amount: value, currency };
  if (rest.length === 0) return { kind: "money", money };
  const per = readUnit(rest.join("/"));
  return isUnitFault(per) ? undefined : { kind: "price", price: { money, per } };
}

function unreadableNumber(node: NumberNode, reason: string): ExpressionFault {
  const message =
    reason === "zero-denominator"
      ? `${shortened(node.text)} divides by zero`
      : reason === "number-too-long"
        ? "the number is beyond all use: 120 characters and a power of ten of 99 are the most that is read"
        : `${shortened(node.text)} is not a number`;
  return fault(node, "unreadable-expression", message);
}

function noSuchUnit(node: Span & { readonly text: string }, unit: UnitFault): ExpressionFault {
  const currency = readCurrency(node.text);
  const codes = typeof currency === "string" || !("nearest" in currency) ? [] : currency.nearest;
  const nearest = unit.nearest.length > 0 || !/^[A-Za-z]{3}$/.test(node.text) ? unit.nearest : codes;
  return {
    ...fault(node, "unknown-unit", unknownUnit(node.text, { ...unit, nearest })),
    fixes: nearest.map((text, index) => ({
      start: node.start,
      end: node.end,
      text,
      title: `Write ${text}`,
      sure: unit.sure && index === 0,
    })),
  };
}

function fault({ start, end }: Span, code: ExpressionFault["code"], message: string): ExpressionFault {
  return { code, message, start, end, fixes: [] };
}
