// `npm run demo`: the main job on the sample roadster. What is wrong in the diary, what has to be ordered, and
// when the car will be done.
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const build = "samples/roadster";

/** The commands, and the exit codes that mean they were carried out: `check` ends with 1 when it found errors. */
const steps = [
  { command: ["check", build], carriedOut: [0, 1] },
  { command: ["order", build], carriedOut: [0] },
  { command: ["timeline", build], carriedOut: [0] },
];

for (const { command, carriedOut } of steps) {
  console.log(`\n$ cotter ${command.join(" ")}\n`);
  const { status } = spawnSync(process.execPath, ["dist/cotter.cjs", ...command], {
    cwd: root,
    stdio: "inherit",
  });
  if (!carriedOut.includes(status)) {
    console.error(`\ncotter ${command[0]} ended with ${status}.`);
    process.exit(1);
  }
}
