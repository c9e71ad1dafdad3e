/** A build that goes on from the one before, edit by edit, is the build that a fresh reading of the same texts gives. */
import { deepStrictEqual } from "node:assert/strict";
import fc from "fast-check";
import { test } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { fileAfter } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { carriedOut, edit, generated, readAgain, roadster, share } from "./edits.ts";
import { shown } from "./shown-build.ts";

/** Few in the fast tests, which everyone waits for; more by `npm run test:long`. */
const RUNS = Number(process.env.COTTER_RUNS ?? 2);

function expectGoingOn(texts: readonly SourceFile[], clock: IsoDate, edits: number): void {
  const step = fc.record({ file: fc.nat(), edit });
  const steps = fc.array(step, { minLength: 1, maxLength: edits });
  fc.assert(
    fc.property(steps, (all) => {
      let files = readAgain(texts);
      let before = readBuild(files, { clock, isGoneOnFrom: all.length % 2 === 0 });
      for (const { file, edit: change } of all) {
        const changed = files[file % files.length] as SourceFile;
        const after = fileAfter(changed, carriedOut(changed.document, change));
        files = files.map((each) => (each === changed ? after : each));
        before = readBuild(files, { clock, before });
        // As in an editor: what each build has put into words is there for the next one, and lines that nobody has open are not.
        shown(before);
        for (const each of files) if (each !== after) each.document.forgetLines();
      }
      deepStrictEqual(shown(before), shown(readBuild(readAgain(files), { clock })));
    }),
    { numRuns: RUNS },
  );
}

test("of a diary of months, with its mistakes", () => {
  expectGoingOn(generated({ lines: 300, broken: 0.05 }), "2024-01-01" as IsoDate, 8);
});

test("of a build with hold points, calculations, systems and lives", () => {
  expectGoingOn(roadster(), "2026-11-25" as IsoDate, 8);
});

/**
 * What one does at the end of a diary: a fact more, one with a slip in its word, a line of prose, the last line taken back, a
 * figure of the day put right, its date too.
 */
type Writing =
  | { readonly is: "fact" | "slip"; readonly from: number }
  | { readonly is: "prose" }
  | { readonly is: "take back" }
  | { readonly is: "figure"; readonly which: number; readonly digit: number };

const writing: fc.Arbitrary<Writing> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ is: fc.constant("fact" as const), from: share }) },
  { weight: 1, arbitrary: fc.record({ is: fc.constant("slip" as const), from: share }) },
  { weight: 1, arbitrary: fc.record({ is: fc.constantFrom("take back" as const, "prose" as const) }) },
  {
    weight: 2,
    arbitrary: fc.record({
      is: fc.constant("figure" as const),
      which: share,
      digit: fc.integer({ min: 0, max: 9 }),
    }),
  },
);

function written(document: Document, step: Writing, facts: readonly string[]): Document {
  const { text, length } = document;
  const last = text.lastIndexOf("\n", length - 2) + 1;
  switch (step.is) {
    case "fact":
    case "slip": {
      const fact = facts[Math.floor(step.from * facts.length)] ?? "";
      const whole = step.is === "fact" ? fact : fact.replace(/(\w)\w:/, "$1:");
      return document.edit(length, length, whole);
    }
    case "prose":
      return document.edit(length, length, "  Tea, and a look at the drawings\n");
    case "take back":
      return document.edit(last, length, "");
    case "figure": {
      const day = document.offsets.at(-1) ?? 0;
      const figures = [...text.slice(day).matchAll(/\d/g)].map(({ index }) => day + index);
      const at = figures[Math.floor(step.which * figures.length)] ?? length;
      return document.edit(at, at + 1, String(step.digit));
    }
  }
}

/** Writes on in the last file, with facts as they stand in all of them, and looks after each. */
function expectWritingOn(texts: readonly SourceFile[], clock: IsoDate, most: number, numRuns: number): void {
  const facts = texts.flatMap(({ document }) =>
    document.blocks
      .filter(({ header }) => header?.block === "day")
      .flatMap(({ text, items }) =>
        items.flatMap(({ kind, start, end }) =>
          kind === "record" ? [`${text.slice(start, end).trimEnd()}\n`] : [],
        ),
      ),
  );
  fc.assert(
    fc.property(fc.array(writing, { minLength: 3, maxLength: most }), (steps) => {
      let files = texts.map(({ path, document }) => ({
        path,
        document: Document.read(`${document.text.trimEnd()}\n`),
      }));
      let before = readBuild(files, { clock });
      for (const step of steps) {
        const last = files.at(-1) as SourceFile;
        files = [...files.slice(0, -1), fileAfter(last, written(last.document, step, facts))];
        before = readBuild(files, { clock, before });
        deepStrictEqual(shown(before), shown(readBuild(readAgain(files), { clock })));
      }
    }),
    { numRuns },
  );
}

