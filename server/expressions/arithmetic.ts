/** The operators of the language over every kind of value. */
import type { ExchangeRate } from "../quantities/money.ts";
import { readCurrency } from "../quantities/money.ts";
import { negate } from "../quantities/quantity.ts";
import { isUnitFault, readUnit } from "../quantities/unit.ts";
import { combineRanges, convertRange, negateRange } from "./interval-arithmetic.ts";
import { combineMoney, exchange, negateMoney } from "./money-arithmetic.ts";
import type { Operator } from "./quantity-arithmetic.ts";
import { combineQuantities, convertQuantity } from "./quantity-arithmetic.ts";
import type { Refusal } from "./refusal.ts";
import { isRefusal, refuse } from "./refusal.ts";
import type { Range, Value } from "./value.ts";
import { describeValue, limitsValue, quantityValue, shortened } from "./value.ts";

/** `left operator right`. */
export function combine(
  operator: Operator,
  left: Value,
  right: Value,
  rates: readonly ExchangeRate[],
): Value | Refusal {
  if (left.kind === "quantity" && right.kind === "quantity") {
    const result = combineQuantities(operator, left.quantity, right.quantity);
    return isRefusal(result) ? result : quantityValue(result);
  }
  const [a, b] = [asRange(left), asRange(right)];
  if (a !== undefined && b !== undefined) {
    const result = combineRanges(operator, a, b);
    return isRefusal(result) ? result : limitsValue(result);
  }
  return combineMoney(operator, left, right, rates) ?? doNotGoTogether(operator, left, right);
}

/** `-value`. */
export function negated(value: Value): Value | Refusal {
  switch (value.kind) {
    case "quantity":
      return quantityValue(negate(value.quantity));
    case "limits":
      return limitsValue(negateRange(value));
    case "money":
      return { kind: "money", money: negateMoney(value.money) };
    case "price":
      return { kind: "price", price: { ...value.price, money: negateMoney(value.price.money) } };
    default:
      return refuse("wrong-dimension", `a minus does not go before ${describeValue(value)}`, { operand: 0 });
  }
}

/** `value in UNIT`, or in a currency. A unit that is none is refused at operand 1, the unit. */
export function converted(value: Value, unitText: string, rates: readonly ExchangeRate[]): Value | Refusal {
  if (value.kind === "money") {
    const currency = readCurrency(unitText);
    if (typeof currency !== "string") return noMoneyIn(value, unitText);
    const money = exchange(value.money, currency, rates);
    return isRefusal(money) ? money : { kind: "money", money };
  }
  const unit = readUnit(unitText);
  if (isUnitFault(unit)) {
    const { nearest, sure } = unit;
    return refuse("unknown-unit", unknownUnit(unitText, unit), { operand: 1, units: nearest, sure });
  }
  const range = value.kind === "quantity" ? undefined : asRange(value);
  if (range !== undefined) {
    const result = convertRange(range, unit);
    return isRefusal(result) ? { ...result, operand: 1 } : limitsValue(result);
  }
  if (value.kind !== "quantity") {
    return refuse("wrong-dimension", `${describeValue(value)} cannot be converted to ${unit.symbol}`, {
      operand: 1,
    });
  }
  const result = convertQuantity(value.quantity, unit);
  return isRefusal(result) ? { ...result, operand: 1 } : quantityValue(result);
}

/** What to say of a unit that is none, with the likely one. */
export function unknownUnit(
  text: string,
  advice: { readonly reason?: string; readonly nearest: readonly string[] },
): string {
  const reason = advice.reason === undefined ? "" : `: ${advice.reason}`;
  const likely = advice.nearest.length === 0 ? "" : `; did you mean ${advice.nearest.join(" or ")}?`;
  return `there is no unit ${shortened(text)}${reason}${likely}`;
}

function asRange(value: Value): Range | undefined {
  if (value.kind === "limits") return value;
  return value.kind === "quantity" ? { lower: value.quantity, upper: value.quantity } : undefined;
}

function noMoneyIn(value: Value, unitText: string): Refusal {
  const unit = readUnit(unitText);
  return isUnitFault(unit)
    ? refuse("unknown-unit", `there is no currency ${shortened(unitText)}`, { operand: 1 })
    : refuse("wrong-dimension", `cannot convert ${describeValue(value)} to ${unit.symbol}`, { operand: 1 });
}

const VERBS: Readonly<Record<Operator, readonly [string, string]>> = {
  "+": ["add", "and"],
  "-": ["subtract", "and"],
  "*": ["multiply", "by"],
  "/": ["divide", "by"],
  "^": ["raise", "to"],
};

/** Points to the one that is no number at all, else to the right one. */
function doNotGoTogether(operator: Operator, left: Value, right: Value): Refusal {
  const [verb, joint] = VERBS[operator];
  const message =
    operator === "-"
      ? `cannot subtract ${describeValue(right)} from ${describeValue(left)}`
      : `cannot ${verb} ${describeValue(left)} ${joint} ${describeValue(right)}`;
  return refuse("wrong-dimension", message, { operand: countable(left) ? 1 : 0 });
}

function countable({ kind }: Value): boolean {
  return kind === "quantity" || kind === "limits" || kind === "money" || kind === "price";
}
