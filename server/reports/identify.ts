/** What an unknown part can be: candidates, how far off each of its dimensions is, and what would tell them apart. */
import type { KnownDimension } from "../build/identification.ts";
import { identifiedFact } from "../build/identification.ts";
import { lineOf } from "../build/source.ts";
import type { TreeNode } from "../build/tree/node.ts";
import { describeNode } from "../build/tree/node.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import { list } from "../rules/words.ts";
import type { Family } from "../trade/identification/family.ts";
import { families } from "../trade/identification/family.ts";
import type { ComparedDimension, Match } from "../trade/identification/match.ts";
import type { FitState } from "../trade/identification/misfit.ts";
import type { Difference } from "../trade/identification/tell-apart.ts";
import { asWritten, offBy, uncertaintyAsWritten } from "../trade/identification/written.ts";
import type { Identification } from "../trade/identification.ts";
import { kindOf, sayCompared, sayDifference } from "./identify-words.ts";
import type { JsonQuantity } from "./json-values.ts";
import { jsonQuantity } from "./json-values.ts";
import type { Cell, Table, TableRow, TableSection } from "./table.ts";
import { column } from "./table.ts";

/** What was asked, and what came of it. */
export interface Identified {
  /** The part that was asked about, if it was one of the build. */
  readonly node: TreeNode | undefined;
  readonly dimensions: readonly KnownDimension[];
  readonly identification: Identification;
}

export interface IdentifyReport {
  readonly schema: "cotter/identify/1";
  readonly query: {
    readonly ref: string | null;
    readonly dimensions: readonly {
      readonly name: string;
      readonly value: JsonQuantity | null;
      readonly uncertainty: JsonQuantity | null;
      readonly from: KnownDimension["from"];
      readonly file: string | null;
      readonly line: number | null;
    }[];
  };
  /** Dimensions that nothing known has. */
  readonly unused: readonly string[];
  readonly candidates: readonly CandidateReport[];
  readonly tellApart: readonly {
    /** The best first. */
    readonly between: readonly string[];
    /** What to measure or look at; null where no dimension differs. */
    readonly measure: string | null;
    readonly nearMiss: boolean;
    readonly text: string;
  }[];
  readonly nearest: readonly CandidateReport[];
  readonly caution: string;
}

interface CandidateReport {
  readonly name: string;
  readonly family: string;
  /** The block of a donor. */
  readonly donor: string | null;
  readonly score: number;
  readonly source: string;
  readonly remark: string | null;
  readonly dimensions: readonly {
    readonly name: string;
    readonly measured: JsonQuantity | null;
    readonly expected: JsonQuantity | null;
    /** What a new one may measure. */
    readonly lower: JsonQuantity | null;
    readonly upper: JsonQuantity | null;
    readonly off: JsonQuantity | null;
    readonly uncertainty: JsonQuantity | null;
    readonly state: FitState | "not stated";
    /** Null where the candidate does not state it. */
    readonly within: boolean | null;
  }[];
  /** The line of a day that would say so; null where no part was named. */
  readonly fact: string | null;
}

const CAUTION =
  "Dimensions do not prove material, strength or condition: markings and the maker's manual come first, above all on brakes, steering, wheels and lifting gear.";
const REACH_CAUTION =
  "A spark plug with too long a reach can meet the piston or valves: check before turning the engine.";

export function identifyReport(identified: Identified): IdentifyReport {
  const { node, dimensions, identification } = identified;
  return {
    schema: "cotter/identify/1",
    query: {
      ref: node?.path ?? null,
      dimensions: dimensions.map(({ given, quantity, uncertainty, from, place }) => ({
        name: given.name,
        value: jsonQuantity(quantity),
        uncertainty: jsonQuantity(uncertainty),
        from,
        file: place?.site.file.path ?? null,
        line: place === undefined ? null : lineOf(place),
      })),
    },
    unused: identification.unknown.map(({ name }) => name),
    candidates: identification.candidates.map((match) => candidateReport(identified, match)),
    tellApart: identification.tellApart.map((difference) => differenceReport(difference, dimensions)),
    nearest: identification.nearest.map((match) => candidateReport(identified, match)),
    caution: cautionsOf(identification).join(" "),
  };
}

function candidateReport({ node, dimensions }: Identified, match: Match): CandidateReport {
  const { candidate, score } = match;
  return {
    name: candidate.name,
    family: kindOf(candidate),
    donor: candidate.is === "donor" ? candidate.donor : null,
    score: Number(score.toFixed(4)),
    source: candidate.source,
    remark: candidate.remark ?? null,
    dimensions: pairs(dimensions, match).map(([known, compared]) => dimensionReport(known, compared)),
    fact: node === undefined ? null : identifiedFact(node.path, candidate),
  };
}

