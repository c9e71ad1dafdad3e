/** Settings that are out, at the line that set or measured them: the newest current, those before it past. */
import { withArticle } from "../../grammar/article.ts";
import { describeDimension } from "../quantities/dimension.ts";
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { Finding } from "./finding.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import { settingsOf, verdictOf } from "./setting-check.ts";
import { placeAt } from "./source.ts";
import type { DatedFact } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

const ofThings = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfSettings(review: Review): readonly Finding[] {
  return ofThings.complaints(review, thingsThatSay(review, "setting"), [], complainOfThing);
}

function complainOfThing(review: Review, node: TreeNode): void {
  for (const { wanted, asSet, unlike } of settingsOf(review, node)) {
    for (const { fact, values } of unlike) {
      // Of a reading it is said where readings are looked at.
      if (fact.fact.word === "set") complainOfKind(review, node, fact, values[0], wanted.record.limits);
    }
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

function complainOfKind(
  review: Review,
  node: TreeNode,
  { place }: DatedFact,
  value: Quantity,
  { nominal, lower, upper }: Limits,
): void {
  const wanted = nominal ?? lower ?? upper;
  if (wanted === undefined) return;
  const expected = `${withArticle(describeDimension(wanted.dimension))}, as in ${formatQuantity(wanted)}`;
  const data = { found: formatQuantity(value), expected, reason: undefined };
  review.complainOf(node, "wrong-dimension", place, data);
}
