import { describe, expect, it } from "vitest";
import type { ReferenceNode } from "../../grammar/syntax.ts";
import { expectMarked, readRecord, recordIn, said } from "./marked-log.ts";

/** The segments of the first reference of `removed: …`. */
function segments(text: string): unknown {
  const what = readRecord("day", `removed: ${text}`).values.get("what");
  return (what as { items: ReferenceNode[] } | undefined)?.items[0]?.segments;
}

describe("references", () => {
  it("are paths, of names joined by dots", () => {
    expect(segments("front.left.disc")).toEqual([
      { is: "name", text: "front" },
      { is: "name", text: "left" },
      { is: "name", text: "disc" },
    ]);
    expect(segments("vehicle")).toEqual([{ is: "name", text: "vehicle" }]);
    expect(segments("A1_b.C2")).toEqual([
      { is: "name", text: "A1_b" },
      { is: "name", text: "C2" },
    ]);
  });

  it("are sets with a star or with braces", () => {
    expect(segments("front.*.disc")).toEqual([
      { is: "name", text: "front" },
      { is: "every" },
      { is: "name", text: "disc" },
    ]);
    expect(segments("front.left.{disc, hub}")).toEqual([
      { is: "name", text: "front" },
      { is: "name", text: "left" },
      { is: "choice", options: ["disc", "hub"] },
    ]);
    expect(segments("front.{left.disc,right.*}.bolts")).toEqual([
      { is: "name", text: "front" },
      { is: "choice", options: ["left.disc", "right.*"] },
      { is: "name", text: "bolts" },
    ]);
    expect(segments("{hub}")).toEqual([{ is: "choice", options: ["hub"] }]);
  });

  it("keep their text as written", () => {
    const record = readRecord("day", "removed: front.{ disc ,hub }");
    expect(said(record)).toEqual({ what: ["front.{ disc ,hub }"] });
  });

  it("may be a word that reads as a thread: that nothing can have that name is said elsewhere", () => {
    expect(segments("M10")).toEqual([{ is: "name", text: "M10" }]);
    expect(segments("M10.bolt")).toEqual([
      { is: "name", text: "M10" },
      { is: "name", text: "bolt" },
    ]);
  });
});

describe("a bad reference costs that reference", () => {
  it("and no other", () => {
    const record = recordIn("day", "removed: front.left.hub, 12, front.left.disc");
    expect(record.broken).toBe(false);
    expect(record.faults.map(({ code, found }) => [code, found])).toEqual([["unreadable-value", "12"]]);
    expect(said(record)).toEqual({ what: ["front.left.hub", "front.left.disc"] });
  });

  it("a hyphen, a slash or a stray dot makes it another name than it seems", () => {
    expectMarked(`
      day 2026-05-02
        removed: front-left.hub, rear.hub
                 ^^^^^^^^^^^^^^ unreadable-value
        removed: hub-2, rear.hub
                 ^^^^^ unreadable-value
        removed: front/left
                 ^^^^^^^^^^ unreadable-value
        removed: front.left., rear.hub
                 ^^^^^^^^^^^ unreadable-value
        removed: front..left
                 ^^^^^^^^^^^ unreadable-value
        removed: .left
                 ^ unreadable-value
    `);
  });

  it("an open brace takes with it all names behind it, up to a clause", () => {
    const document = expectMarked(`
      day 2026-05-02
        removed: rear.hub, front.left.{disc, hub by "JR" "late"
                           ^^^^^^^^^^^^^^^^ unreadable-value
        removed: {disc, hub
                 ^ unreadable-value
    `);
    const [, first, second] = document.blocks[0]?.items ?? [];
    expect(first?.kind === "record" && said(first)).toEqual({
      what: ["rear.hub"],
      by: '"JR"',
      note: '"late"',
    });
    expect(second?.kind === "record" && second.broken).toBe(true);
  });

  it.each(["front.{disc hub}", "front.{}", "front.{disc,}", "front.{disc, 2nd}", "front.{disc, a-b}", "{,}"])(
    "%s is no set",
    (text) => {
      expect(recordIn("day", `removed: ${text}`)).toMatchObject({
        broken: true,
        faults: [{ code: "unreadable-value", found: text }],
      });
    },
  );

  it("a missing comma is named", () => {
    const [fault] = recordIn("day", "removed: hub disc").faults;
    expect(fault).toMatchObject({
      code: "unreadable-value",
      found: "disc",
      expected: "a comma between the two",
    });
    expect(fault?.fixes[0]).toMatchObject({
      start: fault?.start,
      end: fault?.start,
      text: ", ",
      sure: false,
    });
  });

  it("a word of a clause without the word before it is no missing comma", () => {
    const [fault] = recordIn("day", "locked: bolts threadlocker").faults;
    expect(fault).toMatchObject({
      code: "unreadable-value",
      found: "threadlocker",
      expected: "with threadlocker",
    });
    expect(fault?.fixes[0]).toMatchObject({
      start: fault?.start,
      end: fault?.end,
      text: "with threadlocker",
    });
  });

  it("so is one too many", () => {
    expectMarked(`
      day 2026-05-02
        removed: hub,, disc
                     ^ unreadable-value
        removed: , hub
                 ^ unreadable-value
        removed: hub, by "JR"
                    ^ unreadable-value
        removed: hub, "note"
                    ^ unreadable-value
    `);
    expect(said(recordIn("day", "removed: hub,, disc"))).toEqual({ what: ["hub", "disc"] });
  });
});

