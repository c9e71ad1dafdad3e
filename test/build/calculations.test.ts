import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import { Calculator } from "../../server/build/calculations.ts";
import { calculate } from "../../server/expressions/calculation.ts";
import { formatValue } from "../../server/expressions/value.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

const CLOCK = "2026-06-01" as IsoDate;

function build(text: string): Build {
  const document = Document.read(`vehicle "Example"\n  past: known\n${text}`);
  return readBuild([{ path: "log.cotter", document }], { clock: CLOCK });
}

/** Every calculation of a log by name, as it is shown; what has no value by why. */
function results(text: string): readonly (readonly [string, string])[] {
  return build(text).calculations.map(({ name, outcome }) => [
    name,
    outcome.is === "value" ? formatValue(outcome.value) : outcome.is,
  ]);
}

const DISC = `
part disc "Brake disc"
  size: thickness 9.5 mm
  limit: thickness min 8.4 mm
`;

describe("REF.NAME in a calculation", () => {
  it("is the size where nothing is measured", () => {
    expect(results(`${DISC}\nday 2026-05-02\n  calc: left = disc.thickness - 8.4 mm\n`)).toEqual([
      ["left", "1.1 mm"],
    ]);
  });

  it("is the mean of several readings", () => {
    const log = `${DISC}\nday 2026-05-02\n  measured: disc thickness 9.1, 9.2, 9.3 mm\n  calc: now = disc.thickness\n`;
    expect(results(log)).toEqual([["now", "9.2 mm"]]);
  });

  it("is what stands before the line, each time", () => {
    const log = `${DISC}
day 2026-05-02
  calc: before = disc.thickness
  measured: disc thickness 9.0 mm
  calc: after = disc.thickness

day 2026-05-03
  measured: disc thickness 8.9 mm
`;
    expect(results(log)).toEqual([
      ["before", "9.5 mm"],
      ["after", "9.0 mm"],
    ]);
  });

  it("is the newest of measured and set, before the setting that is wanted", () => {
    const log = `
assembly left "Left"
  setting: camber -1.5 deg ± 0.5 deg

day 2026-05-02
  calc: wanted = left.camber
  measured: left camber -0.9 deg
  calc: found = left.camber
  set: left camber -1.4 deg
  calc: adjusted = left.camber
`;
    expect(results(log)).toEqual([
      ["wanted", "-1.5 deg"],
      ["found", "-0.9 deg"],
      ["adjusted", "-1.4 deg"],
    ]);
  });

  it("is of the item that is there: a new one has no readings", () => {
    const log = `${DISC}  price: 46.00 GBP

day 2026-05-02
  measured: disc thickness 8.6 mm
  removed: disc
  decided: disc renew
  bought: 1 x disc at 46.00 GBP
  fitted: disc
  calc: now = disc.thickness
`;
    expect(results(log)).toEqual([["now", "9.5 mm"]]);
  });

  it("takes a definition as it is from that day on", () => {
    const log = `
part fan "Fan"
  size: diameter 280 mm

day 2026-05-02
  calc: old = fan.diameter

day 2026-05-03
  changed: fan size diameter 300 mm
  calc: new_one = fan.diameter
`;
    expect(results(log)).toEqual([
      ["old", "280 mm"],
      ["new_one", "300 mm"],
    ]);
  });
});

