import { describe, expect, test } from "vitest";
import type { Thread } from "../../server/trade/thread.ts";
import { printBolt, readBolt, readThread, sameThread, threadsOfSeries } from "../../server/trade/thread.ts";
import { minorDiameter, pitchDiameter, rootDiameter, stressArea } from "../../server/trade/threads.ts";

function thread(text: string): Thread {
  const read = readThread(text);
  if ("fault" in read) throw new Error(JSON.stringify(read.fault));
  return read;
}

function fault(text: string) {
  const read = readThread(text);
  return "fault" in read ? read.fault : undefined;
}

function bolt(text: string) {
  const read = readBolt(text);
  if ("fault" in read) throw new Error(JSON.stringify(read.fault));
  return read;
}

const mm = (metres: number | undefined) =>
  metres === undefined ? undefined : Number((metres * 1000).toFixed(4));

describe("a thread is read as it is written", () => {
  test.each([
    // text, canonical name, diameter and pitch in mm
    ["M10", "M10", 10, 1.5],
    ["M10x1.5", "M10", 10, 1.5],
    ["M10x1.25", "M10x1.25", 10, 1.25],
    ["M10×1.25", "M10x1.25", 10, 1.25],
    ["M10 x 1.25", "M10x1.25", 10, 1.25],
    ["M8x1 LH", "M8x1 LH", 8, 1],
    ["3/8-24 UNF", "3/8-24 UNF", 9.525, 1.0583],
    ["3/8 UNF", "3/8-24 UNF", 9.525, 1.0583],
    ["1/4-20 UNC", "1/4-20 UNC", 6.35, 1.27],
    ["#10-24 UNC", "#10-24 UNC", 4.826, 1.0583],
    ["10-24 UNC", "#10-24 UNC", 4.826, 1.0583],
    ["1-8 UNC", "1-8 UNC", 25.4, 3.175],
    ["1-64 UNC", "#1-64 UNC", 1.8542, 0.3969],
    ["1-1/4-12 UNF", "1-1/4-12 UNF", 31.75, 2.1167],
    ["3/8 BSF", "3/8 BSF", 9.525, 1.27],
    ["1/4 BSW", "1/4 BSW", 6.35, 1.27],
    ["2 BA", "2 BA", 4.7, 0.81],
    ["0 BA LH", "0 BA LH", 6, 1],
    ["1/2-20 BSC", "1/2-20 BSC", 12.7, 1.27],
    ["1/2 BSC", "1/2-26 BSC", 12.7, 0.9769],
    ["1/4 BSP", "1/4 BSP", 13.157, 1.3368],
  ])("%s", (text, designation, diameter, pitch) => {
    const read = thread(text);
    expect([read.designation, mm(read.majorDiameter), mm(read.pitch)]).toEqual([
      designation,
      diameter,
      pitch,
    ]);
  });

  test("its canonical name reads as the same thread", () => {
    for (const series of ["M", "UNC", "UNF", "UNEF", "BSW", "BSF", "BA", "BSC", "BSP"] as const) {
      const all = threadsOfSeries(series);
      expect(all.length).toBeGreaterThan(10);
      for (const each of all) expect(thread(each.designation)).toEqual(each);
    }
  });

  test("a pitch that ISO 261 does not know for the diameter is named with those it knows", () => {
    expect(fault("M10x2")).toEqual({
      kind: "not-in-table",
      wanted: "M10x2",
      table: "ISO 261",
      known: ["M10x1.5", "M10x1.25", "M10x1", "M10x0.75"],
    });
  });

  test("a finer metric pitch than listed is a special thread, without a standard", () => {
    expect(thread("M12x1.25").standard).toBe("ISO 261");
    expect(thread("M12x0.75").standard).toBeUndefined();
    expect(thread("M13x1").standard).toBeUndefined();
  });

  test("a diameter without a coarse pitch needs its pitch said", () => {
    expect(fault("M25")).toMatchObject({ kind: "not-in-table", known: ["M25x2", "M25x1.5", "M25x1"] });
  });

  test("threads per inch that the series does not have for the size are refused, with the right ones", () => {
    expect(fault("3/8-20 UNF")).toMatchObject({ kind: "not-in-table", known: ["3/8-24 UNF"] });
    expect(fault("17 BA")).toMatchObject({ kind: "not-in-table", table: "BS 93" });
  });

  test.each(["", "M", "10x1.25", "M10x", "3/8", "m10", "UNF 3/8", "M10x1.25x45", "2 ba"])(
    "%j is no thread",
    (text) => {
      expect(fault(text)?.kind).toBe("unreadable");
    },
  );
});

