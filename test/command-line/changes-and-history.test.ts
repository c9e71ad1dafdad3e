/** `cotter changes` and `cotter history` as a user runs them, in the record of thirty commits. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { git, scriptedRepository } from "../history/scripted-repository.ts";
import { thirtyCommits } from "../history/thirty-commits.ts";
import { cotter, folderWith } from "./program.ts";

let folder = "";
beforeAll(() => {
  folder = scriptedRepository(thirtyCommits());
});

interface Reported {
  readonly kind: string;
  readonly ref: string;
  readonly before: string | null;
  readonly after: string | null;
  readonly standsOut: boolean;
}

describe("cotter changes", () => {
  it("finds and names the altered reading, the loosened limit, the renamed part and both branches' days", async () => {
    const { status, out, err } = await cotter(["changes", "HEAD~24", "HEAD", "--json"], folder);
    expect([status, err]).toEqual([0, ""]);
    const report = JSON.parse(out) as { changes: Reported[]; from: { date: string } };
    expect(report.from.date).toBe("2026-05-02");
    const said = (kind: string) =>
      report.changes
        .filter((change) => change.kind === kind)
        .map(({ ref, before, after }) => `${ref}: ${before ?? "-"} > ${after ?? "-"}`);
    expect(said("reading-altered")).toEqual([
      "front.left.disc: thickness 9.12 mm with mic25 > thickness 9.42 mm with mic25",
    ]);
    expect(said("limit-loosened")).toEqual(["front.left.disc: thickness min 8.7 mm > thickness min 8.4 mm"]);
    expect(said("renamed")).toEqual(["front.left.disc: front.left.rotor > front.left.disc"]);
    expect(said("day-added").filter((day) => /2026-05-2[1-7]/.test(day))).toHaveLength(7);
    expect(said("day-inserted")).toEqual([]);
    expect(report.changes.filter(({ standsOut }) => standsOut)).toHaveLength(2);
  });

  it("says what stands out first, and compares with what is on disk", async () => {
    const own = scriptedRepository(thirtyCommits().slice(0, 3));
    const file = path.join(own, "diary.cotter");
    writeFileSync(file, git(own, ["show", "HEAD:diary.cotter"]).replace("9.12 mm", "9.21 mm"));
    const { status, out } = await cotter(["changes"], own);
    expect(status).toBe(0);
    expect((await cotter(["changes", "HEAD"], own)).out).toBe(out);
    const [title, , heading] = out.split("\n");
    expect(title).toMatch(
      /^What changed in Marsh Kestrel from HEAD \([0-9a-f]{9}\) of 2026-05-03 to what is on disk$/,
    );
    expect(heading).toBe("Look at these first");
    expect(out).toContain("reading of 2026-05-02");
    expect(out).toContain("front.left.rotor, reading altered after the fact: diary.cotter:4");
    const markdown = await cotter(["changes", "HEAD", "--markdown"], own);
    expect(markdown.out).toContain(
      "| Brake disc \\(front.left.rotor\\) | reading of 2026-05-02 altered after the fact |",
    );
  });

  it("says of a day which commit that was, and of a record whether it came or went", async () => {
    const own = scriptedRepository(thirtyCommits().slice(0, 3));
    const file = path.join(own, "build.cotter");
    writeFileSync(
      file,
      git(own, ["show", "HEAD:build.cotter"]).replace("  material: cast_iron\n", "  safety: critical\n"),
    );
    const of = async (day: string) => (await cotter(["changes", day], own)).out;
    expect(await of("2026-05-03")).toMatch(/from 2026-05-03 \([0-9a-f]{9}\) to what is on disk/);
    const out = await of("2026-05-20");
    expect(out).toMatch(/from 2026-05-20 \([0-9a-f]{9} of 2026-05-03, the last by then\) to/);
    expect(out).toMatch(/taken out of its[\s\S]+material cast_iron/);
    expect(out).toMatch(/added to its[\s\S]+safety critical/);
  });

  it.each([
    [["--", "-p"], "begins like an option"],
    [["HEAD", "HEAD~1", "HEAD~2"], "two revisions at most"],
    [["no-such-branch"], "git knows no revision no-such-branch"],
  ])("%j ends with 2 and a clear word", async (words, message) => {
    const { status, out, err } = await cotter(["changes", ...words], folder);
    expect([status, out]).toEqual([2, ""]);
    expect(err).toContain(message);
  });

  it("outside of a repository says what to do", async () => {
    const outside = folderWith({ "build.cotter": 'vehicle "Marsh Kestrel"\n' });
    const { status, out } = await cotter(["changes", "HEAD", "--json"], outside);
    expect(status).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ schema: "cotter/failure/1" });
    expect(JSON.parse(out).message).toContain("cotter start --git");
  });
});

describe("cotter history", () => {
  it("prints who wrote what of which day, and what was altered", async () => {
    const { status, out } = await cotter(["history", "left.disc.thickness"], folder);
    expect(status).toBe(0);
    expect(out).toContain("What the log said of Brake disc (front.left.disc.thickness), as it was written");
    expect(out).toMatch(/2026-05-08 +JR +[0-9a-f]{9} +2026-05-02 +measured thickness 9\.42 mm/);
    expect(out).toContain("altered 6 days later");
    expect(out).toMatch(/ measured of 2026-05-02: diary\.cotter:4 at [0-9a-f]{9}\n/);
    expect(out).toContain("1 was changed after the day it tells of.");
  });

  it("says where that stands which was taken out: in the commit before", async () => {
    const own = scriptedRepository(thirtyCommits().slice(0, 3));
    writeFileSync(path.join(own, "diary.cotter"), "day 2026-05-02 1 h\n");
    const { out } = await cotter(["history", "front.left.rotor.thickness"], own);
    expect(out).toContain("taken out");
    expect(out).toContain("measured of 2026-05-02: diary.cotter:4\n");
  });

  it.each([
    [[], "name a part, a joint"],
    [["gearbox"], "defines no gearbox, and no commit ever did"],
    [["front"], "says nothing of front itself: name a part or joint below it"],
    [["no path"], "is no path such as"],
    [["front", "rear"], "name one thing"],
  ])("%j ends with 2 and a clear word", async (words, message) => {
    const { status, err } = await cotter(["history", ...words], folder);
    expect(status).toBe(2);
    expect(err).toContain(message);
  });
});
