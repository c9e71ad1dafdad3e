/** Why a part may not go back as it is, and what lifts that. */
import { isCritical } from "./criticality.ts";
import { judgeReading, newestReadings } from "./judgement.ts";
import type { Condition, Decision } from "./lowering/fact.ts";
import { Remembered } from "./remembered.ts";
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

/**
 * Why the item that is in a part's place is condemned: what was found of it first, else what was decided last;
 * undefined where it is not, or no longer.
 */
export function condemnation(
  standing: Standing,
  { node, item }: Pick<PartState, "node" | "item">,
): Condemnation | undefined {
  if (item.events.length === 0) return undefined;
  // Of a part that can hurt nobody the events alone tell.
  if (isCritical(standing, node)) return condemn(standing, item, true);
  return harmless.of(item, [], () => condemn(standing, item, false));
}

const harmless = new Remembered<Item, Condemnation | undefined>();

function condemn(standing: Standing, item: Item, critical: boolean): Condemnation | undefined {
  const reasons = item.events.flatMap((event, index): Reason[] => {
    const why = reasonOf(standing, item, event, critical);
    return why === undefined ? [] : [{ why, event, since: item.events.slice(index + 1) }];
  });
  const open = reasons.filter((reason) => !isLifted(reason, critical));
  const reason = open.find(({ event }) => event.is === "found") ?? open.at(-1);
  return reason && { why: reason.why, fact: reason.event.fact };
}

interface Reason {
  readonly why: Condemnation["why"];
  readonly event: ItemEvent;
  /** What has happened to the item afterwards, in order. */
  readonly since: readonly ItemEvent[];
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

function isLifted({ why, event, since }: Reason, critical: boolean): boolean {
  // A decision holds until the next one of its kind is made.
  if (event.is === "decided" && since.some(isCondemningDecision)) return true;
  if (!since.some((later, index) => lifts(later, since.slice(index + 1), critical))) return false;
  return !critical || !NEEDS_CRACK_TEST.has(why) || isProvedSound(since);
}

function isCondemningDecision(event: ItemEvent): boolean {
  return event.is === "decided" && CONDEMNING_DECISIONS.has(event.decision);
}

/** @param after what followed the event */
function lifts(event: ItemEvent, after: readonly ItemEvent[], critical: boolean): boolean {
  switch (event.is) {
    case "repaired":
      return true;
    case "reconditioned":
      return event.kitInHand;
    case "back":
      return !critical || after.some(({ is }) => is === "inspected" || is === "measured");
    case "decided":
      // It goes back against what was found or decided: that is for somebody to answer for in words.
      return event.decision === "reuse" && event.fact.fact.note !== undefined;
    default:
      return false;
  }
}

/** Crack tested and seen by another since it was last worked on. */
function isProvedSound(since: readonly ItemEvent[]): boolean {
  const worked = since.findLastIndex(
    ({ is }) => is === "repaired" || is === "reconditioned" || is === "back",
  );
  const after = since.slice(worked + 1);
  const tests = after.filter(
    (event) => event.is === "inspected" && event.method !== undefined && CRACK_TESTS.has(event.method),
  );
  return tests.some((test) => after.some((event) => event.is === "seen" && isAnother(event, test)));
}

function isAnother(one: ItemEvent, other: ItemEvent): boolean {
  return one.fact.fact.by === undefined || one.fact.fact.by !== other.fact.fact.by;
}
