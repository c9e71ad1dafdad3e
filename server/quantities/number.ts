import type { Decimal } from "./decimal.ts";
import { decimal, decimalPlaces, significantFigures } from "./decimal.ts";

/** An exact fraction of whole numbers, denominator above zero. */
export interface Fraction {
  readonly numerator: Decimal;
  readonly denominator: Decimal;
}

/** A number as written. */
export interface NumberRead {
  readonly value: Decimal;
  /** Decimals as written; undefined for a fraction. */
  readonly places: number | undefined;
  /** Significant figures as written; undefined for a fraction, which is exact. */
  readonly figures: number | undefined;
  /** Of a fraction or mixed number: the value before the division, so that 1/3 ft is 4 in. */
  readonly fraction?: Fraction;
}

/** Why a text is not a number, with the text that was probably meant. `sure`: there is one reading only. */
export type NumberFault =
  | { readonly fault: "decimal-comma"; readonly corrected: string; readonly sure: boolean }
  | { readonly fault: "incomplete-number"; readonly corrected: string; readonly sure: true }
  | { readonly fault: "zero-denominator" }
  | { readonly fault: "number-too-long" }
  | { readonly fault: "not-a-number" };

/** Longest text and largest power of ten that are read: far beyond any workshop, and a bound on the work. */
const LONGEST_TEXT = 120;
const LARGEST_EXPONENT = 99;

const PLAIN = /^[+-]?[0-9]+(?:\.[0-9]+)?(?:[eE]([+-]?[0-9]{1,4}))?$/;
const FRACTION = /^([+-]?)([0-9]+)\/([0-9]+)$/;
const MIXED = /^([+-]?)([0-9]+)(?:-| +)([0-9]+)\/([0-9]+)$/;
const COMMA = /^[+-]?[0-9]+,[0-9]+(?:[eE][+-]?[0-9]{1,4})?$/;
const GROUPED = /^[+-]?[0-9]{1,3}(?:,[0-9]{3}){2,}(?:\.[0-9]+)?$|^[+-]?[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+$/;
const BARE_POINT = /^([+-]?)([0-9]*)\.([0-9]*)$/;

/** Texts remembered; beyond it the memory starts afresh, so that endless new numbers cannot fill it. */
const MOST_REMEMBERED = 4000;

const remembered = new Map<string, NumberRead | NumberFault>();

/**
 * Reads `12`, `-1.5`, `+0.05`, `1e-3`, `3/8`, `1-3/8` and `1 3/8`; the minus sign U+2212 reads as `-`.
 * Where a mixed number may stand (before an inch or foot unit) is the grammar's business. The answer is remembered by text.
 */
export function readNumber(text: string): NumberRead | NumberFault {
  const known = remembered.get(text);
  if (known !== undefined) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const read = readAfresh(text);
  remembered.set(text, read);
  return read;
}

function readAfresh(text: string): NumberRead | NumberFault {
  if (text.length > LONGEST_TEXT) return { fault: "number-too-long" };
  const written = text.trim().replace(/\u2212/g, "-");
  const plain = PLAIN.exec(written);
  if (plain !== null) {
    if (Math.abs(Number(plain[1] ?? 0)) > LARGEST_EXPONENT) return { fault: "number-too-long" };
    return {
      value: decimal(written),
      places: decimalPlaces(written),
      figures: significantFigures(written),
    };
  }
  const fraction = FRACTION.exec(written);
  if (fraction !== null) return readFraction(fraction[1], "0", fraction[2], fraction[3]);
  const mixed = MIXED.exec(written);
  if (mixed !== null) return readFraction(mixed[1], mixed[2], mixed[3], mixed[4]);
  return numberFault(written);
}

/** Whether `readNumber` gave a fault. */
export function isNumberFault(read: NumberRead | NumberFault): read is NumberFault {
  return "fault" in read;
}

function readFraction(
  sign: string | undefined,
  whole = "0",
  top = "0",
  bottom = "1",
): NumberRead | NumberFault {
  const denominator = BigInt(bottom);
  if (denominator === 0n) return { fault: "zero-denominator" };
  const magnitude = BigInt(whole) * denominator + BigInt(top);
  const numerator = decimal(sign === "-" ? -magnitude : magnitude);
  const fraction = { numerator, denominator: decimal(denominator) };
  return { value: numerator.div(fraction.denominator), places: undefined, figures: undefined, fraction };
}

function numberFault(written: string): NumberFault {
  if (GROUPED.test(written)) {
    return { fault: "decimal-comma", corrected: written.replace(/,/g, ""), sure: false };
  }
  if (COMMA.test(written)) {
    const thousandsPossible = /^[+-]?[1-9][0-9]{0,2},[0-9]{3}$/.test(written);
    return { fault: "decimal-comma", corrected: written.replace(",", "."), sure: !thousandsPossible };
  }
  const bare = BARE_POINT.exec(written);
  if (bare !== null && `${bare[2]}${bare[3]}` !== "") {
    const [, sign = "", whole = "", rest = ""] = bare;
    return {
      fault: "incomplete-number",
      corrected: `${sign}${whole || "0"}${rest === "" ? "" : `.${rest}`}`,
      sure: true,
    };
  }
  return { fault: "not-a-number" };
}
