/** What the dimensions of parts say against what they were identified as: loaded once something was identified. */
import type { Build } from "../../build/build.ts";
import { identifiedFact, identifyPart } from "../../build/identification.ts";
import type { ContradictedIdentity } from "../../build/identities.ts";
import { contradictedIdentities } from "../../build/identities.ts";
import type { Place } from "../../build/source.ts";
import { placeAt, textAt } from "../../build/source.ts";
import { absolute } from "../../quantities/quantity.ts";
import type { Candidate } from "../../trade/identification/candidate.ts";
import { leastOf, mostOf } from "../../trade/identification/candidate.ts";
import { asWritten, offBy } from "../../trade/identification/written.ts";
import type { Fix, Notice } from "../rule.ts";
import { list, say } from "../words.ts";

/** A notice for each identity that is contradicted. */
export function* contradictions(build: Build): Generator<Notice> {
  for (const identity of contradictedIdentities(build.standing, build.diary.facts)) {
    const { fact, critical, past, against, donor } = identity;
    const measured = against.flatMap(({ known: { place, from } }) =>
      place === undefined ? [] : [{ place, message: from === "size" ? "its size" : "measured here" }],
    );
    yield {
      place: fact.place,
      message: sayContradiction(identity),
      ...(past ? { severity: "information" } : {}),
      seeAlso: [...measured, ...(donor === undefined ? [] : [{ place: donor.header, message: "the donor" }])],
      critical,
      fixes: otherIdentities(build, identity),
    };
  }
}

function sayContradiction({ as, against }: ContradictedIdentity): string {
  const found = against.map(({ known, expected, given }) => {
    const off = offBy(known, expected.nominal);
    const side = off.value.isNegative() ? "under" : "over";
    const bounds = [leastOf(expected), mostOf(expected)].map((bound) => asWritten(known, bound));
    const [from, to] = bounds.sort((one, other) => one.value.comparedTo(other.value));
    const range =
      from && to && !from.value.equals(to.value) ? ` (${say(from)} to ${say(to)}, wear allowed for)` : "";
    const nominal = say(asWritten(known, expected.nominal));
    return `${given.name} ${say(known.quantity)} is ${say(absolute(off))} ${side} its ${nominal}${range}`;
  });
  return `identified as ${nameOf(as)}, but ${list(found)}`;
}

function nameOf(candidate: Candidate): string {
  return candidate.is === "donor" ? `${candidate.name} (${candidate.donor})` : candidate.name;
}

/** Candidates offered instead; more would be a guess. */
const MOST_OFFERED = 2;

/** What the dimensions say it is, where the item is still there to be looked at. */
function otherIdentities({ standing }: Build, { fact, node, past }: ContradictedIdentity): readonly Fix[] {
  const written = clausesOf(fact.place);
  if (past || written === undefined) return [];
  const fitting = identifyPart(standing, node)?.identification.candidates ?? [];
  return fitting.slice(0, MOST_OFFERED).map(({ candidate }) => ({
    title: `Write that it is ${nameOf(candidate)}`,
    sure: false,
    edits: [{ place: written, text: clausesFor(candidate) }],
  }));
}

/** `as "…" from DONOR`, in either order. */
const CLAUSES = /(?:\bfrom +\w+ +)?\bas +"(?:[^"\\]|\\.)*"(?: +from +\w+)?/;

function clausesOf(place: Place): Place | undefined {
  const match = CLAUSES.exec(textAt(place));
  if (match === null) return undefined;
  const start = place.start + match.index;
  return placeAt(place.site, { start, end: start + match[0].length });
}

function clausesFor(candidate: Candidate): string {
  return identifiedFact("", candidate).replace(/^identified: +/, "");
}
