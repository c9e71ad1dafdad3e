/** What a joint still wants, in a few words that follow its name. */
import { formatQuantity } from "../quantities/quantity.ts";
import type { TorqueFault } from "./finding-data/joints.ts";
import type { LockLack } from "./joint-lock.ts";
import type { Wanting } from "./wanting.ts";

export function sayWanting(wanting: Wanting): string {
  switch (wanting.code) {
    case "joint-unproven":
      return "as found, its past unknown";
    case "joint-open":
      return wanting.since === undefined ? "open" : `open since ${wanting.since.date}`;
    case "joint-nipped":
      return NIPPED[wanting.by];
    case "part-on-trial":
      return `${wanting.part} is on for trial only`;
    case "torqued-before-fitted":
      return `tightened without ${wanting.part}`;
    case "torque-outside":
      return sayTorqueFault(wanting.fault);
    case "tightened-by-feel":
      return "tightened by feel";
    case "gauge-out-of-date":
      return `torqued with ${wanting.gauge}, out of date`;
    case "gauge-out-of-range":
      return `torqued with ${wanting.gauge}, out of its range`;
    case "joint-not-set":
      return `${wanting.what} ${UNSET[wanting.verdict]}`;
    case "lock-missing":
      return sayLockLack(wanting.lack);
    case "mark-missing":
      return "no witness mark";
    case "not-seen":
      return "not seen by a second pair of eyes";
    case "seen-by-same":
      return "seen by the one who did it";
    case "recheck-due":
      return `to be checked after ${formatQuantity(wanting.recheck.due)}, ran ${formatQuantity(wanting.recheck.ran)}`;
    case "self-locking-reused":
      return "self-locking nut used again";
    case "single-use-refitted":
      return "single-use hardware used again";
    case "joint-wrong":
      return WRONG[wanting.fault.code];
  }
}

const NIPPED = {
  nipped: "only nipped",
  torqued: "brought to a stage of its torque, not to the end",
  rechecked: "moved when it was checked",
} as const;

const UNSET = {
  none: "is not measured",
  "no limit": "has no limit to judge it by",
  outside: "is outside its limit",
  uncertain: "is not proved within its limit",
} as const;

const WRONG: Readonly<Record<Extract<Wanting, { code: "joint-wrong" }>["fault"]["code"], string>> = {
  "bolt-too-short": "bolt too short",
  "bolt-too-long": "bolt too long for its hole",
  "engagement-short": "too little thread to hold",
  threadbound: "bolt runs out of thread before it clamps",
  "hand-differs": "left-hand and right-hand thread",
  "mixed-thread": "threads that do not go together",
  "class-mismatch": "nut of a lower class than the bolt",
  "torque-over-proof": "torque over what the bolt bears",
  "torque-low-preload": "torque too low to clamp",
  "torque-not-stated": "torque from class where that does not hold",
  "friction-assumed": "friction not stated",
  "lock-missing": "threadlocker on greasy threads",
};

function sayLockLack(lack: LockLack): string {
  const asked = lack.lock.replace("_", " ");
  switch (lack.is) {
    case "not locked":
      return `no ${asked}`;
    case "another":
      return `locked with ${lack.found.replace("_", " ")}, not with ${asked}`;
    case "another day":
      return `${asked} not on the day of the torque`;
  }
}

function sayTorqueFault(fault: TorqueFault): string {
  switch (fault.is) {
    case "outside": {
      const side = fault.side === "upper" ? "over" : "under";
      return `${fault.of} ${formatQuantity(fault.reading)}, ${side} ${formatQuantity(fault.limit)}`;
    }
    case "doubtful":
      return `torque ${formatQuantity(fault.reading)}, in doubt`;
    case "angle missing":
      return `the ${formatQuantity(fault.angle)} behind the torque are not written`;
    case "angle unasked":
      return `turned ${formatQuantity(fault.angle)} further, which nothing asks for`;
  }
}
