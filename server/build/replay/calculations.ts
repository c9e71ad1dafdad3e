/** Calculations of the days: each on its line, with what is known before it. */
import { complainOfCalculation } from "../calculation-findings.ts";
import { Calculator } from "../calculations.ts";
import type { Handlers } from "./replay.ts";

export const calculationHandlers: Handlers = {
  calc: (replay, fact) => {
    const calculation = new Calculator(replay).ofFact(fact);
    replay.calculated.set(fact.fact.name, calculation);
    replay.calculations.push(calculation);
    complainOfCalculation(replay, calculation);
  },
};
