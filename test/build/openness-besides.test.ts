import { describe, expect, it } from "vitest";
import { buildOf } from "./marked-build.ts";
import { openFor } from "./open-items.ts";

describe("snags", () => {
  const holds = `
hold early "Early"
  needs: snags
hold middle "Middle"
  needs: snags
  after: early
hold late "Late"
  needs: snags
  after: middle
part seat "Seat"
part belt "Belt"
  safety: critical
`;
  const namesOf = (text: string, hold: string) => openFor(buildOf(holds + text), hold);

  it("stay open until they are cleared", () => {
    expect(namesOf("day 2026-05-02\n  snag: torn on seat\n", "early")).toEqual([
      "snag-open seat: snag torn is not cleared",
    ]);
    expect(namesOf("day 2026-05-02\n  snag: torn on seat\n  cleared: torn\n", "early")).toEqual([]);
  });

  it("are conceded past the hold points before the one that is named, and no further", () => {
    const conceded =
      'day 2026-05-02\n  snag: torn on seat\n  conceded: torn until late by "KT" "only the cover"\n';
    expect(namesOf(conceded, "early")).toEqual([]);
    expect(namesOf(conceded, "middle")).toEqual(["hold-shut early: it is not released"]);
    expect(namesOf(conceded, "late")).toContain("snag-open seat: snag torn is not cleared");
  });

  it("are never conceded of what can hurt", () => {
    const conceded =
      'day 2026-05-02\n  snag: frayed on belt\n  conceded: frayed until late by "KT" "looks fine"\n';
    expect(namesOf(conceded, "early")).toEqual(["snag-open belt: snag frayed is not cleared"]);
  });

  it("hold up what they are on, and the branches of it", () => {
    const build = buildOf(`
hold wheel_ok "Wheel"
  covers: front.left
  needs: snags
hold seat_ok "Seat"
  covers: seat
  needs: snags
part front.left.wheel "Wheel"
part seat "Seat"

day 2026-05-02
  snag: knock on front
`);
    expect(openFor(build, "wheel_ok")).toEqual(["snag-open front: snag knock is not cleared"]);
    expect(openFor(build, "seat_ok")).toEqual([]);
  });
});

describe("jobs and hold points before", () => {
  it("keep it open until they are done and released", () => {
    const log = (facts: string) => `
hold first "First"
  needs: snags
hold second "Second"
  needs: snags
  after: first, align
job align "Align"

day 2026-05-02
${facts}`;
    const open = (facts: string) => openFor(buildOf(log(facts)), "second");
    expect(open("")).toEqual([
      "hold-shut first: it is not released",
      "job-not-done align: the job is not begun",
    ]);
    expect(open("  released: first\n  started: align\n")).toEqual([
      "job-not-done align: the job is not finished",
    ]);
    expect(open("  released: first\n  done: align\n")).toEqual([]);
  });

  it("asking for jobs waits for those on what it covers, not for those that come after it or are stopped", () => {
    const build = buildOf(`
hold ready "Ready"
  covers: front
  needs: jobs
  stops: drive
part front.hub "Hub"
part seat "Seat"
job hubs "Hubs"
  on: front
job trim "Trim"
  on: seat
job drive "Drive"
  on: vehicle
job wash "Wash"
  on: front
  after: drive
job polish "Polish"
  on: front
  after: ready
`);
    expect(openFor(build, "ready")).toEqual(["job-not-done hubs: the job is not begun"]);
  });
});

describe("lines that could not be read", () => {
  const log = `
hold front_ok "Front"
  covers: front
  needs: parts
hold all_ok "All"
  needs: parts
part front.hub "Hub"
part seat "Seat"
`;
  const open = (facts: string, hold: string) => openFor(buildOf(`${log}\nday 2026-05-02\n${facts}`), hold);

  it.each([
    ["  remvoed: front.hub\n", true, true],
    ["  remvoed: seat\n", false, true],
    ["  remvoed: front.{hub}, seat\n", true, true],
    ["  remvoed: something\n", true, true],
    ["  removed: frnt.hub\n", true, true],
    ["  measured: seat height 12 nmm\n", false, true],
    ["  removed: seat\n  fitted: seat\n", false, false],
  ])("%j are open for the front: %s, for all: %s", (facts, front, all) => {
    const concerns = (hold: string) => open(facts, hold).some((item) => item.startsWith("line-unread"));
    expect([concerns("front_ok"), concerns("all_ok")]).toEqual([front, all]);
  });

  it("in a block concern what the block defines", () => {
    const build = buildOf(`${log}  torque 24 N.m\n  limt: height max 3 mm\n`);
    expect(openFor(build, "front_ok")).toEqual([]);
    expect(openFor(build, "all_ok")).toEqual([
      "line-unread this line could not be read: limt: height max 3 mm",
    ]);
  });

  it("below its release do not count for it", () => {
    const build = buildOf(`${log}
day 2026-05-02
  released: front_ok
  remvoed: something
`);
    expect(build.findings.map(({ code }) => code)).not.toContain("released-with-open-items");
  });
});

describe("what is covered", () => {
  it("takes in the joints and systems that hold a covered part, wherever they are named", () => {
    const build = buildOf(`
hold caliper_ok "Caliper"
  covers: caliper
part caliper "Caliper"
part upright "Upright"
joint bolts "Caliper to upright"
  joins: caliper, upright
  torque: 50 N.m
system brakes "Brakes"
  parts: caliper
joint other "Upright to itself"
  joins: upright
  torque: 50 N.m

day 2026-05-02
  loosened: bolts, other
`);
    expect(openFor(build, "caliper_ok").map((item) => item.split(":")[0])).toEqual([
      "joint-unsecured bolts",
      "system-open brakes",
    ]);
  });

  it("is the whole vehicle without a word", () => {
    const build = buildOf(`
hold all_ok "All"
part seat "Seat"

day 2026-05-02
  removed: seat
`);
    expect(openFor(build, "all_ok")).toEqual(["part-off seat: off since 2026-05-02"]);
  });
});
