import type { Rule } from "../rule.ts";
import { boltTooLong } from "./bolt-too-long.ts";
import { boltTooShort } from "./bolt-too-short.ts";
import { classMismatch } from "./class-mismatch.ts";
import { engagementShort } from "./engagement-short.ts";
import { finalTorqueWaiting } from "./final-torque-waiting.ts";
import { frictionAssumed } from "./friction-assumed.ts";
import { handDiffers } from "./hand-differs.ts";
import { lockMissing } from "./lock-missing.ts";
import { markMissing } from "./mark-missing.ts";
import { mixedThread } from "./mixed-thread.ts";
import { recheckDue } from "./recheck-due.ts";
import { selfLockingReused } from "./self-locking-reused.ts";
import { singleUseRefitted } from "./single-use-refitted.ts";
import { threadbound } from "./threadbound.ts";
import { tightenedByFeel } from "./tightened-by-feel.ts";
import { torqueLowPreload } from "./torque-low-preload.ts";
import { torqueNotStated } from "./torque-not-stated.ts";
import { torqueOutside } from "./torque-outside.ts";
import { torqueOverProof } from "./torque-over-proof.ts";
import { torquedTooSoon } from "./torqued-too-soon.ts";

export const jointRules: readonly Rule[] = [
  boltTooShort,
  boltTooLong,
  engagementShort,
  threadbound,
  handDiffers,
  mixedThread,
  classMismatch,
  torqueOutside,
  torqueOverProof,
  torqueLowPreload,
  torqueNotStated,
  tightenedByFeel,
  frictionAssumed,
  torquedTooSoon,
  finalTorqueWaiting,
  selfLockingReused,
  singleUseRefitted,
  lockMissing,
  markMissing,
  recheckDue,
];
