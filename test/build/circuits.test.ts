import { describe, expect, it } from "vitest";
import { circuitFaults, isCircuitError, loadOf } from "../../server/build/circuits.ts";
import type { FindingCode } from "../../server/build/finding.ts";
import { floatIn } from "../../server/quantities/quantity.ts";
import { buildOf, expectFindings, findingOf, nodeAt } from "./marked-build.ts";

const CODES: readonly FindingCode[] = ["fuse-over-wire", "fuse-under-load", "voltage-drop"];

const circuit = (records: string) => `circuit c "Circuit"\n${records}`;

const faultsOf = (records: string) => {
  const build = buildOf(circuit(records));
  return circuitFaults(build.standing, nodeAt(build, "c")).map(({ is }) => is);
};

describe("the load of a circuit", () => {
  it("adds up, amperes and watts by the supply", () => {
    const build = buildOf(circuit("  supply: 12 V\n  load: 55 W\n  load: 55 W\n  load: 2 A\n"));
    const load = loadOf(build.standing, nodeAt(build, "c"));
    // 110 W / 12 V + 2 A, by hand.
    expect(load && floatIn(load, "A")).toBeCloseTo(11.16667, 5);
  });

  it("is unknown where watts have no supply", () => {
    const build = buildOf(circuit("  load: 55 W\n"));
    expect(loadOf(build.standing, nodeAt(build, "c"))).toBeUndefined();
  });
});

describe("the fuse", () => {
  // 80 % rule (common practice, no source): 12 A on 15 A is the most.
  it.each([
    ["  load: 12 A\n  fuse: 15 A\n", []],
    ["  load: 12.1 A\n  fuse: 15 A\n", ["fuse under load"]],
    ["  load: 15.1 A\n  fuse: 15 A\n", ["fuse under load"]],
    ["  supply: 12 V\n  load: 96 W\n  fuse: 10 A\n", []],
    ["  load: 9 A\n", []],
  ])("of %j", (records, faults) => {
    expect(faultsOf(records)).toEqual(faults);
  });

  it("is an error only over its rating", () => {
    const errors = [12.1, 15, 15.1].map((amperes) => {
      const build = buildOf(circuit(`  load: ${amperes} A\n  fuse: 15 A\n`));
      return circuitFaults(build.standing, nodeAt(build, "c")).map(isCircuitError);
    });
    expect(errors).toEqual([[false], [false], [true]]);
  });

  // Currents of wires as the trade table has them (common practice, no source): 2.5 mm² 21 A, 1 mm² 8.75 A.
  it.each([
    ["  wire: 2.5 mm2\n  fuse: 20 A\n", []],
    ["  wire: 2.5 mm2\n  fuse: 25 A\n", ["fuse over wire"]],
    // AWG 14 is 2.08 mm² (ASTM B258): the largest listed size that is not larger is 2 mm², 17 A.
    ["  wire: AWG 14\n  fuse: 15 A\n", []],
    ["  wire: AWG 14\n  fuse: 20 A\n", ["fuse over wire"]],
    // AWG 24 is 0.205 mm²: less than the least listed size, so less than 3 A.
    ["  wire: AWG 24\n  fuse: 5 A\n", ["fuse over wire"]],
  ])("and the wire of %j", (records, faults) => {
    expect(faultsOf(records)).toEqual(faults);
  });
});

describe("the voltage lost", () => {
  const lamp = "  supply: 12 V\n  load: 10 A\n  wire: 1 mm2\n  length: 5 m\n";

  it("counts the way there and back", () => {
    const build = buildOf(circuit(`${lamp}  drop: max 1 V\n`));
    const { data } = findingOf(build, "voltage-drop");
    // 10 A × 2 × 5 m × 0.017241 Ω·mm²/m / 1 mm² = 1.7241 V (IEC 60028).
    expect(floatIn(data.drop, "V")).toBeCloseTo(1.7241, 4);
    expect(data.back).toBe("wire");
  });

  it("is half where the frame leads back", () => {
    expect(faultsOf(`${lamp}  drop: max 8 %\n  return: frame\n`)).toEqual([]);
    expect(faultsOf(`${lamp}  drop: max 8 %\n`)).toEqual(["voltage drop"]);
  });

  it("is not judged without a length", () => {
    expect(faultsOf("  supply: 12 V\n  load: 10 A\n  wire: 1 mm2\n  drop: max 1 %\n")).toEqual([]);
  });
});

it("a complaint stands at the change that brought it", () => {
  expectFindings(
    CODES,
    `
    circuit fan "Fan"
      supply: 12 V
      load: 9 A
      wire: 2.5 mm2
      fuse: 15 A

    day 2026-05-02
      changed: fan load 17 A
                   ^^^^^^^^^ fuse-under-load
    `,
  );
});

it("a complaint of a circuit as it is drawn stands at its fuse", () => {
  expectFindings(
    CODES,
    `
    circuit fan "Fan"
      wire: 1 mm2
      fuse: 15 A
      ^^^^^^^^^^ fuse-over-wire
    `,
  );
});
