import { afterAll, describe, expect, test } from "vitest";
import type { Quantity } from "../../server/quantities/quantity.ts";
import {
  asDifference,
  convert,
  divide,
  multiply,
  quantity,
  quantityOf,
} from "../../server/quantities/quantity.ts";
import { isFault } from "../../server/quantities/quantity-fault.ts";
import { unit } from "../../server/quantities/unit.ts";
import { readWireGauge, wireDiameter } from "../../server/trade/electrics.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { referenceRows } from "./reference-rows.ts";
import unchecked from "./unchecked.json" with { type: "json" };

/** Published conversions; each test is named with its source (NIST SP 811 for most). */
const rows = referenceRows("01_unit_conversions");
const checkable = rows.filter((row) => !(row.id in unchecked));

describe("published values, 01_unit_conversions", () => {
  for (const row of checkable) {
    test(`${row.id} ${row.inputs} = ${row.expected} ${row.unit}; ${row.source}`, () => {
      const difference = answer(row).value.minus(row.expected).abs();
      expect(difference.lessThanOrEqualTo(row.tolerance), `off by ${difference}`).toBe(true);
    });
  }

  afterAll(() => {
    process.stdout.write(
      `01_unit_conversions: ${checkable.length} of ${rows.length} published values checked\n`,
    );
  });
});

/** Units that the notation has only a multiple of. */
const MULTIPLES: Readonly<Record<string, string>> = {
  "1 kip (1000 lbf)": "1000 lbf",
  "1 gf": "0.001 kgf",
  "1 US qt": "2 us_pt",
  "1 imp qt": "2 imp_pt",
};

/** The inputs of a row, in the unit of its `expected`. */
function answer({ inputs, unit: to, id }: ReferenceRow): Quantity {
  if (inputs.startsWith("AWG")) return wire(inputs);
  // In our notation a written ft.lbf is a torque; the energy is the product of a force and a length.
  if (id === "U-066") return product(written("1 lbf"), written("1 ft"), "J");
  // Revolutions as a frequency become an angular speed by the angle of one of them.
  if (inputs === "1 rpm") return product(written("1 rpm"), written("360 deg"), "rad/s");
  const multiple = MULTIPLES[inputs];
  if (multiple !== undefined) return inUnit(written(multiple), to);
  if (inputs === "1 circular mil") return circle(written("1 mil"), to);
  if (inputs.startsWith("interval of ")) return inUnit(asDifference(written(inputs.slice(12))), to);
  return inUnit(written(inputs), to);
}

/** `1 imp gal`, `-40 °F`, `1 kgf·m` as the source writes it. */
function written(text: string): Quantity {
  const [, number = "", symbol = ""] = /^(\S+) (.*)$/.exec(text) ?? [];
  return checked(quantity(number, respelled(symbol)));
}

/** The source's symbol in the notation; the coulomb and the slug by what they are made of. */
function respelled(symbol: string): string {
  const spelled: Readonly<Record<string, string>> = {
    C: "A.s",
    slug: "lbf.s2/ft",
    "US gal": "us_gal",
    "imp gal": "imp_gal",
    "US pt": "us_pt",
    "imp pt": "imp_pt",
    "US fl oz": "us_floz",
    "imp fl oz": "imp_floz",
    '"': "arcsec",
    "mpg(US)": "mile/us_gal",
    "lb/US gal": "lb/us_gal",
  };
  return spelled[symbol] ?? symbol;
}

function inUnit(value: Quantity, to: string): Quantity {
  return checked(convert(value, unit(respelled(to))));
}

function product(a: Quantity, b: Quantity, to: string): Quantity {
  return inUnit(checked(multiply(a, b)), to);
}

function circle(diameter: Quantity, to: string): Quantity {
  const square = checked(multiply(diameter, diameter));
  return inUnit(checked(divide(checked(multiply(square, quantityOf(Math.PI))), quantityOf(4))), to);
}

function wire(gauge: string): Quantity {
  const number = readWireGauge(gauge);
  if (number === undefined) throw new Error(`no gauge: ${gauge}`);
  return inUnit(quantityOf(wireDiameter(number), unit("m")), "mm");
}

function checked<T extends object>(result: T): Exclude<T, { fault: string }> {
  if (isFault(result)) throw new Error(JSON.stringify(result));
  return result as Exclude<T, { fault: string }>;
}
