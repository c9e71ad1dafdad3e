import { describe, expect, test } from "vitest";
import { decimal } from "../../server/quantities/decimal.ts";
import type { Limits } from "../../server/quantities/limits.ts";
import { gaugeUncertainty, uncertaintyOf } from "../../server/quantities/uncertainty.ts";
import type { Verdict } from "../../server/quantities/verdict.ts";
import { judge } from "../../server/quantities/verdict.ts";
import { ok, q, shown } from "./written.ts";

const THICKNESS: Limits = { lower: q("8.4 mm"), fresh: q("9.5 mm") };
const RUNOUT: Limits = { upper: q("0.10 mm") };
const BORE: Limits = { lower: q("54.00 mm"), upper: q("54.05 mm") };

function verdict(readings: string, uncertainty: string | undefined, limits: Limits): Verdict {
  const [first = "", ...others] = readings.split(", ");
  const U = uncertainty === undefined ? undefined : q(uncertainty);
  return ok(judge([q(first), ...others.map(q)], U, limits, 0.1));
}

describe("the decision rule of ISO 14253-1", () => {
  test.each([
    ["9.12 mm", "0.01 mm", THICKNESS, "within"],
    ["8.41 mm", "0.01 mm", THICKNESS, "near"],
    ["8.409 mm", "0.01 mm", THICKNESS, "uncertain"],
    ["8.39 mm", "0.01 mm", THICKNESS, "uncertain"],
    ["8.389 mm", "0.01 mm", THICKNESS, "outside"],
    ["0.05 mm", "0.01 mm", RUNOUT, "within"],
    ["0.14 mm", "0.01 mm", RUNOUT, "outside"],
    ["54.025 mm", "0.004 mm", BORE, "within"],
    ["54.002 mm", "0.001 mm", BORE, "near"],
    ["54.025 mm", "0.030 mm", BORE, "uncertain"],
    ["0.10 mm", undefined, RUNOUT, "near"],
    ["0.101 mm", undefined, RUNOUT, "outside"],
  ])("%s with U %s: %s is %s", (reading, uncertainty, limits, expected) => {
    expect(verdict(reading, uncertainty, limits).verdict).toBe(expected);
  });

  test("on the edge of a zone decimals are compared exactly", () => {
    expect(verdict("0.07 mm", "0.03 mm", RUNOUT).verdict).toBe("within");
    expect(verdict("0.1 mm", "0.2 mm", { upper: q("0.3 mm") }).verdict).not.toBe("uncertain");
  });

  test("also where the units have no common decimals", () => {
    const limit = { upper: q("25.404 mm") };
    expect(verdict("1 in", "0.004 mm", limit).verdict).toBe("near");
    expect(verdict("1 in", "0.0040000001 mm", limit).verdict).toBe("uncertain");
    expect(verdict("25.408 mm", "0.004 mm", { upper: q("1 in") }).verdict).toBe("outside");
    expect(verdict("1 deg", "1 arcmin", { upper: q("61 arcmin") }).verdict).toBe("near");
  });

  test("near is less than a tenth of the zone, not a tenth itself", () => {
    expect(verdict("0.09 mm", undefined, RUNOUT).verdict).toBe("within");
    expect(verdict("0.0901 mm", undefined, RUNOUT).verdict).toBe("near");
    expect(verdict("8.51 mm", undefined, THICKNESS).verdict).toBe("within");
    expect(verdict("8.50 mm", undefined, THICKNESS).verdict).toBe("near");
    expect(verdict("8.401 mm", undefined, { lower: q("8.4 mm") }).verdict).toBe("within");
  });
});

describe("what a verdict tells", () => {
  test("excess in the author's unit, and the side", () => {
    const result = verdict("0.14 mm", "0.01 mm", RUNOUT);
    expect(result.side).toBe("upper");
    expect(result.excess && shown(result.excess)).toBe("0.04 mm");
    expect(shown(result.margin)).toBe("-0.04 mm");
  });

  test("of several readings the one with the least margin, and the spread", () => {
    const result = verdict("9.12 mm, 9.10 mm, 9.14 mm", "0.01 mm", THICKNESS);
    expect(shown(result.reading)).toBe("9.10 mm");
    expect(shown(result.margin)).toBe("0.70 mm");
    expect(result.spread && shown(result.spread)).toBe("0.04 mm");
    const bore = verdict("54.01 mm, 54.045 mm, 54.06 mm, 53.98 mm", undefined, BORE);
    expect([shown(bore.reading), bore.side]).toEqual(["53.98 mm", "lower"]);
    expect(verdict("9.12 mm", undefined, THICKNESS).spread).toBeUndefined();
  });

  test("temperatures differ by degrees of the scale they were written in", () => {
    const result = verdict("95 degC", "1 degC", { upper: q("90 degC") });
    expect(result.verdict).toBe("outside");
    expect(result.excess && shown(result.excess)).toBe("5 degC");
    expect(verdict("194 degF", "1 degC", { upper: q("90 degC") }).verdict).toBe("uncertain");
    expect(verdict("194 degF", undefined, { upper: q("90 degC") }).verdict).toBe("near");
  });

  test("an uncertainty in percent of the reading", () => {
    const wrench = gaugeUncertainty(q("4 %"));
    const judged = judge(
      [q("24 N.m"), q("25.5 N.m")],
      (reading) => ok(uncertaintyOf(wrench, reading)),
      { lower: q("21.6 N.m"), upper: q("26.4 N.m") },
      0.1,
    );
    expect(ok(judged).verdict).toBe("uncertain");
    expect(shown(ok(judged).uncertainty ?? q("0"))).toBe("1.02 N.m");
  });

  test("there must be a limit, and one dimension throughout", () => {
    expect(judge([q("9 mm")], undefined, { nominal: q("9 mm") }, 0.1)).toMatchObject({ fault: "no-limit" });
    expect(judge([q("9 mm")], undefined, { lower: q("9 kg") }, 0.1)).toMatchObject({
      fault: "dimension",
      message: "cannot subtract unlike dimensions: length (mm) less mass (kg)",
    });
    expect(judge([q("9 mm")], q("1 kg"), { lower: q("8 mm") }, 0.1)).toMatchObject({ fault: "dimension" });
  });
});

describe("what is told besides the verdict", () => {
  test("of a reading that is its limit the margin is exactly nothing, in whatever units", () => {
    for (const reading of ["25.4 mm", "1 in"])
      expect(verdict(reading, undefined, { upper: q("25.4 mm") }).margin).toMatchObject({
        value: decimal(0),
        exact: true,
      });
  });

  test("two readings have a spread, and the greatest may stand in the middle", () => {
    expect(verdict("9.12 mm, 9.10 mm", undefined, THICKNESS).spread?.value.toString()).toBe("0.02");
    expect(verdict("9.12 mm, 9.14 mm, 9.10 mm", undefined, THICKNESS).spread?.value.toString()).toBe("0.04");
    expect(verdict("9.12 mm", undefined, THICKNESS).spread).toBeUndefined();
  });

  test("inside and on a limit nothing is in excess", () => {
    expect(verdict("0.05 mm", undefined, RUNOUT).excess).toBeUndefined();
    expect(verdict("0.10 mm", undefined, RUNOUT).excess).toBeUndefined();
  });

  test("without a limit it says so", () => {
    expect(judge([q("1 mm")], undefined, {}, 0.1)).toMatchObject({
      fault: "no-limit",
      message: "there is neither a lower nor an upper limit",
    });
  });
});
