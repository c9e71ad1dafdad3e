/** A setting of the engine of Node for a server that somebody waits for at each key. */
import { setFlagsFromString } from "node:v8";

/**
 * How much of a function the engine of Node 20 runs before it thinks of making it quicker: about seven times what it is by
 * itself, as for the program `cotter`. In the first thousands of keys it would else spend nearly half of the processor's
 * time on making functions quicker, beside those that somebody waits for. Later engines take their time by themselves, and
 * do not know the setting.
 */
const PATIENCE = "--interrupt-budget=500000";

export function setEngine(): void {
  if (process.versions.v8.startsWith("11.")) setFlagsFromString(PATIENCE);
}
