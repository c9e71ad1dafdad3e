/** `changed:`: definitions that are different from a day on. */
import { entriesOf, recordEntry } from "../../../grammar/vocabulary/vocabulary.ts";
import type { DayBlock } from "../definitions.ts";
import type { FactOf } from "../lowering/fact.ts";
import { placeAt } from "../source.ts";
import type { Change } from "../tree/definitions.ts";
import type { TreeKind, TreeNode } from "../tree/node.ts";
import type { Replay } from "./replay.ts";

const TREE: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];

/** The changes of one day take effect together, from that day on. */
export function carryOutChanges(replay: Replay, days: readonly DayBlock[]): void {
  const changes: Change[] = [];
  for (const day of days) {
    for (const fact of day.facts) if (fact.word === "changed") changes.push(...changesBy(replay, fact, day));
  }
  if (changes.length > 0) replay.change(changes);
}

function changesBy(replay: Replay, fact: FactOf<"changed">, { site }: DayBlock): readonly Change[] {
  const { target, record } = fact;
  const node = replay.names.one(target, TREE);
  if (node === undefined) return [];
  if (!takes(node, record.word)) {
    const blocks = entriesOf(record.word).flatMap((entry) => entry.blocks);
    replay.complainOf(node, "record-not-here", placeAt(site, record.at), {
      found: record.word,
      expected: `a record of ${node.kind === "assembly" ? "an" : "a"} ${node.kind}; this is one of ${[...new Set(blocks)].join(", ")}`,
      reason: undefined,
    });
    return [];
  }
  return [{ node, record: { record, site, turns: [] } }];
}

function takes({ kind }: TreeNode, word: string): boolean {
  return recordEntry(kind, word) !== undefined;
}
