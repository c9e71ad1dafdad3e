/** In which order files are read, and what two blocks of one thing say together. */
import { expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { lowerBlock } from "../../server/build/lowering/block.ts";
import { buildOf, findingOf, nodeAt } from "./marked-build.ts";

/** The file that comes second is the one whose vehicle is one too many. */
function second(...paths: readonly string[]): string {
  const build = buildOf(
    Object.fromEntries(paths.map((path) => [path, `vehicle "${path}"\n  past: known\n`])),
  );
  return findingOf(build, "second-vehicle").place.site.file.path;
}

it.each([
  ["b.cotter", "a.cotter"],
  ["a.cotter.cotter", "a.cotter"],
  ["a/b.cotter", "a.cotter"],
  // By code point a full-width letter comes before a picture, although its code unit is the higher one.
  ["\u{1F697}.cotter", "\uFF21.cotter"],
  ["\u{1F697}.cotter", "\uE000.cotter"],
  ["\u{1F698}.cotter", "\u{1F697}.cotter"],
])("%s is read after %s", (later, earlier) => {
  expect(second(later, earlier)).toBe(later);
  expect(second(earlier, later)).toBe(later);
});

it("what a thing is like counts whichever of its blocks says so, and so does its title", () => {
  const build = buildOf(`
part left "Left"
  limit: runout max 0.1 mm

part right

part right "Right" like left
`);
  const right = nodeAt(build, "right");
  expect(right.title).toBe("Right");
  expect(right.copyOf).toBe("left");
  expect(build.standing.definitions.all(right, "limit")).toHaveLength(1);
  expect(findingOf(build, "duplicate-name").data).toMatchObject({ name: "right" });
});

it("the first title and the first likeness count where both blocks have one", () => {
  const build = buildOf(`
part left "Left"
  limit: runout max 0.1 mm

part middle "Middle"

part right "Right" like left

part right "Right again" like middle
`);
  expect(nodeAt(build, "right")).toMatchObject({ title: "Right", copyOf: "left" });
});

it("a line that makes no sense beside the others of its block is lost as one that cannot be read", () => {
  const lost = (text: string) => {
    const [node] = Document.read(text).blocks;
    const lowered = node && lowerBlock(node);
    if (node === undefined || lowered === undefined || lowered.is === "nothing") throw new Error("no block");
    return lowered.lost.map(({ start, end }) => node.text.slice(start, end));
  };
  expect(lost('job paint "Paint"\n  takes: 8 d\n  on: body\n')).toEqual(["takes: 8 d"]);
  expect(lost('job paint "Paint"\n  takes: 8 d\n  by: smith\n')).toEqual([]);
  expect(lost('job paint "Paint"\n  takes: 8 d\n  by: \n')).toEqual(["by:"]);
  expect(lost('gauge dial "Dial"\n  reads: 0..10 mm\n  resolution: 1 kg\n  uncertainty: ± 1 s\n')).toEqual([
    "resolution: 1 kg",
    "uncertainty: ± 1 s",
  ]);
  expect(lost('gauge dial "Dial"\n  reads: max 10 mm, min 1 kg\n  resolution: 1 kg\n')).toEqual([]);
  expect(lost('gauge dial "Dial"\n  resolution: 1 kg\n')).toEqual([]);
});
