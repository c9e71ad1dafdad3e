/** Units that open into what they are made of, where that makes the result shorter. */
import { expect, test } from "vitest";
import { dimensionNamed } from "../../server/quantities/dimension.ts";
import { power } from "../../server/quantities/powers.ts";
import { coherentUnit, customaryUnit } from "../../server/quantities/product-unit.ts";
import { divide, multiply } from "../../server/quantities/quantity.ts";
import { unit } from "../../server/quantities/unit.ts";
import { ok, q, shown } from "./written.ts";

test("a prefixed unit is not taken for the plain one", () => {
  expect(shown(multiply(q("12 mV"), q("5 A")))).toBe("0.06 W");
  expect(shown(multiply(q("2 kW"), q("3 h")))).toBe("6 kW.h");
  expect(shown(divide(q("1 kV"), q("2 ohm")))).toBe("500 A");
});

// P = U² / R and P = I² R.
test("a unit opens at its power", () => {
  expect(shown(divide(ok(power(q("12 V"), 2)), q("3 ohm")))).toBe("48 W");
  expect(shown(multiply(ok(power(q("2 A"), 2)), q("3 ohm")))).toBe("12 W");
});

test("a dimension has a customary unit in each system, and one of coherent units", () => {
  expect(customaryUnit(dimensionNamed("pressure"), "metric")?.symbol).toBe("bar");
  expect(customaryUnit(dimensionNamed("pressure"), "imperial")?.symbol).toBe("psi");
  expect(customaryUnit(dimensionNamed("pressure"), "either")?.symbol).toBe("bar");
  expect(customaryUnit(dimensionNamed("expansion"), "metric")).toBeUndefined();
  expect(coherentUnit(dimensionNamed("torque")).symbol).toBe("m2.kg/s2");
  expect(coherentUnit(unit("turn").dimension).symbol).toBe("turn");
});
