/** How a shell that git starts finds this program. */
import { access, constants } from "node:fs/promises";
import path from "node:path";
import type { Program } from "../history/start/git-setup.ts";
import { quoted } from "../history/start/git-setup.ts";
import { withSlashes } from "../workspace/slashes.ts";

/** By its name where it is on the path, which outlives a new version; else by where it is now. */
export async function thisProgram(): Promise<Program> {
  if (await isOnPath("cotter")) return { probe: "command -v cotter >/dev/null 2>&1", call: "cotter" };
  const [node, script] = [process.execPath, path.resolve(process.argv[1] ?? "")].map((file) =>
    quoted(withSlashes(file)),
  );
  return { probe: `test -f ${script}`, call: `${node} ${script}` };
}

async function isOnPath(name: string): Promise<boolean> {
  const endings = process.platform === "win32" ? [".cmd", ".exe", ""] : [""];
  for (const folder of (process.env.PATH ?? "").split(path.delimiter))
    for (const ending of endings) if (await isProgram(path.join(folder, name + ending))) return true;
  return false;
}

async function isProgram(file: string): Promise<boolean> {
  return await access(file, constants.X_OK).then(
    () => path.isAbsolute(file),
    () => false,
  );
}
