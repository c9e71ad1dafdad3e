/** The program called with words, its two outputs and its status read: in this process, or bundled, as a user runs it. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "../../server/command-line/run.ts";
import { bundleOf } from "../language-server/session/bundle.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Calls `cotter` with words in a folder; the clock is that of the machine unless `--on` is given. */
export async function cotter(words: readonly string[], folder = root): Promise<Ended> {
  const [out, err]: [string[], string[]] = [[], []];
  const status = await run(words, {
    folder,
    write: (text) => void out.push(text),
    complain: (text) => void err.push(text),
    colour: false,
    width: 100,
  });
  return { status, out: out.join(""), err: err.join("") };
}

/** The same in a process of its own, which costs some hundred times as much. */
export async function bundledCotter(words: readonly string[], folder = root): Promise<Ended> {
  return programIn(await bundleOf("cotter"), words, folder);
}

/** @param program the program's file */
export function programIn(program: string, words: readonly string[], folder: string): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, NO_COLOR: "1" },
  });
  return { status, out: stdout, err: stderr };
}

/** A folder with these files, for one test. */
export function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-build-"));
  for (const [name, text] of Object.entries(files)) {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  return folder;
}
