import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Asker, AskerKind } from "../../server/plan/demand.ts";
import { combineDemand, countToOrder } from "../../server/plan/demand.ts";

function asks(kind: AskerKind, count: number, why = ""): Asker<string> {
  return { kind, count, why };
}

describe("demand", () => {
  test("adds askers of one kind", () => {
    expect(combineDemand([asks("joint", 4), asks("joint", 2)]).needed).toBe(6);
  });

  test("takes the larger of two kinds", () => {
    expect(combineDemand([asks("decision", 4), asks("joint", 4), asks("joint", 2)]).needed).toBe(6);
    expect(combineDemand([asks("decision", 8), asks("joint", 4), asks("joint", 2)]).needed).toBe(8);
  });

  test("keeps every why, the larger kind first", () => {
    const bolts = asks("decision", 4, "decided to renew");
    const [left, right] = [asks("joint", 4, "left hub is open"), asks("joint", 4, "right hub is open")];
    expect(combineDemand([bolts, left, right]).kinds).toEqual([
      { kind: "joint", count: 8, askers: [left, right] },
      { kind: "decision", count: 4, askers: [bolts] },
    ]);
  });

  test("names equal kinds in the order in which they first asked", () => {
    const kinds = combineDemand([asks("job", 1), asks("kit", 1)]).kinds.map(({ kind }) => kind);
    expect(kinds).toEqual(["job", "kit"]);
  });

  test("of nobody, or for nothing, is none", () => {
    expect(combineDemand([])).toEqual({ needed: 0, kinds: [] });
    expect(combineDemand([asks("job", 0)])).toEqual({ needed: 0, kinds: [] });
  });

  test("never falls when one more asks, and does not depend on who asks first", () => {
    const kind = fc.constantFrom<AskerKind>("decision", "kit", "joint", "single_use", "job", "life");
    const asker = fc.tuple(kind, fc.integer({ min: 0, max: 20 })).map(([name, count]) => asks(name, count));
    fc.assert(
      fc.property(fc.array(asker), asker, (askers, another) => {
        const { needed } = combineDemand(askers);
        expect(combineDemand([...askers, another]).needed).toBeGreaterThanOrEqual(needed);
        expect(combineDemand(askers.toReversed()).needed).toBe(needed);
      }),
    );
  });
});

describe("the count to order", () => {
  test.each([
    [{ needed: 4, keep: 2, inHand: 1, onOrder: 3 }, 2],
    [{ needed: 4, keep: 0, inHand: 4, onOrder: 0 }, 0],
    [{ needed: 1, keep: 0, inHand: 6, onOrder: 0 }, 0],
    [{ needed: 0, keep: 5, inHand: 3, onOrder: 1 }, 1],
  ])("of %o is %d", (supply, expected) => {
    expect(countToOrder(supply)).toBe(expected);
  });
});
