import type { Limits } from "../../quantities/limits.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import type { Lock } from "../lowering/definition-record.ts";

interface OfJoint {
  /** Its path. */
  readonly joint: string;
}

/** A job that must be started, or a hold point that must be released, before the final tightening. */
export interface Awaited {
  readonly kind: "job" | "hold";
  readonly name: string;
}

/** Why a torque from the strength class is not to be trusted. */
export type FromClassDoubt =
  | { readonly is: "critical" }
  | { readonly is: "stainless" | "titanium" }
  | { readonly is: "soft thread" | "soft part"; readonly material: string }
  | { readonly is: "pivot" | "bearing" | "banjo" };

/** What is wrong with a figure that a joint was tightened or checked to. */
export type TorqueFault =
  | {
      readonly is: "outside";
      readonly of: "torque" | "angle";
      readonly reading: Quantity;
      readonly limits: Limits;
      readonly limit: Quantity;
      readonly side: "lower" | "upper";
      readonly by: Quantity;
    }
  /** Within as read, but the wrench's uncertainty reaches beyond the limit. */
  | {
      readonly is: "doubtful";
      readonly reading: Quantity;
      readonly uncertainty: Quantity;
      readonly limit: Quantity;
      readonly side: "lower" | "upper";
    }
  | { readonly is: "angle missing"; readonly angle: Quantity }
  | { readonly is: "angle unasked"; readonly angle: Quantity };

/** What is wrong with fastened joints. */
export interface JointFindings {
  "bolt-too-short": OfJoint &
    (
      | {
          readonly into: "nut";
          readonly past: Quantity;
          readonly pitches: number;
          readonly needed: Quantity;
          readonly neededPitches: number;
          /** False where the nut's height is that of the standard. */
          readonly heightStated: boolean;
          /** True of a stud: at most so much. */
          readonly atMost: boolean;
        }
      | {
          readonly into: "hole";
          readonly reach: Quantity;
          readonly needed: Quantity;
          readonly short: Quantity;
          readonly why: string;
        }
    );
  "bolt-too-long": OfJoint &
    (
      | { readonly into: "hole"; readonly reach: Quantity; readonly depth: Quantity; readonly by: Quantity }
      | { readonly into: "nut"; readonly past: Quantity; readonly pitches: number; readonly most: number }
    );
  "engagement-short": OfJoint &
    (
      | { readonly is: "hole"; readonly depth: Quantity; readonly needed: Quantity; readonly why: string }
      | {
          readonly is: "nut";
          readonly height: Quantity;
          readonly needed: Quantity;
          /** Height over diameter. */
          readonly share: number;
          readonly thin: boolean;
        }
      | { readonly is: "insert"; readonly material: string }
    );
  threadbound: OfJoint & {
    readonly shank: Quantity;
    readonly clamped: Quantity;
    readonly by: Quantity;
    /** By which the shank was reckoned; undefined where the length of thread is stated. */
    readonly standard: string | undefined;
  };
  "hand-differs": OfJoint & { readonly bolt: string; readonly nut: string };
  "mixed-thread": OfJoint & { readonly bolt: string; readonly nut: string };
  "class-mismatch": OfJoint & { readonly bolt: string; readonly nut: string; readonly needed: string };
  "torque-outside": OfJoint & { readonly fault: TorqueFault };
  "torque-over-proof": OfJoint & {
    readonly torque: Quantity;
    readonly percent: number;
    readonly strength: string;
    readonly friction: string;
    readonly over: boolean;
  };
  "torque-low-preload": OfJoint & {
    readonly torque: Quantity;
    readonly percent: number;
    readonly strength: string;
    readonly friction: string;
    /** True where even the top of the torque at the lowest friction comes to no more. */
    readonly atMost: boolean;
  };
  "torque-not-stated": OfJoint &
    (
      | { readonly is: "nothing" }
      | { readonly is: "from class"; readonly doubt: FromClassDoubt }
      | { readonly is: "not computed"; readonly missing: "bolt" | "class" | "friction" }
    );
  "torqued-too-soon": OfJoint & { readonly awaited: Awaited };
  "final-torque-waiting": OfJoint & {
    /** `unset`: it is set by a measurement, which was not taken. */
    readonly state: "open" | "nipped" | "stage" | "moved" | "unset";
    /** What is still waited for; undefined where nothing is. */
    readonly awaited: Awaited | undefined;
    /** True where something leans on the joint as it is. */
    readonly due: boolean;
  };
  "tightened-by-feel": OfJoint & {
    /** The joint has a torque, which nothing shows to have been reached. */
    readonly torqueStated: boolean;
  };
  "friction-assumed": OfJoint & { readonly friction: string };
  "self-locking-reused": OfJoint;
  "single-use-refitted": {
    /** The part that is never refitted. */
    readonly what: string;
    /** The joint that spends it, where it is hardware of one. */
    readonly joint: string | undefined;
    readonly needed: number;
    readonly inHand: number;
  };
  "lock-missing": OfJoint & { readonly lock: Lock } & (
      | { readonly is: "not locked" }
      | { readonly is: "another"; readonly found: Lock }
      /** Threadlocker that did not go on with the final torque. */
      | { readonly is: "another day" }
      /** Threadlocker on threads that it cannot hold on. */
      | { readonly is: "greasy"; readonly friction: string }
    );
  "mark-missing": OfJoint;
  "not-seen": { readonly what: string };
  "recheck-due": OfJoint & {
    readonly ran: Quantity;
    readonly due: Quantity;
    /** True where it has been checked before. */
    readonly again: boolean;
  };
}
