/**
 * Conversions against two general-purpose programs that were written independently: GNU units (Debian package `units`) and
 * pint (Debian package `python3-pint`). Every pair of units of one dimension is asked, each program once for all of them.
 */

import { spawnSync } from "node:child_process";
import { afterAll, describe, expect, test } from "vitest";
import type { Quantity } from "../../server/quantities/quantity.ts";
import { asDifference, convert, quantity, quantityOf } from "../../server/quantities/quantity.ts";
import { isFault } from "../../server/quantities/quantity-fault.ts";
import type { Unit } from "../../server/quantities/unit.ts";
import { allUnits, unit } from "../../server/quantities/unit.ts";

/** Names of a unit in both programs. A revolution per minute is a frequency for us, an angular speed for them. */
const NAMES: Readonly<Record<string, readonly [gnu: string, pint: string]>> = {
  m: ["meter", "meter"],
  in: ["inch", "inch"],
  thou: ["mil", "thou"],
  mil: ["mil", "mil_length"],
  ft: ["foot", "foot"],
  yd: ["yard", "yard"],
  mile: ["mile", "mile"],
  g: ["gram", "gram"],
  lb: ["pound", "pound"],
  oz: ["ounce", "ounce"],
  s: ["second", "second"],
  min: ["minute", "minute"],
  h: ["hour", "hour"],
  d: ["day", "day"],
  week: ["week", "week"],
  month: ["month", "month"],
  year: ["year", "year"],
  deg: ["degree", "degree"],
  "°": ["degree", "degree"],
  arcmin: ["arcminute", "arcminute"],
  "'": ["arcminute", "arcminute"],
  arcsec: ["arcsecond", "arcsecond"],
  rad: ["radian", "radian"],
  K: ["kelvin", "kelvin"],
  degC: ["degC", "delta_degC"],
  "°C": ["degC", "delta_degC"],
  degF: ["degF", "delta_degF"],
  "°F": ["degF", "delta_degF"],
  N: ["newton", "newton"],
  kgf: ["kgf", "kgf"],
  lbf: ["lbf", "force_pound"],
  ozf: ["(ounce force)", "force_ounce"],
  J: ["joule", "joule"],
  Pa: ["pascal", "pascal"],
  bar: ["bar", "bar"],
  psi: ["psi", "psi"],
  ksi: ["(1000 psi)", "ksi"],
  inHg: ["inHg", "inHg"],
  W: ["watt", "watt"],
  hp: ["horsepower", "horsepower"],
  PS: ["metrichorsepower", "metric_horsepower"],
  l: ["liter", "liter"],
  cc: ["cc", "cc"],
  imp_gal: ["brgallon", "imperial_gallon"],
  imp_pt: ["brpint", "imperial_pint"],
  imp_floz: ["brfloz", "imperial_fluid_ounce"],
  us_gal: ["gallon", "gallon"],
  us_pt: ["pint", "pint"],
  us_floz: ["floz", "fluid_ounce"],
  Hz: ["(1/second)", "(1/second)"],
  rpm: ["(1/minute)", "(1/minute)"],
  mph: ["mph", "mph"],
  A: ["ampere", "ampere"],
  V: ["volt", "volt"],
  ohm: ["ohm", "ohm"],
  Ah: ["(ampere hour)", "(ampere*hour)"],
};

const PREFIXES: Readonly<Record<string, string>> = {
  µ: "1e-6",
  m: "1e-3",
  c: "1e-2",
  d: "1e-1",
  k: "1e3",
  M: "1e6",
  G: "1e9",
};

/** They convert to nothing. */
const COUNTS: readonly string[] = ["turn", "click", "flat", "slot", "run", "link"];

interface Pair {
  readonly from: Unit;
  readonly to: Unit;
}

const pairs: readonly Pair[] = allUnits()
  .map((text) => unit(text))
  .filter(({ symbol }) => symbol !== "%" && !COUNTS.includes(symbol))
  .flatMap((from, _, units) =>
    units
      .filter((to) => to !== from && to.dimension.exponents.join() === from.dimension.exponents.join())
      .filter((to) => !isFault(convert(one(from), to)))
      .map((to) => ({ from, to })),
  );

/** Readings on the scales of temperature, none below absolute zero. */
const readings = ["-40", "0", "20", "36.6", "100", "450"].flatMap((value) =>
  (["degC", "degF", "K"] as const)
    .filter((from) => from !== "K" || !value.startsWith("-"))
    .flatMap((from) =>
      (["degC", "degF", "K"] as const).filter((to) => to !== from).map((to) => ({ value, from, to })),
    ),
);

