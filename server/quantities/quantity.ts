import { conversion } from "./conversion.ts";
import {
  compareProducts,
  Decimal,
  decimal,
  exactProduct,
  fitsSum,
  formatDecimal,
  formatSignificant,
  PRECISION,
  scale,
} from "./decimal.ts";
import type { Dimension, DimensionName } from "./dimension.ts";
import {
  compatible,
  dimensionNamed,
  multiplyDimensions,
  ofKind,
  powerDimension,
  sameExponents,
} from "./dimension.ts";
import type { Fraction, NumberFault, NumberRead } from "./number.ts";
import { isNumberFault, readNumber } from "./number.ts";
import { productUnit } from "./product-unit.ts";
import type { DimensionFault, Operation, QuantityFault } from "./quantity-fault.ts";
import { dimensionFault, isFault, powerFault, readingFault, zeroFault } from "./quantity-fault.ts";
import type { Unit, UnitFault } from "./unit.ts";
import { isUnitFault, NO_UNIT, readUnit, unit } from "./unit.ts";

/** A value with its unit, and what is known of its precision. Immutable. */
export interface Quantity {
  readonly value: Decimal;
  readonly unit: Unit;
  /** Of the exponents that the unit has; its kind can be narrower or wider than the unit's (a difference in degC). */
  readonly dimension: Dimension;
  /** Decimals as written; undefined where nobody wrote them. */
  readonly places: number | undefined;
  /** Significant figures of the least precise input; undefined for exact numbers. */
  readonly figures: number | undefined;
  /** To be shown in full: nothing was rounded off, and the result does not run on far beyond the figures of its inputs. */
  readonly exact: boolean;
  /** The value before a division that does not end, so that 1/3 ft is 4 in. */
  readonly fraction?: Fraction;
}

/** Significant figures shown of a computed value whose inputs are exact. */
const COMPUTED_FIGURES = 6;
const FEWEST_FIGURES = 3;
/** How many figures an exact product or conversion may have beyond those of its inputs and still be shown in full. */
const FIGURES_BEYOND = 3;
/** The same where the inputs are exact numbers. */
const MOST_EXACT_FIGURES = 10;
/** Beyond 1e300 nothing is computed on: no workshop gets there, and binary floats end soon after. */
const LARGEST_EXPONENT = 300;

export const LARGEST_POWER = 12;

/** A quantity as written: `quantity("9.12", "mm")`. A text keeps its decimals and figures; `""` is the unit of a bare number. */
export function quantity(
  value: Decimal | string | number | NumberRead,
  unitText: string,
): Quantity | UnitFault | NumberFault {
  const found = unitText === "" ? NO_UNIT : readUnit(unitText);
  if (isUnitFault(found)) return found;
  if (typeof value === "string") {
    const read = readNumber(value);
    return isNumberFault(read) ? read : writtenQuantity(read, found);
  }
  if (typeof value === "object" && "places" in value) return writtenQuantity(value, found);
  return quantityOf(value, found);
}

/** What each number was last written in: a diary says the same few figures over and over. */
const written = new WeakMap<NumberRead, Quantity>();

/** A number as read, in a unit. */
export function writtenQuantity(number: NumberRead, unit: Unit): Quantity {
  const known = written.get(number);
  if (known?.unit === unit) return known;
  const made = inUnit(number, unit);
  written.set(number, made);
  return made;
}

function inUnit(number: NumberRead, unit: Unit): Quantity {
  const { value, places, figures, fraction } = number;
  const ends = fraction === undefined || exactProduct(value, fraction.denominator).equals(fraction.numerator);
  return {
    value,
    unit,
    dimension: unit.dimension,
    places,
    figures,
    exact: ends && value.precision() < PRECISION,
    ...(fraction === undefined || ends ? {} : { fraction }),
  };
}

/** An exact value in a unit: a table figure, a count, a constant. */
export function quantityOf(value: Decimal | string | number, unit: Unit = NO_UNIT): Quantity {
  return {
    value: decimal(value),
    unit,
    dimension: unit.dimension,
    places: undefined,
    figures: undefined,
    exact: true,
  };
}

/** A computed value, to be shown with `figures` significant figures (at least three), not in full. */
export function computedQuantity(value: Decimal | number, unit: Unit, figures?: number): Quantity {
  return { ...quantityOf(value, unit), figures: figures ?? COMPUTED_FIGURES, exact: false };
}

