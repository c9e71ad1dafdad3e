/** States of joints as short logs: what opens them, what tightens them, what undoes what. */
import { describe, expect, it } from "vitest";
import { readJoints } from "./joint-log.ts";

const DISC = `
vehicle "Example"
  past: unknown

part front.hub "Hub"
part front.disc "Disc"
part front.upright "Upright"

joint front.disc_bolts "Disc to hub"
  joins: front.hub, front.disc
  torque: 24 N.m ± 10 %
  lock: lockwire
  mark: yes

joint front.hub_bolts "Hub to upright"
  joins: front.hub, front.upright
  torque: 60 N.m ± 10 %
`;

describe("how a joint stands", () => {
  it("is as found until something is done to it", () => {
    expect(readJoints(DISC).stage("front.disc_bolts")).toBe("as_found");
  });

  it("is open once a part of it is removed, and goes on from there", () => {
    const stageAfter = (facts: string) =>
      readJoints(`${DISC}\nday 2026-05-02\n  removed: front.disc\n  fitted: front.disc\n${facts}`).stage(
        "front.disc_bolts",
      );
    expect(stageAfter("")).toBe("open");
    expect(stageAfter("  nipped: front.disc_bolts\n")).toBe("nipped");
    expect(stageAfter("  torqued: front.disc_bolts 24 N.m\n")).toBe("torqued");
    expect(stageAfter("  torqued: front.disc_bolts 24 N.m\n  locked: front.disc_bolts\n")).toBe("locked");
    expect(
      stageAfter(
        "  torqued: front.disc_bolts 24 N.m\n  locked: front.disc_bolts\n  marked: front.disc_bolts\n",
      ),
    ).toBe("marked");
    expect(stageAfter("  torqued: front.disc_bolts 24 N.m\n  loosened: front.disc_bolts\n")).toBe("open");
  });

  it("opens only where a part of it comes off", () => {
    const log = readJoints(`${DISC}\nday 2026-05-02\n  removed: front.disc\n`);
    expect(log.stage("front.hub_bolts")).toBe("as_found");
  });

  it("is open from the start where a part was loose or missing", () => {
    const log = readJoints(DISC.replace('"Disc"', '"Disc"\n  as_found: loose'));
    expect(log.stage("front.disc_bolts")).toBe("open");
    expect(log.wants("front.disc_bolts")).toEqual(["joint-open"]);
  });

  it("opens when a part is found missing", () => {
    const log = readJoints(`${DISC}\nday 2026-05-02\n  found: front.disc missing\n`);
    expect(log.stage("front.disc_bolts")).toBe("open");
  });

  it("is only nipped when what was tight is nipped again", () => {
    const log = readJoints(`${DISC}
day 2026-05-02
  torqued: front.disc_bolts 24 N.m
  nipped: front.disc_bolts
`);
    expect(log.stage("front.disc_bolts")).toBe("nipped");
    expect(log.wants("front.disc_bolts")).toEqual(["joint-nipped"]);
  });

  it("opens when its bolt is another from a day on, but not when it was tightened on that day", () => {
    const changed = "  changed: front.disc_bolts bolt 4 x M8x1.25x45 class 8.8\n";
    const torqued = "  torqued: front.disc_bolts 24 N.m\n";
    const first = `${DISC}\nday 2026-05-02\n${torqued}\n`;
    expect(readJoints(`${first}day 2026-05-09\n${changed}`).stage("front.disc_bolts")).toBe("open");
    expect(readJoints(`${first}day 2026-05-09\n${changed}${torqued}`).stage("front.disc_bolts")).toBe(
      "torqued",
    );
    expect(readJoints(`${first}day 2026-05-09\n${torqued}${changed}`).stage("front.disc_bolts")).toBe(
      "torqued",
    );
  });
});

