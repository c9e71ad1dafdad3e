import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import type { PartPlace } from "../../server/build/states.ts";
import { whereabouts } from "../../server/build/whereabouts.ts";
import { buildOf, expectFindings, findingOf, goodsAt, lineAndText, nodeAt, partAt } from "./marked-build.ts";

const PLACES = [
  "removed-twice",
  "fitted-twice",
  "fitted-while-away",
  "fitted-not-in-hand",
  "single-use-refitted",
  "back-never-sent",
  "fitted-condemned",
  "fitted-out-of-limit",
  "fitted-not-inspected",
  "seen-by-same",
] as const;

function places(build: Build, ...paths: string[]): PartPlace[] {
  return paths.map((path) => partAt(build, path).place);
}

/** Where a part really is, wherever its place is relative to. */
function reallyAt(build: Build, path: string): PartPlace | undefined {
  return whereabouts(build.standing, nodeAt(build, path))?.place;
}

/** How many items a part has had, and how many readings and events the one in question knows. */
function item(build: Build, path: string) {
  const { item: present, earlier } = partAt(build, path);
  return { items: earlier.length + 1, readings: present.readings.length, events: present.events.length };
}

describe("where a part is at the start", () => {
  it("is on, unless its block says missing, loose or shelf", () => {
    const build = buildOf(`
      part a "A"
      part b "B"
        as_found: on
      part c "C"
        as_found: missing
      part d "D"
        as_found: loose
      part e "E"
        as_found: shelf
    `);
    expect(places(build, "a", "b", "c", "d", "e")).toEqual(["on", "on", "gone", "off", "shelf"]);
    expect(partAt(build, "c").missing).toBe(true);
  });

  it("is where the like of it is said to be on its own: as_found is not copied", () => {
    const build = buildOf(`
      part left.lamp "Lamp"
        as_found: missing
      assembly right "Right" like left
    `);
    expect(places(build, "left.lamp", "right.lamp")).toEqual(["gone", "on"]);
  });
});

describe("removed: and fitted:", () => {
  const PARTS = 'part hub "Hub"\npart disc "Disc"\n';

  it("take off and put on, and know the fact that did", () => {
    const build = expectFindings(
      PLACES,
      `${PARTS}
day 2026-05-02
  removed: hub, disc
day 2026-05-03
  fitted: hub
`,
    );
    expect(places(build, "hub", "disc")).toEqual(["on", "off"]);
    expect(lineAndText(partAt(build, "hub").placed?.place as never)).toBe("7: fitted: hub");
  });

  it("complain of what is off or on already, once, and show what was written before", () => {
    const build = expectFindings(
      PLACES,
      `${PARTS}
day 2026-05-02
  removed: hub
  removed: hub
  ^^^^^^^^^^^^ removed-twice
  fitted: disc
  ^^^^^^^^^^^^ fitted-twice
`,
    );
    expect(findingOf(build, "removed-twice")).toMatchObject({ data: { what: "hub", place: "off" } });
    expect(findingOf(build, "removed-twice").seeAlso.map(({ place }) => lineAndText(place))).toEqual([
      "5: removed: hub",
    ]);
  });

  it("skip in silence through an assembly what is there already", () => {
    const build = expectFindings(
      PLACES,
      `
      part front.hub "Hub"
      part front.disc "Disc"
      day 2026-05-02
        removed: front.hub
        removed: front
        fitted: front.hub
        fitted: front
      `,
    );
    expect(places(build, "front.hub", "front.disc")).toEqual(["on", "on"]);
  });

  it("bring back what was left loose or lay about, as the same one", () => {
    const build = expectFindings(
      PLACES,
      `
      part lamp "Lamp"
        as_found: loose
      day 2026-05-02
        found: lamp dirty
        fitted: lamp
      `,
    );
    expect(item(build, "lamp")).toEqual({ items: 1, readings: 0, events: 1 });
  });
});

