/** What can be called about bolts. */

import { proofLoad, tensileLoad, threadLength, yieldLoad } from "./bolts.ts";
import type { TradeFunction } from "./function.ts";
import { defineFunction, isFaulty } from "./function.ts";
import type { TradeResult } from "./result.ts";
import type { StrengthClass } from "./strength-class.ts";
import type { Thread } from "./thread.ts";
import { inUnitsOf, isInchThread } from "./threads.ts";

const parameters = [
  { name: "thread", is: "thread", doc: "The thread, as in M10x1.25 or 3/8-24 UNF." },
  {
    name: "class",
    is: "class",
    doc: "Strength class of the bolt: class 8.8, grade 5, class A2-70, class T.",
  },
] as const;

function loadFunction(
  name: string,
  compute: (thread: Thread, cls: StrengthClass) => TradeResult,
  texts: { readonly summary: string; readonly formula: string; readonly meaning: string },
): TradeFunction {
  return defineFunction({
    name,
    group: "threads and bolts",
    parameters,
    returns: { is: "quantity", dimension: "force", unit: "kN" },
    source: "ISO 898-1; ISO 3506-1; SAE J429; British letters from memory",
    limits: "Minimum values at room temperature, for sound, unplated and undamaged threads.",
    ...texts,
    compute: ({ thread, class: cls }) => {
      const result = compute(thread, cls);
      return isFaulty(result) || !isInchThread(thread) ? result : { ...result, unit: "lbf" };
    },
  });
}

const functions: readonly TradeFunction[] = [
  loadFunction("proof_load", proofLoad, {
    summary: "Load that a bolt of the class bears without permanent stretch.",
    formula: "Fp = As × Sp",
    meaning:
      "The proof load ISO 898-1 prints for coarse threads; else the stress area as the standard rounds it, times the stress under proof load.",
  }),
  loadFunction("yield_load", yieldLoad, {
    summary: "Load at which a bolt of the class yields.",
    formula: "Fy = As × ReL, or As × Rp0.2",
    meaning: "With the minimum of ISO 898-1, not the nominal value that the class number spells.",
  }),
  loadFunction("tensile_load", tensileLoad, {
    summary: "Load that the weakest bolt of the class bears before it breaks.",
    formula: "Fm = As × Rm",
    meaning:
      "With the minimum tensile strength of ISO 898-1, not the nominal value that the class number spells.",
  }),
  defineFunction({
    name: "thread_length",
    group: "threads and bolts",
    parameters: [
      { name: "thread", is: "thread", doc: "The thread, as in M10x1.25." },
      {
        name: "length",
        is: "quantity",
        dimension: "length",
        min: 0.001,
        max: 1,
        unit: "mm",
        doc: "Length of the bolt under its head.",
      },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Length of thread on a bolt with a plain shank.",
    formula:
      "b = 2d + 6 mm up to 125 mm of length, 2d + 12 mm up to 200 mm, 2d + 25 mm above; inch bolts 2d + 1/4 in up to 6 in, 2d + 1/2 in above",
    source: "ISO 888 (ISO 4014); inch bolts: ASME B18.2.1, from memory",
    limits: "Screws threaded to the head and bolts to a maker's drawing differ: measure.",
    compute: ({ thread, length }) => inUnitsOf(thread, "length", threadLength(thread, length)),
  }),
];

export function boltFunctions(): readonly TradeFunction[] {
  return functions;
}
