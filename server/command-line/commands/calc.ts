import { Calculator } from "../../build/calculations.ts";
import { calculate, calculationLines, calculationObject } from "../../expressions/calculation.ts";
import type { Command } from "../command.ts";
import { Failure } from "../command.ts";

export const calc: Command = {
  name: "calc",
  operands: '"EXPRESSION"',
  summary: "one expression with units, with the names of the build around, if there is one",
  options: [],
  examples: [
    'cotter calc "40 lbf.ft in N.m"',
    'cotter calc "preload(54 N.m, M10x1.25, 0.2) in kN"',
    'cotter calc "front.left.disc.thickness - 8.4 mm" --build samples/roadster',
  ],
  run: async ({ operands, options, out, findBuild }) => {
    const text = operands.join(" ");
    if (text.trim() === "")
      throw new Failure('say what to calculate, such as cotter calc "40 lbf.ft in N.m"');
    const names = await findBuild();
    const calculator = names && new Calculator(names.build.standing);
    const calculation = calculate(text, calculator?.lookup, calculator?.rates);
    if (options.has("json")) out.write(`${JSON.stringify(calculationObject(calculation), undefined, 2)}\n`);
    else if (!("fault" in calculation)) out.write(`${calculationLines(text, calculation).join("\n")}\n`);
    if (!("fault" in calculation)) return 0;
    out.complain(`${calculationLines(text, calculation).join("\n")}\n`);
    return 2;
  },
};
