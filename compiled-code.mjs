// Puts the compiled code of the parts of `cotter` beside them (server/command-line/compiled-code.ts reads it): runs
// `cotter check` once on a sample, since only what has been run has been compiled. The build calls this at its end.
//
//   node compiled-code.mjs DIST SAMPLE
import { writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { pathToFileURL } from "node:url";

const [dist, sample] = process.argv.slice(2);
const program = path.resolve(dist, "cotter.cjs");
const require = createRequire(pathToFileURL(program));

const vm = require("node:vm");
const compiled = new Map();
vm.Script = class extends vm.Script {
  constructor(code, { filename }) {
    super(code, { filename });
    compiled.set(filename, this);
  }
};

process.on("exit", () => {
  // The sample has mistakes, which is what the status says.
  process.exitCode = compiled.size > 0 ? 0 : 1;
  for (const [file, script] of compiled) writeFileSync(`${file}.code`, script.createCachedData());
});
process.argv.splice(1, Number.POSITIVE_INFINITY, program, "check", sample);
require(program);