describe("a part inside a part", () => {
  const CALIPER = `
part left.caliper "Caliper"
part left.caliper.piston "Piston"
part left.caliper.piston.seal "Seal"
part left.upright "Upright"
`;

  it("goes off with it and stays in it: its place is relative", () => {
    const build = expectFindings(PLACES, `${CALIPER}\nday 2026-05-02\n  removed: left.caliper\n`);
    expect(places(build, "left.caliper", "left.caliper.piston")).toEqual(["off", "on"]);
    expect(reallyAt(build, "left.caliper.piston")).toBe("off");
  });

  it("is not meant through an assembly, neither off nor on", () => {
    const build = expectFindings(
      PLACES,
      `${CALIPER}
day 2026-05-02
  removed: left
day 2026-05-03
  removed: left.caliper.piston
  fitted: left
`,
    );
    expect(places(build, "left.caliper", "left.caliper.piston")).toEqual(["on", "off"]);
    expect(reallyAt(build, "left.caliper.piston.seal")).toBe("off");
  });

  it("can be taken out and put in on the bench", () => {
    const build = expectFindings(
      PLACES,
      `${CALIPER}
day 2026-05-02
  removed: left.caliper
  removed: left.caliper.piston
  fitted: left.caliper.piston
`,
    );
    expect(places(build, "left.caliper", "left.caliper.piston")).toEqual(["off", "on"]);
  });

  it("comes out where its part is opened up, whole as it is", () => {
    const build = buildOf(`${CALIPER}
joint left.caliper.bleeder "Bleed nipple"
  joins: left.caliper
joint left.caliper.bolts "Caliper to upright"
  joins: left.caliper, left.upright
day 2026-05-02
  stripped: left.caliper
`);
    expect(places(build, "left.caliper", "left.caliper.piston", "left.caliper.piston.seal")).toEqual([
      "on",
      "off",
      "on",
    ]);
    const stage = (path: string) => build.standing.joints.get(nodeAt(build, path))?.stage;
    expect([stage("left.caliper.bleeder"), stage("left.caliper.bolts")]).toEqual(["open", "as_found"]);
  });

  it("takes its part's joints to the rest along when it goes", () => {
    const build = buildOf(`${CALIPER}
joint left.guide "Piston guide to upright"
  joins: left.caliper.piston, left.upright
joint left.inner "Piston to seal"
  joins: left.caliper.piston, left.caliper.piston.seal
day 2026-05-02
  removed: left.caliper
`);
    const stage = (path: string) => build.standing.joints.get(nodeAt(build, path))?.stage;
    expect([stage("left.guide"), stage("left.inner")]).toEqual(["open", "as_found"]);
  });

  it("is a new one where its part is, unless it was put in by hand", () => {
    const build = buildOf(`${CALIPER}
day 2026-05-02
  removed: left.caliper
  found: left.caliper.piston pitted
  decided: left.caliper renew
  bought: 1 x left.caliper
  removed: left.caliper.piston.seal
  fitted: left.caliper.piston.seal
  found: left.caliper.piston.seal good
  fitted: left.caliper
`);
    expect(item(build, "left.caliper.piston")).toEqual({ items: 2, readings: 0, events: 0 });
    expect(item(build, "left.caliper.piston.seal")).toEqual({ items: 1, readings: 0, events: 1 });
  });
});

describe("stripped:", () => {
  it("opens up an assembly: its parts come out whole, and the joints between them open", () => {
    const build = buildOf(`
      part engine.block "Block"
      part engine.crank "Crank"
      part engine.pump "Oil pump"
      part engine.pump.rotor "Rotor"
      joint engine.caps "Main caps"
        joins: engine.block, engine.crank
      joint engine.pump.cover "Pump cover"
        joins: engine.pump
      day 2026-05-02
        removed: engine as a unit
      day 2026-05-03
        stripped: engine
    `);
    const stage = (path: string) => build.standing.joints.get(nodeAt(build, path))?.stage;
    expect(places(build, "engine.block", "engine.pump", "engine.pump.rotor")).toEqual(["off", "off", "on"]);
    expect([stage("engine.caps"), stage("engine.pump.cover")]).toEqual(["open", "open"]);
  });

  it("was not done by removing as a unit: the joints inside stay", () => {
    const build = buildOf(`
      part engine.block "Block"
      part engine.crank "Crank"
      part frame "Frame"
      joint engine.caps "Main caps"
        joins: engine.block, engine.crank
      joint engine.mounts "Mounts"
        joins: engine.block, frame
      day 2026-05-02
        removed: engine as a unit
    `);
    const stage = (path: string) => build.standing.joints.get(nodeAt(build, path))?.stage;
    expect([stage("engine.caps"), stage("engine.mounts")]).toEqual(["as_found", "open"]);
  });
});

