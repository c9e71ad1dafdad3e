import { describe, expect, it } from "vitest";
import type { FindingCode } from "../../server/build/finding.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { buildOf, expectFindings, findingOf } from "./marked-build.ts";
import { holdAt } from "./open-items.ts";

const HOLDS: readonly FindingCode[] = ["released-with-open-items", "release-lapsed", "past-hold"];

const VEHICLE = `
  part seat "Seat"
  part hub "Hub"
  part wheel "Wheel"
  joint wheel_nuts "Wheel nuts"
    joins: wheel, hub
    torque: 80 N.m ± 10 %
    recheck: after 1 h running
  job shakedown "Shakedown"
  hold ready "Ready"
    needs: parts, joints, systems, snags, tests
    stops: shakedown
    stops: ran vehicle
`;

describe("a release", () => {
  it("is refused while something is open, and says each thing", () => {
    const build = expectFindings(
      HOLDS,
      `${VEHICLE}
  day 2026-05-02
    removed: seat
    loosened: wheel_nuts
    released: ready
    ^^^^^^^^^^^^^^^ released-with-open-items
      `,
    );
    const { data, seeAlso } = findingOf(build, "released-with-open-items");
    expect(data.open).toEqual([
      "seat: off since 2026-05-02",
      expect.stringMatching(/^wheel_nuts: not secured: open/),
    ]);
    expect(seeAlso.map(({ role }) => role)).toEqual(data.open);
    expect(holdAt(build, "ready").released).toBeUndefined();
  });

  it("that was refused leaves all after it shut", () => {
    expectFindings(
      HOLDS,
      `
  part seat "Seat"
  hold first "First"
    covers: seat
    needs: parts
  hold second "Second"
    needs: snags
    after: first

  day 2026-05-02
    removed: seat
    released: first
    ^^^^^^^^^^^^^^^ released-with-open-items
    released: second
    ^^^^^^^^^^^^^^^^ released-with-open-items
    fitted: seat
    released: first
    released: second
      `,
    );
  });

  it("lapses at the fact that opens something again, once, and is given anew", () => {
    const build = expectFindings(
      HOLDS,
      `${VEHICLE}
  day 2026-05-02
    released: ready

  day 2026-05-03
    removed: seat
    ^^^^^^^^^^^^^ past release-lapsed
    loosened: wheel_nuts
    fitted: seat
    torqued: wheel_nuts 80 N.m
    ran: vehicle 5 km
    ^^^^^^^^^^^^^^^^^ past-hold
    released: ready
    ran: vehicle 5 km
      `,
    );
    expect(holdAt(build, "ready")).toMatchObject({
      released: { date: "2026-05-03" },
      lapsed: undefined,
    });
  });

  it.each([
    ["    loosened: wheel_nuts"],
    ["    found: seat bent"],
    ["    snag: rattle on seat"],
    ["    changed: seat limit height max 30 mm\n    measured: seat height 31 mm"],
  ])("lapses with %j", (facts) => {
    const build = buildOf(`${VEHICLE}
  day 2026-05-02
    released: ready
${facts}`);
    expect(holdAt(build, "ready").lapsed?.fact?.fact.word).toBe(
      facts.trim().split("\n").at(-1)?.trim().split(":")[0],
    );
  });

  it.each([
    ['    tagged: seat "left"'],
    ["    inspected: seat by eye"],
    ["    torqued: wheel_nuts 80 N.m"],
    ["    snag: rattle on seat\n    cleared: rattle", true],
  ])("does not lapse with %j", (facts, lapses = false) => {
    const build = buildOf(`${VEHICLE}
  day 2026-05-02
    released: ready
${facts}`);
    expect(holdAt(build, "ready").lapsed !== undefined).toBe(lapses);
  });

  it("of a part of the vehicle stands whatever happens to another", () => {
    expectFindings(
      HOLDS,
      `
  part seat "Seat"
  part bonnet "Bonnet"
  hold seat_ok "Seat"
    covers: seat
    needs: parts

  day 2026-05-02
    released: seat_ok
    removed: bonnet
      `,
    );
  });

  it("lapses with the one that it comes after, in one complaint", () => {
    const build = expectFindings(
      HOLDS,
      `
  part seat "Seat"
  hold first "First"
    covers: seat
    needs: parts
  hold second "Second"
    needs: snags
    after: first

  day 2026-05-02
    released: first, second
    removed: seat
    ^^^^^^^^^^^^^ release-lapsed
      `,
    );
    expect(findingOf(build, "release-lapsed").data.holds).toEqual(["first", "second"]);
    expect(holdAt(build, "second").lapsed).toBeDefined();
  });

  it("counts what stands above it on the day, not what stands below", () => {
    expectFindings(
      HOLDS,
      `${VEHICLE}
  day 2026-05-02
    removed: seat
    fitted: seat
    released: ready
      `,
    );
  });
});

