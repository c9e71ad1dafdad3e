import { describe, expect, test } from "vitest";
import { formatQuantity } from "../../server/quantities/quantity.ts";
import {
  combineExpanded,
  expandedFromResolution,
  gaugeUncertainty,
  uncertaintyOf,
} from "../../server/quantities/uncertainty.ts";
import { ok, q, rise, shown } from "./written.ts";

describe("expanded uncertainty", () => {
  test("from the resolution alone is resolution over the root of three (JCGM 100:2008, F.2.2.1, k = 2)", () => {
    expect(shown(expandedFromResolution(q("0.01 mm")))).toBe("0.00577 mm");
    expect(formatQuantity(expandedFromResolution(q("1 degC")), { figures: 4 })).toBe("0.5774 degC");
    expect(expandedFromResolution(q("1 degC")).dimension.name).toBe("temperature_difference");
  });

  test("as the gauge states it, fixed or of the reading", () => {
    expect(shown(ok(uncertaintyOf(gaugeUncertainty(q("0.004 mm")), q("25 mm"))))).toBe("0.004 mm");
    expect(shown(ok(uncertaintyOf(gaugeUncertainty(q("4 %")), q("54 N.m"))))).toBe("2.16 N.m");
    expect(shown(ok(uncertaintyOf(gaugeUncertainty(q("4 %")), q("-1.5 deg"))))).toBe("0.06 deg");
  });

  test("of two readings is the root of the sum of squares, in the unit of the first", () => {
    expect(shown(ok(combineExpanded(q("0.003 mm"), q("4 µm"))))).toBe("0.00500 mm");
    expect(shown(ok(combineExpanded(rise("3 degC"), q("4 K"))))).toBe("5.00 degC");
    expect(combineExpanded(q("1 mm"), q("1 kg"))).toMatchObject({
      fault: "dimension",
      message: "cannot add unlike dimensions: length (mm) and mass (kg)",
    });
  });
});
