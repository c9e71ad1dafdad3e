/** Fits that are out of range and pairs that differ, at the newer of the two readings. */
import { formatQuantity } from "../quantities/quantity.ts";
import type { Characteristic } from "./characteristic.ts";
import { condemnation } from "./condemnation.ts";
import type { RelatedPlace } from "./finding.ts";
import type { JudgedFit } from "./fits.ts";
import { fitsOf } from "./fits.ts";
import type { JudgedPair } from "./pairs.ts";
import { pairsOf } from "./pairs.ts";
import type { Replay } from "./replay/replay.ts";
import { placeAt } from "./source.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

export function complainOfComparisons(replay: Replay): void {
  const compared = new Set<string>();
  for (const node of replay.gathered.tree.nodes()) {
    for (const fit of fitsOf(replay, node)) complainOfFit(replay, node, fit);
    for (const pair of pairsOf(replay, node)) {
      // Two sides that name each other are compared once.
      const sides = [
        `${node.path} ${pair.record.record.name}`,
        `${pair.otherNode.path} ${pair.otherName}`,
      ].sort();
      if (compared.has(sides.join())) continue;
      compared.add(sides.join());
      complainOfPair(replay, node, pair);
    }
  }
}

function complainOfFit(replay: Replay, node: TreeNode, fit: JudgedFit): void {
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
  replay.complainOf(node, "fit-out-of-range", place, data, {
    seeAlso,
    standing: mayBeUsed(replay, node) && mayBeUsed(replay, outerNode) ? "current" : "past",
  });
}

function complainOfPair(replay: Replay, node: TreeNode, pair: JudgedPair): void {
  const { record, ours, theirs, otherNode, otherName } = pair;
  if (pair.is === "share of no size") {
    const expected = `an absolute figure for a pair that lies about zero or has no zero of its own, such as ${formatQuantity(pair.value)}`;
    const found = `within ${formatQuantity(record.record.within)}`;
    const place = placeAt(record.site, record.record.at);
    replay.complainOf(node, "wrong-dimension", place, { found, expected, reason: undefined });
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
  replay.complainOf(node, "pair-differs", place, data, {
    seeAlso,
    standing: mayBeUsed(replay, node) && mayBeUsed(replay, otherNode) ? "current" : "past",
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
function mayBeUsed(replay: Replay, node: TreeNode): boolean {
  const part = replay.parts.get(node);
  return part === undefined || (part.place !== "gone" && condemnation(replay, part) === undefined);
}
