/** The kinds of part that can be told by measuring, and the dimensions that each is known by: names, help, how to measure. */

export type FamilyName =
  | "external thread"
  | "internal thread"
  | "rolling bearing"
  | "O-ring"
  | "shaft circlip"
  | "bore circlip"
  | "roller chain"
  | "key"
  | "wire"
  | "spark plug"
  | "tyre";

/** How a dimension is best taken, and how well: the uncertainty (k = 2) is common practice, no source. */
export interface Measuring {
  /** What to ask for first: 1 what wear leaves alone and every workshop can take, 2 the rest, 3 what needs more tools. */
  readonly turn: 1 | 2 | 3;
  /** As an instruction: `measure the pitch over ten threads`; a found part allows no better. */
  readonly how: string;
  /** Of how many at once; the reading is that many times the dimension. */
  readonly times?: number;
  /** SI units, of one. */
  readonly uncertainty: number;
}

export interface FamilyDimension {
  readonly name: string;
  readonly synonyms: readonly string[];
  /** Names under which its reciprocal is given: threads per inch. */
  readonly perInch?: readonly string[];
  readonly is: "length" | "angle" | "area";
  readonly help: string;
  /** Expanded uncertainty (k = 2) where the author states none, SI units; common practice, no source. */
  readonly assumed: number;
  readonly measuring: Measuring;
}

export interface Family {
  readonly name: FamilyName;
  /** Words of a description by which it can be told: `bearing`, `roller`. */
  readonly words: readonly string[];
  readonly dimensions: readonly FamilyDimension[];
  readonly standards: string;
  /** What its table does not hold. */
  readonly limits: string;
}

const MILLIMETRE = 0.001;
const DEGREE = Math.PI / 180;
/** A vernier caliper as it is read in the workshop; common practice, no source. */
const CALIPER = 0.05 * MILLIMETRE;
/** A caliper read with care, or a micrometer on a part that is not clean. */
const CAREFUL = 0.02 * MILLIMETRE;
/** Rubber, and what else gives under the jaws. */
const SOFT = 0.1 * MILLIMETRE;

const insideNames = ["inside_diameter", "inner", "inner_diameter", "id"];
const outsideNames = ["outside_diameter", "outer", "outer_diameter", "od"];

const threadPitch: FamilyDimension = {
  name: "pitch",
  synonyms: ["thread_pitch"],
  perInch: ["tpi", "threads_per_inch"],
  is: "length",
  help: "from one thread to the next; tpi gives it as threads per inch",
  assumed: 0.02 * MILLIMETRE,
  measuring: {
    turn: 1,
    how: "measure the pitch over ten threads",
    times: 10,
    uncertainty: 0.005 * MILLIMETRE,
  },
};

const flankAngle: FamilyDimension = {
  name: "angle",
  synonyms: ["flank_angle", "thread_angle"],
  is: "angle",
  help: "between the flanks: 60 deg metric, unified and cycle, 55 deg Whitworth, 47.5 deg BA",
  assumed: 2 * DEGREE,
  measuring: { turn: 2, how: "lay thread gauges of both angles on the flanks", uncertainty: 1.5 * DEGREE },
};

const majorDiameter: FamilyDimension = {
  name: "major",
  synonyms: ["major_diameter", "crest", "diameter", ...outsideNames, "outside"],
  is: "length",
  help: "over the crests, where the thread is least worn",
  assumed: CALIPER,
  measuring: {
    turn: 2,
    how: "measure the diameter over the crests where they are least worn",
    uncertainty: CAREFUL,
  },
};

const THREAD_STANDARDS =
  "ISO 261, ASME B1.1 (UNC, UNF, UNEF), BS 84 (BSW, BSF), BS 93 (BA), BS 811 (BSC), ISO 228-1 (BSP)";
const THREAD_LIMITS =
  "metric 1 to 100 mm, inch up to 2 in; tolerances of grade 6 (ISO 965-1) are used for every series; no taper threads";

