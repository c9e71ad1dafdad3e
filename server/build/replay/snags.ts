/** Snags: defects noted, put right, or conceded past some hold points. */
import type { DatedFact, SnagState } from "../states.ts";
import type { Handlers, Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";

export const snagHandlers: Handlers = {
  snag: (replay, fact) => {
    const { name, on } = fact.fact;
    const earlier = openSnags(replay, name)[0];
    if (earlier !== undefined) {
      const seeAlso = [{ place: earlier.fact.place, role: "the first" }];
      replay.complain("duplicate-name", fact.place, { what: "snag", name }, { seeAlso });
    }
    const node = replay.names.one(on, TREE_KINDS);
    const state: SnagState = { name, on: node, fact, cleared: undefined, conceded: undefined };
    // A second one of that name is a defect of its own: neither is lost.
    replay.snags.set(replay.snags.has(name) ? `${name} ${fact.order}` : name, state);
    if (node !== undefined) replay.touched.add(node);
  },

  cleared: (replay, fact) => {
    for (const snag of named(replay, fact)) snag.cleared = fact;
  },

  conceded: (replay, fact) => {
    for (const snag of named(replay, fact)) snag.conceded = fact;
  },
};

const TREE_KINDS = ["assembly", "part", "joint", "system", "circuit"] as const;

function named(replay: Replay, fact: DatedFact<"cleared" | "conceded">): readonly Growing<SnagState>[] {
  const { name, word } = fact.fact;
  const open = openSnags(replay, name);
  if (open.length === 0) {
    const known = [...replay.snags.values()].filter(({ cleared }) => cleared === undefined);
    const before = [...replay.snags.values()].findLast((snag) => snag.name === name)?.cleared;
    replay.complain(
      "cleared-unknown-snag",
      fact.place,
      { name, word, known: known.map((snag) => snag.name), clearedBefore: before?.date },
      { seeAlso: before === undefined ? [] : [{ place: before.place, role: "cleared before" }] },
    );
  }
  return open;
}

function openSnags({ snags }: Replay, name: string): readonly Growing<SnagState>[] {
  return [...snags.growing()].filter((snag) => snag.name === name && snag.cleared === undefined);
}
