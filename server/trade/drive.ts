/** Drive and gearing: ratios, speeds, tyres and chains. */

import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";
import type { Faulty } from "./result.ts";
import { fullProfile, readTyre, tyreDiameter } from "./tyres.ts";

/** Length of a chain in pitches, as it comes out, for a centre distance in m. */
function chainLength(pitch: number, teeth: number, otherTeeth: number, centres: number): number {
  const inPitches = centres / pitch;
  return 2 * inPitches + (teeth + otherTeeth) / 2 + ((otherTeeth - teeth) / (2 * Math.PI)) ** 2 / inPitches;
}

/** The even number of links to use for a length in pitches: an odd one needs a cranked link. */
function evenLinks(pitches: number): number {
  return 2 * Math.ceil(pitches / 2 - 1e-9);
}

/** Centre distance of a taut chain, m; undefined when it is too short for the sprockets. */
function chainCentres(pitch: number, teeth: number, otherTeeth: number, links: number): number | undefined {
  const straight = links - (teeth + otherTeeth) / 2;
  const root = straight ** 2 - 8 * ((otherTeeth - teeth) / (2 * Math.PI)) ** 2;
  return straight <= 0 || root < 0 ? undefined : (pitch / 4) * (straight + Math.sqrt(root));
}

/** Road speed, m/s; engine speed in turns per second. */
function roadSpeed(engineSpeed: number, ratio: number, circumference: number): number {
  return (engineSpeed * circumference) / ratio;
}

/** Engine speed, turns per second; road speed in m/s. */
function engineSpeedAt(speed: number, ratio: number, circumference: number): number {
  return (speed / circumference) * ratio;
}

const engineSpeed = {
  name: "engine_speed",
  is: "quantity",
  dimension: "frequency",
  min: 0,
  max: 500,
  unit: "rpm",
  doc: "Speed of the crankshaft.",
} as const;
const ratio = {
  name: "ratio",
  is: "number",
  min: 0.05,
  max: 200,
  doc: "Turns of the engine for one of the wheel.",
} as const;
const circumference = {
  name: "rolling_circumference",
  is: "quantity",
  dimension: "length",
  min: 0.05,
  max: 10,
  unit: "mm",
  doc: "Way the loaded wheel goes in one turn: measure it, about 3 % less than π times the diameter.",
} as const;
const pitch = {
  name: "pitch",
  is: "quantity",
  dimension: "length",
  min: 0.003,
  max: 0.12,
  unit: "mm",
  doc: "Pitch of the chain, from pin to pin.",
} as const;
const teeth = {
  name: "teeth",
  is: "number",
  whole: true,
  min: 5,
  max: 200,
  doc: "Teeth of one sprocket.",
} as const;
const otherTeeth = { ...teeth, name: "other_teeth", doc: "Teeth of the other sprocket." } as const;
const chainFormula = "L = 2 C/p + (z1 + z2)/2 + ((z2 − z1)/2π)² p/C";
const chainSource = "standard chain formula; V. B. Bhandari, Introduction to Machine Design, ch. 14; ISO 606";

