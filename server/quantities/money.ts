import type { Decimal } from "./decimal.ts";
import { decimal, ZERO } from "./decimal.ts";
import type { NumberFault } from "./number.ts";
import { isNumberFault, readNumber } from "./number.ts";
import type { Quantity } from "./quantity.ts";
import { convert } from "./quantity.ts";
import type { QuantityFault } from "./quantity-fault.ts";
import { isFault } from "./quantity-fault.ts";
import type { Unit } from "./unit.ts";

/**
 * Money: an exact decimal amount of one currency. Sums, products and taxes are carried exactly; only what is printed
 * or closed as a total is rounded, half to even, to the minor unit of its currency (`roundMoney`).
 */
export interface Money {
  readonly amount: Decimal;
  readonly currency: Currency;
}

declare const currencyBrand: unique symbol;
/** An ISO 4217 code that is in use. */
export type Currency = string & { readonly [currencyBrand]: true };

/** What one unit of a currency is worth in another: `1 EUR = 0.86 GBP`. */
export interface ExchangeRate {
  readonly from: Currency;
  readonly to: Currency;
  readonly factor: Decimal;
}

/** A price of a quantity: `40 GBP/h`. */
export interface Price {
  readonly money: Money;
  readonly per: Unit;
}

export type MoneyFault =
  | { readonly fault: "unknown-currency"; readonly text: string; readonly nearest: readonly string[] }
  | {
      readonly fault: "unlike-currencies";
      readonly left: Currency;
      readonly right: Currency;
      readonly message: string;
    }
  | {
      readonly fault: "no-rate";
      readonly left: Currency;
      readonly right: Currency;
      readonly message: string;
    };

/**
 * Codes of ISO 4217 (list one; funds codes, metals and test codes left out) by the digits of their minor unit. BGN, which
 * EUR replaced in 2026, still stands in older bills.
 */
const CODES_BY_MINOR_DIGITS: Readonly<Record<number, string>> = {
  0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF",
  2:
    "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC " +
    "CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR " +
    "JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD " +
    "NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN " +
    "SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD XCG YER ZAR ZMW ZWG",
  3: "BHD IQD JOD KWD LYD OMR TND",
};

const minorDigitsByCode = new Map<string, number>(
  Object.entries(CODES_BY_MINOR_DIGITS).flatMap(([digits, codes]) =>
    codes.split(" ").map((code) => [code, Number(digits)]),
  ),
);

/** Every currency code that is read, in alphabetical order. */
export const currencies: readonly string[] = [...minorDigitsByCode.keys()].sort();

/** The currency of a code in capitals; a fault names the code in capitals, the usual code of a sign, or codes that differ in one letter. */
export function readCurrency(text: string): Currency | MoneyFault {
  if (minorDigitsByCode.has(text)) return text as Currency;
  const capitals = text.toUpperCase();
  const nearest = minorDigitsByCode.has(capitals)
    ? [capitals]
    : currencies.filter((code) => differences(code, capitals) === 1).slice(0, 4);
  return { fault: "unknown-currency", text, nearest: SIGNS.get(text) ?? nearest };
}

const SIGNS: ReadonlyMap<string, readonly string[]> = new Map([
  ["£", ["GBP"]],
  ["€", ["EUR"]],
  ["$", ["USD"]],
  ["¥", ["JPY"]],
]);

/** Digits behind the point in the minor unit: 2 for GBP, 0 for JPY, 3 for KWD. */
export function minorDigits(currency: Currency): number {
  return minorDigitsByCode.get(currency) ?? 2;
}

/** An amount of a currency, as written: `money("62.00", "GBP")`. */
export function money(amount: Decimal | string | number, code: string): Money | MoneyFault | NumberFault {
  const currency = readCurrency(code);
  if (typeof currency !== "string") return currency;
  if (typeof amount !== "string") return { amount: decimal(amount), currency };
  const read = readNumber(amount);
  return isNumberFault(read) ? read : { amount: read.value, currency };
}

/** No money, in a currency: where a sum starts. */
export function noMoney(currency: Currency): Money {
  return { amount: ZERO, currency };
}

/** The exact sum; two currencies never add. */
export function addMoney(a: Money, b: Money): Money | MoneyFault {
  return a.currency === b.currency ? { ...a, amount: a.amount.plus(b.amount) } : unlike("add", a, b);
}

/** The exact difference; two currencies never subtract. */
export function subtractMoney(a: Money, b: Money): Money | MoneyFault {
  return a.currency === b.currency ? { ...a, amount: a.amount.minus(b.amount) } : unlike("subtract", a, b);
}

/** So many times the money: a count, a share. */
export function timesMoney(a: Money, factor: Decimal | number): Money {
  return { ...a, amount: a.amount.times(factor) };
}

/** A percentage of it, unrounded: a tax of 20 on 62.00 GBP is 12.4 GBP. */
export function percentOfMoney(a: Money, percent: Decimal | number): Money {
  return { ...a, amount: a.amount.times(percent).div(100) };
}

/** In another currency by a rate that is stated for the pair, in whichever direction; unrounded. */
export function convertMoney(a: Money, to: Currency, rates: readonly ExchangeRate[]): Money | MoneyFault {
  if (a.currency === to) return a;
  const onward = rates.findLast((rate) => rate.from === a.currency && rate.to === to);
  if (onward !== undefined) return { amount: a.amount.times(onward.factor), currency: to };
  const back = rates.findLast((rate) => rate.from === to && rate.to === a.currency);
  if (back !== undefined && !back.factor.isZero()) return { amount: a.amount.div(back.factor), currency: to };
  const message = `no rate from ${a.currency} to ${to}`;
  return { fault: "no-rate", left: a.currency, right: to, message };
}

/** What a quantity costs at a price: 2 h 30 min at 40 GBP/h is 100 GBP. */
export function costOf(quantity: Quantity, price: Price): Money | QuantityFault {
  const amount = convert(quantity, price.per);
  return isFault(amount) ? amount : { ...price.money, amount: price.money.amount.times(amount.value) };
}

/** Rounded half to even to the minor unit: for a total that is printed and goes on as printed. */
export function roundMoney(a: Money): Money {
  return { ...a, amount: a.amount.toDecimalPlaces(minorDigits(a.currency)) };
}

/** -1, 0 or 1; two currencies have no order. */
export function compareMoney(a: Money, b: Money): -1 | 0 | 1 | MoneyFault {
  return a.currency === b.currency ? (a.amount.comparedTo(b.amount) as -1 | 0 | 1) : unlike("compare", a, b);
}

/** `62.00 GBP`, with the digits of the minor unit. */
export function formatMoney(a: Money): string {
  const rounded = roundMoney(a).amount;
  return `${(rounded.isZero() ? ZERO : rounded).toFixed(minorDigits(a.currency))} ${a.currency}`;
}

function unlike(verb: string, a: Money, b: Money): MoneyFault {
  return {
    fault: "unlike-currencies",
    left: a.currency,
    right: b.currency,
    message: `cannot ${verb} ${a.currency} and ${b.currency} without a rate`,
  };
}

function differences(a: string, b: string): number {
  if (a.length !== b.length) return a.length;
  return [...a].filter((letter, index) => letter !== b[index]).length;
}
