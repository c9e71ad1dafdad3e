import { withArticle } from "../../grammar/article.ts";
import type { Dimension, DimensionName } from "./dimension.ts";
import {
  compatible,
  describeDimension,
  dimensionNamed,
  dimensionOf,
  multiplyDimensions,
  powerDimension,
  RATIO,
} from "./dimension.ts";
import type { Rational } from "./rational.ts";
import { multiplyRational, powerRational, UNITY } from "./rational.ts";
import { explainUnknownUnit } from "./unit-advice.ts";
import type { NamedUnit, System } from "./unit-definitions.ts";
import { everySymbol, namedUnit, plainSymbols } from "./unit-definitions.ts";
import type { UnitAdvice } from "./unlikely-unit.ts";
import { explainUnlikelyUnit } from "./unlikely-unit.ts";

/** A named unit raised to a whole power. */
export interface UnitPart {
  readonly unit: NamedUnit;
  readonly power: number;
}

/** A unit of measure, simple or composed. The same text gives the same object. */
export interface Unit {
  /** As written, tidied: `·` becomes `.`, `^2` becomes `2`, a plural of time the singular. Empty for a bare number. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** Coherent units (SI, and deg for angles) in one of it. */
  readonly factor: Rational;
  /** Of a temperature scale alone: its units from absolute zero to its own zero. */
  readonly offset?: Rational;
  readonly parts: readonly UnitPart[];
  readonly system: System;
}

/** A text that is no unit, or one that is surely a slip (`lb.ft`, a mass times a length, where lbf.ft is meant). */
export interface UnitFault extends UnitAdvice {
  readonly fault: "unknown-unit";
  readonly text: string;
}

/** The unit of a bare number. */
export const NO_UNIT: Unit = { symbol: "", dimension: RATIO, factor: UNITY, parts: [], system: "either" };

const LONGEST_TEXT = 60;
const MOST_PARTS = 8;
/** Texts remembered; beyond it the memory starts afresh, so that endless new spellings cannot fill it. */
const MOST_REMEMBERED = 4000;

const read = new Map<string, Unit | UnitFault>();
const composed = new Map<string, Unit>();

/**
 * Reads a unit expression: named units joined by `.` or `·` (product) and `/`, each with a power `2 3 4` or `^n`;
 * `1/K` too. Spellings that mean the same are read (`°C`, `lbf·ft`, `Nm`, `mm²`, `um`); anything else is a fault with the
 * likely unit. The answer is remembered by text.
 */
export function readUnit(text: string): Unit | UnitFault {
  const remembered = read.get(text);
  if (remembered !== undefined) return remembered;
  if (read.size >= MOST_REMEMBERED) read.clear();
  const result = readAfresh(text);
  read.set(text, result);
  return result;
}

/** The unit of a text fixed in source code; throws on a fault. Never for what a user wrote. */
export function unit(text: string): Unit {
  const result = readUnit(text);
  if (isUnitFault(result)) throw new Error(`no such unit: ${text}`);
  return result;
}

/** Whether `readUnit` gave a fault. */
export function isUnitFault(result: Unit | UnitFault): result is UnitFault {
  return "fault" in result;
}

/**
 * A unit of these parts, in their order, with the symbol that follows from them: for results, so a slip in a text (`kg.m`)
 * and a power beyond 4 are allowed here. The same parts give the same object.
 */
export function composeUnit(parts: readonly UnitPart[]): Unit {
  if (parts.length === 0) return NO_UNIT;
  const symbol = unitSymbol(parts);
  const remembered = composed.get(symbol);
  if (remembered !== undefined) return remembered;
  if (composed.size >= MOST_REMEMBERED) composed.clear();
  const result = assemble(parts, symbol);
  composed.set(symbol, result);
  return result;
}

/** The text of a product of named units: `N.mm`, `kg/m3`, `1/K`. */
function unitSymbol(parts: readonly UnitPart[]): string {
  const above = parts.filter((part) => part.power > 0).map((part) => withPower(part.unit.symbol, part.power));
  const below = parts
    .filter((part) => part.power < 0)
    .map((part) => `/${withPower(part.unit.symbol, -part.power)}`);
  return (above.length === 0 && below.length > 0 ? "1" : above.join(".")) + below.join("");
}

/** Units offered for a dimension, the customary ones first. */
export function unitsOf(dimension: DimensionName): readonly string[] {
  return CUSTOMARY[dimension] ?? [];
}

