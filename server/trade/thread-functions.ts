/** What can be called about threads. */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";
import type { Thread } from "./thread.ts";
import { inUnitsOf, minorDiameter, pitchDiameter, rootDiameter, stressArea, tapDrill } from "./threads.ts";

/** Depth of thread, as a share of the full depth, that a hole of d − P leaves in a 60° thread. */
const usualThreadShare = 0.77;

const thread = {
  name: "thread",
  is: "thread",
  doc: "The thread, as in M10x1.25, 3/8-24 UNF, 1/4 BSF or 2 BA.",
} as const;

const basicProfile =
  "ISO 68-1 and ISO 724 (metric), ASME B1.1 (unified), BS 84 (Whitworth form), BS 93 (BA), BS 811 (cycle)";

function diameterFunction(
  name: string,
  aliases: readonly string[],
  compute: (value: Thread) => number,
  texts: { readonly summary: string; readonly formula: string; readonly meaning?: string },
): TradeFunction {
  return defineFunction({
    name,
    aliases,
    group: "threads and bolts",
    parameters: [thread],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    source: basicProfile,
    ...texts,
    compute: ({ thread }) => inUnitsOf(thread, "length", compute(thread)),
  });
}

const functions: readonly TradeFunction[] = [
  diameterFunction("pitch", [], (value) => value.pitch, {
    summary: "Distance from one thread to the next.",
    formula: "P = 25.4 mm / threads per inch for inch threads; of the designation for metric ones",
  }),
  diameterFunction("major_diameter", [], (value) => value.majorDiameter, {
    summary: "Nominal (basic major) diameter.",
    formula:
      "d, of the designation; numbered sizes: 0.060 in + 0.013 in × number; BA: 6 p^1.2 mm, two figures",
    meaning: "A bolt measures a little less: the tolerance of the crest lies below the nominal diameter.",
  }),
  diameterFunction("pitch_diameter", ["effective_diameter"], pitchDiameter, {
    summary: "Pitch (effective) diameter, where thread and groove are equally wide.",
    formula:
      "d2 = d − 0.649519 P (metric, unified), d − 0.640327 P (Whitworth form), d − 0.6 P (BA), d − 0.5327 P (cycle)",
    meaning: "The effective diameter of British tables is the same thing.",
  }),
  diameterFunction("minor_diameter", [], minorDiameter, {
    summary: "Basic minor diameter D1 of the internal thread.",
    formula:
      "D1 = d − 1.082532 P (metric, unified), d − 1.280654 P (Whitworth form), d − 1.2 P (BA), d − 1.0654 P (cycle)",
    meaning: "That of the nut; the root of the bolt is smaller and is root_diameter.",
  }),
  diameterFunction("root_diameter", [], rootDiameter, {
    summary: "Diameter d3 at the root of the external thread.",
    formula: "d3 = d − 1.226869 P (metric, unified); as minor_diameter for the British forms",
    meaning:
      "ISO 68-1 with the root at H/6. Later editions of ASME B1.1 print d − 1.190781 P for rounded unified roots.",
  }),
  defineFunction({
    name: "stress_area",
    group: "threads and bolts",
    parameters: [thread],
    returns: { is: "quantity", dimension: "area", unit: "mm2" },
    summary: "Tensile stress area of the thread.",
    formula:
      "As = (π/4)((d2 + d3)/2)²: (π/4)(d − 0.938194 P)² metric, (π/4)(d − 0.9743 P)² unified, (π/4)(d − 0.960491 P)² Whitworth form",
    source: "ISO 898-1; ASME B1.1; mean of effective and minor diameter for the British forms",
    meaning: "Unrounded. Standards print it to three or four figures and build their loads on those.",
    compute: ({ thread }) => inUnitsOf(thread, "area", stressArea(thread)),
  }),
  defineFunction({
    name: "tap_drill",
    group: "threads and bolts",
    parameters: [
      thread,
      {
        name: "percent",
        is: "number",
        min: 0.5,
        max: 1,
        unit: "%",
        optional: true,
        doc: "Depth of thread wanted, of the full depth; 77 % (d − P) when left out.",
      },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Hole to drill before tapping.",
    formula:
      "drill = d − percent × 1.299038 P (metric, unified); full depth 1.280654 P (Whitworth form), 1.2 P (BA)",
    source: "thread geometry; the usual hole d − P is 77 % (common practice; ISO 2306 rounds it)",
    limits: "Take the next drill there is above it; less thread in hard or deep holes.",
    compute: ({ thread, percent = usualThreadShare }) => ({
      ...inUnitsOf(thread, "length", tapDrill(thread, percent)),
      notes: [`${(percent * 100).toFixed(0)} % of full thread depth`],
    }),
  }),
];

export function threadFunctions(): readonly TradeFunction[] {
  return functions;
}
