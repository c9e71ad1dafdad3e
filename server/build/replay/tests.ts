/** Tests of things and of hold points: the newest of each by name. */
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import type { RecordWord } from "../lowering/definition-record.ts";
import type { DatedFact, TestState } from "../states.ts";
import { AS_A_WHOLE } from "../tests.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Handlers, Replay } from "./replay.ts";

export const testHandlers: Handlers = {
  tested: (replay, fact) => {
    for (const reference of fact.fact.what) {
      const hold = replay.named("hold", reference);
      if (hold !== undefined) note(replay.holdTests, hold, fact);
      else for (const node of testedBy(replay, reference, fact.fact.name)) note(replay.tests, node, fact);
    }
  },

  // What is changed by definition is not what was tested; how it is bought changes nothing of it.
  changed: (replay, fact) => {
    const node = replay.names.one(fact.fact.target, TREE_KINDS);
    if (node !== undefined && !PURCHASE.has(fact.fact.record.word)) replay.disturb(node, fact);
  },
};

const PURCHASE: ReadonlySet<RecordWord> = new Set(["price", "supplier", "lead", "pack", "stock", "keep"]);

const TREE_KINDS = ["assembly", "part", "joint", "system", "circuit"] as const;

/** What a test was of: by name those that list it, where any does; else what was named, and all below it. */
function testedBy(replay: Replay, reference: ReferenceNode, name: string | undefined): readonly TreeNode[] {
  const targets = replay.everythingOf([reference]);
  if (name === undefined) return targets.map(({ node }) => node);
  const listing = targets.filter(({ node }) =>
    replay.definitions.all(node, "test").some(({ record }) => record.name === name),
  );
  const meant = listing.length > 0 ? listing : targets.filter(({ through }) => through === undefined);
  return meant.map(({ node }) => node);
}

function note<K>(tests: Map<K, Map<string, TestState>>, subject: K, fact: DatedFact<"tested">): void {
  const { name, pass } = fact.fact;
  const ofSubject = tests.get(subject) ?? new Map<string, TestState>();
  tests.set(subject, ofSubject.set(name ?? AS_A_WHOLE, { name, pass, fact }));
}
