/** What leans on a thing: running, releases, hold points that are planned. */
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import { Leanings } from "../../server/build/leaning.ts";
import type { HoldNeed } from "../../server/build/lowering/definition-record.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

/** What leans on `front.bolts` after its torque; today is 2026-06-01. */
function leansOn(definitions: string, facts: string, need: HoldNeed = "joints"): string | undefined {
  const text = `vehicle "Example"

assembly front "Front"
joint front.bolts "Bolts"
  torque: 24 N.m

${definitions}
day 2026-05-02
  ran: vehicle 1 h 1 km
  torqued: front.bolts 24 N.m
${facts}`;
  const files = [{ path: "log.cotter", document: Document.read(text) }];
  const build = readBuild(files, { clock: "2026-06-01" as IsoDate });
  const bolts = build.standing.gathered.tree.at("front.bolts");
  if (bolts === undefined) throw new Error("the joint was not read");
  const torqued = build.facts.find(({ fact }) => fact.word === "torqued");
  const leaning = new Leanings(build.standing, build.diary.facts).on(bolts, torqued, need);
  return leaning && ("hold" in leaning ? `${leaning.is} ${leaning.hold.name}` : leaning.is);
}

const hold = (planned: string, more = "") => `hold road "On the road"\n  planned: ${planned}\n${more}\n`;

describe("running", () => {
  it("of the thing or of anything above it leans on it, when it comes after", () => {
    expect(leansOn("", "")).toBeUndefined();
    expect(leansOn("", "  ran: vehicle 1 h 1 km\n")).toBe("ran");
    expect(leansOn("", "  ran: front 1 h 1 km\n")).toBe("ran");
    expect(leansOn("", "  ran: front.bolts 1 h 1 km\n")).toBe("ran");
    expect(leansOn('part rear "Rear"', "  ran: rear 1 h 1 km\n")).toBeUndefined();
  });
});

describe("a hold point", () => {
  it("leans when it is planned for the past or the next seven days", () => {
    expect(leansOn(hold("2026-04-01"), "")).toBe("planned road");
    expect(leansOn(hold("2026-06-08"), "")).toBe("planned road");
    expect(leansOn(hold("2026-06-09"), "")).toBeUndefined();
  });

  it("leans only on what it covers and asks for", () => {
    expect(leansOn(hold("2026-06-08", "  covers: front"), "")).toBe("planned road");
    expect(leansOn(`part rear "Rear"\n${hold("2026-06-08", "  covers: rear")}`, "")).toBeUndefined();
    expect(leansOn(hold("2026-06-08", "  needs: parts, tests"), "")).toBeUndefined();
    expect(leansOn(hold("2026-06-08", "  needs: parts, tests"), "", "tests")).toBe("planned road");
  });

  it("leans by its release, whenever it is planned", () => {
    expect(leansOn(hold("2027-06-08"), "  released: road\n")).toBe("released road");
  });
});