/**
 * Whether a value can be read as this dimension: a bare product of force and length as `torque` and as `energy`, a value
 * in K as `temperature` and as `temperature_difference`.
 */
export function hasDimension(a: Quantity, name: DimensionName): boolean {
  if (name === "temperature") return isTemperature(a.dimension) && a.dimension.kind !== "difference";
  return compatible(a.dimension, dimensionNamed(name));
}

/** A temperature meant as a rise or a tolerance: `5 degC` behind `±` is five degrees more or less, not a reading. */
export function asDifference(a: Quantity): Quantity {
  if (!isTemperature(a.dimension)) return a;
  return { ...a, dimension: ofKind(a.dimension, "difference") };
}

/**
 * In another unit. A product of force and length becomes a torque or an energy as the unit asks; a temperature reading is
 * shifted by its scale, a difference is not; a calendar step has no fixed length in days.
 */
export function convert(a: Quantity, to: Unit): Quantity | QuantityFault {
  if (a.unit === to) {
    const dimension = converted(a.dimension, to);
    return dimension === a.dimension ? a : { ...a, dimension };
  }
  if (!sameExponents(a.dimension, to.dimension)) {
    return calendarFault(a, to) ?? unlike(a, to);
  }
  if (isTemperature(a.dimension)) return convertTemperature(a, to);
  if (!compatible(a.dimension, to.dimension)) {
    return unlike(a, to);
  }
  const { numerator, denominator, identity } = conversion(a.unit, to);
  const dimension = converted(a.dimension, to);
  if (identity) return { ...a, unit: to, dimension };
  const start = a.fraction?.numerator ?? a.value;
  const below = a.fraction === undefined ? denominator : exactProduct(denominator, a.fraction.denominator);
  const result = scale(start, numerator, below);
  return rescaled(a, to, dimension, result.value, result.exact && (a.exact || a.fraction !== undefined));
}

/** The value in a unit as a binary float, for a formula. The caller has checked the dimension: otherwise it throws. */
export function floatIn(a: Quantity, unitText: string): number {
  const converted = convert(a, unit(unitText));
  if (isFault(converted)) throw new Error(converted.message);
  return converted.value.toNumber();
}

/** -1, 0 or 1 as `a` is less than, equal to or more than `b`, exactly, whatever their units. */
export function compare(a: Quantity, b: Quantity): -1 | 0 | 1 | QuantityFault {
  if (!compatible(a.dimension, b.dimension)) return dimensionFault("compare", a, b);
  if (a.unit === b.unit) return a.value.comparedTo(b.value) as -1 | 0 | 1;
  const asReadings = a.dimension.kind === "point" || b.dimension.kind === "point";
  const fromZero = (q: Quantity) => (asReadings ? q.value.plus(offsetOf(q.unit)) : q.value);
  const { numerator, denominator } = conversion(a.unit, b.unit);
  return compareProducts(fromZero(a), numerator, fromZero(b), denominator);
}

/** Whether two quantities are the same size, exactly; unlike dimensions never are. */
export function equal(a: Quantity, b: Quantity): boolean {
  return compare(a, b) === 0;
}

/** `a + b` in the unit of `a` (of the reading, where a difference and a temperature reading are added). */
export function add(a: Quantity, b: Quantity): Quantity | QuantityFault {
  if (!summable(a, b)) {
    return dimensionFault("add", a, b);
  }
  if (a.dimension.kind === "point" && b.dimension.kind === "point") {
    return {
      fault: "temperature-readings",
      operation: "add",
      message: `cannot add two temperature readings: temperature (${a.unit.symbol}) and temperature (${b.unit.symbol}); a difference is written in K`,
    };
  }
  if (b.dimension.kind === "point") return add(b, a);
  const dimension = a.dimension.kind === "plain" ? b.dimension : a.dimension;
  return sum(a, inUnitsOf(b, a.unit), dimension);
}

/** `a - b` in the unit of `a`; of two temperature readings the difference, in K (in degF for degF). */
export function subtract(a: Quantity, b: Quantity): Quantity | QuantityFault {
  if (isTemperature(a.dimension) && b.dimension.kind === "point") return temperatureDifference(a, b);
  if (!summable(a, b)) {
    return dimensionFault("subtract", a, b);
  }
  const dimension = a.dimension.kind === "plain" ? b.dimension : a.dimension;
  return sum(a, negate(inUnitsOf(b, a.unit)), dimension);
}

