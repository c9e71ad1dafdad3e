/** The facts of a diary by their words: who asks for one kind need not walk through all. */
import { listUnder } from "./list-under.ts";
import type { FactWord } from "./lowering/fact.ts";
import type { DatedFact } from "./states.ts";

type Grouped = ReadonlyMap<FactWord, readonly DatedFact[]>;

const remembered = new WeakMap<readonly DatedFact[], Grouped>();

/** The facts of a word, in order. */
export function factsOf<W extends FactWord>(facts: readonly DatedFact[], word: W): readonly DatedFact<W>[] {
  const grouped = remembered.get(facts) ?? groupFacts(facts, [], 0);
  return (grouped.get(word) ?? []) as readonly DatedFact<W>[];
}

/** The facts of several words together, in order. */
export function factsOfAny(facts: readonly DatedFact[], words: readonly FactWord[]): readonly DatedFact[] {
  return words
    .flatMap((word): readonly DatedFact[] => factsOf(facts, word))
    .sort((a, b) => a.order - b.order);
}

/**
 * Groups all facts of a diary.
 *
 * @param before facts that have been grouped, of which the first `count` are those of this diary too
 */
export function groupFacts(
  facts: readonly DatedFact[],
  before: readonly DatedFact[],
  count: number,
): Grouped {
  const grouped = new Map<FactWord, DatedFact[]>();
  const known = remembered.get(before);
  for (const [word, all] of known ?? [])
    grouped.set(word, all.slice(0, all.findLastIndex(({ order }) => order < count) + 1));
  for (const fact of facts.slice(known === undefined ? 0 : count)) listUnder(grouped, fact.fact.word, fact);
  remembered.set(facts, grouped);
  return grouped;
}
