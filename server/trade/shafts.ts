/** Shafts: stress and twist of round bars and tubes. */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";
import type { Faulty } from "./result.ts";

/** Polar second moment of area, m⁴. */
function polarMoment(outer: number, inner: number): number {
  return (Math.PI / 32) * (outer ** 4 - inner ** 4);
}

/** Shear stress at the surface, Pa. */
function torsionStress(torque: number, outer: number, inner: number): number {
  return (torque * outer) / 2 / polarMoment(outer, inner);
}

/** Angle between the ends, rad. */
function twist(torque: number, length: number, outer: number, inner: number, shearModulus: number): number {
  return (torque * length) / (polarMoment(outer, inner) * shearModulus);
}

const diameter = { is: "quantity", dimension: "length", unit: "mm" } as const;
const outer = { ...diameter, name: "outer", min: 0.0005, max: 1, doc: "Outer diameter." } as const;
const inner = {
  ...diameter,
  name: "inner",
  min: 0,
  max: 1,
  doc: "Bore of a tube; 0 mm for a solid bar.",
} as const;
const torque = {
  name: "torque",
  is: "quantity",
  dimension: "torque",
  min: -1e6,
  max: 1e6,
  unit: "N.m",
  doc: "Torque in the shaft.",
} as const;

/** A bore as wide as the tube leaves nothing. */
function noWall(outer: number, inner: number): Faulty | undefined {
  if (inner < outer) return undefined;
  return {
    fault: { kind: "out-of-range", parameter: "inner", value: inner, min: 0, max: outer, unit: "mm" },
  };
}

const limits = "Elastic, round, without keyways, splines or steps, which raise the stress.";

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "torsion_stress",
    group: "shafts",
    parameters: [torque, outer, inner],
    returns: { is: "quantity", dimension: "pressure", unit: "MPa" },
    summary: "Shear stress at the surface of a twisted bar or tube.",
    formula: "τ = 16 T D / (π (D⁴ − d⁴))",
    source: "J. M. Gere, Mechanics of Materials, ch. 3",
    limits,
    compute: ({ torque, outer, inner }) =>
      noWall(outer, inner) ?? { value: torsionStress(torque, outer, inner) },
  }),
  defineFunction({
    name: "twist",
    group: "shafts",
    parameters: [
      torque,
      { ...diameter, name: "length", min: 0, max: 20, doc: "Length between the ends." },
      outer,
      inner,
      {
        name: "shear_modulus",
        is: "quantity",
        dimension: "pressure",
        min: 1e8,
        max: 2e11,
        unit: "GPa",
        doc: "Shear modulus; about 79 GPa for steel.",
      },
    ],
    returns: { is: "quantity", dimension: "angle", unit: "deg" },
    summary: "Angle by which a bar or tube twists.",
    formula: "φ = 32 T L / (π (D⁴ − d⁴) G)",
    source: "J. M. Gere, Mechanics of Materials, ch. 3",
    limits,
    compute: ({ torque, length, outer, inner, shear_modulus }) =>
      noWall(outer, inner) ?? { value: twist(torque, length, outer, inner, shear_modulus) },
  }),
];

export function shaftFunctions(): readonly TradeFunction[] {
  return functions;
}