describe("every pair of units of one dimension", () => {
  test("there are many", () => {
    expect(pairs.length).toBeGreaterThan(1000);
  });

  // Prints 17 digits of a binary double, whose chain of factors may be off in the last three.
  test("agrees with GNU units to 13 digits", () => {
    const asked = pairs.map(({ from, to }) => [expression(from, 0), expression(to, 0)] as const);
    const temperatures = readings.map(({ value, from, to }) => {
      const scale = { degC: "tempC", degF: "tempF", K: "tempK" };
      return [`${scale[from]}(${value})`, scale[to]] as const;
    });
    const answers = gnuUnits([...asked, ...temperatures]);
    expect(differing(answers.slice(0, pairs.length), 1e-13)).toEqual([]);
    expect(differingReadings(answers.slice(pairs.length))).toEqual([]);
  });

  // Python floats with longer chains through its base units.
  test("agrees with pint to 12 digits", () => {
    const asked = pairs.map(({ from, to }) => ["", expression(from, 1), expression(to, 1)] as const);
    const scale = { degC: "degC", degF: "degF", K: "kelvin" };
    const temperatures = readings.map(({ value, from, to }) => [value, scale[from], scale[to]] as const);
    const answers = pint([...asked, ...temperatures]);
    expect(differing(answers.slice(0, pairs.length), 1e-12)).toEqual([]);
    expect(differingReadings(answers.slice(pairs.length))).toEqual([]);
  });
});

afterAll(() => {
  process.stdout.write(
    `units: ${pairs.length} pairs and ${readings.length} temperatures checked against two programs\n`,
  );
});

/** One of the unit; of a temperature scale one degree of difference. */
function one(from: Unit): Quantity {
  return asDifference(quantityOf(1, from));
}

function ours(from: Quantity, to: Unit): number {
  const result = convert(from, to);
  if (isFault(result)) throw new Error(result.message);
  return result.value.toNumber();
}

function differing(answers: readonly number[], tolerance: number): readonly string[] {
  return pairs.flatMap(({ from, to }, index) => {
    const [our, their] = [ours(one(from), to), answers[index] ?? Number.NaN];
    const agrees = Math.abs(our - their) <= tolerance * Math.abs(their);
    return agrees ? [] : [`1 ${from.symbol} in ${to.symbol}: ${our}, not ${their}`];
  });
}

/** Readings to a hundred-millionth of a degree, as the offsets cost digits. */
function differingReadings(answers: readonly number[]): readonly string[] {
  return readings.flatMap(({ value, from, to }, index) => {
    const reading = quantity(value, from);
    if (isFault(reading)) throw new Error(reading.fault);
    const [our, their] = [ours(reading, unit(to)), answers[index] ?? Number.NaN];
    return Math.abs(our - their) <= 1e-8 ? [] : [`${value} ${from} in ${to}: ${our}, not ${their}`];
  });
}

/** The unit in the words of GNU units (0) or pint (1): a product of powers. */
function expression({ parts }: Unit, program: 0 | 1): string {
  return parts
    .map((part) => `(${nameOf(part.unit.symbol, program)})${powerText(part.power, program)}`)
    .join("*");
}

function powerText(power: number, program: 0 | 1): string {
  return program === 0 ? `^${power}` : `**${power}`;
}

function nameOf(symbol: string, program: 0 | 1): string {
  const name = NAMES[symbol];
  if (name !== undefined) return name[program];
  const prefix = PREFIXES[symbol.charAt(0)];
  const base = NAMES[symbol.slice(1)];
  if (prefix === undefined || base === undefined) throw new Error(`no name for ${symbol}`);
  return `${prefix}*${base[program]}`;
}

function gnuUnits(asked: readonly (readonly [have: string, want: string])[]): readonly number[] {
  const { error, stdout, stderr } = spawnSync("units", ["--quiet", "--terse", "--output-format", "%.17g"], {
    input: asked.flat().join("\n"),
    encoding: "utf8",
    env: { ...process.env, LC_ALL: "C", UNITS_ENGLISH: "US" },
  });
  if (error !== undefined)
    throw new Error("GNU units does not start: install the Debian package units", {
      cause: error,
    });
  const lines = stdout.trim().split("\n");
  if (lines.length !== asked.length)
    throw new Error(`GNU units gave ${lines.length} answers: ${stdout} ${stderr}`);
  return lines.map(Number);
}

const PINT_PROGRAM = `
import json, sys
import pint
registry = pint.UnitRegistry()
registry.define("mil_length = 0.001 * inch")

def answer(value, have, want):
    if have in ("degC", "degF", "kelvin"):
        return registry.Quantity(float(value), have).to(want).magnitude
    return (registry.parse_expression(have) / registry.parse_expression(want)).to("").magnitude

answers = [float(answer(*asked)) for asked in json.load(sys.stdin)]
json.dump(answers, sys.stdout)
`;

function pint(asked: readonly (readonly [value: string, have: string, want: string])[]): readonly number[] {
  const { error, status, stdout, stderr } = spawnSync("/usr/bin/python3", ["-c", PINT_PROGRAM], {
    input: JSON.stringify(asked),
    encoding: "utf8",
  });
  if (error !== undefined || stderr.includes("No module named 'pint'")) {
    throw new Error("pint does not start: install the Debian package python3-pint", { cause: error });
  }
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}
