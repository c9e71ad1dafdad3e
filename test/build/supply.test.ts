import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { buildOf, expectFindings, findingOf, goodsAt, lineAndText } from "./marked-build.ts";

const GOODS = ["received-over-order", "unknown-reference", "fitted-not-in-hand"] as const;

/** What is in hand and what is still on order of a part. */
function goods(build: Build, path = "disc") {
  const { inHand, orders } = goodsAt(build, path);
  return { inHand, onOrder: orders.reduce((sum, { count, received }) => sum + count - received, 0) };
}

/** A disc and the lines of a day about it. */
function disc(lines: string, records = ""): Build {
  return expectFindings(
    GOODS,
    `supplier tatlow "Tatlow"\npart disc "Disc"\n${records}\nday 2026-05-02\n${lines}`,
  );
}

describe("in hand", () => {
  it("is the stock at the start", () => {
    expect(goods(disc("", "  stock: 3"))).toEqual({ inHand: 3, onOrder: 0 });
  });

  it("grows by what is received, bought and made", () => {
    const build = disc(`
  ordered: 2 x disc
  received: 2 x disc
  bought: 3 x disc
  made: disc
`);
    expect(goods(build)).toEqual({ inHand: 6, onOrder: 0 });
  });

  it("shrinks by what is rejected, returned, used and newly fitted", () => {
    const build = disc(
      `
  rejected: 1 x disc "runout"
  returned: 2 x disc to tatlow
  used: 1 x disc
  removed: disc
  decided: disc renew
  fitted: disc
`,
      "  stock: 9",
    );
    expect(goods(build)).toEqual({ inHand: 9 - 1 - 1 - 1 - 1, onOrder: 0 });
  });

  it("shrinks by the single-use hardware of a joint that is tightened after it was open", () => {
    const build = expectFindings(
      GOODS,
      `
      part nut "Nut"
        as_found: shelf
        stock: 10
      part hub "Hub"
      joint hub_nut "Hub nut"
        joins: hub
        torque: 24 N.m
        uses: 2 x nut
      day 2026-05-02
        removed: hub
        fitted: hub
        torqued: hub_nut 24 N.m
        torqued: hub_nut 24 N.m
      `,
    );
    expect(goods(build, "nut").inHand).toBe(8);
  });

  it("is set by counting", () => {
    const build = disc("  used: 1 x disc\n  counted: 12 x disc\n  used: 2 x disc\n", "  stock: 3");
    expect(goods(build).inHand).toBe(10);
  });

  it("is of the part, whatever assembly, set or tail it is named by", () => {
    const build = expectFindings(
      GOODS,
      `
      part front.left.disc "Disc"
      part front.right.disc "Disc"
      day 2026-05-02
        bought: 2 x front.*.disc
        bought: 1 x left.disc
        bought: 1 x front
      `,
    );
    expect([goods(build, "front.left.disc").inHand, goods(build, "front.right.disc").inHand]).toEqual([4, 3]);
  });

  it("never goes below nought", () => {
    expect(goods(disc("  used: 2 x disc\n  bought: 3 x disc\n")).inHand).toBe(3);
  });

  it("knows each fact that changed it", () => {
    const build = disc("  bought: 3 x disc\n  used: 1 x disc\n  counted: 2 x disc\n");
    const { movements } = goodsAt(build, "disc");
    expect(movements.map(({ change, fact }) => [change, fact.fact.word])).toEqual([
      [3, "bought"],
      [-1, "used"],
    ]);
  });

  it("is made in as many as were decided to be made", () => {
    const build = disc("  decided: 3 x disc make\n  made: disc\n", "  count: 4");
    expect(goods(build).inHand).toBe(3);
  });
});

