/**
 * Every figure that a rule judges by or speaks of, in one table: its value, where it comes from, and how a build has
 * another. Values that the floors below reckon with are theirs.
 */
import * as build from "../build/figures.ts";
import { frictionRows } from "../trade/tables/friction.ts";
import * as joints from "../trade/tables/joint-figures.ts";
import { wireRows } from "../trade/tables/wires.ts";

export interface Figure {
  readonly name: string;
  readonly value: string;
  /** A published source, "common practice, no source", or "from memory". */
  readonly source: string;
  /** How a build says otherwise; undefined where it cannot: then the rule is graded otherwise, or waived. */
  readonly change: string | undefined;
  /** The rules that judge by it. */
  readonly rules: readonly string[];
}

const PRACTICE = "common practice, no source";

const percent = (share: number) => `${Number((share * 100).toPrecision(3))} %`;

const READINGS: readonly Figure[] = [
  {
    name: "Coverage factor of every uncertainty",
    value: "k = 2",
    source:
      "JCGM 100:2008, 6.3.3; as a guard band that of ISO 14253-1 in its 1998 and 2013 editions, stricter than the 2017 default",
    change: undefined,
    rules: ["over-limit", "under-limit", "limit-uncertain", "fit-out-of-range", "pair-differs"],
  },
  {
    name: "Uncertainty of a gauge that states its resolution alone",
    value: "resolution / √3",
    source: "JCGM 100:2008, 4.3.7 and F.2.2.1, with k = 2",
    change: "`uncertainty:` of the gauge, or `±` behind the reading",
    rules: ["limit-uncertain", "gauge-too-coarse"],
  },
  {
    name: "A reading is near its limit when less is left of the zone than",
    value: percent(build.NEAR_SHARE.toNumber()),
    source: PRACTICE,
    change: "`near:` of the vehicle",
    rules: ["near-limit"],
  },
  {
    name: "A gauge is coarse for a limit when its uncertainty is more of the zone than",
    value: `${percent(build.COARSE_SHARE)}; a warning from ${percent(build.COARSEST_SHARE)}`,
    source: PRACTICE,
    change: undefined,
    rules: ["gauge-too-coarse"],
  },
  {
    name: "A torque wrench is coarse when its uncertainty is more of the torque's zone than",
    value: percent(build.COARSE_TORQUE_SHARE),
    source: PRACTICE,
    change: undefined,
    rules: ["gauge-too-coarse"],
  },
  {
    name: "A torque wrench is used too low below this share of its range",
    value: percent(build.LEAST_SHARE_OF_RANGE),
    source: "ISO 6789-1 (from memory)",
    change: undefined,
    rules: ["gauge-too-coarse"],
  },
  {
    name: "A reading is implausible when it is off by a factor of",
    value: `${build.SLIP_FACTOR}`,
    source: `${PRACTICE}: a slipped decimal is ten, and the part may be worn`,
    change: undefined,
    rules: ["implausible-value"],
  },
];

