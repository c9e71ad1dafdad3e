// Whether the programs ever ask the system for a network: a session of the server and a round of commands under strace,
// which tells of each system call about sockets.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./figures.mjs";
import { program } from "./programs.mjs";
import { RawClient } from "./raw-client.mjs";

const COMMANDS = [
  "check",
  "order",
  "timeline",
  "joints",
  "outstanding",
  "costs",
  "parts",
  "lives",
  "settings",
  "book",
  // Git is started by these.
  "changes HEAD~1 HEAD",
  "history engine.head",
];

/** Pipes to a program that is started, and questions of what a standard stream is. */
const HARMLESS = /^(?:socketpair\(AF_UNIX|shutdown\(|getsockname\(|getsockopt\()/;

export async function traceNetwork() {
  if (spawnSync("strace", ["-V"]).error !== undefined)
    return { traced: false, why: "strace is not installed: nothing was traced" };
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-trace-"));
  try {
    const build = path.join(folder, "build");
    cpSync(path.join(root, "samples/roadster"), build, { recursive: true });
    inRecord(build);
    const wrap = ["strace", "-f", "-qq", "-e", "trace=network", "-o"];
    // A trace that sees nothing proves nothing: here is something to see.
    const connects = 'require("node:net").connect(9, "127.0.0.1").on("error", () => undefined)';
    const control = callsOf(folder, () => run([...wrap, out(folder), process.execPath, "-e", connects]));
    const bare = callsOf(folder, () => run([...wrap, out(folder), process.execPath, "-e", ""]));
    const commands = {};
    for (const command of COMMANDS)
      commands[command] = callsOf(folder, () =>
        run([
          ...wrap,
          out(folder),
          process.execPath,
          program("cotter"),
          ...command.split(" "),
          "--build",
          build,
        ]),
      );
    const server = await session(folder, build, [...wrap, out(folder)]);
    const faults = Object.entries({ ...commands, server }).flatMap(([name, calls]) =>
      Object.keys(calls)
        .filter((call) => !HARMLESS.test(call))
        .map((call) => `${name}: ${call}`),
    );
    if (control["connect("] === undefined) faults.push("the trace does not see a connection that is there");
    return { traced: true, control, bare, program: commands, server, faults };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Takes the build into a record of two revisions. */
function inRecord(build) {
  const as = ["-c", "user.name=KT", "-c", "user.email=kt@cotter.example", "-c", "commit.gpgsign=false"];
  const git = (...words) => spawnSync("git", [...as, ...words], { cwd: build });
  git("init", "--quiet");
  git("add", ".");
  git("commit", "--quiet", "-m", "First");
  git("commit", "--quiet", "--allow-empty", "-m", "Second");
}

function out(folder) {
  return path.join(folder, "trace.txt");
}

function run([first, ...words]) {
  const { status, error } = spawnSync(first, words, { stdio: "ignore" });
  if (error !== undefined || status > 1) throw new Error(`${words.join(" ")} ended with ${status}`);
}

/** The system calls about sockets, each kind once with how often it came. */
function callsOf(folder, work) {
  work();
  return counted(folder);
}

function counted(folder) {
  const calls = readFileSync(out(folder), "utf8")
    .split("\n")
    .flatMap((line) => /^\d+\s+(\w+\([^,)]*)/.exec(line)?.[1] ?? [])
    .map((call) => call.replace(/\((?:\d+|0x\w+)/, "("));
  const counts = {};
  for (const call of calls) counts[call] = (counts[call] ?? 0) + 1;
  return counts;
}

async function session(folder, build, wrap) {
  const client = new RawClient({ wrap });
  await client.start(pathToFileURL(build).href, { trusted: true });
  const file = path.join(
    build,
    readdirSync(build).find((name) => name.endsWith(".cotter")),
  );
  const uri = pathToFileURL(file).href;
  const text = readFileSync(file, "utf8");
  client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text } });
  await client.ask("workspace/diagnostic", { previousResultIds: [] });
  for (let line = 0; line < 20; line++) {
    const position = { line, character: 6 };
    for (const method of ["hover", "completion", "definition"])
      await client.ask(`textDocument/${method}`, { textDocument: { uri }, position });
  }
  for (const report of ["order", "timeline", "joints"]) await client.ask("cotter/report", { uri, report });
  await client.ask("cotter/book", { uri });
  await client.ask("cotter/commits", { uri });
  await client.ask("cotter/compare", { uri, from: "HEAD~1", to: null });
  await client.stop();
  return counted(folder);
}
