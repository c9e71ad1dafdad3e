import { expect, test } from "vitest";
import { planOf } from "../../server/plan/plan.ts";
import { timelineTable } from "../../server/reports/timeline.ts";
import { readLogs } from "./sample-builds.ts";

/** Hours and float of each job of a plan, the shorter of two beside the longer. */
function hoursOf(...jobs: readonly string[]): string[] {
  const text = jobs.map((takes, index) => `job job${index} "${takes}"\n  takes: ${takes}\n`).join("\n");
  const build = readLogs({ "build.cotter": `vehicle "Kestrel"\n  week: sat 8 h\n\n${text}` });
  const [section] = timelineTable(build, planOf(build)).sections;
  return (section?.rows ?? [])
    .map(({ cells: { what, hours, float } }) => `${what}: ${hours}, float ${float}`)
    .sort();
}

test("hours keep the noughts that count and leave out those that do not", () => {
  expect(hoursOf("100 h", "2.50 h")).toEqual(["100 h: 100, float 0", "2.50 h: 2.5, float 97.5"]);
  expect(hoursOf("120 h", "20 h", "3.0 h")).toEqual([
    "120 h: 120, float 0",
    "20 h: 20, float 100",
    "3.0 h: 3, float 117",
  ]);
});
