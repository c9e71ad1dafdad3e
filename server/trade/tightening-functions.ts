/** The functions of tightening as the expression language offers them. */

import { underHeadBearingDiameter } from "./bolts.ts";
import type { Friction } from "./friction.ts";
import { describeFriction, nominalNutFactor } from "./friction.ts";
import type { TradeFunction } from "./function.ts";
import { defineFunction, isFaulty } from "./function.ts";
import { strengthsOf } from "./strength-class.ts";
import { torqueScatter } from "./tables/joint-figures.ts";
import type { Thread } from "./thread.ts";
import {
  assemblyPreload,
  engagementNeeded,
  frictionalJoint,
  preload,
  protrusion,
  torqueFor,
  torqueOfClass,
  torquePerForce,
  wrenchSetting,
} from "./tightening.ts";

/** Preload at both ends of the friction and of the scatter of tightening by torque, in words. */
function scatterNotes(friction: Friction, preloadAt: (nutFactor: number) => number): readonly string[] {
  const kilonewtons = (force: number) => (force / 1000).toPrecision(3);
  const least = preloadAt(friction.high) * (1 - torqueScatter.wide);
  const most = preloadAt(friction.low) * (1 + torqueScatter.wide);
  return [
    describeFriction(friction),
    `tightening by torque scatters by ± 25 to 35 %: ${kilonewtons(least)} kN to ${kilonewtons(most)} kN`,
    makersFigure,
  ];
}

const makersFigure = "an estimate: the maker's figure comes first";

const thread = {
  name: "thread",
  is: "thread",
  doc: "The thread, as in M10x1.25 or 3/8-24 UNF; it gives diameter, pitch and flank angle.",
} as const;

const torque = {
  name: "torque",
  is: "quantity",
  dimension: "torque",
  min: 0,
  max: 10_000,
  unit: "N.m",
  doc: "Torque at the fastener.",
} as const;

const force = {
  name: "preload",
  is: "quantity",
  dimension: "force",
  min: 0,
  max: 5e6,
  unit: "kN",
  doc: "Clamping force wanted in the bolt.",
} as const;

const nutFactor = {
  name: "nut_factor",
  is: "friction",
  doc: "Nut factor K, 0.05 to 0.6, or a friction word (dry, oiled, zinc, cadmium, stainless, moly).",
} as const;

const muThread = {
  name: "mu_thread",
  is: "number",
  min: 0.02,
  max: 0.5,
  doc: "Coefficient of friction in the thread.",
} as const;

const muHead = {
  name: "mu_head",
  is: "number",
  min: 0.02,
  max: 0.5,
  doc: "Coefficient of friction under the head or nut, whichever is turned.",
} as const;

const bearingDiameter = {
  name: "bearing_diameter",
  is: "quantity",
  dimension: "length",
  min: 0.001,
  max: 0.3,
  unit: "mm",
  optional: true,
  doc: "Mean diameter of the ring on which it rubs; that of an ISO hexagon head when left out.",
} as const;

const cls = { name: "class", is: "class", doc: "Strength class of the bolt: class 8.8, grade 5." } as const;

const length = { is: "quantity", dimension: "length", unit: "mm" } as const;

const shortForm = "short form T = K F d; nut factors after Shigley, Mechanical Engineering Design";
const longForm = "long form of VDI 2230-1 (Motosh, Kellermann and Klein), coefficients as printed there";
const longFormMeaning =
  "The thread coefficient is 0.577 for 60° flanks, 0.564 for 55°, 0.546 for 47.5°. Tables of 1986 lie 8 to 10 % below later editions.";
