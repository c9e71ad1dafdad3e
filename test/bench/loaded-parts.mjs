// Preloaded into a program that is measured: as it ends, writes down which files of code it has loaded, one a line.
import { writeFileSync } from "node:fs";
import { createRequire } from "node:module";

const { cache } = createRequire(import.meta.url);
process.on("exit", () => writeFileSync(process.env.COTTER_LOADED_PARTS, Object.keys(cache).join("\n")));
