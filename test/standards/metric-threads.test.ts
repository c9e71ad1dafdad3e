import { nominalStressArea, nutProofLoad, proofLoad, tensileLoad } from "../../server/trade/bolts.ts";
import { isFaulty } from "../../server/trade/function.ts";
import { readNutClass, strengthsOf } from "../../server/trade/strength-class.ts";
import { coarsePitch, selectedFinePitches } from "../../server/trade/thread.ts";
import { externalThreadLimits } from "../../server/trade/thread-tolerances.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { call, checkRows, inUnit, strengthClass, thread } from "./row-checks.ts";
import { named, parts } from "./row-inputs.ts";

/** The thread a row begins with: `M10x1.25`, `M8 (P=1.25 mm)`, `M4 coarse`. */
function threadOf(row: ReferenceRow) {
  const [name = "", pitch] =
    /^(M[\d.]+(?:x[\d.]+)?)(?: \(P=([\d.]+) ?(?:mm)?\))?/.exec(row.inputs)?.slice(1) ?? [];
  return thread(pitch === undefined || name.includes("x") ? name : `${name}x${pitch}`);
}

function classOf(row: ReferenceRow) {
  return strengthClass(/class [\d.]+/.exec(row.inputs)?.[0] ?? "");
}

/** Strengths of `class 8.8 (d > 16 mm)`: just above or at the diameter named, else at 10 mm. */
function strengths(row: ReferenceRow) {
  const diameter = row.inputs.includes("d > 16") ? 0.018 : row.inputs.includes("d <= 16") ? 0.016 : 0.01;
  const found = strengthsOf(classOf(row), diameter);
  if (isFaulty(found)) throw new Error(JSON.stringify(found.fault));
  return found;
}

function loadOf(compute: typeof proofLoad, row: ReferenceRow): number {
  const load = compute(threadOf(row), classOf(row));
  if (isFaulty(load)) throw new Error(JSON.stringify(load.fault));
  return load.value;
}

const mm = (metres: number) => inUnit(metres, "mm");

checkRows("02_metric_threads", [
  {
    quantity: /^fine pitches of ISO 262 selection$/,
    answer: (row) => selectedFinePitches(Number(row.inputs.slice(1))),
  },
  {
    quantity: /^6g external thread limits/,
    answer: (row) => {
      const limits = externalThreadLimits(threadOf(row));
      if (limits === undefined) throw new Error(`no limits for ${row.inputs}`);
      const { majorDiameter, pitchDiameter } = limits;
      return [majorDiameter.upper, majorDiameter.lower, pitchDiameter.upper, pitchDiameter.lower].map(mm);
    },
  },
  { quantity: /^coarse pitch$/, answer: (row) => [coarsePitch(Number(row.inputs.slice(1))) ?? Number.NaN] },
  {
    quantity: /^basic pitch diameter d2$/,
    answer: (row) => [mm(call("pitch_diameter", threadOf(row)))],
  },
  {
    quantity: /^basic minor diameter of internal thread D1$/,
    answer: (row) => [mm(call("minor_diameter", threadOf(row)))],
  },
  {
    quantity: /^basic minor diameter of external thread d3$/,
    answer: (row) => [mm(call("root_diameter", threadOf(row)))],
  },
  {
    quantity: /^table: d2 \/ d3 \/ D1$/,
    answer: (row) =>
      ["pitch_diameter", "root_diameter", "minor_diameter"].map((name) => mm(call(name, threadOf(row)))),
  },
  {
    quantity: /^table: d2 \/ d3 \/ D1 \/ As$/,
    answer: (row) => ({
      values: [
        ...["pitch_diameter", "root_diameter", "minor_diameter"].map((name) => mm(call(name, threadOf(row)))),
        inUnit(call("stress_area", threadOf(row)), "mm²"),
      ],
      tolerances: [0.0006, 0.0006, 0.0006, 0.006],
    }),
  },
  {
    quantity: /^nominal stress area As \(table, 3 figures\)$/,
    answer: (row) => [inUnit(nominalStressArea(threadOf(row)), "mm²")],
  },
  {
    quantity: /^nominal stress area As$/,
    answer: (row) => [inUnit(call("stress_area", threadOf(row)), "mm²")],
  },
  {
    quantity: /^stress area worked example$/,
    answer: (row) => [
      inUnit(
        call("stress_area", thread(`M${mm(named(row.inputs, "d"))}x${mm(named(row.inputs, "p"))}`)),
        "mm²",
      ),
    ],
  },
  { quantity: /^minimum tensile strength Rm$/, answer: (row) => [inUnit(strengths(row).tensile, "MPa")] },
  {
    quantity: /^minimum (0.2 % proof stress Rp0.2|yield strength)/,
    answer: (row) => [inUnit(strengths(row).yield, "MPa")],
  },
  {
    quantity: /^nominal stress under proof load Sp$/,
    answer: (row) => [inUnit(strengths(row).proof, "MPa")],
  },
  { quantity: /^proof load Fp/, answer: (row) => [loadOf(proofLoad, row)] },
  { quantity: /^minimum ultimate tensile load Fm$/, answer: (row) => [loadOf(tensileLoad, row)] },
  {
    quantity: /^nut proof load/,
    answer: (row) => {
      const nut = readNutClass(parts(row.inputs)[1]?.replace("nut ", "") ?? "");
      return [nut === undefined ? Number.NaN : (nutProofLoad(threadOf(row), nut) ?? Number.NaN)];
    },
  },
  {
    quantity: /^tapping drill rule d - P$/,
    answer: (row) => [mm(call("tap_drill", threadOf(row)))],
  },
]);
