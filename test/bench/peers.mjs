// Installs the servers to compare with into a folder that is kept and never committed.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";

/** Versions that run on the oldest Node that Cotter runs on. */
export const PEER_VERSIONS = {
  "yaml-language-server": "1.19.2",
  "vscode-langservers-extracted": "4.10.0",
  "bash-language-server": "5.6.0",
};

/** @returns the folder of their modules, or why there is none */
export function installPeers(folder) {
  const modules = path.join(folder, "node_modules");
  if (Object.keys(PEER_VERSIONS).every((name) => existsSync(path.join(modules, name)))) return { modules };
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, "package.json"), JSON.stringify({ private: true }));
  const packages = Object.entries(PEER_VERSIONS).map(([name, version]) => `${name}@${version}`);
  const words = ["install", "--ignore-scripts", "--no-audit", "--no-fund", ...packages];
  const { status, stderr } = spawnSync("npm", words, { cwd: folder, encoding: "utf8", timeout: 120_000 });
  return status === 0 ? { modules } : { why: `not installed (${stderr?.trim().split("\n")[0] ?? "no npm"})` };
}