const JOINTS: readonly Figure[] = [
  ...joints.engagementFactors.map(({ material, usual, strong, remark }) => ({
    name: `Thread engagement in ${material.replaceAll("_", " ")}, full threads less the chamfer`,
    value: `${usual} d${strong === undefined ? "" : `; ${strong} d for class 9.8 and stronger`}`,
    source: `${PRACTICE}${remark === undefined ? "" : `; ${remark}`}`,
    change: undefined,
    rules: ["bolt-too-short", "engagement-short"],
  })),
  {
    name: "Thread past a nut",
    value: `${joints.pitchesPastNut} pitches`,
    source: "common practice; FAA AC 43.13-1B asks at least one",
    change: "`protrusion:` of the vehicle",
    rules: ["bolt-too-short"],
  },
  {
    name: "A bolt is long from this much thread past its nut",
    value: `${joints.mostPitchesPastNut} pitches`,
    source: PRACTICE,
    change: undefined,
    rules: ["bolt-too-long"],
  },
  {
    name: "Height of a hexagon nut that states none",
    value: `${joints.usualNutHeight} d`,
    source: "ISO 4032, style 1, at least",
    change: "`height` in the joint's `nut:`",
    rules: ["bolt-too-short", "bolt-too-long"],
  },
  {
    name: "A nut is short for its class under this height; under the second no standard has one",
    value: `${joints.nutHeights.full} d; ${joints.nutHeights.thin} d`,
    source: "ISO 898-2 and ISO 4032, from memory",
    change: "`height` in the joint's `nut:`",
    rules: ["engagement-short"],
  },
  {
    name: "End of a stud in its hole, where the standard is not known",
    value: `${joints.shortestStudEnd} d`,
    source: "DIN 938, from memory",
    change: undefined,
    rules: ["bolt-too-short", "bolt-too-long"],
  },
  {
    name: "A torque from the class aims at this share of the proof load",
    value: percent(joints.preloadShare),
    source: "Shigley: 75 % for a joint that is opened again, 90 % for a permanent one",
    change: "a figure in the joint's `torque:`",
    rules: ["torque-not-stated"],
  },
  {
    name: "A torque is high from this share of the proof load",
    value: `${percent(joints.heavyShare)}; an error over 100 %`,
    source: "Shigley: 90 % for a permanent joint, at the top of the torque and the lowest friction",
    change: "`friction:` of the joint",
    rules: ["torque-over-proof"],
  },
  {
    name: "A joint hardly clamps under this share of the proof load",
    value: percent(joints.lightShare),
    source: PRACTICE,
    change: "`friction:` of the joint",
    rules: ["torque-low-preload"],
  },
  {
    name: "Scatter of the preload when tightening by torque",
    value: `± ${percent(joints.torqueScatter.narrow)} to ${percent(joints.torqueScatter.wide)}`,
    source: "common practice; SAND2008-0371 uses 35 %",
    change: undefined,
    rules: ["torque-over-proof", "torque-low-preload"],
  },
  {
    name: "Tolerance of a torque that states none",
    value: `± ${build.TORQUE_TOLERANCE} %`,
    source: PRACTICE,
    change: "a tolerance in the joint's `torque:`",
    rules: ["torque-outside"],
  },
  ...frictionRows.map(({ word, low, high, source }) => ({
    name: `Nut factor, ${word}`,
    value:
      low === undefined || high === undefined
        ? "none"
        : low === high
          ? low.toFixed(2)
          : `${low.toFixed(2)} to ${high.toFixed(2)}`,
    source,
    change: "`friction: nut_factor …` or `friction: thread … head …` of the joint",
    rules: ["torque-over-proof", "torque-low-preload", "friction-assumed"],
  })),
];

const OTHERS: readonly Figure[] = [
  {
    name: "Current that a wire is trusted with, by its area",
    value: wireRows.map(({ area, current }) => `${area} mm²: ${current} A`).join(", "),
    source: `${PRACTICE}, the lowest for its size; sizes of IEC 60228`,
    change: undefined,
    rules: ["fuse-over-wire"],
  },
  {
    name: "A steady load may be this share of its fuse",
    value: percent(build.FUSE_SHARE),
    source: PRACTICE,
    change: undefined,
    rules: ["fuse-under-load"],
  },
  {
    name: "A filling of less than this share of what a system holds is a topping up",
    value: percent(build.CHANGE_SHARE),
    source: PRACTICE,
    change: undefined,
    rules: ["fluid-change-due"],
  },
];

const WORDS: readonly Figure[] = [
  {
    name: "Families of brake fluid that are never mixed without a flush and new seals",
    value: "DOT 3, 4 and 5.1 glycol; DOT 5 silicone; mineral oil",
    source: "FMVSS 116 (49 CFR 571.116)",
    change: "`fluid:` of the system",
    rules: ["wrong-fluid"],
  },
  {
    name: "Plating can make hard steel brittle",
    value: "springs, and class 10.9 and up; on what can hurt, springs and class 12.9 are not plated at all",
    source: PRACTICE,
    change: undefined,
    rules: ["embrittlement"],
  },
  {
    name: "Magnetic particles find no crack in",
    value: "aluminium, magnesium, titanium and brass",
    source: PRACTICE,
    change: undefined,
    rules: ["inspection-method"],
  },
  {
    name: "A nylon insert locks up to",
    value: "120 °C",
    source: PRACTICE,
    change: undefined,
    rules: ["self-locking-reused"],
  },
  {
    name: "A bearing is heated to at most",
    value: "120 °C, a sealed one less",
    source: PRACTICE,
    change: undefined,
    rules: ["safety-caution"],
  },
  {
    name: "Wheels are torqued again (advice: nothing is assumed)",
    value: "after the first run, and after 50 to 100 km",
    source: PRACTICE,
    change: "`recheck:` of the joint",
    rules: ["recheck-due"],
  },
];

export const figures: readonly Figure[] = [...READINGS, ...JOINTS, ...OTHERS, ...WORDS];
