/** What a joint still wants until it is secured. */
import type { TorqueFault } from "./finding-data/joints.ts";
import type { JointFault } from "./joint-faults.ts";
import type { LockLack } from "./joint-lock.ts";
import type { DueRecheck } from "./joint-recheck.ts";
import type { Place } from "./source.ts";
import type { DatedFact } from "./states.ts";

/** One thing that a joint still wants. The code is that of the rule that says it, where there is one. */
export type Wanting = {
  /** The line that made it due, else the record that asks for it. */
  readonly place: Place | undefined;
  /** The fact that made it due; undefined where none did. */
  readonly since: DatedFact | undefined;
} /** As found, on a vehicle whose past is unknown. */ & (
  | { readonly code: "joint-unproven" | "joint-open" | "mark-missing" | "not-seen" | "seen-by-same" }
  /** Run up, brought to a stage of its torque, or found to have moved: the final torque is still to come. */
  | { readonly code: "joint-nipped"; readonly by: "nipped" | "torqued" | "rechecked" }
  | { readonly code: "part-on-trial" | "torqued-before-fitted"; readonly part: string }
  | { readonly code: "torque-outside"; readonly fault: TorqueFault }
  /** Done by feel, though it has a torque or can hurt. */
  | { readonly code: "tightened-by-feel" }
  | { readonly code: "gauge-out-of-date" | "gauge-out-of-range"; readonly gauge: string }
  /** Not measured since it was open, or measured and not within its limit. */
  | {
      readonly code: "joint-not-set";
      readonly what: string;
      readonly verdict: "none" | "no limit" | "outside" | "uncertain";
    }
  | { readonly code: "lock-missing"; readonly lack: LockLack }
  | { readonly code: "recheck-due"; readonly recheck: DueRecheck }
  | { readonly code: "self-locking-reused" | "single-use-refitted" }
  | { readonly code: "joint-wrong"; readonly fault: JointFault }
);
