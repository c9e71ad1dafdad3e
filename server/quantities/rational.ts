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

function fromDecimal(text: string): Rational {
  const match = /^([0-9]+)(?:\.([0-9]+))?(?:e(-?[0-9]+))?$/.exec(text.trim());
  if (match === null) throw new Error(`not a factor: ${text}`);
  const [, whole = "", decimals = "", exponent = "0"] = match;
  const digits = BigInt(whole + decimals);
  const power = Number(exponent) - decimals.length;
  return power >= 0
    ? { numerator: digits * 10n ** BigInt(power), denominator: 1n }
    : reduced(digits, 10n ** BigInt(-power));
}

function reduced(numerator: bigint, denominator: bigint): Rational {
  let a = numerator;
  let b = denominator;
  while (b !== 0n) [a, b] = [b, a % b];
  return { numerator: numerator / a, denominator: denominator / a };
}
