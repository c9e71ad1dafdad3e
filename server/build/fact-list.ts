import { inOneList, listUnder } from "./list-under.ts";
import type { FactWord } from "./lowering/fact.ts";
import { isSame } from "./remembered.ts";
import type { DatedFact } from "./states.ts";

/** So many facts make a piece. */
const PIECE = 512;

/**
 * The facts of a diary in the order in which they are read, also by their words. Two diaries that begin alike share the
 * pieces of their beginning, and the facts of a word where these are the same.
 */
export class FactList {
  /** All full but the last. */
  private readonly pieces: DatedFact[][];
  private count: number;
  private readonly byWord = new Map<FactWord, readonly DatedFact[]>();
  private readonly byWords = new Map<string, FactsOfWords>();
  private together: readonly DatedFact[] | undefined;

  constructor(before?: FactList, count = 0) {
    const full = Math.floor(count / PIECE);
    this.pieces = before?.pieces.slice(0, full) ?? [];
    if (count > full * PIECE) this.pieces.push(before?.pieces[full]?.slice(0, count - full * PIECE) ?? []);
    this.count = count;
  }

  get length(): number {
    return this.count;
  }

  push(fact: DatedFact): void {
    if (this.count % PIECE === 0) this.pieces.push([]);
    this.pieces.at(-1)?.push(fact);
    this.count++;
  }

  /** The fact of an order. */
  at(order: number): DatedFact | undefined {
    return this.pieces[Math.floor(order / PIECE)]?.[order % PIECE];
  }

  all(): readonly DatedFact[] {
    this.together ??= this.pieces.flat();
    return this.together;
  }

  /** The facts of a word, in order: the same list as in the diary before where that has the same. */
  of<W extends FactWord>(word: W): readonly DatedFact<W>[] {
    return (this.byWord.get(word) ?? NONE) as readonly DatedFact<W>[];
  }

  /** The facts of several words together, in order: the same list as in the diary before where that has the same. */
  ofAny(words: readonly FactWord[]): readonly DatedFact[] {
    const key = words.join();
    const lists = words.map((word) => this.of(word));
    const known = this.byWords.get(key);
    if (known !== undefined && isSame(known.lists, lists)) return known.together;
    const together = inOneList(lists).sort((a, b) => a.order - b.order);
    this.byWords.set(key, { lists, together });
    return together;
  }

  /**
   * Sorts them by their words, once all are there.
   *
   * @param before the diary before, of which the first `count` facts are the same
   */
  sortByWord(before: FactList | undefined, count: number): void {
    const latest = new Map<FactWord, DatedFact[]>();
    for (let order = before === undefined ? 0 : count; order < this.count; order++) {
      const fact = this.at(order);
      if (fact !== undefined) listUnder(latest, fact.fact.word, fact);
    }
    for (const word of new Set([...(before?.byWord.keys() ?? []), ...latest.keys()])) {
      const known = before?.of(word) ?? NONE;
      if (!latest.has(word) && (known.at(-1)?.order ?? 0) < count) {
        this.byWord.set(word, known);
        continue;
      }
      const shared = known.findLastIndex(({ order }) => order < count) + 1;
      const own = latest.get(word) ?? NONE;
      const isAsBefore = isSame(own, known.slice(shared));
      this.byWord.set(word, isAsBefore ? known : known.slice(0, shared).concat(own));
    }
    for (const [words, facts] of before?.byWords ?? []) this.byWords.set(words, facts);
  }
}

/** Facts of several words in one list, and the lists that it was made of. */
interface FactsOfWords {
  readonly lists: readonly (readonly DatedFact[])[];
  readonly together: readonly DatedFact[];
}

const NONE: readonly DatedFact[] = [];