function tooFewLinks(links: number, pitch: number, teeth: number, otherTeeth: number): Faulty {
  // Two sprockets that just touch.
  const least = chainLength(pitch, teeth, otherTeeth, (pitch * (teeth + otherTeeth)) / (2 * Math.PI));
  return { fault: { kind: "out-of-range", parameter: "links", value: links, min: Math.ceil(least) } };
}

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "overall_ratio",
    group: "drive and gearing",
    parameters: [
      {
        name: "ratio",
        is: "number",
        variadic: true,
        min: 0.05,
        max: 50,
        doc: "Each ratio on the way: primary drive, gear, final drive.",
      },
    ],
    returns: { is: "number" },
    summary: "Turns of the engine for one of the wheel.",
    formula: "product of the ratios",
    source: "kinematics",
    meaning: "A ratio is driving turns over driven turns: driven teeth over driving teeth.",
    compute: ({ ratio }) => ({ value: ratio.reduce((product, each) => product * each, 1) }),
  }),
  defineFunction({
    name: "road_speed",
    group: "drive and gearing",
    parameters: [engineSpeed, ratio, circumference],
    returns: { is: "quantity", dimension: "speed", unit: "km/h" },
    summary: "Road speed at an engine speed.",
    formula: "v = n × circumference / ratio",
    source: "kinematics",
    limits: "No slip.",
    compute: ({ engine_speed, ratio, rolling_circumference }) => ({
      value: roadSpeed(engine_speed, ratio, rolling_circumference),
    }),
  }),
  defineFunction({
    name: "engine_speed_at",
    group: "drive and gearing",
    parameters: [
      {
        name: "speed",
        is: "quantity",
        dimension: "speed",
        min: 0,
        max: 150,
        unit: "km/h",
        doc: "Road speed.",
      },
      ratio,
      circumference,
    ],
    returns: { is: "quantity", dimension: "frequency", unit: "rpm" },
    summary: "Engine speed at a road speed.",
    formula: "n = v × ratio / circumference",
    source: "kinematics",
    limits: "No slip.",
    compute: ({ speed, ratio, rolling_circumference }) => ({
      value: engineSpeedAt(speed, ratio, rolling_circumference),
    }),
  }),
  defineFunction({
    name: "tyre_diameter",
    group: "drive and gearing",
    parameters: [
      {
        name: "size",
        is: "text",
        expected: '"185/70R13"',
        doc: "Size as it stands on the tyre, in metric designation.",
      },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Nominal overall diameter of a tyre.",
    formula: "2 × width × aspect ratio + rim diameter",
    source: "ISO 4000-1, designation",
    meaning:
      "Not the rolling diameter. A radial without a ratio in its name is of series 80 to 82: 80 is used.",
    limits:
      "Design diameters are rounded to whole millimetres and makes differ by 1 to 2 %. Inch cross-ply names are not read.",
    compute: ({ size }) => {
      const tyre = readTyre(size);
      if (tyre === undefined) {
        return { fault: { kind: "unreadable", text: size, expected: 'a tyre size such as "185/70R13"' } };
      }
      if (tyre.aspect !== undefined) return { value: tyreDiameter(tyre) };
      const highest = tyreDiameter({ ...tyre, aspect: fullProfile.highest });
      return {
        value: tyreDiameter(tyre),
        notes: [`no ratio in the name: series 80 is used, series 82 gives ${(highest * 1000).toFixed(0)} mm`],
      };
    },
  }),
  defineFunction({
    name: "chain_length",
    group: "drive and gearing",
    parameters: [
      pitch,
      teeth,
      otherTeeth,
      {
        name: "centres",
        is: "quantity",
        dimension: "length",
        min: 0.01,
        max: 10,
        unit: "mm",
        doc: "Distance between the shafts.",
      },
    ],
    returns: { is: "number" },
    summary: "Length of a roller chain in pitches.",
    formula: chainFormula,
    source: chainSource,
    meaning: "The exact figure; the note names the even number of links to use.",
    limits: "Two sprockets, no tensioner; for centres wide enough that the sprockets clear.",
    compute: ({ pitch, teeth, other_teeth, centres }) => {
      const least = (pitch * (teeth + other_teeth)) / (2 * Math.PI);
      if (centres < least) {
        return {
          fault: { kind: "out-of-range", parameter: "centres", value: centres, min: least, unit: "mm" },
        };
      }
      const value = chainLength(pitch, teeth, other_teeth, centres);
      return {
        value,
        notes: [
          `${value.toFixed(2)} pitches: use ${evenLinks(value)} links (even, so that no cranked link is needed)`,
        ],
      };
    },
  }),
  defineFunction({
    name: "chain_centres",
    group: "drive and gearing",
    parameters: [
      pitch,
      teeth,
      otherTeeth,
      { name: "links", is: "number", min: 8, max: 2000, doc: "Links of the chain, one for each pitch." },
    ],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Distance between the shafts that a chain of so many links gives.",
    formula: "C = (p/4) [ a + √(a² − 8 ((z2 − z1)/2π)²) ], a = L − (z1 + z2)/2",
    source: chainSource,
    meaning: "Taut; bring the shafts 0.2 to 0.4 % closer for sag.",
    limits: "Two sprockets, no tensioner.",
    compute: ({ pitch, teeth, other_teeth, links }) => {
      const value = chainCentres(pitch, teeth, other_teeth, links);
      const least = (pitch * (teeth + other_teeth)) / (2 * Math.PI);
      return value === undefined || value < least ? tooFewLinks(links, pitch, teeth, other_teeth) : { value };
    },
  }),
  defineFunction({
    name: "sprocket_diameter",
    group: "drive and gearing",
    parameters: [pitch, teeth],
    returns: { is: "quantity", dimension: "length", unit: "mm" },
    summary: "Pitch diameter of a sprocket: of the circle on which the pins lie.",
    formula: "p / sin(180° / z)",
    source: "geometry; V. B. Bhandari, Introduction to Machine Design, ex. 14.4; ISO 606",
    meaning: "The pitch diameter; over the tips it is about 0.6 p more.",
    compute: ({ pitch, teeth }) => ({ value: pitch / Math.sin(Math.PI / teeth) }),
  }),
  defineFunction({
    name: "piston_speed",
    group: "drive and gearing",
    parameters: [
      { name: "stroke", is: "quantity", dimension: "length", min: 0.005, max: 1, unit: "mm", doc: "Stroke." },
      engineSpeed,
    ],
    returns: { is: "quantity", dimension: "speed", unit: "m/s" },
    summary: "Mean piston speed.",
    formula: "v = 2 × stroke × n",
    source: "definition",
    meaning: "The mean; the piston is about 1.6 times as fast at its fastest.",
    compute: ({ stroke, engine_speed }) => ({ value: 2 * stroke * engine_speed }),
  }),
];

export function driveFunctions(): readonly TradeFunction[] {
  return functions;
}
