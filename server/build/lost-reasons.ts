/**
 * Complaints that may only follow from a line that could not be read: a part was fitted that never came off, because the
 * line that took it off was misspelt. They say so.
 */
import type { FindingCode, RelatedPlace } from "./finding.ts";
import { listUnder } from "./list-under.ts";
import type { LostLine } from "./lost-lines.ts";
import type { TreeNode } from "./tree/node.ts";

/** What a line that was not read could have answered. */
const ANSWERABLE: ReadonlySet<FindingCode> = new Set([
  "removed-twice",
  "fitted-twice",
  "fitted-while-away",
  "fitted-not-in-hand",
  "fitted-condemned",
  "fitted-out-of-limit",
  "fitted-not-inspected",
  "single-use-refitted",
  "back-never-sent",
  "received-over-order",
  "torqued-before-fitted",
  "marked-before-torqued",
  "locked-before-torqued",
  "self-locking-reused",
  "lock-missing",
  "mark-missing",
  "not-seen",
  "opened-not-bled",
  "not-proved",
  "proved-while-open",
  "final-torque-waiting",
  "recheck-due",
  "limit-not-measured",
  "circuit-untested",
]);

/**
 * The lines that could not be read and may be why something is complained of.
 *
 * @param about finds those that may be about its subject
 */
export function lostReasons(code: FindingCode, about: () => readonly LostLine[]): readonly RelatedPlace[] {
  if (!ANSWERABLE.has(code)) return [];
  return about().map(({ place }) => ({ place, role: "this line could not be read, and may be why" }));
}

/** The lines that may be about a thing. */
export function linesAbout(node: TreeNode, lost: readonly LostLine[]): readonly LostLine[] {
  return lost.filter((line) => line.nodes?.has(node) ?? wordsOf(line).has(node.name));
}

/** Lines that could not be read, by what they may be about: the same answers as `linesAbout`, for who asks often. */
export class LostIndex {
  private readonly lost: readonly LostLine[];
  private readonly byNode = new Map<TreeNode, number[]>();
  private readonly byWord = new Map<string, number[]>();

  constructor(lost: readonly LostLine[]) {
    this.lost = lost;
    for (const [index, line] of lost.entries()) {
      if (line.nodes === undefined) for (const word of wordsOf(line)) listUnder(this.byWord, word, index);
      else for (const node of line.nodes) listUnder(this.byNode, node, index);
    }
  }

  /** The lines that may be about a thing. */
  about(node: TreeNode): readonly LostLine[] {
    const found = [...(this.byNode.get(node) ?? []), ...(this.byWord.get(node.name) ?? [])];
    return found.sort((a, b) => a - b).flatMap((index) => this.lost[index] ?? []);
  }
}

const remembered = new WeakMap<LostLine, ReadonlySet<string>>();

/** The words of a line. */
export function wordsOf(line: LostLine): ReadonlySet<string> {
  const known = remembered.get(line) ?? new Set(textOf(line).match(/\w+/g));
  remembered.set(line, known);
  return known;
}

/** Of a day whose date could not be read everything below it is unread too. */
function textOf({ place, text }: LostLine): string {
  const { header, text: whole } = place.site.block;
  return header?.block === "day" && place.start === header.word.start ? whole : text;
}
