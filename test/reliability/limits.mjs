// Logs beyond all measure, through the command line and the server: what is said, and how long it takes. The times are
// for the page alone.
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { program } from "./programs.mjs";
import { RawClient } from "./raw-client.mjs";

const VEHICLE = 'vehicle "Kestrel"\n\n';
const many = (count, line) => Array.from({ length: count }, (_, index) => line(index)).join("");
const PROSE = "  The lower bolts came out with heat, the upper ones without, and nothing was cracked.\n";
/** A command that has not ended, or a server that has not answered after this long counts as hung (ms). */
const HUNG = 300_000;

/** What each is, and the files that make it. */
const LIMITS = {
  "a file of 50 MB, prose": () => ({
    "build.cotter": `${VEHICLE}day 2026-05-02 1 h\n${PROSE.repeat(Math.ceil(50e6 / PROSE.length))}`,
  }),
  "a line of one megabyte": () => ({
    "build.cotter": `${VEHICLE}day 2026-05-02 1 h\n  ${"bolt ".repeat(200_000)}\n`,
  }),
  "a value of one megabyte": () => ({
    "build.cotter": `${VEHICLE}part hub "Hub"\n  limit: bore max ${"9".repeat(1_000_000)} mm\n`,
  }),
  "100,000 blocks": () => ({ "build.cotter": VEHICLE + many(100_000, (n) => `part part${n} "Part ${n}"\n`) }),
  "10,000 files": () => ({
    "build.cotter": VEHICLE,
    ...Object.fromEntries(
      Array.from({ length: 10_000 }, (_, n) => [`parts/${n}.cotter`, `part part${n} "Part ${n}"\n`]),
    ),
  }),
  "an expression of 20,000 brackets": () => ({
    "build.cotter": `${VEHICLE}day 2026-05-02 1 h\n  calc: deep = ${"(".repeat(20_000)}1${")".repeat(20_000)}\n`,
  }),
  "a chain of 500 like": () => ({
    "build.cotter": `${VEHICLE}assembly a0 "First"\npart a0.hub "Hub"\n${many(500, (n) => `assembly a${n + 1} like a${n}\n`)}`,
  }),
  "a circle of like": () => ({
    "build.cotter": `${VEHICLE}${many(300, (n) => `assembly a${n} like a${(n + 1) % 300}\n`)}`,
  }),
  "like that doubles 40 times": () => ({
    "build.cotter": `${VEHICLE}assembly a0 "First"\npart a0.hub "Hub"\n${many(40, (n) => `assembly a${n + 1} "Twice"\nassembly a${n + 1}.left like a${n}\nassembly a${n + 1}.right like a${n}\n`)}`,
  }),
  "5,000 complaints": () => ({
    "build.cotter": `${VEHICLE}day 2026-05-02 1 h\n${many(5000, (n) => `  removed: nothing${n}\n`)}`,
  }),
};

export async function runLimits(names = Object.keys(LIMITS)) {
  const results = [];
  for (const name of names) results.push(await meet(name, LIMITS[name]()));
  return results;
}

async function meet(name, files) {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-limit-"));
  try {
    mkdirSync(path.join(folder, "parts"));
    for (const [file, text] of Object.entries(files)) writeFileSync(path.join(folder, file), text);
    return { name, program: checked(folder), server: await served(folder, files["build.cotter"]) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function checked(folder) {
  const began = Date.now();
  const words = [program("cotter"), "check", folder, "--no-colour"];
  const ended = spawnSync(process.execPath, words, { encoding: "utf8", timeout: HUNG, maxBuffer: 2 ** 28 });
  const lines = ended.stdout.trim().split("\n");
  return {
    seconds: (Date.now() - began) / 1000,
    status: ended.status ?? ended.signal,
    says: (ended.stderr.trim() || lines.at(-1) || "").slice(0, 160),
  };
}

/** Opened in an editor: the complaints are asked for, something is typed, and a hover is asked for. */
async function served(folder, text) {
  const began = Date.now();
  const client = new RawClient({ hung: HUNG });
  const uri = pathToFileURL(path.join(folder, "build.cotter")).href;
  try {
    await client.start(pathToFileURL(folder).href);
    client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text } });
    const { items } = await client.ask("textDocument/diagnostic", { textDocument: { uri } });
    const seconds = (Date.now() - began) / 1000;
    const typed = Date.now();
    const range = { start: { line: 0, character: 16 }, end: { line: 0, character: 16 } };
    client.tell("textDocument/didChange", {
      textDocument: { uri, version: 2 },
      contentChanges: [{ range, text: "s" }],
    });
    const position = { line: 0, character: 10 };
    const hover = await client.ask("textDocument/hover", { textDocument: { uri }, position });
    const answers = (Date.now() - typed) / 1000;
    const status = await client.stop();
    return {
      seconds,
      answers,
      diagnostics: items.length,
      hover: hover !== null,
      status,
      faults: client.faults,
    };
  } catch (error) {
    client.process.kill("SIGKILL");
    return { seconds: (Date.now() - began) / 1000, faults: [...client.faults, error.message.slice(0, 200)] };
  }
}
