import type { Dimension, DimensionName, Kind } from "./dimension.ts";
import { dimensionNamed, ofKind } from "./dimension.ts";
import type { Rational } from "./rational.ts";
import { multiplyRational, rational } from "./rational.ts";

/** Whose workshop a unit comes from: decides the customary unit of a result. */
export type System = "metric" | "imperial" | "either";

/** A unit with a name of its own, a prefix included: `mm`, `lbf`, `imp_gal`. */
export interface NamedUnit {
  readonly symbol: string;
  readonly dimension: Dimension;
  /** Coherent units (m, kg, s, A, K, and deg for angles) in one of it. */
  readonly factor: Rational;
  /** Of a temperature scale: its units from absolute zero to its own zero. */
  readonly offset?: Rational;
  readonly system: System;
  /** What it is made of, as a unit expression, so that psi times in2 is lbf. */
  readonly madeOf?: string;
  /** Where the factor is defined. */
  readonly source: string;
}

interface Definition {
  readonly symbol: string;
  readonly dimension: DimensionName;
  readonly factor: string;
  readonly kind?: Kind;
  readonly offset?: string;
  readonly prefixes?: string;
  readonly system?: System;
  readonly madeOf?: string;
  readonly source: string;
}

const SI = "SI Brochure, 9th edition (BIPM, 2019)";
const YARD_AND_POUND =
  "international yard and pound agreement, 1959: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, exactly";
const STANDARD_GRAVITY = "3rd CGPM, 1901: standard acceleration of free fall 9.80665 m/s2";
const POUND_FORCE = `${YARD_AND_POUND}; ${STANDARD_GRAVITY}`;
const IMPERIAL_GALLON =
  "imperial gallon 4.54609 l exactly (Weights and Measures Act 1985, United Kingdom; NIST SP 811)";
const US_GALLON = "US gallon 231 in3 exactly (NIST Handbook 44, appendix C; NIST SP 811)";
const CALENDAR = "ISO 8601: calendar month and calendar year of 12 of them; no fixed number of days";
const COUNT = "a count; converts to nothing but itself";

