// What becomes of files where the disk is really full: a small disk of memory, mounted where no other program sees it and
// gone with the process, on which commands run out of room – with none left, and half-way through what they write.
import { spawnSync } from "node:child_process";
import {
  closeSync,
  ftruncateSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { program, usePrograms } from "./programs.mjs";
import { RawClient } from "./raw-client.mjs";

const PAGE = 4096;
const LOG = `vehicle "Kestrel"\n\npart hub "Hub"\n     material:    steel\n${"# a note\n".repeat(6000)}`;
const BOTH = `${LOG}\npart arm "Arm"\n  material: iron\n`;
const MERGE = {
  "base.cotter": BOTH,
  "ours.cotter": BOTH.replace("steel", "brass"),
  "theirs.cotter": BOTH.replace("iron", "brass"),
};
const IN_ONE_BLOCK = {
  ...MERGE,
  "theirs.cotter": LOG.replace("material", "limit: bore max 8 mm\n  material"),
};
const BOOK = "an earlier book\n";

/**
 * What is called, on which files – after what came before – and what is written where it succeeds. `rooms` are pages of the disk that are left;
 * `passing` puts what git compares on the disk too; `into` is where the output is led to.
 */
const CASES = [
  { words: "format", files: { "build.cotter": LOG }, writes: "build.cotter" },
  { words: "book --out book.html", files: { "build.cotter": LOG }, writes: "book.html" },
  {
    words: "book --out book.html --overwrite",
    files: { "build.cotter": LOG, "book.html": BOOK },
    writes: "book.html",
  },
  { words: "book", files: { "build.cotter": LOG }, into: "book.html", writes: "book.html" },
  { words: "start kestrel", files: {}, rooms: [0], writes: "kestrel/build.cotter" },
  { words: "start kestrel --git --hook", files: {}, rooms: [0, 10], writes: "kestrel/.git/hooks/pre-commit" },
  { words: "start --git", files: { "build.cotter": LOG }, rooms: [0, 10], writes: ".gitattributes" },
  {
    words: "start --git --hook",
    files: { "build.cotter": LOG },
    before: ["git", "init", "--quiet"],
    // Git puts its settings down whole, one after another; without the attributes they do nothing.
    mayChange: [".git/config"],
    rooms: [0, 1],
    writes: ".git/hooks/pre-commit",
  },
  { words: "merge-file base.cotter ours.cotter theirs.cotter", files: MERGE, writes: "ours.cotter" },
  {
    words: "merge-file base.cotter ours.cotter theirs.cotter",
    files: IN_ONE_BLOCK,
    writes: "ours.cotter",
    passing: true,
    ends: 1,
  },
];

/** Tries it all on such a disk; says why where the system does not let one mount it. */
export function fillDisk() {
  const mount = tmpMount();
  const words = ["-rm", "bash", "-c", mount.script, "bash", process.execPath, fileURLToPath(import.meta.url)];
  const { status, stdout, stderr, error } = spawnSync(
    "unshare",
    [...words, mount.folder, path.dirname(program("cotter"))],
    { encoding: "utf8" },
  );
  rmSync(mount.folder, { recursive: true });
  if (error !== undefined || status === NO_MOUNT)
    return { possible: false, why: (error?.message ?? stderr).trim().split("\n")[0], faults: [] };
  if (status !== 0) throw new Error(stderr);
  return { possible: true, ...JSON.parse(stdout) };
}

const NO_MOUNT = 97;

function tmpMount() {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-full-disk-"));
  const script = `mount -t tmpfs -o size=2m cotter "$3" || exit ${NO_MOUNT}; exec "$1" "$2" "$3" "$4"`;
  return { folder, script };
}

/** All cases, within the disk. */
async function tryAll(disk) {
  const tried = CASES.flatMap((one) => (one.rooms ?? [0, 2]).map((room) => tryOne(disk, one, room)));
  tried.push(await tryRename(disk));
  return { tried, faults: tried.flatMap(({ what, faults }) => faults.map((fault) => `${what}: ${fault}`)) };
}

/** @param room how many pages of the disk are left */
function tryOne(disk, one, room) {
  const { words, files, before: first, into, writes, mayChange = [], passing = false, ends = 0 } = one;
  const folder = path.join(disk, "work");
  mkdirSync(folder);
  for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
  if (first !== undefined) spawnSync(first[0], first.slice(1), { cwd: folder });
  const before = contents(folder);
  const free = fill(disk, room);
  const call = () => called(folder, words, into, passing ? disk : tmpdir());
  const { status, stderr } = call();
  const after = contents(folder);
  free();
  const faults = [];
  // The shell makes the file that it leads the output to.
  if (into !== undefined) after.delete(into);
  const changed = [...new Set([...before.keys(), ...after.keys()])].filter(
    (name) => before.get(name) !== after.get(name) && !mayChange.includes(name),
  );
  for (const name of changed) faults.push(`${name} is not as it was`);
  if (status !== 2) faults.push(`it ended with ${status}`);
  if (!/no space left|failed to write new configuration/i.test(stderr))
    faults.push(`it did not say that the disk is full: ${stderr}`);
  if (/^ +at /m.test(stderr)) faults.push(`it says where in the program: ${stderr}`);
  // With room again the same call succeeds: it was the disk, and nothing is left in its way.
  const again = call();
  if (again.status !== ends || contents(folder).get(writes) === before.get(writes))
    faults.push(`with room again it ended with ${again.status}: ${again.stderr}`);
  rmSync(folder, { recursive: true });
  return {
    what: `cotter ${words}${into === undefined ? "" : ` > ${into}`}`,
    room: room * PAGE,
    says: withoutFolders(stderr.trim()),
    faults,
  };
}

/** What a program said, with the last names of paths alone: where they lie is the machine's business. */
function withoutFolders(text) {
  return text.replaceAll(/(?<![^\s'"])\/(?:[^\s'"/:]+\/)*/g, "");
}

function called(folder, words, into, passing) {
  const output = into === undefined ? "ignore" : openSync(path.join(folder, into), "w");
  const { status, stderr } = spawnSync(process.execPath, [program("cotter"), ...words.split(" ")], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, TMPDIR: passing },
    stdio: ["ignore", output, "pipe"],
  });
  if (into !== undefined) closeSync(output);
  return { status, stderr };
}

/** The server answers a new name with an edit, which the editor carries out: it writes nothing, so needs no room. */
async function tryRename(disk) {
  const folder = path.join(disk, "work");
  mkdirSync(folder);
  const file = path.join(folder, "build.cotter");
  writeFileSync(file, LOG);
  const free = fill(disk, 0);
  const client = new RawClient({ env: { ...process.env, TMPDIR: disk } });
  await client.start(pathToFileURL(folder).href);
  const uri = pathToFileURL(file).href;
  client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text: LOG } });
  const edit = await client.ask("textDocument/rename", {
    textDocument: { uri },
    position: { line: 2, character: 6 },
    newName: "wheel",
  });
  await client.stop();
  const after = contents(folder);
  free();
  rmSync(folder, { recursive: true });
  const faults = [...client.faults];
  if (!JSON.stringify(edit).includes('"newText":"wheel"')) faults.push(`no edit: ${JSON.stringify(edit)}`);
  if (after.size !== 1 || after.get("build.cotter") !== LOG) faults.push("build.cotter is not as it was");
  return { what: "rename by the server", room: 0, says: "an edit for the editor to carry out", faults };
}

/** Fills the disk but for some pages. Answers with what makes room again. */
function fill(disk, room) {
  const name = path.join(disk, "ballast");
  const ballast = openSync(name, "w");
  const page = Buffer.alloc(PAGE, 1);
  let written = 0;
  try {
    for (;;) written += writeSync(ballast, page);
  } catch (error) {
    if (error.code !== "ENOSPC") throw error;
  }
  ftruncateSync(ballast, written - room * PAGE);
  closeSync(ballast);
  return () => rmSync(name);
}

/** The text of each file below a folder, and of each folder that it is one. */
function contents(folder) {
  return new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true }).map((one) => {
      const file = path.join(one.parentPath, one.name);
      return [path.relative(folder, file), one.isDirectory() ? "(a folder)" : readFileSync(file, "utf8")];
    }),
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const [disk, programs] = process.argv.slice(2);
  usePrograms(programs);
  console.log(JSON.stringify(await tryAll(disk)));
}
