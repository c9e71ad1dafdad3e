// Which changes of a floor are tried where not all can be: a plugin of Stryker's that lets those pass that are drawn.
// What is drawn hangs on the change alone – its file, its place, what it is and what it puts there – and on a seed,
// by way of a hash. So each change has the same chance, and the same are drawn again on any machine.
import { createHash } from "node:crypto";
import path from "node:path";
import { root } from "./figures.mjs";

/** Where a change stands between 0 and 1: evenly, and in no order that the code has. */
function lotOf(seed, mutant) {
  const words = JSON.stringify([seed, ...partsOf(mutant)]);
  return createHash("sha256").update(words).digest().readUIntBE(0, 6) / 2 ** 48;
}

function partsOf({ fileName, location: { start, end }, mutatorName, replacement }) {
  return [fileName, start.line, start.column, end.line, end.column, mutatorName, replacement];
}

/** What tells a change from all others of the same code. Lines and columns count from 0. */
export function nameOf(mutant) {
  return JSON.stringify(partsOf(mutant));
}

/**
 * Whether a change is in a draw: its lot lies in the draw's stretch, so that draws with stretches of their own share none.
 * Of a draw with names it is one that is named.
 */
export function isDrawn({ seed, from, to, named }, mutant) {
  if (named !== undefined && !named.includes(nameOf(mutant))) return false;
  const lot = lotOf(seed, mutant);
  return from <= lot && lot < to;
}

/** Stryker asks a checker before it runs a change; one that does not pass is never run, and stands apart in the report. */
class DrawnMutants {
  static inject = ["options"];
  #draw;

  constructor({ draw }) {
    this.#draw = draw;
  }

  init() {
    return Promise.resolve();
  }

  group(mutants) {
    return [mutants.map(({ id }) => id)];
  }

  check(mutants) {
    const answers = mutants.map((mutant) => {
      const fileName = path.relative(root, mutant.fileName).split(path.sep).join("/");
      return [
        mutant.id,
        isDrawn(this.#draw, { ...mutant, fileName })
          ? { status: "passed" }
          : { status: "compileError", reason: "not drawn" },
      ];
    });
    return Promise.resolve(Object.fromEntries(answers));
  }
}

export const strykerPlugins = [{ kind: "Checker", name: "drawn", injectableClass: DrawnMutants }];
