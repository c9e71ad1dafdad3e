import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { SyntaxFix } from "../../grammar/syntax.ts";
import { lowerBlock } from "../../server/build/lowering/block.ts";
import type { TextFault } from "../../server/build/lowering/fault.ts";
import { formatQuantity } from "../../server/quantities/quantity.ts";

const HEADERS = {
  vehicle: 'vehicle "Plover"',
  supplier: 'supplier tatlow "Tatlow"',
  gauge: 'gauge mic "Micrometer"',
  assembly: 'assembly front "Front"',
  part: 'part disc "Disc"',
  joint: 'joint bolts "Bolts"',
  system: 'system brakes "Brakes"',
  circuit: 'circuit fan "Fan"',
  job: 'job strip "Strip"',
  day: "day 2026-05-02",
} as const;

type Block = keyof typeof HEADERS;

function lowered(block: Block, ...lines: string[]) {
  const text = [HEADERS[block], ...lines.map((line) => `  ${line}`)].join("\n");
  const [node] = Document.read(text).blocks;
  if (node === undefined) throw new Error("no block");
  return { text, ...lowerBlock(node) };
}

/** The complaint about a line: what it stands at, its code, what is expected, and the mends, the sure ones with `!`. */
function complaints(block: Block, ...lines: string[]): string[] {
  const { text, faults } = lowered(block, ...lines);
  return faults.map((fault) => {
    const at = text.slice(fault.start, fault.end);
    const fixes = fault.fixes.map((fix) => `${fix.sure ? "!" : ""}${mended(text, fault, fix)}`);
    return `${at}: ${fault.code}${fixes.length === 0 ? "" : ` -> ${fixes.join(" | ")}`}`;
  });
}

/** The complained stretch as a mend would leave it. */
function mended(text: string, { start, end }: TextFault, fix: SyntaxFix): string {
  return text.slice(start, fix.start) + fix.text + text.slice(fix.end, Math.max(end, fix.end));
}

function expectations(block: Block, line: string): string[] {
  return lowered(block, line).faults.map(({ expected }) => expected);
}