/** All unit symbols but the prefixed ones. Factors are exact except that of rad, which has 50 digits of pi. */
const DEFINITIONS: readonly Definition[] = [
  { symbol: "m", dimension: "length", factor: "1", prefixes: "µ m k M G c d", source: SI },
  { symbol: "in", dimension: "length", factor: "0.0254", system: "imperial", source: YARD_AND_POUND },
  { symbol: "thou", dimension: "length", factor: "0.0000254", system: "imperial", source: YARD_AND_POUND },
  { symbol: "mil", dimension: "length", factor: "0.0000254", system: "imperial", source: YARD_AND_POUND },
  { symbol: "ft", dimension: "length", factor: "0.3048", system: "imperial", source: YARD_AND_POUND },
  { symbol: "yd", dimension: "length", factor: "0.9144", system: "imperial", source: YARD_AND_POUND },
  {
    symbol: "mile",
    dimension: "length",
    factor: "1609.344",
    system: "imperial",
    source: `${YARD_AND_POUND}; 1760 yd`,
  },

  { symbol: "g", dimension: "mass", factor: "0.001", prefixes: "µ m k M G", source: SI },
  { symbol: "lb", dimension: "mass", factor: "0.45359237", system: "imperial", source: YARD_AND_POUND },
  { symbol: "oz", dimension: "mass", factor: "0.45359237/16", system: "imperial", source: YARD_AND_POUND },

  { symbol: "s", dimension: "time", factor: "1", prefixes: "µ m k M G", system: "either", source: SI },
  { symbol: "min", dimension: "time", factor: "60", system: "either", source: SI },
  { symbol: "h", dimension: "time", factor: "3600", system: "either", source: SI },
  { symbol: "d", dimension: "time", factor: "86400", system: "either", source: SI },
  { symbol: "week", dimension: "time", factor: "604800", system: "either", source: "ISO 8601: 7 d" },
  { symbol: "month", dimension: "calendar", factor: "1", system: "either", source: CALENDAR },
  { symbol: "year", dimension: "calendar", factor: "12", system: "either", source: CALENDAR },

  { symbol: "deg", dimension: "angle", factor: "1", system: "either", source: SI },
  { symbol: "arcmin", dimension: "angle", factor: "1/60", system: "either", source: SI },
  { symbol: "arcsec", dimension: "angle", factor: "1/3600", system: "either", source: SI },
  {
    symbol: "rad",
    dimension: "angle",
    factor: "180/3.1415926535897932384626433832795028841971693993751",
    system: "either",
    source: SI,
  },

  { symbol: "K", dimension: "temperature", factor: "1", offset: "0", system: "either", source: SI },
  { symbol: "degC", dimension: "temperature", kind: "point", factor: "1", offset: "273.15", source: SI },
  {
    symbol: "degF",
    dimension: "temperature",
    kind: "point",
    factor: "5/9",
    offset: "459.67",
    system: "imperial",
    source: "NIST SP 811 (2008), appendix B: t/degC = (t/degF - 32)/1.8",
  },

  { symbol: "N", dimension: "force", factor: "1", prefixes: "µ m k M G", source: SI },
  { symbol: "kgf", dimension: "force", factor: "9.80665", source: STANDARD_GRAVITY },
  {
    symbol: "lbf",
    dimension: "force",
    factor: "0.45359237*9.80665",
    system: "imperial",
    source: POUND_FORCE,
  },
  {
    symbol: "ozf",
    dimension: "force",
    factor: "0.45359237*9.80665/16",
    system: "imperial",
    source: POUND_FORCE,
  },

  { symbol: "J", dimension: "energy", kind: "energy", factor: "1", prefixes: "µ m k M G", source: SI },

  { symbol: "Pa", dimension: "pressure", factor: "1", prefixes: "µ m k M G", madeOf: "N/m2", source: SI },
  {
    symbol: "bar",
    dimension: "pressure",
    factor: "100000",
    prefixes: "µ m k M G",
    source: "NIST SP 811 (2008): 1 bar = 100 kPa",
  },
  {
    symbol: "psi",
    dimension: "pressure",
    factor: "0.45359237*9.80665/0.0254/0.0254",
    system: "imperial",
    madeOf: "lbf/in2",
    source: POUND_FORCE,
  },
  {
    symbol: "ksi",
    dimension: "pressure",
    factor: "1000*0.45359237*9.80665/0.0254/0.0254",
    system: "imperial",
    source: POUND_FORCE,
  },
  {
    symbol: "inHg",
    dimension: "pressure",
    factor: "13595.1*9.80665*0.0254",
    system: "imperial",
    source:
      "conventional inch of mercury: density 13595.1 kg/m3 at standard gravity (NIST SP 811: 3386.389 Pa)",
  },

  { symbol: "W", dimension: "power", factor: "1", prefixes: "µ m k M G", source: SI },
  {
    symbol: "hp",
    dimension: "power",
    factor: "550*0.3048*0.45359237*9.80665",
    system: "imperial",
    source: "mechanical horsepower, 550 ft.lbf/s (NIST SP 811)",
  },
  {
    symbol: "PS",
    dimension: "power",
    factor: "75*9.80665",
    source: "metric horsepower, 75 kgf.m/s (DIN 66036; NIST SP 811)",
  },

  { symbol: "l", dimension: "volume", factor: "0.001", prefixes: "µ m k M G c d", madeOf: "dm3", source: SI },
  { symbol: "cc", dimension: "volume", factor: "0.000001", madeOf: "cm3", source: SI },
  {
    symbol: "imp_gal",
    dimension: "volume",
    factor: "0.00454609",
    system: "imperial",
    source: IMPERIAL_GALLON,
  },
  {
    symbol: "imp_pt",
    dimension: "volume",
    factor: "0.00454609/8",
    system: "imperial",
    source: IMPERIAL_GALLON,
  },
  {
    symbol: "imp_floz",
    dimension: "volume",
    factor: "0.00454609/160",
    system: "imperial",
    source: IMPERIAL_GALLON,
  },
  {
    symbol: "us_gal",
    dimension: "volume",
    factor: "231*0.0254*0.0254*0.0254",
    system: "imperial",
    source: US_GALLON,
  },
  {
    symbol: "us_pt",
    dimension: "volume",
    factor: "231*0.0254*0.0254*0.0254/8",
    system: "imperial",
    source: US_GALLON,
  },
  {
    symbol: "us_floz",
    dimension: "volume",
    factor: "231*0.0254*0.0254*0.0254/128",
    system: "imperial",
    source: US_GALLON,
  },

  { symbol: "Hz", dimension: "frequency", factor: "1", prefixes: "µ m k M G", system: "either", source: SI },
  {
    symbol: "rpm",
    dimension: "frequency",
    factor: "1/60",
    system: "either",
    source: "revolutions per minute, read as a frequency",
  },
  {
    symbol: "mph",
    dimension: "speed",
    factor: "1609.344/3600",
    system: "imperial",
    madeOf: "mile/h",
    source: YARD_AND_POUND,
  },

  { symbol: "A", dimension: "current", factor: "1", prefixes: "µ m k M G", system: "either", source: SI },
  { symbol: "V", dimension: "voltage", factor: "1", prefixes: "µ m k M G", system: "either", source: SI },
  {
    symbol: "ohm",
    dimension: "resistance",
    factor: "1",
    prefixes: "µ m k M G",
    system: "either",
    source: SI,
  },
  {
    symbol: "Ah",
    dimension: "charge",
    factor: "3600",
    prefixes: "µ m k M G",
    system: "either",
    madeOf: "A.h",
    source: SI,
  },

  { symbol: "%", dimension: "ratio", factor: "0.01", system: "either", source: SI },
  { symbol: "turn", dimension: "turn", factor: "1", system: "either", source: COUNT },
  { symbol: "click", dimension: "click", factor: "1", system: "either", source: COUNT },
  { symbol: "flat", dimension: "flat", factor: "1", system: "either", source: COUNT },
  { symbol: "slot", dimension: "slot", factor: "1", system: "either", source: COUNT },
  { symbol: "run", dimension: "run", factor: "1", system: "either", source: COUNT },
  { symbol: "link", dimension: "link", factor: "1", system: "either", source: COUNT },
];

