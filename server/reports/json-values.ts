/** Values in the stable machine form of every command: figures as numbers with their text, money as decimal strings. */
import type { Place } from "../build/source.ts";
import { lineOf } from "../build/source.ts";
import type { Money } from "../quantities/money.ts";
import { minorDigits } from "../quantities/money.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";

export interface JsonQuantity {
  readonly value: number;
  /** Null of a bare number. */
  readonly unit: string | null;
  readonly text: string;
}

export interface JsonMoney {
  readonly amount: string;
  readonly currency: string;
}

export interface JsonWhy {
  readonly text: string;
  readonly file: string;
  readonly line: number;
}

export function jsonQuantity(quantity: Quantity | undefined): JsonQuantity | null {
  if (quantity === undefined) return null;
  return {
    value: quantity.value.toNumber(),
    unit: jsonUnit(quantity),
    text: formatQuantity(quantity),
  };
}

/** The unit's symbol, as in the log; null of a bare number. */
export function jsonUnit({ unit: { symbol } }: Quantity): string | null {
  return symbol === "" ? null : symbol;
}

export function jsonMoney(money: Money | undefined): JsonMoney | null {
  return money === undefined ? null : { amount: jsonAmount(money), currency: money.currency };
}

/** An amount in full, with at least the digits of its currency's minor unit. */
export function jsonAmount({ amount, currency }: Money): string {
  return amount.toFixed(Math.max(amount.decimalPlaces(), minorDigits(currency)));
}

export function jsonWhy({ text, place }: { readonly text: string; readonly place: Place }): JsonWhy {
  return { text, file: place.site.file.path, line: lineOf(place) };
}

/** `parts/front.cotter:88`: where something stands, for people. */
export function sayPlace(place: Place): string {
  return `${place.site.file.path}:${lineOf(place)}`;
}