describe("orders", () => {
  it("are open until they are received, the oldest first", () => {
    const build = disc(`
  ordered: 2 x disc ref "A"
  ordered: 3 x disc ref "B"
  received: 3 x disc
`);
    const { orders } = goodsAt(build, "disc");
    expect(orders.map(({ count, received }) => [count, received])).toEqual([
      [2, 2],
      [3, 1],
    ]);
    expect(goods(build)).toEqual({ inHand: 3, onOrder: 2 });
  });

  it("can be received whole by their ref", () => {
    const build = disc(`
  ordered: 2 x disc ref "A"
  ordered: 3 x disc ref "B"
  received: order "B"
`);
    expect(goods(build)).toEqual({ inHand: 3, onOrder: 2 });
  });

  it("can be received in part by their ref", () => {
    const build = disc(`
  ordered: 2 x disc ref "A"
  ordered: 3 x disc ref "B"
  received: 1 x disc order "B"
  received: order "B"
`);
    expect(goods(build)).toEqual({ inHand: 3, onOrder: 2 });
  });

  it("hold the price of one, each its own or the one behind the other clauses", () => {
    const build = disc(
      "  ordered: 2 x disc at 31.50 GBP from tatlow\n  ordered: 1 x disc from tatlow at 30.00 GBP\n",
    );
    expect(goodsAt(build, "disc").orders.map(({ price }) => price?.amount.toNumber())).toEqual([31.5, 30]);
  });

  it("are received in facts of their own day, across files", () => {
    const build = buildOf({
      "b.cotter": 'part disc "Disc"\n\nday 2026-05-02\n  ordered: 2 x disc ref "A"\n',
      "a.cotter": 'day 2026-05-09\n  received: order "A"\n',
    });
    expect(goods(build)).toEqual({ inHand: 2, onOrder: 0 });
  });

  it("are complained about where more arrives than is open; it arrives all the same", () => {
    const build = disc(`
  ordered: 2 x disc
  received: 3 x disc
  ^^^^^^^^^^^^^^^^^^ received-over-order
`);
    expect(findingOf(build, "received-over-order").data).toEqual({ what: "disc", received: 3, open: 2 });
    expect(goods(build)).toEqual({ inHand: 3, onOrder: 0 });
  });

  it("are complained about where nothing was ordered at all", () => {
    disc(`
  received: 1 x disc
  ^^^^^^^^^^^^^^^^^^ received-over-order
`);
  });

  it("are complained about where a whole order is received twice; it arrives once", () => {
    const build = disc(`
  ordered: 2 x disc ref "A"
  received: order "A"
  received: order "A"
  ^^^^^^^^^^^^^^^^^^^ received-over-order
`);
    expect(goods(build).inHand).toBe(2);
  });

  it("are complained about where nobody gave an order of that ref, with those that are open", () => {
    const build = disc(`
  ordered: 2 x disc ref "JR-101"
  received: order "JR-110"
                  ^^^^^^^^ unknown-reference
`);
    const { data, fixes } = findingOf(build, "unknown-reference");
    expect(data.text).toBe('order "JR-110"');
    expect(fixes.map(({ text }) => text)).toEqual(['"JR-101"']);
  });
});

describe("a rejected one", () => {
  it("is no longer in hand, and opens no order again", () => {
    const build = disc('  ordered: 2 x disc\n  received: 2 x disc\n  rejected: 1 x disc "runout"\n');
    expect(goods(build)).toEqual({ inHand: 1, onOrder: 0 });
  });

  it("does not count twice when it is sent back", () => {
    const build = disc(`
  ordered: 3 x disc
  received: 3 x disc
  rejected: 1 x disc "runout"
  returned: 1 x disc to tatlow credit 46.00 GBP
  returned: 1 x disc to tatlow "one too many"
`);
    expect(goods(build).inHand).toBe(1);
  });

  it("was already off the shelf where it had been fitted", () => {
    const build = disc(`
  removed: disc
  decided: disc renew
  ordered: 1 x disc
  received: 1 x disc
  fitted: disc
  removed: disc
  rejected: 1 x disc "runout"
  ordered: 1 x disc
  received: 1 x disc
`);
    expect(goods(build)).toEqual({ inHand: 1, onOrder: 0 });
  });
});

describe("goods that were taken before they were written down", () => {
  it("are not in hand once their order is received", () => {
    const build = disc(`
  removed: disc
  decided: disc renew
  ordered: 4 x disc ref "A"
  fitted: disc
  ^^^^^^^^^^^^ fitted-not-in-hand
  received: order "A"
`);
    expect(goods(build)).toEqual({ inHand: 3, onOrder: 0 });
  });

  it("are not owed where nothing was on order", () => {
    expect(goods(disc("  used: 2 x disc\n  ordered: 4 x disc\n  received: 4 x disc\n")).inHand).toBe(4);
  });
});

describe("reconditioned:", () => {
  const CALIPER = `
part caliper "Caliper"
  count: 2
  kit: kit
part kit "Seal kit"
  as_found: shelf
`;

  it("spends a kit for each that was to be reconditioned", () => {
    const build = buildOf(`${CALIPER}
day 2026-05-02
  removed: caliper
  decided: caliper recondition
  bought: 3 x kit
  reconditioned: caliper
`);
    expect(goods(build, "kit").inHand).toBe(1);
  });

  it("spends none for those that are to go on as they are", () => {
    const build = buildOf(`${CALIPER}
day 2026-05-02
  removed: caliper
  decided: 1 x caliper recondition
  bought: 3 x kit
  reconditioned: caliper
`);
    expect(goods(build, "kit").inHand).toBe(2);
  });

  it("is not finished without its kit in hand: the caliper stays condemned", () => {
    const build = expectFindings(
      ["fitted-condemned"],
      `${CALIPER}
day 2026-05-02
  removed: caliper
  decided: caliper recondition
  bought: 1 x kit
  reconditioned: caliper
  fitted: caliper
  ^^^^^^^^^^^^^^^ fitted-condemned
`,
    );
    const { seeAlso } = findingOf(build, "fitted-condemned");
    expect(seeAlso.map(({ place }) => lineAndText(place))).toEqual(["9: decided: caliper recondition"]);
  });
});