export const families: readonly Family[] = [
  {
    name: "external thread",
    words: ["thread", "bolt", "stud", "screw"],
    dimensions: [
      majorDiameter,
      threadPitch,
      {
        name: "effective",
        synonyms: ["effective_diameter", "pitch_diameter"],
        is: "length",
        help: "pitch diameter, over wires or with a thread micrometer",
        assumed: CALIPER,
        measuring: { turn: 3, how: "measure the effective diameter over three wires", uncertainty: CAREFUL },
      },
      {
        name: "root",
        synonyms: ["root_diameter", "core", "minor", "minor_diameter"],
        is: "length",
        help: "at the bottom of the thread",
        assumed: SOFT,
        measuring: { turn: 3, how: "measure the root with pointed anvils", uncertainty: CALIPER },
      },
      flankAngle,
    ],
    standards: THREAD_STANDARDS,
    limits: THREAD_LIMITS,
  },
  {
    name: "internal thread",
    words: ["thread", "nut", "tapped"],
    dimensions: [
      {
        name: "minor",
        synonyms: ["minor_diameter", "hole", "bore", "inside", ...insideNames],
        is: "length",
        help: "the hole inside the crests",
        assumed: CALIPER,
        measuring: { turn: 2, how: "measure the hole inside the crests", uncertainty: CALIPER },
      },
      threadPitch,
      flankAngle,
    ],
    standards: "as for external threads",
    limits:
      "as for external threads; the minor diameter is given one tolerance, whatever the class of the nut",
  },
  {
    name: "rolling bearing",
    words: ["bearing", "bearings", "ball", "roller", "taper"],
    dimensions: [
      length("bore", ["inside", ...insideNames, "shaft"], "of the inner ring", "measure the bore"),
      length("outside", [...outsideNames, "housing"], "of the outer ring", "measure the outside diameter"),
      length(
        "width",
        ["breadth", "thickness", "height"],
        "of one ring; of a tapered bearing, of both rings together",
        "measure the width",
      ),
    ],
    standards: "ISO 15 (ball and roller), ISO 355 (tapered roller), BS 292 (inch LS and MS)",
    limits:
      "bores up to 100 mm of the common series; one set of dimensions is shared by several kinds, so look at what is inside; no needle or thrust bearings",
  },
  {
    name: "O-ring",
    words: ["o-ring", "o-rings", "oring", "o", "ring", "seal"],
    dimensions: [
      {
        ...length("inside", insideNames, "lying free", "measure the inside lying free"),
        assumed: 2 * SOFT,
        measuring: { turn: 2, how: "measure the inside over a tapered plug, lying free", uncertainty: SOFT },
      },
      {
        ...length("section", ["cross_section", "cs", "cord", "thickness", "width"], "of the cord", ""),
        assumed: SOFT,
        measuring: {
          turn: 2,
          how: "measure the section in several places without squeezing it, and the groove",
          uncertainty: CALIPER,
        },
      },
      {
        ...length("outside", outsideNames, "lying free: the inside and two sections", ""),
        assumed: 2 * SOFT,
        measuring: { turn: 2, how: "measure the outside lying free", uncertainty: SOFT },
      },
    ],
    standards: "AS568, ISO 3601-1",
    limits: "AS568 sizes up to about 6 in inside; metric sizes of other makers are not here",
  },
  {
    name: "shaft circlip",
    words: ["circlip", "circlips", "retaining", "snap"],
    dimensions: [
      length("inside", [...insideNames, "free"], "of the ring, lying free", "measure the inside lying free"),
      length("thickness", [], "of the ring", "measure the thickness of the ring"),
      length("shaft", ["shaft_diameter"], "that it sits on", "measure the shaft that it sits on"),
      length("groove", ["groove_diameter"], "at the bottom of its groove", "measure the groove"),
    ],
    standards: "DIN 471",
    limits: "normal type, shafts of 3 to 100 mm",
  },
  {
    name: "bore circlip",
    words: ["circlip", "circlips", "retaining", "snap"],
    dimensions: [
      length(
        "outside",
        [...outsideNames, "free"],
        "of the ring, lying free",
        "measure the outside lying free",
      ),
      length("thickness", [], "of the ring", "measure the thickness of the ring"),
      length("bore", ["bore_diameter", "housing"], "that it sits in", "measure the bore that it sits in"),
      length("groove", ["groove_diameter"], "at the bottom of its groove", "measure the groove"),
    ],
    standards: "DIN 472",
    limits: "normal type, bores of 8 to 100 mm",
  },
  {
    name: "roller chain",
    words: ["chain", "chains"],
    dimensions: [
      {
        ...length("pitch", ["chain_pitch"], "from pin to pin", ""),
        measuring: {
          turn: 1,
          how: "measure the pitch over ten links, pulled straight",
          times: 10,
          uncertainty: 0.00001,
        },
      },
      length("roller", ["roller_diameter"], "diameter of a roller", "measure the diameter of a roller"),
      length(
        "width",
        ["inner_width", "inside_width", "inner", "inside"],
        "between the inner plates",
        "measure the width between the inner plates",
      ),
    ],
    standards: "ISO 606, motorcycle sizes",
    limits: "simplex chains of 6 to 38 mm pitch",
  },
  {
    name: "key",
    words: ["key", "woodruff"],
    dimensions: [
      length("width", ["breadth"], "across the flanks", "measure the width across the flanks"),
      length("height", ["thickness", "depth"], "of the key", "measure the height"),
      length("diameter", ["disc"], "of the round of a Woodruff key", "measure the diameter of the round"),
    ],
    standards: "DIN 6885-1, ISO 3912, ASME B17.1 and B17.2",
    limits:
      "parallel keys for shafts of 6 to 110 mm, Woodruff keys of the common sizes; no taper or gib keys",
  },
  {
    name: "wire",
    words: ["wire", "cable", "core", "conductor"],
    dimensions: [
      {
        ...length("diameter", ["wire", "conductor"], "of the bare conductor", ""),
        assumed: CAREFUL,
        measuring: {
          turn: 2,
          how: "measure the bare conductor with a micrometer; of a stranded one count the strands and add up their areas",
          uncertainty: 0.01 * MILLIMETRE,
        },
      },
      {
        name: "area",
        synonyms: ["section", "cross_section"],
        is: "area",
        help: "of the copper",
        assumed: 0.02 * MILLIMETRE ** 2,
        measuring: { turn: 3, how: "add up the areas of the strands", uncertainty: 0.02 * MILLIMETRE ** 2 },
      },
    ],
    standards: "ASTM B258 (AWG), IEC 60228 and vehicle cable (mm2)",
    limits:
      "AWG 4/0 to 40 and 0.35 to 50 mm2; the diameter is that of a solid conductor: a stranded one of that area is thicker",
  },
  {
    name: "spark plug",
    words: ["plug", "plugs"],
    dimensions: [
      majorDiameter,
      threadPitch,
      length("reach", ["thread_length"], "of the thread, from the seat", "measure the reach from the seat"),
      length(
        "hexagon",
        ["hex", "across_flats", "flats", "spanner"],
        "across the flats",
        "measure the hexagon across its flats",
      ),
    ],
    standards: "ISO 28741 and trade sizes",
    limits: "10, 12, 14 and 18 mm threads; heat range, gap and terminal do not show",
  },
  {
    name: "tyre",
    words: ["tyre", "tyres", "tire", "tires"],
    dimensions: [
      tape("width", ["section_width", "section"], "of the section, inflated", "measure the section width"),
      tape("outside", [...outsideNames, "overall", "diameter"], "of the tyre", "measure it over the tread"),
      tape("rim", ["rim_diameter", "wheel"], "where the bead sits", "read or measure the rim"),
    ],
    standards: "ISO 4000-1, by the rule of the designation",
    limits:
      "metric sizes of 125 to 295 mm on rims of 10 to 20 in, ratios 30 to 80 and none; not every one of them is made; no cross-ply names in inches",
  },
];

