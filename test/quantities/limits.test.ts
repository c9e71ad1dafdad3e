import { describe, expect, test } from "vitest";
import type { Limits, LimitsFault } from "../../server/quantities/limits.ts";
import {
  asymmetricLimits,
  boundLimits,
  nominalLimits,
  toleranceLimits,
  zone,
} from "../../server/quantities/limits.ts";
import { ok, q, shown } from "./written.ts";

function range(limits: Limits | LimitsFault): string {
  const { lower, upper } = ok(limits);
  return `${lower ? shown(lower) : ""}..${upper ? shown(upper) : ""}`;
}

describe("limits", () => {
  test("with a tolerance", () => {
    expect(range(toleranceLimits(q("54 mm"), q("0.05 mm")))).toBe("53.95 mm..54.05 mm");
    expect(range(toleranceLimits(q("24 N.m"), q("10 %")))).toBe("21.6 N.m..26.4 N.m");
    expect(range(toleranceLimits(q("-1.5 deg"), q("10 %")))).toBe("-1.65 deg..-1.35 deg");
    expect(range(toleranceLimits(q("2 in"), q("1 thou")))).toBe("1.999 in..2.001 in");
  });

  test("of a nominal in percent, a percentage is in points", () => {
    expect(range(toleranceLimits(q("60 %"), q("5 %")))).toBe("55 %..65 %");
  });

  test("of nothing, a percentage is a fault that says what to write", () => {
    expect(toleranceLimits(q("0 deg"), q("5 %"))).toEqual({
      fault: "percent-of-zero",
      message: "a tolerance in percent of zero is none: write it in units",
    });
  });

  test("keep what was aimed at, which may stand alone", () => {
    expect(ok(toleranceLimits(q("54 mm"), q("0.05 mm"))).nominal).toEqual(q("54 mm"));
    expect(nominalLimits(q("8.4 mm"))).toEqual({ nominal: q("8.4 mm") });
  });

  test("of another dimension than the nominal, either deviation is a fault", () => {
    expect(toleranceLimits(q("54 mm"), q("1 kg"))).toMatchObject({ fault: "dimension", operation: "add" });
    expect(asymmetricLimits(q("54 mm"), q("0.05 mm"), q("-1 kg"))).toMatchObject({
      fault: "dimension",
      operation: "add",
    });
    expect(asymmetricLimits(q("54 mm"), q("1 kg"), q("-0.05 mm"))).toMatchObject({
      fault: "dimension",
      operation: "add",
    });
  });

  test("with two deviations, each with its sign", () => {
    expect(range(asymmetricLimits(q("54 mm"), q("0.05 mm"), q("-0.00 mm")))).toBe("54.00 mm..54.05 mm");
    expect(range(asymmetricLimits(q("25 mm"), q("-0.02 mm"), q("-0.041 mm")))).toBe("24.959 mm..24.98 mm");
    expect(asymmetricLimits(q("54 mm"), q("-0.05 mm"), q("0.05 mm"))).toMatchObject({
      fault: "limits-crossed",
    });
  });

  test("a temperature tolerance is a difference", () => {
    expect(range(toleranceLimits(q("82 degC"), q("3 degC")))).toBe("79 degC..85 degC");
  });

  test("the lower one comes first and both are of one dimension", () => {
    expect(boundLimits(q("54.05 mm"), q("54.00 mm"))).toEqual({
      fault: "limits-crossed",
      message: "the lower limit is above the upper one",
    });
    expect(range(boundLimits(q("54.00 mm"), q("54.00 mm")))).toBe("54.00 mm..54.00 mm");
    expect(boundLimits(q("1 in"), q("26 mm"))).not.toHaveProperty("fault");
    expect(boundLimits(q("1 mm"), q("1 kg"))).toMatchObject({ fault: "dimension" });
    expect(boundLimits(q("8.4 mm"), undefined)).toStrictEqual({ lower: q("8.4 mm") });
    expect(boundLimits(undefined, q("8.4 mm"))).toStrictEqual({ upper: q("8.4 mm") });
  });
});

describe("the zone, what there is to use up", () => {
  const zoneOf = (limits: Limits) => {
    const result = zone(limits);
    return result === undefined ? undefined : shown(result);
  };

  test("upper less lower", () => {
    expect(zoneOf(ok(boundLimits(q("54.00 mm"), q("54.05 mm"))))).toBe("0.05 mm");
    expect(zoneOf(ok(boundLimits(q("80 degC"), q("90 degC"))))).toBe("10 degC");
  });

  test("with one limit, between new and the limit", () => {
    expect(zoneOf({ lower: q("8.4 mm"), fresh: q("9.5 mm") })).toBe("1.1 mm");
    expect(zoneOf({ upper: q("0.30 mm"), fresh: q("0.05 mm") })).toBe("0.25 mm");
    expect(zoneOf({ lower: q("8.4 mm"), fresh: q("1 in") })).toBe("17.0 mm");
    expect(zoneOf({ lower: q("8.4 mm"), fresh: q("9.5 kg") })).toBeUndefined();
  });

  test("a bare maximum from zero, a bare minimum without new none", () => {
    expect(zoneOf({ upper: q("0.10 mm") })).toBe("0.10 mm");
    expect(zoneOf({ lower: q("8.4 mm") })).toBeUndefined();
    expect(zoneOf(nominalLimits(q("8.4 mm")))).toBeUndefined();
    expect(zoneOf({ fresh: q("9.5 mm") })).toBeUndefined();
  });
});