describe("a figure without a unit", () => {
  it.each([
    ["vehicle", "tax: 20", "20: wrong-dimension -> !20 %"],
    ["vehicle", "tax: 0.2", "0.2: wrong-dimension -> 0.2 %"],
    ["vehicle", "near: 10", "10: wrong-dimension -> !10 %"],
    ["vehicle", "week: tue 2", "2: wrong-dimension -> 2 h | 2 min"],
    ["supplier", "lead: 5", "5: wrong-dimension -> 5 d | 5 week"],
    ["gauge", "reads: 0..25", "25: wrong-dimension"],
    ["gauge", "resolution: 0.01", "0.01: wrong-dimension"],
    ["gauge", "uncertainty: ± 4", "4: wrong-dimension"],
    ["gauge", "calibrated: 2026-05-02 for 12", "12: wrong-dimension -> 12 month | 12 year | 12 week"],
    ["part", "pair: rate with other.rate within 2", "2: wrong-dimension"],
    [
      "part",
      "fit: bore in hub.bore clearance 0.1..0.2",
      "0.2: wrong-dimension -> 0.2 mm | 0.2 in | 0.2 thou",
    ],
    ["part", "service: every 24", "24: wrong-dimension -> 24 month | 24 year | 24 week"],
    ["joint", "grip: 14", "14: wrong-dimension -> 14 mm | 14 in | 14 thou"],
    ["joint", "torque: 24", "24: wrong-dimension -> 24 N.m | 24 lbf.ft | 24 lbf.in"],
    ["joint", "stages: 15, 30", "30: wrong-dimension -> 30 N.m | 30 lbf.ft | 30 lbf.in"],
    ["joint", "recheck: after 1", "1: wrong-dimension -> 1 h | 1 km | 1 run"],
    ["circuit", "length: 3.2", "3.2: wrong-dimension -> 3.2 m | 3.2 mm | 3.2 ft"],
    ["circuit", "load: 11", "11: wrong-dimension -> 11 A | 11 W"],
    ["circuit", "drop: max 3", "3: wrong-dimension -> 3 % | 3 V"],
    ["job", "takes: 6", "6: wrong-dimension -> 6 h | 6 min"],
    ["day", "worked: 5 on strip", "5: wrong-dimension -> 5 h | 5 min"],
    ["day", "ran: vehicle 1", "1: wrong-dimension -> 1 h | 1 km | 1 run"],
  ] as const)("%s: %s is one complaint that offers the units that are due", (block, line, complaint) => {
    expect(complaints(block, line)).toEqual([complaint]);
  });

  it("is complained about in a day's header", () => {
    const [node] = Document.read("day 2026-05-02 5.5").blocks;
    expect(node && lowerBlock(node)).toMatchObject({
      date: "2026-05-02",
      hours: undefined,
      faults: [{ code: "wrong-dimension", found: "5.5" }],
    });
  });

  it("takes the unit of the one beside it in limits, tolerances and lists", () => {
    expect(
      complaints("part", "limit: a 8..9 mm", "limit: b 54 mm ± 0.05", "limit: c min 8.4 mm new 9.5"),
    ).toEqual([]);
    expect(complaints("day", "measured: disc thickness 9.12, 9.10, 9.14 mm ± 0.01")).toEqual([]);
    const readings = (line: string) => {
      const block = lowered("day", line);
      const [fact] = block.is === "day" ? block.facts : [];
      return fact?.word === "measured" ? fact.readings.map((each) => formatQuantity(each)) : [];
    };
    // The next unit behind it, else the last before it.
    expect(readings("measured: disc thickness 9.12, 9.10 mm")).toEqual(["9.12 mm", "9.10 mm"]);
    expect(readings("measured: disc thickness 9.12 mm, 9.10")).toEqual(["9.12 mm", "9.10 mm"]);
    expect(readings("measured: disc thickness 9, 0.5 in, 12, 12 mm, 13")).toEqual([
      "9 in",
      "0.5 in",
      "12 mm",
      "12 mm",
      "13 mm",
    ]);
  });
});

describe("a unit of something else", () => {
  it.each([
    ["joint", "torque: 24 nm", "nm: wrong-dimension -> !N.m"],
    ["joint", "stages: 15 nm, 30 N.m", "nm: wrong-dimension -> !N.m"],
    ["day", "torqued: bolts 24 nm", "nm: wrong-dimension -> !N.m"],
    ["day", "torqued: bolts 24 mm", "mm: wrong-dimension -> N.m | lbf.ft | lbf.in"],
    ["joint", "grip: 14 N.m", "N.m: wrong-dimension -> mm | in | thou"],
    ["circuit", "wire: 2.5 mm", "mm: wrong-dimension -> mm2"],
    ["circuit", "fuse: 20 W", "W: wrong-dimension -> A"],
    ["system", "pressure_test: 5 kg/cm2", "kg/cm2: wrong-dimension -> !kgf/cm2"],
    ["part", "limit: a 9 mm ± 0.1 N", "N: wrong-dimension -> mm"],
    ["part", "limit: a 8 mm..9 N", "mm: wrong-dimension -> N"],
    ["part", "limit: a min 8.4 mm new 9.5 N", "N: wrong-dimension -> mm"],
    ["part", "fit: bore in hub.bore clearance 0.1..0.2 N", "N: wrong-dimension -> mm | in | thou"],
    ["day", "measured: disc thickness 9.12 mm ± 0.1 N", "N: wrong-dimension"],
    ["gauge", "resolution: 0.01 N", ""],
  ] as const)("%s: %s", (block, line, complaint) => {
    expect(complaints(block, line)).toEqual(complaint === "" ? [] : [complaint]);
  });

  it("says what is due, with an example, and why it was probably written so", () => {
    const { faults } = lowered("joint", "torque: 24 nm");
    expect(faults[0]).toMatchObject({
      found: "nm",
      expected: "a torque, such as 24 N.m",
      reason: "nm is nanometre; a torque needs N.m",
    });
  });

  it("is found between a gauge's ranges and its resolution and uncertainty", () => {
    expect(complaints("gauge", "reads: 0..25 mm", "resolution: 0.01 N", "uncertainty: ± 4 %")).toEqual([
      "0.01 N: wrong-dimension",
    ]);
    expect(complaints("gauge", "reads: 0..25 mm, 0..1 in", "resolution: 0.0005 in")).toEqual([]);
    expect(complaints("gauge", "reads: -20..120 degC", "uncertainty: ± 1 degC")).toEqual([]);
  });
});

