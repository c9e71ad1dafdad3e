/** Nothing is lost: a file is written whole or stays as it was. Checked from outside, by the limits of the system. */
import { spawn, spawnSync } from "node:child_process";
import {
  chmodSync,
  chownSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { cotter, folderWith } from "../command-line/program.ts";
import { bundleOf } from "../language-server/session/bundle.ts";

const UNTIDY = `vehicle "Kestrel"\n\npart hub "Hub"\n     material:    steel\n${"# a note\n".repeat(4000)}`;

/** Someone without rights, where the tests run as one who may do everything. */
const NOBODY = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};

async function asNobody(
  words: readonly string[],
  folder: string,
): Promise<{ status: number | null; err: string }> {
  const program = await bundleOf("cotter");
  if (NOBODY.uid !== undefined) chmodSync(path.dirname(program), 0o755);
  const { status, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    encoding: "utf8",
    ...NOBODY,
  });
  return { status, err: stderr };
}

/** Called by a shell where no file may grow beyond four kilobytes. */
async function withoutRoom(words: string, folder: string): Promise<{ status: number | null; err: string }> {
  const call = `ulimit -f 4; exec "${process.execPath}" "${await bundleOf("cotter")}" ${words}`;
  const { status, stderr } = spawnSync("bash", ["-c", call], { cwd: folder, encoding: "utf8" });
  return { status, err: stderr };
}

function owned(folder: string): void {
  if (NOBODY.uid === undefined) return;
  for (const file of [folder, ...readdirSync(folder).map((name) => path.join(folder, name))])
    chownSync(file, NOBODY.uid, NOBODY.gid);
}

/** How many logs are no longer as they were. */
function putInOrder(folder: string, names: readonly string[], before: (name: string) => string): number {
  return names.filter((name) => readFileSync(path.join(folder, name), "utf8") !== before(name)).length;
}

describe("cotter format", () => {
  test("leaves the log as it was where the disk takes no more", async () => {
    const folder = folderWith({ "build.cotter": UNTIDY });
    const { status, err } = await withoutRoom("format .", folder);
    expect([status, err]).toEqual([
      2,
      expect.stringMatching(/build\.cotter cannot be written: \S+: file too/),
    ]);
    expect(readFileSync(path.join(folder, "build.cotter"), "utf8")).toBe(UNTIDY);
    expect(readdirSync(folder)).toEqual(["build.cotter"]);
  });

  test("leaves a log that may not be written, and one in a folder that may not", async () => {
    for (const [fileMode, folderMode] of [
      [0o444, 0o755],
      [0o644, 0o555],
    ] as const) {
      const folder = folderWith({ "build.cotter": UNTIDY });
      owned(folder);
      chmodSync(path.join(folder, "build.cotter"), fileMode);
      chmodSync(folder, folderMode);
      const { status, err } = await asNobody(["format"], folder);
      expect(err).toContain("cannot be written");
      expect(status).toBe(2);
      chmodSync(folder, 0o755);
      expect(readFileSync(path.join(folder, "build.cotter"), "utf8")).toBe(UNTIDY);
      expect(readdirSync(folder)).toEqual(["build.cotter"]);
    }
  });

  test("leaves each log as it was or put in order, whole, wherever it is killed", async () => {
    const names = Array.from({ length: 20 }, (_, index) => `part${index}.cotter`);
    const untidy = (name: string) => UNTIDY.replaceAll("hub", name.replace(".cotter", ""));
    const logs = Object.fromEntries(names.map((name) => [name, untidy(name)]));
    const tidied = folderWith(logs);
    expect((await cotter(["format", tidied])).status).toBe(0);
    const program = await bundleOf("cotter");
    let halfway = 0;
    // A busy machine may let the program end before it is killed: then once more.
    for (let tries = 0; halfway < 2 && tries < 20; tries++) {
      const written = halfway === 0 ? 1 : 10;
      const folder = folderWith(logs);
      const child = spawn(process.execPath, [program, "format", folder], { stdio: "ignore" });
      const ended = new Promise((resolve) => child.once("close", resolve));
      while (child.exitCode === null && putInOrder(folder, names, untidy) < written)
        await new Promise((resolve) => setImmediate(resolve));
      child.kill("SIGKILL");
      await ended;
      for (const name of names)
        expect([untidy(name), readFileSync(path.join(tidied, name), "utf8")]).toContain(
          readFileSync(path.join(folder, name), "utf8"),
        );
      const after = putInOrder(folder, names, untidy);
      if (after > 0 && after < names.length) halfway++;
      expect(readdirSync(folder).filter((name) => !name.startsWith("."))).toHaveLength(names.length);
    }
    expect(halfway).toBe(2);
  });

  test("keeps the rights of a log that others may not read", async () => {
    const folder = folderWith({ "build.cotter": UNTIDY });
    const file = path.join(folder, "build.cotter");
    chmodSync(file, 0o600);
    expect((await cotter(["format", folder])).status).toBe(0);
    expect(readFileSync(file, "utf8")).toContain("\n  material: steel\n");
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });
});

test("cotter merge-file leaves our log as it was where the disk takes no more", async () => {
  const base = `${UNTIDY}\npart arm "Arm"\n  material: iron\n`;
  const ours = base.replace("steel", "brass");
  const logs = { "base.cotter": base, "ours.cotter": ours, "theirs.cotter": base.replace("iron", "brass") };
  const folder = folderWith(logs);
  const { status, err } = await withoutRoom("merge-file base.cotter ours.cotter theirs.cotter", folder);
  expect([status, err]).toEqual([2, expect.stringMatching(/^cotter: ours\.cotter cannot be written: .*\n$/)]);
  expect(readFileSync(path.join(folder, "ours.cotter"), "utf8")).toBe(ours);
  expect(readdirSync(folder)).toEqual(Object.keys(logs));
});

test("output that is led to a file and does not fit is no success, and is told of in one line", async () => {
  const folder = folderWith({ "build.cotter": UNTIDY });
  const { status, err } = await withoutRoom("book > book.html", folder);
  expect([status, err]).toEqual([2, expect.stringMatching(/^cotter: the output cannot be written: .*\n$/)]);
});

test("a photo outside the build's folder is not taken into the book, by whichever way it is named", async () => {
  const secret = readFileSync(fileURLToPath(new URL("../../media/icon.png", import.meta.url)));
  const outside = folderWith({});
  writeFileSync(path.join(outside, "secret.png"), secret);
  const named = [
    path.join(outside, "secret.png"),
    `../${path.basename(outside)}/secret.png`,
    `file://${outside}/secret.png`,
    "command:run.png",
    "link.png",
  ];
  const folder = folderWith({
    "build.cotter": `vehicle "Kestrel"\n\nday 2026-05-02 1 h\n${named.map((one) => `  photo: "${one}" as found\n`).join("")}`,
  });
  symlinkSync(path.join(outside, "secret.png"), path.join(folder, "link.png"));
  const { out } = await cotter(["book", folder]);
  expect(out).toContain("Kestrel");
  expect(out).not.toContain(secret.toString("base64").slice(0, 60));
  expect(out).not.toMatch(/data:image/);
  expect(out).not.toMatch(/(?:href|src)="?(?:file|command):/);
});
