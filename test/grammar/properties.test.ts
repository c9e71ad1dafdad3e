import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { BlockNode, ItemNode } from "../../grammar/syntax.ts";
import { Values } from "../../grammar/values.ts";
import { anyText, patience, runs, samplePieces } from "./corpus.ts";
import { faultsOf } from "./marked-log.ts";

/** What of a block is covered by no item, by two, or lies outside the item that holds it. */
function gapsIn({ text, items, lineStarts }: BlockNode): string[] {
  const gaps: string[] = [];
  let at = 0;
  for (const item of items) {
    if (item.start !== at || item.end <= item.start || !lineStarts.includes(item.start))
      gaps.push(`${item.kind} from ${item.start} to ${item.end} behind ${at}`);
    gaps.push(...outside(item, item));
    at = item.end;
  }
  return at === text.length ? gaps : [...gaps, `nothing from ${at} to ${text.length}`];
}

/** The spans in a tree that do not lie within the item that holds it. */
function outside(value: unknown, item: ItemNode): string[] {
  if (typeof value !== "object" || value === null) return [];
  const { start, end } = value as { readonly start?: number; readonly end?: number };
  const isWithin =
    start === undefined || end === undefined || (item.start <= start && start <= end && end <= item.end);
  const inner = value instanceof Values ? [...value.values()] : Object.values(value);
  return [...(isWithin ? [] : [JSON.stringify(value)]), ...inner.flatMap((each) => outside(each, item))];
}

/** The size of a tree: its nodes, spans and texts, counted. */
function sizeOf(value: unknown): number {
  if (typeof value !== "object" || value === null) return 1;
  const inner = value instanceof Values ? [...value.values()] : Object.values(value);
  return inner.reduce<number>((sum, each) => sum + sizeOf(each), 1);
}

describe("any text at all", () => {
  it(
    "reads without throwing, and its tree covers every character",
    () => {
      fc.assert(
        fc.property(anyText, (text) => {
          const document = Document.read(text);
          expect(document.text).toBe(text.replace(/^\ufeff+/, ""));
          expect(document.blocks.flatMap(gapsIn)).toEqual([]);
        }),
        runs(0.4),
      );
    },
    patience,
  );

  it(
    "makes a tree, complaints included, of a size in proportion to its length",
    () => {
      fc.assert(
        fc.property(anyText, (text) => {
          const size = Document.read(text).blocks.reduce((sum, block) => sum + sizeOf(block.items), 0);
          // A character alone can be a line with a complaint and two fixes: some 60 fields.
          expect(size).toBeLessThanOrEqual(60 * (text.length + 1));
        }),
        runs(0.05),
      );
    },
    patience,
  );

  it(
    "quotes in each complaint what stands there",
    () => {
      fc.assert(
        fc.property(anyText, (text) => {
          const misquoted = Document.read(text).blocks.flatMap((block) =>
            faultsOf(block).filter(
              ({ start, end, found, code }) =>
                code !== "waiver-without-reason" && found !== block.text.slice(start, end),
            ),
          );
          expect(misquoted).toEqual([]);
        }),
        runs(0.05),
      );
    },
    patience,
  );
});

/** Texts on which a careless pattern takes time in the square of their length; the limit of a test would end it. */
const LONG = 24_000;
const hostile: readonly (readonly [string, string])[] = [
  ["digits", "9".repeat(LONG)],
  ["a comma between digits", `9,${"9".repeat(LONG)}.5`],
  ["digits and hyphens", "1-".repeat(LONG / 2)],
  ["digits and slashes", "1/".repeat(LONG / 2)],
  ["digits and spaces", "1 ".repeat(LONG / 2)],
  ["spaces", `1${" ".repeat(LONG)}`],
  ["spaces before a cross", `M8${" ".repeat(LONG)}x`],
  ["open braces", "{".repeat(LONG)],
  ["braces and names", "a.{b.".repeat(LONG / 5)],
  ["a long set", `{${"a,".repeat(LONG / 2)}a}`],
  ["quotation marks", '"'.repeat(LONG)],
  ["escapes", `"${"\\".repeat(LONG)}`],
  ["a long string", `"${"a".repeat(LONG)}"`],
  ["inch marks", '1"'.repeat(LONG / 2)],
  ["a name", "a".repeat(LONG)],
  ["a path", "a.".repeat(LONG / 2)],
  ["units", `1 ${"mm.".repeat(LONG / 3)}`],
  ["commas", ",".repeat(LONG)],
  ["words", "by ".repeat(LONG / 3)],
  ["references", "a, ".repeat(LONG / 3)],
  ["hashes", "  #".repeat(LONG / 3)],
  ["defaults", "a default ".repeat(LONG / 10)],
  ["parentheses", `a = ${"(".repeat(LONG)}`],
  ["signs", `a = ${"-".repeat(LONG)}1`],
  ["a sum", `a = ${"1+".repeat(LONG / 2)}1`],
  ["a chain", "1 h 1 min ".repeat(LONG / 10)],
  ["no-break spaces", "\u00a0".repeat(LONG)],
  ["surrogates", "🛠".repeat(LONG / 2)],
  ["dates", "2026-05-02..".repeat(LONG / 12)],
  ["bars", "|".repeat(LONG)],
];