describe("counted references", () => {
  it.each([
    ["4 x disc_nut", { count: "4", reference: "disc_nut" }],
    ["4x disc_nut", { count: "4", reference: "disc_nut" }],
    ["4 × disc_nut", { count: "4", reference: "disc_nut" }],
    ["4×disc_nut", { count: "4", reference: "disc_nut" }],
    ["2 x front.{left, right}.hub", { count: "2", reference: "front.{left, right}.hub" }],
    ["1 x x.nut", { count: "1", reference: "x.nut" }],
  ])("%s", (text, expected) => {
    expect(said(readRecord("day", `counted: ${text}`))).toEqual({ items: [expected] });
  });

  it("need their number where money or stock hangs on it", () => {
    const record = recordIn("day", "used: disc_nut, 2 x hose");
    expect(said(record)).toEqual({ items: [{ count: "2", reference: "hose" }] });
    expect(record.faults.map(({ code, found, fixes }) => [code, found, fixes[0]?.text])).toEqual([
      ["unreadable-value", "disc_nut", "1 x "],
    ]);
    expect(said(readRecord("day", "decided: disc_nut renew"))).toEqual({
      what: [{ reference: "disc_nut" }],
      decision: "renew",
    });
  });

  it("are never negative, and need their x", () => {
    expect(recordIn("day", "counted: -4 x disc_nut").faults[0]).toMatchObject({ found: "-4" });
    expect(recordIn("day", "counted: 4 disc_nut").broken).toBe(true);
  });

  it("carry a price, each its own or one behind the other clauses for all that have none", () => {
    expect(
      said(
        readRecord("day", "ordered: 2 x a at 3.00 GBP, 1 x b, 4 x c from north at 5.00 GBP due 2026-05-20"),
      ),
    ).toEqual({
      items: [
        { count: "2", reference: "a", at: "3.00 GBP" },
        { count: "1", reference: "b", at: "5.00 GBP" },
        { count: "4", reference: "c", at: "5.00 GBP" },
      ],
      from: "north",
      due: "2026-05-20",
    });
    expect(said(readRecord("day", "bought: 4 x a from north at 0.85 GBP"))).toEqual({
      items: [{ count: "4", reference: "a", at: "0.85 GBP" }],
      from: "north",
    });
    expectMarked(`
      day 2026-05-02
        bought: 4 x a at 0.85 GBP from north at 0.90 GBP
                                                ^^^^^^^^ unreadable-value
        used: 4 x a at 0.85 GBP
                       ^^^^^^^^ unreadable-value
    `);
  });
});
