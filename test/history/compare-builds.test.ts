/** Two texts of one build, and what changed between them in the terms of the build. */
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import { compareBuilds } from "../../server/history/changes/compare-builds.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

const HEAD = `vehicle "Marsh Kestrel"
  past: known
  currency: GBP

gauge mic25 "Micrometer"
  resolution: 0.01 mm

`;

const PARTS = `part front.left.hub "Hub"

part front.left.disc "Brake disc"
  safety: critical
  material: cast_iron
  limit: thickness min 8.4 mm
  price: 46.00 GBP

joint front.left.disc_bolts "Disc to hub"
  joins: front.left.hub, front.left.disc
  torque: 50 N.m ± 10 %

job brake "Left front brake"
  on: front.left
  takes: 6 h

hold road "Ready for the road"
  needs: parts

`;

const DIARY = `day 2026-05-02 2 h
  A quiet evening.
  removed: front.left.disc
  measured: front.left.disc thickness 9.12, 9.10 mm with mic25
  decided: front.left.disc reuse

day 2026-05-09 3 h
  cleaned: front.left.hub
`;

const BUILD = HEAD + PARTS + DIARY;

function build(text: string): Build {
  const files = [{ path: "build.cotter", document: Document.read(text) }];
  return readBuild(files, { clock: "2026-06-30" as IsoDate });
}

/** Kind, ref, before and after of each change; with `!` those that stand out. Complaints and the plan left out. */
function changes(before: string, after: string): string[] {
  return compareBuilds(build(before), build(after))
    .filter(({ kind }) => !/^(?:complaint|order|forecast|hold-moved)/.test(kind))
    .map(
      ({ kind, ref, before: was, after: is, standsOut }) =>
        `${standsOut ? "! " : ""}${kind} ${ref}: ${was ?? "-"} > ${is ?? "-"}`,
    );
}

function changed(from: string, to: string): string[] {
  const after = BUILD.replace(from, to);
  if (after === BUILD) throw new Error(`${from} is not in the build`);
  return changes(BUILD, after);
}

describe("two revisions of a build", () => {
  it("that say the same have no changes, however they are laid out", () => {
    expect(changes(BUILD, BUILD)).toEqual([]);
    const laidOut = BUILD.replace(
      "front.left.disc thickness 9.12, 9.10",
      "front.left.disc.thickness   9.12, 9.10",
    )
      .replace("limit: thickness min 8.4 mm", "limit:   thickness min 8.40 mm  # as the book says")
      .replace("removed: front.left.disc", "removed: left.disc");
    expect(changes(BUILD, laidOut)).toEqual([]);
  });

  it("that have their blocks in another order or in other files have no changes", () => {
    const files = [
      { path: "parts.cotter", document: Document.read(PARTS) },
      { path: "a.cotter", document: Document.read(DIARY) },
      { path: "v.cotter", document: Document.read(HEAD) },
    ];
    const split = readBuild(files, { clock: "2026-06-30" as IsoDate });
    expect(compareBuilds(build(BUILD), split).filter(({ kind }) => kind !== "complaint-gone")).toEqual([]);
  });
});

