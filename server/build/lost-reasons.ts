/**
 * Complaints that may only follow from a line that could not be read: a part was fitted that never came off, because the
 * line that took it off was misspelt. They say so.
 */
import type { FindingCode, RelatedPlace } from "./finding.ts";
import { listUnder } from "./list-under.ts";
import type { LostLine } from "./lost-lines.ts";
import { sharedBeginning } from "./remembered.ts";
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
  return lost.filter((line) => mayBeAbout(node, line));
}

/** Whether a line may be about a thing: it names it, or nobody knows what it is about and a word of it is its name. */
export function mayBeAbout(node: TreeNode, line: LostLine): boolean {
  return line.nodes?.has(node) ?? wordsOf(line).has(node.name);
}

/**
 * Lines that could not be read, by what they may be about: the same answers as `linesAbout`, for who asks often. An index
 * goes on from one of lines that begin alike, and looks through those that came behind them.
 */
export class LostIndex {
  readonly lost: readonly LostLine[];
  private readonly sorted: Sorted;
  /** So many of the lines stand in the sorted ones, too. */
  private readonly shared: number;

  constructor(lost: readonly LostLine[], before?: LostIndex) {
    const sorted = before?.sorted ?? sort(lost);
    const shared = sharedBeginning(lost, sorted.lines);
    const isClose = lost.length - shared <= CLOSE;
    this.lost = lost;
    this.sorted = isClose ? sorted : sort(lost);
    this.shared = isClose ? shared : lost.length;
  }

  /** The lines that may be about a thing. */
  about(node: TreeNode): readonly LostLine[] {
    const { byNode, byWord } = this.sorted;
    const found = [...(byNode.get(node) ?? []), ...(byWord.get(node.name) ?? [])];
    const shared = found
      .sort((a, b) => a - b)
      .flatMap((index) => (index < this.shared ? (this.lost[index] ?? []) : []));
    return [...shared, ...linesAbout(node, this.lost.slice(this.shared))];
  }
}

/** So many lines are looked through one by one. */
const CLOSE = 32;

/** Lines by the things that they name, or else by their words. */
interface Sorted {
  readonly lines: readonly LostLine[];
  readonly byNode: ReadonlyMap<TreeNode, readonly number[]>;
  readonly byWord: ReadonlyMap<string, readonly number[]>;
}

function sort(lines: readonly LostLine[]): Sorted {
  const byNode = new Map<TreeNode, number[]>();
  const byWord = new Map<string, number[]>();
  for (const [index, line] of lines.entries()) {
    if (line.nodes === undefined) for (const word of wordsOf(line)) listUnder(byWord, word, index);
    else for (const node of line.nodes) listUnder(byNode, node, index);
  }
  return { lines, byNode, byWord };
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
