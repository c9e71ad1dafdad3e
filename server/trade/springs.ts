/** Springs: helical compression springs, alone, together and through a lever. */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";

/** Rate of a round-wire helical spring, N/m; lengths in m, shear modulus in Pa. */
function springRate(wire: number, meanDiameter: number, coils: number, shearModulus: number): number {
  return (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * coils);
}

/** Wahl's factor for curvature and direct shear; index is mean diameter over wire. */
function wahlFactor(index: number): number {
  return (4 * index - 1) / (4 * index - 4) + 0.615 / index;
}

/** Shear stress in the wire, Pa. */
function springStress(force: number, wire: number, meanDiameter: number): number {
  return (wahlFactor(meanDiameter / wire) * 8 * force * meanDiameter) / (Math.PI * wire ** 3);
}

/** Rate at the wheel; motion ratio is spring travel over wheel travel. */
function wheelRate(rate: number, motionRatio: number): number {
  return rate * motionRatio ** 2;
}

/** Undamped natural frequency, Hz. */
function rideFrequency(rate: number, mass: number): number {
  return Math.sqrt(rate / mass) / (2 * Math.PI);
}

const length = { is: "quantity", dimension: "length", unit: "mm" } as const;
const stiffness = { is: "quantity", dimension: "stiffness", unit: "N/mm", min: 1, max: 1e9 } as const;
const rateResult = { is: "quantity", dimension: "stiffness", unit: "N/mm" } as const;
const wire = { ...length, name: "wire", min: 0.0001, max: 0.1, doc: "Diameter of the wire." } as const;
const meanDiameter = {
  ...length,
  name: "mean_diameter",
  min: 0.0005,
  max: 1,
  doc: "Diameter of the coil to the middle of the wire: outside less one wire.",
} as const;
const rates = {
  ...stiffness,
  name: "rate",
  variadic: true,
  doc: "Rate of each spring.",
} as const;

/** A coil cannot be wound tighter than about twice its wire. */
const leastIndex = 2;

function tooTight(wire: number, meanDiameter: number) {
  const min = leastIndex * wire;
  return {
    fault: { kind: "out-of-range", parameter: "mean_diameter", value: meanDiameter, min, unit: "mm" },
  } as const;
}

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "spring_rate",
    group: "springs",
    parameters: [
      wire,
      meanDiameter,
      {
        name: "active_coils",
        is: "number",
        min: 0.5,
        max: 100,
        doc: "Coils that move: all less the dead ones at the ends, usually two.",
      },
      {
        name: "shear_modulus",
        is: "quantity",
        dimension: "pressure",
        min: 1e9,
        max: 2e11,
        unit: "GPa",
        doc: "Shear modulus; about 79 GPa for spring steel.",
      },
    ],
    returns: rateResult,
    summary: "Rate of a helical compression spring of round wire.",
    formula: "k = G d⁴ / (8 D³ n)",
    source: "Shigley eq. (10-9); EN 13906-1",
    limits: "Closed coils, small angle, mean diameter at least twice the wire.",
    compute: ({ wire, mean_diameter, active_coils, shear_modulus }) =>
      mean_diameter < leastIndex * wire
        ? tooTight(wire, mean_diameter)
        : { value: springRate(wire, mean_diameter, active_coils, shear_modulus) },
  }),
  defineFunction({
    name: "spring_stress",
    group: "springs",
    parameters: [
      {
        name: "force",
        is: "quantity",
        dimension: "force",
        min: 0,
        max: 1e6,
        unit: "N",
        doc: "Load on the spring; that of a coil-bound spring for the worst case.",
      },
      wire,
      meanDiameter,
    ],
    returns: { is: "quantity", dimension: "pressure", unit: "MPa" },
    summary: "Shear stress in the wire of a helical compression spring.",
    formula: "τ = K 8 F D / (π d³), K = (4C − 1)/(4C − 4) + 0.615/C, C = D/d",
    source: "A. M. Wahl; as used in Sadhu Singh, Machine Design-I, ch. 8",
    meaning: "With Wahl's factor for the curved inside of the coil.",
    limits: "Round wire, mean diameter at least twice the wire.",
    compute: ({ force, wire, mean_diameter }) =>
      mean_diameter < leastIndex * wire
        ? tooTight(wire, mean_diameter)
        : { value: springStress(force, wire, mean_diameter) },
  }),
  defineFunction({
    name: "spring_series",
    group: "springs",
    parameters: [rates],
    returns: rateResult,
    summary: "Rate of springs one on top of the other.",
    formula: "1/k = 1/k1 + 1/k2 + …",
    source: "statics",
    compute: ({ rate }) => ({ value: 1 / rate.reduce((sum, each) => sum + 1 / each, 0) }),
  }),
  defineFunction({
    name: "spring_parallel",
    group: "springs",
    parameters: [rates],
    returns: rateResult,
    summary: "Rate of springs side by side.",
    formula: "k = k1 + k2 + …",
    source: "statics",
    compute: ({ rate }) => ({ value: rate.reduce((sum, each) => sum + each, 0) }),
  }),
  defineFunction({
    name: "wheel_rate",
    group: "springs",
    parameters: [
      { ...stiffness, name: "rate", doc: "Rate of the spring." },
      { name: "motion_ratio", is: "number", min: 0.05, max: 3, doc: "Spring travel over wheel travel." },
    ],
    returns: rateResult,
    summary: "Rate of a spring as the wheel feels it.",
    formula: "k_wheel = k × (spring travel / wheel travel)²",
    source: "work at spring and wheel; Automotive Chassis Engineering eq. (3.33)",
    meaning: "Motion ratio is spring travel over wheel travel; some books take the inverse and divide.",
    limits: "At that height of the car, without the rates of tyre and rubber bushes.",
    compute: ({ rate, motion_ratio }) => ({
      value: wheelRate(rate, motion_ratio),
      notes: ["motion ratio is spring travel over wheel travel"],
    }),
  }),
  defineFunction({
    name: "ride_frequency",
    group: "springs",
    parameters: [
      { ...stiffness, name: "rate", doc: "Rate at the wheel." },
      {
        name: "mass",
        is: "quantity",
        dimension: "mass",
        min: 0.1,
        max: 20_000,
        unit: "kg",
        doc: "Sprung mass on that wheel.",
      },
    ],
    returns: { is: "quantity", dimension: "frequency", unit: "Hz" },
    summary: "How fast one corner of the car bounces.",
    formula: "f = √(k/m) / 2π",
    source: "undamped oscillator",
    meaning: "Sprung mass alone, at the wheel rate.",
    compute: ({ rate, mass }) => ({ value: rideFrequency(rate, mass) }),
  }),
];

export function springFunctions(): readonly TradeFunction[] {
  return functions;
}
