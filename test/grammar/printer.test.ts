import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { format, layoutEdits } from "../../grammar/printer.ts";
import { Values } from "../../grammar/values.ts";
import { anyLog, anyText, exampleBuild, patience, runs, samplePieces } from "./corpus.ts";
import { log } from "./marked-log.ts";

/** A line below a day, laid out. */
function laidOut(line: string): string {
  return format(`day 2026-05-02\n${line}`).slice("day 2026-05-02\n".length);
}

/** A record of a block, laid out. */
function recordLaidOut(header: string, line: string): string {
  return format(`${header}\n  ${line}`).slice(`${header}\n  `.length);
}

describe("the layout", () => {
  it("indents records by two spaces, continuation lines by four, and puts one space between values", () => {
    const written = [
      "day   2026-05-02\t5.5 h   # long",
      "\tremoved:   front.left.{hub,disc} ,front.right.*",
      "  ordered: 2x hub at 3.00GBP,   # the left one  ",
      "  1 ×  disc   from  north",
      '      measured:\tfront.left.disc thickness 9.12,9.10 ,9.14mm ±0.01 with mic25"rim"   ',
      "",
    ];
    expect(format(written.join("\n"))).toBe(
      log(`
        day 2026-05-02 5.5 h  # long
          removed: front.left.{hub, disc}, front.right.*
          ordered: 2 x hub at 3.00 GBP,  # the left one
            1 × disc from north
          measured: front.left.disc thickness 9.12, 9.10, 9.14 mm ± 0.01 with mic25 "rim"
      `),
    );
  });

  it.each([
    ["limit: bore 54.00 .. 54.05mm new 54mm", "limit: bore 54.00..54.05 mm new 54 mm"],
    ["limit: bore 54mm+0.05/-0.00", "limit: bore 54 mm +0.05/-0.00"],
    ["limit: bore 54mm+-0.05", "limit: bore 54 mm +- 0.05"],
    ["limit: bore 52H7", "limit: bore 52 H7"],
    ["limit: share max 5%", "limit: share max 5 %"],
    ["limit: heat max 90°C", "limit: heat max 90 °C"],
    ["setting: camber -1°30' ± 15 '", "setting: camber -1°30' ± 15 '"],
    ["size: bore 3/8in", "size: bore 3/8 in"],
    ["size: rate 30N/mm", "size: rate 30 N/mm"],
    ["size: work 5 N·m", "size: work 5 N·m"],
    ["calc: a=b-c/(  2+3 )*f( x ,y ) in  mm", "calc: a = b-c/(2+3)*f(x, y) in mm"],
    ["calc: a = 9.5mm  -  b", "calc: a = 9.5 mm - b"],
    ["calc: a = b-3/8 in", "calc: a = b-3/8 in"],
    ["calc: a = b - 3/8in", "calc: a = b - 3/8 in"],
  ])("%s becomes %s", (written, expected) => {
    expect(recordLaidOut("part hub", written)).toBe(expected);
  });

  it.each([
    ["bolt: 4xM8 x 1.25 x 30 mm   class A2-70", "bolt: 4 x M8 x 1.25 x 30 mm class A2-70"],
    ["washers: 2x1.6mm", "washers: 2 x 1.6 mm"],
    ["torque: 24N.m±10%then 90deg", "torque: 24 N.m ± 10 % then 90 deg"],
    [
      "recheck: after 1h running,then every 10h running",
      "recheck: after 1 h running, then every 10 h running",
    ],
  ])("%s becomes %s", (written, expected) => {
    expect(recordLaidOut("joint bolts", written)).toBe(expected);
  });

  it("keeps comments, two spaces behind what they belong to", () => {
    expect(laidOut("  bled: brakes\t# all four   ")).toBe("  bled: brakes  # all four");
    expect(laidOut("     # indented   ")).toBe("  # indented");
    expect(laidOut("# in column 0   ")).toBe("# in column 0");
    expect(laidOut("  bled: brakes     # waived not-proved:   later")).toBe(
      "  bled: brakes  # waived not-proved:   later",
    );
  });

  it("leaves prose alone, to the byte", () => {
    for (const line of [
      "      Prose,   far in.  ",
      "\tTabs\tand  spaces \t",
      "  |  removed:   x ",
      "| column 0  ",
    ])
      expect(laidOut(line)).toBe(line);
  });

  it("leaves alone what has a complaint", () => {
    for (const line of [
      "  removed:   a    b",
      "   remvoed:  a",
      "\tRemoved: a",
      "column   0",
      "  bled:   a,",
      '  tagged:  a  "b',
    ])
      expect(laidOut(line)).toBe(line);
    expect(format("day   2.5.2026\n   bled:  a\n")).toBe("day   2.5.2026\n  bled: a\n");
  });

  it("takes white space off blank lines, and keeps their number", () => {
    expect(format("day 2026-05-02\n\n   \n\t\n\nday 2026-05-03\n   ")).toBe(
      "day 2026-05-02\n\n\n\n\nday 2026-05-03\n",
    );
  });

  it("keeps line ends of every kind, and the byte order mark", () => {
    expect(format("\ufeffday  2026-05-02\r\n   bled:  a,\r    b\n")).toBe(
      "\ufeffday 2026-05-02\r\n  bled: a,\r    b\n",
    );
  });

  it("lays out a set over several lines", () => {
    expect(
      format("day 2026-05-02\n  removed: front.{ hub ,\n  disc,   # and\n      pads }.bolts , rear\n"),
    ).toBe("day 2026-05-02\n  removed: front.{hub,\n    disc,  # and\n    pads}.bolts, rear\n");
  });
});

