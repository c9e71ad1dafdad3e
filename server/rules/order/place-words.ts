/** Where a part is and how far a joint is, in words. */
import type { JointStage, PartPlace } from "../../build/states.ts";

export const PLACES: Readonly<Record<PartPlace | "missing", string>> = {
  on: "on",
  trial: "on for trial",
  off: "off",
  away: "away",
  shelf: "on the shelf",
  gone: "gone",
  missing: "missing",
};

export const STAGES: Readonly<Record<JointStage, string>> = {
  as_found: "as found",
  open: "open",
  nipped: "only nipped",
  torqued: "torqued",
  locked: "locked",
  marked: "marked",
};