describe("long lines read in time linear in their length", () => {
  it.each(hostile)("%s", (_, text) => {
    const lines = ["removed", "measured", "changed", "calc", "ordered", "note"].map(
      (word) => `  ${word}: ${text}\n`,
    );
    const log = `day ${text}\n${text}\n  ${text}\n${text} ${text}\nday 2026-05-02\n${lines.join("")}`;
    expect(Document.read(log).text).toBe(log);
  });

  it("a log of very many short lines", () => {
    const log =
      "day 2026-05-02\n".repeat(5_000) + "\n".repeat(20_000) + "  a\n".repeat(20_000) + "x\n".repeat(5_000);
    expect(Document.read(log).blocks).toHaveLength(5_000);
  });
});

/** The items of a document by the line that they start in, positions taken from there. */
function treesByLine(document: Document): Map<number, string> {
  const trees = new Map<number, string>();
  document.blocks.forEach((block, index) => {
    for (const item of block.items) {
      const { line } = document.positionIn(index, item.start);
      trees.set(
        line,
        JSON.stringify(item, (key, value) => relative(key, value, item.start)),
      );
    }
  });
  return trees;
}

function relative(key: string, value: unknown, start: number): unknown {
  if ((key === "start" || key === "end" || key === "contentEnd") && typeof value === "number")
    return value - start;
  return value instanceof Values ? Object.fromEntries(value) : value;
}

interface Damaged {
  readonly lines: readonly string[];
  /** The lines that are not as they were. */
  readonly damaged: readonly number[];
  /** The line that a line was before. */
  readonly origin: (line: number) => number;
}

const same = (line: number) => line;

/** What can happen to one line. */
const DAMAGES: Readonly<Record<string, (lines: readonly string[], line: number) => Damaged>> = {
  deleted: (lines, line) => ({
    lines: lines.toSpliced(line, 1),
    damaged: [],
    origin: (at) => (at >= line ? at + 1 : at),
  }),
  doubled: (lines, line) => ({
    lines: lines.toSpliced(line, 0, lines[line] ?? ""),
    damaged: [],
    origin: (at) => (at > line ? at - 1 : at),
  }),
  truncated: (lines, line) => {
    const text = lines[line] ?? "";
    return {
      lines: lines.with(line, text.slice(0, Math.floor(text.length / 2))),
      damaged: [line],
      origin: same,
    };
  },
  swapped: (lines, line) => {
    const below = Math.min(line + 1, lines.length - 1);
    const swapped = lines.with(line, lines[below] ?? "").with(below, lines[line] ?? "");
    return { lines: swapped, damaged: [], origin: (at) => (at === line ? below : at === below ? line : at) };
  },
};

/** True where the damage is to no header, which all below it hangs on, and to no record over several lines. */
function standsAlone(lines: readonly string[], line: number, how: string): boolean {
  const touched = lines.slice(line, how === "swapped" ? line + 2 : line + 1);
  const near = lines.slice(Math.max(0, line - 1), line + 3);
  const cut = (lines[line] ?? "").slice(0, Math.floor((lines[line] ?? "").length / 2));
  const opens = (text: string) => /,\s*(?:#.*)?$/.test(text);
  return (
    !touched.some((text) => /^[^\s#]/.test(text)) && !near.some(opens) && !(how === "truncated" && opens(cut))
  );
}

describe("a damaged line of a sample", () => {
  const whole = samplePieces.map((text) => text.split("\n").slice(0, -1));

  it.each(Object.entries(DAMAGES))(
    "%s: every other line reads as it did",
    (how, damage) => {
      fc.assert(
        fc.property(fc.constantFrom(...whole), fc.nat(), (lines, any) => {
          const line = any % lines.length;
          fc.pre(standsAlone(lines, line, how));
          const result = damage(lines, line);
          const before = treesByLine(Document.read(lines.join("\n").concat("\n")));
          const after = treesByLine(Document.read(result.lines.join("\n").concat("\n")));
          const other = [...after].filter(
            ([at, tree]) => !result.damaged.includes(at) && tree !== before.get(result.origin(at)),
          );
          expect(other).toEqual([]);
        }),
        runs(0.05),
      );
    },
    60_000,
  );

  it(
    "a header that is deleted or truncated leaves the records below as they are, in a block that may not take them",
    () => {
      const headers = whole.flatMap((lines) =>
        lines.flatMap((text, line) => (/^[a-z]/.test(text) && line > 0 ? [{ lines, line }] : [])),
      );
      fc.assert(
        fc.property(
          fc.constantFrom(...headers),
          fc.constantFrom("deleted", "truncated"),
          ({ lines, line }, how) => {
            const result = DAMAGES[how]?.(lines, line) ?? { lines, damaged: [] as number[] };
            const document = Document.read(result.lines.join("\n"));
            const codes = document.blocks.flatMap((block, index) =>
              faultsOf(block)
                .filter(({ start }) => !result.damaged.includes(document.positionIn(index, start).line))
                .map(({ code }) => code),
            );
            expect(codes.filter((code) => code !== "record-not-here" && code !== "unknown-record")).toEqual(
              [],
            );
          },
        ),
        runs(0.05),
      );
    },
    patience,
  );
});
