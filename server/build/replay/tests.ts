/** Tests of things and of hold points: the newest of each by name. */
import { nearest } from "../../../grammar/nearest.ts";
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import { recordsOf } from "../judgement.ts";
import type { RecordWord } from "../lowering/definition-record.ts";
import type { DatedFact, TestState } from "../states.ts";
import { AS_A_WHOLE } from "../tests.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Handlers, Replay } from "./replay.ts";
import type { SharedTable } from "./state-table.ts";

export const testHandlers: Handlers = {
  tested: (replay, fact) => {
    for (const reference of fact.fact.what) {
      complainOfName(replay, fact, reference);
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

/**
 * A test by a name that is in no list of what was tested, nor of anything below it, answers nothing. A circuit without
 * a list is answered by any test.
 */
function complainOfName(replay: Replay, fact: DatedFact<"tested">, reference: ReferenceNode): void {
  const { name, nameAt } = fact.fact;
  if (name === undefined || nameAt === undefined) return;
  const hold = replay.named("hold", reference);
  const targets = hold === undefined ? replay.everythingOf([reference]) : [];
  if (hold === undefined && targets.length === 0) return;
  const listed = new Set(
    hold === undefined
      ? targets.flatMap(({ node }) => replay.definitions.all(node, "test").map(({ record }) => record.name))
      : recordsOf(hold, "test").map((record) => record.name),
  );
  if (listed.has(name) || (listed.size === 0 && targets.some(({ node }) => node.kind === "circuit"))) return;
  const near = nearest(name, listed, 4);
  const known = near.length > 0 ? near : [...listed].slice(0, 4);
  const place = replay.placeIn(fact, nameAt);
  replay.complain(
    "unknown-reference",
    place,
    {
      text: `the test ${name}`,
      kinds: [],
      nearest: known.length > 0 ? known : [`a test: ${name} in the block of ${reference.text}`],
    },
    { fixes: near.map((text) => ({ ...nameAt, text, title: `Write ${text}`, sure: false })) },
  );
}

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

function note<K>(
  tests: SharedTable<K, ReadonlyMap<string, TestState>>,
  subject: K,
  fact: DatedFact<"tested">,
): void {
  const { name, pass } = fact.fact;
  tests.set(subject, new Map(tests.get(subject)).set(name ?? AS_A_WHOLE, { name, pass, fact }));
}
