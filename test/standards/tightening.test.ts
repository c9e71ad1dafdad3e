import { readFriction } from "../../server/trade/friction.ts";
import { torqueScatter } from "../../server/trade/tables/joint-figures.ts";
import { torquePerForce } from "../../server/trade/tightening.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { referenceRows } from "./reference-rows.ts";
import { call, checkRows, inUnit, materialWith, strengthClass, thread } from "./row-checks.ts";
import { labelled, named, parts } from "./row-inputs.ts";

/** `M8x1; class 8.8; mu_G=mu_K=0.10` */
function vdiRow(row: ReferenceRow) {
  const [name = "", cls = "", friction = ""] = parts(row.inputs);
  return [thread(name), strengthClass(cls), Number(friction.split("=").at(-1))] as const;
}

/** Torque in N·m of `M8; F=16000 N; P=1.25 mm; d2=7.188 mm; mu_G=0.12; mu_K=0.12; D_Km=10.31 mm`, in figures. */
function longFormTorque(inputs: string): number {
  const perForce = torquePerForce({
    pitch: named(inputs, "P"),
    pitchDiameter: named(inputs, "d2"),
    flankAngle: thread(parts(inputs)[0] ?? "").flankAngle,
    threadFriction: named(inputs, "mu_G"),
    headFriction: named(inputs, "mu_K"),
    bearingDiameter: named(inputs, "D_Km"),
  });
  return named(inputs, "F") * perForce;
}

/** The nut factor that gives the same torque as the row before does by the long form. */
function equivalentNutFactor(row: ReferenceRow): number {
  const rows = referenceRows("04_tightening_torque");
  const { inputs } = rows[rows.findIndex(({ id }) => id === row.id) - 1] ?? row;
  const torqueAtOne = call("torque_for", named(inputs, "F"), thread(parts(inputs)[0] ?? ""), 0.5) / 0.5;
  return longFormTorque(inputs) / torqueAtOne;
}

function figures(word: string): readonly [number, number] {
  const friction = readFriction(word);
  if (friction?.kind !== "friction") throw new Error(`no figures for ${word}`);
  return [friction.low, friction.high];
}

checkRows("04_tightening_torque", [
  {
    quantity: /^T = C D Fi, Fi = 0.85 As Sp$/,
    answer: (row) => {
      const bolt = thread("3/4-10 UNC");
      const force = 0.85 * call("proof_load", bolt, strengthClass("grade 5"));
      return [inUnit(call("torque_for", force, bolt, named(row.inputs, "C")), "lbf·in")];
    },
  },
  {
    quantity: /^preload Fi = 0.85 As Sp$/,
    answer: () => [inUnit(0.85 * call("proof_load", thread("3/4-10 UNC"), strengthClass("grade 5")), "lbf")],
  },
  {
    quantity: /^heating of bolt to give the same stretch$/,
    answer: ({ inputs }) => {
      const growth = call(
        "thermal_growth",
        named(inputs, "L"),
        materialWith({ expansion: named(inputs, "alpha") }),
        1,
      );
      return [inUnit(named(inputs, "delta") / growth, "°F")];
    },
  },
  {
    quantity: /^T = C D Fi, Fi = 0.9 Sp A$/,
    answer: ({ inputs }) => {
      const force = 0.9 * named(inputs, "Sp") * named(inputs, "A");
      return [inUnit(call("torque_for", force, thread("1-1/4-12 UNF"), 0.15), "lbf·in")];
    },
  },
  {
    quantity: /^T = K F d, F = 0.75 Sp At$/,
    answer: ({ inputs }) => {
      const force = 0.75 * named(inputs, "Sp") * named(inputs, "At");
      return [call("torque_for", force, thread("M14"), named(inputs, "K"))];
    },
  },
  {
    quantity: /^preload from torque F = T\/\(K d\)$/,
    answer: ({ inputs }) => [
      inUnit(call("preload", named(inputs, "T"), thread("5/8-11 UNC"), named(inputs, "K")), "lbf"),
    ],
  },
  {
    quantity: /^preload maximum with 35 % torque scatter$/,
    answer: ({ inputs }) => {
      const nominal = call("preload", named(inputs, "T"), thread("5/8-11 UNC"), named(inputs, "K"));
      return [inUnit(nominal * (1 + torqueScatter.wide), "lbf")];
    },
  },
  {
    quantity: /^maximum assembly preload FM/,
    answer: (row) => [inUnit(call("assembly_preload", ...vdiRow(row)), "kN")],
  },
  {
    quantity: /^maximum tightening torque MA$/,
    answer: (row) => {
      const [bolt, cls, friction] = vdiRow(row);
      return [call("torque_of_class_friction", bolt, cls, friction, friction)];
    },
  },
  { quantity: /^long form MA/, answer: ({ inputs }) => [longFormTorque(inputs)] },
  { quantity: /^equivalent nut factor/, answer: (row) => [equivalentNutFactor(row)] },
  { quantity: /^typical nut factor K$/, inputs: /^dry/, answer: () => figures("dry") },
  { quantity: /^torque factor K$/, inputs: /^zinc/, answer: () => [figures("zinc")[0]] },
  { quantity: /^torque factor K$/, inputs: /^lubricated$/, answer: () => [figures("oiled")[0]] },
  { quantity: /^torque factor K$/, inputs: /^cadmium/, answer: () => [figures("cadmium")[0]] },
  {
    quantity: /^torque at fastener with straight extension/,
    answer: ({ inputs }) => {
      const [wrench, extension] = [labelled(inputs, "wrench length"), labelled(inputs, "extension")];
      // The setting is proportional to the torque, so the torque at a setting follows from that at one newton metre.
      const settingForOne = call("wrench_setting", 1, wrench, extension);
      return [inUnit(labelled(inputs, "setting") / settingForOne, "lbf·in")];
    },
  },
]);