describe("a bolt adds its length", () => {
  test.each([
    ["M10x1.25x45", "M10x1.25", 45],
    ["M10 x 1.25 x 45", "M10x1.25", 45],
    // 30 is no pitch of M8, so it is the length of a coarse one
    ["M8x30", "M8", 30],
    ["M8x1", "M8x1", undefined],
    ["M8x1x30", "M8x1", 30],
    ["M8x30 LH", "M8 LH", 30],
    ["M8 LH x 30", "M8 LH", 30],
    ["M6", "M6", undefined],
    ["3/8-24 UNF x 1-1/4 in", "3/8-24 UNF", 31.75],
    ["3/8-24 UNF x 1 1/4 in", "3/8-24 UNF", 31.75],
    ["1/4 BSF x 20 mm", "1/4 BSF", 20],
    ["2 BA x 1/2 in", "2 BA", 12.7],
    ["1/4 BSW", "1/4 BSW", undefined],
  ])("%s", (text, designation, length) => {
    const read = bolt(text);
    expect([read.thread.designation, mm(read.length)]).toEqual([designation, length]);
    expect(readBolt(printBolt(read))).toEqual(read);
  });

  test("and is printed in the canonical way", () => {
    expect(printBolt(bolt("M10 x 1.25 x 45"))).toBe("M10x1.25x45");
    expect(printBolt(bolt("M8x30 LH"))).toBe("M8x30 LH");
    expect(printBolt(bolt("3/8-24 UNF x 1 1/4 in"))).toBe("3/8-24 UNF x 1-1/4 in");
    expect(printBolt(bolt("1/4 BSF x 20 mm"))).toBe("1/4 BSF x 20 mm");
  });

  test.each([
    ["M8x30", "M8", 30],
    ["M8x1x30 mm", "M8x1", 30],
    ["M8x1.25 LH x 30", "M8 LH", 30],
    ["M8x30 LH", "M8 LH", 30],
    ["M8x22.5", "M8", 22.5],
    ["M8 LH", "M8 LH", undefined],
    ["3/8-24 UNF x 1-1/4 in", "3/8-24 UNF", 31.75],
    ["3/8-24 UNF x 12-1/4 in", "3/8-24 UNF", 311.15],
    ["3/8-24 UNF × 1 1/4 in", "3/8-24 UNF", 31.75],
    ["1/4 BSW x 1.5 in", "1/4 BSW", 38.1],
    ["1/4 BSW x 25.5 mm", "1/4 BSW", 25.5],
    ["3/8 UNF", "3/8-24 UNF", undefined],
  ])("%s is a bolt", (text, designation, length) => {
    const read = bolt(text);
    expect([read.thread.designation, mm(read.length)]).toEqual([designation, length]);
  });

  test.each([
    "1/4 BSW x 0 in",
    "1/4 BSW x 1.x in",
    "1/4 BSW x 1/2x in",
    "1/4 BSW x 1.5.5 in",
    "M8x1.25x30x2",
    "M8 30",
    "bolt M8x30",
  ])("%s is none, and that is said of the whole", (text) => {
    expect(readBolt(text)).toEqual({
      fault: {
        kind: "unreadable",
        text,
        expected: "a thread and a length such as M10x1.25x45 or 3/8-24 UNF x 1-1/4 in",
      },
    });
  });

  test("a thread that is not in its table is told as that", () => {
    expect(readBolt("3/8-25 UNF x 1 in")).toEqual({
      fault: { kind: "not-in-table", wanted: "3/8-25 UNF", table: "ASME B1.1", known: ["3/8-24 UNF"] },
    });
  });

  test("a length that is none is unreadable", () => {
    expect(readBolt("3/8-24 UNF x 1/0 in")).toMatchObject({ fault: { kind: "unreadable" } });
    expect(readBolt("M8x0")).toMatchObject({ fault: { kind: "unreadable" } });
  });
});

describe("threads that go together", () => {
  test("are alike in form, diameter, pitch and hand, whatever their name", () => {
    expect(sameThread(thread("M10"), thread("M10x1.5"))).toBe(true);
    expect(sameThread(thread("M10"), thread("M10x1.25"))).toBe(false);
    expect(sameThread(thread("M10"), thread("M10 LH"))).toBe(false);
  });

  test("1/4-20 UNC and 1/4 BSW share diameter and pitch, but not the angle of the flanks", () => {
    expect(sameThread(thread("1/4-20 UNC"), thread("1/4 BSW"))).toBe(false);
  });
});

test("of every thread the diameters fall from major to root, and the stress area lies between", () => {
  for (const series of ["M", "UNC", "UNF", "BSW", "BSF", "BA", "BSC", "BSP"] as const) {
    for (const each of threadsOfSeries(series)) {
      expect(pitchDiameter(each)).toBeLessThan(each.majorDiameter);
      expect(minorDiameter(each)).toBeLessThan(pitchDiameter(each));
      expect(rootDiameter(each)).toBeLessThanOrEqual(minorDiameter(each));
      const stressDiameter = Math.sqrt((4 * stressArea(each)) / Math.PI);
      expect(stressDiameter).toBeGreaterThan(rootDiameter(each));
      expect(stressDiameter).toBeLessThan(pitchDiameter(each));
    }
  }
});