describe("the diary", () => {
  it("a reading of a recorded day that is another now stands out, with both figures", () => {
    expect(changed("9.12, 9.10 mm", "9.42, 9.40 mm")).toEqual([
      "! reading-altered front.left.disc: thickness 9.12, 9.10 mm with mic25 > thickness 9.42, 9.40 mm with mic25",
    ]);
  });

  it("a reading that is gone stands out, and so does a fact", () => {
    expect(changed("  measured: front.left.disc thickness 9.12, 9.10 mm with mic25\n", "")).toEqual([
      "! reading-removed front.left.disc: thickness 9.12, 9.10 mm with mic25 > -",
    ]);
    expect(changed("  cleaned: front.left.hub\n", "  greased: front.left.hub\n")).toEqual([
      "! fact-removed front.left.hub: cleaned front.left.hub > -",
      "fact-added front.left.hub: - > greased front.left.hub",
    ]);
  });

  it("a decision that is another now stands out, and so do the hours of a day", () => {
    expect(changed("disc reuse", "disc renew")).toContain(
      "! fact-altered front.left.disc: decided front.left.disc reuse > decided front.left.disc renew",
    );
    expect(changed("2026-05-02 2 h", "2026-05-02 5 h")).toEqual(["! fact-altered 2026-05-02: 2 h > 5 h"]);
  });

  it("a day behind the last one is growth, its readings one by one", () => {
    const next = "\nday 2026-05-16\n  measured: front.left.disc runout 0.04 mm\n";
    expect(changes(BUILD, BUILD + next)).toEqual([
      "day-added 2026-05-16: - > 1 fact",
      "reading-added front.left.disc: - > runout 0.04 mm",
    ]);
  });

  it("a day before the last recorded one, and a fact written into an older day, stand out", () => {
    expect(changes(BUILD, `${BUILD}\nday 2026-05-05 1 h\n  cleaned: front.left.hub\n`)).toEqual([
      "! day-inserted 2026-05-05: - > 1 fact, 1 h",
    ]);
    expect(changed("  decided:", "  inspected: front.left.disc by eye\n  decided:")).toEqual([
      "! fact-added front.left.disc: - > inspected front.left.disc by eye",
    ]);
  });

  it("on the last day one may still be writing", () => {
    expect(
      changed("  cleaned: front.left.hub\n", "  cleaned: front.left.hub\n  greased: front.left.hub\n"),
    ).toEqual(["fact-added front.left.hub: - > greased front.left.hub"]);
  });

  it("a day under another date is one change", () => {
    expect(changed("day 2026-05-09", "day 2026-05-10")).toEqual([
      "! day-moved 2026-05-10: 2026-05-09 > 2026-05-10",
    ]);
  });

  it("words of a recorded day that are others now are told of", () => {
    expect(changed("A quiet evening.", "A loud evening.")).toEqual([
      "prose-altered 2026-05-02: A quiet evening. > A loud evening.",
    ]);
  });

  it("a day that is gone stands out with its readings", () => {
    expect(changes(BUILD, HEAD + PARTS + DIARY.slice(DIARY.indexOf("day 2026-05-09")))).toContain(
      "! day-removed 2026-05-02: 3 facts, 2 h > -",
    );
  });
});

describe("what is asked", () => {
  it.each([
    [
      "min 8.4 mm",
      "min 8.0 mm",
      "! limit-loosened front.left.disc: thickness min 8.4 mm > thickness min 8.0 mm",
    ],
    [
      "min 8.4 mm",
      "min 8.7 mm",
      "limit-tightened front.left.disc: thickness min 8.4 mm > thickness min 8.7 mm",
    ],
    [
      "min 8.4 mm",
      "8.4..9.5 mm",
      "limit-tightened front.left.disc: thickness min 8.4 mm > thickness 8.4..9.5 mm",
    ],
    [
      "min 8.4 mm",
      "8.2..9.5 mm",
      "! limit-loosened front.left.disc: thickness min 8.4 mm > thickness 8.2..9.5 mm",
    ],
    [
      "min 8.4 mm",
      "min 0.33 in",
      "! limit-loosened front.left.disc: thickness min 8.4 mm > thickness min 0.33 in",
    ],
    ["  limit: thickness min 8.4 mm\n", "", "! limit-removed front.left.disc: thickness min 8.4 mm > -"],
    [
      "50 N.m ± 10 %",
      "45 N.m ± 10 %",
      "! torque-changed front.left.disc_bolts: 50 N.m ± 10 % > 45 N.m ± 10 %",
    ],
    ["  safety: critical\n", "", "! definition-changed front.left.disc: safety critical > -"],
    ["cast_iron", "steel", "definition-changed front.left.disc: material cast_iron > material steel"],
  ])("%s made %s", (from, to, expected) => {
    expect(changed(from, to)).toEqual([expected]);
  });

  it("the same torque in other words is no change", () => {
    expect(changed("50 N.m ± 10 %", "45..55 N.m")).toEqual([]);
  });

  it("a limit that the diary changes is loosened from that day on", () => {
    const next = "\nday 2026-05-16\n  changed: front.left.disc limit thickness min 8.2 mm\n";
    expect(changes(BUILD, BUILD + next)).toContain(
      "! limit-loosened front.left.disc: thickness min 8.4 mm > thickness min 8.2 mm",
    );
  });
});