/** `-a`; of a temperature reading, the reading below zero of its scale. */
export function negate(a: Quantity): Quantity {
  const { value, unit, dimension, places, figures, exact, fraction } = a;
  const negated = { value: value.negated(), unit, dimension, places, figures, exact };
  return fraction === undefined
    ? negated
    : {
        ...negated,
        fraction: { numerator: fraction.numerator.negated(), denominator: fraction.denominator },
      };
}

/** The size without the sign. */
export function absolute(a: Quantity): Quantity {
  return a.value.isNegative() ? negate(a) : a;
}

/** The mean of one or more quantities, temperature readings included, in the unit of the first. */
export function meanOf(quantities: readonly [Quantity, ...Quantity[]]): Quantity | QuantityFault {
  const [first, ...others] = quantities;
  if (others.length === 0 && first.fraction === undefined) return meanOfOne(first);
  let total: Quantity | QuantityFault = asDifference({ ...first, value: decimal(0) });
  for (const other of others) {
    const step = subtract(other, first);
    if (isFault(step)) return step;
    total = add(total, step);
    if (isFault(total)) return total;
  }
  const share = divide(total, quantityOf(quantities.length));
  return isFault(share) ? share : add(first, share);
}

/** What dividing by one comes to: a kelvin that may be a reading or a difference is taken for a difference. */
function meanOfOne(only: Quantity): Quantity | QuantityFault {
  const dimension = only.dimension.kind === "plain" ? asDifference(only).dimension : only.dimension;
  return withinReach("add", dimension === only.dimension ? only : { ...only, dimension });
}

/** `a · b`, in the unit that a practitioner would choose. */
export function multiply(a: Quantity, b: Quantity): Quantity | QuantityFault {
  return product(a, b, 1);
}

/** `a / b`, in the unit that a practitioner would choose. */
export function divide(a: Quantity, b: Quantity): Quantity | QuantityFault {
  if (b.value.isZero()) return zeroFault("divide");
  return product(a, b, -1);
}

/**
 * `54.2 N.m`: a value that is to be shown in full with the decimals it was written with, any other with as many
 * significant figures as its least precise input, at least three; or with `figures`.
 */
export function formatQuantity(a: Quantity, options: { figures?: number } = {}): string {
  const { symbol } = a.unit;
  const number = formatValue(a, options.figures);
  if (symbol === "") return number;
  return symbol === "°" || symbol === "'" ? number + symbol : `${number} ${symbol}`;
}

function formatValue(a: Quantity, figures: number | undefined): string {
  if (figures !== undefined) return formatSignificant(a.value, figures);
  if (a.exact) return formatDecimal(a.value, a.places);
  return formatSignificant(a.value, Math.max(FEWEST_FIGURES, a.figures ?? COMPUTED_FIGURES));
}

function isTemperature(dimension: Dimension): boolean {
  return sameExponents(dimension, TEMPERATURE);
}

const TEMPERATURE = dimensionNamed("temperature");

/** A quantity with another value and unit that follow from it; its precision goes along. `exact`: nothing was rounded off. */
export function rescaled(
  a: Quantity,
  unit: Unit,
  dimension: Dimension,
  value: Decimal,
  exact: boolean,
): Quantity {
  const most =
    a.figures === undefined ? MOST_EXACT_FIGURES : Math.max(FEWEST_FIGURES, a.figures) + FIGURES_BEYOND;
  return {
    value,
    unit,
    dimension,
    places: undefined,
    figures: a.figures,
    exact: exact && value.precision() <= most,
  };
}

/** The result of an operation, or a fault where it is too large or too small to go on with. */
export function withinReach(operation: Operation, result: Quantity): Quantity | QuantityFault {
  const { value } = result;
  if (value.isFinite() && (value.isZero() || Math.abs(value.e) <= LARGEST_EXPONENT)) return result;
  return { fault: "magnitude", operation, message: `the result is beyond 1e${LARGEST_EXPONENT}` };
}

