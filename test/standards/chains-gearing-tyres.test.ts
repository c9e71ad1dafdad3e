import { rollerChainRows } from "../../server/trade/tables/roller-chains.ts";
import { call, checkRows, inUnit } from "./row-checks.ts";
import { named, numbers, quantity } from "./row-inputs.ts";

function chain(name: string) {
  const row = rollerChainRows.find((candidate) => candidate.name === name);
  if (row === undefined) throw new Error(`no chain ${name}`);
  return row;
}

/** Every chain a row names: `08B (08A, ANSI 40)`, by its own name or the one it is also called. */
function pitches(inputs: string): readonly number[] {
  const names = inputs.split(/[(), ]+/).filter((name) => /^\d\d[ABC]$/.test(name));
  const found = [...new Set(names.map((name) => chain(name).pitch))];
  const american = /ANSI \d+/.exec(inputs)?.[0];
  const alias = rollerChainRows.find((row) => row.alsoCalled === american);
  if (american !== undefined && alias?.pitch !== found[0]) throw new Error(`${american} has another pitch`);
  return found;
}

const bhandari = [quantity("19.05 mm"), 17, 34] as const;

checkRows("09_chain_gearing_tyres", [
  {
    quantity: /^pitch diameter p\/sin/,
    answer: ({ inputs }) => [
      inUnit(call("sprocket_diameter", named(inputs, "p") / 1000, named(inputs, "z")), "mm"),
    ],
  },
  {
    quantity: /^power at wheel$/,
    answer: () => {
      const torque = quantity("864 lbf") * quantity("15 in");
      const speed = quantity("3500 rpm") / call("overall_ratio", 3.6);
      return [inUnit(call("power", torque, speed), "hp")];
    },
  },
  {
    quantity: /^motorcycle chain roller diameter/,
    answer: ({ inputs }) => [chain(inputs).roller, chain(inputs).innerWidth],
  },
  { quantity: /^motorcycle chain pitch$/, answer: ({ inputs }) => [chain(inputs).pitch] },
  { quantity: /^ISO 606 chain pitch$/, answer: ({ inputs }) => pitches(inputs) },
  {
    quantity: /^chain length in links/,
    answer: ({ inputs }) => [
      call("chain_length", named(inputs, "p"), named(inputs, "z1"), named(inputs, "z2"), named(inputs, "a")),
    ],
  },
  {
    quantity: /^centre distance for 106 links/,
    answer: () => [inUnit(0.998 * call("chain_centres", ...bhandari, 106), "mm")],
  },
  {
    quantity: /^chain length$/,
    inputs: /^p=/,
    answer: ({ inputs }) => {
      const pitch = named(inputs, "p");
      const links = call("chain_length", pitch, named(inputs, "z1"), named(inputs, "z2"), 50 * pitch);
      return [inUnit(links * pitch, "mm")];
    },
  },
  {
    quantity: /^chain (surface )?speed/,
    answer: ({ inputs, unit }) => {
      // A sprocket is a wheel whose circumference is its teeth times the pitch.
      const circumference = named(inputs, "z") * named(inputs, "p");
      const speed = quantity(/\d+ rpm/.exec(inputs)?.[0] ?? "");
      return [inUnit(call("road_speed", speed, 1, circumference), unit)];
    },
  },
  {
    quantity: /^centre distance for whole links$/,
    answer: ({ inputs }) => {
      const [links = 0, teeth = 0, otherTeeth = 0] = numbers(inputs);
      return [inUnit(call("chain_centres", named(inputs, "p"), teeth, otherTeeth, links), "mm")];
    },
  },
  {
    quantity: /^tyre nominal diameter/,
    answer: ({ inputs }) => [inUnit(call("tyre_diameter", inputs), "mm")],
  },
]);
