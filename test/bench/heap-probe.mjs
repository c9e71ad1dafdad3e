// Loaded into a server that is measured: at a signal it collects what is not held, and writes the bytes that are left.
import { writeSync } from "node:fs";

const OUTPUT = 2;

process.on("SIGUSR2", () => {
  globalThis.gc();
  writeSync(OUTPUT, `heap ${process.memoryUsage().heapUsed}\n`);
});
