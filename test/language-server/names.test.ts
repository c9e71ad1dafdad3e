/** Names lead to things: definition, references and highlights. */
import { describe, expect, test } from "vitest";
import { definition } from "../../server/language-server/features/definition.ts";
import { highlights, references } from "../../server/language-server/features/references.ts";
import { subjectAt } from "../../server/language-server/names/subject-at.ts";
import { marked, seen } from "./marked-build.ts";

function definitionsIn(text: string): string[] {
  const build = marked(text);
  return definition(build.view, build.position).map(({ targetUri, targetSelectionRange }) =>
    seen(build, targetUri, targetSelectionRange),
  );
}

function referencesIn(text: string): string[] {
  const build = marked(text);
  return references(build.view, build.position, true).map(({ uri, range }) => seen(build, uri, range));
}

const PARTS = `=== parts.cotter
vehicle "Halvorsen Sprint"
assembly front.left "Left front corner"
part front.left.disc "Brake disc"
  limit: thickness min 8.4 mm
part front.left.hub "Hub"
part front.left.caliper "Caliper"
part front.left.caliper.piston "Piston"
joint front.left.disc_bolts "Disc to hub"
  joins: front.left.disc, hub
assembly front.right like front.left
gauge mic25 "Micrometer"
job strip "Strip it"
`;

describe("definition", () => {
  test("of a part by its full path", () => {
    expect(definitionsIn(`${PARTS}=== diary.cotter\nday 2026-05-02\n  removed: front.left.di⁞sc\n`)).toEqual([
      "parts.cotter:3 front.left.disc",
    ]);
  });

  test("of the assembly whose name in the path the cursor is at", () => {
    expect(definitionsIn(`${PARTS}=== diary.cotter\nday 2026-05-02\n  removed: front.le⁞ft.disc\n`)).toEqual([
      "parts.cotter:2 front.left",
    ]);
  });

  test("of a part by a tail, and within braces", () => {
    expect(definitionsIn(`${PARTS}=== diary.cotter\nday 2026-05-02\n  removed: left.{disc, h⁞ub}\n`)).toEqual(
      ["parts.cotter:5 front.left.hub"],
    );
  });

  test("of every part that a set means; copies are where they are copied", () => {
    expect(definitionsIn(`${PARTS}=== diary.cotter\nday 2026-05-02\n  removed: front.*.hub⁞\n`)).toEqual([
      "parts.cotter:5 front.left.hub",
      "parts.cotter:10 front.right",
    ]);
  });

  test("of an assembly without a block: the first thing below it", () => {
    expect(definitionsIn(`${PARTS}=== diary.cotter\nday 2026-05-02\n  removed: fro⁞nt\n`)).toEqual([
      "parts.cotter:2 front.left",
    ]);
  });

  test("of a characteristic: its limit, also through a copy", () => {
    expect(
      definitionsIn(
        `${PARTS}=== diary.cotter\nday 2026-05-02\n  measured: front.right.disc thick⁞ness 9 mm with mic25\n`,
      ),
    ).toEqual(["parts.cotter:4 limit: thickness min 8.4 mm"]);
  });

  test("of a characteristic in an expression", () => {
    expect(
      definitionsIn(
        `${PARTS}=== diary.cotter\nday 2026-05-02\n  calc: left = front.left.disc.thick⁞ness - 8.4 mm\n`,
      ),
    ).toEqual(["parts.cotter:4 limit: thickness min 8.4 mm"]);
  });

  test("of a gauge, a job, a snag, an order and a computed value", () => {
    const day = (line: string) =>
      definitionsIn(`${PARTS}=== diary.cotter
day 2026-05-02
  snag: stiff on front
  ordered: 1 x front.left.hub ref "N-1"
  calc: gap = 1 mm
  ${line}
`);
    expect(day("measured: hub bore 52 mm with mic⁞25")).toEqual(["parts.cotter:11 mic25"]);
    expect(day("worked: 2 h on str⁞ip")).toEqual(["parts.cotter:12 strip"]);
    expect(day("cleared: st⁞iff")).toEqual(["diary.cotter:2 stiff"]);
    expect(day('received: order "N-⁞1"')).toEqual(['diary.cotter:3 "N-1"']);
    expect(day("calc: more = g⁞ap + 1 mm")).toEqual(["diary.cotter:4 gap"]);
  });

  test("of nothing, in prose and behind a name that leads nowhere", () => {
    expect(definitionsIn(`${PARTS}=== diary.cotter\nday 2026-05-02\n  The disc⁞ was dry.\n`)).toEqual([]);
    expect(definitionsIn(`${PARTS}=== diary.cotter\nday 2026-05-02\n  removed: wing⁞\n`)).toEqual([]);
  });
});

describe("references", () => {
  test("of a part: in full, as a tail, in sets, in joints and in paths that go on", () => {
    expect(
      referencesIn(`${PARTS}=== diary.cotter
day 2026-05-02
  removed: front.left.{disc, caliper⁞}, disc_bolts
  removed: left.caliper.piston
  cleaned: front.*.caliper
`),
    ).toEqual([
      "diary.cotter:2 caliper",
      "diary.cotter:3 caliper",
      "diary.cotter:4 caliper",
      "parts.cotter:6 caliper",
      "parts.cotter:7 caliper",
    ]);
  });

  test("of a characteristic are those of its thing alone", () => {
    expect(
      referencesIn(`
        vehicle "Halvorsen Sprint"
        part disc "Disc"
          limit: thick⁞ness min 8.4 mm
        part drum "Drum"
          limit: thickness min 3 mm
        day 2026-05-02
          measured: disc thickness 9 mm
          measured: drum thickness 4 mm
          measured: disc.thickness 9 mm
      `),
    ).toEqual(["log.cotter:3 thickness", "log.cotter:7 thickness", "log.cotter:9 thickness"]);
  });
});

describe("highlights", () => {
  test("tell where a name is given from where it is used", () => {
    const build = marked(`
      vehicle "Halvorsen Sprint"
      gauge mic25⁞ "Micrometer"
      part disc "Disc"
      day 2026-05-02
        measured: disc thickness 9 mm with mic25
    `);
    const found = highlights(build.view, build.position).map(({ range, kind }) => [range.start.line, kind]);
    expect(found).toEqual([
      [1, 3],
      [4, 2],
    ]);
  });
});

describe("what a place is about", () => {
  const about = (text: string) => {
    const { view, position } = marked(`${PARTS}=== diary.cotter\n${text}`);
    return subjectAt(view, position);
  };

  test("is the thing that is named there", () => {
    expect(about("day 2026-05-02\n  removed: front.left.hub, front.le⁞ft.disc\n")).toBe("front.left");
    expect(about("day 2026-05-02\n  measured: left.disc thick⁞ness 9 mm\n")).toBe(
      "front.left.disc.thickness",
    );
    expect(about("day 2026-05-02\n  worked: 3 h on str⁞ip\n")).toBe("strip");
  });

  test("else the first of its line, else that of its block", () => {
    expect(about("day 2026-05-02\n  measured: left.disc thickness 9 m⁞m\n")).toBe("front.left.disc");
    expect(about('part rear.disc "Rear"\n  The cracked o⁞ne.\n')).toBe("rear.disc");
  });

  test("is nothing in the prose of a day", () => {
    expect(about("day 2026-05-02\n  A dry da⁞y.\n")).toBeUndefined();
  });
});
