// What the runs have found: kept in figures.json as each part ends, so that the page is written from what was run.
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));

const file = path.join(root, "test/reliability/figures.json");

/** The figures by the name of the part, each with the day it was run on. */
export function kept() {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch (error) {
    if (error.code === "ENOENT") return {};
    throw error;
  }
}

export function keep(part, figures) {
  writeFileSync(
    file,
    `${JSON.stringify({ ...kept(), [part]: { on: today(), ...figures } }, undefined, 2)}\n`,
  );
}

export function today() {
  return new Date().toISOString().slice(0, 10);
}