/**
 * What was probably meant by a unit that reads but is of another dimension than the one due: a mass for a force
 * (`kg/cm2` for a pressure is kgf/cm2), else the customary units of that dimension.
 */
export function adviseUnit(found: Unit, due: DimensionName): UnitAdvice {
  const asForce = readUnit(found.symbol.replace(/(?<![A-Za-z_µ])(lb|kg|oz)(?![A-Za-z_])/g, "$1f"));
  if (!isUnitFault(asForce) && asForce !== found && compatible(asForce.dimension, dimensionNamed(due))) {
    const [mass = ""] = /lb|kg|oz/.exec(found.symbol) ?? [];
    const reason = `${mass} is a mass; ${describeDue(due)} needs the force ${mass}f`;
    return { nearest: [asForce.symbol], reason, sure: true };
  }
  return { nearest: unitsOf(due).slice(0, 4), sure: false };
}

function describeDue(due: DimensionName): string {
  const words = describeDimension(dimensionNamed(due));
  return withArticle(words);
}

/** Every unit worth offering: those of each dimension, then the remaining symbols with their prefixes. */
export function allUnits(): readonly string[] {
  everyUnit ??= [...new Set([...customaryUnits, ...everySymbol()])];
  return everyUnit;
}

let everyUnit: readonly string[] | undefined;

/** Units by dimension, the customary ones of workshops first. */
const CUSTOMARY: Readonly<Partial<Record<DimensionName, readonly string[]>>> = {
  ratio: ["%"],
  length: ["mm", "in", "thou", "µm", "m", "cm", "ft", "km", "mile", "yd", "mil", "dm"],
  area: ["mm2", "cm2", "in2", "m2", "ft2"],
  volume: [
    "l",
    "ml",
    "cc",
    "imp_pt",
    "us_pt",
    "imp_gal",
    "us_gal",
    "imp_floz",
    "us_floz",
    "mm3",
    "cm3",
    "in3",
    "m3",
    "dm3",
  ],
  mass: ["kg", "g", "lb", "oz", "mg"],
  time: ["h", "min", "s", "d", "week", "ms"],
  calendar: ["month", "year"],
  angle: ["deg", "arcmin", "arcsec", "°", "'", "rad"],
  temperature: ["degC", "degF", "K", "°C", "°F"],
  temperature_difference: ["K", "degC", "degF"],
  force: ["N", "kN", "lbf", "kgf", "ozf", "MN"],
  torque: ["N.m", "lbf.ft", "lbf.in", "kgf.m", "kgf.cm", "ozf.in", "ft.lbf", "in.lbf", "Nm", "N.mm", "kN.m"],
  energy: ["J", "kJ", "kW.h", "W.h", "MJ"],
  torque_or_energy: ["N.m", "lbf.ft", "J"],
  pressure: ["bar", "psi", "kPa", "MPa", "N/mm2", "kgf/cm2", "inHg", "ksi", "Pa", "mbar", "GPa"],
  stiffness: ["N/mm", "lbf/in", "kgf/mm", "N/m", "kN/m"],
  power: ["kW", "W", "hp", "PS"],
  speed: ["km/h", "mph", "m/s", "mm/s", "ft/min"],
  acceleration: ["m/s2"],
  frequency: ["rpm", "Hz", "kHz"],
  angular_speed: ["deg/s", "rad/s"],
  current: ["A", "mA"],
  voltage: ["V", "mV", "kV"],
  resistance: ["ohm", "mohm", "kohm", "Mohm"],
  resistivity: ["ohm.mm2/m", "ohm.m"],
  charge: ["Ah", "mAh"],
  expansion: ["1/K", "µm/m/K"],
  volume_flow: ["l/min", "l/h", "ml/min", "imp_gal/h", "us_gal/h"],
  density: ["kg/m3", "g/cm3", "kg/l", "lb/in3"],
  turn: ["turn"],
  click: ["click"],
  flat: ["flat"],
  slot: ["slot"],
  run: ["run"],
  link: ["link"],
};

const customaryUnits: readonly string[] = [...new Set([...Object.values(CUSTOMARY).flat(), ...plainSymbols])];

/** Without `Nm`, which is another spelling of N.m, so that there is one answer. */
const firstSpellings = customaryUnits.filter((symbol) => symbol !== "Nm");

