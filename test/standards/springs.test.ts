import { call, checkRows, inUnit } from "./row-checks.ts";
import { named, quantity } from "./row-inputs.ts";

/** Rate of `G=…; d=…; D=…; N=…` in the names of the row, N/m. */
function rate(inputs: string, wire: string, mean: string, coils: number): number {
  return call("spring_rate", named(inputs, wire), named(inputs, mean), coils, named(inputs, "G"));
}

/** Stress of a spring of that index with its wire, under a load. */
function stress(force: number, index: number, wire: number): number {
  return call("spring_stress", force, wire, index * wire);
}

/** Wahl's factor: the stress over that of a straight bar in torsion. */
function wahl(index: number): number {
  return stress(1, index, 0.001) / ((8 * index) / (Math.PI * 0.001 ** 2));
}

/** Wire of a spring of that index in which a load makes a stress: the stress falls with the square of the wire. */
function wireFor(force: number, index: number, allowed: number): number {
  return Math.sqrt(stress(force, index, 0.001) / allowed) * 0.001;
}

const perMillimetre = (stiffness: number) => inUnit(stiffness, "N/mm");

const indian = "G=84000 MPa; d=5 mm; D=30 mm; N=15";

checkRows("07_springs", [
  {
    quantity: /^spring rate k = G d\^4/,
    answer: ({ inputs }) => [perMillimetre(rate(inputs, "d", "D", named(inputs, "N")))],
  },
  {
    quantity: /^axial deflection W\/k$/,
    answer: ({ inputs }) => [inUnit(named(inputs, "W") / rate(indian, "d", "D", 15), "mm")],
  },
  { quantity: /^Wahl factor/, answer: ({ inputs }) => [wahl(named(inputs, "C"))] },
  {
    quantity: /^corrected shear stress/,
    answer: ({ inputs }) => [
      inUnit(stress(named(inputs, "F"), named(inputs, "C"), named(inputs, "d")), "MPa"),
    ],
  },
  {
    quantity: /^load at shear stress/,
    answer: ({ inputs }) => [named(inputs, "tau") / stress(1, named(inputs, "C"), named(inputs, "d"))],
  },
  {
    quantity: /^required wire diameter/,
    answer: ({ inputs }) => [
      inUnit(wireFor(named(inputs, "F"), named(inputs, "C"), named(inputs, "tau")), "mm"),
    ],
  },
  {
    quantity: /^wire diameter from Kw/,
    answer: ({ inputs }) => [
      inUnit(wireFor(named(inputs, "P"), named(inputs, "C"), 0.5 * named(inputs, "Sut")), "mm"),
    ],
  },
  {
    quantity: /^active coils Na/,
    answer: () => {
      const measured = quantity("35 lbf") / quantity("0.5 in");
      const ofOneCoil = call(
        "spring_rate",
        quantity("0.105 in"),
        quantity("0.620 in"),
        1,
        quantity("11.85e6 psi"),
      );
      const active = ofOneCoil / measured;
      return [active, active + 2];
    },
  },
  {
    quantity: /^spring rate$/,
    inputs: /Na=/,
    answer: ({ inputs }) => [perMillimetre(rate(inputs, "d", "D", named(inputs, "Na")))],
  },
  {
    quantity: /^number of active coils/,
    answer: ({ inputs }) => [rate(inputs, "d", "D", 1) / named(inputs, "k")],
  },
  {
    quantity: /^springs in series/,
    answer: ({ inputs }) => [
      perMillimetre(call("spring_series", named(inputs, "k1") * 1000, named(inputs, "k2"))),
    ],
  },
  {
    quantity: /^springs in parallel/,
    answer: ({ inputs }) => [
      perMillimetre(call("spring_parallel", named(inputs, "k1") * 1000, named(inputs, "k2"))),
    ],
  },
  {
    quantity: /^wheel rate, lever form/,
    answer: ({ inputs }) => [
      perMillimetre(call("wheel_rate", named(inputs, "ks"), named(inputs, "c") / named(inputs, "b"))),
    ],
  },
]);