function dimensionReport(
  known: KnownDimension,
  compared: ComparedDimension,
): CandidateReport["dimensions"][number] {
  const measured = jsonQuantity(known.quantity);
  const { name } = known.given;
  if (compared.is === "not stated")
    return {
      name,
      measured,
      expected: null,
      lower: null,
      upper: null,
      off: null,
      uncertainty: null,
      state: "not stated",
      within: null,
    };
  const { expected, uncertainty, state } = compared;
  const bounds = [asWritten(known, expected.lower), asWritten(known, expected.upper)] as const;
  // Of a count of threads the larger pitch is the smaller figure.
  const [lower, upper] = bounds[0].value.greaterThan(bounds[1].value) ? [bounds[1], bounds[0]] : bounds;
  return {
    name,
    measured,
    expected: jsonQuantity(asWritten(known, expected.nominal)),
    lower: jsonQuantity(lower),
    upper: jsonQuantity(upper),
    off: jsonQuantity(offBy(known, expected.nominal)),
    uncertainty: jsonQuantity(uncertaintyAsWritten(known, uncertainty)),
    state,
    within: state !== "outside",
  };
}

function differenceReport(
  difference: Difference,
  dimensions: readonly KnownDimension[],
): IdentifyReport["tellApart"][number] {
  return {
    between: difference.between.map(({ name }) => name),
    measure: difference.by?.measuring.how ?? null,
    nearMiss: difference.nearMiss,
    text: sayDifference(difference, dimensions),
  };
}

/** Each known dimension with what a match says to it. */
function pairs(
  dimensions: readonly KnownDimension[],
  match: Match,
): readonly (readonly [KnownDimension, ComparedDimension])[] {
  return dimensions.flatMap((known) => {
    const compared = match.dimensions.find(({ given }) => given === known.given);
    return compared === undefined ? [] : [[known, compared] as const];
  });
}

const NOTHING_FITS = "Nothing in the tables or among the donors fits all of this.";
const NOTHING_KNOWN = "No table and no donor states any of these dimensions.";

/** Rows shown of what fits; the JSON has them all. */
const MOST_ROWS = 10;

export function identifyTable(identified: Identified): Table {
  const { node, dimensions, identification } = identified;
  const { candidates, nearest, unknown } = identification;
  const used = dimensions.filter(({ given }) => !unknown.includes(given));
  return {
    title: `What ${node === undefined ? "this" : describeNode(node)} can be`,
    columns: [
      column("name", "Candidate"),
      column("kind", "Kind"),
      column("score", "Score", "right"),
      ...used.map(({ given, quantity }, place) =>
        column(`dimension${place}`, `${plain(given.name)} ${formatQuantity(quantity)}`.trim()),
      ),
      column("source", "Source"),
    ],
    sections: [
      fittingSection(identified, used),
      ...(nearest.length === 0
        ? []
        : [
            {
              heading: candidates.length === 0 ? "Nearest" : "Near, but does not fit",
              rows: nearest.map((match) => row(match, used)),
            },
          ]),
    ],
    notes: [
      ...identification.tellApart.map((difference) => `${capital(sayDifference(difference, dimensions))}.`),
      ...beforeNote(identified),
      ...unusedNote(identified),
      ...assumedNote(identified),
      ...factNote(identified),
      "Score: 1 as of a new part, 0.5 at the end of tolerance, uncertainty and wear.",
      ...limitsNotes([...candidates.slice(0, 1), ...(candidates.length === 0 ? nearest : [])]),
    ],
    cautions: cautionsOf(identification),
  };
}

function fittingSection(
  { identification: { candidates } }: Identified,
  used: readonly KnownDimension[],
): TableSection {
  const more = candidates.length - MOST_ROWS;
  return {
    heading: candidates.length === 0 ? "" : "Fits",
    rows: candidates.slice(0, MOST_ROWS).map((match) => row(match, used)),
    foot: [
      ...(candidates.length === 0 ? [used.length === 0 ? NOTHING_KNOWN : NOTHING_FITS] : []),
      ...(more > 0 ? [`and ${more} more: another dimension would rule most of them out`] : []),
    ],
  };
}