describe("what falls due with running", () => {
  it("lapses no release while nothing leans on it undone: it is rechecked on the day", () => {
    const build = expectFindings(
      HOLDS,
      `${VEHICLE}
  day 2026-05-02
    torqued: wheel_nuts 80 N.m
    released: ready
    ran: vehicle 90 min
    rechecked: wheel_nuts held
    ran: vehicle 90 min
      `,
    );
    expect(holdAt(build, "ready").lapsed).toBeUndefined();
  });

  it("lapses it at the running that made it due when the vehicle is run again", () => {
    expectFindings(
      HOLDS,
      `${VEHICLE}
  day 2026-05-02
    torqued: wheel_nuts 80 N.m
    released: ready
    ran: vehicle 90 min
    ^^^^^^^^^^^^^^^^^^^ release-lapsed

  day 2026-05-09
    ran: vehicle 10 min
    ^^^^^^^^^^^^^^^^^^^ past-hold
      `,
    );
  });

  it("lapses it where the log ends with it undone", () => {
    const build = buildOf(`${VEHICLE}
  day 2026-05-02
    torqued: wheel_nuts 80 N.m
    released: ready
    ran: vehicle 90 min`);
    expect(holdAt(build, "ready").lapsed?.date).toBe("2026-05-02");
  });
});

describe("a life that runs out by the calendar", () => {
  const log = `
part bottle "Extinguisher"
  expires: 2026-06-30
hold ready "Ready"
  needs: lives
  stops: ran vehicle

day 2026-05-02
  released: ready

day 2026-06-30
  ran: vehicle 5 km
`;

  it("shuts the hold point from then on, without a complaint of its own", () => {
    const build = expectFindings(
      HOLDS,
      `${log}
day 2026-07-01
  ran: vehicle 5 km
  ^^^^^^^^^^^^^^^^^ past-hold
`,
    );
    expect(holdAt(build, "ready").lapsed).toMatchObject({ fact: undefined, date: "2026-07-01" });
    expect(findingOf(build, "past-hold").data.lapsed).toBe("2026-07-01");
  });

  it("does not before", () => {
    expect(holdAt(buildOf(log, "2026-06-30" as IsoDate), "ready").lapsed).toBeUndefined();
  });
});