/** By the factor alone: the exponents agree, and a temperature is taken as a difference. */
function inUnitsOf(a: Quantity, to: Unit): Quantity {
  if (a.unit === to) return a;
  const { numerator, denominator, identity } = conversion(a.unit, to);
  if (identity) return { ...a, unit: to };
  const result = scale(a.value, numerator, denominator);
  return rescaled(a, to, a.dimension, result.value, a.exact && result.exact);
}

/** A temperature reading on another scale. */
function readingInUnitsOf(a: Quantity, to: Unit): Quantity {
  const { numerator, denominator } = conversion(a.unit, to);
  const result = scale(a.value.plus(offsetOf(a.unit)), numerator, denominator);
  const dimension = ofKind(a.dimension, "point");
  return rescaled(a, to, dimension, result.value.minus(offsetOf(to)), a.exact && result.exact);
}

function convertTemperature(a: Quantity, to: Unit): Quantity {
  const dimension = converted(a.dimension, to);
  return dimension.kind === "point" ? readingInUnitsOf(a, to) : inUnitsOf({ ...a, dimension }, to);
}

/** The kind of a converted value: its own where it has one, else that of the unit asked for. */
function converted(dimension: Dimension, to: Unit): Dimension {
  return dimension.kind === "plain" ? ofKind(dimension, to.dimension.kind) : dimension;
}

function offsetOf(unit: Unit): Decimal {
  if (unit.offset === undefined) return decimal(0);
  return new Decimal(unit.offset.numerator.toString()).div(unit.offset.denominator.toString());
}

function unlike(a: Quantity, to: Unit): DimensionFault {
  return dimensionFault("convert", a, { dimension: to.dimension, unit: to });
}

function calendarFault(a: Quantity, to: Unit): QuantityFault | undefined {
  const names = [a.dimension.name, to.dimension.name];
  if (!names.includes("calendar") || !names.includes("time")) return undefined;
  return {
    fault: "calendar",
    operation: "convert",
    message: `cannot convert ${a.unit.symbol} to ${to.symbol}: a month and a year have no fixed number of days; count them from a date`,
  };
}

/** A temperature difference goes with a reading, although their kinds differ. */
function summable(a: Quantity, b: Quantity): boolean {
  return compatible(a.dimension, b.dimension) || (isTemperature(a.dimension) && isTemperature(b.dimension));
}

function temperatureDifference(a: Quantity, b: Quantity): Quantity | QuantityFault {
  if (a.dimension.kind === "difference") return dimensionFault("subtract", a, b);
  const difference = sum(a, negate(readingInUnitsOf(b, a.unit)), ofKind(a.dimension, "difference"));
  return isFault(difference) || a.unit.system === "imperial"
    ? difference
    : { ...difference, unit: unit("K") };
}

function sum(a: Quantity, b: Quantity, dimension: Dimension): Quantity | QuantityFault {
  const value = a.value.plus(b.value);
  return withinReach("add", {
    value,
    unit: a.unit,
    dimension,
    places: more(a.places, b.places),
    figures: fewer(a.figures, b.figures),
    exact: a.exact && b.exact && (fitsSum(a.value, b.value) || value.minus(a.value).equals(b.value)),
  });
}

function more(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? (a ?? b) : Math.max(a, b);
}

/** The fewer figures of two; exact numbers have no end of them. */
function fewer(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? (a ?? b) : Math.min(a, b);
}

function product(a: Quantity, b: Quantity, sign: 1 | -1): Quantity | QuantityFault {
  const operation = sign === 1 ? "multiply" : "divide";
  if (a.dimension.kind === "point" || b.dimension.kind === "point") return readingFault(operation, a, b);
  const dimension = multiplyDimensions(a.dimension, powerDimension(b.dimension, sign));
  if (dimension.exponents.some((exponent) => Math.abs(exponent) > LARGEST_POWER)) {
    return powerFault(`a dimension with a power above ${LARGEST_POWER} is out of reach`);
  }
  const { unit, numerator, denominator } = productUnit(a.unit, b.unit, sign);
  const above = sign === 1 ? exactProduct(numerator, b.value) : numerator;
  const below = sign === 1 ? denominator : exactProduct(denominator, b.value);
  const { value, exact } = scale(a.value, above, below);
  const figures = fewer(a.figures, b.figures);
  return withinReach(
    operation,
    rescaled({ ...a, figures }, unit, dimension, value, a.exact && b.exact && exact),
  );
}
