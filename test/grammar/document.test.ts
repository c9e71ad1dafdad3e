import { deepStrictEqual } from "node:assert/strict";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { Document } from "../../grammar/document.ts";
import { anyLog, anyText, exampleBuild, patience, runs, sampleLogs, samplePieces } from "./corpus.ts";
import { log } from "./marked-log.ts";

/** One edit: where, how much goes, and what comes, as shares of the text so that it fits any. */
interface Edit {
  readonly at: number;
  readonly length: number;
  readonly text: string;
}

const anyEdit: fc.Arbitrary<Edit> = fc.record({
  // Of doubles most would lie close to nothing.
  at: fc.integer({ min: 0, max: 10_000 }).map((step) => step / 10_000),
  length: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 200 })),
  text: fc.oneof(
    fc.constant(""),
    fc.constantFrom("\n", "\r", "\r\n", " ", "x", "\n\n", "🛠", "\ud83d", "\ufeff"),
    anyText,
  ),
});

function placeOf(edit: Edit, { length }: { readonly length: number }): readonly [number, number] {
  const start = Math.floor(edit.at * (length + 1));
  return [start, Math.min(start + edit.length, length)];
}

/** The blocks that an edit did not touch and that are other objects afterwards, by their index. */
function unkept(before: Document, after: Document, start: number, end: number): number[] {
  // The block above may take in the lines of the first touched one; all others have to stay.
  const first = Math.max(0, before.blockIndexAt(Math.max(0, start - 1)) - 1);
  const last = before.blockIndexAt(end);
  const shift = after.blocks.length - before.blocks.length;
  return before.blocks.flatMap((block, index) => {
    if (index < first) return block === after.blocks[index] ? [] : [index];
    return index <= last || block === after.blocks[index + shift] ? [] : [index];
  });
}

describe("a document", () => {
  const text = log(`
    # above all

    vehicle "Halvorsen Sprint"
      year: 1963
    day 2026-05-02
      removed: hub
    day 2026-05-03
      bled: brakes
  `);

  it("is its text, in blocks", () => {
    const document = Document.read(text);
    expect(document.blocks.map((block) => block.text).join("")).toBe(text);
    expect(document.text).toBe(text);
    expect(document.blocks.map(({ header }) => header?.block)).toEqual([undefined, "vehicle", "day", "day"]);
    expect(document.lines).toEqual([0, 2, 4, 6]);
  });

  it("may be empty", () => {
    const document = Document.read("");
    expect(document).toMatchObject({ blocks: [], length: 0, lineCount: 1, text: "" });
    expect(document.positionAt(5)).toEqual({ line: 0, character: 0 });
    expect(document.offsetAt({ line: 3, character: 3 })).toBe(0);
    expect(document.edit(0, 0, "day 2026-05-02").blocks).toHaveLength(1);
  });

  it("edited within a block keeps all other blocks", () => {
    const before = Document.read(text);
    const at = text.indexOf("hub");
    const after = before.edit(at, at + 3, "disc");
    expect(after.blocks[0]).toBe(before.blocks[0]);
    expect(after.blocks[1]).toBe(before.blocks[1]);
    expect(after.blocks[2]).not.toBe(before.blocks[2]);
    expect(after.blocks[3]).toBe(before.blocks[3]);
  });

  it("edited within a block keeps the trees of the lines above the edit", () => {
    const lines = [
      "day 2026-05-02",
      "  removed: hub",
      "  removed: disc",
      "  removed: caliper",
      "  removed: hose",
    ];
    const before = Document.read(lines.join("\n"));
    const after = before.edit(before.length, before.length, "s");
    const [old, read] = [before, after].map(({ blocks }) => blocks[0]?.items ?? []);
    expect(read?.map((item, index) => item === old?.[index])).toEqual([true, true, true, true, false]);
    expect(after.blocks).toEqual(Document.read(after.text).blocks);
  });

  it("edited below a line that asks for more reads that line again where it goes on now, or no longer does", () => {
    const before = Document.read("day 2026-05-02\n  removed: hub\n  removed: disc,\n  | a note");
    const bar = before.text.indexOf("|");
    const after = before.edit(bar, before.length, "caliper");
    const records = ({ blocks }: Document) => blocks[0]?.items.filter(({ kind }) => kind === "record") ?? [];
    expect(records(after).map((item, index) => item === records(before)[index])).toEqual([true, false]);
    expect(after.blocks).toEqual(Document.read(after.text).blocks);
    const again = after.edit(bar, after.length, "| a note");
    expect(records(again).map((item, index) => item === records(after)[index])).toEqual([true, false]);
    expect(again.blocks).toEqual(before.blocks);
  });

  it("edited at the start of a block keeps that block, which only moves", () => {
    const before = Document.read(text);
    const after = before.edit(0, 0, "# new first line\n");
    expect(after.blocks.slice(1)).toEqual(before.blocks.slice(1));
    expect(after.blocks[1]).toBe(before.blocks[1]);
    expect(after.offsets[1]).toBe((before.offsets[1] ?? 0) + 17);
  });

  it("gives the lines of a header that was taken away to the block above", () => {
    const before = Document.read(text);
    const at = text.indexOf("day 2026-05-03");
    const after = before.edit(at + 2, at + 3, "");
    expect(after.blocks.map(({ header }) => header?.block)).toEqual([undefined, "vehicle", "day", "day"]);
    const inside = before.edit(at + 1, at + 8, "");
    expect(inside.blocks.map(({ header }) => header?.block)).toEqual([undefined, "vehicle", "day"]);
    expect(inside.blocks).toEqual(Document.read(inside.text).blocks);
    const stray = before.edit(at, at + 4, "");
    expect(stray.blocks.map(({ header }) => header?.block)).toEqual([undefined, "vehicle", "day"]);
    expect(stray.blocks).toEqual(Document.read(stray.text).blocks);
  });

  it("never counts a byte order mark", () => {
    const marked = Document.read(`\ufeff${text}`);
    expect(marked.text).toBe(text);
    expect(marked.edit(0, 0, "\ufeff").text).toBe(text);
  });
});

