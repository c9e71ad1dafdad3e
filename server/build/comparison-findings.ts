/** Fits that are out of range and pairs that differ, at the newer of the two readings. */
import { formatQuantity } from "../quantities/quantity.ts";
import type { Characteristic } from "./characteristic.ts";
import { condemnation } from "./condemnation.ts";
import type { Finding, RelatedPlace } from "./finding.ts";
import type { JudgedFit } from "./fits.ts";
import { fitsOf } from "./fits.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import type { JudgedPair } from "./pairs.ts";
import { pairsOf } from "./pairs.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import { placeAt } from "./source.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

const ofFits = new KeptOfEach<TreeNode, Finding>();
const judgedPairs = new KeptOfEach<TreeNode, PairOf>();
const ofPairs = new KeptOfEach<PairOf, Finding>();

interface PairOf {
  readonly node: TreeNode;
  readonly pair: JudgedPair;
}

export function complaintsOfComparisons(review: Review): readonly (readonly Finding[])[] {
  const pairs = judgedPairs.of(review, thingsThatSay(review, "pair"), [], (own, node) =>
    pairsOf(own, node).map((pair) => ({ node, pair })),
  );
  return [
    ofFits.complaints(review, thingsThatSay(review, "fit"), [], (own, node) => {
      for (const fit of fitsOf(own, node)) complainOfFit(own, node, fit);
    }),
    ofPairs.complaints(review, onceEach(pairs), [], complainOfPair),
  ];
}

/** Two sides that name each other are compared once. */
function onceEach(pairs: readonly PairOf[]): readonly PairOf[] {
  const compared = new Map<string, PairOf>();
  for (const one of pairs) {
    const { node, pair } = one;
    const sides = [
      `${node.path} ${pair.record.record.name}`,
      `${pair.otherNode.path} ${pair.otherName}`,
    ].sort();
    if (!compared.has(sides.join())) compared.set(sides.join(), one);
  }
  return [...compared.values()];
}

function complainOfFit(review: Review, node: TreeNode, fit: JudgedFit): void {
  const { record, inner, outer, outerNode, outerName, verdict } = fit;
  if (verdict.verdict !== "outside" && verdict.verdict !== "uncertain") return;
  const { sense, name } = record.record;
  const data = {
    what: `${node.path}.${name}`,
    other: `${outerNode.path}.${outerName}`,
    sense,
    actual: verdict.reading,
    limit: verdict.limit,
    side: verdict.side,
    by: verdict.excess ?? verdict.margin,
    uncertainty: verdict.uncertainty,
    proven: verdict.verdict === "outside",
  };
  const { place, seeAlso } = places(inner, outer, record, "fit");
  review.complainOf(node, "fit-out-of-range", place, data, {
    seeAlso,
    standing: mayBeUsed(review, node) && mayBeUsed(review, outerNode) ? "current" : "past",
  });
}

function complainOfPair(review: Review, { node, pair }: PairOf): void {
  const { record, ours, theirs, otherNode, otherName } = pair;
  if (pair.is === "share of no size") {
    const expected = `an absolute figure for a pair that lies about zero or has no zero of its own, such as ${formatQuantity(pair.value)}`;
    const found = `within ${formatQuantity(record.record.within)}`;
    const place = placeAt(record.site, record.record.at);
    review.complainOf(node, "wrong-dimension", place, { found, expected, reason: undefined });
    return;
  }
  const { verdict, difference, allowed } = pair;
  if (verdict.verdict !== "outside" && verdict.verdict !== "uncertain") return;
  const { place, seeAlso } = places(ours, theirs, record, "pair");
  const data = {
    what: `${node.path}.${record.record.name}`,
    other: `${otherNode.path}.${otherName}`,
    difference,
    allowed,
    within: record.record.within,
    uncertainty: verdict.uncertainty,
    proven: verdict.verdict === "outside",
  };
  review.complainOf(node, "pair-differs", place, data, {
    seeAlso,
    standing: mayBeUsed(review, node) && mayBeUsed(review, otherNode) ? "current" : "past",
  });
}

/** The newer of two readings, and beside it the older one and what compares them. */
function places(
  one: Characteristic,
  other: Characteristic,
  { site, record }: SourcedRecord,
  role: string,
): { place: Characteristic["place"]; seeAlso: readonly RelatedPlace[] } {
  const [newer, older] = (one.fact?.order ?? -1) >= (other.fact?.order ?? -1) ? [one, other] : [other, one];
  const seeAlso = [
    { place: placeAt(site, record.at), role },
    { place: older.place, role: older.from },
  ];
  return { place: newer.place, seeAlso };
}

/** Neither gone nor condemned; what is no part is always there. */
function mayBeUsed(review: Review, node: TreeNode): boolean {
  const part = review.parts.get(node);
  return part === undefined || (part.place !== "gone" && condemnation(review, part) === undefined);
}
