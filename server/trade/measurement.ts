/** Measurement: what a reading can be trusted for (JCGM 100, ISO 14253-1). */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";

/** Expanded uncertainty (k = 2) that a resolution alone brings: rectangular, half-width r/2, so 2·(r/2)/√3. */
function expandedFromResolution(resolution: number): number {
  return resolution / Math.sqrt(3);
}

/** Root sum of squares of independent uncertainties of one coverage. */
function combineUncertainties(uncertainties: readonly number[]): number {
  return Math.hypot(...uncertainties);
}

const anyQuantity = { is: "any quantity", min: -1e12, max: 1e12 } as const;
const uncertainty = { is: "any quantity", min: 0, max: 1e12 } as const;

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "expanded",
    group: "measurement",
    parameters: [
      {
        ...uncertainty,
        name: "resolution",
        doc: "The smallest step the gauge shows, or the division of its scale.",
      },
    ],
    returns: { is: "same quantity" },
    summary: "Expanded uncertainty of a reading from the resolution of its gauge alone.",
    formula: "U = k (r/2)/√3 = r/√3, k = 2",
    source: "JCGM 100:2008 4.3.7 and F.2.2.1",
    meaning: "A rectangular distribution over one step, at k = 2.",
    limits: "The least it can be: calibration, temperature and touch come on top.",
    compute: ({ resolution }) => ({
      value: expandedFromResolution(resolution),
      notes: ["k = 2, rectangular"],
    }),
  }),
  defineFunction({
    name: "combine",
    group: "measurement",
    parameters: [
      {
        ...uncertainty,
        name: "uncertainty",
        variadic: true,
        doc: "Uncertainties of one kind, all at the same k.",
      },
    ],
    returns: { is: "same quantity" },
    summary: "Uncertainties of independent causes taken together.",
    formula: "u = √(u1² + u2² + …)",
    source: "JCGM 100:2008 equation (10), sensitivities of one",
    meaning: "Standard with standard, or expanded with expanded, never mixed.",
    compute: ({ uncertainty }) => ({ value: combineUncertainties(uncertainty) }),
  }),
  defineFunction({
    name: "total_runout",
    group: "measurement",
    parameters: [
      { ...anyQuantity, name: "max", doc: "Highest reading in a full turn." },
      { ...anyQuantity, name: "min", doc: "Lowest reading in a full turn." },
    ],
    returns: { is: "same quantity" },
    summary: "Full indicator movement: runout, thickness variation, taper or ovality from two readings.",
    formula: "max − min",
    source: "usual workshop definition, as in ISO 1101 for runout",
    meaning: "The whole swing of the needle, not half of it (eccentricity is half).",
    compute: ({ max, min }) =>
      max < min
        ? { fault: { kind: "out-of-range", parameter: "max", value: max, min } }
        : { value: max - min },
  }),
];

export function measurementFunctions(): readonly TradeFunction[] {
  return functions;
}