describe("things", () => {
  it("a renamed part is renamed, and nothing that was said of it is altered", () => {
    expect(
      changes(
        BUILD,
        BUILD.replaceAll("front.left.disc ", "front.left.rotor ").replaceAll(
          "front.left.disc\n",
          "front.left.rotor\n",
        ),
      ),
    ).toEqual(["renamed front.left.rotor: front.left.disc > front.left.rotor"]);
  });

  it("a renamed branch is told of at each thing whose own block names it, and its facts are not altered", () => {
    expect(changes(BUILD, BUILD.replaceAll("front.", "nose."))).toEqual([
      "renamed nose.left.hub: front.left.hub > nose.left.hub",
      "renamed nose.left.disc: front.left.disc > nose.left.disc",
      "renamed nose.left.disc_bolts: front.left.disc_bolts > nose.left.disc_bolts",
    ]);
  });

  it("come and go, a branch once", () => {
    const more = 'assembly rear "Rear"\n\npart rear.drum "Drum"\n\n';
    expect(changes(BUILD, more + BUILD)).toContain("added rear: - > assembly with 1 below it");
    expect(changes(more + BUILD, BUILD)).toEqual(["removed rear: assembly with 1 below it > -"]);
  });

  it("stand otherwise when the diary goes on", () => {
    const next =
      "\nday 2026-05-16\n  fitted: front.left.disc\n  torqued: front.left.disc_bolts 50 N.m\n  done: brake\n  released: road\n";
    const found = changes(BUILD, BUILD + next);
    expect(found).toContain("state-changed front.left.disc_bolts: open, not secured > torqued, secured");
    expect(found).toContain("state-changed brake: not begun > done on 2026-05-16");
    expect(found).toContain("state-changed road: shut > released on 2026-05-16");
  });

  it("a release that is no longer there is told of as the hold point's state", () => {
    const released = `${BUILD}\nday 2026-05-16\n  fitted: front.left.disc\n  released: road\n`;
    const undone = `${released}\nday 2026-05-17\n  removed: front.left.disc\n`;
    expect(changes(released, undone)).toContain(
      "! state-changed road: released on 2026-05-16 > release lapsed on 2026-05-17",
    );
  });
});

describe("the plan", () => {
  it("the order list, its total and the forecast", () => {
    const kinds = compareBuilds(
      build(BUILD),
      build(BUILD.replace("disc reuse", "disc renew").replace("takes: 6 h", "takes: 60 h")),
    ).map(({ kind, ref, before, after }) => `${kind} ${ref}: ${before ?? "-"} > ${after ?? "-"}`);
    expect(kinds).toContain("order-added front.left.disc: - > 1");
    expect(kinds).toContain("order-total GBP: - > 46.00 GBP");
    expect(kinds.some((line) => line.startsWith("forecast-moved vehicle: 2026-07-04"))).toBe(true);
  });

  it("errors and warnings that are new, and those that are answered", () => {
    const worn = BUILD.replace("9.12, 9.10 mm", "8.12, 8.10 mm");
    const found = (before: string, after: string) =>
      compareBuilds(build(before), build(after)).map(({ kind, ref }) => `${kind} ${ref}`);
    expect(found(BUILD, worn)).toContain("complaint-added under-limit");
    expect(found(worn, BUILD)).toContain("complaint-gone under-limit");
  });
});
