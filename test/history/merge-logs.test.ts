/** Two branches of one diary brought together: nothing of either is lost, and what cannot be decided is left to a person. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { mergeLines } from "../../server/history/merge/merge-lines.ts";
import type { MergeInBlock } from "../../server/history/merge/merge-logs.ts";
import { mergeLogs } from "../../server/history/merge/merge-logs.ts";

const BASE = `# The diary.

part hub "Hub"
part disc "Disc"
  limit: thickness min 8.4 mm

# What happened.

day 2026-05-02 2 h
  A quiet evening.
  removed: disc

day 2026-05-09 1 h
  cleaned: hub
`;

const NEVER: MergeInBlock = () => Promise.reject(new Error("no block was changed on both sides"));

async function merged(ours: string, theirs: string, base = BASE): Promise<string> {
  const { text, conflicts } = await mergeLogs({ base, ours, theirs }, NEVER);
  if (conflicts > 0) throw new Error(`${conflicts} conflicts`);
  return text;
}

const LATER = "\nday 2026-05-16 1 h\n  greased: hub\n";
const EARLIER = "\nday 2026-05-12 1 h\n  inspected: disc by eye\n";

describe("two branches of a log", () => {
  it("each with a day at the end: both days, in the order of their dates, whichever is ours", async () => {
    const both = BASE + EARLIER + LATER;
    expect(await merged(BASE + LATER, BASE + EARLIER)).toBe(both);
    expect(await merged(BASE + EARLIER, BASE + LATER)).toBe(both);
  });

  it("in a diary with the newest day first: there too", async () => {
    const [old, first, second] = [
      "day 2026-05-02\n  removed: disc\n\nday 2026-05-01\n  cleaned: hub\n",
      "day 2026-05-09\n  greased: hub\n\n",
      "day 2026-05-16\n  cleaned: disc\n\n",
    ];
    expect(await merged(first + old, second + old, old)).toBe(second + first + old);
  });

  it("both with a block for the same new day: both blocks, ours first", async () => {
    const ours = "\nday 2026-05-16 1 h\n  By JR.\n  greased: hub\n";
    const theirs = "\nday 2026-05-16 3 h\n  By KT.\n  cleaned: disc\n";
    expect(await merged(BASE + ours, BASE + theirs)).toBe(BASE + ours + theirs);
  });

  it("each with a change in a block of its own: both changes", async () => {
    const ours = BASE.replace("min 8.4 mm", "min 8.7 mm");
    const theirs = BASE.replace("cleaned: hub", "cleaned: hub by solvent");
    expect(await merged(ours, theirs)).toBe(ours.replace("cleaned: hub", "cleaned: hub by solvent"));
  });

  it("each with a part behind another: each where it stood, comments with what they stand above", async () => {
    const ours = BASE.replace("part disc", 'part seal "Seal"\npart disc');
    const theirs = BASE.replace("# What happened.", '# Brakes.\npart pads "Pads"\n\n# What happened.');
    expect(await merged(ours, theirs)).toBe(
      ours.replace("# What happened.", '# Brakes.\npart pads "Pads"\n\n# What happened.'),
    );
  });

  it("one without a block that the other left alone: it is gone", async () => {
    expect(await merged(BASE.replace('part hub "Hub"\n', ""), BASE + LATER)).toBe(
      BASE.replace('part hub "Hub"\n', "") + LATER,
    );
  });

  it("keep the line ends and the byte order mark of our side", async () => {
    const crlf = (text: string) => `\ufeff${text.replaceAll("\n", "\r\n")}`;
    expect(await merged(crlf(BASE + LATER), BASE + EARLIER)).toBe(crlf(BASE + EARLIER + LATER));
  });
});

describe("what both sides changed in one block", () => {
  it("is brought together by git where it can be: a line at the top, a line at the bottom", async () => {
    const base = "day 2026-05-02\n  One.\n  Two.\n  Three.\n  Four.\n";
    const ours = base.replace("One.", "One, by JR.");
    const theirs = base.replace("Four.", "Four, by KT.");
    expect(await mergeLogs({ base, ours, theirs }, mergeLines)).toEqual({
      text: ours.replace("Four.", "Four, by KT."),
      conflicts: 0,
    });
  });

  it("stays between markers where it cannot, and the days around it are merged all the same", async () => {
    const ours = BASE.replace("A quiet evening.", "A loud evening.") + LATER;
    const theirs = BASE.replace("A quiet evening.", "A long evening.") + EARLIER;
    const { text, conflicts } = await mergeLogs({ base: BASE, ours, theirs }, mergeLines);
    expect(conflicts).toBe(1);
    expect(text).toContain(
      "<<<<<<< ours\n  A loud evening.\n=======\n  A long evening.\n>>>>>>> theirs\n  removed: disc\n",
    );
    expect(text.endsWith(EARLIER + LATER)).toBe(true);
  });

  it("a block that one side changed and the other took out is left to a person", async () => {
    const ours = BASE.replace("cleaned: hub", "greased: hub");
    const theirs = BASE.replace("\nday 2026-05-09 1 h\n  cleaned: hub\n", "");
    const { text, conflicts } = await mergeLogs({ base: BASE, ours, theirs }, mergeLines);
    expect(conflicts).toBe(1);
    expect(text).toContain("<<<<<<< ours\nday 2026-05-09 1 h\n  greased: hub\n=======\n>>>>>>> theirs\n");
  });
});

/** A diary of days, each with a line that no other has. */
const days = (author: string) =>
  fc
    .uniqueArray(fc.integer({ min: 1, max: 28 }), { maxLength: 6 })
    .map((numbers) =>
      numbers
        .sort((a, b) => a - b)
        .map(
          (number) =>
            `day 2026-06-${String(number).padStart(2, "0")}\n  ${author} ${number}.\n  cleaned: hub\n`,
        ),
    );

it("any days that two people add to one diary are all there, in order, and nothing else is", async () => {
  await fc.assert(
    fc.asyncProperty(days("JR"), days("KT"), async (ours, theirs) => {
      const write = (more: readonly string[]) => [BASE, ...more].join("\n");
      const { text, conflicts } = await mergeLogs(
        { base: BASE, ours: write(ours), theirs: write(theirs) },
        NEVER,
      );
      expect(conflicts).toBe(0);
      const lines = (texts: readonly string[]) => texts.flatMap((one) => one.split("\n")).sort();
      expect(lines([text]).filter((line) => line !== "")).toEqual(
        lines([BASE, ...ours, ...theirs]).filter((line) => line !== ""),
      );
      const dates = Document.read(text).blocks.flatMap(({ header }) => {
        const date = header?.values.get("date");
        return date?.kind === "date" ? [date.text] : [];
      });
      expect(dates).toEqual([...dates].sort());
    }),
    { numRuns: 200 },
  );
});
