import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import type { CalledBuild } from "../../server/command-line/command.ts";
import { Failure } from "../../server/command-line/command.ts";
import { identify } from "../../server/command-line/commands/identify.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { cotter, folderWith } from "./program.ts";

const LOG = `vehicle "Marsh Kestrel"
  past: known
  today: 2026-05-04

donor saloon_shaft "Saloon, driveshaft"
  size: cap 27.0 mm
  size: length 412 mm

part front.left.bearing "Left wheel bearing"
part front.right.bearing "Right wheel bearing"
part shaft "Driveshaft"
  size: cap 27 mm
  size: length 412 mm

day 2026-05-02
  measured: front.left.bearing bore 20.00 mm
  measured: front.left.bearing outside 46.98 mm
  measured: front.left.bearing width 14.00 mm
`;

interface Candidate {
  readonly name: string;
  readonly family: string;
  readonly fact: string | null;
}

/** What the command writes, called without a process of its own. */
async function written(words: readonly string[], log?: string): Promise<string> {
  const options = new Map(
    words.filter((word) => word.startsWith("--")).map((word) => [word.slice(2), true as const]),
  );
  const lines: string[] = [];
  const build = (): Promise<CalledBuild> => {
    const file = { path: "build.cotter", document: Document.read(log ?? "") };
    return Promise.resolve({
      folder: "/",
      build: readBuild([file], { clock: "2026-05-04" as IsoDate }),
    });
  };
  const status = await identify.run({
    operands: words.filter((word) => !word.startsWith("--")),
    options,
    folder: "/",
    out: {
      write: (text) => void lines.push(text),
      complain: (text) => void lines.push(text),
      colour: false,
      width: 100,
    },
    today: "2026-05-04" as IsoDate,
    openBuild: build,
    openFiles: () => Promise.reject(new Error("identify reads a build")),
    findBuild: () => (log === undefined ? Promise.resolve(undefined) : build()),
  });
  if (status !== 0) throw new Error(`the command ended with status ${status}`);
  return lines.join("");
}

async function identified(words: readonly string[], log?: string) {
  return JSON.parse(await written([...words, "--json"], log));
}

