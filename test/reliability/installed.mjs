// Tools that only the long runs need: installed at a fixed version into a folder that git ignores.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { root } from "./figures.mjs";

/**
 * Installs packages together, unless they are there.
 *
 * @param packages versions by name
 * @returns the folder that has them in its `node_modules`
 */
export function installed(tool, packages) {
  const home = path.join(root, "node_modules/.cache", tool);
  if (Object.keys(packages).every((name) => existsSync(path.join(home, "node_modules", name)))) return home;
  mkdirSync(home, { recursive: true });
  writeFileSync(path.join(home, "package.json"), '{"private":true}\n');
  const wanted = Object.entries(packages).map(([name, version]) => `${name}@${version}`);
  const words = ["install", "--no-audit", "--no-fund", ...wanted];
  const { status } = spawnSync("npm", words, { cwd: home, stdio: "inherit" });
  if (status !== 0) throw new Error(`${tool} could not be installed`);
  return home;
}
