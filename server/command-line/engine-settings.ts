/** Settings of the engine for programs that have done their work within seconds. */
import { setFlagsFromString } from "node:v8";

/**
 * How much of a function the engine of Node 20 runs before it thinks of making it quicker: about four times what it is by
 * itself. Sooner costs more than it gives, a tenth of a check of 1,000 lines and a third of one of 20,000. Later engines
 * take their time by themselves, and do not know the setting.
 */
const PATIENCE = "--interrupt-budget=500000";

/**
 * The engine goes through all that is held in one go when it has to, and not in steps between others, with threads beside
 * them, so that nobody has to wait: nobody waits for a program but for its end.
 */
const IN_ONE_GO = "--no-incremental-marking";

/** To be called before anything is loaded with compiled code, which is for an engine with these settings. */
export function setEngine(): void {
  if (process.versions.v8.startsWith("11.")) setFlagsFromString(PATIENCE);
  setFlagsFromString(IN_ONE_GO);
}

/** For a command that stays, as a server does: somebody waits for each of its answers. */
export function collectInSteps(): void {
  setFlagsFromString("--incremental-marking");
}
