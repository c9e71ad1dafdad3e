// Loaded into a server that is measured. At SIGUSR2 it collects what is not held, and writes the bytes that are left; at
// SIGURG it collects too, and writes a snapshot of the heap to a file, of which it tells the path.
import { writeSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeHeapSnapshot } from "node:v8";

const OUTPUT = 2;

process.on("SIGUSR2", () => {
  globalThis.gc();
  writeSync(OUTPUT, `heap ${process.memoryUsage().heapUsed}\n`);
});

process.on("SIGURG", () => {
  globalThis.gc();
  const file = path.join(tmpdir(), `cotter-bench-${process.pid}.heapsnapshot`);
  writeSync(OUTPUT, `snapshot ${writeHeapSnapshot(file)}\n`);
});
