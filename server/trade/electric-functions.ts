/** What can be called about electrics. */

import {
  nextFuse,
  readWireGauge,
  SQUARE_MILLIMETRE,
  voltageDrop,
  wireArea,
  wireFor,
  wireResistance,
} from "./electrics.ts";
import type { TradeFunction } from "./function.ts";
import { defineFunction } from "./function.ts";
import { wireRows } from "./tables/wires.ts";

const load = {
  name: "load",
  is: "quantity",
  dimension: "current",
  min: 0.001,
  max: 2000,
  unit: "A",
  doc: "Current.",
} as const;
const area = {
  name: "area",
  is: "quantity",
  dimension: "area",
  min: 1e-8,
  max: 1e-3,
  unit: "mm2",
  doc: "Copper cross-section.",
} as const;
const length = {
  name: "length",
  is: "quantity",
  dimension: "length",
  min: 0.001,
  max: 10_000,
  unit: "m",
  doc: "Length of wire, one way; it is doubled for the way back.",
} as const;

const copper = "IEC 60028: 0.017241 Ω·mm²/m, 0.00393 per kelvin";
const doubled = "one-way length, doubled for the way back";

const functions: readonly TradeFunction[] = [
  defineFunction({
    name: "wire_area",
    group: "electrics",
    parameters: [{ name: "gauge", is: "text", expected: '"AWG 14"', doc: "American wire gauge, 4/0 to 40." }],
    returns: { is: "quantity", dimension: "area", unit: "mm2" },
    summary: "Cross-section of an American wire gauge.",
    formula: "π/4 (0.127 mm × 92^((36 − n)/39))²",
    source: "ASTM B258",
    meaning: "Of a solid wire; a stranded one of that gauge has about as much copper.",
    compute: ({ gauge }) => {
      const number = readWireGauge(gauge);
      return number === undefined
        ? {
            fault: { kind: "unreadable", text: gauge, expected: 'a wire gauge, as in "AWG 14" or "AWG 2/0"' },
          }
        : { value: wireArea(number) };
    },
  }),
  defineFunction({
    name: "wire_resistance",
    group: "electrics",
    parameters: [
      area,
      { ...length, doc: "Length of the conductor itself; it is not doubled here." },
      {
        name: "temperature",
        is: "quantity",
        dimension: "temperature",
        min: 200,
        max: 500,
        unit: "degC",
        optional: true,
        doc: "Of the copper; 20 °C when left out.",
      },
    ],
    returns: { is: "quantity", dimension: "resistance", unit: "ohm" },
    summary: "Resistance of a copper conductor.",
    formula: "R = ρ L / A × (1 + 0.00393 (t − 20 °C))",
    source: copper,
    meaning: "One conductor, as long as said. Stranded cable may have up to 10 % more (IEC 60228).",
    compute: ({ area, length, temperature }) => ({ value: wireResistance(area, length, temperature) }),
  }),
  defineFunction({
    name: "voltage_drop",
    group: "electrics",
    parameters: [load, area, length],
    returns: { is: "quantity", dimension: "voltage", unit: "V" },
    summary: "Voltage lost in a two-wire run.",
    formula: "U = 2 L ρ I / A",
    source: copper,
    meaning: "The one-way length is doubled. With the frame as the way back it is half, plus the joints.",
    limits: "At 20 °C, without plugs, switches and fuses. Hot copper loses a quarter more.",
    compute: ({ load, area, length }) => ({ value: voltageDrop(load, area, length), notes: [doubled] }),
  }),
  defineFunction({
    name: "fuse_for",
    group: "electrics",
    parameters: [load],
    returns: { is: "quantity", dimension: "current", unit: "A" },
    summary: "Rating a fuse needs for a steady load.",
    formula: "load / 0.8",
    source: "80 % rule, common practice; ratings of ISO 8820-3, from memory",
    meaning: "The exact figure; the note names the next standard size.",
    limits:
      "Steady current: inrush and stall of motors and lamps are not judged. The wire must bear more than the fuse.",
    compute: ({ load }) => {
      const value = load / 0.8;
      const next = nextFuse(value);
      const size = next === undefined ? "no blade fuse is that large" : `next standard size ${next} A`;
      return {
        value,
        notes: [size, "inrush and stall are not judged; the wire must bear more than the fuse"],
      };
    },
  }),
  defineFunction({
    name: "wire_for",
    group: "electrics",
    parameters: [
      load,
      length,
      { name: "drop", is: "number", unit: "%", min: 0.001, max: 0.5, doc: "Largest loss, of the supply." },
      {
        name: "supply",
        is: "quantity",
        dimension: "voltage",
        min: 1,
        max: 1000,
        unit: "V",
        doc: "Voltage of the supply.",
      },
    ],
    returns: { is: "quantity", dimension: "area", unit: "mm2" },
    summary: "Smallest standard wire that keeps to a voltage drop and bears the load.",
    formula: "A ≥ 2 L ρ I / (drop × supply), and the current of the wire ≥ load",
    source: `${copper}; sizes of IEC 60228 and vehicle cable; currents: common practice, no source`,
    meaning: "The one-way length is doubled. The size to buy; the note gives the bare figure.",
    limits:
      "Currents are low on purpose: one wire of a loom, PVC, warm. The maker's figure for the insulation decides.",
    compute: ({ load, length, drop, supply }) => {
      const choice = wireFor(load, length, drop * supply);
      if (choice === undefined) {
        const largest = wireRows.at(-1)?.area;
        return {
          fault: {
            kind: "not-in-table",
            wanted: `a wire for ${load} A over ${length} m`,
            table: "wire sizes",
            known: [`up to ${largest} mm2`],
          },
        };
      }
      return {
        value: choice.row.area * SQUARE_MILLIMETRE,
        notes: [
          `the drop asks for ${(choice.neededForDrop / SQUARE_MILLIMETRE).toPrecision(3)} mm2; ${choice.row.area} mm2 is trusted with ${choice.row.current} A (common practice)`,
          doubled,
        ],
      };
    },
  }),
];

export function electricFunctions(): readonly TradeFunction[] {
  return functions;
}
