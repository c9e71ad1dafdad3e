/**
 * What is told of each function, by its name. It is told when it is looked up, so the programs load it late: the build takes
 * these texts out of the functions and writes them down here.
 */
import { tradeFunctions } from "../trade/catalogue.ts";
import type { TradeFunction } from "../trade/function.ts";
import { builtInFunctions } from "./built-in-functions.ts";

export interface FunctionTexts extends Pick<TradeFunction, "summary" | "formula" | "meaning" | "limits"> {
  /** Of each parameter. */
  readonly docs: readonly string[];
}

type Told = Pick<TradeFunction, "name" | "summary" | "formula" | "meaning" | "limits"> & {
  readonly parameters: readonly { readonly doc: string }[];
};

const all: readonly Told[] = [...builtInFunctions, ...tradeFunctions()];

export const functionTexts: ReadonlyMap<string, FunctionTexts> = new Map(
  all.map(({ name, summary, formula, meaning, limits, parameters }) => {
    const docs = parameters.map(({ doc }) => doc);
    return [
      name,
      {
        summary,
        formula,
        docs,
        ...(meaning === undefined ? {} : { meaning }),
        ...(limits === undefined ? {} : { limits }),
      },
    ];
  }),
);
