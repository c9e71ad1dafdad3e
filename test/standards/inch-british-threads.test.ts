import { proofLoad } from "../../server/trade/bolts.ts";
import { isFaulty } from "../../server/trade/function.ts";
import { strengthsOf } from "../../server/trade/strength-class.ts";
import { britishAssociationFormula } from "../../server/trade/thread.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { call, checkRows, inUnit, strengthClass, thread } from "./row-checks.ts";
import { parts, quantity } from "./row-inputs.ts";

/** `3/8-24 UNF`, `3/8 in BSW` or `2BA`. */
function threadOf(row: ReferenceRow) {
  return thread((parts(row.inputs)[0] ?? "").replace(" in ", " ").replace(/^(\d+)BA$/, "$1 BA"));
}

/** `SAE grade 5; 1/4 to 1 in`, at the largest diameter. */
function strengths(row: ReferenceRow) {
  const [grade = "", sizes = ""] = parts(row.inputs);
  const largest = /to (?:(\d)-)?(\d+(?:\/\d+)?) in$/.exec(sizes);
  const diameter = quantity(`${largest?.[2]} in`) + quantity(`${largest?.[1] ?? 0} in`);
  const found = strengthsOf(strengthClass(grade.replace("SAE ", "")), diameter);
  if (isFaulty(found)) throw new Error(JSON.stringify(found.fault));
  return found;
}

const inch = (metres: number) => inUnit(metres, "in");
const kpsi = (stress: number) => inUnit(stress, "kpsi");

checkRows("03_inch_british_threads", [
  {
    quantity: /^tensile stress area$/,
    answer: (row) => [inUnit(call("stress_area", threadOf(row)), "in²")],
  },
  {
    quantity: /^pitch diameter \/ minor diameter/,
    answer: (row) => [
      inch(call("pitch_diameter", threadOf(row))),
      inch(call("minor_diameter", threadOf(row))),
    ],
  },
  {
    quantity: /^effective \(pitch\) diameter \/ minor diameter$/,
    answer: (row) => [
      inch(call("effective_diameter", threadOf(row))),
      inch(call("minor_diameter", threadOf(row))),
    ],
  },
  { quantity: /^pitch diameter \(basic\)$/, answer: (row) => [inch(call("pitch_diameter", threadOf(row)))] },
  { quantity: /^minimum proof strength$/, answer: (row) => [kpsi(strengths(row).proof)] },
  { quantity: /^minimum yield strength$/, answer: (row) => [kpsi(strengths(row).yield)] },
  { quantity: /^minimum tensile strength$/, answer: (row) => [kpsi(strengths(row).tensile)] },
  {
    quantity: /^proof load = At x Sp$/,
    answer: (row) => {
      const load = proofLoad(threadOf(row), strengthClass(parts(row.inputs)[1] ?? ""));
      if (isFaulty(load)) throw new Error(JSON.stringify(load.fault));
      return [inUnit(load.value, "lbf")];
    },
  },
  { quantity: /^threads per inch$/, answer: (row) => [inUnit(1, "m") / inch(call("pitch", threadOf(row)))] },
  {
    quantity: /^Whitworth thread angle$/,
    answer: () => [inUnit(thread("1/4 BSW").flankAngle, "degree")],
  },
  {
    quantity: /^BA major diameter \(unrounded\)$/,
    answer: (row) => [inUnit(britishAssociationFormula(Number.parseInt(row.inputs, 10)).majorDiameter, "mm")],
  },
  {
    quantity: /^BA pitch \(unrounded\)$/,
    answer: (row) => [inUnit(britishAssociationFormula(Number.parseInt(row.inputs, 10)).pitch, "mm")],
  },
  {
    quantity: /^BA major diameter \(table\)$/,
    answer: (row) => [inch(call("major_diameter", threadOf(row)))],
  },
]);