describe("what comes off in one piece", () => {
  const unit = `${DISC}
day 2026-05-02
  torqued: front.disc_bolts 24 N.m
  torqued: front.hub_bolts 60 N.m
  removed: front.hub, front.disc as a unit
`;

  it("keeps the joints inside it, and opens those to the rest", () => {
    const log = readJoints(unit);
    expect(log.stage("front.disc_bolts")).toBe("torqued");
    expect(log.stage("front.hub_bolts")).toBe("open");
  });

  it("keeps them when it goes on again in one day", () => {
    const log = readJoints(`${unit}\nday 2026-05-09\n  fitted: front.hub\n  fitted: front.disc\n`);
    expect(log.stage("front.disc_bolts")).toBe("torqued");
  });

  it("does not when its parts go on on different days: it was taken apart", () => {
    const log = readJoints(
      `${unit}\nday 2026-05-09\n  fitted: front.hub\n\nday 2026-05-10\n  fitted: front.disc\n`,
    );
    expect(log.stage("front.disc_bolts")).toBe("open");
  });

  it("opens them when a part of it is taken off on the bench", () => {
    const log = readJoints(`${unit}\nday 2026-05-09\n  removed: front.disc\n`);
    expect(log.stage("front.disc_bolts")).toBe("open");
  });

  it("without being called a unit, opens them", () => {
    const log = readJoints(`${DISC}\nday 2026-05-02\n  removed: front.hub, front.disc\n`);
    expect(log.stage("front.disc_bolts")).toBe("open");
  });

  it("is a part with all that is in it", () => {
    const log = readJoints(`
part caliper "Caliper"
part caliper.bridge "Bridge"
part upright "Upright"
joint bridge_bolts "Halves"
  joins: caliper, caliper.bridge
joint caliper_bolts "Caliper to upright"
  joins: caliper, upright
day 2026-05-02
  removed: caliper
`);
    expect(log.stage("bridge_bolts")).toBe("as_found");
    expect(log.stage("caliper_bolts")).toBe("open");
  });
});

describe("a joint of one part", () => {
  const half = `
part sump "Sump"
joint drain_plug "Drain plug"
  joins: sump
  torque: 20 N.m
day 2026-05-02
  removed: sump as a unit
`;

  it("holds it to something that is not said, and opens whenever it comes off", () => {
    expect(readJoints(half).stage("drain_plug")).toBe("open");
  });

  it("is not tightened while it is off", () => {
    expect(readJoints(`${half}  torqued: drain_plug 20 N.m\n`).found("torqued-before-fitted")).toHaveLength(
      1,
    );
  });
});

describe("on the bench", () => {
  const bench = `${DISC}
day 2026-05-02
  removed: front.hub, front.disc
  torqued: front.disc_bolts 24 N.m
`;

  it("what is put together with all of its parts there is no mistake, and stays together", () => {
    const log = readJoints(`${bench}\nday 2026-05-09\n  fitted: front.hub, front.disc\n`);
    expect(log.found("torqued-before-fitted")).toEqual([]);
    expect(log.stage("front.disc_bolts")).toBe("torqued");
  });

  it("what is tightened without one of its parts is open again once that part goes on", () => {
    const log = readJoints(`${DISC}
day 2026-05-02
  removed: front.disc
  torqued: front.disc_bolts 24 N.m
  fitted: front.disc
`);
    expect(log.found("torqued-before-fitted")).toHaveLength(1);
    expect(log.stage("front.disc_bolts")).toBe("open");
  });

  it("until then it is torqued, one mistake being one complaint, and not secured", () => {
    const log = readJoints(
      `${DISC}\nday 2026-05-02\n  removed: front.disc\n  torqued: front.disc_bolts 24 N.m\n`,
    );
    expect(log.stage("front.disc_bolts")).toBe("torqued");
    expect(log.wants("front.disc_bolts")).toContain("torqued-before-fitted");
  });
});

describe("a trial fit", () => {
  const trial = `${DISC}
day 2026-05-02
  removed: front.disc
  fitted: front.disc for trial
  torqued: front.disc_bolts 24 N.m
  locked: front.disc_bolts
  marked: front.disc_bolts
`;

  it("secures nothing", () => {
    expect(readJoints(trial).wants("front.disc_bolts")).toEqual(["part-on-trial"]);
  });

  it("leaves its joints to be done again when the part is fitted for good", () => {
    const log = readJoints(`${trial}\nday 2026-05-09\n  fitted: front.disc\n`);
    expect(log.wants("front.disc_bolts")).toEqual(["joint-open"]);
  });
});

