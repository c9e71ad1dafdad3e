// Programs from their start to their end, in turn.
import { spawnSync } from "node:child_process";
import { inTurn, median, p95 } from "./figures.mjs";
import { LogFolder } from "./subjects.mjs";

export async function measureStart({ program, generateLog, rounds, longRounds, long }) {
  const short = new LogFolder(generateLog({ lines: 1000, broken: 0.05 }));
  const longFolder = new LogFolder(generateLog({ lines: long, broken: 0.05 }));
  const bare = { name: "node -e 0", words: ["-e", "0"] };
  const help = { name: "cotter --help", words: [program, "--help"] };
  const check = { name: "cotter check, 1,000 lines", words: [program, "check", short.path] };
  const checkLong = {
    name: `cotter check, ${long.toLocaleString("en")} lines`,
    words: [program, "check", longFolder.path],
  };
  const taken = new Map([bare, help, check, checkLong].map((job) => [job, []]));
  const run = (job) => {
    const began = performance.now();
    const { status, error } = spawnSync(process.execPath, job.words, { stdio: "ignore" });
    // 1: there are complaints.
    if (error !== undefined || status > 1) throw new Error(`${job.name} ended with ${status}`);
    taken.get(job).push(performance.now() - began);
  };
  await inTurn(rounds, [bare, help, check], run);
  await inTurn(longRounds, [checkLong], run);
  short.remove();
  longFolder.remove();
  return [...taken].map(([{ name }, all]) => ({
    name,
    rounds: all.length,
    median: median(all),
    p95: p95(all),
  }));
}
