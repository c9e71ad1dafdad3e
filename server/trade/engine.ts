/** Engine and cooling. */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";
import type { FreezingPoints } from "./tables/glycol.ts";
import { ethyleneFreezingPoints, propyleneFreezingPoints } from "./tables/glycol.ts";

/** Swept volume of all cylinders, m³. */
function sweptVolume(bore: number, stroke: number, cylinders: number): number {
  return cylinders * (Math.PI / 4) * bore ** 2 * stroke;
}

const glycols: Readonly<Record<string, FreezingPoints>> = {
  ethylene: ethyleneFreezingPoints,
  propylene: propyleneFreezingPoints,
};

/** Temperature in K at which a mixture begins to freeze; `share` of glycol by volume, as a fraction. */
function freezePoint(share: number, points: FreezingPoints = ethyleneFreezingPoints): number {
  const percent = share * 100;
  const upper = points.findIndex(([upTo]) => percent <= upTo);
  const [lowShare, lowPoint] = points[Math.max(upper - 1, 0)] ?? [0, 0];
  const [highShare, highPoint] = points[upper] ?? [0, Number.NaN];
  const part = highShare === lowShare ? 0 : (percent - lowShare) / (highShare - lowShare);
  return 273.15 + lowPoint + part * (highPoint - lowPoint);
}

/** End gap of a piston ring, shares of the bore. Source: common practice, no source. */
const ringGapShares = { least: 0.003, most: 0.004 } as const;

const length = { is: "quantity", dimension: "length", unit: "mm" } as const;
const volume = { is: "quantity", dimension: "volume", unit: "cc", min: 1e-7, max: 1 } as const;
const bore = { ...length, name: "bore", min: 0.005, max: 1, doc: "Diameter of the cylinder." } as const;
const swept = { ...volume, name: "swept", doc: "Swept volume of one cylinder." } as const;

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "swept_volume",
    group: "engine and cooling",
    parameters: [
      bore,
      { ...length, name: "stroke", min: 0.005, max: 2, doc: "Stroke of the piston." },
      {
        name: "cylinders",
        is: "number",
        whole: true,
        min: 1,
        max: 32,
        optional: true,
        doc: "Number of cylinders; 1 when left out.",
      },
    ],
    returns: { is: "quantity", dimension: "volume", unit: "cc" },
    summary: "Swept volume.",
    formula: "n × π/4 × bore² × stroke",
    source: "definition; Mathur and Sharma, Internal Combustion Engine, ex. 1.1",
    compute: ({ bore, stroke, cylinders = 1 }) => ({ value: sweptVolume(bore, stroke, cylinders) }),
  }),
  defineFunction({
    name: "compression_ratio",
    group: "engine and cooling",
    parameters: [
      swept,
      { ...volume, name: "clearance", doc: "What is left of one cylinder at top dead centre." },
    ],
    returns: { is: "number" },
    summary: "Compression ratio.",
    formula: "1 + swept / clearance",
    source: "definition; R. K. Rajput, A Textbook of Internal Combustion Engines, ex. 3.18",
    meaning: "Geometric, of one cylinder: head, gasket, deck and crown all count as clearance.",
    compute: ({ swept, clearance }) => ({ value: 1 + swept / clearance }),
  }),
  defineFunction({
    name: "clearance_volume",
    group: "engine and cooling",
    parameters: [swept, { name: "ratio", is: "number", min: 1.5, max: 40, doc: "Compression ratio." }],
    returns: { is: "quantity", dimension: "volume", unit: "cc" },
    summary: "Volume at top dead centre that gives a compression ratio.",
    formula: "swept / (ratio − 1)",
    source: "definition",
    meaning: "Of one cylinder.",
    compute: ({ swept, ratio }) => ({ value: swept / (ratio - 1) }),
  }),
  defineFunction({
    name: "ring_gap_range",
    group: "engine and cooling",
    parameters: [bore],
    returns: { is: "limits", dimension: "length", unit: "mm" },
    summary: "Usual end gap of a piston ring in its bore.",
    formula: "0.003 to 0.004 × bore",
    source: "common practice, no source",
    meaning: "Cast iron compression rings, cold, in the lower part of the bore.",
    limits: "The maker's figure comes first; racing, supercharged and two-stroke engines need more.",
    compute: ({ bore }) => ({
      value: { lower: ringGapShares.least * bore, upper: ringGapShares.most * bore },
      notes: ["0.003 to 0.004 of the bore (common practice); the maker's figure comes first"],
    }),
  }),
  defineFunction({
    name: "power",
    group: "engine and cooling",
    parameters: [
      {
        name: "torque",
        is: "quantity",
        dimension: "torque",
        min: 0,
        max: 1e5,
        unit: "N.m",
        doc: "Torque at that speed.",
      },
      {
        name: "speed",
        is: "quantity",
        dimension: "frequency",
        min: 0,
        max: 2000,
        unit: "rpm",
        doc: "Speed of the shaft.",
      },
    ],
    returns: { is: "quantity", dimension: "power", unit: "kW" },
    summary: "Power of a shaft that turns.",
    formula: "P = 2π n T",
    source: "definition",
    compute: ({ torque, speed }) => ({ value: 2 * Math.PI * speed * torque }),
  }),
  defineFunction({
    name: "freeze_point",
    group: "engine and cooling",
    parameters: [
      { name: "share", is: "number", unit: "%", min: 0, max: 0.6, doc: "Glycol by volume." },
      {
        name: "glycol",
        is: "text",
        expected: '"ethylene" or "propylene"',
        optional: true,
        doc: "Kind of glycol; ethylene when left out.",
      },
    ],
    returns: { is: "quantity", dimension: "temperature", unit: "degC" },
    summary: "Temperature at which a mixture of glycol and water begins to freeze.",
    formula: "table, straight lines between its points",
    source:
      "ethylene: ASHRAE table, from memory; propylene: Lange's Handbook of Chemistry, 15th ed., table 5.13",
    meaning: "By volume, not by mass; ethylene glycol unless propylene is said.",
    limits:
      "Up to 60 % ethylene, 50 % propylene. Pure glycol; ready mixtures are to their label. Published tables differ by 3 K at half and half.",
    compute: ({ share, glycol = "ethylene" }) => {
      const points = Object.hasOwn(glycols, glycol) ? glycols[glycol] : undefined;
      if (points === undefined) {
        return { fault: { kind: "unreadable", text: glycol, expected: '"ethylene" or "propylene"' } };
      }
      const max = (points.at(-1)?.[0] ?? 0) / 100;
      if (share > max) {
        return { fault: { kind: "out-of-range", parameter: "share", value: share, min: 0, max, unit: "%" } };
      }
      return {
        value: freezePoint(share, points),
        notes: [`${glycol} glycol by volume; go by the label of a ready mixture`],
      };
    },
  }),
];

export function engineFunctions(): readonly TradeFunction[] {
  return functions;
}
