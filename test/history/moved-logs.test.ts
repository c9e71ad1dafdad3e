/** Builds and logs that were not there yet at a revision, or under another name: what git knows, and nothing guessed. */
import path from "node:path";
import { describe, expect, it } from "vitest";
import { BuildRecord } from "../../server/history/build-record.ts";
import { changesReport } from "../../server/history/changes-report.ts";
import { changesTable } from "../../server/history/changes-table.ts";
import type { Comparison } from "../../server/history/compare-revisions.ts";
import { compareRevisions } from "../../server/history/compare-revisions.ts";
import { isGitFault, sayGitFault } from "../../server/history/git-fault.ts";
import { Renames } from "../../server/history/renames.ts";
import { Repository } from "../../server/history/repository.ts";
import type { ScriptedCommit } from "./scripted-repository.ts";
import { scriptedRepository } from "./scripted-repository.ts";
import { openWorking } from "./working-build.ts";

const vehicle = (title: string, parts = "") => `vehicle "${title}"\n  past: known\n\n${parts}`;
const HUB = 'part hub "Hub"\n';

async function answered<T extends object>(answer: Promise<T>) {
  const given = await answer;
  if (isGitFault(given)) throw new Error(sayGitFault(given));
  return given as Exclude<T, { readonly fault: string }>;
}

async function compared(folder: string, from: string, to?: string): Promise<Comparison> {
  return await answered(compareRevisions(await openWorking(folder), from, to));
}

/** What the vehicle's own block says is left out. */
const said = ({ changes }: Comparison) =>
  changes.filter(({ what }) => what !== "vehicle").map(({ kind, ref }) => `${kind} ${ref}`);

describe("a build that was not there yet", () => {
  const commits: readonly ScriptedCommit[] = [
    { day: "2026-05-02", files: { "otter/build.cotter": vehicle("Otter", 'part drum "Drum"\n') } },
    { day: "2026-05-09", files: { "kestrel/build.cotter": vehicle("Kestrel", HUB) } },
    { day: "2026-05-16", files: { "kestrel/build.cotter": null } },
  ];

  it("is new as a whole: another build of that time is not taken for it", async () => {
    const folder = scriptedRepository(commits.slice(0, 2));
    const comparison = await compared(path.join(folder, "kestrel"), "2026-05-02");
    expect(said(comparison)).toEqual(["added hub"]);
    expect(comparison.changes.filter(({ standsOut }) => standsOut)).toEqual([]);
    expect(changesTable(comparison).notes[0]).toMatch(
      /^There was nothing of this build at 2026-05-02 \([0-9a-f]{9}\): all of it is new\.$/,
    );
    const { from, to } = changesReport(comparison);
    expect([from.hasBuild, to.hasBuild]).toEqual([false, true]);
  });

  it("or is there no longer, is gone as a whole", async () => {
    const folder = scriptedRepository(commits.slice(0, 2));
    const working = await openWorking(path.join(folder, "kestrel"));
    const back = await answered(compareRevisions(working, "HEAD", "HEAD~1"));
    expect(said(back)).toEqual(["removed hub"]);
    expect(changesTable(back)).toMatchObject({ title: expect.stringContaining("Kestrel") });
    expect(changesTable(back).notes[0]).toContain("all of it is gone");
    expect(changesTable(back).sections.map(({ heading }) => heading)).toEqual(["Hub (hub)", "The vehicle"]);
    const nowhere = await compareRevisions(working, "HEAD~1", "HEAD~1");
    expect(isGitFault(nowhere) && sayGitFault(nowhere)).toBe(
      "neither at HEAD~1 nor at HEAD~1 was there a build in kestrel",
    );
  });

  it("in the folder of another that was moved away, is new", async () => {
    const [otter, kestrel] = [vehicle("Otter", 'part drum "Drum"\n'), vehicle("Kestrel", HUB)];
    const folder = scriptedRepository([
      { day: "2026-05-02", files: { "old/build.cotter": otter } },
      { day: "2026-05-09", files: { "old/build.cotter": null, "otter/build.cotter": otter } },
      { day: "2026-05-16", files: { "kestrel/build.cotter": kestrel } },
    ]);
    expect(said(await compared(path.join(folder, "otter"), "HEAD~2"))).toEqual([]);
    expect(said(await compared(path.join(folder, "kestrel"), "HEAD~2"))).toEqual(["added hub"]);
  });
});

describe("a log under another name", () => {
  const days = (count: number) =>
    Array.from({ length: count }, (_, index) => `day 2026-05-0${index + 1}\n  cleaned: hub\n\n`).join("");
  const folder = scriptedRepository([
    { day: "2026-05-01", files: { "a/build.cotter": vehicle("Kestrel", HUB), "a/log.cotter": days(1) } },
    {
      day: "2026-05-02",
      files: { "other/build.cotter": vehicle("Otter"), "other/log.cotter": "day 2026-05-02\n  Another.\n" },
    },
    { day: "2026-05-03", files: { "a/log.cotter": null, "a/diary.cotter": days(1) } },
    { day: "2026-05-07", files: { "a/diary.cotter": days(7) } },
    {
      day: "2026-05-08",
      files: {
        "a/diary.cotter": null,
        "a/build.cotter": null,
        "b/2026.cotter": days(7),
        "b/build.cotter": vehicle("Kestrel", HUB),
      },
    },
    { day: "2026-05-09", files: { "b/2026.cotter": days(9) } },
  ]);
  const build = path.join(folder, "b");

  it("is followed commit by commit, forwards and back, to another folder too", async () => {
    const repository = await answered(Repository.around(build));
    const [first, last] = await Promise.all(
      ["HEAD~5", "HEAD"].map((revision) => answered(repository.commit(revision))),
    );
    if (first === undefined || last === undefined) throw new Error("both are there");
    const renames = await answered(Renames.between(repository, first, last));
    expect(renames.atFirst("b/2026.cotter")).toBe("a/log.cotter");
    expect(renames.atSecond("a/log.cotter")).toBe("b/2026.cotter");
    expect(renames.atFirst("other/log.cotter")).toBe("other/log.cotter");
    const turned = await answered(Renames.between(repository, last, first));
    expect(turned.atSecond("b/2026.cotter")).toBe("a/log.cotter");
  });

  it("is compared with what it was, in the folder where the build was then", async () => {
    const comparison = await compared(build, "HEAD~3");
    expect(said(comparison)).toEqual([2, 3, 4, 5, 6, 7, 8, 9].map((day) => `day-added 2026-05-0${day}`));
    expect([comparison.from.prefix, comparison.to.prefix]).toEqual(["a/", "b/"]);
    expect(comparison.renames.atFirst("b/2026.cotter")).toBe("a/diary.cotter");
  });

  it("is read as it was under the name it had then, and never for that of another build", async () => {
    const record = new BuildRecord(build);
    expect(await record.text("HEAD~5", "a/log.cotter")).toBe(days(1));
    expect(await record.text("HEAD~5", "b/2026.cotter")).toBe("");
    expect(await record.text("HEAD", "log.cotter")).toBe("");
    expect(await record.text("HEAD", "b/../b/2026.cotter")).toBe("");
  });
});
