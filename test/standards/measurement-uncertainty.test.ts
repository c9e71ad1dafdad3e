import { afterAll, describe, expect, test } from "vitest";
import { decimal } from "../../server/quantities/decimal.ts";
import type { Limits } from "../../server/quantities/limits.ts";
import { acceptance, boundLimits } from "../../server/quantities/limits.ts";
import type { Quantity } from "../../server/quantities/quantity.ts";
import { add, convert, multiply, quantity, quantityOf } from "../../server/quantities/quantity.ts";
import { isFault } from "../../server/quantities/quantity-fault.ts";
import {
  combineExpanded,
  expanded,
  expandedFromResolution,
  standardOfRectangle,
} from "../../server/quantities/uncertainty.ts";
import { unit } from "../../server/quantities/unit.ts";
import { judge } from "../../server/quantities/verdict.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { referenceRows } from "./reference-rows.ts";
import unchecked from "./unchecked.json" with { type: "json" };

/** Published uncertainties and decisions; each test is named with its source (JCGM 100:2008, ISO 14253-1). */
const rows = referenceRows("06_measurement_uncertainty");
const checkable = rows.filter((row) => !(row.id in unchecked));

describe("published values, 06_measurement_uncertainty", () => {
  for (const row of checkable) {
    test(`${row.id} ${row.quantity}; ${row.inputs}: ${row.expected}; ${row.source}`, () => {
      if (row.quantity === "decision") {
        expect(decision(row)).toBe(row.expected.split(/ /)[0]);
        return;
      }
      const difference = answer(row).minus(row.expected).abs();
      expect(difference.lessThanOrEqualTo(row.tolerance), `off by ${difference}`).toBe(true);
    });
  }

  test("G-040 guard-banded acceptance interval; ISO 14253-1", () => {
    const drawn = acceptance(checked(boundLimits(q("24.987", "mm"), q("25.000", "mm"))), q("0.002", "mm"));
    expect(rows.find((row) => row.id === "G-040")?.expected).toBe("24.989 .. 24.998");
    expect([drawn?.lower?.value.toString(), drawn?.upper?.value.toString()]).toEqual(["24.989", "24.998"]);
  });

  afterAll(() => {
    process.stdout.write(`06_measurement_uncertainty: ${checkable.length} of ${rows.length} published values checked\n`);
  });
});