describe("a calculation in a block", () => {
  it("of the tree is that thing's own, as of today", () => {
    const log = `${DISC}  calc: wear = 9.5 mm - thickness
  calc: share = wear / 1.1 mm in %

day 2026-05-02
  measured: disc thickness 9.17 mm
  calc: twice = disc.wear * 2

day 2026-05-03
  measured: disc thickness 8.95 mm
`;
    expect(results(log)).toEqual([
      ["twice", "0.66 mm"],
      ["wear", "0.55 mm"],
      ["share", "50 %"],
    ]);
  });

  it("of the tree is turned in a copy", () => {
    const log = `
part left.spring "Spring"
  size: rate 28 N/mm
  calc: difference = rate - right.spring.rate
part right.spring "Spring" like left.spring
  size: rate 26 N/mm
`;
    expect(results(log)).toEqual([
      ["difference", "2 N/mm"],
      ["difference", "-2 N/mm"],
    ]);
  });

  it("of the vehicle is known everywhere", () => {
    const log = `  calc: track = 1320 mm
${DISC}  calc: half = track / 2

day 2026-05-02
  calc: quarter = track / 4
`;
    expect(results(log)).toEqual([
      ["quarter", "330 mm"],
      ["track", "1320 mm"],
      ["half", "660 mm"],
    ]);
  });

  it("of a job is known in that job alone", () => {
    const log = `
job strip "Strip"
  calc: half = 3 h
  calc: whole = 2 * half

job paint "Paint"
  calc: again = 2 * half
`;
    expect(results(log)).toEqual([
      ["half", "3 h"],
      ["whole", "6 h"],
      ["again", "fault"],
    ]);
  });

  it("counts by its last line where a name stands twice", () => {
    const log = `
part box "Box"
  calc: a = 1 mm
  calc: a = 2 mm
  calc: b = a
`;
    expect(results(log)).toEqual([
      ["a", "2 mm"],
      ["b", "2 mm"],
    ]);
  });

  it("that waits for a measurement waits, and so does what builds on it", () => {
    const log = `
part pump "Pump"
  limit: flow min 2 l/min
  calc: double = 2 * flow
  calc: fourfold = 2 * double
`;
    expect(results(log)).toEqual([
      ["double", "waiting"],
      ["fourfold", "waiting"],
    ]);
  });

  it("in a circle has no value, nor has what builds on it", () => {
    const log = `
part box "Box"
  calc: a = b
  calc: b = c
  calc: c = a
  calc: d = a + 1
`;
    expect(results(log)).toEqual([
      ["a", "cycle"],
      ["b", "cycle"],
      ["c", "cycle"],
      ["d", "without ground"],
    ]);
  });

  it("may build on many others, but not on a chain without end", () => {
    const chain = Array.from({ length: 5000 }, (_, index) => `  calc: a${index} = a${index + 1} + 1\n`);
    const found = results(`\npart box "Box"\n${chain.join("")}  calc: a5000 = 1\n`);
    expect(found.at(-1)).toEqual(["a5000", "1"]);
    expect(found.filter(([, value]) => value === "fault")).not.toEqual([]);
  });
});

describe("an expression that is asked from outside", () => {
  const { standing } = build(`  currency: GBP
  rate: 1 EUR = 0.86 GBP
${DISC}
day 2026-05-02
  measured: disc thickness 9.0 mm
  calc: spare = disc.thickness - 8.4 mm
`);
  const { lookup, rates } = new Calculator(standing);
  const asked = (text: string) => {
    const calculation = calculate(text, lookup, rates);
    return "fault" in calculation ? calculation.fault.message : formatValue(calculation.value);
  };

  it.each([
    ["disc.thickness in in", "0.354 in"],
    ["spare * 2", "1.2 mm"],
    ["10 EUR + 1 GBP", "11.16 EUR"],
    ["disc.width", "disc has nothing called width, measured, set or sized"],
    ["nothing_such", "nothing is called nothing_such"],
  ])("%s is %s", (text, expected) => {
    expect(asked(text)).toContain(expected);
  });
});

/** Why the calculations of a log have no value, by name. */
function reasons(text: string): Readonly<Record<string, string>> {
  return Object.fromEntries(
    build(text).calculations.map(({ name, outcome }) => [
      name,
      "fault" in outcome ? `${outcome.is}: ${outcome.fault.message}` : outcome.is,
    ]),
  );
}

it("what has no value says why: in a day so far, in a block at all", () => {
  const log = `
part disc "Brake disc"
  limit: runout max 0.1 mm
  calc: worn = gap * 2
  calc: half = runout / 2
  calc: more = half + 1 mm
  calc: lost = nowhere.gap * 2
  calc: last = lost * 2

day 2026-05-02
  calc: so_far = disc.runout * 2
  calc: none = gap * 2
  calc: other = disc.gap * 2
  calc: behind = disc.half * 2
`;
  expect(reasons(log)).toEqual({
    worn: "fault: nothing is called gap",
    half: "waiting: disc.runout has not been measured",
    more: "waiting: half has no value yet: disc.runout has not been measured",
    lost: "without ground: nowhere leads to nothing",
    last: "without ground: lost has no value: see its own line",
    so_far: "waiting: disc.runout has not been measured before this line",
    none: "fault: nothing is called gap before this line",
    other: "fault: disc has nothing called gap, measured, set or sized",
    behind: "waiting: half has no value yet: disc.runout has not been measured",
  });
});

it("calculations that go round are named from where they go round, by their full names", () => {
  const log = `
part arm "Arm"
  calc: first = arm.second + 1 mm
  calc: second = arm.third + 1 mm
  calc: third = arm.second + 1 mm
`;
  const cycles = build(log).calculations.map(({ name, outcome }) => [
    name,
    outcome.is === "cycle" ? outcome.names : outcome.is,
  ]);
  expect(cycles).toEqual([
    ["first", "without ground"],
    ["second", ["arm.second", "arm.third", "arm.second"]],
    ["third", ["arm.second", "arm.third", "arm.second"]],
  ]);
});