function readAfresh(text: string): Unit | UnitFault {
  const tidy = tidied(text);
  if (tidy.length === 0 || tidy.length > LONGEST_TEXT) return fault(text, { nearest: [], sure: false });
  const unlikely = explainUnlikelyUnit(tidy);
  if (unlikely !== undefined) return fault(text, unlikely);
  const parts = readParts(tidy);
  if (parts === undefined) return fault(text, explainUnknownUnit(tidy, firstSpellings, allUnits()));
  return assemble(parts, tidy.includes("Nm") ? tidy : unitSymbol(parts));
}

function fault(text: string, advice: UnitAdvice): UnitFault {
  return { fault: "unknown-unit", text, ...advice };
}

const SUPERSCRIPTS: Readonly<Record<string, string>> = { "²": "2", "³": "3", "⁴": "4" };

function tidied(text: string): string {
  return text
    .trim()
    .replace(/[·⋅•]/g, ".")
    .replace(/\u03bc/g, "µ")
    .replace(/\u2126/g, "Ω")
    .replace(/\u2103/g, "°C")
    .replace(/\u2109/g, "°F")
    .replace(/[\u2032\u2019]/g, "'")
    .replace(/[²³⁴]/g, (digit) => SUPERSCRIPTS[digit] ?? "");
}

const FACTOR = /^([A-Za-zµ°%'Ω_]+)(?:([234])|\^(-?[1-4]))?$/;

/** The parts in the order written, or undefined when a word is no unit. */
function readParts(text: string): UnitPart[] | undefined {
  const parts: UnitPart[] = [];
  const words = (text.startsWith("1/") ? text.slice(1) : text).split(/([./])/);
  let sign = 1;
  for (let index = 0; index < words.length; index++) {
    const word = words[index] ?? "";
    if (index % 2 === 1) {
      sign = word === "/" ? -1 : 1;
      continue;
    }
    if (word === "" && index === 0 && text.startsWith("1/")) continue;
    const match = FACTOR.exec(word);
    if (match === null) return undefined;
    const [, name = "", digit, exponent] = match;
    const power = sign * Number(digit ?? exponent ?? 1);
    if (name === "Nm" && power === 1) {
      parts.push({ unit: known("N"), power: 1 }, { unit: known("m"), power: 1 });
      continue;
    }
    const found = namedUnit(name);
    if (found === undefined) return undefined;
    parts.push({ unit: found, power });
  }
  return parts.length <= MOST_PARTS ? parts : undefined;
}

function known(symbol: string): NamedUnit {
  return namedUnit(symbol) as NamedUnit;
}

function assemble(parts: readonly UnitPart[], symbol: string): Unit {
  const [only] = parts;
  if (only !== undefined && parts.length === 1 && only.power === 1) {
    const { dimension, factor, offset, system } = only.unit;
    return { symbol, dimension, factor, parts, system, ...(offset === undefined ? {} : { offset }) };
  }
  let dimension = RATIO;
  let factor = UNITY;
  for (const part of parts) {
    dimension = multiplyDimensions(dimension, powerDimension(part.unit.dimension, part.power));
    factor = multiplyRational(factor, powerRational(part.unit.factor, part.power));
  }
  return {
    symbol,
    dimension: dimensionOf(dimension.exponents, kindOf(parts)),
    factor,
    parts,
    system: systemOf(parts),
  };
}

/**
 * A force times a length, nothing else in it, is a torque; a power times a time, or joules with bare numbers, is an energy.
 * The kind is dropped by `dimensionOf` where the exponents are those of neither.
 */
function kindOf(parts: readonly UnitPart[]): "torque" | "energy" | "plain" {
  const names = parts
    .filter((part) => part.unit.dimension !== RATIO)
    .map((part) => [part.unit.dimension.name, part.power].join(" "));
  const written = names.sort().join();
  if (written === "force 1,length 1") return "torque";
  if (written === "power 1,time 1" || written === "energy 1") return "energy";
  return "plain";
}

function systemOf(parts: readonly UnitPart[]): System {
  if (parts.some((part) => part.unit.system === "imperial")) return "imperial";
  return parts.some((part) => part.unit.system === "metric") ? "metric" : "either";
}

function withPower(symbol: string, power: number): string {
  if (power === 1) return symbol;
  return power <= 4 ? `${symbol}${power}` : `${symbol}^${power}`;
}