describe("what is no unit", () => {
  it.each([
    ["joint", "torque: 24 Nmm", "Nmm: unknown-unit -> !N.mm"],
    ["joint", "torque: 54 ft/lb", "ft/lb: unknown-unit -> !lbf.ft"],
    ["joint", "torque: 24 kgm", "kgm: unknown-unit -> !kgf.m"],
    ["day", "measured: disc thickness 9.12, 9.10 mn, 9.14 mm", "mn: unknown-unit -> mm"],
    ["day", "measured: disc thickness 9.12, 9.10 nm, 9.14 mm", "nm: unknown-unit -> mm"],
    ["day", "measured: disc thickness 9.12 mn", "mn: unknown-unit -> MN"],
    ["day", "measured: disc thickness 9.12 millimetres", "millimetres: unknown-unit -> !mm"],
    ["assembly", "default: limit play max 0.1 nm", "nm: unknown-unit -> N.m"],
  ] as const)(
    "%s: %s is one complaint, mended by what fits its place or its neighbours",
    (block, line, complaint) => {
      expect(complaints(block, line)).toEqual([complaint]);
    },
  );

  it("costs only its own figure in a list", () => {
    const block = lowered("day", "measured: disc thickness 9.12, 9.10 nm, 9.14 mm");
    const [fact] = block.is === "day" ? block.facts : [];
    const readings = fact?.word === "measured" ? fact.readings : [];
    expect(readings.map((reading) => formatQuantity(reading))).toEqual(["9.12 mm", "9.14 mm"]);
  });
});

describe("limits", () => {
  it("that cross are refused", () => {
    expect(complaints("part", "limit: a 9..8 mm")).toEqual(["9..8 mm: unreadable-value"]);
    expect(expectations("part", "limit: a 9..8 mm")).toEqual(["the lower figure before the upper one"]);
  });

  it("in percent of nought are refused", () => {
    expect(complaints("part", "setting: offset 0 mm ± 5 %")).toEqual(["0 mm ± 5 %: unreadable-value"]);
  });

  it("are not for a size when new beyond them", () => {
    expect(complaints("part", "limit: a min 8.4 mm new 8.0 mm")).toEqual(["8.0 mm: unreadable-value"]);
    expect(complaints("part", "limit: a max 0.10 mm new 0.2 mm")).toEqual(["0.2 mm: unreadable-value"]);
    expect(complaints("part", "limit: a min 8.4 mm new 9.5 mm")).toEqual([]);
  });

  it("of ISO 286 have a size and a class that the standard tabulates", () => {
    expect(complaints("part", "limit: a 25 h6", "limit: b 52 H7")).toEqual([]);
    expect(complaints("part", "limit: a 9000 h6")).toEqual(["9000: unreadable-value"]);
    expect(expectations("part", "limit: a 9000 h6")).toEqual(["a size of more than 0 and up to 500 mm"]);
  });

  const bounds = (...lines: string[]) => {
    const block = lowered("part", ...lines);
    const limits = block.is === "definition" ? block.records : [];
    return limits.map((record) =>
      record.word === "limit" && record.limits.lower !== undefined && record.limits.upper !== undefined
        ? [formatQuantity(record.limits.lower), formatQuantity(record.limits.upper)]
        : [],
    );
  };

  it("of ISO 286 read as the standard's limits of size", () => {
    // ISO 286-2: 25 h6 is 0 / -13 µm, 52 H7 +30 / 0 µm (the ranges over 18 to 30 mm and over 50 to 65 mm).
    expect(bounds("limit: shaft 25 h6", "limit: bore 52 H7")).toEqual([
      ["24.987 mm", "25 mm"],
      ["52 mm", "52.03 mm"],
    ]);
  });

  it("with a tolerance have the unit of either, where it stands once", () => {
    expect(
      bounds(
        "limit: a 54 mm ± 0.1",
        "limit: b 54 ± 0.1 mm",
        "limit: c 54 mm +0.1/-0.2",
        "limit: d 54 +0.1/-0.2 mm",
      ),
    ).toEqual([
      ["53.9 mm", "54.1 mm"],
      ["53.9 mm", "54.1 mm"],
      ["53.8 mm", "54.1 mm"],
      ["53.8 mm", "54.1 mm"],
    ]);
    // A percentage says nothing of what is measured.
    expect(bounds("limit: a 54 ± 50 %")).toEqual([["27", "81"]]);
  });
});