/** What a document says: its lines but the blank ones, values and complaints without places, prose as written. */
function meaning(document: Document): unknown {
  return document.blocks.flatMap((block) =>
    block.items
      .filter(({ kind }) => kind !== "blank")
      .map((item) => {
        if (item.kind === "prose" || item.kind === "stray") return block.text.slice(item.start, item.end);
        if (!("word" in item)) return item.kind;
        return [
          item.word.text,
          plainTree(item.values),
          item.broken,
          item.comments.map(({ waiver }) => waiver && [waiver.code, waiver.reason]),
          item.faults.map(({ code, found }) => [code, found]),
        ];
      }),
  );
}

/** A tree without places; the text of a set counts by its segments. */
function plainTree(value: unknown): unknown {
  if (value instanceof Values) return [...value].map(([key, inner]) => [key, plainTree(inner)]);
  if (Array.isArray(value)) return value.map(plainTree);
  if (typeof value !== "object" || value === null) return value;
  const isReference = "segments" in value;
  return Object.entries(value)
    .filter(([key]) => key !== "start" && key !== "end" && !(isReference && key === "text"))
    .map(([key, inner]) => [key, plainTree(inner)]);
}

describe("laying out any log", () => {
  const logs = fc.oneof(anyLog, anyText, fc.constantFrom(...samplePieces));

  it(
    "twice gives the same bytes, and changes nothing of what it says",
    () => {
      fc.assert(
        fc.property(logs, (text) => {
          const once = format(text);
          expect(format(once)).toBe(once);
          expect(meaning(Document.read(once))).toEqual(meaning(Document.read(text)));
        }),
        runs(0.08),
      );
    },
    patience,
  );

  it(
    "makes edits in order, none touching another, each of white space alone",
    () => {
      fc.assert(
        fc.property(logs, (text) => {
          const document = Document.read(text);
          const edits = layoutEdits(document);
          const removed = edits.map(({ start, end }) => document.text.slice(start, end)).join("");
          const written = edits.map((edit) => edit.text).join("");
          expect(removed + written).toMatch(/^[ \t\v\f\u00a0\u202f\u2000-\u200a]*$/);
          expect(edits.every(({ start }, index) => start >= (edits[index - 1]?.end ?? 0))).toBe(true);
        }),
        runs(0.02),
      );
    },
    patience,
  );

  it("leaves the example build as it is", () => {
    expect(format(exampleBuild)).toBe(exampleBuild);
  });
});
