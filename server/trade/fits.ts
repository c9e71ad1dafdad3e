/** The functions of fits and growth. */

import type { TradeFunction } from "./function.ts";
import { defineFunction, isFaulty } from "./function.ts";
import type { PressFit } from "./growth.ts";
import { heatingNotes, heatToFit, interferencePressure, pressForce, thermalGrowth } from "./growth.ts";
import type { DeviationPair } from "./iso286.ts";
import { deviationsOf, readToleranceClass, standardTolerance } from "./iso286.ts";
import type { TradeResult } from "./result.ts";

const MICROMETRE = 1e-6;
const MILLIMETRE = 1e-3;

/** Limits of size of `52 H7`, m. */
function limitsOf(text: string): TradeResult {
  const match = /^(\d+(?:\.\d+)?) ?(?:mm)? ?([A-Za-z]{1,2}\d{1,2})$/.exec(text.trim());
  const tolerance = readToleranceClass(match?.[2] ?? "");
  if (match === null || tolerance === undefined) {
    return {
      fault: { kind: "unreadable", text, expected: 'a size in mm and a tolerance class, as in "52 H7"' },
    };
  }
  const size = Number(match[1]);
  const pair = deviationsOf(size, tolerance);
  if (isFaulty(pair)) return pair;
  return {
    value: { lower: atSize(size, pair.lower), upper: atSize(size, pair.upper) },
    notes: [`${text.trim()}: ${signed(pair.upper)} / ${signed(pair.lower)} µm (ISO 286)`],
  };
}

/** Clearance of a fit such as `52 H7/p6`, m; negative is interference. */
function fitRange(text: string): TradeResult {
  const match = /^(\d+(?:\.\d+)?) ?(?:mm)? ?([A-Z]{1,2}\d{1,2}) ?\/ ?([a-z]{1,2}\d{1,2})$/.exec(text.trim());
  const hole = readToleranceClass(match?.[2] ?? "");
  const shaft = readToleranceClass(match?.[3] ?? "");
  if (match === null || hole === undefined || shaft === undefined) {
    const expected = 'a size in mm, a hole and a shaft class, as in "52 H7/p6"';
    return { fault: { kind: "unreadable", text, expected } };
  }
  const size = Number(match[1]);
  const ofHole = deviationsOf(size, hole);
  if (isFaulty(ofHole)) return ofHole;
  const ofShaft = deviationsOf(size, shaft);
  if (isFaulty(ofShaft)) return ofShaft;
  const lower = ofHole.lower - ofShaft.upper;
  const upper = ofHole.upper - ofShaft.lower;
  return {
    value: { lower: lower * MICROMETRE, upper: upper * MICROMETRE },
    notes: [
      `${kindOfFit(lower, upper)} (negative is interference)`,
      ...pairNotes(hole.text, ofHole, shaft.text, ofShaft),
    ],
  };
}

function kindOfFit(lower: number, upper: number): string {
  if (lower >= 0) return `clearance fit, ${lower} to ${upper} µm`;
  if (upper <= 0) return `interference fit, ${-upper} to ${-lower} µm`;
  return `transition fit, ${-lower} µm interference to ${upper} µm clearance`;
}

function pairNotes(
  hole: string,
  ofHole: DeviationPair,
  shaft: string,
  ofShaft: DeviationPair,
): readonly string[] {
  return [
    `${hole}: ${signed(ofHole.upper)} / ${signed(ofHole.lower)} µm; ${shaft}: ${signed(ofShaft.upper)} / ${signed(ofShaft.lower)} µm`,
  ];
}

/** A size in mm with a deviation in µm, m, to the last half micrometre. */
function atSize(size: number, deviation: number): number {
  return Number((size * MILLIMETRE + deviation * MICROMETRE).toFixed(10));
}

function signed(micrometres: number): string {
  return micrometres > 0 ? `+${micrometres}` : `${micrometres}`;
}

