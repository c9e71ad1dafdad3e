/** Every standard part as a candidate: nominal dimensions of the tables, with their tolerances and allowances for wear. */

import type { KnownPart, PartFamily } from "../known-parts.ts";
import { knownParts } from "../known-parts.ts";
import {
  circlipFreeWithin,
  circlipGrooveWithin,
  circlipThicknessWithin,
  lengthOf,
  madeWithin,
  oRingInsideWithin,
  singleORingSectionWithin,
  stepFor,
  wornAllowances,
} from "../tables/identification-figures.ts";
import { oRingSeries } from "../tables/o-rings.ts";
import type { Thread } from "../thread.ts";
import { readThread, threadsOfSeries } from "../thread.ts";
import type { Expected, StandardCandidate } from "./candidate.ts";
import type { FamilyName } from "./family.ts";
import { familyNamed } from "./family.ts";
import { externalLimits, internalLimits } from "./thread-limits.ts";

const MILLIMETRE = 0.001;
const INCH = 0.0254;

/** A dimension before wear is allowed for. */
interface Made {
  readonly nominal: number;
  readonly lower: number;
  readonly upper: number;
}

let remembered: readonly StandardCandidate[] | undefined;

/** Every candidate of the standard tables, the usual series first: equal fits are listed in this order. */
export function standardCandidates(): readonly StandardCandidate[] {
  remembered ??= [...threadCandidates(), ...knownParts().flatMap((part) => candidateOf(part) ?? [])];
  return remembered;
}

const SERIES = ["M", "UNC", "UNF", "UNEF", "BSW", "BSF", "BA", "BSC", "BSP"] as const;

function threadCandidates(): StandardCandidate[] {
  const threads = SERIES.flatMap(threadsOfSeries);
  return [...threads.map(externalThread), ...threads.map(internalThread)];
}

/** A bolt or stud with this thread. */
export function externalThread(thread: Thread): StandardCandidate {
  const { major, effective, root } = externalLimits(thread);
  return candidate("external thread", thread.designation, thread.standard ?? "ISO 965-1", {
    major: { nominal: thread.majorDiameter, ...major },
    pitch: exactly(thread.pitch),
    effective: { nominal: effective.upper, ...effective },
    root: { nominal: root.upper, ...root },
    angle: exactly(thread.flankAngle),
  });
}

/** A nut or tapped hole with this thread. */
export function internalThread(thread: Thread): StandardCandidate {
  const minor = internalLimits(thread);
  return candidate("internal thread", thread.designation, thread.standard ?? "ISO 965-1", {
    minor: { nominal: minor.lower, ...minor },
    pitch: exactly(thread.pitch),
    angle: exactly(thread.flankAngle),
  });
}

/** A part of the tables; undefined of a thread, which has two candidates of its own: its bolt and its nut. */
export function candidateOf(part: KnownPart): StandardCandidate | undefined {
  const make = makers[part.family];
  if (make === undefined) return undefined;
  const { family, dimensions } = make(part);
  // The warning about its reach stands once under the whole.
  const remark = part.family === "spark plug" ? undefined : part.remark;
  return candidate(family, part.name, part.standard, dimensions, remark);
}

type Maker = (part: KnownPart) => {
  readonly family: FamilyName;
  readonly dimensions: Readonly<Record<string, Made>>;
};