it("of several conditions those are kept that can be read", () => {
  const block = lowered("day", "found: disc worn, wrn, bent");
  const [fact] = block.is === "day" ? block.facts : [];
  expect(fact?.word === "found" ? fact.conditions.map(({ condition }) => condition) : []).toEqual([
    "worn",
    "bent",
  ]);
});

describe("magnitudes", () => {
  it.each([
    ["joint", "grip: -14 mm", "-14 mm"],
    ["joint", "torque: -24 N.m", "-24 N.m"],
    ["system", "capacity: -1 l", "-1 l"],
    ["circuit", "fuse: -20 A", "-20 A"],
    ["supplier", "carriage: -8 GBP", "-8 GBP"],
    ["vehicle", "budget: -1 GBP", "-1 GBP"],
    ["vehicle", "protrusion: -2", "-2"],
    ["day", "torqued: bolts -5 N.m", "-5 N.m"],
    ["day", "worked: -5 h on strip", "-5 h"],
    ["day", "filled: brakes -1 l", "-1 l"],
  ] as const)("%s: %s is refused below nought", (block, line, at) => {
    expect(complaints(block, line)).toEqual([`${at}: unreadable-value`]);
  });

  it("may be below nought where that means something", () => {
    expect(complaints("part", "setting: camber -1.5 deg ± 0.25 deg", "limit: run_out -0.1..0.1 mm")).toEqual(
      [],
    );
    expect(complaints("part", "fit: bore in hub.bore clearance -0.01..0.02 mm")).toEqual([]);
    expect(complaints("day", "measured: disc thickness -0.1 mm", "set: disc camber -1 deg")).toEqual([]);
  });
});

describe("counts", () => {
  it.each([
    ["part", "count: 1.5", "1.5"],
    ["part", "count: -1", "-1"],
    ["part", "pack: 0", "0"],
    ["vehicle", "hands: 0", "0"],
    ["joint", "bolt: 0 x M8x1.25x30 class 8.8", "0"],
    ["joint", "uses: 1.5 x pin", "1.5"],
    ["joint", "uses: 0 x pin", "0"],
    ["day", "ordered: 0 x disc", "0"],
    ["day", "ran: vehicle 1.5 run", "1.5 run"],
  ] as const)("%s: %s is refused", (block, line, at) => {
    expect(complaints(block, line)).toEqual([`${at}: unreadable-value`]);
  });

  it("may be none where that is what was counted", () => {
    expect(complaints("day", "counted: 0 x disc")).toEqual([]);
  });
});