describe("a shut hold point stops", () => {
  it("the jobs that it names, one complaint for each, until it is released", () => {
    expectFindings(
      HOLDS,
      `${VEHICLE}
  day 2026-05-02
    started: shakedown
    ^^^^^^^^^^^^^^^^^^ past-hold
    worked: 2 h on shakedown
    done: shakedown
      `,
    );
  });

  it("the jobs that come after it", () => {
    expectFindings(
      HOLDS,
      `
  hold ready "Ready"
    needs: snags
  job drive "Drive"
    after: ready

  day 2026-05-02
    worked: 1 h on drive
    ^^^^^^^^^^^^^^^^^^^^ past-hold
      `,
    );
  });

  it.each([
    ["engine", "engine", true],
    ["engine", "engine.head", true],
    ["engine", "vehicle", true],
    ["vehicle", "engine", true],
    ["engine", "gearbox", false],
  ])("ran %s: the running of %s: %s", (stopped, run, stops) => {
    const build = buildOf(`
      part engine.head "Head"
      part gearbox "Gearbox"
      hold ready "Ready"
        needs: snags
        stops: ran ${stopped}

      day 2026-05-02
        ran: ${run} 10 min
    `);
    expect(build.findings.some(({ code }) => code === "past-hold")).toBe(stops);
  });

  it("the engine of a vehicle by its own hold point, where there is one", () => {
    expectFindings(
      HOLDS,
      `
  part engine.head "Head"
  hold fire_up "Fire up"
    needs: snags
    stops: ran engine
  hold drive "Drive"
    needs: snags
    after: fire_up
    stops: ran vehicle

  day 2026-05-02
    ran: engine 10 min
    ^^^^^^^^^^^^^^^^^^ past-hold
    released: fire_up
    ran: engine 10 min
    ran: vehicle 1 km
    ^^^^^^^^^^^^^^^^^ past-hold
      `,
    );
  });

  it.each([
    ["the one planned first", "late", "2026-07-01", "early", "2026-06-20", "early"],
    ["one that is planned before one that is not", "never", undefined, "late", "2026-07-01", "late"],
    ["of one day the first in the text", "one", "2026-06-20", "two", "2026-06-20", "one"],
    ["without a plan the first in the text", "one", undefined, "two", undefined, "one"],
  ] as const)("a job, and names of several in no order %s", (_, first, then, second, later, named) => {
    const hold = (name: string, planned: string | undefined) =>
      `hold ${name} "Hold"\n  needs: snags\n  stops: shakedown\n${planned === undefined ? "" : `  planned: ${planned}\n`}\n`;
    const build = buildOf(
      `${hold(first, then)}${hold(second, later)}job shakedown "Shakedown"\n\nday 2026-05-02\n  started: shakedown\n`,
    );
    expect(findingOf(build, "past-hold").data.hold).toBe(named);
  });

  it("each running, and names the first hold point that is shut", () => {
    const build = expectFindings(
      HOLDS,
      `
  hold second "Second"
    needs: snags
    after: first
    stops: ran vehicle
  hold first "First"
    needs: snags

  day 2026-05-02
    ran: vehicle 1 km
    ^^^^^^^^^^^^^^^^^ past-hold

  day 2026-05-03
    released: first
    ran: vehicle 1 km
    ^^^^^^^^^^^^^^^^^ past-hold
    released: second
    ran: vehicle 1 km
      `,
    );
    const named = build.findings.flatMap((finding) =>
      finding.code === "past-hold" ? [[finding.data.hold, finding.data.stoppedBy]] : [],
    );
    expect(named).toEqual([
      ["first", "second"],
      ["second", undefined],
    ]);
  });

  it("and says so where nothing but an unread line has shut it", () => {
    const build = buildOf(`
  part seat "Seat"
  hold ready "Ready"
    covers: seat
    needs: parts
    stops: ran vehicle

  day 2026-05-02
    released: ready
    remvoed: seat
    ran: vehicle 1 km`);
    expect(findingOf(build, "past-hold").data).toMatchObject({ lapsed: "2026-05-02", unread: true });
    // The line has its own complaint, and is enough.
    expect(build.findings.map(({ code }) => code)).not.toContain("release-lapsed");
  });
});

describe("jobs", () => {
  it("that are begun before one that they come after are out of order, once", () => {
    expectFindings(
      ["job-out-of-order"],
      `
  job strip "Strip"
  job trim "Trim"
    after: strip

  day 2026-05-02
    started: trim
    ^^^^^^^^^^^^^ job-out-of-order
    worked: 1 h on trim
    done: trim
      `,
    );
  });

  it("are in order once the one before is done", () => {
    expectFindings(
      ["job-out-of-order"],
      `
  job strip "Strip"
  job trim "Trim"
    after: strip

  day 2026-05-02
    done: strip
    worked: 1 h on trim
      `,
    );
  });
});

describe("snags", () => {
  it("that nobody noted, or that are cleared already, cannot be cleared or conceded", () => {
    expectFindings(
      ["cleared-unknown-snag"],
      `
  part seat "Seat"
  hold ready "Ready"

  day 2026-05-02
    snag: torn on seat
    cleared: tron
    ^^^^^^^^^^^^^ cleared-unknown-snag
    cleared: torn
    cleared: torn
    ^^^^^^^^^^^^^ cleared-unknown-snag
    conceded: torn until ready by "KT" "gone"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ cleared-unknown-snag
    snag: torn on seat
    cleared: torn
      `,
    );
  });

  it("of one name are two, both open until it is cleared", () => {
    const build = expectFindings(
      ["duplicate-name"],
      `
  part seat "Seat"
  part tank "Tank"

  day 2026-05-02
    snag: dent on seat
    snag: dent on tank
    ^^^^^^^^^^^^^^^^^^ duplicate-name
      `,
    );
    const open = [...build.standing.snags.values()].map(({ on, cleared }) => [on?.path, cleared]);
    expect(open).toEqual([
      ["seat", undefined],
      ["tank", undefined],
    ]);
  });
});