const makers: Readonly<Partial<Record<PartFamily, Maker>>> = {
  "rolling bearing": (part) => ({
    family: "rolling bearing",
    // The width of both rings of a tapered bearing is set when it is made, and lies either way.
    dimensions: part.remark?.includes("tapered")
      ? { ...byTable("rolling bearing", part), width: about(part.dimensions.width ?? 0, 0.2 * MILLIMETRE) }
      : byTable("rolling bearing", part),
  }),
  "O-ring": ({ dimensions: { inside = 0, section = 0 } }) => {
    const ofInside = oRingInsideWithin(inside);
    const ofSection = sectionWithin(section);
    return {
      family: "O-ring",
      dimensions: {
        inside: about(inside, ofInside),
        section: about(section, ofSection),
        outside: about(inside + 2 * section, ofInside + 2 * ofSection),
      },
    };
  },
  circlip,
  "roller chain": (part) => ({ family: "roller chain", dimensions: byTable("roller chain", part) }),
  key: (part) => ({ family: "key", dimensions: byTable("key", part) }),
  wire: (part) => ({
    family: "wire",
    // Of a nominal area the diameter is only nearly known.
    dimensions: part.name.startsWith("AWG")
      ? byTable("wire", part)
      : {
          ...byTable("wire", part),
          diameter: about(part.dimensions.diameter ?? 0, 0.03 * (part.dimensions.diameter ?? 0)),
        },
  }),
  "spark plug": (part) => {
    const thread = readThread(part.name.split(",")[0] ?? "");
    const ofThread = "fault" in thread ? undefined : externalLimits(thread).major;
    const { major = 0, pitch = 0 } = part.dimensions;
    return {
      family: "spark plug",
      dimensions: {
        ...byTable("spark plug", part),
        ...(ofThread === undefined ? {} : { major: { nominal: major, ...ofThread } }),
        pitch: exactly(pitch),
      },
    };
  },
  tyre: (part) => ({ family: "tyre", dimensions: byTable("tyre", part) }),
};

function circlip({ dimensions }: KnownPart): ReturnType<Maker> {
  const { shaft, bore, free = 0, thickness = 0, groove = 0 } = dimensions;
  const size = shaft ?? bore ?? 0;
  const [, tighter, looser] = stepFor(circlipFreeWithin, free / MILLIMETRE);
  const [, thinner] = stepFor(circlipThicknessWithin, thickness / MILLIMETRE);
  const [, deeper] = stepFor(circlipGrooveWithin, size / MILLIMETRE);
  const ring = { thickness: between(thickness, thinner * MILLIMETRE, 0) };
  return shaft === undefined
    ? {
        family: "bore circlip",
        dimensions: {
          ...ring,
          outside: between(free, looser * MILLIMETRE, tighter * MILLIMETRE),
          bore: exactly(size),
          groove: between(groove, 0, deeper * MILLIMETRE),
        },
      }
    : {
        family: "shaft circlip",
        dimensions: {
          ...ring,
          inside: between(free, tighter * MILLIMETRE, looser * MILLIMETRE),
          shaft: exactly(size),
          groove: between(groove, deeper * MILLIMETRE, 0),
        },
      };
}

/** ± tolerance of a cross section: that of its series. */
function sectionWithin(section: number): number {
  const series = oRingSeries.find(({ crossSection }) => Math.abs(crossSection * INCH - section) < 1e-6);
  return series === undefined ? singleORingSectionWithin : series.tolerance * INCH;
}

/** The dimensions of a part with the tolerances that the table of figures has for them; none where it has none. */
function byTable(family: FamilyName, { dimensions }: KnownPart): Record<string, Made> {
  return Object.fromEntries(
    Object.entries(dimensions).map(([name, nominal]) => {
      const row = madeWithin.find((each) => each.family === family && each.dimension === name);
      const [below, above] =
        row === undefined ? [0, 0] : [row.below, row.above].map((each) => lengthOf(each, nominal));
      return [name, between(nominal, below ?? 0, above ?? 0)];
    }),
  );
}

function between(nominal: number, below: number, above: number): Made {
  return { nominal, lower: nominal - below, upper: nominal + above };
}

function about(nominal: number, within: number): Made {
  return between(nominal, within, within);
}

function exactly(nominal: number): Made {
  return between(nominal, 0, 0);
}

function candidate(
  family: FamilyName,
  name: string,
  source: string,
  dimensions: Readonly<Record<string, Made>>,
  remark?: string,
): StandardCandidate {
  const found = familyNamed.get(family);
  if (found === undefined) throw new Error(`no such family: ${family}`);
  const pitch = dimensions.pitch?.nominal;
  return {
    is: "standard",
    family: found,
    name,
    source,
    ...(remark === undefined ? {} : { remark }),
    dimensions: new Map(
      Object.entries(dimensions).map(([dimension, made]) => [
        dimension,
        withWear(family, dimension, made, pitch),
      ]),
    ),
  };
}

function withWear(family: FamilyName, dimension: string, made: Made, pitch: number | undefined): Expected {
  const row = wornAllowances.find((each) => each.family === family && each.dimension === dimension);
  if (row === undefined) return made;
  return { ...made, worn: { side: row.side, by: lengthOf(row.by, made.nominal, pitch) } };
}