describe("what holds a joint", () => {
  it.each([
    ["bolt: 4 x M8x1.3x30 class 8.8", "M8x1.3x30: unreadable-value -> M8x1.25x30 | M8x1x30 | M8x0.75x30"],
    ["stud: 4 x 3/8-23 UNF x 2 in grade 5", "3/8-23 UNF x 2 in: unreadable-value -> 3/8-24 UNF x 2 in"],
    ["bolt: 4 x M8x1.25x30 class 8.9", "class 8.9: unreadable-value -> class 8.8"],
    ["bolt: 4 x M8x1.25x30 class 5", "class 5: unreadable-value -> grade 5"],
    ["nut: plain M8x1.25 class 7", "class 7: unreadable-value"],
    ["friction: nut_factor 18", "18: unreadable-value"],
    ["friction: thread 0.14 head 2", "2: unreadable-value"],
  ])("%s", (line, complaint) => {
    expect(complaints("joint", line)).toEqual([complaint]);
  });

  it("names the threads of the size, and the classes that there are", () => {
    expect(expectations("joint", "bolt: 4 x M8x1.3x30 class 8.8")).toEqual([
      "one of the series: M8x1.25, M8x1, M8x0.75",
    ]);
    expect(expectations("joint", "nut: plain M8x1.25 class 7")).toEqual([
      "a class of nuts: 04 05 5 6 8 10 12",
    ]);
  });
});

describe("money and rates", () => {
  it.each([
    ["rate: 1 EUR = 0 GBP", "0 GBP"],
    ["rate: 0 EUR = 1 GBP", "0 EUR"],
    ["rate: 1 EUR = -0.9 GBP", "-0.9 GBP"],
    ["rate: 1 EUR = 0.9 EUR", "EUR"],
  ])("%s is refused", (line, at) => {
    expect(complaints("vehicle", line)).toEqual([`${at}: unreadable-value`]);
  });
});

describe("shares and days", () => {
  it("of more than all are refused", () => {
    expect(complaints("vehicle", "near: 120 %")).toEqual(["120 %: unreadable-value"]);
  });

  it("closed from a day to one before it are refused", () => {
    expect(complaints("vehicle", "closed: 2026-08-14..2026-08-01")).toEqual(["2026-08-01: unreadable-value"]);
  });
});

describe("takes:", () => {
  it("is in h or min", () => {
    expect(complaints("job", "takes: 90 min")).toEqual([]);
    expect(complaints("job", "takes: 4..6..10 h")).toEqual([]);
    expect(complaints("job", "takes: 1 month")).toEqual(["month: wrong-dimension -> h | min"]);
  });

  it("is in calendar days only where somebody else does it", () => {
    expect(complaints("job", "takes: 28 d", "by: tatlow")).toEqual([]);
    expect(complaints("job", "by: tatlow", "takes: 2..3..4 week")).toEqual([]);
    expect(complaints("job", "takes: 28 d")).toEqual(["28 d: unreadable-value"]);
    const block = lowered("job", "takes: 28 d");
    expect(block.is === "definition" && block.lost.length).toBe(1);
  });

  it("leaves it at the one complaint where by: is there but could not be read", () => {
    expect(complaints("job", "takes: 28 d", 'by: "Tatlow"')).toHaveLength(1);
  });

  it("falls from the optimistic to the pessimistic for nobody", () => {
    expect(complaints("job", "takes: 10..6..4 h")).toEqual(["10..6..4 h: unreadable-value"]);
    expect(complaints("job", "takes: 4..6..10 N")).toEqual(["N: wrong-dimension -> h | min"]);
  });
});

describe("worked: and day", () => {
  it("take h or min only", () => {
    expect(complaints("day", "worked: 2 h 30 min on strip")).toEqual([]);
    expect(complaints("day", "worked: 5 d on strip")).toEqual(["5 d: unreadable-value"]);
    expect(expectations("day", "worked: 5 d on strip")).toEqual(["hours or minutes, such as 2 h 30 min"]);
  });
});

describe("wire gauges", () => {
  it("are those of the American series", () => {
    expect(complaints("circuit", "wire: AWG 14")).toEqual([]);
    expect(complaints("circuit", "wire: AWG 99")).toEqual(["AWG 99: unreadable-value"]);
  });
});
