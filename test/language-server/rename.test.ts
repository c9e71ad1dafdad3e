/** Renaming keeps the meaning of every line, or is refused. */
import { describe, expect, test } from "vitest";
import { prepareRename, rename } from "../../server/language-server/features/rename.ts";
import { edited, marked } from "./marked-build.ts";

/** The files after renaming what the cursor is at; a refusal's words. */
function renamed(text: string, newName: string): string {
  const build = marked(text);
  const result = rename(build.view, build.position, newName);
  if ("refused" in result) return result.refused;
  return build.view.build.files.map((file) => edited(file.document.text, result.get(file) ?? [])).join("");
}

const CORNERS = `
  assembly front.left "Left front corner"
  part front.left.disc "Brake disc"
    limit: thickness min 8.4 mm
  part front.left.disc.vane "Vane"
  assembly front.right like front.left
  joint front.left.bolts "Disc bolts"
    joins: front.left.disc
`;

describe("a part", () => {
  test("is renamed with its copies, in sets, tails, members, expressions and paths below it", () => {
    const text = `${CORNERS}
  day 2026-05-02
    removed: left.{di⁞sc, bolts}
    removed: front.*.disc
    cleaned: front.right.disc
    measured: front.left.disc.thickness 9 mm
    calc: rest = front.right.disc.thickness - 8.4 mm
    removed: front.left.disc.vane
    The disc was dry.
`;
    expect(renamed(text, "rotor")).toBe(
      marked(text)
        .text.replaceAll(/(?<!The )disc(?!s)/g, "rotor")
        .replace('"Brake rotor"', '"Brake disc"'),
    );
  });

  test("is renamed from any place where it is named", () => {
    const from = (line: string) => renamed(`${CORNERS}  day 2026-05-02\n    ${line}\n`, "rotor");
    expect(from("removed: front.right.di⁞sc")).toContain("part front.left.rotor ");
    expect(from("removed: front.right.di⁞sc")).toContain("removed: front.right.rotor\n");
    expect(from("measured: front.left.di⁞sc.thickness 9 mm")).toContain("joins: front.left.rotor");
  });

  test("is not renamed to what there is already", () => {
    expect(renamed(`${CORNERS}  part front.left.hub⁞\n`, "disc")).toBe("there is a front.left.disc already");
  });

  test("is not renamed to a word of the notation, a thread, or no name at all", () => {
    expect(renamed("part disc⁞\n", "with")).toBe("with is a word of the notation");
    expect(renamed("part disc⁞\n", "M10")).toBe("M10 reads as a thread");
    expect(renamed("part disc⁞\n", "brake disc")).toContain("is no name");
    expect(renamed("part disc⁞\n", "")).toContain("nothing is no name");
  });

  test("is written out in full where its new tail would be ambiguous", () => {
    expect(
      renamed(
        `
        part engine.rotor
        part front.disc⁞
        day 2026-05-02
          removed: disc
        `,
        "rotor",
      ),
    ).toBe("part engine.rotor\npart front.rotor\nday 2026-05-02\n  removed: front.rotor\n");
  });

  test("is not renamed where a set means others too", () => {
    expect(
      renamed(
        `
        part front.disc⁞
        part rear.disc
        day 2026-05-02
          removed: *.disc
        `,
        "rotor",
      ),
    ).toBe("log.cotter:4 means rear.disc too: write out what it means first");
  });
});

describe("an assembly", () => {
  test("is renamed in every path that goes through it", () => {
    expect(
      renamed(
        `
        assembly front.left "Left"
        part front.left.disc
        part front.left.hub
        assembly front.right like front.left
        day 2026-05-02
          removed: front.le⁞ft.{disc, hub}, left.disc
          removed: front.{left, right}.disc
        `,
        "near",
      ),
    ).toBe(
      [
        'assembly front.near "Left"',
        "part front.near.disc",
        "part front.near.hub",
        "assembly front.right like front.near",
        "day 2026-05-02",
        "  removed: front.near.{disc, hub}, near.disc",
        "  removed: front.{near, right}.disc",
        "",
      ].join("\n"),
    );
  });

  test("is renamed without a block of its own", () => {
    expect(renamed("part fro⁞nt.disc\nday 2026-05-02\n  removed: front\n", "nose")).toBe(
      "part nose.disc\nday 2026-05-02\n  removed: nose\n",
    );
  });
});

describe("other names", () => {
  test("a job: wherever the plan and the diary name it, not where a part is called the same", () => {
    expect(
      renamed("part strip\njob stri⁞p\njob paint\n  after: strip\nday 2026-05-02\n  done: strip\n", "bare"),
    ).toBe("part strip\njob bare\njob paint\n  after: bare\nday 2026-05-02\n  done: bare\n");
  });

  test("a job and a hold point share their names", () => {
    expect(renamed("job strip⁞\nhold ready\n", "ready")).toBe("there is a hold ready already");
  });

  test("a characteristic: of its thing alone", () => {
    expect(
      renamed(
        `
        part disc
          limit: thick⁞ness min 8.4 mm
        part drum
          limit: thickness min 3 mm
        day 2026-05-02
          measured: disc thickness 9 mm
          calc: rest = disc.thickness - 8.4 mm
        `,
        "width",
      ),
    ).toBe(
      [
        "part disc",
        "  limit: width min 8.4 mm",
        "part drum",
        "  limit: thickness min 3 mm",
        "day 2026-05-02",
        "  measured: disc width 9 mm",
        "  calc: rest = disc.width - 8.4 mm",
        "",
      ].join("\n"),
    );
  });

  test("a gauge, a snag and an order's reference", () => {
    expect(renamed("gauge mic⁞\npart a\nday 2026-05-02\n  measured: a b 1 mm with mic\n", "dial")).toContain(
      "with dial",
    );
    expect(renamed("part a\nday 2026-05-02\n  snag: rub on a\n  cleared: r⁞ub\n", "rattle")).toContain(
      "snag: rattle on a\n  cleared: rattle",
    );
    expect(
      renamed('part a\nday 2026-05-02\n  ordered: 1 x a ref "N-1"\n  received: order "N-⁞1"\n', "N-2"),
    ).toContain('ref "N-2"\n  received: order "N-2"');
  });
});

describe("before renaming", () => {
  test("the name is offered, and its own stretch", () => {
    const build = marked("part front.di⁞sc\n");
    expect(prepareRename(build.view, build.position)).toEqual({
      range: { start: { line: 0, character: 11 }, end: { line: 0, character: 15 } },
      placeholder: "disc",
    });
  });

  test("the vehicle and functions say why they keep their names", () => {
    const vehicle = marked('vehicle "Spr⁞int"\n');
    expect(prepareRename(vehicle.view, vehicle.position)).toEqual({
      refused: "the vehicle is called vehicle wherever it is referred to",
    });
    const call = marked("day 2026-05-02\n  calc: a = sq⁞rt(4)\n");
    expect(prepareRename(call.view, call.position)).toEqual({
      refused: "sqrt is a function of the notation",
    });
  });

  test("nothing is offered in prose", () => {
    const { view, position } = marked("day 2026-05-02\n  All d⁞ry.\n");
    expect(prepareRename(view, position)).toBeUndefined();
  });
});
