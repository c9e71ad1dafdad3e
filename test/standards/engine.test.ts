import type { ReferenceRow } from "./reference-rows.ts";
import { call, checkRows, inUnit } from "./row-checks.ts";
import { labelled, named, numbers, quantity } from "./row-inputs.ts";

function perCylinder({ inputs }: ReferenceRow): number {
  return call("swept_volume", labelled(inputs, "bore"), labelled(inputs, "stroke"), 1);
}

checkRows("13_engine", [
  {
    quantity: /^cubic capacity/,
    answer: ({ inputs }) => [
      inUnit(
        call(
          "swept_volume",
          labelled(inputs, "bore"),
          labelled(inputs, "stroke"),
          Number.parseInt(inputs, 10),
        ),
        "cm³",
      ),
    ],
  },
  {
    quantity: /^clearance volume Vs\/\(r-1\)$/,
    answer: ({ inputs }) => {
      const swept = call("swept_volume", quantity("68 mm"), quantity("75 mm"), 1);
      return [inUnit(call("clearance_volume", swept, named(inputs, "r")), "cm³")];
    },
  },
  {
    quantity: /^compression ratio 1 \+ Vs\/Vc$/,
    inputs: /^bore/,
    answer: (row) => [call("compression_ratio", perCylinder(row), named(row.inputs, "Vc"))],
  },
  {
    quantity: /^compression ratio 1 \+ Vs\/Vc$/,
    inputs: /^Vs/,
    answer: ({ inputs }) => [call("compression_ratio", named(inputs, "Vs"), named(inputs, "Vc"))],
  },
  {
    quantity: /^swept volume and ratio \(Keswani\)$/,
    answer: (row) => [
      inUnit(perCylinder(row), "L"),
      call("compression_ratio", perCylinder(row), named(row.inputs, "Vc")),
    ],
  },
  {
    quantity: /^compression ratio$/,
    answer: () => [call("compression_ratio", quantity("1.2 L"), quantity("0.2 L"))],
  },
  {
    quantity: /^displacement \/ clearance volume per cylinder$/,
    answer: (row) => {
      const cylinders = Number.parseInt(row.inputs, 10);
      const ratio = numbers(row.inputs).at(-1) ?? Number.NaN;
      const all = call(
        "swept_volume",
        labelled(row.inputs, "bore"),
        labelled(row.inputs, "stroke"),
        cylinders,
      );
      return [inUnit(all, "cm³"), inUnit(call("clearance_volume", perCylinder(row), ratio), "cm³")];
    },
  },
  {
    quantity: /^power (from torque|2 pi n T)/,
    answer: ({ inputs, unit }) => {
      const [torque = "", speed = ""] = inputs.split(";");
      return [inUnit(call("power", quantity(torque), quantity(speed)), unit)];
    },
  },
  {
    quantity: /^freezing point, propylene glycol/,
    answer: ({ inputs }) => [call("freeze_point", quantity(inputs), "propylene") - 273.15],
  },
  {
    quantity: /^freezing point, ethylene glycol/,
    answer: ({ inputs }) => [call("freeze_point", (numbers(inputs)[0] ?? Number.NaN) / 100) - 273.15],
  },
]);
