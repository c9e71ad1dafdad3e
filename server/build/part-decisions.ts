/** What was decided about the pieces of a part, and what of it stands when more is decided. */
import type { Decision } from "./lowering/fact.ts";
import type { DatedFact, PartDecision } from "./states.ts";

/** Decisions after which another one goes on. */
const REPLACED: ReadonlySet<Decision> = new Set(["renew", "make", "scrap"]);
/** Decisions that work on the old one carries out, here or elsewhere. */
const WORKED_ON: ReadonlySet<Decision> = new Set(["recondition", "repair", "modify"]);

/**
 * The decisions that stand once one more is made: the newest is about as many pieces as it says, each older one about
 * those that are left of the whole.
 *
 * @param whole how many pieces there are
 */
export function decisionsWith(
  before: readonly PartDecision[],
  next: PartDecision,
  whole: number,
): readonly PartDecision[] {
  let left = whole - next.count;
  const standing = [next];
  for (const older of [...before].reverse()) {
    if (left <= 0) break;
    if (older.settled !== undefined) continue;
    const count = Math.min(older.count, left);
    standing.unshift({ ...older, count });
    left -= count;
  }
  return standing;
}

/** The one that says most about the part: the newest that still asks for something, else the newest. */
export function leadingDecision(decisions: readonly PartDecision[]): PartDecision | undefined {
  return decisions.findLast(asks) ?? decisions.at(-1);
}

function asks({ decision, settled }: PartDecision): boolean {
  return settled === undefined && (REPLACED.has(decision) || WORKED_ON.has(decision));
}

/** How many pieces are to be replaced by others; undefined where none is. */
export function toBeReplaced(decisions: readonly PartDecision[]): number | undefined {
  const bought = sumOf(decisions, ["renew", "make"]);
  const replaced = bought > 0 ? bought : sumOf(decisions, ["scrap"]);
  return replaced > 0 ? replaced : undefined;
}

/** How many pieces are to be reconditioned; undefined where none is. */
export function toBeReconditioned(decisions: readonly PartDecision[]): number | undefined {
  const sum = sumOf(decisions, ["recondition"]);
  return sum > 0 ? sum : undefined;
}

function sumOf(decisions: readonly PartDecision[], kinds: readonly Decision[]): number {
  return decisions.reduce(
    (sum, { decision, count, settled }) =>
      settled === undefined && kinds.includes(decision) ? sum + count : sum,
    0,
  );
}

/** How decisions are carried out: another one was fitted, the old one went back, or was worked on. */
export type CarriedOut = "another fitted" | "old one fitted" | "worked on";

const ANSWERED: Readonly<Record<CarriedOut, ReadonlySet<Decision>>> = {
  "another fitted": new Set(["reuse", "recondition", "repair", "renew", "make", "modify", "scrap"]),
  "old one fitted": new Set(["reuse", "modify"]),
  "worked on": WORKED_ON,
};

/** The decisions once a fact has carried out those that it answers. */
export function settledBy(
  decisions: readonly PartDecision[],
  how: CarriedOut,
  fact: DatedFact,
): readonly PartDecision[] {
  return decisions.map((decision) =>
    decision.settled === undefined && ANSWERED[how].has(decision.decision)
      ? { ...decision, settled: fact }
      : decision,
  );
}

/** Whether the old one was meant to go on: nothing was decided that replaces it, and something was that keeps it. */
export function keepsTheOld(decisions: readonly PartDecision[]): boolean {
  const last = decisions.at(-1);
  return last !== undefined && last.settled === undefined && !REPLACED.has(last.decision);
}