describe("fitted: … for trial", () => {
  it("puts a part on trial, and the next fitting puts it on", () => {
    const build = expectFindings(
      PLACES,
      `
      part pedal "Pedal"
      day 2026-05-02
        removed: pedal
        fitted: pedal for trial
      day 2026-05-03
        fitted: pedal for trial
        ^^^^^^^^^^^^^^^^^^^^^^^ fitted-twice
      `,
    );
    expect(places(build, "pedal")).toEqual(["trial"]);
    const later = expectFindings(
      PLACES,
      `
      part pedal "Pedal"
      day 2026-05-02
        removed: pedal
        fitted: pedal for trial
      day 2026-05-03
        fitted: pedal
      `,
    );
    expect(places(later, "pedal")).toEqual(["on"]);
  });

  it("is no fitting for a condemned part: that is complained about when it stays", () => {
    expectFindings(
      PLACES,
      `
      part arm "Arm"
      day 2026-05-02
        removed: arm
        found: arm bent
        fitted: arm for trial
      day 2026-05-03
        fitted: arm
        ^^^^^^^^^^^ fitted-condemned
      `,
    );
  });

  it("may be of the old one as long as the new one is not there", () => {
    const build = expectFindings(
      PLACES,
      `
      part disc "Disc"
      day 2026-05-02
        removed: disc
        decided: disc renew
        fitted: disc for trial "to see the clearance"
        removed: disc
      day 2026-05-09
        bought: 1 x disc
        fitted: disc for trial
      day 2026-05-10
        fitted: disc
      `,
    );
    expect(item(build, "disc").items).toBe(2);
    expect(goodsAt(build, "disc").inHand).toBe(0);
  });
});

describe("sent: and back:", () => {
  it("send away from where it is, from the vehicle too, and bring it back off", () => {
    const build = expectFindings(
      PLACES,
      `
      supplier shop "Shop"
      part a "A"
      part b "B"
      joint nut "Nut"
        joins: a, b
      day 2026-05-02
        removed: a
        sent: a, b to shop for "plating"
      day 2026-05-09
        back: a
      `,
    );
    expect(places(build, "a", "b")).toEqual(["off", "away"]);
    expect(build.standing.joints.get(nodeAt(build, "nut"))?.stage).toBe("open");
  });

  it("complain of what comes back though it was never sent, or has come back already", () => {
    expectFindings(
      PLACES,
      `
      supplier shop "Shop"
      part a "A"
      part b "B"
      day 2026-05-02
        removed: a, b
        sent: b to shop
        back: a
        ^^^^^^^ back-never-sent
      day 2026-05-09
        back: b
        back: b
        ^^^^^^^ back-never-sent
      `,
    );
  });

  it("complain of fitting what is away, once: it counts as fitted, and comes back off", () => {
    const build = expectFindings(
      PLACES,
      `
      supplier thorne "Thorne"
      part damper "Damper"
      day 2026-05-02
        removed: damper
        sent: damper to thorne for "seals"
      day 2026-05-05
        fitted: damper
        ^^^^^^^^^^^^^^ fitted-while-away
      day 2026-05-09
        back: damper
        fitted: damper
      `,
    );
    expect(findingOf(build, "fitted-while-away").data).toEqual({ what: "damper", supplier: "thorne" });
    expect(places(build, "damper")).toEqual(["on"]);
  });

  it("do not hinder a new one: what comes back then is the old one", () => {
    const build = expectFindings(
      PLACES,
      `
      supplier thorne "Thorne"
      part damper "Damper"
      day 2026-05-02
        removed: damper
        sent: damper to thorne for "seals"
      day 2026-05-05
        decided: damper renew "five weeks is too long"
        bought: 1 x damper
        fitted: damper
      day 2026-06-09
        back: damper
      `,
    );
    expect(places(build, "damper")).toEqual(["on"]);
  });
});

describe("missing", () => {
  it("is gone from where it was, with its joints open", () => {
    const build = buildOf(`
      part lamp "Lamp"
      part wing "Wing"
      joint nut "Nut"
        joins: lamp, wing
      day 2026-05-02
        found: lamp missing
    `);
    expect(partAt(build, "lamp")).toMatchObject({ place: "gone", missing: true });
    expect(build.standing.joints.get(nodeAt(build, "nut"))?.stage).toBe("open");
  });

  it("is found again in another condition", () => {
    const build = buildOf(`
      part lamp "Lamp"
        as_found: missing
      day 2026-05-02
        found: lamp dirty "in the loft"
    `);
    expect(partAt(build, "lamp")).toMatchObject({ place: "off", missing: false });
  });
});

describe("scrap", () => {
  it("sends what is off away for good, and what is on once it comes off", () => {
    const build = buildOf(`
      part a "A"
      part b "B"
      day 2026-05-02
        removed: a
        decided: a, b scrap
    `);
    expect(places(build, "a", "b")).toEqual(["gone", "on"]);
    const later = buildOf(`
      part b "B"
      day 2026-05-02
        decided: b scrap
        removed: b
    `);
    expect(places(later, "b")).toEqual(["gone"]);
  });

  it("can be taken back", () => {
    const build = buildOf(`
      part a "A"
      day 2026-05-02
        removed: a
        decided: a scrap
      day 2026-05-03
        decided: a repair "out of the bin again"
    `);
    expect(places(build, "a")).toEqual(["off"]);
  });

  it("is about the old one: a new one that comes off is only off", () => {
    const build = buildOf(`
      part a "A"
      day 2026-05-02
        removed: a
        decided: a scrap
        bought: 1 x a
        fitted: a
        removed: a
    `);
    expect(places(build, "a")).toEqual(["off"]);
  });
});

