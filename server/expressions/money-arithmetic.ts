import type { Decimal } from "../quantities/decimal.ts";
import { compatible } from "../quantities/dimension.ts";
import type { ExchangeRate, Money, Price } from "../quantities/money.ts";
import { addMoney, convertMoney, costOf, subtractMoney, timesMoney } from "../quantities/money.ts";
import { quantityOf } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import type { Operator } from "./quantity-arithmetic.ts";
import { beyondReach, isWithinReach, plainNumber } from "./quantity-arithmetic.ts";
import type { Refusal } from "./refusal.ts";
import { isRefusal, refuse } from "./refusal.ts";
import type { Value } from "./value.ts";
import { describeValue, quantityValue } from "./value.ts";

/**
 * Money and prices: like adds to like, a bare number or a percentage scales, money for a quantity is a price, and a
 * price of a quantity is money. Undefined where the two do not go together. `rates` let currencies meet.
 */
export function combineMoney(
  operator: Operator,
  left: Value,
  right: Value,
  rates: readonly ExchangeRate[],
): Value | Refusal | undefined {
  switch (operator) {
    case "+":
    case "-":
      return total(operator, left, right, rates);
    case "*":
      return product(left, right) ?? product(right, left);
    case "/":
      return quotient(left, right, rates);
    case "^":
      return undefined;
  }
}

/** Money in another currency, by a rate of the build. */
export function exchange(
  money: Money,
  to: Money["currency"],
  rates: readonly ExchangeRate[],
): Money | Refusal {
  const exchanged = convertMoney(money, to, rates);
  if (!("fault" in exchanged)) return exchanged;
  return refuse(
    "wrong-dimension",
    `cannot bring ${describeValue({ kind: "money", money })} to ${to}: there is no rate from ${money.currency} to ${to}`,
    { operand: 1 },
  );
}

export function negateMoney(money: Money): Money {
  return { ...money, amount: money.amount.negated() };
}

function total(
  operator: "+" | "-",
  left: Value,
  right: Value,
  rates: readonly ExchangeRate[],
): Value | Refusal | undefined {
  const join = operator === "+" ? addMoney : subtractMoney;
  if (left.kind === "money" && right.kind === "money") {
    const exchanged = exchange(right.money, left.money.currency, rates);
    if (isRefusal(exchanged)) return exchanged;
    const sum = join(left.money, exchanged);
    return "fault" in sum ? undefined : moneyValue(sum);
  }
  if (left.kind === "price" && right.kind === "price" && left.price.per === right.price.per) {
    const sum = join(left.price.money, right.price.money);
    return "fault" in sum ? undefined : priceValue({ ...left.price, money: sum });
  }
  return undefined;
}

function product(left: Value, right: Value): Value | Refusal | undefined {
  if (right.kind !== "quantity") return undefined;
  const factor = plainNumber(right.quantity);
  if (left.kind === "money") {
    return factor === undefined ? undefined : moneyValue(timesMoney(left.money, factor));
  }
  if (left.kind !== "price") return undefined;
  const { money, per } = left.price;
  if (compatible(right.quantity.dimension, per.dimension)) {
    const cost = costOf(right.quantity, left.price);
    return isFault(cost) ? undefined : moneyValue(cost);
  }
  return factor === undefined ? undefined : priceValue({ per, money: timesMoney(money, factor) });
}

function quotient(left: Value, right: Value, rates: readonly ExchangeRate[]): Value | Refusal | undefined {
  if (amountOf(right)?.isZero()) {
    return refuse("out-of-range-argument", `cannot divide ${describeValue(left)} by zero`, { operand: 1 });
  }
  if (left.kind === "money" && right.kind === "money") {
    const exchanged = exchange(right.money, left.money.currency, rates);
    if (isRefusal(exchanged)) return exchanged;
    return quantityValue(quantityOf(left.money.amount.div(exchanged.amount)));
  }
  if (left.kind === "money" && right.kind === "price") return quantityBought(left.money, right.price);
  if (right.kind !== "quantity") return undefined;
  const divisor = plainNumber(right.quantity);
  if (left.kind === "price") {
    return divisor === undefined
      ? undefined
      : priceValue({ ...left.price, money: share(left.price.money, divisor) });
  }
  if (left.kind !== "money") return undefined;
  return divisor === undefined
    ? priceValue({ money: share(left.money, right.quantity.value), per: right.quantity.unit })
    : moneyValue(share(left.money, divisor));
}

function quantityBought(money: Money, price: Price): Value | undefined {
  if (money.currency !== price.money.currency) return undefined;
  return quantityValue(quantityOf(money.amount.div(price.money.amount), price.per));
}

function share(money: Money, divisor: Decimal): Money {
  return { ...money, amount: money.amount.div(divisor) };
}

function amountOf(value: Value): Decimal | undefined {
  if (value.kind === "money") return value.money.amount;
  if (value.kind === "price") return value.price.money.amount;
  return value.kind === "quantity" ? value.quantity.value : undefined;
}

function moneyValue(money: Money): Value | Refusal {
  return isWithinReach(money.amount) ? { kind: "money", money } : beyondReach;
}

function priceValue(price: Price): Value | Refusal {
  return isWithinReach(price.money.amount) ? { kind: "price", price } : beyondReach;
}
