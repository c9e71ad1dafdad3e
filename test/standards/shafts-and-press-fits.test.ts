import { readMaterial } from "../../server/trade/materials.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { call, checkRows, inUnit, materialWith } from "./row-checks.ts";
import { labelled, named, quantity } from "./row-inputs.ts";

const solid = 0;

function stress(torque: number, diameter: number): number {
  return call("torsion_stress", torque, diameter, solid);
}

/** Solid bar in which a torque makes a stress: the stress falls with the cube of the diameter. */
function diameterFor(torque: number, allowed: number): number {
  return Math.cbrt(stress(torque, 1) / allowed);
}

/** Linear expansion per kelvin of a word of the materials table. */
function expansion(word: string): number {
  return call("thermal_growth", 1, readMaterial(word) ?? materialWith({}), 1);
}

function tableWord(row: ReferenceRow): string {
  if (row.inputs.includes("cast iron")) return "cast_iron";
  if (row.inputs.includes("stainless")) return "stainless";
  return row.inputs.split(" ")[0] ?? "";
}

checkRows("08_shafts_press_fits", [
  {
    quantity: /^angle of twist/,
    answer: ({ inputs, unit }) => {
      const values = ["T", "L", "d"].map((name) => named(inputs, name));
      const [torque = 0, length = 0, diameter = 0] = values;
      return [inUnit(call("twist", torque, length, diameter, solid, named(inputs, "G")), unit)];
    },
  },
  {
    quantity: /^shaft diameter for allowable torsion$/,
    answer: ({ inputs }) => [
      inUnit(diameterFor(named(inputs, "T"), (0.5 * quantity("62000 psi")) / 3), "in"),
    ],
  },
  {
    quantity: /^torsional shear stress$/,
    answer: ({ inputs }) => [inUnit(stress(quantity("180 lbf·in"), named(inputs, "D")), "psi")],
  },
  {
    quantity: /^(maximum|torsional) shear stress 16T/,
    answer: ({ inputs, unit }) => [inUnit(stress(named(inputs, "T"), named(inputs, "d")), unit)],
  },
  {
    quantity: /^permissible torque$/,
    answer: () => {
      const diameter = quantity("1.5 in");
      const byStress = quantity("6000 psi") / stress(1, diameter);
      const byTwist =
        quantity("2.5 deg") / call("twist", 1, quantity("54 in"), diameter, solid, quantity("11.5e6 psi"));
      return [inUnit(Math.min(byStress, byTwist), "lbf·ft")];
    },
  },
  {
    quantity: /^solid shaft diameter from stress$/,
    answer: ({ inputs }) => [inUnit(diameterFor(named(inputs, "T"), named(inputs, "tau")), "mm")],
  },
  {
    quantity: /^solid shaft diameter from twist 0.75 deg\/m$/,
    answer: ({ inputs }) => {
      // The twist falls with the fourth power of the diameter.
      const ofOneMetre = call("twist", named(inputs, "T"), 1, 1, solid, named(inputs, "G"));
      return [inUnit((ofOneMetre / quantity("0.75 deg")) ** 0.25, "mm")];
    },
  },
  {
    quantity: /^interface pressure steel tube on brass tube$/,
    answer: () => {
      const steel = materialWith({ modulus: quantity("206.7 GPa"), poissonRatio: 0.29 });
      const brass = materialWith({ modulus: quantity("103.4 GPa"), poissonRatio: 0.32 });
      const lengths = [0.051, 101.6, 127, 50.8].map((mm) => mm / 1000);
      return [inUnit(call("interference_pressure", ...lengths, steel, brass), "MPa")];
    },
  },
  {
    quantity: /^thermal stress, ends fixed$/,
    answer: ({ inputs }) => {
      const strain = call("thermal_growth", 1, materialWith({ expansion: named(inputs, "alpha") }), 95 - 30);
      return [inUnit(strain * quantity("2e5 MPa"), "MPa")];
    },
  },
  {
    quantity: /^temperature rise for compressive stress 35 MPa/,
    answer: ({ inputs }) => {
      const length = named(inputs, "L");
      const perKelvin = call(
        "thermal_growth",
        length,
        materialWith({ expansion: named(inputs, "alpha") }),
        1,
      );
      const pressedShort = (quantity("35 MPa") / named(inputs, "E")) * length;
      return [(pressedShort + quantity("0.8 mm")) / perKelvin];
    },
  },
  { quantity: /coefficient of linear expansion/, answer: (row) => [expansion(tableWord(row))] },
  {
    quantity: /^heating temperature of the outer part/,
    answer: ({ inputs }) => {
      const material = materialWith({ expansion: named(inputs, "alpha") });
      const interference = labelled(inputs, "interference");
      const kelvin = call(
        "heat_to_fit",
        interference,
        named(inputs, "d"),
        material,
        labelled(inputs, "assembly clearance"),
      );
      return [kelvin - 273.15];
    },
  },
]);