describe("places in a document", () => {
  const texts = [
    ...sampleLogs.slice(0, 3),
    "day 2026-05-02\r\n  a\rb\n\r\n  🛠 c\u2028d",
    "\r",
    "\n",
    "a\r\n",
    "x",
  ];

  it("are those of the protocol's own text document", () => {
    for (const text of texts) {
      const document = Document.read(text);
      const reference = TextDocument.create("file:///a.cotter", "cotter", 1, text);
      expect(document.lineCount).toBe(reference.lineCount);
      const step = text.length > 200 ? 7 : 1;
      const offsets = Array.from({ length: Math.ceil((text.length + 2) / step) }, (_, index) => index * step);
      // Within a CRLF the protocol's document answers with the end of the line.
      const outside = offsets.filter((offset) => text[offset - 1] !== "\r" || text[offset] !== "\n");
      for (const offset of outside) {
        const place = document.positionAt(offset);
        expect(place).toEqual(reference.positionAt(offset));
        expect(document.offsetAt(place)).toBe(reference.offsetAt(place));
      }
    }
  });

  it("beyond the end of a line are its end, beyond the text the text's end", () => {
    const document = Document.read("day 2026-05-02\r\n  a\n");
    expect(document.offsetAt({ line: 0, character: 99 })).toBe(14);
    expect(document.offsetAt({ line: 1, character: 99 })).toBe(19);
    expect(document.offsetAt({ line: 9, character: 0 })).toBe(20);
    expect(document.offsetAt({ line: -1, character: 0 })).toBe(0);
  });
});

describe("an edited document equals a fresh one", () => {
  const starts = fc.oneof(anyLog, anyText, fc.constantFrom(...samplePieces));

  it(
    "over any session of edits, and the blocks it did not touch are the same",
    () => {
      fc.assert(
        fc.property(starts, fc.array(anyEdit, { minLength: 1, maxLength: 4 }), (text, edits) => {
          let document = Document.read(text);
          for (const edit of edits) {
            const [start, end] = placeOf(edit, document);
            const before = document;
            const expected = before.text.slice(0, start) + edit.text + before.text.slice(end);
            document = before.edit(start, end, edit.text);
            deepStrictEqual(document.text, expected.replace(/^\ufeff+/, ""));
            deepStrictEqual(document, Document.read(document.text));
            expect(unkept(before, document, start, end)).toEqual([]);
          }
        }),
        runs(0.15),
      );
    },
    patience,
  );
});

describe("a document whose lines were let go of", () => {
  it("reads the same lines again, with the header that it kept", () => {
    const document = Document.read(exampleBuild);
    const lines = document.blocks.map(({ items }) => items);
    document.forgetLines();
    for (const [index, block] of document.blocks.entries()) {
      expect(block.items).not.toBe(lines[index]);
      expect(block.items).toEqual(lines[index]);
      expect(block.items[0]).toBe(block.header ?? block.items[0]);
      // Within one turn everyone is given the same.
      expect(block.items).toBe(block.items);
    }
  });

  it("can be edited", () => {
    const document = Document.read("part a\n  price: 1 GBP\n\npart b\n  price: 2 GBP\n");
    document.forgetLines();
    const after = document.edit(document.length, document.length, "  count: 2\n");
    expect(itemsOf(after)).toEqual(itemsOf(Document.read(after.text)));
  });
});

function itemsOf({ blocks }: Document) {
  return blocks.map(({ header, items }) => ({ header, items }));
}
