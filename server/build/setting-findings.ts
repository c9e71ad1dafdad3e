/** Settings that are out, at the line that set or measured them: the newest current, those before it past. */
import type { Finding } from "./finding.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import { settingsOf, verdictOf } from "./setting-check.ts";
import { placeAt } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

const ofThings = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfSettings(review: Review): readonly Finding[] {
  return ofThings.complaints(review, thingsThatSay(review, "setting"), [], complainOfThing);
}

function complainOfThing(review: Review, node: TreeNode): void {
  for (const { wanted, asSet } of settingsOf(review, node)) {
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
      review.complainOf(node, "setting-out-of-range", one.fact.place, data, {
        standing: index === 0 ? "current" : "past",
        seeAlso: [{ place: placeAt(wanted.site, wanted.record.at), role: "setting" }],
      });
    }
  }
}
