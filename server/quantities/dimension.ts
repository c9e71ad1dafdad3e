/**
 * Dimensions. Beside the physical base dimensions, an angle, a calendar step and each kind of count are bases of
 * their own, so that one degree and one millimetre, or a turn and a click, never add.
 */
export const BASES = [
  "length",
  "mass",
  "time",
  "current",
  "temperature",
  "angle",
  "calendar",
  "turn",
  "click",
  "flat",
  "slot",
  "run",
  "link",
] as const;

export type Base = (typeof BASES)[number];

/**
 * What the exponents alone do not say.
 * `torque` and `energy`: of force times length, which it is; `plain`, a product, may be read as either.
 * `point`: a temperature on a scale; `difference`: between two of them; `plain`, written in K, may be read as either.
 */
export type Kind = "plain" | "torque" | "energy" | "point" | "difference";

export type DimensionName =
  | "ratio"
  | "length"
  | "area"
  | "volume"
  | "mass"
  | "time"
  | "calendar"
  | "angle"
  | "temperature"
  | "temperature_difference"
  | "force"
  | "torque"
  | "energy"
  | "torque_or_energy"
  | "pressure"
  | "stiffness"
  | "power"
  | "speed"
  | "acceleration"
  | "frequency"
  | "angular_speed"
  | "current"
  | "voltage"
  | "resistance"
  | "resistivity"
  | "charge"
  | "expansion"
  | "volume_flow"
  | "density"
  | "turn"
  | "click"
  | "flat"
  | "slot"
  | "run"
  | "link";

/** An immutable dimension. There is one object for each, so two are the same when they are identical. */
export interface Dimension {
  /** Powers of the bases, in the order of BASES; whole numbers. */
  readonly exponents: readonly number[];
  readonly kind: Kind;
  readonly name: DimensionName | undefined;
}

type Powers = Partial<Record<Base, number>>;

const known = new Map<string, Dimension>();

const NAMED: readonly (readonly [DimensionName, Powers, Kind])[] = [
  ["ratio", {}, "plain"],
  ["length", { length: 1 }, "plain"],
  ["area", { length: 2 }, "plain"],
  ["volume", { length: 3 }, "plain"],
  ["mass", { mass: 1 }, "plain"],
  ["time", { time: 1 }, "plain"],
  ["calendar", { calendar: 1 }, "plain"],
  ["angle", { angle: 1 }, "plain"],
  ["temperature", { temperature: 1 }, "plain"],
  ["temperature", { temperature: 1 }, "point"],
  ["temperature_difference", { temperature: 1 }, "difference"],
  ["force", { mass: 1, length: 1, time: -2 }, "plain"],
  ["torque_or_energy", { mass: 1, length: 2, time: -2 }, "plain"],
  ["torque", { mass: 1, length: 2, time: -2 }, "torque"],
  ["energy", { mass: 1, length: 2, time: -2 }, "energy"],
  ["pressure", { mass: 1, length: -1, time: -2 }, "plain"],
  ["stiffness", { mass: 1, time: -2 }, "plain"],
  ["power", { mass: 1, length: 2, time: -3 }, "plain"],
  ["speed", { length: 1, time: -1 }, "plain"],
  ["acceleration", { length: 1, time: -2 }, "plain"],
  ["frequency", { time: -1 }, "plain"],
  ["angular_speed", { angle: 1, time: -1 }, "plain"],
  ["current", { current: 1 }, "plain"],
  ["voltage", { mass: 1, length: 2, time: -3, current: -1 }, "plain"],
  ["resistance", { mass: 1, length: 2, time: -3, current: -2 }, "plain"],
  ["resistivity", { mass: 1, length: 3, time: -3, current: -2 }, "plain"],
  ["charge", { current: 1, time: 1 }, "plain"],
  ["expansion", { temperature: -1 }, "plain"],
  ["volume_flow", { length: 3, time: -1 }, "plain"],
  ["density", { mass: 1, length: -3 }, "plain"],
  ["turn", { turn: 1 }, "plain"],
  ["click", { click: 1 }, "plain"],
  ["flat", { flat: 1 }, "plain"],
  ["slot", { slot: 1 }, "plain"],
  ["run", { run: 1 }, "plain"],
  ["link", { link: 1 }, "plain"],
];