describe("cotter identify", () => {
  it("needs no build for what was measured on the spot", async () => {
    const report = await identified(["major=9.47mm", "pitch=1.06mm"]);
    expect(report.schema).toBe("cotter/identify/1");
    expect(report.candidates.map(({ name }: Candidate) => name)).toEqual(["3/8-24 UNF"]);
    expect(report.nearest.map(({ name }: Candidate) => name)).toEqual(["M10x1"]);
    expect(report.candidates[0].dimensions[0]).toMatchObject({
      name: "major",
      measured: { value: 9.47, unit: "mm", text: "9.47 mm" },
      expected: { value: 9.525, unit: "mm", text: "9.525 mm" },
      off: { value: -0.055, unit: "mm", text: "-0.055 mm" },
      within: true,
    });
    expect(report.tellApart[0].text).toBe(
      "3/8-24 UNF and M10x1 differ in major by 0.475 mm and in pitch by 0.0583 mm: measure the pitch over ten threads (10.58 mm against 10 mm)",
    );
  });

  it("asks about a part of the build, by the tail of its path, with what the log knows of it", async () => {
    const report = await identified(["left.bearing"], LOG);
    expect(report.query.ref).toBe("front.left.bearing");
    expect(
      report.query.dimensions.map(({ name, line }: { name: string; line: number }) => [name, line]),
    ).toEqual([
      ["bore", 16],
      ["outside", 17],
      ["width", 18],
    ]);
    expect(report.candidates[0]).toMatchObject({
      name: "6204",
      fact: 'identified: front.left.bearing as "6204"',
    });
  });

  it("takes more dimensions of a part than the log has, and another figure in place of one that it has", async () => {
    const report = await identified(["left.bearing", "width=18mm"], LOG);
    expect(report.candidates.map(({ name }: Candidate) => name)).toEqual(["2204"]);
  });

  it("knows the donors of the build around, by the names of their sizes", async () => {
    const report = await identified(["cap=27mm", "length=412mm"], LOG);
    expect(report.candidates.map(({ name, family }: Candidate) => [name, family])).toEqual([
      ["Saloon, driveshaft", "donor"],
    ]);
  });

  it("says in a table what fits, how far off it is and what to measure next", async () => {
    const out = await written(["bore=20mm", "outside=46.9mm"]);
    expect(out).toContain("0.1 mm under 47 mm: worn");
    expect(out).toContain("Measure the width: 14 mm is 6204");
    expect(out).toContain("manual come first");
  });

  it("says that nothing fits, with the nearest and how far off they are", async () => {
    const out = await written(["bore=20mm", "outside=47mm", "width=17mm"]);
    expect(out).toContain("Nothing in the tables or among the donors fits all of this.");
    expect(out).toMatch(/2204 .* 1 mm under 18 mm/);
  });

  it("warns of a spark plug's reach", async () => {
    const out = await written(["major=13.9mm", "pitch=1.25mm", "reach=19mm"]);
    expect(out).toMatch(/can meet the\s+piston/);
  });

  it("prints in the forms that people print", async () => {
    const words = ["bore=20mm", "outside=47mm", "width=14mm"];
    expect(await written([...words, "--csv"])).toContain(
      "Fits,6204,rolling bearing,1.00,20 mm exactly,47 mm exactly,14 mm exactly,ISO 15",
    );
    expect(await written([...words, "--markdown"])).toContain("| 6204 | rolling bearing |");
    expect(await written([...words, "--html"])).toContain("<td>6204</td>");
  });

  it("lists the dimensions of each kind of part with --names", async () => {
    const out = await written(["--names"]);
    expect(out).toContain("Rolling bearing");
    expect(out).toContain("threads_per_inch");
  });

  it.each([
    [[], "say what was measured, such as cotter identify major=9.47mm pitch=1.06mm"],
    [["major", "9.47mm"], "9.47mm has no name: write one such as major=9.47mm"],
    [["majr=9mm"], "no kind of part is known by a dimension majr: did you mean major?"],
    [["major=9.47"], "major is a length, and 9.47 is a bare number: write a unit such as mm, in or thou"],
    [["major=9,47mm"], "major: 9,47 is no number; did you mean 9.47?"],
    [["major=9.47mmm"], "major: there is no unit mmm; did you mean mm"],
    [["major=about 9 mm"], "major: about 9 mm is no figure with a unit such as 9.47mm, 3/8in or 0.373in"],
    [["major="], "major has no value: write one such as major=9.47mm"],
    [["=9mm"], "=9mm names no dimension"],
    [["major=-5mm"], "major=-5mm: major is a size, so it is more than nothing"],
    [["major=9mm", "major=9.1mm"], "major is given twice"],
    [["tpi=24mm"], "tpi is a number of threads per inch, not a length"],
    [["area=3mm", "diameter=2mm"], "area is an area, and 3 mm is a length: write a unit such as mm2"],
    [["major=9mm ± 1 deg"], "major: ± 1 deg is no uncertainty of 9 mm"],
    [["left.bering"], "there is no part left.bering; did you mean left.bearing"],
    [["bearing"], "bearing can be front.left.bearing or front.right.bearing: name one of them in full"],
    [["front.left"], "front.left is no part"],
    [["right.bearing"], "front.right.bearing has neither a size: nor a measurement"],
    [["left.bearing", "shaft"], "one part at a time: left.bearing or shaft"],
  ])("refuses %j: %s", async (words, message) => {
    await expect(written(words, LOG)).rejects.toThrow(Failure);
    await expect(written(words, LOG)).rejects.toThrow(message);
  });

  it("ends with status 0 where it has an answer, with 2 and a failure where it cannot ask", async () => {
    const folder = folderWith({ "build.cotter": LOG });
    const answer = await cotter(["identify", "left.bearing", "--json"], folder);
    expect([answer.status, JSON.parse(answer.out).candidates[0].name]).toEqual([0, "6204"]);
    const failure = await cotter(["identify", "majr=9mm", "--json"], folder);
    expect([failure.status, JSON.parse(failure.out).schema]).toEqual([2, "cotter/failure/1"]);
  });
});
