/** Several builds in one repository: each has a record of its own, wherever its folder stands and once stood. */
import path from "node:path";
import { describe, expect, it } from "vitest";
import { BuildRecord } from "../../server/history/build-record.ts";
import type { Comparison } from "../../server/history/compare-revisions.ts";
import { compareRevisions } from "../../server/history/compare-revisions.ts";
import { isGitFault, sayGitFault } from "../../server/history/git-fault.ts";
import { historyOfThing } from "../../server/history/history-of-thing.ts";
import { historyReport } from "../../server/history/history-report.ts";
import { scriptedRepository } from "./scripted-repository.ts";
import { openWorking } from "./working-build.ts";

const vehicle = (title: string) => `vehicle "${title}"\n  past: known\n\npart hub "Hub"\n`;
const reading = (day: string, bore: string) => `day ${day}\n  measured: hub bore ${bore}\n`;

/** `2026-05-02 written measured bore 25.02 mm` */
async function historyIn(folder: string, ref: string) {
  const found = await historyOfThing(await openWorking(folder), ref);
  if (!("entries" in found)) throw new Error(JSON.stringify(found));
  const { commits, entries } = historyReport(found);
  const lines = entries.map(({ written, kind, word, before, after }) =>
    [written, kind, word, after ?? before].join(" "),
  );
  return { commits, lines };
}

async function compared(folder: string, from: string, to?: string): Promise<Comparison> {
  const comparison = await compareRevisions(await openWorking(folder), from, to);
  if (isGitFault(comparison)) throw new Error(sayGitFault(comparison));
  return comparison;
}

const said = ({ changes }: Comparison) => changes.map(({ kind, ref }) => `${kind} ${ref}`);

describe("a build in a folder of another", () => {
  const folder = scriptedRepository([
    {
      day: "2026-05-02",
      files: { "build.cotter": vehicle("Kestrel"), "donor/build.cotter": vehicle("Otter") },
    },
    { day: "2026-05-03", files: { "diary.cotter": reading("2026-05-03", "25.02 mm") } },
    { day: "2026-05-04", files: { "donor/log/diary.cotter": reading("2026-05-04", "31.00 mm") } },
    { day: "2026-05-05", files: { "donor/log/diary.cotter": reading("2026-05-04", "31.50 mm") } },
  ]);

  it("is no part of the other's history", async () => {
    expect(await historyIn(folder, "hub")).toEqual({
      commits: 2,
      lines: ['2026-05-02 written part hub "Hub"', "2026-05-03 written measured bore 25.02 mm"],
    });
  });

  it("has a history of its own", async () => {
    expect(await historyIn(path.join(folder, "donor"), "hub")).toEqual({
      commits: 3,
      lines: [
        '2026-05-02 written part hub "Hub"',
        "2026-05-04 written measured bore 31.00 mm",
        "2026-05-05 altered measured bore 31.50 mm",
      ],
    });
  });

  it("is no part of what changed in the other", async () => {
    expect(said(await compared(folder, "HEAD~2"))).toEqual([]);
    expect(said(await compared(path.join(folder, "donor"), "HEAD~1"))).toEqual(["reading-altered hub"]);
  });

  it("is no part of the commits that the other can be compared with", async () => {
    const commits = await new BuildRecord(folder).commits();
    if (isGitFault(commits)) throw new Error(sayGitFault(commits));
    expect(commits.map(({ day }) => day)).toEqual(["2026-05-03", "2026-05-02"]);
  });
});

describe("a folder that becomes a build of its own", () => {
  it("leaves the build around it with that commit, and not before", async () => {
    const folder = scriptedRepository([
      { day: "2026-05-02", files: { "build.cotter": vehicle("Kestrel") } },
      { day: "2026-05-03", files: { "engine/diary.cotter": reading("2026-05-03", "25.02 mm") } },
      { day: "2026-05-04", files: { "engine/build.cotter": vehicle("Engine on its stand") } },
    ]);
    expect((await historyIn(folder, "hub")).lines).toEqual([
      '2026-05-02 written part hub "Hub"',
      "2026-05-03 written measured bore 25.02 mm",
      "2026-05-04 taken out measured bore 25.02 mm",
    ]);
    expect((await historyIn(path.join(folder, "engine"), "hub")).lines).toEqual([
      "2026-05-03 written measured bore 25.02 mm",
      '2026-05-04 written part hub "Hub"',
    ]);
  });
});

describe("builds that were moved together", () => {
  it("keep each its own record", async () => {
    const [kestrel, otter] = [vehicle("Kestrel"), vehicle("Otter")];
    const [own, other] = [reading("2026-05-02", "25.02 mm"), reading("2026-05-02", "31.00 mm")];
    const folder = scriptedRepository([
      {
        day: "2026-05-02",
        files: {
          "old/build.cotter": kestrel,
          "old/diary.cotter": own,
          "old/donor/build.cotter": otter,
          "old/donor/diary.cotter": other,
        },
      },
      {
        day: "2026-05-09",
        files: {
          "old/build.cotter": null,
          "old/diary.cotter": null,
          "old/donor/build.cotter": null,
          "old/donor/diary.cotter": null,
          "shed/build.cotter": kestrel,
          "shed/diary.cotter": own,
          "shed/donor/build.cotter": otter,
          "shed/donor/diary.cotter": other,
        },
      },
    ]);
    const [outer, inner] = [path.join(folder, "shed"), path.join(folder, "shed", "donor")];
    expect((await historyIn(outer, "hub")).lines).toEqual([
      '2026-05-02 written part hub "Hub"',
      "2026-05-02 written measured bore 25.02 mm",
    ]);
    expect((await historyIn(inner, "hub")).lines).toEqual([
      '2026-05-02 written part hub "Hub"',
      "2026-05-02 written measured bore 31.00 mm",
    ]);
    expect(said(await compared(outer, "HEAD~1"))).toEqual([]);
    expect(said(await compared(inner, "HEAD~1"))).toEqual([]);
  });
});
