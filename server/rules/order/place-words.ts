/** Where a part is and how far a joint is, in words. */
import type { JointStage, PartPlace } from "../../build/states.ts";

const PLACES: Readonly<Record<PartPlace | "missing", string>> = {
  on: "on",
  trial: "on for trial",
  off: "off",
  away: "away",
  shelf: "on the shelf",
  gone: "gone",
  missing: "missing",
};

const STAGES: Readonly<Record<JointStage, string>> = {
  as_found: "as found",
  open: "open",
  nipped: "only nipped",
  torqued: "torqued",
  locked: "locked",
  marked: "marked",
};

export function sayPlace(place: string): string {
  return place in PLACES ? PLACES[place as PartPlace] : place;
}

export function sayStage(stage: string): string {
  return stage in STAGES ? STAGES[stage as JointStage] : stage;
}
