/** What is wrong with calculations, each at the operand that is at fault. */
import type { SyntaxFix } from "../../grammar/syntax.ts";
import type { NamedKind } from "./block-definition.ts";
import type { Calculation } from "./calculation.ts";
import { Calculator } from "./calculations.ts";
import type { Finding } from "./finding.ts";
import { KeptOfAll } from "./kept-of-each.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import type { Place } from "./source.ts";
import { placeAt, textAt } from "./source.ts";

const NAMED_KINDS: readonly NamedKind[] = ["job", "hold", "supplier", "gauge", "setup", "donor"];

const defined = new KeptOfAll<readonly Calculation[]>();
const ofDefined = new KeptOfAll<readonly Finding[]>();

/** The calculations of all blocks but the days, as of today. */
export function definedCalculations(review: Review): readonly Calculation[] {
  return defined.of(review, [], (own) => {
    const calculator = new Calculator(own);
    const ofThings = thingsThatSay(own, "calc").flatMap((node) => calculator.ofThing(node));
    const ofOthers = NAMED_KINDS.flatMap((kind) => [...own.names.every(kind)]).flatMap((definition) =>
      calculator.ofDefinition(definition),
    );
    return [...ofThings, ...ofOthers];
  });
}

/**
 * Complaints about those with a mistake of their own. One that waits for a measurement has none, and one that builds on a
 * mistake is not complained about again.
 */
export function complaintsOfCalculations(
  review: Review,
  calculations: readonly Calculation[],
): readonly Finding[] {
  return ofDefined.complaints(review, [calculations], (own) => {
    const said = new Set<string>();
    for (const calculation of calculations) {
      // A copied line has its mistake once.
      const key = mistakeOf(calculation);
      if (key === undefined || said.has(key)) continue;
      said.add(key);
      complainOfCalculation(own, calculation);
    }
  });
}

/** Whoever hears of complaints: while the diary is read, and after it. */
type Complaining = Pick<Review, "complain">;

/** A calculation's own mistake; what a day lacks is one too, since nothing later can give it. */
export function complainOfCalculation(to: Complaining, { expression, place, outcome }: Calculation): void {
  if (outcome.is === "value" || outcome.is === "without ground") return;
  if (outcome.is === "cycle") {
    to.complain("calc-cycle", placeAt(place.site, expression), { names: outcome.names });
    return;
  }
  const { code, message, start, end, fixes } = outcome.fault;
  const at = placeAt(place.site, { start, end });
  switch (code) {
    case "unknown-name":
      if (outcome.is === "waiting") complainOfText(to, "unreadable-expression", at, message);
      else {
        const nearest = fixes.map(({ text }) => text);
        to.complain("unknown-reference", at, { text: textAt(at), kinds: [], nearest }, { fixes });
      }
      return;
    case "unknown-function":
    case "out-of-range-argument":
      to.complain(code, at, { message }, { fixes });
      return;
    default:
      complainOfText(to, code, at, message, fixes);
  }
}

function complainOfText(
  to: Complaining,
  code: "unreadable-expression" | "wrong-dimension" | "unknown-unit",
  place: Place,
  reason: string,
  fixes: readonly SyntaxFix[] = [],
): void {
  to.complain(code, place, { found: textAt(place), expected: "", reason }, { fixes });
}

/** What stays the same when a mistake is met again in a copy, or from another member of a cycle. */
function mistakeOf({ place, outcome }: Calculation): string | undefined {
  if (outcome.is === "cycle") return `cycle ${[...new Set(outcome.names)].sort().join(" ")}`;
  if (outcome.is !== "fault") return undefined;
  return `${place.site.file.path} ${place.site.index} ${outcome.fault.start} ${outcome.fault.code}`;
}
