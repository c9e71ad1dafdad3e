/** The program as a user runs it: bundled once, called with words, its two outputs and its status read. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { bundleOf } from "../language-server/session/bundle.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs `cotter` with words in a folder; the clock is that of the machine unless `--on` is given. */
export async function cotter(words: readonly string[], folder = root): Promise<Ended> {
  const { status, stdout, stderr } = spawnSync(process.execPath, [await bundleOf("cotter"), ...words], {
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
