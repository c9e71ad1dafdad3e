/** Whatever is typed, in whatever order: what is shown in the end is what a fresh reading of the same text shows. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { rangeOf } from "../../server/language-server/to-protocol.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { relativeTo } from "../../server/workspace/file-store.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { MemoryFiles } from "./memory-files.ts";

const PARTS = `vehicle "Halvorsen Sprint"
  past: known

gauge mic25 "Micrometer"
  reads: 0..25 mm

assembly front.left "Left front corner"
part front.left.hub "Hub"
part front.left.disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm
joint front.left.bolts "Disc to hub"
  joins: front.left.disc, front.left.hub
  torque: 24 N.m ± 10 %
assembly front.right like front.left
`;

const DIARY = `day 2026-05-02 4 h
  Both pins came out with a drift.
  removed: front.left.{hub, disc}
  measured: front.left.disc thickness 9.12, 9.10 mm with mic25
  calc: rest = front.left.disc.thickness - 8.4 mm

day 2026-05-03
  fitted: front.left.hub, front.left.disc
  torqued: front.left.bolts 24 N.m
`;

/** What people type, paste and delete: words, halves of lines, whole blocks, line ends of all kinds. */
const PIECES = [
  "",
  "x",
  " ",
  "\n",
  "\r\n",
  "\t",
  '"',
  "#",
  ", ",
  "  removed: front.left.disc\n",
  "  measured: disc thickness 8.1 mm\n",
  'part front.left.hub "Another"\n',
  "day 2026-05-02\n",
  'vehicle "Second"\n',
  "assembly front.left like front.right\n",
  "  calc: rest = rest + 1\n",
  "ä😀",
];

interface Keystroke {
  readonly file: number;
  readonly at: number;
  readonly removed: number;
  readonly piece: string;
  /** Whether somebody looks at the complaints before the next key. */
  readonly looks: boolean;
}

const keystroke: fc.Arbitrary<Keystroke> = fc.record({
  file: fc.nat(1),
  at: fc.nat(700),
  removed: fc.oneof({ weight: 4, arbitrary: fc.nat(3) }, { weight: 1, arbitrary: fc.nat(120) }),
  piece: fc.constantFrom(...PIECES),
  looks: fc.boolean(),
});

const PATHS = ["/log/parts.cotter", "/log/diary.cotter"];

async function opened(texts: readonly string[], order = [0, 1], onDisk = {}): Promise<Workspace> {
  const files = new MemoryFiles();
  for (const [path, text] of Object.entries<string>(onDisk)) files.texts.set(path, text);
  const workspace = new Workspace({
    files,
    clock: () => "2026-06-01" as IsoDate,
    nameWithin: relativeTo,
    onChange: () => undefined,
    onTrouble: () => undefined,
  });
  await workspace.addRoot("/log");
  for (const index of order) await workspace.open(PATHS[index] ?? "", texts[index] ?? "", 1);
  return workspace;
}

function complaintsIn(workspace: Workspace): string[] {
  return workspace
    .everyBuild()
    .flatMap(({ complaints }) =>
      complaints.complaints.map(
        ({ code, severity, message, place }) =>
          `${place.site.file.path} ${JSON.stringify(rangeOf(place))} ${severity} ${code} ${message}`,
      ),
    );
}

test("a session of edits ends with the complaints of a fresh reading", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(keystroke, { maxLength: 12 }), async (keys) => {
      const workspace = await opened([PARTS, DIARY]);
      for (const [index, { file, at, removed, piece, looks }] of keys.entries()) {
        const path = PATHS[file] ?? "";
        workspace.edit(path, index + 2, [() => ({ start: at, end: at + removed, text: piece })]);
        if (looks) complaintsIn(workspace);
      }
      const texts = PATHS.map((path) => workspace.documentOf(path)?.text ?? "");
      expect(complaintsIn(workspace)).toEqual(complaintsIn(await opened(texts)));
    }),
    { numRuns: 60 },
  );
});

test("the order in which files are opened, read from disk, or written in changes nothing", async () => {
  const [parts = "", diary = ""] = PATHS;
  // Each complaint needs both files.
  const told = `${DIARY}  measured: front.right.disc thickness 8.1 mm\n  removed: front.right.hubb\n`;
  const expected = complaintsIn(await opened([PARTS, told]));
  expect(expected).toHaveLength(2);
  expect(complaintsIn(await opened([PARTS, told], [1, 0]))).toEqual(expected);
  const written = await opened(["", ""]);
  written.edit(diary, 2, [() => ({ text: told })]);
  written.edit(parts, 2, [() => ({ text: PARTS })]);
  expect(complaintsIn(written)).toEqual(expected);
  // One from disk, the other from the editor, and the other way round.
  expect(complaintsIn(await opened([PARTS, ""], [0], { [diary]: told }))).toEqual(expected);
  expect(complaintsIn(await opened(["", told], [1], { [parts]: PARTS }))).toEqual(expected);
  expect(complaintsIn(await opened([], [], { [diary]: told, [parts]: PARTS }))).toEqual(expected);
});
