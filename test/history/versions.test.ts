/** A file through many commits: a version costs what was changed in it, and reads as if it were read afresh. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { Version } from "../../server/history/record/versions.ts";
import { versionAfter } from "../../server/history/record/versions.ts";

const day = (number: number, words = "A quiet evening.") =>
  `day 2026-05-${String(number).padStart(2, "0")}\n  ${words}\n  cleaned: hub\n\n`;

function versions(...texts: readonly string[]): readonly Version[] {
  const read: Version[] = [];
  for (const text of texts) read.push(versionAfter(read.at(-1), Buffer.from(text)));
  return read;
}

describe("a version of a file", () => {
  it("shares every block that was not changed with the version before it", () => {
    const days = Array.from({ length: 28 }, (_, index) => day(index + 1));
    const altered = days.with(9, day(10, "A loud evening.")).join("");
    const [first, second] = versions(days.join(""), altered);
    const shared = second?.document.blocks.filter((block) => first?.document.blocks.includes(block));
    expect(second?.document.blocks).toHaveLength(28);
    expect(shared).toHaveLength(27);
  });

  it("is read as a whole text is, whatever was changed", () => {
    const line = fc.constantFrom(
      "day 2026-05-02",
      "  cleaned: hub",
      "  Ümläute ± µ.",
      "part hub",
      "",
      "# x",
      "😀",
    );
    const text = fc
      .tuple(fc.array(line, { maxLength: 30 }), fc.constantFrom("\n", "\r\n"), fc.boolean())
      .map(([lines, end, mark]) => (mark ? "\ufeff" : "") + lines.join(end));
    fc.assert(
      fc.property(fc.array(text, { minLength: 1, maxLength: 5 }), (texts) => {
        for (const [index, version] of versions(...texts).entries()) {
          const whole = Document.read(texts[index] as string);
          expect(version.text).toBe(whole.text);
          expect(version.document.blocks).toEqual(whole.blocks);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("finds what was changed in a text of many thousand characters", () => {
    const lines = Array.from({ length: 2000 }, (_, index) => `part p${index} "Part ${index}"\n`);
    const text = lines.join("");
    const [, second] = versions(text, lines.with(1234, 'part p1234 "Altered"\n').join(""));
    expect(second?.document.blocks).toEqual(Document.read(second?.text ?? "").blocks);
  });
});