const scatterLimits =
  "A torque sets the preload to ± 25 to 35 % only. Not for self-locking nuts before their running torque is added.";

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "preload",
    group: "tightening",
    parameters: [torque, thread, nutFactor],
    returns: { is: "quantity", dimension: "force", unit: "kN" },
    summary: "Clamping force that a torque gives.",
    formula: "F = T / (K d)",
    source: shortForm,
    meaning: "K holds thread and head friction together; d is the nominal diameter.",
    limits: scatterLimits,
    compute: ({ torque, thread, nut_factor }) => ({
      value: preload(torque, thread, nominalNutFactor(nut_factor)),
      notes: scatterNotes(nut_factor, (factor) => preload(torque, thread, factor)),
    }),
  }),
  defineFunction({
    name: "preload_friction",
    group: "tightening",
    parameters: [torque, thread, muThread, muHead, bearingDiameter],
    returns: { is: "quantity", dimension: "force", unit: "kN" },
    summary: "Clamping force that a torque gives, from the two coefficients of friction.",
    formula: "F = T / (0.159 P + 0.577 d2 μ_thread + (D/2) μ_head)",
    source: longForm,
    meaning: longFormMeaning,
    limits: scatterLimits,
    compute: ({ torque, thread, mu_thread, mu_head, bearing_diameter }) => ({
      value: torque / torquePerForce(frictionalJoint(thread, mu_thread, mu_head, bearing_diameter)),
      notes: [...bearingNotes(thread, bearing_diameter), makersFigure],
    }),
  }),
  defineFunction({
    name: "torque_for",
    group: "tightening",
    parameters: [force, thread, nutFactor],
    returns: { is: "quantity", dimension: "torque", unit: "N.m" },
    summary: "Torque that gives a clamping force.",
    formula: "T = K F d",
    source: shortForm,
    meaning: "K holds thread and head friction together; d is the nominal diameter.",
    limits: scatterLimits,
    compute: ({ preload: force, thread, nut_factor }) => ({
      value: torqueFor(force, thread, nominalNutFactor(nut_factor)),
      notes: [describeFriction(nut_factor), makersFigure],
    }),
  }),
  defineFunction({
    name: "torque_for_friction",
    group: "tightening",
    parameters: [force, thread, muThread, muHead, bearingDiameter],
    returns: { is: "quantity", dimension: "torque", unit: "N.m" },
    summary: "Torque that gives a clamping force, from the two coefficients of friction.",
    formula: "T = F (0.159 P + 0.577 d2 μ_thread + (D/2) μ_head)",
    source: longForm,
    meaning: longFormMeaning,
    limits: scatterLimits,
    compute: ({ preload: force, thread, mu_thread, mu_head, bearing_diameter }) => ({
      value: force * torquePerForce(frictionalJoint(thread, mu_thread, mu_head, bearing_diameter)),
      notes: [...bearingNotes(thread, bearing_diameter), makersFigure],
    }),
  }),
  defineFunction({
    name: "torque_of_class",
    group: "tightening",
    parameters: [thread, cls, nutFactor],
    returns: { is: "quantity", dimension: "torque", unit: "N.m" },
    summary: "Torque for a bolt of a class, where no maker's figure is to be had.",
    formula: "T = K d × 0.75 Fp",
    source: `${shortForm}; 75 % of proof load for a joint that is opened again: Shigley`,
    meaning: "75 % of proof load. Not the 90 % of yield of VDI 2230: that is torque_of_class_friction.",
    limits: `${scatterLimits} Not for pivots, bearings, banjo bolts, soft materials, stainless or titanium.`,
    compute: ({ thread, class: cls, nut_factor }) => {
      const result = torqueOfClass(thread, cls, nominalNutFactor(nut_factor));
      if (isFaulty(result)) return result;
      return {
        value: result.value,
        notes: [...(result.notes ?? []), "75 % of proof load", describeFriction(nut_factor), makersFigure],
      };
    },
  }),
  defineFunction({
    name: "assembly_preload",
    group: "tightening",
    parameters: [thread, cls, muThread],
    returns: { is: "quantity", dimension: "force", unit: "kN" },
    summary: "Largest preload when tightening with a torque wrench, by VDI 2230.",
    formula: "F = 0.9 Rp0.2 A0 / √(1 + 3 [1.5 (d2/d0) (P/(π d2) + 1.155 μ)]²), d0 = (d2 + d3)/2",
    source: "VDI 2230-1, editions of 2001 and later",
    meaning: "90 % of the minimum 0.2 % proof stress under stretch and twist together (von Mises).",
    limits: "A bolt with full shank. Tables of the 1986 edition are 8 to 10 % lower.",
    compute: ({ thread, class: cls, mu_thread }) => {
      const strengths = strengthsOf(cls, thread.majorDiameter);
      if (isFaulty(strengths)) return strengths;
      return {
        value: assemblyPreload(thread, strengths.yield, mu_thread),
        notes: [vdiEdition, makersFigure],
      };
    },
  }),
  defineFunction({
    name: "torque_of_class_friction",
    group: "tightening",
    parameters: [thread, cls, muThread, muHead, bearingDiameter],
    returns: { is: "quantity", dimension: "torque", unit: "N.m" },
    summary: "Largest tightening torque for a bolt of a class, by VDI 2230.",
    formula: "T = assembly_preload × (0.159 P + 0.577 d2 μ_thread + (D/2) μ_head)",
    source: "VDI 2230-1, editions of 2001 and later",
    meaning:
      "Built on 90 % of the 0.2 % proof stress; the upper value, from which the scatter is taken downwards.",
    limits: "Never compare across friction or edition.",
    compute: ({ thread, class: cls, mu_thread, mu_head, bearing_diameter }) => {
      const strengths = strengthsOf(cls, thread.majorDiameter);
      if (isFaulty(strengths)) return strengths;
      const joint = frictionalJoint(thread, mu_thread, mu_head, bearing_diameter);
      return {
        value: assemblyPreload(thread, strengths.yield, mu_thread) * torquePerForce(joint),
        notes: [vdiEdition, ...bearingNotes(thread, bearing_diameter), makersFigure],
      };
    },
  }),
  defineFunction({
    name: "wrench_setting",
    group: "tightening",
    parameters: [
      { ...torque, doc: "Torque wanted at the fastener." },
      {
        ...length,
        name: "wrench_length",
        min: 0.05,
        max: 3,
        doc: "From the square of the wrench to the middle of the grip.",
      },
      {
        ...length,
        name: "extension",
        min: 0,
        max: 3,
        doc: "From the square to the fastener, in line with the wrench.",
      },
    ],
    returns: { is: "quantity", dimension: "torque", unit: "N.m" },
    summary: "What to set a torque wrench to when a crowfoot or extension lengthens it.",
    formula: "setting = torque × wrench / (wrench + extension)",
    source: "statics of the lever; US Army TM 9-254, fig. 45",
    meaning:
      "The extension points straight ahead. At a right angle it changes nothing; pointing back it is subtracted.",
    compute: ({ torque, wrench_length, extension }) => ({
      value: wrenchSetting(torque, wrench_length, extension),
    }),
  }),
  defineFunction({
    name: "thread_engagement",
    group: "tightening",
    parameters: [
      thread,
      cls,
      {
        name: "material",
        is: "material",
        doc: "What the hole is tapped in: steel, cast_iron, aluminium, magnesium.",
      },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Length of full thread a bolt needs in a tapped hole.",
    formula:
      "l = factor × d: class 8.8 in steel 1.0, cast iron 1.3, aluminium 2.0, magnesium 2.5; 10.9 and up: steel 1.25, aluminium 2.5",
    source: "common practice, no source",
    meaning:
      "Aluminium counts as cast or unknown; wrought hard aluminium manages with 1.5 d. 9.8 counts as 10.9.",
    limits: "Full threads less the chamfer. Plastic, timber and composite need an insert.",
    compute: ({ thread, class: cls, material }) => engagementNeeded(cls, material, thread.majorDiameter),
  }),
  defineFunction({
    name: "protrusion",
    group: "tightening",
    parameters: [
      { ...length, name: "length", min: 0, max: 2, doc: "Length of the bolt under its head." },
      { ...length, name: "grip", min: 0, max: 2, doc: "Thickness of what is clamped." },
      { ...length, name: "washers", min: 0, max: 0.2, doc: "All washers together, under head and nut." },
      { ...length, name: "nut_height", min: 0, max: 0.2, doc: "Height of the nut." },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "How far a bolt stands out of its nut.",
    formula: "length − grip − washers − nut height",
    source: "geometry; FAA AC 43.13-1B asks for at least one thread, two are common practice",
    meaning: "Negative when the bolt ends inside the nut.",
    compute: ({ length, grip, washers, nut_height }) => ({
      value: protrusion(length, grip, washers, nut_height),
    }),
  }),
];

const vdiEdition = "VDI 2230, 2001 and later: 90 % of the 0.2 % proof stress";

function bearingNotes(thread: Thread, given: number | undefined): readonly string[] {
  if (given !== undefined) return [];
  const { value, source } = underHeadBearingDiameter(thread);
  return [`bearing diameter ${(value * 1000).toFixed(2)} mm: ${source}`];
}

export function tighteningFunctions(): readonly TradeFunction[] {
  return functions;
}
