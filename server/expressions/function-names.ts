import { tradeNames } from "../trade/catalogue.ts";
import { builtIns } from "./built-in-functions.ts";

/** Every name that can be called, aliases included. */
export const functionNames: readonly string[] = [...builtIns.keys(), ...tradeNames];
