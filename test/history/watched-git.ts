/** The git of this machine behind a script that notes each start. */
import { execFileSync } from "node:child_process";
import { chmodSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

export interface WatchedGit {
  /** What git was called with since it was asked last. */
  readonly calls: () => readonly string[];
  readonly putBack: () => void;
}

/** @param before what a shell does first, in the place of git where it does not come to an end */
export function watchGit(before = ""): WatchedGit {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-git-"));
  const note = path.join(folder, "calls");
  const git = execFileSync("/bin/sh", ["-c", "command -v git"], { encoding: "utf8" }).trim();
  const program = path.join(folder, "git");
  writeFileSync(note, "");
  writeFileSync(program, `#!/bin/sh\necho "$*" >> '${note}'\n${before}\nexec '${git}' "$@"\n`);
  chmodSync(program, 0o755);
  const usual = process.env.PATH;
  process.env.PATH = `${folder}${path.delimiter}${usual}`;
  return {
    calls: () => {
      const calls = readFileSync(note, "utf8").split("\n").slice(0, -1);
      writeFileSync(note, "");
      return calls;
    },
    putBack: () => {
      process.env.PATH = usual;
    },
  };
}
