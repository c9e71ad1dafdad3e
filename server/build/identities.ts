/** What parts were identified as, and what their dimensions say to it. */
import type { Candidate } from "../trade/identification/candidate.ts";
import { designationsIn } from "../trade/identification/designation.ts";
import type { ComparedDimension, Match } from "../trade/identification/match.ts";
import { compareWith, countStated } from "../trade/identification/match.ts";
import { isCritical } from "./criticality.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { FactList } from "./fact-list.ts";
import type { KnownDimension } from "./identification.ts";
import { dimensionsOf, donorOf } from "./identification.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact, Item, PartState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

type ContradictedDimension = Extract<ComparedDimension, { is: "compared" }> & {
  readonly known: KnownDimension;
};

/** An `identified:` that the dimensions of the part speak against. */
export interface ContradictedIdentity {
  readonly fact: DatedFact<"identified">;
  readonly node: TreeNode;
  /** What it was identified as: the donor, or the standard part that its words name. */
  readonly as: Candidate;
  readonly donor: NamedDefinition | undefined;
  /** Those that are further off than their uncertainty and wear allow. */
  readonly against: readonly ContradictedDimension[];
  readonly critical: boolean;
  /** It is about an item that is there no longer. */
  readonly past: boolean;
}

/** Contradicted identities; of several about one item the newest counts, and of donor and words the first that is wrong. */
export function contradictedIdentities(standing: Standing, facts: FactList): readonly ContradictedIdentity[] {
  const newest = new Map<Item, { readonly fact: DatedFact<"identified">; readonly part: PartState }>();
  for (const fact of facts.of("identified")) {
    const node = standing.names.one(fact.fact.target, ["part"]);
    const part = node && standing.parts.get(node);
    if (part !== undefined) newest.set(itemAt(part, fact), { fact, part });
  }
  return [...newest].flatMap(([item, { fact, part }]) => contradictionOf(standing, fact, part, item) ?? []);
}

/** The item that was in the place of a part when a fact was written. */
function itemAt({ item, earlier }: PartState, { order }: DatedFact): Item {
  return [...earlier, item].findLast(({ since }) => since === undefined || since.order < order) ?? item;
}

function contradictionOf(
  standing: Standing,
  fact: DatedFact<"identified">,
  { node, item: present }: PartState,
  item: Item,
): ContradictedIdentity | undefined {
  const known = dimensionsOf(standing, node, item);
  if (known.length === 0) return undefined;
  const donor = fact.fact.from && standing.names.named("donor", fact.fact.from.text);
  for (const meanings of meaningsOf(fact, donor)) {
    const match = kindest(meanings.flatMap((meaning) => closest(meaning, known) ?? []));
    if (match === undefined || match.fits) continue;
    return {
      fact,
      node,
      as: match.candidate,
      donor: match.candidate.is === "donor" ? donor : undefined,
      against: againstIt(match, known),
      critical: isCritical(standing, node),
      past: item !== present,
    };
  }
  return undefined;
}

/** What the fact says: its donor, and the designations in its words. What a designation can be are the choices in it. */
function meaningsOf(
  { fact }: DatedFact<"identified">,
  donor: NamedDefinition | undefined,
): readonly (readonly (readonly Candidate[])[])[] {
  return [
    donor === undefined ? [] : [[donorOf(donor)]],
    designationsIn(fact.as).map(({ candidates }) => candidates),
  ];
}

/** Of what one designation can be, that which states most of what is known: of a thread with a major diameter, the bolt. */
function closest(candidates: readonly Candidate[], known: readonly KnownDimension[]): Match | undefined {
  const given = known.map((one) => one.given);
  const matches = candidates.flatMap((candidate) => compareWith(candidate, given) ?? []);
  const most = Math.max(0, ...matches.map(countStated));
  return kindest(matches.filter((match) => countStated(match) === most));
}

/** Only what contradicts every reading of the words is a contradiction. */
function kindest(matches: readonly Match[]): Match | undefined {
  return matches.reduce<Match | undefined>(
    (best, match) => (best === undefined || isKinder(match, best) ? match : best),
    undefined,
  );
}

function isKinder(one: Match, other: Match): boolean {
  return one.fits === other.fits ? one.misfit < other.misfit : one.fits;
}

function againstIt(
  { dimensions }: Match,
  known: readonly KnownDimension[],
): readonly ContradictedDimension[] {
  return dimensions.flatMap((compared) => {
    const dimension = known.find(({ given }) => given === compared.given);
    return compared.is === "compared" && compared.state === "outside" && dimension !== undefined
      ? [{ ...compared, known: dimension }]
      : [];
  });
}