/** The families by name. */
export const familyNamed: ReadonlyMap<FamilyName, Family> = new Map(
  families.map((family) => [family.name, family]),
);

/** The dimension of a family that a name means. */
export function dimensionOfFamily(family: Family, name: string): FamilyDimension | undefined {
  return meanings.get(family)?.get(plainName(name));
}

/** By every name; a canonical one wins over another dimension's synonym. */
const meanings: ReadonlyMap<Family, ReadonlyMap<string, FamilyDimension>> = new Map(
  families.map((family) => [
    family,
    new Map([
      ...family.dimensions.flatMap((dimension) =>
        [...dimension.synonyms, ...(dimension.perInch ?? [])].map((name) => [name, dimension] as const),
      ),
      ...family.dimensions.map((dimension) => [dimension.name, dimension] as const),
    ]),
  ]),
);

/** Whether a name says that the reciprocal is given: threads per inch. */
export function isPerInch(name: string): boolean {
  return threadPitch.perInch?.includes(plainName(name)) ?? false;
}

/** Every name that a dimension can be given under, the canonical ones first. */
export function dimensionNames(): readonly string[] {
  const all = families.flatMap(({ dimensions }) => dimensions);
  return [
    ...new Set([
      ...all.map(({ name }) => name),
      ...all.flatMap(({ synonyms, perInch = [] }) => [...perInch, ...synonyms]),
    ]),
  ];
}

/** A name as the tables have it: small letters, joined by underscores. */
export function plainName(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, "_");
}

function length(name: string, synonyms: readonly string[], help: string, how: string): FamilyDimension {
  return {
    name,
    synonyms,
    is: "length",
    help,
    assumed: CALIPER,
    measuring: { turn: 2, how, uncertainty: CAREFUL },
  };
}

/** Of what is too large for a caliper. */
function tape(name: string, synonyms: readonly string[], help: string, how: string): FamilyDimension {
  return {
    ...length(name, synonyms, help, how),
    assumed: 0.003,
    measuring: { turn: 2, how, uncertainty: 0.002 },
  };
}