function row(match: Match, used: readonly KnownDimension[]): TableRow {
  const { candidate, score, fits } = match;
  const cells = pairs(used, match).map(([known, compared], place): [string, Cell] => [
    `dimension${place}`,
    dimensionCell(known, compared),
  ]);
  return {
    cells: {
      name: candidate.name,
      kind: kindOf(candidate),
      score: { text: score.toFixed(2), tone: fits ? "good" : "bad" },
      ...Object.fromEntries(cells),
      source: candidate.source,
    },
    remarks: candidate.remark === undefined ? [] : [`${candidate.name}: ${candidate.remark}`],
  };
}

function dimensionCell(known: KnownDimension, compared: ComparedDimension): Cell {
  if (compared.is === "not stated") return { text: "not stated", tone: "faint" };
  const text = sayCompared(known, compared);
  if (compared.state === "as made") return text;
  return { text, tone: compared.state === "outside" ? "bad" : "open" };
}

function beforeNote({ dimensions }: Identified): readonly string[] {
  return dimensions.some(({ from }) => from === "measured before")
    ? ["Measured on the one that was there before: the one that is there now has not been measured."]
    : [];
}

function unusedNote({ identification: { unknown } }: Identified): readonly string[] {
  if (unknown.length === 0) return [];
  return [`Not used, since no table and no donor has it: ${list(unknown.map(({ name }) => plain(name)))}.`];
}

/** Where nobody stated an uncertainty, the one that was taken for the first candidate. */
function assumedNote({ dimensions, identification: { candidates, nearest } }: Identified): readonly string[] {
  const [first] = [...candidates, ...nearest];
  if (first === undefined) return [];
  const byText = new Map<string, string[]>();
  for (const [known, compared] of pairs(dimensions, first)) {
    if (compared.is === "not stated" || known.given.uncertainty !== undefined) continue;
    const text = formatQuantity(uncertaintyAsWritten(known, compared.uncertainty));
    byText.set(text, [...(byText.get(text) ?? []), plain(known.given.name)]);
  }
  if (byText.size === 0) return [];
  const assumed = [...byText].map(([text, names]) => `± ${text} for ${list(names)}`);
  return [`No uncertainty was stated: taken as ${list(assumed)} (common practice).`];
}

function factNote({ node, identification: { candidates } }: Identified): readonly string[] {
  const [best] = candidates;
  if (node === undefined || best === undefined) return [];
  return [`To write down that it is the first: ${identifiedFact(node.path, best.candidate)}`];
}

function limitsNotes(matches: readonly Match[]): readonly string[] {
  const shown = matches.flatMap(({ candidate }) => (candidate.is === "standard" ? [candidate.family] : []));
  return [...new Set(shown)].map(sayLimits);
}

function sayLimits({ name, limits }: Family): string {
  return `What the table of this kind (${name}) holds: ${limits}.`;
}

export function cautionsOf({ candidates, nearest }: Identification): readonly string[] {
  return [CAUTION, ...([...candidates, ...nearest].some(isSparkPlug) ? [REACH_CAUTION] : [])];
}

function isSparkPlug({ candidate }: Match): boolean {
  return candidate.is === "standard" && candidate.family.name === "spark plug";
}

/** The dimensions that each kind of part is known by: how to name them, and how to take them. */
export function dimensionsTable(): Table {
  return {
    title: "Dimensions that an unknown part can be told by",
    columns: [
      column("name", "Name"),
      column("synonyms", "Also"),
      column("what", "What it is"),
      column("how", "How to take it"),
    ],
    sections: families.map((family) => ({
      heading: capital(family.name),
      rows: family.dimensions.map(({ name, synonyms, perInch = [], help, measuring }) => ({
        cells: {
          name,
          synonyms: [...perInch, ...synonyms].join(" "),
          what: help,
          how: measuring.how,
        },
      })),
      foot: [`${family.standards}. ${capital(family.limits)}.`],
    })),
    notes: ["A donor of the build is known by the names of its own size: records."],
    cautions: [],
  };
}

/** The same for machines. */
export function dimensionsReport(): unknown {
  return {
    schema: "cotter/identify-dimensions/1",
    families: families.map(({ name, standards, limits, dimensions }) => ({
      name,
      standards,
      limits,
      dimensions: dimensions.map(({ name: own, synonyms, perInch = [], is, help, measuring }) => ({
        name: own,
        synonyms: [...perInch, ...synonyms],
        is,
        help,
        measure: measuring.how,
      })),
    })),
  };
}

function plain(name: string): string {
  return name.replaceAll("_", " ");
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