const byName = new Map<DimensionName, Dimension>();
for (const [name, powers, kind] of NAMED) {
  const exponents = BASES.map((base) => powers[base] ?? 0);
  const dimension: Dimension = { exponents, kind, name };
  known.set(`${exponents.join()}|${kind}`, dimension);
  if (!byName.has(name)) byName.set(name, dimension);
}

/** The dimension of a name; of `temperature` the one that a value in K has. */
export function dimensionNamed(name: DimensionName): Dimension {
  return byName.get(name) as Dimension;
}

/** Every named dimension. */
export const dimensionNames: readonly DimensionName[] = [...byName.keys()];

export const RATIO: Dimension = dimensionNamed("ratio");

/** The one object for these exponents and this kind; a kind that does not apply to the exponents becomes `plain`. */
export function dimensionOf(exponents: readonly number[], kind: Kind = "plain"): Dimension {
  const key = exponents.join();
  const exact = known.get(`${key}|${kind}`);
  if (exact !== undefined) return exact;
  if (kind !== "plain") return dimensionOf(exponents, "plain");
  const dimension: Dimension = { exponents: [...exponents], kind, name: undefined };
  known.set(`${key}|plain`, dimension);
  return dimension;
}

/** The same exponents under another kind, where that kind applies to them. */
export function ofKind(dimension: Dimension, kind: Kind): Dimension {
  return dimension.kind === kind ? dimension : dimensionOf(dimension.exponents, kind);
}

/** A torque or an energy stays one when it is multiplied by a bare number; every other product is `plain`. */
export function multiplyDimensions(a: Dimension, b: Dimension): Dimension {
  if (b === RATIO) return a;
  if (a === RATIO) return b;
  return dimensionOf(a.exponents.map((power, index) => power + (b.exponents[index] ?? 0)));
}

/** `dimension` to a whole power. */
export function powerDimension(dimension: Dimension, exponent: number): Dimension {
  if (exponent === 1) return dimension;
  return dimensionOf(dimension.exponents.map((power) => power * exponent + 0));
}

/** Half of every exponent, for a square root; undefined when one of them is odd. */
export function rootDimension(dimension: Dimension): Dimension | undefined {
  if (dimension.exponents.some((power) => power % 2 !== 0)) return undefined;
  return dimensionOf(dimension.exponents.map((power) => power / 2));
}

/** Whether the exponents agree; the kinds may differ. */
export function sameExponents(a: Dimension, b: Dimension): boolean {
  if (a === b) return true;
  for (let index = 0; index < a.exponents.length; index++) {
    if (a.exponents[index] !== b.exponents[index]) return false;
  }
  return true;
}

/**
 * Whether a value of one can be read as the other: the same exponents, and kinds that do not contradict
 * (a plain product of force and length is a torque or an energy as asked; a torque is never an energy).
 */
export function compatible(a: Dimension, b: Dimension): boolean {
  if (a === b) return true;
  return sameExponents(a, b) && (a.kind === b.kind || a.kind === "plain" || b.kind === "plain");
}

/** Words for a message: `torque`, `temperature difference`, `mass·length^-2`. */
export function describeDimension(dimension: Dimension): string {
  if (dimension.name === "ratio") return "plain number";
  if (dimension.name === "calendar") return "time in calendar steps";
  if (dimension.name === "torque_or_energy") return "torque or energy (force times length)";
  if (dimension.name !== undefined) {
    const counted = isCount(dimension.name) ? "count of " : "";
    return `${counted}${dimension.name.replace(/_/g, " ")}${counted === "" ? "" : "s"}`;
  }
  return BASES.flatMap((base, index) => {
    const power = dimension.exponents[index] ?? 0;
    if (power === 0) return [];
    return power === 1 ? [base] : [`${base}^${power}`];
  }).join("·");
}

function isCount(name: DimensionName): boolean {
  return (
    name === "turn" ||
    name === "click" ||
    name === "flat" ||
    name === "slot" ||
    name === "run" ||
    name === "link"
  );
}
