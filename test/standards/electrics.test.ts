import {
  copperResistivity,
  copperTemperatureCoefficient,
  largestResistance,
  readWireGauge,
  voltageDrop,
  wireDiameter,
} from "../../server/trade/electrics.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { call, checkRows, inUnit } from "./row-checks.ts";
import { labelled, named, numbers, quantity } from "./row-inputs.ts";

const km = 1000;

function gaugeDiameter(text: string): number {
  return wireDiameter(readWireGauge(text) ?? Number.NaN);
}

/** Ω for each km of `AWG 14`. */
function gaugeResistance(text: string): number {
  return call("wire_resistance", call("wire_area", text), km);
}

/** Current, area and one-way length of a run. */
function run({ inputs }: ReferenceRow): readonly [current: number, area: number, length: number] {
  const length = /L=([^;,]+)/.exec(inputs)?.[1] ?? "";
  const current = /I=([^;,]+)/.exec(inputs)?.[1] ?? "";
  const area = /A=([^;,]+)/.exec(inputs)?.[1] ?? "";
  return [quantity(current), quantity(area), quantity(length)];
}

function largest(row: ReferenceRow, conductor: "solid" | "flexible"): number {
  return inUnit(
    largestResistance(quantity(`${numbers(row.inputs)[0]} mm²`), conductor) ?? Number.NaN,
    "Ω/km",
  );
}

checkRows("12_electrical", [
  {
    quantity: /^AWG (36 )?diameter$/,
    answer: ({ inputs }) => [inUnit(gaugeDiameter(inputs), "mm")],
  },
  { quantity: /^AWG cross-section$/, answer: ({ inputs }) => [inUnit(call("wire_area", inputs), "mm²")] },
  { quantity: /^AWG copper resistance/, answer: ({ inputs }) => [gaugeResistance(inputs)] },
  {
    quantity: /^AWG diameter in mils/,
    answer: ({ inputs }) => ({
      values: [inUnit(gaugeDiameter(inputs), "mil"), (gaugeResistance(inputs) * quantity("1000 ft")) / km],
      tolerances: [0.001, 0.001],
    }),
  },
  { quantity: /^maximum conductor resistance class 1\/2$/, answer: (row) => [largest(row, "solid")] },
  { quantity: /^maximum conductor resistance class 5$/, answer: (row) => [largest(row, "flexible")] },
  { quantity: /^copper resistivity/, answer: () => [inUnit(copperResistivity, "Ω·mm²/m")] },
  {
    quantity: /^conductor resistance rule/,
    answer: ({ inputs }) => [call("wire_resistance", quantity("2.5 mm²"), km) * named(inputs, "k")],
  },
  {
    quantity: /^temperature coefficient of resistance of copper/,
    answer: () => [copperTemperatureCoefficient],
  },
  {
    quantity: /^IEC 60228 temperature correction factor/,
    answer: ({ inputs }) => {
      const temperature = (numbers(inputs)[0] ?? Number.NaN) + 273.15;
      return [call("wire_resistance", 1e-6, km) / call("wire_resistance", 1e-6, km, temperature)];
    },
  },
  {
    quantity: /^voltage drop, two-wire run/,
    answer: ({ inputs }) => [
      call("voltage_drop", named(inputs, "I"), named(inputs, "A"), labelled(inputs, "one-way L=")),
    ],
  },
  {
    quantity: /^voltage drop with chassis return/,
    answer: (row) => [voltageDrop(...run(row), "frame")],
  },
  {
    quantity: /^fuse sizing rule/,
    answer: () => [call("fuse_for", quantity("8 A"))],
  },
]);
