import { afterAll, describe, expect, test } from "vitest";
import type { Decimal } from "../../server/quantities/decimal.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import { boundLimits } from "../../server/quantities/limits.ts";
import type { Quantity } from "../../server/quantities/quantity.ts";
import { add, convert, multiply, quantity } from "../../server/quantities/quantity.ts";
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

/** The end gauge of JCGM 100:2008, H.1: nominal length, expansion, and the bounds of temperature and expansion difference. */
const GAUGE = {
  length: "50.000623 mm",
  difference: "0.215 µm",
  expansion: "11.5e-6 1/K",
  temperatureDifferenceBound: "0.05 K",
  meanTemperatureOffset: "0.1 K",
  expansionDifferenceBound: "1e-6 1/K",
  standardLength: "0.025 µm",
} as const;

/** Standard uncertainties of the comparison, in H.1.3.2. */
const COMPARISON = ["5.8e-3 µm", "3.9e-3 µm", "6.7e-3 µm"] as const;

describe("published values, 06_measurement_uncertainty", () => {
  for (const row of checkable) {
    test(`${row.id} ${row.quantity}; ${row.inputs}: ${row.expected}; ${row.source}`, () => {
      expect(differences(row)).toEqual([]);
    });
  }

  afterAll(() => {
    process.stdout.write(
      `06_measurement_uncertainty: ${checkable.length} of ${rows.length} published values checked\n`,
    );
  });
});

/** In words, what is not as published within its tolerance. */
function differences(row: ReferenceRow): readonly string[] {
  if (row.quantity === "decision") {
    const [given, wanted] = [decisions(row).join(), published(row).join()];
    return given === wanted ? [] : [`${given} differs from ${wanted}`];
  }
  const expected = row.expected.split(" .. ");
  const given = answer(row);
  return expected.flatMap((wanted, place) => {
    const off = given[place]?.minus(wanted).abs();
    return off?.lessThanOrEqualTo(row.tolerance) ? [] : [`${given[place]} differs from ${wanted}`];
  });
}

function answer(row: ReferenceRow): readonly Decimal[] {
  switch (row.id) {
    case "G-001":
      return [inNanometres(checked(add(q(GAUGE.length), q(GAUGE.difference))))];
    case "G-002":
      return [
        inNanometres(
          combined(
            q(GAUGE.standardLength),
            ...COMPARISON.map(q),
            temperatureComponent(),
            expansionComponent(),
          ),
        ),
      ];
    case "G-004":
      return [inNanometres(temperatureComponent())];
    case "G-008":
      return [inNanometres(expansionComponent())];
    case "G-010":
      return [inNanometres(combined(...(COMPARISON.map(q) as [Quantity, ...Quantity[]])))];
    case "G-025":
      return [combined(q("0.0029 mm"), q("0.0012 mm"), q("0.0020 mm")).value];
    case "G-026":
      return [expanded(q("0.0037 mm")).value];
    case "G-040": {
      // The least and the greatest reading, of all whole micrometres about the limits, that proves conformity.
      const limits = checked(boundLimits(q("24.987 mm"), q("25.000 mm")));
      const readings = Array.from({ length: 20 }, (_, step) => q(`${(24_983 + step) / 1000} mm`));
      const proved = readings.filter(
        (reading) => checked(judge([reading], q("0.002 mm"), limits, 0)).verdict === "within",
      );
      return [proved[0], proved.at(-1)].flatMap((reading) => (reading === undefined ? [] : [reading.value]));
    }
    default:
      return [standard(row.inputs)];
  }
}

/** `a=0.05 K`, a half-width, or `resolution 0.02`, whose expanded uncertainty is twice the standard one asked for. */
function standard(inputs: string): Decimal {
  const [, word, number = "", symbol = ""] = /^(a=|resolution )(\S+) ?(.*)$/.exec(inputs) ?? [];
  const value = checked(quantity(number, symbol.replace(/^\//, "1/")));
  return word === "a=" ? standardOfRectangle(value).value : expandedFromResolution(value).value.div(2);
}

function temperatureComponent(): Quantity {
  const spread = standardOfRectangle(q(GAUGE.temperatureDifferenceBound));
  return checked(multiply(q(GAUGE.length), checked(multiply(q(GAUGE.expansion), spread))));
}

function expansionComponent(): Quantity {
  const spread = standardOfRectangle(q(GAUGE.expansionDifferenceBound));
  return checked(multiply(q(GAUGE.length), checked(multiply(spread, q(GAUGE.meanTemperatureOffset)))));
}

function combined(first: Quantity, ...others: Quantity[]): Quantity {
  return checked(combineExpanded(first, ...others));
}

/** The nanometre is no unit of the notation, so that `nm` on a torque is found. */
function inNanometres(length: Quantity): Decimal {
  return checked(convert(length, unit("µm"))).value.times(1000);
}

/** At the reading of the row, and a hair beyond it, which tells on which side of a boundary the rule puts the edge. */
function decisions({ inputs }: ReferenceRow): readonly string[] {
  const [limit = "", uncertainty = "", reading = ""] = inputs.match(/[\d.]+(?= mm)/g) ?? [];
  const at = (measured: Decimal) => {
    const value = checked(quantity(measured, "mm"));
    return checked(judge([value], q(`${uncertainty} mm`), { upper: q(`${limit} mm`) }, 0)).verdict;
  };
  return [at(decimal(reading)), at(decimal(reading).plus("1e-9"))];
}

/** The last of the zone still belongs to it: conformity is proved up to its edge, nonconformity only beyond the other. */
function published({ expected }: ReferenceRow): readonly string[] {
  if (expected === "conforming") return ["within", "within"];
  if (expected.startsWith("indeterminate")) return ["uncertain", "uncertain"];
  return expected.includes("conformity zone") ? ["within", "uncertain"] : ["uncertain", "outside"];
}

function q(text: string): Quantity {
  const [number = "", symbol = ""] = text.split(" ");
  return checked(quantity(number, symbol));
}

function checked<T extends object>(result: T): Exclude<T, { fault: string }> {
  if (isFault(result)) throw new Error(JSON.stringify(result));
  return result as Exclude<T, { fault: string }>;
}
