/** Standard parts that a description names: `6203, 17 x 40 x 12`, `3/8-24 UNF bolt`, `Woodruff No. 404`. */

import type { KnownPart } from "../known-parts.ts";
import { knownParts } from "../known-parts.ts";
import type { Thread } from "../thread.ts";
import { readBolt } from "../thread.ts";
import type { StandardCandidate } from "./candidate.ts";
import { candidateOf, externalThread, internalThread } from "./standard-candidates.ts";

/** What one designation of a text can be: a thread is a bolt's or a nut's. */
export interface Designation {
  readonly text: string;
  readonly candidates: readonly StandardCandidate[];
}

/**
 * The designations in a description. A bare number is one only at its start, or where a word of its kind of part stands
 * beside it: `520` alone may be anything, `520 chain` is a chain.
 */
export function designationsIn(text: string): readonly Designation[] {
  return [...threadsIn(text).map(threadDesignation), ...otherDesignationsIn(text)];
}

const THREAD =
  /(?<![\w./-])(?:M ?\d+(?:\.\d+)?(?: ?[x×] ?\d+(?:\.\d+)?){0,2}|(?:\d+-)?#?\d+(?:\/\d+)?(?:-\d+)? ?(?:UNC|UNF|UNEF|BSW|BSF|BSC|BSP)|\d{1,2} ?BA)(?: ?LH)?(?![\w./])/g;

function threadsIn(text: string): readonly Thread[] {
  return [...text.matchAll(THREAD)].flatMap(([written]) => {
    const read = readBolt(written);
    return "fault" in read ? [] : [read.thread];
  });
}

function threadDesignation(thread: Thread): Designation {
  return { text: thread.designation, candidates: [externalThread(thread), internalThread(thread)] };
}

/** Words in a row that are looked up together: `parallel key 8 x 7` has five. */
const MOST_WORDS = 6;

function otherDesignationsIn(text: string): readonly Designation[] {
  const words = wordsOf(text);
  const found: Designation[] = [];
  for (let start = 0; start < words.length; start++) {
    for (let end = Math.min(words.length, start + MOST_WORDS); end > start; end--) {
      const candidates = spellings(words.slice(start, end).join(" "))
        .flatMap((spelling) => index().get(spelling) ?? [])
        .flatMap(({ part, bare }) => {
          const candidate = candidateOf(part);
          const told = !bare || start === 0 || (candidate !== undefined && namesKind(words, candidate));
          return candidate !== undefined && told ? [candidate] : [];
        });
      const [first] = candidates;
      if (first === undefined) continue;
      found.push({ text: first.name, candidates });
      start = end - 1;
      break;
    }
  }
  return found;
}

/** `6203-2RS` and `6203ZZ` are also `6203`; a chain's `12B-1` is also `12B`. */
function spellings(text: string): readonly string[] {
  const stem = /^(\d{3,5}|\d{2}[abc])(?:[-. ]?(?:\d?rs\d?|\d?z{1,2}|c[2-5]|nr?|-?[123]))$/.exec(text)?.[1];
  return stem === undefined || stem === text ? [text] : [text, stem];
}

function namesKind(words: readonly string[], { family }: StandardCandidate): boolean {
  return words.some((word) => family.words.includes(word));
}

interface Indexed {
  readonly part: KnownPart;
  /** Nothing but digits: too little to be told by alone. */
  readonly bare: boolean;
}

let remembered: ReadonlyMap<string, readonly Indexed[]> | undefined;

/** Every name of a standard part that is no thread, spelt as `wordsOf` spells. */
function index(): ReadonlyMap<string, readonly Indexed[]> {
  if (remembered !== undefined) return remembered;
  const byName = new Map<string, Indexed[]>();
  for (const part of knownParts()) {
    if (part.family === "thread" || part.family === "spark plug") continue;
    for (const name of new Set(namesOf(part))) {
      const spelt = wordsOf(name).join(" ");
      const same = byName.get(spelt) ?? [];
      byName.set(spelt, [...same, { part, bare: /^-?\d+$/.test(spelt) || part.family === "wire" }]);
    }
  }
  remembered = byName;
  return byName;
}

function namesOf({ name, remark = "", family }: KnownPart): readonly string[] {
  switch (family) {
    case "rolling bearing":
      return [name, ...[...remark.matchAll(/also called (\w+)/g)].flatMap(([, other]) => other ?? [])];
    case "roller chain":
      return [name, name.replace(/^ISO 606 /, "")];
    case "O-ring":
      return [name, name.replace("-", " "), name.replace(/^AS568/, "")];
    case "circlip":
      return [name, name.replace(/ x .*/, "")];
    default:
      return [name];
  }
}

/** In small letters, `×` as `x`, `mm²` as `mm2`, punctuation at the ends of words left out. */
function wordsOf(text: string): readonly string[] {
  return (
    text
      .toLowerCase()
      .replaceAll("×", "x")
      .replaceAll("²", "2")
      .split(/[\s,;:()]+/)
      // From the start of a run alone: else a long one takes time in the square of its length.
      .map((word) => word.replace(/(?<![.!?"'])[.!?"']+$/, ""))
      .filter((word) => word !== "")
  );
}
