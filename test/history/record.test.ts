/** One thing through the commits of a real repository. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { isGitFault } from "../../server/history/git-fault.ts";
import type { ThingHistory } from "../../server/history/history-of-thing.ts";
import { historyOfThing } from "../../server/history/history-of-thing.ts";
import { historyReport } from "../../server/history/history-report.ts";
import { historyTable } from "../../server/history/history-table.ts";
import { renderText } from "../../server/reports/render-text.ts";
import { git, scriptedRepository } from "./scripted-repository.ts";
import { ALTERED, dayOf, LOOSENED, MERGED, MOVED, RENAMED, thirtyCommits } from "./thirty-commits.ts";
import { openWorking } from "./working-build.ts";

let folder = "";
beforeAll(() => {
  folder = scriptedRepository(thirtyCommits());
});

async function historyIn(where: string, ref: string): Promise<ThingHistory> {
  const found = await historyOfThing(await openWorking(where), ref);
  if ("is" in found || isGitFault(found)) throw new Error(JSON.stringify(found));
  return found;
}

/** `2026-05-08 JR altered 2026-05-02 measured …` */
function lines(history: ThingHistory): string[] {
  return historyReport(history).entries.map(({ written, author, kind, day, word, before, after }) =>
    [written, author, kind, day, word, before ?? "", after === null ? "" : `> ${after}`]
      .filter((text) => text !== "" && text !== null)
      .join(" ")
      .trimEnd(),
  );
}

describe("thirty commits", () => {
  it("are thirty, and one of them is a merge", () => {
    expect(git(folder, ["rev-list", "--count", "main"]).trim()).toBe("30");
    expect(git(folder, ["rev-list", "--min-parents=2", "--format=%s", "main"])).toContain("Both");
  });

  it("tell of a part all that was said of it, by whom and when, under the name it had before too", async () => {
    const history = await historyIn(folder, "front.left.disc");
    expect(lines(history)).toEqual([
      `${dayOf(1)} JR written part > front.left.rotor "Brake disc"`,
      `${dayOf(1)} JR written material > cast_iron`,
      `${dayOf(1)} JR written limit > thickness min 8.7 mm`,
      `${dayOf(2)} JR written 2026-05-02 measured > thickness 9.12 mm with mic25`,
      `${dayOf(ALTERED)} JR altered 2026-05-02 measured thickness 9.12 mm with mic25 > thickness 9.42 mm with mic25`,
      `${dayOf(LOOSENED)} JR altered limit thickness min 8.7 mm > thickness min 8.4 mm`,
      `${dayOf(RENAMED)} JR altered part front.left.rotor "Brake disc" > front.left.disc "Brake disc"`,
      `${dayOf(29)} JR written 2026-05-29 removed >`,
      `${dayOf(30)} JR written 2026-05-30 decided > renew`,
    ]);
    expect(history.earlierNames).toEqual(["front.left.rotor"]);
  });

  it("mark what was altered after the day that it tells of", async () => {
    const altered = historyReport(await historyIn(folder, "front.left.disc.thickness")).entries.filter(
      ({ daysLater }) => daysLater !== null,
    );
    expect(altered).toMatchObject([{ kind: "altered", day: "2026-05-02", daysLater: ALTERED - 2 }]);
  });

  it("say nothing of a file that was only moved", async () => {
    const { entries } = historyReport(await historyIn(folder, "front.left.hub"));
    const moved = entries.filter(({ written }) => written === dayOf(MOVED));
    expect(moved).toMatchObject([{ day: dayOf(MOVED), file: "log/diary.cotter", after: "" }]);
  });

  it("give what came by a merge to the commit on the branch, once", async () => {
    const { entries } = historyReport(await historyIn(folder, "rear.drum.bore"));
    expect(entries.filter(({ word }) => word === "measured").map(({ author, day }) => [author, day])).toEqual(
      [21, 22, 23, 24].map((number) => ["KT", dayOf(number)]),
    );
    const hub = historyReport(await historyIn(folder, "front.left.hub")).entries;
    expect(hub.filter(({ written }) => written === dayOf(MERGED))).toEqual([]);
  });

  it("are printed with what was altered after the fact in words", async () => {
    const text = renderText(historyTable(await historyIn(folder, "front.left.disc")), { colour: false });
    expect(text).toContain("altered 6 days later");
    expect(text).toContain("was measured thickness 9.12 mm with mic25");
    expect(text).toContain("Called front.left.rotor before.");
  });

  it("tell of the vehicle what its own block says, and of a bare fact no more than its word", async () => {
    expect(lines(await historyIn(folder, "vehicle")).slice(0, 2)).toEqual([
      `${dayOf(1)} JR written vehicle > "Marsh Kestrel"`,
      `${dayOf(1)} JR written past > known`,
    ]);
    const [section] = historyTable(await historyIn(folder, "front.left.hub")).sections;
    expect(section?.rows[1]?.cells.says).toEqual({ text: "cleaned" });
  });

  it("find a thing that the build has no longer", async () => {
    const history = historyReport(await historyIn(folder, "front.left.rotor"));
    expect(history.what).toBeNull();
    expect(history.entries.at(0)).toMatchObject({ word: "part", kind: "written" });
  });

  it("do not guess between two things of one tail, and know what no commit ever knew", async () => {
    const working = await openWorking(folder);
    expect(await historyOfThing(working, "no path at all")).toMatchObject({ is: "unreadable" });
    expect(await historyOfThing(working, "nowhere.nothing")).toMatchObject({ entries: [] });
  });
});

describe("what is on disk and not committed", () => {
  it("is told of last, as not committed", async () => {
    const own = scriptedRepository(thirtyCommits().slice(0, 3));
    const file = path.join(own, "diary.cotter");
    writeFileSync(file, git(own, ["show", "HEAD:diary.cotter"]).replace("9.12 mm", "9.21 mm"));
    const { entries } = historyReport(await historyIn(own, "front.left.rotor"));
    expect(entries.at(-1)).toMatchObject({
      kind: "altered",
      commit: null,
      before: "thickness 9.12 mm with mic25",
      after: "thickness 9.21 mm with mic25",
    });
  });
});

describe("a merge that itself alters something", () => {
  it("is told of as the one who did", async () => {
    const [vehicle, before] = [
      'vehicle "Kestrel"\npart hub "Hub"\n',
      "day 2026-05-02\n  measured: hub bore 25.02 mm\n",
    ];
    const own = scriptedRepository([
      { day: "2026-05-02", files: { "build.cotter": vehicle, "diary.cotter": before } },
      {
        day: "2026-05-03",
        author: "KT",
        branch: "shed",
        files: { "shed.cotter": "day 2026-05-03\n  cleaned: hub\n" },
      },
      { day: "2026-05-04", files: { "home.cotter": "day 2026-05-04\n  greased: hub\n" }, from: 1 },
      {
        day: "2026-05-05",
        files: {
          "diary.cotter": before.replace("25.02", "25.04"),
          "shed.cotter": "day 2026-05-03\n  cleaned: hub\n",
        },
        merges: 2,
      },
    ]);
    expect(lines(await historyIn(own, "hub"))).toEqual([
      '2026-05-02 JR written part > hub "Hub"',
      "2026-05-02 JR written 2026-05-02 measured > bore 25.02 mm",
      "2026-05-03 KT written 2026-05-03 cleaned >",
      "2026-05-04 JR written 2026-05-04 greased >",
      "2026-05-05 JR altered 2026-05-02 measured bore 25.02 mm > bore 25.04 mm",
    ]);
  });
});