test("that is written on at its end, fact by fact", () => {
  expectWritingOn(generated({ lines: 450, broken: 0.02 }), "2024-01-01" as IsoDate, 16, RUNS);
});

test("of the roadster that is written on at its end, fact by fact", () => {
  expectWritingOn(roadster(), "2026-11-25" as IsoDate, 12, Math.ceil(RUNS / 2));
});

/** What one does in any block: a line more at its end, one with a slip, a figure put right, a line taken out. */
type Rewriting = { readonly block: number } & (
  | { readonly is: "record" | "slip"; readonly from: number }
  | { readonly is: "figure"; readonly which: number; readonly digit: number }
  | { readonly is: "take out"; readonly which: number }
);

const rewriting: fc.Arbitrary<Rewriting> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      is: fc.constantFrom("record" as const, "record" as const, "slip" as const),
      block: share,
      from: share,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      is: fc.constant("figure" as const),
      block: share,
      which: share,
      digit: fc.integer({ min: 0, max: 9 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ is: fc.constant("take out" as const), block: share, which: share }),
  },
);

/** The lines below the header of a block, each with where it begins. */
function linesIn(text: string): { readonly line: string; readonly start: number }[] {
  let end = 0;
  return text.split(/(?<=\n)/).flatMap((line) => {
    const start = end;
    end += line.length;
    return start > 0 && line.trim() !== "" ? [{ line, start }] : [];
  });
}

const BLOCKS: ReadonlySet<string> = new Set([
  "day",
  "assembly",
  "part",
  "joint",
  "system",
  "circuit",
  "vehicle",
  "hold",
]);

/** The blocks of a document that one writes in, with where they begin. */
function writtenBlocks({ blocks, offsets }: Document) {
  return blocks.flatMap(({ header, text }, index) =>
    BLOCKS.has(header?.block ?? "") ? [{ word: header?.block, text, offset: offsets[index] ?? 0 }] : [],
  );
}

function rewritten(
  document: Document,
  step: Rewriting,
  lines: ReadonlyMap<string, readonly string[]>,
): Document {
  const blocks = writtenBlocks(document);
  const block = blocks[Math.floor(step.block * blocks.length)];
  if (block === undefined) return document;
  const { word = "", text, offset } = block;
  const end = offset + text.trimEnd().length;
  switch (step.is) {
    case "record":
    case "slip": {
      const known = lines.get(word) ?? [];
      const line = (known[Math.floor(step.from * known.length)] ?? "  near: 5 %\n").trimEnd();
      return document.edit(end, end, `\n${step.is === "record" ? line : line.replace(/(\w)\w:/, "$1:")}`);
    }
    case "figure": {
      const figures = linesIn(text).flatMap(({ line, start }) =>
        [...line.matchAll(/\d/g)].map(({ index }) => offset + start + index),
      );
      const at = figures[Math.floor(step.which * figures.length)];
      return at === undefined ? document : document.edit(at, at + 1, String(step.digit));
    }
    case "take out": {
      const records = linesIn(text);
      const record = records[Math.floor(step.which * records.length)];
      if (record === undefined) return document;
      const start = offset + record.start;
      return document.edit(start, start + record.line.length, "");
    }
  }
}

/** Writes in all blocks, with lines as they stand in others of their kind, and looks after each. */
function expectWritingWithin(
  texts: readonly SourceFile[],
  clock: IsoDate,
  most: number,
  numRuns: number,
): void {
  const lines = new Map<string, string[]>();
  for (const { document } of texts)
    for (const { word = "", text } of writtenBlocks(document))
      lines.set(word, [...(lines.get(word) ?? []), ...linesIn(text).map(({ line }) => line)]);
  const step = fc.record({ file: fc.nat(), stays: fc.boolean(), step: rewriting });
  fc.assert(
    fc.property(fc.array(step, { minLength: 3, maxLength: most }), (steps) => {
      let files = readAgain(texts.filter(({ document }) => document.text !== ""));
      let before = readBuild(files, { clock, isGoneOnFrom: true });
      let index = 0;
      for (const { file, stays, step: change } of steps) {
        const defines = files.flatMap(({ document }, each) =>
          writtenBlocks(document).length > 0 ? [each] : [],
        );
        if (!stays) index = defines[file % defines.length] ?? 0;
        const changed = files[index] as SourceFile;
        const after = fileAfter(changed, rewritten(changed.document, change, lines));
        files = files.map((each) => (each === changed ? after : each));
        before = readBuild(files, { clock, before });
        deepStrictEqual(shown(before), shown(readBuild(readAgain(files), { clock })));
      }
    }),
    { numRuns },
  );
}

test("that is written on in any of its blocks, line by line", () => {
  expectWritingWithin(generated({ lines: 450, broken: 0.02 }), "2024-01-01" as IsoDate, 16, RUNS);
});

test("of the roadster that is written on in any of its blocks, line by line", () => {
  expectWritingWithin(roadster(), "2026-11-25" as IsoDate, 12, RUNS);
});
