/** What lies just outside of what is tabulated or spelt as the trade spells it: it has no answer, and no wrong one. */
import { describe, expect, it } from "vitest";
import { largestResistance } from "../../server/trade/electrics.ts";
import type { Thread } from "../../server/trade/thread.ts";
import { readThread } from "../../server/trade/thread.ts";
import { externalThreadLimits } from "../../server/trade/thread-tolerances.ts";
import { inUnitsOf } from "../../server/trade/threads.ts";

function thread(text: string): Thread {
  const read = readThread(text);
  if ("fault" in read) throw new Error(`${text} is no thread`);
  return read;
}

describe("a thread", () => {
  it.each(["2 BAX", "2 BA 5", "x2 BA", "M8 LH x1", "M8LHx1", "LH", "M", "M8x", "BA"])(
    "is not read in %j",
    (text) => {
      expect(readThread(text)).toMatchObject({ fault: { kind: "unreadable" } });
    },
  );

  it.each([
    ["M8x9", "M8x9", "ISO 261", ["M8x1.25", "M8x1", "M8x0.75"]],
    ["17 BA", "17 BA", "BS 93", ["0 BA", "16 BA"]],
  ])("%s is in no table, and those that are there are named", (text, wanted, table, known) => {
    expect(readThread(text)).toMatchObject({ fault: { kind: "not-in-table", wanted, table, known } });
  });

  it("of a size that is in no table is named as it was written", () => {
    expect(readThread("M7.3")).toMatchObject({ fault: { kind: "not-in-table", wanted: "M7.3" } });
  });

  it("is left-handed where it ends with LH, apart or not", () => {
    expect([thread("M8 LH").hand, thread("M8LH").hand, thread("2 BA LH").hand, thread("M8").hand]).toEqual([
      "left",
      "left",
      "left",
      "right",
    ]);
  });

  it("has no limits of size outside of the table of ISO 965-1", () => {
    // Its table goes from 0.99 to 355 mm; only ISO metric threads are in it.
    expect(externalThreadLimits(thread("M8"))).toBeDefined();
    expect(externalThreadLimits({ ...thread("M8"), majorDiameter: 0.4 })).toBeUndefined();
    expect(externalThreadLimits({ ...thread("M8"), majorDiameter: 0.0009 })).toBeUndefined();
    expect(externalThreadLimits({ ...thread("M8"), pitch: 0.0013 })).toBeUndefined();
    expect(externalThreadLimits(thread("1/4-20 UNC"))).toBeUndefined();
  });

  it("has its lengths and areas in the units that go with it", () => {
    expect(inUnitsOf(thread("1/4-20 UNC"), "length", 0.00127)).toEqual({ value: 0.00127, unit: "in" });
    expect(inUnitsOf(thread("1/4-20 UNC"), "area", 0.00002)).toEqual({ value: 0.00002, unit: "in2" });
    expect(inUnitsOf(thread("M8"), "length", 0.00125)).toEqual({ value: 0.00125 });
  });
});

describe("a wire", () => {
  it("has a largest resistance where IEC 60228 lists its size, and of the kind that it lists", () => {
    // IEC 60228: 1 mm² at most 18.1 Ω/km solid, 19.5 Ω/km flexible.
    expect(largestResistance(1e-6, "solid")).toBeCloseTo(0.0181, 6);
    expect(largestResistance(1e-6, "flexible")).toBeCloseTo(0.0195, 6);
    expect(largestResistance(1.3e-6, "flexible")).toBeUndefined();
  });
});
