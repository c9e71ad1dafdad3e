/** All functions of the trade, by name and by alias. */

import { alignmentFunctions } from "./alignment.ts";
import { boltFunctions } from "./bolts.ts";
import { brakeFunctions } from "./brakes.ts";
import { driveFunctions } from "./drive.ts";
import { electricFunctions } from "./electrics.ts";
import { engineFunctions } from "./engine.ts";
import { fitFunctions } from "./fits.ts";
import type { TradeFunction } from "./function.ts";
import { measurementFunctions } from "./measurement.ts";
import { shaftFunctions } from "./shafts.ts";
import { springFunctions } from "./springs.ts";
import { threadFunctions } from "./threads.ts";
import { tighteningFunctions } from "./tightening-functions.ts";

/** In the order of the reference page. */
export const tradeFunctions: readonly TradeFunction[] = [
  ...threadFunctions,
  ...boltFunctions,
  ...tighteningFunctions,
  ...fitFunctions,
  ...measurementFunctions,
  ...springFunctions,
  ...shaftFunctions,
  ...driveFunctions,
  ...brakeFunctions,
  ...alignmentFunctions,
  ...electricFunctions,
  ...engineFunctions,
];

/** By every name that may be written, aliases included. */
export const catalogue: ReadonlyMap<string, TradeFunction> = new Map(
  tradeFunctions.flatMap((entry) => [entry.name, ...entry.aliases].map((name) => [name, entry] as const)),
);
