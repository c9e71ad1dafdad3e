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
import { checkingRule } from "../rule.ts";
import { list, say } from "../words.ts";

export const identityContradicted = checkingRule({
  code: "identity-contradicted",
  group: "Lives and supply",
  severity: "warning",
  summary: "A part's dimensions speak against what it was identified as",
  why: "What is ordered by that name will not fit, or will fit badly; the tolerance of a new part, wear and the uncertainty of the measurement are allowed for.",
  remedy:
    "Measure again; if the figures are right, find out what else it can be and correct the identification.",
  source: "the standard of the part that is named; the allowance for wear is common practice, no source",
  bad: `part wheel.bearing "Wheel bearing"
  price: 7.20 GBP
  size: bore 17 mm
  size: outside 47 mm
  size: width 14 mm

day 2026-05-02
  identified: wheel.bearing as "6203"
`,
  good: `part wheel.bearing "Wheel bearing"
  price: 7.20 GBP
  size: bore 17 mm
  size: outside 47 mm
  size: width 14 mm

day 2026-05-02
  identified: wheel.bearing as "6303"
`,
  check: contradictions,
});

function* contradictions(build: Build): Generator<Notice> {
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