const length = { is: "quantity", dimension: "length", unit: "mm" } as const;
const interference = {
  ...length,
  name: "interference",
  min: 0,
  max: 0.01,
  doc: "How much the inner part is larger, on diameter.",
} as const;
const size = { ...length, name: "size", min: 1e-4, max: 2, doc: "Diameter at which they meet." } as const;
const pressFitParameters = [
  interference,
  size,
  { ...length, name: "outer", min: 1e-4, max: 5, doc: "Outside diameter of the outer part." },
  { ...length, name: "inner", min: 0, max: 2, doc: "Bore of the inner part; 0 mm when it is solid." },
  { name: "hub_material", is: "material", doc: "Material of the outer part." },
  { name: "shaft_material", is: "material", doc: "Material of the inner part." },
] as const;

function contradiction({ size, outer, inner }: PressFit): TradeResult | undefined {
  if (outer <= size) {
    return { fault: { kind: "out-of-range", parameter: "outer", value: outer, min: size, unit: "mm" } };
  }
  if (inner >= size) {
    return {
      fault: { kind: "out-of-range", parameter: "inner", value: inner, min: 0, max: size, unit: "mm" },
    };
  }
  return undefined;
}

const lame =
  "Lamé's equations for thick cylinders; Shigley, Mechanical Engineering Design, press and shrink fits";
const pressFitLimits =
  "Elastic, equal length, smooth faces; the peaks of rough faces are flattened and take some of the interference.";
