/** Why a part may not go back as it is, and what lifts that. */
import { isCritical } from "./criticality.ts";
import { judgeReading, newestReadings } from "./judgement.ts";
import type { Condition, Decision } from "./lowering/fact.ts";
import type { Standing } from "./standing.ts";
import type { Condemnation, Item, ItemEvent, PartState } from "./states.ts";

const CONDEMNING_CONDITIONS: ReadonlySet<Condition> = new Set([
  "cracked",
  "bent",
  "seized",
  "stripped",
  "wrong",
]);
const HARMLESS_CONDITIONS: ReadonlySet<Condition> = new Set(["good", "dirty"]);
const CONDEMNING_DECISIONS: ReadonlySet<Decision> = new Set([
  "recondition",
  "repair",
  "renew",
  "make",
  "scrap",
]);
/** Damage after which a safety-critical part is used again only with a crack test and a second pair of eyes. */
const NEEDS_CRACK_TEST: ReadonlySet<Condemnation["why"]> = new Set(["cracked", "bent", "stretched"]);
const CRACK_TESTS: ReadonlySet<string> = new Set(["crack_test", "penetrant", "magnetic_particle"]);

/** Why the item that is in a part's place is condemned; undefined where it is not, or no longer. */
export function condemnation(
  standing: Standing,
  { node, item }: Pick<PartState, "node" | "item">,
): Condemnation | undefined {
  const critical = isCritical(standing, node);
  let condemned: Condemnation | undefined;
  let back = false;
  for (const [index, event] of item.events.entries()) {
    const reason = reasonOf(standing, item, event, critical);
    if (reason !== undefined) {
      condemned = { why: reason, fact: event.fact };
      back = false;
    } else if (condemned !== undefined && lifts(item, index, condemned, critical, back))
      condemned = undefined;
    if (event.is === "back") back = true;
  }
  return condemned;
}

function reasonOf(
  standing: Standing,
  item: Item,
  event: ItemEvent,
  critical: boolean,
): Condemnation["why"] | undefined {
  if (event.is === "decided") return CONDEMNING_DECISIONS.has(event.decision) ? event.decision : undefined;
  if (event.is !== "found") return undefined;
  const { condition } = event;
  if (CONDEMNING_CONDITIONS.has(condition)) return condition;
  if (!critical || HARMLESS_CONDITIONS.has(condition)) return undefined;
  return condition === "worn" && provedWithin(standing, item) ? undefined : condition;
}

/** True where the item has limited readings and every newest one is within. */
function provedWithin(standing: Standing, item: Item): boolean {
  const judged = newestReadings(item).flatMap((reading) => judgeReading(standing, reading));
  return (
    judged.length > 0 &&
    judged.every(({ verdict }) => verdict.verdict === "within" || verdict.verdict === "near")
  );
}

function lifts(
  item: Item,
  index: number,
  condemned: Condemnation,
  critical: boolean,
  back: boolean,
): boolean {
  const event = item.events[index];
  switch (event?.is) {
    case "repaired":
      return true;
    case "reconditioned":
      return event.kitInHand;
    case "back":
      return !critical;
    case "inspected":
    case "measured":
      return critical && back;
    case "decided":
      return (
        event.decision === "reuse" &&
        (!critical || !NEEDS_CRACK_TEST.has(condemned.why) || crackTestedAndSeen(item, condemned))
      );
    default:
      return false;
  }
}

function crackTestedAndSeen(item: Item, condemned: Condemnation): boolean {
  const since = item.events.filter(({ fact }) => fact.order > condemned.fact.order);
  const tested = since.some(
    (event) => event.is === "inspected" && event.method !== undefined && CRACK_TESTS.has(event.method),
  );
  return tested && since.some((event) => event.is === "seen");
}
