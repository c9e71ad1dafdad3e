import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { buildOf, expectFindings, findingOf, goodsAt, nodeAt, partAt } from "./marked-build.ts";

const FITTING = [
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

/** How many items a part has had, and how many readings and events the one in question knows. */
function item(build: Build, path: string) {
  const { item: present, earlier } = partAt(build, path);
  return { items: earlier.length + 1, readings: present.readings.length, events: present.events.length };
}

describe("the same one, or a new one", () => {
  /** A disc with a reading and a finding, off the vehicle; then the lines. */
  function offThen(lines: string, records = ""): string {
    return `
part disc "Disc"
${records}
day 2026-05-02
  measured: disc thickness 9 mm
  found: disc dirty
  removed: disc
day 2026-05-09
${lines}`;
  }

  const OLD = { items: 1, readings: 1 };
  const NEW = { items: 2, readings: 0 };

  it("is the same one as long as nothing speaks for another", () => {
    expect(item(buildOf(offThen("  fitted: disc\n")), "disc")).toMatchObject(OLD);
  });

  it("is a new one where it was decided to renew, make or scrap it, and settles that", () => {
    for (const decision of ["renew", "make", "scrap"]) {
      const build = expectFindings(
        FITTING,
        offThen(`  decided: disc ${decision}\n  bought: 1 x disc\n  fitted: disc\n`),
      );
      expect(item(build, "disc")).toMatchObject(NEW);
      expect(partAt(build, "disc").decision?.settled?.fact.word).toBe("fitted");
      expect(goodsAt(build, "disc").inHand).toBe(0);
    }
  });

  it("is a complaint where none was received, bought or made; it counts as the new one all the same", () => {
    const build = expectFindings(
      FITTING,
      offThen(`
  decided: disc renew
  fitted: disc
  ^^^^^^^^^^^^ fitted-not-in-hand
`),
    );
    expect(findingOf(build, "fitted-not-in-hand").data).toEqual({
      what: "disc",
      needed: 1,
      inHand: 0,
      decision: "renew",
    });
    expect(item(build, "disc")).toMatchObject(NEW);
  });

  it("is a new one of what was missing or gone", () => {
    const build = expectFindings(
      FITTING,
      `
      part plate "Plate"
        as_found: missing
      part lamp "Lamp"
        as_found: missing
      day 2026-05-02
        made: plate
        fitted: plate
        fitted: lamp
        ^^^^^^^^^^^^ fitted-not-in-hand
      `,
    );
    expect(item(build, "plate").items).toBe(2);
  });

  it("is a new one whenever a single-use part has been off", () => {
    const build = expectFindings(
      FITTING,
      offThen(
        `
  fitted: disc
  ^^^^^^^^^^^^ single-use-refitted
  removed: disc
  bought: 2 x disc
  fitted: disc
`,
        "  single_use: yes",
      ),
    );
    expect(item(build, "disc").items).toBe(3);
    expect(goodsAt(build, "disc").inHand).toBe(1);
  });

  it("is a new one where its date of making, its end or its batch is said", () => {
    const build = expectFindings(
      FITTING,
      offThen('  fitted: disc made 2026-02-10 expires 2034-02-10 batch "B 41"\n'),
    );
    expect(partAt(build, "disc").item).toMatchObject({
      number: 2,
      made: "2026-02-10",
      expires: "2034-02-10",
      batch: "B 41",
      readings: [],
    });
  });

  it("is a new one where it was received, bought or made, and nobody decided to keep the old", () => {
    for (const goods of ["bought: 1 x disc", "ordered: 1 x disc\n  received: 1 x disc", "made: disc"]) {
      expect(item(buildOf(offThen(`  ${goods}\n  fitted: disc\n`)), "disc")).toMatchObject(NEW);
    }
  });

  it("is the old one where it was decided to use it again, or where it was worked on", () => {
    const kept = ["decided: disc reuse", "repaired: disc", 'sent: disc to shop for "grinding"\n  back: disc'];
    for (const fact of kept) {
      const text = offThen(`  bought: 1 x disc\n  ${fact}\n  fitted: disc\n`);
      const build = buildOf(`supplier shop "Shop"\n${text}`);
      expect(item(build, "disc")).toMatchObject(OLD);
      expect(goodsAt(build, "disc").inHand).toBe(1);
    }
  });

  it("is the old one where those in hand are spares: the stock at the start, or the level that is kept", () => {
    const spare = buildOf(offThen("  fitted: disc\n", "  stock: 1"));
    expect(item(spare, "disc")).toMatchObject(OLD);
    const kept = buildOf(offThen("  bought: 1 x disc\n  fitted: disc\n", "  keep: 1"));
    expect(item(kept, "disc")).toMatchObject(OLD);
  });

  it("is a new one, from the stock too, where the old one is condemned", () => {
    const build = expectFindings(FITTING, offThen("  found: disc cracked\n  fitted: disc\n", "  stock: 1"));
    expect(item(build, "disc")).toMatchObject({ items: 2, events: 0 });
    expect(goodsAt(build, "disc").inHand).toBe(0);
  });

  it("is a new one of its count, or of as many as were decided", () => {
    const build = buildOf(`
      part valves "Valves"
        count: 8
        made: 2020-01-01
      day 2026-05-02
        ran: valves 3 h
        removed: valves
        decided: 2 x valves renew
        decided: 6 x valves reuse
        bought: 5 x valves
        fitted: valves
    `);
    expect(goodsAt(build, "valves").inHand).toBe(3);
    // Six old ones are among them: they are no younger, and have run no less.
    expect(partAt(build, "valves").item).toMatchObject({ number: 2, made: "2020-01-01" });
    expect(partAt(build, "valves").item.running.hours.toNumber()).toBe(3);
  });

  it("leaves readings, hours, findings and age with the old", () => {
    const build = buildOf(`
      part disc "Disc"
        made: 2020-01-01
      day 2026-05-02
        ran: disc 3 h
        measured: disc thickness 8 mm
        found: disc worn
        removed: disc
        decided: disc renew
        bought: 1 x disc
        fitted: disc
    `);
    const { item: present, earlier } = partAt(build, "disc");
    expect(present).toMatchObject({ number: 2, made: undefined, readings: [], events: [] });
    expect(present.running.hours.toNumber()).toBe(0);
    expect(earlier[0]).toMatchObject({ number: 1, made: "2020-01-01" });
    expect(earlier[0]?.running.hours.toNumber()).toBe(3);
  });

  it("of goods on the shelf at the start is the one that the block describes", () => {
    const build = expectFindings(
      FITTING,
      `
      part harness "Harness"
        as_found: shelf
        stock: 1
        expires: 2030-12-31
      part kit "Kit"
        as_found: shelf
      day 2026-05-02
        fitted: harness
        fitted: kit
        ^^^^^^^^^^^ fitted-not-in-hand
      `,
    );
    expect(partAt(build, "harness").item).toMatchObject({ number: 1, expires: "2030-12-31" });
    expect(goodsAt(build, "harness").inHand).toBe(0);
  });

  it("is a new one in the place of one that nobody wrote off, with that said", () => {
    const build = expectFindings(
      FITTING,
      `
      part disc "Disc"
      part hub "Hub"
      joint bolts "Bolts"
        joins: disc, hub
      day 2026-05-02
        decided: disc renew
        bought: 1 x disc
        fitted: disc
        ^^^^^^^^^^^^ fitted-twice
      `,
    );
    expect(item(build, "disc").items).toBe(2);
    expect(build.standing.joints.get(nodeAt(build, "bolts"))?.stage).toBe("open");
  });
});

describe("what is measured before a new one is fitted", () => {
  it("is said of the new one: the old one is off to be replaced, and new ones are in hand", () => {
    const build = buildOf(`
      part disc "Disc"
        limit: thickness min 8.4 mm
      day 2026-05-02
        removed: disc
        measured: disc thickness 8.2 mm
        decided: disc renew
        bought: 1 x disc
      day 2026-05-09
        measured: disc thickness 9.5 mm
        inspected: disc by eye
        fitted: disc
    `);
    const { item: present, earlier } = partAt(build, "disc");
    expect(present).toMatchObject({ number: 2, inHand: false });
    expect(present.readings.map(({ values: [value] }) => value.value.toNumber())).toEqual([9.5]);
    expect(present.events.map(({ is }) => is)).toEqual(["inspected", "measured"].reverse());
    expect(earlier[0]?.readings).toHaveLength(1);
    expect(goodsAt(build, "disc").inHand).toBe(0);
  });

  it("is said of the old one as long as no new one is in hand, or it is still on", () => {
    const build = buildOf(`
      part a "A"
      part b "B"
      day 2026-05-02
        removed: a
        decided: a, b renew
        bought: 1 x b
        measured: a play 0.3 mm
        measured: b play 0.3 mm
    `);
    expect(item(build, "a")).toMatchObject({ items: 1, readings: 1 });
    expect(item(build, "b")).toMatchObject({ items: 1, readings: 1 });
  });

  it("is left behind with a new one that is rejected", () => {
    const build = buildOf(`
      part joint_pin "Ball joint"
      day 2026-05-02
        removed: joint_pin
        found: joint_pin play
        decided: joint_pin renew
        bought: 1 x joint_pin
        found: joint_pin wrong "taper from the wrong end"
        rejected: 1 x joint_pin "taper wrong"
      day 2026-05-09
        bought: 1 x joint_pin
        fitted: joint_pin
    `);
    const { item: present, earlier } = partAt(build, "joint_pin");
    expect(present).toMatchObject({ number: 3, events: [] });
    expect(earlier.map(({ events }) => events.map(({ is }) => is))).toEqual([
      ["found"],
      ["found", "decided"],
    ]);
    expect(goodsAt(build, "joint_pin").inHand).toBe(0);
  });
});

describe("what speaks against an item that goes back", () => {
  it("is that it is condemned: one complaint, with what was found", () => {
    const build = expectFindings(
      FITTING,
      `
      part arm "Arm"
        limit: length 300..301 mm
      day 2026-05-02
        removed: arm
        found: arm bent
        measured: arm length 305 mm
        fitted: arm
        ^^^^^^^^^^^ fitted-condemned
      `,
    );
    expect(findingOf(build, "fitted-condemned").data).toEqual({ what: "arm", why: "bent" });
  });

  it("is a reading outside its limit", () => {
    expectFindings(
      FITTING,
      `
      part arm "Arm"
        limit: length 300..301 mm
      day 2026-05-02
        removed: arm
        measured: arm length 305 mm
        fitted: arm
        ^^^^^^^^^^^ fitted-out-of-limit
      `,
    );
  });

  it("is that nobody looked at a safety-critical part of unknown past", () => {
    expectFindings(
      FITTING,
      `
      vehicle "Plover"
        past: unknown
      part a "A"
        safety: critical
      part b "B"
        safety: critical
      part c "C"
      day 2026-05-02
        removed: a, b, c
        inspected: b by eye
        fitted: a, b, c
        ^^^^^^^^^^^^^^^ fitted-not-inspected
      `,
    );
  });
});
