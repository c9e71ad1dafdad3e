/** An exact ratio of whole numbers in lowest terms, denominator above zero: the factor of a unit. */
export interface Rational {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

export const UNITY: Rational = { numerator: 1n, denominator: 1n };

/** Reads `25.4`, `1e-3`, `0.45359237*9.80665` or `5/9`, from left to right. For factors stated in source code: anything else throws. */
export function rational(text: string): Rational {
  let result = UNITY;
  for (const [, operator, number = ""] of text.matchAll(/([*/]?)([^*/]+)/g)) {
    result = multiplyRational(result, powerRational(fromDecimal(number), operator === "/" ? -1 : 1));
  }
  return result;
}

export function multiplyRational(a: Rational, b: Rational): Rational {
  return reduced(a.numerator * b.numerator, a.denominator * b.denominator);
}

/** `a` to a whole power, negative ones included. */
export function powerRational(a: Rational, exponent: number): Rational {
  const size = BigInt(Math.abs(exponent));
  const top = a.numerator ** size;
  const bottom = a.denominator ** size;
  return exponent < 0 ? reduced(bottom, top) : { numerator: top, denominator: bottom };
}

export function addRational(a: Rational, b: Rational): Rational {
  return reduced(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

/** -1, 0 or 1 as `a` is less than, equal to or more than `b`. */
export function compareRational(a: Rational, b: Rational): -1 | 0 | 1 {
  const difference = a.numerator * b.denominator - b.numerator * a.denominator;
  if (difference === 0n) return 0;
  return difference < 0n ? -1 : 1;
}

function fromDecimal(text: string): Rational {
  const match = /^(-?[0-9]+)(?:\.([0-9]+))?(?:e([+-]?[0-9]+))?$/.exec(text.trim());
  if (match === null) throw new Error(`not a factor: ${text}`);
  const [, whole = "", decimals = "", exponent = "0"] = match;
  const digits = BigInt(whole + decimals);
  const power = Number(exponent) - decimals.length;
  return power >= 0
    ? { numerator: digits * 10n ** BigInt(power), denominator: 1n }
    : reduced(digits, 10n ** BigInt(-power));
}

function reduced(numerator: bigint, denominator: bigint): Rational {
  let a = numerator < 0n ? -numerator : numerator;
  let b = denominator < 0n ? -denominator : denominator;
  while (b !== 0n) [a, b] = [b, a % b];
  const divisor = denominator < 0n ? -a : a;
  return { numerator: numerator / divisor, denominator: denominator / divisor };
}
