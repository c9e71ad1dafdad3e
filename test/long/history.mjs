// Measures `cotter history` and `cotter changes` over a record of 2,000 commits of a log that grows to 5,000 lines, cold, as
// a user runs them.
// Prints the times and asserts none:   npm run build && node test/long/history.mjs
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";

const COMMITS = 2000;
const LINES = 5000;
const PARTS = 150;

const program = fileURLToPath(new URL("../../dist/cotter.cjs", import.meta.url));
const folder = mkdtempSync(path.join(tmpdir(), "cotter-long-"));

function run(command, words, input = "") {
  const { status, stdout, stderr } = spawnSync(command, words, { input, encoding: "utf8", maxBuffer: 1e9 });
  if (status !== 0) throw new Error(`${command} ${words.join(" ")}: ${stderr}`);
  return stdout;
}

/** The log after each commit: definitions first, then readings evening by evening; now and then one is altered. */
function* texts() {
  const parts = Array.from(
    { length: PARTS },
    (_, index) => `corner${Math.floor(index / 10)}.part${index % 10}`,
  );
  const defined = parts.map(
    (part) => `part ${part} "Part"\n  material: steel\n  limit: thickness min 8.4 mm\n\n`,
  );
  let text = `vehicle "Long"\n\n${defined.join("")}`;
  let lines = text.split("\n").length - 1;
  for (let commit = 0; commit < COMMITS; commit++) {
    const wanted = Math.round(((LINES - 613) * (commit + 1)) / COMMITS) + 613;
    if (commit % 4 === 0) {
      const day = new Date(Date.UTC(2020, 0, 1 + commit)).toISOString().slice(0, 10);
      text += `\nday ${day} 2 h\n`;
      lines += 2;
    }
    for (; lines < wanted; lines++)
      text += `  measured: ${parts[(commit * 7 + lines) % PARTS]} thickness 9.${10 + (lines % 90)} mm "a note as long as notes are"\n`;
    if (commit % 100 === 99) text = text.replace("thickness 9.1", "thickness 9.9");
    yield text;
  }
}

try {
  run("git", ["init", "--quiet", "--initial-branch=main", folder]);
  const script = [...texts()].map((text, index) =>
    [
      `commit refs/heads/main\ncommitter JR <jr@bench.example> ${1577880000 + index * 86400} +0000\n`,
      `data 7\nevening\nM 100644 inline log.cotter\ndata ${Buffer.byteLength(text)}\n${text}\n`,
    ].join(""),
  );
  run("git", ["-C", folder, "fast-import", "--quiet"], script.join(""));
  run("git", ["-C", folder, "reset", "--quiet", "--hard", "main"]);
  const lines = run("git", ["-C", folder, "show", "main:log.cotter"]).split("\n").length - 1;
  const seconds = (...words) => {
    const start = performance.now();
    const report = JSON.parse(run(process.execPath, [program, ...words, "--json", "--build", folder]));
    return { report, taken: `${((performance.now() - start) / 1000).toFixed(1)} s` };
  };
  const history = seconds("history", "corner3.part4");
  const { commits, entries } = history.report;
  console.log(`history: ${commits} commits, ${lines} lines, ${entries.length} entries: ${history.taken}`);
  const changes = seconds("changes", `HEAD~${COMMITS / 2}`, "HEAD");
  console.log(`changes of the later half: ${changes.report.changes.length} changes: ${changes.taken}`);
} finally {
  rmSync(folder, { recursive: true });
}
