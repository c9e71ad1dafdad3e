import { withArticle } from "../../grammar/article.ts";
import { decimalPlaces, formatDecimal, formatSignificant } from "../quantities/decimal.ts";
import type { Dimension } from "../quantities/dimension.ts";
import { describeDimension } from "../quantities/dimension.ts";
import type { Money, Price } from "../quantities/money.ts";
import { formatMoney, minorDigits } from "../quantities/money.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { StrengthClass } from "../trade/strength-class.ts";
import type { Thread } from "../trade/thread.ts";

/** A lower and an upper quantity of one dimension; the lower one is not above the other. */
export interface Range {
  readonly lower: Quantity;
  readonly upper: Quantity;
}

/** What an expression gives, a name stands for, and a function takes. */
export type Value =
  | { readonly kind: "quantity"; readonly quantity: Quantity }
  | ({ readonly kind: "limits" } & Range)
  | { readonly kind: "money"; readonly money: Money }
  /** Money for one of a unit: `40 GBP/h`. */
  | { readonly kind: "price"; readonly price: Price }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "thread"; readonly thread: Thread }
  | { readonly kind: "class"; readonly class: StrengthClass }
  /** A bare word with a meaning of its own: a material, a friction. */
  | { readonly kind: "word"; readonly word: string };

export function quantityValue(quantity: Quantity): Value {
  return { kind: "quantity", quantity };
}

export function limitsValue({ lower, upper }: Range): Value {
  return { kind: "limits", lower, upper };
}

/**
 * As a terminal or a hover shows it: a quantity in the author's unit with the figures its inputs allow
 * (`27 kN`), limits with one unit and as many decimals on both sides (`52.000 .. 52.030 mm`), money to its minor
 * unit, or in full where a few decimals more are all there is.
 */
export function formatValue(value: Value): string {
  switch (value.kind) {
    case "quantity":
      return formatQuantity(value.quantity);
    case "limits":
      return formatRange(value);
    case "money":
      return formatAmount(value.money);
    case "price":
      return `${formatAmount(value.price.money)}/${value.price.per.symbol}`;
    case "text":
      return value.text;
    case "thread":
      return value.thread.designation;
    case "class":
      return value.class.text;
    case "word":
      return value.word;
  }
}

/** For a message, with its article: `a torque (1 N.m)`, `money (62.00 GBP)`, `the thread M10x1.25`. */
export function describeValue(value: Value): string {
  switch (value.kind) {
    case "quantity":
      return describeQuantity(value.quantity);
    case "limits":
      return `limits of ${describeDimension(value.lower.dimension)} (${formatRange(value)})`;
    case "money":
      return `money (${formatAmount(value.money)})`;
    case "price":
      return `a price (${formatValue(value)})`;
    case "text":
      return `the text ${quoted(value.text)}`;
    case "thread":
      return `the thread ${value.thread.designation}`;
    case "class":
      return value.class.text;
    case "word":
      return `the word ${shortened(value.word)}`;
  }
}

/** For a message: `a torque (1 N.m)`, `an angle (3 deg)`, `a plain number (5)`. */
export function describeQuantity(quantity: Quantity): string {
  return `${dimensionWithArticle(quantity.dimension)} (${formatQuantity(quantity)})`;
}

/** `a torque`, `an angle`, `a plain number`; of a dimension without a name `a quantity of length^4`. */
export function dimensionWithArticle(dimension: Dimension): string {
  const words = describeDimension(dimension);
  if (dimension.name === undefined) return `a quantity of ${words}`;
  return withArticle(words);
}

/** A text in quotes, cut where it is too long for a message. */
export function quoted(text: string): string {
  return `"${shortened(text)}"`;
}

const LONGEST_IN_MESSAGE = 60;

/** A text as it stands, cut where it is too long for a message. */
export function shortened(text: string): string {
  return text.length <= LONGEST_IN_MESSAGE ? text : `${text.slice(0, LONGEST_IN_MESSAGE)}…`;
}

/** Decimals of money that are shown beyond those of its minor unit, where the amount ends there. */
const FINEST_MONEY = 4;

function formatAmount(money: Money): string {
  const places = money.amount.decimalPlaces();
  return places > minorDigits(money.currency) && places <= FINEST_MONEY
    ? `${money.amount.toFixed(places)} ${money.currency}`
    : formatMoney(money);
}

function formatRange({ lower, upper }: Range): string {
  if (lower.unit !== upper.unit) return `${formatQuantity(lower)} .. ${formatQuantity(upper)}`;
  const larger = lower.value.abs().greaterThan(upper.value.abs()) ? lower : upper;
  const places = lower.exact && upper.exact ? placesInFull(lower, upper) : placesOf(larger);
  const [low, high] = [lower, upper].map(({ value }) => {
    const rounded = value.toDecimalPlaces(places);
    return formatDecimal(rounded, places);
  });
  const unit = upper.unit.symbol;
  return `${low} .. ${high}${unit === "" ? "" : ` ${unit}`}`;
}

function placesInFull(lower: Quantity, upper: Quantity): number {
  return Math.max(...[lower, upper].map((end) => Math.max(end.places ?? 0, end.value.decimalPlaces())));
}

/** The decimals that a quantity is shown with. */
function placesOf(quantity: Quantity): number {
  const shown = quantity.exact
    ? formatDecimal(quantity.value, quantity.places)
    : formatSignificant(quantity.value, Math.max(3, quantity.figures ?? 6));
  return decimalPlaces(shown);
}
