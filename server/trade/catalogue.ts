/** All functions of the trade, by name and by alias. */

import { boltFunctions } from "./bolts.ts";
import type { TradeFunction } from "./function.ts";
import { threadFunctions } from "./threads.ts";
import { tighteningFunctions } from "./tightening-functions.ts";

/** In the order of the reference page. */
export const tradeFunctions: readonly TradeFunction[] = [
  ...threadFunctions,
  ...boltFunctions,
  ...tighteningFunctions,
];

/** By every name that may be written, aliases included. */
export const catalogue: ReadonlyMap<string, TradeFunction> = new Map(
  tradeFunctions.flatMap((entry) => [entry.name, ...entry.aliases].map((name) => [name, entry] as const)),
);
