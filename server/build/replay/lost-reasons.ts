/**
 * Complaints that may only follow from a line that could not be read: a part was fitted that never came off, because the
 * line that took it off was misspelt. They say so.
 */
import type { FindingCode, RelatedPlace } from "../finding.ts";
import type { LostLine } from "../lost-lines.ts";
import type { TreeNode } from "../tree/node.ts";

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

/** The lines that could not be read and may be why something about a thing is complained of. */
export function lostReasons(
  code: FindingCode,
  subject: TreeNode,
  lost: readonly LostLine[],
): readonly RelatedPlace[] {
  if (lost.length === 0 || !ANSWERABLE.has(code)) return [];
  return lost
    .filter((line) => line.nodes?.has(subject) ?? wordsOf(line).has(subject.name))
    .map(({ place }) => ({ place, role: "this line could not be read, and may be why" }));
}

/** Lines that could not be read, by what they may be about. */
export class LostIndex {
  private readonly byNode = new Map<TreeNode, LostLine[]>();
  private readonly byWord = new Map<string, LostLine[]>();

  constructor(lost: readonly LostLine[]) {
    for (const line of lost) {
      if (line.nodes === undefined) for (const word of wordsOf(line)) push(this.byWord, word, line);
      else for (const node of line.nodes) push(this.byNode, node, line);
    }
  }

  /** The lines that may be why something about a thing is complained of. */
  about(node: TreeNode): readonly LostLine[] {
    return [...(this.byNode.get(node) ?? []), ...(this.byWord.get(node.name) ?? [])];
  }
}

function push<Key>(to: Map<Key, LostLine[]>, key: Key, line: LostLine): void {
  const known = to.get(key);
  if (known === undefined) to.set(key, [line]);
  else known.push(line);
}

const remembered = new WeakMap<LostLine, ReadonlySet<string>>();

/** The words of a line. */
function wordsOf(line: LostLine): ReadonlySet<string> {
  const known = remembered.get(line) ?? new Set(textOf(line).match(/\w+/g));
  remembered.set(line, known);
  return known;
}

/** Of a day whose date could not be read everything below it is unread too. */
function textOf({ place, text }: LostLine): string {
  const { header, text: whole } = place.site.block;
  return header?.block === "day" && place.start === header.word.start ? whole : text;
}
