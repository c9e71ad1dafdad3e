/** The samples, and logs with next to nothing in them, read as the program reads them. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

/** After the last day of every sample that does not say `today:`. */
const CLOCK = "2026-12-01" as IsoDate;

export function readSample(name: string): Build {
  const folder = join("samples", name);
  const logs = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".cotter"))
    .map((path) => [path.replaceAll("\\", "/"), readFileSync(join(folder, path), "utf8")] as const);
  return readLogs(Object.fromEntries(logs));
}

export function readLogs(logs: Readonly<Record<string, string>>): Build {
  const files = Object.entries(logs).map(([path, text]) => ({ path, document: Document.read(text) }));
  return readBuild(files, { clock: CLOCK });
}

export const builds: Readonly<Record<string, () => Build>> = {
  "the roadster": () => readSample("roadster"),
  "the trials motorcycle": () => readSample("trials"),
  "one evening": () => readSample("evening"),
  "a fresh build": () => readLogs({ "build.cotter": 'vehicle "Marsh Kestrel"\n  past: known\n' }),
  "an empty log": () => readLogs({ "build.cotter": "" }),
};
