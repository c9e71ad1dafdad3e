/** Settings that are out, at the line that set or measured them: the newest current, those before it past. */
import type { Replay } from "./replay/replay.ts";
import { settingsOf, verdictOf } from "./setting-check.ts";
import { placeAt } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

export function complainOfSettings(replay: Replay): void {
  for (const node of replay.gathered.tree.nodes()) {
    if (replay.definitions.one(node, "setting") !== undefined) complainOfThing(replay, node);
  }
}

function complainOfThing(replay: Replay, node: TreeNode): void {
  for (const { wanted, asSet } of settingsOf(replay, node)) {
    for (const [index, one] of asSet.entries()) {
      const verdict = verdictOf(one, wanted);
      if (verdict?.verdict !== "outside") continue;
      const data = {
        what: node.path,
        characteristic: wanted.record.name,
        reading: verdict.reading,
        limit: verdict.limit,
        side: verdict.side,
        by: verdict.excess ?? verdict.margin,
        uncertainty: verdict.uncertainty,
        readings: one.values.length,
        spread: verdict.spread,
      };
      replay.complainOf(node, "setting-out-of-range", one.fact.place, data, {
        standing: index === 0 ? "current" : "past",
        seeAlso: [{ place: placeAt(wanted.site, wanted.record.at), role: "setting" }],
      });
    }
  }
}