describe("checking again", () => {
  const done = `${DISC}
day 2026-05-02
  torqued: front.disc_bolts 24 N.m
  locked: front.disc_bolts
  marked: front.disc_bolts
`;

  it("keeps lock and mark where it held", () => {
    const log = readJoints(`${done}\nday 2026-05-09\n  rechecked: front.disc_bolts 24 N.m held\n`);
    expect(log.stage("front.disc_bolts")).toBe("marked");
    expect(log.wants("front.disc_bolts")).toEqual([]);
  });

  it("voids both where it moved, and asks for the joint to be done again", () => {
    const log = readJoints(`${done}\nday 2026-05-09\n  rechecked: front.disc_bolts moved\n`);
    expect(log.stage("front.disc_bolts")).toBe("nipped");
    expect(log.securing("front.disc_bolts").lacks).toEqual(["moved when it was checked"]);
  });

  it("judges the figure that it gives, which overtakes the one before", () => {
    const log = readJoints(`${DISC}
day 2026-05-02
  torqued: front.disc_bolts 34 N.m

day 2026-05-09
  rechecked: front.disc_bolts 24 N.m held
`);
    expect(log.found("torque-outside")).toEqual(["past torque-outside: 34 N.m"]);
    expect(log.wants("front.disc_bolts")).toEqual(["lock-missing", "mark-missing"]);
  });

  it("with a figure proves a joint as found", () => {
    const log = readJoints(`${DISC}\nday 2026-05-02\n  rechecked: front.hub_bolts 60 N.m held\n`);
    expect(log.stage("front.hub_bolts")).toBe("torqued");
    expect(log.wants("front.hub_bolts")).toEqual([]);
  });

  it("torquing again without loosening keeps lock and mark, and wants the second look again", () => {
    const log = readJoints(`${DISC}  second_check: yes
day 2026-05-02
  torqued: front.hub_bolts 60 N.m by "JR"
  marked: front.hub_bolts
  seen: front.hub_bolts by "KT"

day 2026-05-09
  torqued: front.hub_bolts 60 N.m by "JR"
`);
    expect(log.stage("front.hub_bolts")).toBe("marked");
    expect(log.wants("front.hub_bolts")).toEqual(["not-seen"]);
  });
});

describe("hardware", () => {
  const nut = `
part damper "Damper"
part nyloc "Nuts"
  as_found: shelf
  stock: 3

joint damper_upper "Damper to frame"
  joins: damper
  nut: self_locking nylon M10x1.5 class 8
  torque: 45 N.m
  uses: 1 x nyloc
`;

  it("is spent when a joint that was undone is tightened, and only then", () => {
    const log = (facts: string) => readJoints(`${nut}\nday 2026-05-02\n${facts}`);
    expect(log("  torqued: damper_upper 45 N.m\n").inHand("nyloc")).toBe(3);
    expect(log("  loosened: damper_upper\n").inHand("nyloc")).toBe(3);
    expect(log("  loosened: damper_upper\n  torqued: damper_upper 45 N.m\n").inHand("nyloc")).toBe(2);
    expect(
      log(
        "  loosened: damper_upper\n  torqued: damper_upper 45 N.m\n  torqued: damper_upper 45 N.m\n",
      ).inHand("nyloc"),
    ).toBe(2);
  });

  it("that locks itself is not used again unless it is new", () => {
    const log = (facts: string) =>
      readJoints(`${nut}\nday 2026-05-02\n${facts}`).found("self-locking-reused");
    expect(log("  torqued: damper_upper 45 N.m\n")).toEqual([]);
    expect(log("  loosened: damper_upper\n  torqued: damper_upper 45 N.m\n")).toEqual([
      "self-locking-reused: torqued: damper_upper 45 N.m",
    ]);
    expect(log("  loosened: damper_upper\n  torqued: damper_upper 45 N.m on new hardware\n")).toEqual([]);
    expect(
      log(`  loosened: damper_upper
  torqued: damper_upper 45 N.m
  loosened: damper_upper
  torqued: damper_upper 45 N.m on new hardware
`),
    ).toEqual(["past self-locking-reused: torqued: damper_upper 45 N.m"]);
  });

  it("used again leaves only a safety-critical joint unsecured", () => {
    const twice = `${nut}\nday 2026-05-02\n  loosened: damper_upper\n  torqued: damper_upper 45 N.m\n`;
    expect(readJoints(twice).wants("damper_upper")).toEqual([]);
    const critical = twice.replace('"Damper"', '"Damper"\n  safety: critical');
    expect(readJoints(critical).wants("damper_upper")).toEqual(["self-locking-reused"]);
  });

  it("of one use that is not in hand was used again", () => {
    const washers = nut
      .replace("nut: self_locking nylon M10x1.5 class 8", "lock: none")
      .replace("stock: 3", "stock: 0");
    const log = readJoints(
      `${washers}\nday 2026-05-02\n  loosened: damper_upper\n  torqued: damper_upper 45 N.m\n`,
    );
    expect(log.found("single-use-refitted")).toHaveLength(1);
    expect(log.wants("damper_upper")).toEqual(["single-use-refitted"]);
  });

  it("is new with another nut", () => {
    const log = readJoints(`${nut}
day 2026-05-02
  changed: damper_upper nut self_locking metal M10x1.5 class 10
  torqued: damper_upper 45 N.m
`);
    expect(log.found("self-locking-reused")).toEqual([]);
    expect(log.inHand("nyloc")).toBe(2);
  });
});
