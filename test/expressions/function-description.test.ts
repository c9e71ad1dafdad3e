import { describe, expect, test } from "vitest";
import { describeFunction, functionMarkdown } from "../../server/expressions/function-description.ts";
import { functionNames } from "../../server/expressions/function-names.ts";

describe("what is told of a function", () => {
  test("of the trade: its parameters with kind and range, which definition is used, source", () => {
    expect(describeFunction("preload")).toMatchObject({
      name: "preload",
      group: "tightening",
      signature: "preload(torque, thread, nut_factor)",
      formula: "F = T / (K d)",
      returns: "a force, kN",
      meaning: "K holds thread and head friction together; d is the nominal diameter.",
      example: "preload(54 N.m, M10x1.25, 0.2) in kN",
    });
    expect(describeFunction("preload")?.parameters.map(({ label, takes }) => [label, takes])).toEqual([
      ["torque", "a torque (N.m), 0 N.m to 10000 N.m"],
      ["thread", "a thread, as in M10x1.25 or 3/8-24 UNF"],
      [
        "nut_factor",
        "a nut factor, as in 0.2, or a word for one (dry, oiled, zinc, cadmium, stainless, moly, threadlocker)",
      ],
    ]);
  });

  test("parameters that may be left out or repeated are marked in the signature", () => {
    expect(describeFunction("round")?.signature).toBe("round(x, places?)");
    expect(describeFunction("combine")?.signature).toBe("combine(uncertainty, …)");
    expect(describeFunction("tap_drill")?.parameters[1]).toMatchObject({
      label: "percent?",
      takes: "a share, as in 60 % or 0.6, 50 % to 100 %",
    });
  });

  test("ranges are told in the unit of the parameter, temperatures and angles included", () => {
    expect(describeFunction("wire_resistance")?.parameters[2]?.takes).toBe(
      "a temperature (degC), -73.15 degC to 226.85 degC",
    );
    expect(describeFunction("castor_from_swing")?.parameters[2]?.takes).toBe(
      "an angle (deg), 1 deg to 45 deg",
    );
    expect(describeFunction("road_speed")?.parameters[0]?.takes).toBe(
      "a frequency (rpm), 0 rpm to 30000 rpm",
    );
    expect(describeFunction("cross_weight")?.parameters[0]?.takes).toBe("a mass or a force, not negative");
  });

  test("where definitions differ, the hover says which is used", () => {
    for (const [name, said] of [
      ["cross_weight", "diagonal right front + left rear"],
      ["wheel_rate", "spring travel over wheel travel"],
      ["castor_from_swing", "sine form"],
      ["torque_for", "nut factors after Shigley"],
      ["assembly_preload", "editions of 2001 and later"],
    ] as const) {
      const description = describeFunction(name);
      expect(description === undefined ? "" : functionMarkdown(description)).toContain(said);
    }
  });

  test("every name has a description with a signature, a formula and an example", () => {
    for (const name of functionNames) {
      const description = describeFunction(name);
      expect(description?.signature).toMatch(/^[a-z_]+\(.+\)$/);
      expect(description?.formula).not.toBe("");
      expect(description?.example).toContain(`${description?.name}(`);
    }
  });

  test("names of objects and their prototypes are no functions", () => {
    for (const name of ["constructor", "__proto__", "toString", "hasOwnProperty", "valueOf", ""]) {
      expect(describeFunction(name)).toBeUndefined();
    }
  });
});
