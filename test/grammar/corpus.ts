/** Logs that the properties are tried on: the samples, and lines of every kind to make others of. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { vocabulary } from "../../grammar/vocabulary/vocabulary.ts";

const root = path.join(import.meta.dirname, "../..");

/** The build that holds every example of the reference. */
export const exampleBuild = readFileSync(path.join(root, "docs/notation/example.cotter"), "utf8");

/** The sample logs and the example build. */
export const sampleLogs: readonly string[] = [
  ...readdirSync(path.join(root, "samples"), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".cotter"))
    .sort()
    .map((name) => readFileSync(path.join(root, "samples", name), "utf8")),
  exampleBuild,
];

/** The same logs in pieces of a few blocks each, quick to read. */
export const samplePieces: readonly string[] = sampleLogs.flatMap((text) => {
  const blocks = text.split(/^(?=[a-z])/m);
  return Array.from({ length: Math.ceil(blocks.length / 4) }, (_, index) =>
    blocks.slice(index * 4, index * 4 + 5).join(""),
  );
});

const LINES: readonly string[] = [
  ...vocabulary.blocks.flatMap(({ example, bad }) => [example, bad.text]),
  ...vocabulary.records.flatMap(({ example, bad }) => [`  ${example}`, `  ${bad.text}`]),
  "",
  "   ",
  "# a comment",
  "  # a comment",
  "  Prose about the day, with a comma,",
  "  | prose by its bar",
  "  #2 cylinder",
  "column 0",
  "He said “no” 🛠",
  "  removed: front.left.hub,",
  "    front.left.disc,",
  "  removed: front.{disc,  # open",
  "    hub}",
  '  tagged: hub "unclosed',
  '  tagged: hub "a \\" b"  # waived not-seen: later',
  '  measured: hub bore 3/8"',
  "  bolt: 4 x M8 x 1.25 x 30 mm LH class A2-70",
  "  calc: x = ((1 + 2) * 3/8 in - max(9,12)) in mm",
  "\tset:\tfront\ttoe\t1 mm each",
  "  measured: a b 1\u00a0deg 30\u2009arcmin",
  "day 2026-5-2 2 h",
  "day 2026-05-02\u00a05.5 h  # waived future-day: no",
  "dya 2026-05-03",
];

const BREAKS = ["\n", "\r\n", "\r"];

/** A log made of lines of every kind, with line ends of every kind. */
export const anyLog: fc.Arbitrary<string> = fc
  .array(fc.tuple(fc.constantFrom(...LINES), fc.constantFrom("\n", "\n", "\n", ...BREAKS)), { maxLength: 24 })
  .map((lines) => lines.map(([line, end]) => line + end).join(""));

const PIECES: readonly string[] = [
  ..." \t\n\r\"'#,.:;{}*|()[]\\/^+-=%°±×·0123456789xXM",
  "\r\n",
  "..",
  "\u00a0",
  "\u2009",
  "\u2028",
  "\u0085",
  "\ufeff",
  "\u2212",
  "\0",
  "🛠",
  "𝛑",
  "\ud83d",
  "\udee0",
  "é",
  "day ",
  "day 2026-05-02",
  "part hub",
  "removed: ",
  "calc: a = ",
  " by ",
  " with ",
  " in ",
  " min ",
  " x ",
  "M8x1.25",
  "3/8-24 UNF",
  "1 deg 30 arcmin",
  '"note"',
  "# waived ",
];

/** Any text at all, with an inclination towards what means something here. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.array(fc.constantFrom(...PIECES), { maxLength: 60 }).map((pieces) => pieces.join("")),
  },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 80 }) },
  { weight: 2, arbitrary: anyLog },
  {
    weight: 1,
    arbitrary: fc
      .tuple(anyLog, fc.string({ unit: "binary", maxLength: 20 }), anyLog)
      .map((parts) => parts.join("")),
  },
);

/** How many cases the properties of the whole suite try in all; `COTTER_CASES` asks for more. */
const cases = Number(process.env.COTTER_CASES ?? 2000);

/** After so many milliseconds a property is taken to hang. */
export const patience = Math.max(60_000, cases * 30);

/** Settings for a property that takes this share of the cases; a failure prints its seed. */
export function runs(share: number): fc.Parameters<unknown> {
  const seed = process.env.COTTER_SEED;
  return {
    numRuns: Math.max(1, Math.round(cases * share)),
    ...(seed === undefined ? {} : { seed: Number(seed) }),
  };
}