const fitLimits = "Up to 500 mm. Classes that ISO 286-1 does not tabulate at a size are refused.";

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "limits_of",
    group: "fits and growth",
    parameters: [
      { name: "class", is: "text", expected: '"52 H7"', doc: "Size in mm and tolerance class of ISO 286." },
    ],
    returns: { is: "limits", dimension: "length", unit: "mm" },
    summary: "Limits of size of a tolerance class.",
    formula: "nominal size + lower and upper deviation",
    source: "ISO 286-1:2010, tables; ISO 286-2",
    meaning:
      "Capitals are holes, small letters shafts. js and JS are half the tolerance each way, unrounded.",
    limits: fitLimits,
    compute: (values) => limitsOf(values.class),
  }),
  defineFunction({
    name: "tolerance_grade",
    group: "fits and growth",
    parameters: [
      { ...length, name: "size", min: 1e-5, max: 0.5, doc: "Nominal size." },
      { name: "grade", is: "text", expected: '"IT7"', doc: "Grade, IT01 to IT18." },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Width of the tolerance of a standard grade.",
    formula: "table; about 16 i at IT7 with i = 0.45 ∛D + 0.001 D µm, D the mean of the range in mm",
    source: "ISO 286-1:2010, table 1",
    limits: "Up to 500 mm.",
    compute: ({ size, grade }) => {
      const name = /^IT(\d{1,2})$/.exec(grade.trim())?.[1];
      if (name === undefined) {
        return {
          fault: { kind: "unreadable", text: grade, expected: 'a standard tolerance grade, as in "IT7"' },
        };
      }
      const width = standardTolerance(Number((size / MILLIMETRE).toFixed(9)), name);
      return typeof width === "number" ? { value: width * MICROMETRE } : width;
    },
  }),
  defineFunction({
    name: "fit_range",
    group: "fits and growth",
    parameters: [
      { name: "fit", is: "text", expected: '"52 H7/p6"', doc: "Size in mm, hole class and shaft class." },
    ],
    returns: { is: "limits", dimension: "length", unit: "mm" },
    summary: "Least and largest clearance of a fit.",
    formula: "EI − es to ES − ei",
    source: "ISO 286-1:2010",
    meaning: "Clearance is positive, interference negative.",
    limits: fitLimits,
    compute: ({ fit }) => fitRange(fit),
  }),
  defineFunction({
    name: "thermal_growth",
    group: "fits and growth",
    parameters: [
      { ...length, name: "size", min: 0, max: 100, doc: "Length or diameter." },
      { name: "material", is: "material", doc: "What it is made of." },
      {
        name: "rise",
        is: "quantity",
        dimension: "temperature_difference",
        min: -250,
        max: 600,
        unit: "K",
        doc: "Change of temperature; negative when it cools.",
      },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "How much something grows when it warms.",
    formula: "ΔL = α L ΔT",
    source: "linear expansion; coefficients: see the table of materials",
    meaning: "A bore grows as if it were solid.",
    limits: "Mean coefficient for about 20 to 100 °C, good to a few per cent.",
    compute: ({ size, material, rise }) => {
      const growth = thermalGrowth(size, material, rise);
      return typeof growth === "number" ? { value: growth, notes: [expansionNote(material)] } : growth;
    },
  }),
  defineFunction({
    name: "heat_to_fit",
    group: "fits and growth",
    parameters: [
      interference,
      size,
      { name: "material", is: "material", doc: "Material of the part that is heated." },
      {
        ...length,
        name: "clearance",
        min: 0,
        max: 0.005,
        optional: true,
        doc: "Room wanted for slipping it on; none when left out.",
      },
    ],
    returns: { is: "quantity", dimension: "temperature", unit: "degC" },
    summary: "Temperature to heat the outer part to, from a workshop at 20 °C.",
    formula: "t = 20 °C + (interference + clearance) / (α d)",
    source: "linear expansion",
    meaning:
      "Only the outer part is heated; at this temperature it has grown by interference and clearance exactly.",
    limits: "Bearings to 120 °C at most, sealed ones less. It must go home at once: it cools on touch.",
    compute: ({ interference, size, material, clearance = 0 }) => {
      const value = heatToFit(interference, size, material, clearance);
      if (typeof value !== "number") return value;
      return { value, notes: [...heatingNotes(size, material, { value }), expansionNote(material)] };
    },
  }),
  defineFunction({
    name: "interference_pressure",
    group: "fits and growth",
    parameters: pressFitParameters,
    returns: { is: "quantity", dimension: "pressure", unit: "MPa" },
    summary: "Pressure between two parts pressed together.",
    formula: "p = δ / (d [ ((D² + d²)/(D² − d²) + ν_hub)/E_hub + ((d² + b²)/(d² − b²) − ν_shaft)/E_shaft ])",
    source: lame,
    meaning: "δ is the interference on diameter; D outside, d between, b bore of the inner part.",
    limits: pressFitLimits,
    compute: (values) => {
      const fit = pressFitOf(values);
      const refused = contradiction(fit);
      if (refused !== undefined) return refused;
      const value = interferencePressure(fit);
      return typeof value === "number" ? { value } : value;
    },
  }),
  defineFunction({
    name: "press_force",
    group: "fits and growth",
    parameters: [
      ...pressFitParameters,
      { ...length, name: "length", min: 0, max: 2, doc: "Length over which they touch." },
      {
        name: "friction",
        is: "number",
        min: 0.02,
        max: 0.5,
        doc: "Coefficient of friction; 0.1 to 0.15 for oiled steel.",
      },
    ],
    returns: { is: "quantity", dimension: "force", unit: "kN" },
    summary: "Force at the end of pressing a fit together.",
    formula: "F = μ p π d l",
    source: lame,
    limits: `${pressFitLimits} Seized or dry fits take far more; wear eye protection at the press.`,
    compute: (values) => {
      const fit = pressFitOf(values);
      const refused = contradiction(fit);
      if (refused !== undefined) return refused;
      const pressure = interferencePressure(fit);
      if (typeof pressure !== "number") return pressure;
      return {
        value: pressForce(pressure, values.size, values.length, values.friction),
        notes: [
          "a dry or seized fit takes far more: eye protection, a guard round the work, and nobody in line with the press",
        ],
      };
    },
  }),
];

function pressFitOf(
  values: Omit<PressFit, "hub" | "shaft"> & {
    hub_material: PressFit["hub"];
    shaft_material: PressFit["shaft"];
  },
): PressFit {
  const { interference, size, outer, inner, hub_material: hub, shaft_material: shaft } = values;
  return { interference, size, outer, inner, hub, shaft };
}

function expansionNote({ name, expansion, source }: PressFit["hub"]): string {
  return `${name}: ${((expansion ?? 0) * 1e6).toFixed(1)}e-6 per K (${source})`;
}

export function fitFunctions(): readonly TradeFunction[] {
  return functions;
}