/** SI Brochure, table 7. `um` and the like are read as `µm`. */
const PREFIXES: Readonly<Record<string, string | undefined>> = {
  µ: "0.000001",
  m: "0.001",
  c: "0.01",
  d: "0.1",
  k: "1000",
  M: "1000000",
  G: "1000000000",
};

/** Other spellings with the same meaning, by the symbol they print as. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  "°C": ["degC"],
  "°F": ["degF"],
  "°": ["deg"],
  "'": ["arcmin"],
  h: ["hour", "hours"],
  min: ["mins", "minute", "minutes"],
  s: ["second", "seconds"],
  d: ["day", "days"],
  week: ["weeks"],
  month: ["months"],
  year: ["years"],
};

const definitions = new Map(DEFINITIONS.map((definition) => [definition.symbol, definition]));
const named = new Map<string, NamedUnit>();

/**
 * The unit with this symbol, or undefined. A plural of a unit of time comes back in the singular;
 * `°C` keeps its spelling, `um` becomes `µm`, `Ω` becomes `ohm`, `mL` becomes `ml`.
 */
export function namedUnit(symbol: string): NamedUnit | undefined {
  const cached = named.get(symbol);
  if (cached !== undefined) return cached;
  const unit = plainUnit(symbol) ?? respelledUnit(symbol) ?? prefixedUnit(symbol);
  if (unit !== undefined) named.set(symbol, unit);
  return unit;
}

/** The symbols of the table without prefixes, in its order. */
export const plainSymbols: readonly string[] = DEFINITIONS.map((definition) => definition.symbol);

/** Every symbol that `namedUnit` knows in its first spelling, prefixed ones included. */
export function everySymbol(): string[] {
  return DEFINITIONS.flatMap(({ symbol, prefixes }) => [
    symbol,
    ...(prefixes?.split(" ") ?? []).map((prefix) => prefix + symbol),
  ]);
}

function plainUnit(symbol: string): NamedUnit | undefined {
  const definition = definitions.get(symbol);
  return definition === undefined ? undefined : build(definition, symbol, rational(definition.factor));
}

function respelledUnit(symbol: string): NamedUnit | undefined {
  if (symbol === "°C" || symbol === "°F" || symbol === "°" || symbol === "'") {
    const [first = ""] = SAME[symbol] ?? [];
    const unit = namedUnit(first);
    return unit === undefined ? undefined : { ...unit, symbol };
  }
  for (const [first, others] of Object.entries(SAME)) {
    if (others.includes(symbol)) return namedUnit(first);
  }
  if (/^[cdm]?L$/.test(symbol)) return namedUnit(symbol.replace("L", "l"));
  if (symbol.endsWith("Ω")) return namedUnit(symbol.replace("Ω", "ohm"));
  return undefined;
}

function prefixedUnit(symbol: string): NamedUnit | undefined {
  const letter = symbol.charAt(0) === "u" ? "µ" : symbol.charAt(0);
  const prefix = PREFIXES[letter];
  const definition = definitions.get(symbol.slice(1));
  if (prefix === undefined || definition === undefined) return undefined;
  if (!definition.prefixes?.split(" ").includes(letter)) return undefined;
  const factor = multiplyRational(rational(prefix), rational(definition.factor));
  return build(definition, letter + definition.symbol, factor);
}

function build(definition: Definition, symbol: string, factor: Rational): NamedUnit {
  const isPlain = symbol === definition.symbol;
  return {
    symbol,
    dimension: ofKind(dimensionNamed(definition.dimension), definition.kind ?? "plain"),
    factor,
    system: definition.system ?? "metric",
    source: definition.source,
    ...(definition.offset === undefined ? {} : { offset: rational(definition.offset) }),
    ...(isPlain && definition.madeOf !== undefined ? { madeOf: definition.madeOf } : {}),
  };
}
