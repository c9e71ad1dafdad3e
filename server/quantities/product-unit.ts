import type { Conversion } from "./conversion.ts";
import { conversionOf } from "./conversion.ts";
import type { Base, Dimension, DimensionName } from "./dimension.ts";
import { BASES, dimensionOf, RATIO, sameExponents } from "./dimension.ts";
import type { Rational } from "./rational.ts";
import { multiplyRational, powerRational, UNITY } from "./rational.ts";
import type { Unit, UnitPart } from "./unit.ts";
import { composeUnit, NO_UNIT, unit } from "./unit.ts";
import type { System } from "./unit-definitions.ts";

/** The unit of a product, and the factor that the product of the bare values takes on the way to it. */
export interface ProductUnit extends Conversion {
  readonly unit: Unit;
}

const products = new WeakMap<Unit, WeakMap<Unit, ProductUnit>>();
const quotients = new WeakMap<Unit, WeakMap<Unit, ProductUnit>>();

/**
 * The unit of `a · b` (`power` 1) or `a / b` (-1), simplified as a practitioner would: like units merge into the first
 * (mm times m is mm2), a unit that is made of others opens where that shortens the result (psi times in2 is lbf), and a
 * dimension with a name takes its customary unit (W / V is A) unless it is already in a customary form (N.mm, lbf/in).
 */
export function productUnit(a: Unit, b: Unit, power: 1 | -1): ProductUnit {
  const remembered = power === 1 ? products : quotients;
  const ofA = remembered.get(a) ?? new WeakMap<Unit, ProductUnit>();
  remembered.set(a, ofA);
  const result = ofA.get(b) ?? simplify(a, b, power);
  ofA.set(b, result);
  return result;
}

/** The customary unit of a dimension in one of the two systems; undefined for a dimension without a name. */
export function customaryUnit(dimension: Dimension, system: System): Unit | undefined {
  const name = dimensionOf(dimension.exponents).name;
  const pair = name === undefined ? undefined : CUSTOMARY[name];
  return pair === undefined ? undefined : unit(pair[system === "imperial" ? 1 : 0]);
}

/** The product of coherent units with these exponents: kg, m, s, A, K, deg and the counts. */
export function coherentUnit(dimension: Dimension): Unit {
  return composeUnit(
    BASES.flatMap((base, index) => {
      const power = dimension.exponents[index] ?? 0;
      const [part] = unit(COHERENT[base]).parts;
      return power === 0 || part === undefined ? [] : [{ unit: part.unit, power }];
    }),
  );
}

const COHERENT: Readonly<Record<Base, string>> = {
  length: "m",
  mass: "kg",
  time: "s",
  current: "A",
  temperature: "K",
  angle: "deg",
  calendar: "month",
  turn: "turn",
  click: "click",
  flat: "flat",
  slot: "slot",
  run: "run",
  link: "link",
};

/** Metric and imperial. */
const CUSTOMARY: Readonly<Partial<Record<DimensionName, readonly [string, string]>>> = {
  length: ["mm", "in"],
  area: ["mm2", "in2"],
  volume: ["l", "in3"],
  mass: ["kg", "lb"],
  time: ["s", "s"],
  angle: ["deg", "deg"],
  force: ["N", "lbf"],
  torque_or_energy: ["N.m", "lbf.ft"],
  pressure: ["bar", "psi"],
  stiffness: ["N/mm", "lbf/in"],
  power: ["W", "hp"],
  speed: ["m/s", "mph"],
  acceleration: ["m/s2", "ft/s2"],
  frequency: ["1/s", "1/s"],
  current: ["A", "A"],
  voltage: ["V", "V"],
  resistance: ["ohm", "ohm"],
  charge: ["Ah", "Ah"],
  volume_flow: ["l/min", "l/min"],
  density: ["kg/m3", "lb/in3"],
};

/** Compositions that stand as they are, by the dimensions and powers of their parts. */
const CUSTOMARY_FORMS: ReadonlySet<string> = new Set([
  "force 1·length 1",
  "force 1·length -1",
  "force 1·length -2",
  "length 1·time -1",
  "length 1·time -2",
  "length -3·mass 1",
  "mass 1·volume -1",
  "time -1·volume 1",
  "power 1·time 1",
  "current 1·time 1",
  "length 1·resistance 1",
  "angle 1·time -1",
]);

interface Merged {
  readonly parts: readonly UnitPart[];
  readonly factor: Rational;
}

function simplify(a: Unit, b: Unit, power: 1 | -1): ProductUnit {
  if (b === NO_UNIT) return { unit: a, ...conversionOf(UNITY) };
  if (a === NO_UNIT && power === 1) return { unit: b, ...conversionOf(UNITY) };
  const parts = [...a.parts, ...b.parts.map((part) => ({ ...part, power: part.power * power }))];
  const asWritten = merge(parts);
  const opened = merge(parts.flatMap(open));
  const best = opened.parts.length < asWritten.parts.length ? opened : asWritten;
  const composed = composeUnit(best.parts);
  const customary = standsAsItIs(best.parts)
    ? undefined
    : customaryUnit(composed.dimension, systemOfBoth(a, b));
  if (customary === undefined) return { unit: composed, ...conversionOf(best.factor) };
  const rest = multiplyRational(composed.factor, powerRational(customary.factor, -1));
  return { unit: customary, ...conversionOf(multiplyRational(best.factor, rest)) };
}

function standsAsItIs(parts: readonly UnitPart[]): boolean {
  if (parts.length <= 1) return true;
  const form = parts.map((part) => `${part.unit.dimension.name} ${part.power}`);
  return CUSTOMARY_FORMS.has(form.sort().join("·"));
}

function systemOfBoth(a: Unit, b: Unit): System {
  return a.system === "imperial" || b.system === "imperial" ? "imperial" : "metric";
}

/** Like units become the first of them; bare ratios such as % go into the factor. */
function merge(parts: readonly UnitPart[]): Merged {
  const merged: { unit: UnitPart["unit"]; power: number }[] = [];
  let factor = UNITY;
  for (const part of parts) {
    if (part.unit.dimension === RATIO) {
      factor = multiplyRational(factor, powerRational(part.unit.factor, part.power));
      continue;
    }
    const like = merged.find((other) => sameExponents(other.unit.dimension, part.unit.dimension));
    if (like === undefined) {
      merged.push({ unit: part.unit, power: part.power });
      continue;
    }
    const ratio = multiplyRational(part.unit.factor, powerRational(like.unit.factor, -1));
    factor = multiplyRational(factor, powerRational(ratio, part.power));
    like.power += part.power;
  }
  return { parts: merged.filter((part) => part.power !== 0), factor };
}

/** What a unit is made of, at its power; itself where it is made of nothing. The factors agree exactly. */
function open(part: UnitPart): UnitPart[] {
  if (part.unit.madeOf === undefined) return [part];
  return unit(part.unit.madeOf).parts.map((inner) => ({ unit: inner.unit, power: inner.power * part.power }));
}
