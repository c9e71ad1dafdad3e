/** An expression that is asked about, with the names of the build around if there is one. */
import type { Build } from "../../../build/build.ts";
import { Calculator } from "../../../build/calculations.ts";
import { calculate, calculationLines } from "../../../expressions/calculation.ts";
import type { Calculated } from "../../protocol.ts";

export function calculated(build: Build | undefined, expression: string): Calculated {
  const calculator = build && new Calculator(build.standing);
  const calculation = calculate(expression, calculator?.lookup, calculator?.rates);
  if ("fault" in calculation) return { text: calculation.fault.message, notes: [], failed: true };
  const [text = "", ...notes] = calculationLines(expression, calculation);
  return { text, notes: notes.map((note) => note.trim()), failed: false };
}