describe("ran:", () => {
  it("counts up for everything below it that is on", () => {
    const build = buildOf(`
      part engine.head "Head"
      part engine.pump "Pump"
      part engine.pump.rotor "Rotor"
      part rear.chain "Chain"
      day 2026-05-02
        ran: vehicle 1 h 20 km 3 run
        ran: engine 0.5 h
        ran: engine.pump 0.25 h
    `);
    const hours = (path: string) => partAt(build, path).item.running.hours.toNumber();
    expect([
      hours("engine.head"),
      hours("engine.pump"),
      hours("engine.pump.rotor"),
      hours("rear.chain"),
    ]).toEqual([1.5, 1.75, 1.75, 1]);
    expect(partAt(build, "rear.chain").item.running.metres.toNumber()).toBe(20000);
    expect(partAt(build, "rear.chain").item.running.runs.toNumber()).toBe(3);
  });

  it("counts for what is on for trial", () => {
    const build = buildOf(`
      part pump "Pump"
      day 2026-05-02
        removed: pump
        fitted: pump for trial
        ran: vehicle 1 h
    `);
    expect(partAt(build, "pump").item.running.hours.toNumber()).toBe(1);
  });

  it("does not for what is off, nor for what is in a part that is off", () => {
    const build = buildOf(`
      part pump "Pump"
      part pump.rotor "Rotor"
      day 2026-05-02
        removed: pump
        ran: vehicle 1 h
    `);
    expect(partAt(build, "pump").item.running.hours.toNumber()).toBe(0);
    expect(partAt(build, "pump.rotor").item.running.hours.toNumber()).toBe(0);
  });
});

describe("tagged: and serviced:", () => {
  it("keep every tag, and the newest service of the item", () => {
    const build = buildOf(`
      part hub "Hub"
      day 2026-05-02
        tagged: hub "L"
        tagged: hub "dot to the front"
        serviced: hub
      day 2026-05-09
        serviced: hub until 2028-05-09
    `);
    const part = partAt(build, "hub");
    expect(part.tags.map(({ fact }) => fact.tag)).toEqual(["L", "dot to the front"]);
    expect(part.item.serviced?.date).toBe("2026-05-09");
  });
});

describe("decisions", () => {
  it("are the newest, about all of its count where no number is said", () => {
    const build = buildOf(`
      part pads "Pads"
        count: 4
      day 2026-05-02
        decided: pads renew
      day 2026-05-03
        decided: pads reuse "hardly worn"
    `);
    expect(partAt(build, "pads").decisions.map(({ decision, count }) => [decision, count])).toEqual([
      ["reuse", 4],
    ]);
  });

  it("stand side by side as far as the pieces go", () => {
    const build = buildOf(`
      part valves "Valves"
        count: 8
      day 2026-05-02
        decided: 2 x valves renew
        decided: 6 x valves reuse
      day 2026-05-03
        decided: 1 x valves make
    `);
    const part = partAt(build, "valves");
    expect(part.decisions.map(({ decision, count }) => [decision, count])).toEqual([
      ["renew", 1],
      ["reuse", 6],
      ["make", 1],
    ]);
    expect(part.decision?.decision).toBe("make");
  });

  it.each(["repair", "recondition", "modify", "renew", "make", "scrap"])(
    "to %s one stands for the part, though the others were decided later to go on",
    (decision) => {
      const build = buildOf(`
      part disc "Disc"
        count: 2
      day 2026-05-02
        removed: disc
        decided: 1 x disc ${decision}
        decided: 1 x disc reuse
    `);
      expect(partAt(build, "disc").decision?.decision).toBe(decision);
    },
  );

  it("to work on it are settled by the work, to replace it only by another one", () => {
    const build = buildOf(`
      supplier shop "Shop"
      part a "A"
      part b "B"
      part c "C"
      day 2026-05-02
        removed: a, b, c
        decided: a repair
        decided: b renew
        decided: c recondition
        repaired: a, b
        sent: c to shop
      day 2026-05-09
        back: c
    `);
    const settled = (path: string) => partAt(build, path).decision?.settled?.fact.word;
    expect([settled("a"), settled("b"), settled("c")]).toEqual(["repaired", undefined, "back"]);
  });
});
