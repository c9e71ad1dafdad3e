/**
 * Builds from short logs, with marks under their lines where a finding is expected:
 *
 *     fitted: disc
 *             ^^^^ unknown-reference
 *
 * A `!` marks an empty place. Several marks may stand below one line. `past` before a code marks a complaint that has
 * been overtaken. Only the codes that a specification names are looked at: others belong to other specifications.
 */
import { deepStrictEqual } from "node:assert/strict";
import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import type { Finding, FindingCode } from "../../server/build/finding.ts";
import type { Place } from "../../server/build/source.ts";
import { lineOf, textAt } from "../../server/build/source.ts";
import type { PartState, SupplyState } from "../../server/build/states.ts";
import type { TreeNode } from "../../server/build/tree/node.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { log } from "../grammar/marked-log.ts";

/** Read beside a log without a vehicle of its own. */
const VEHICLE = 'vehicle "Tarrant Plover"\n  past: known\n';
/** Later than every day of the specifications. */
const TODAY = "2026-12-31" as IsoDate;

const MARKS = /^\s*(?:(?:\^+|!) (?:past )?[a-z][a-z0-9-]+\s*)+$/;
const MARK = /(\^+|!) ((?:past )?[a-z][a-z0-9-]+)/g;

/** A build of one file, or of several by their paths. */
export function buildOf(text: string | Readonly<Record<string, string>>, today = TODAY): Build {
  const files = typeof text === "string" ? { "log.cotter": text } : text;
  const sources = Object.entries(files).map(([path, content]) => ({
    path,
    document: Document.read(log(content)),
  }));
  const hasVehicle = sources.some(({ document }) => /^vehicle /m.test(document.text));
  const vehicle = { path: "vehicle.cotter", document: Document.read(VEHICLE) };
  return readBuild(hasVehicle ? sources : [...sources, vehicle], { clock: today });
}

/** Reads a marked log and checks that its findings of these codes are those that are marked, one to one. */
export function expectFindings(codes: readonly FindingCode[], marked: string, today = TODAY): Build {
  const kept: string[] = [];
  const expected: string[] = [];
  for (const line of log(marked).split("\n")) {
    if (!MARKS.test(line)) {
      kept.push(line);
      continue;
    }
    for (const match of line.matchAll(MARK)) {
      const width = match[1] === "!" ? 0 : (match[1] ?? "").length;
      expected.push(`${kept.length}:${match.index}+${width} ${match[2]}`);
    }
  }
  const build = buildOf(kept.join("\n"), today);
  deepStrictEqual(findingsOf(build, codes).map(placed), expected);
  return build;
}

/** The findings of these codes, in the order of the text. */
export function findingsOf<C extends FindingCode>(build: Build, codes: readonly C[]): Finding<C>[] {
  const wanted: ReadonlySet<string> = new Set(codes);
  const found = build.findings.filter(({ code }) => wanted.has(code)) as Finding<C>[];
  return found.sort((a, b) => absolute(a.place) - absolute(b.place));
}

/** The only finding of a code. */
export function findingOf<C extends FindingCode>(build: Build, code: C): Finding<C> {
  const [only, another] = findingsOf(build, [code]);
  if (only === undefined || another !== undefined)
    throw new Error(`${only === undefined ? "no" : "more than one"} ${code}`);
  return only;
}

/** `line: text` of a place. */
export function lineAndText(place: Place): string {
  return `${lineOf(place)}: ${textAt(place)}`;
}

export function nodeAt({ standing }: Build, path: string): TreeNode {
  const node = standing.gathered.tree.at(path);
  if (node === undefined) throw new Error(`nothing at ${path}`);
  return node;
}

export function partAt(build: Build, path: string): PartState {
  const part = build.standing.parts.get(nodeAt(build, path));
  if (part === undefined) throw new Error(`no part at ${path}`);
  return part;
}

export function goodsAt(build: Build, path: string): SupplyState {
  const goods = build.standing.supply.get(nodeAt(build, path));
  if (goods === undefined) throw new Error(`no goods at ${path}`);
  return goods;
}

function placed({ code, place, standing }: Pick<Finding, "code" | "place" | "standing">): string {
  const { line, character } = place.site.file.document.positionIn(place.site.index, place.start);
  const past = standing === "past" ? "past " : "";
  return `${line + 1}:${character}+${place.end - place.start} ${past}${code}`;
}

function absolute({ site, start }: Place): number {
  return (site.file.document.offsets[site.index] ?? 0) + start;
}
