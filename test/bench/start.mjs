// Programs from their start to their end, in turn.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { plainEnvironment } from "./environment.mjs";
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
  // Reads lines, words and trees, and no more.
  const formatLong = {
    name: `cotter format --check, ${long.toLocaleString("en")} lines`,
    words: [program, "format", "--check", longFolder.path],
  };
  const taken = new Map([bare, help, check, formatLong, checkLong].map((job) => [job, []]));
  const run = (job) => {
    const began = performance.now();
    const spent = processorTimeOfChildren();
    const { status, error } = spawnSync(process.execPath, job.words, {
      stdio: "ignore",
      env: plainEnvironment(),
    });
    // 1: there are complaints, or lines to be laid out.
    if (error !== undefined || status > 1) throw new Error(`${job.name} ended with ${status}`);
    taken.get(job).push({
      wall: performance.now() - began,
      processor: spent === undefined ? undefined : processorTimeOfChildren() - spent,
    });
  };
  await inTurn(rounds, [bare, help, check], run);
  await inTurn(longRounds, [formatLong, checkLong], run);
  short.remove();
  longFolder.remove();
  return [...taken].map(([{ name }, all]) => {
    const walls = all.map(({ wall }) => wall);
    const sum = all.reduce((total, { processor }) => total + processor, 0);
    // The system counts in steps of some milliseconds: only the mean says something.
    return { name, rounds: all.length, median: median(walls), p95: p95(walls), processor: sum / all.length };
  });
}

/** Processor time of all programs that were started and have ended (ms); undefined where the system does not tell. */
function processorTimeOfChildren() {
  try {
    const fields = readFileSync("/proc/self/stat", "utf8")
      .replace(/^.*\) /, "")
      .split(" ");
    const TICK = 10;
    return (Number(fields[13]) + Number(fields[14])) * TICK;
  } catch {
    return undefined;
  }
}
