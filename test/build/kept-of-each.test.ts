/** Of the verdicts on many things only those are made again that a change may touch; the others stay as they are. */
import { deepStrictEqual } from "node:assert/strict";
import { expect, test } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import { KeptOfEach } from "../../server/build/kept-of-each.ts";
import type { Review } from "../../server/build/review.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { fileAfter } from "../../server/build/source.ts";
import type { TreeNode } from "../../server/build/tree/node.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

const CLOCK = "2026-11-30" as IsoDate;

const LOG = `vehicle "Pell Otter"
  past: unknown

part disc
part hub
part hose

day 2026-05-02
  removed: disc
  removed: hub

day 2026-05-03
  cleaned: hub by solvent
`;

/** A log that is written on, and verdicts on its parts. */
class Diary {
  private file: SourceFile = { path: "log.cotter", document: Document.read(LOG) };
  private build: Build = readBuild([this.file], { clock: CLOCK, isGoneOnFrom: true });
  private readonly kept = new KeptOfEach<TreeNode, string>();

  /** Puts a text in the place of another, or at the end. */
  write(text: string, instead?: string): this {
    const { document } = this.file;
    const start = instead === undefined ? document.length : document.text.indexOf(instead);
    this.file = fileAfter(this.file, document.edit(start, start + (instead?.length ?? 0), text));
    this.build = readBuild([this.file], { clock: CLOCK, before: this.build });
    return this;
  }

  /** The parts on which a verdict was made again, once it has been seen that all are as they would be made now. */
  judge(say: (review: Review, node: TreeNode) => string, inputs: readonly unknown[] = []): readonly string[] {
    const { standing } = this.build;
    const parts = standing.gathered.tree.ofKind("part");
    const judged: string[] = [];
    const results = this.kept.of(standing, parts, inputs, (review, node) => {
      judged.push(node.path);
      return [say(review, node)];
    });
    deepStrictEqual(
      results,
      parts.map((node) => say(standing, node)),
    );
    return judged;
  }

  /** The list of all results, which is asked for again. */
  list(say: (review: Review, node: TreeNode) => string): readonly string[] {
    const { standing } = this.build;
    return this.kept.of(standing, standing.gathered.tree.ofKind("part"), [], (review, node) => [
      say(review, node),
    ]);
  }
}

const ALL = ["disc", "hub", "hose"];
const placeOf = (review: Review, node: TreeNode) => `${review.parts.get(node)?.place}`;

test("what a fact is about is judged again, and nothing else", () => {
  const diary = new Diary();
  expect(diary.judge(placeOf)).toEqual(ALL);
  expect(diary.judge(placeOf)).toEqual([]);
  expect(diary.write("  fitted: disc\n").judge(placeOf)).toEqual(["disc"]);
  expect(diary.write("  found: hose good\n", "  removed: hub\n").judge(placeOf)).toEqual(["hub", "hose"]);
  expect(diary.write("  fitted: disc\n  Tea.\n", "  fitted: disc\n").judge(placeOf)).toEqual(["disc"]);
});

test("a change that nobody asked for in between is not forgotten", () => {
  const diary = new Diary();
  diary.judge(placeOf);
  diary.write("  fitted: disc\n").write("  fitted: hub\n");
  expect(diary.judge(placeOf)).toEqual(["disc", "hub"]);
});

test("what comes out as it was stays the same list", () => {
  const diary = new Diary();
  const isKnown = (review: Review, node: TreeNode) => `${review.parts.has(node)}`;
  const list = diary.list(isKnown);
  // Asked again, since a state is other; but nobody can tell by the answer.
  expect(diary.write("  fitted: disc\n").judge(isKnown)).toEqual(["disc"]);
  expect(diary.list(isKnown)).toBe(list);
});

test("other inputs, and other definitions, make all of them again", () => {
  const diary = new Diary();
  diary.judge(placeOf, ["one"]);
  expect(diary.judge(placeOf, ["other"])).toEqual(ALL);
  expect(diary.write("\npart seal\n", "\npart hose\n").judge(placeOf, ["other"])).toEqual([
    "disc",
    "hub",
    "seal",
  ]);
});

test("a line that could not be read concerns what it names", () => {
  const diary = new Diary();
  const lostAbout = (review: Review, node: TreeNode) => `${review.source.lostAbout(node).length}`;
  diary.judge(lostAbout);
  expect(diary.write("  fited: disc\n").judge(lostAbout)).toEqual(["disc"]);
  expect(diary.write("  fited: hub\n", "  fited: disc\n").judge(lostAbout)).toEqual(["disc", "hub"]);
});

test("running leans on what was there before it", () => {
  const diary = new Diary();
  const leaning = (review: Review, node: TreeNode) => `${review.leaningOn(node, undefined, "limits")?.is}`;
  diary.judge(leaning);
  expect(diary.write("  Tea.\n").judge(leaning)).toEqual([]);
  expect(diary.write("  ran: hose 1 h\n").judge(leaning)).toEqual(["hose"]);
});

test("who has looked at all days or all parts looks at them again", () => {
  const diary = new Diary();
  const days = ({ gathered }: Review) => `${gathered.days.length}`;
  const off = ({ parts }: Review) => `${[...parts.values()].filter(({ place }) => place === "off").length}`;
  diary.judge((review) => days(review) + off(review));
  expect(diary.write("  Tea.\n").judge((review) => days(review) + off(review))).toEqual(ALL);
});

test("without a memory everything is made each time", () => {
  const { standing } = readBuild([{ path: "log.cotter", document: Document.read(LOG) }], { clock: CLOCK });
  const kept = new KeptOfEach<TreeNode, string>();
  const parts = standing.gathered.tree.ofKind("part");
  const made: string[] = [];
  for (const _ of [1, 2])
    kept.of(standing, parts, [], (_, node) => {
      made.push(node.path);
      return [];
    });
  expect(made).toEqual([...ALL, ...ALL]);
});
