/** Hydraulic brakes: from the foot to the disc. */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";

/** Area of `count` round pistons, m². */
function pistonArea(diameter: number, count: number): number {
  return count * (Math.PI / 4) * diameter ** 2;
}

/** Pressure in the line, Pa. */
function linePressure(pedalForce: number, pedalRatio: number, bore: number, share: number): number {
  return (pedalForce * pedalRatio * share) / pistonArea(bore, 1);
}

/** Torque of one wheel's brake, both faces of the disc, N·m. */
function brakeTorque(clampForce: number, friction: number, radius: number): number {
  return 2 * friction * clampForce * radius;
}

const length = { is: "quantity", dimension: "length", unit: "mm" } as const;
const bore = { ...length, name: "bore", min: 0.002, max: 0.2, doc: "Bore of the master cylinder." } as const;
const pedalRatio = {
  name: "pedal_ratio",
  is: "number",
  min: 0.5,
  max: 15,
  doc: "Way of the foot over way of the pushrod.",
} as const;
const pressure = {
  name: "pressure",
  is: "quantity",
  dimension: "pressure",
  min: 0,
  max: 5e7,
  unit: "bar",
  doc: "Pressure in the line.",
} as const;
const area = {
  name: "area",
  is: "quantity",
  dimension: "area",
  min: 0,
  max: 0.1,
  unit: "mm2",
  doc: "Piston area on one side of the disc.",
} as const;
const share = { is: "number", unit: "%", min: 0, max: 1 } as const;
const axle = {
  is: "any quantity",
  among: ["torque", "force"],
  min: 0,
  max: 1e7,
} as const;
const makersManual = "An estimate for comparing parts: fade, knock-back and the maker's figures come first.";

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "piston_area",
    group: "brakes",
    parameters: [
      { ...length, name: "diameter", min: 0.002, max: 0.3, doc: "Diameter of the piston." },
      {
        name: "count",
        is: "number",
        whole: true,
        min: 1,
        max: 12,
        optional: true,
        doc: "Pistons on one side of the disc; 1 when left out.",
      },
    ],
    returns: { is: "quantity", dimension: "area", unit: "mm2" },
    summary: "Piston area of a caliper.",
    formula: "A = count × π/4 × diameter²",
    source: "geometry",
    meaning:
      "Of one side of the disc: of a caliper with four opposed pistons count two; a floating caliper has all on one side.",
    compute: ({ diameter, count = 1 }) => ({ value: pistonArea(diameter, count) }),
  }),
  defineFunction({
    name: "line_pressure",
    group: "brakes",
    parameters: [
      {
        name: "pedal_force",
        is: "quantity",
        dimension: "force",
        min: 0,
        max: 5000,
        unit: "N",
        doc: "Force of the foot on the pedal.",
      },
      pedalRatio,
      bore,
      {
        ...share,
        name: "share",
        optional: true,
        doc: "Share of the pedal force that reaches this cylinder: 100 % when left out, bar_share with a balance bar.",
      },
    ],
    returns: { is: "quantity", dimension: "pressure", unit: "bar" },
    summary: "Pressure that a foot makes in the line.",
    formula: "p = force × ratio × share / (π/4 bore²)",
    source: "statics and Pascal's law",
    limits: "Without servo, return springs and seal friction.",
    compute: ({ pedal_force, pedal_ratio, bore, share = 1 }) => ({
      value: linePressure(pedal_force, pedal_ratio, bore, share),
    }),
  }),
  defineFunction({
    name: "clamp_force",
    group: "brakes",
    parameters: [pressure, area],
    returns: { is: "quantity", dimension: "force", unit: "kN" },
    summary: "Force with which one pad is pressed on the disc.",
    formula: "F = p A",
    source: "Pascal's law",
    meaning: "The force of one pad; the other presses as hard, and brake_torque counts both.",
    limits: makersManual,
    compute: ({ pressure, area }) => ({ value: pressure * area }),
  }),
  defineFunction({
    name: "brake_torque",
    group: "brakes",
    parameters: [
      {
        name: "clamp_force",
        is: "quantity",
        dimension: "force",
        min: 0,
        max: 1e6,
        unit: "kN",
        doc: "Force of one pad.",
      },
      {
        name: "friction",
        is: "number",
        min: 0.05,
        max: 1,
        doc: "Coefficient of friction of the pad; 0.3 to 0.45 is usual.",
      },
      {
        ...length,
        name: "effective_radius",
        min: 0.01,
        max: 0.5,
        doc: "From the axle to the middle of the pad.",
      },
    ],
    returns: { is: "quantity", dimension: "torque", unit: "N.m" },
    summary: "Torque of a disc brake at one wheel.",
    formula: "T = 2 μ F r",
    source: "friction on both faces; disc brake schematics",
    meaning: "Both faces of the disc are counted here, once.",
    limits: makersManual,
    compute: ({ clamp_force, friction, effective_radius }) => ({
      value: brakeTorque(clamp_force, friction, effective_radius),
      notes: ["both faces counted"],
    }),
  }),
  defineFunction({
    name: "bar_share",
    group: "brakes",
    parameters: [
      {
        ...length,
        name: "offset",
        min: -0.2,
        max: 0.2,
        doc: "From the middle between the clevises to the pivot.",
      },
      { ...length, name: "span", min: 0.01, max: 0.4, doc: "Distance between the clevises." },
    ],
    returns: { is: "number", unit: "%" },
    summary:
      "Share of the pushrod force that a balance bar gives the cylinder towards which its pivot is moved.",
    formula: "1/2 + offset / span",
    source: "moments about the pivot",
    meaning: "The cylinder that the offset, from the middle, points to; the other gets the rest.",
    compute: ({ offset, span }) =>
      Math.abs(offset) > span / 2
        ? {
            fault: {
              kind: "out-of-range",
              parameter: "offset",
              value: offset,
              min: -span / 2,
              max: span / 2,
              unit: "mm",
            },
          }
        : { value: 0.5 + offset / span },
  }),
  defineFunction({
    name: "brake_split",
    group: "brakes",
    parameters: [
      { ...axle, name: "front", doc: "Brake torque or force of the front axle." },
      { ...axle, name: "rear", doc: "The same of the rear axle." },
    ],
    returns: { is: "number", unit: "%" },
    summary: "Share of the braking that the front axle does.",
    formula: "front / (front + rear)",
    source: "definition",
    meaning: "With torques, wheels of one size front and rear; else give the forces at the tyre.",
    limits: "The rear wheels must not lock first: the load that moves forwards decides, not this figure.",
    compute: ({ front, rear }) =>
      front + rear > 0
        ? { value: front / (front + rear), notes: ["front axle"] }
        : { fault: { kind: "impossible", reason: "front and rear are both zero" } },
  }),
  defineFunction({
    name: "pedal_travel",
    group: "brakes",
    parameters: [
      pedalRatio,
      bore,
      {
        ...area,
        name: "piston_area",
        max: 1,
        doc: "Area of all the pistons that this cylinder moves, both sides, all wheels.",
      },
      {
        ...length,
        name: "piston_movement",
        min: 0,
        max: 0.05,
        doc: "How far each piston moves until the pads press.",
      },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Way of the foot until the pads press.",
    formula: "travel = ratio × piston area × movement / (π/4 bore²)",
    source: "equal volumes",
    meaning: "All pistons count here, on both sides of every disc on this cylinder.",
    limits: "Without play at the pushrod, swelling hoses, flexing calipers or air in the line.",
    compute: ({ pedal_ratio, bore, piston_area, piston_movement }) => ({
      value: (pedal_ratio * piston_area * piston_movement) / pistonArea(bore, 1),
    }),
  }),
];

export function brakeFunctions(): readonly TradeFunction[] {
  return functions;
}
