import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { lineOf, textAt } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { generateLog } from "../bench/generate-log.ts";
import { buildOf, nodeAt } from "./marked-build.ts";

const TODAY = "2040-01-01" as IsoDate;

function filesOf(seed: number, broken: number): SourceFile[] {
  return generateLog({ lines: 700, broken, seed }).map(({ path, text }) => ({
    path,
    document: Document.read(text),
  }));
}

/** The build in short: what was found where, where parts are, what is in hand. */
function summary({ findings, standing, links }: Build): string[] {
  return [
    ...findings.map(
      ({ code, place, standing: stands }) =>
        `${code} ${stands} ${place.site.file.path}:${lineOf(place)}:${place.start} ${textAt(place)}`,
    ),
    ...[...standing.parts.values()].map(({ node, place, item }) => `${node.path} ${place} ${item.number}`),
    ...[...standing.joints.values()].map(({ node, stage }) => `${node.path} ${stage}`),
    ...[...standing.supply.values()].map(({ node, inHand }) => `${node.path} ${inHand}`),
    `${links.length} links`,
  ].sort();
}

function replaced(files: readonly SourceFile[], path: string, edit: (document: Document) => Document) {
  return files.map((file) => (file.path === path ? { path, document: edit(file.document) } : file));
}

describe("the tree", () => {
  it("has every block in its place, the vehicle above all", () => {
    const build = buildOf('part front.left.hub "Hub"\njoint front.nut "Nut"\npart rack "Rack"\n');
    const { root } = build.standing.gathered.tree;
    expect(root.children.map(({ path }) => path)).toEqual(["front", "rack"]);
    expect(nodeAt(build, "front").children.map(({ name }) => name)).toEqual(["left", "nut"]);
    expect(nodeAt(build, "front.left.hub").parent?.parent?.parent).toBe(root);
  });
});

describe("any log, however broken", () => {
  it.each([1, 2, 3, 4, 5, 6])("is read to its end (%i)", (seed) => {
    const build = readBuild(filesOf(seed, 0.7), { clock: TODAY });
    expect(build.facts.length).toBeGreaterThan(0);
    expect(build.findings.length).toBeGreaterThan(100);
  });

  it.each([
    "",
    "part",
    'part "Title"',
    "assembly a like a\nassembly b like c.d\nassembly c like b\npart c.d like a\n",
    'vehicle "A"\nvehicle\nday\nday 2026-05-02 x\n  removed: *, {}, a.{b}\n  fitted: vehicle.*\n',
    'day 2026-05-02\n  ran: vehicle 1 h\n  changed: vehicle near 5 %\n  released: x\n  conceded: a until b by "c" "d"\n',
    'part a "A"\n  kit: a\n  default: count 2\npart a.b "B"\nday 2026-05-02\n  stripped: a\n  removed: a.b.c\n  decided: 3 x a.* renew\n',
  ])("is read even where it is hardly one: %j", (text) => {
    expect(() =>
      readBuild([{ path: "a.cotter", document: Document.read(text) }], { clock: TODAY }),
    ).not.toThrow();
  });
});

describe("a build read again after an edit", () => {
  const READING = "diary/2020.cotter";
  const AXLE = "parts/axle000.cotter";
  const EDITS: readonly ((files: readonly SourceFile[]) => readonly SourceFile[])[] = [
    (files) => files,
    (files) => replaced(files, READING, (document) => overwrite(document, "removed:", "remvoed:")),
    (files) => replaced(files, AXLE, (document) => overwrite(document, "min 8.4 mm", "min 9.4 mm")),
    (files) =>
      replaced(files, READING, (document) => document.edit(0, 0, "day 2019-12-31\n  found: axle0 dirty\n")),
    (files) =>
      replaced(files, "vehicle.cotter", (document) => document.edit(0, 0, 'part axle0.extra "Extra"\n')),
    (files) => files.filter(({ path }) => path !== AXLE),
  ];

  it("equals one that is read afresh, wherever one writes", () => {
    let files: readonly SourceFile[] = filesOf(7, 0.05);
    for (const edit of EDITS) {
      files = edit(files);
      const fresh = files.map(({ path, document }) => ({ path, document: Document.read(document.text) }));
      expect(summary(readBuild(files, { clock: TODAY }))).toEqual(
        summary(readBuild(fresh, { clock: TODAY })),
      );
    }
  });
});

function overwrite(document: Document, before: string, after: string): Document {
  const at = document.text.indexOf(before);
  return document.edit(at, at + before.length, after);
}
