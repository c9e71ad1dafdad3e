/** What each finding knows, by its code: the figures and names that its message is made of. */
import type { SyntaxFaultCode } from "../../grammar/syntax.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Quantity } from "../quantities/quantity.ts";
import type { LoweringFaultCode } from "./lowering/fault.ts";
import type { TreeKind } from "./tree/node.ts";

/** What is wrong with the text itself, whichever the code. */
export interface TextFaultData {
  readonly found: string;
  readonly expected: string;
  readonly reason: string | undefined;
}

type TextFaults = { readonly [C in SyntaxFaultCode | LoweringFaultCode]: TextFaultData };

/** A reading against one of its limits. */
export interface LimitData {
  readonly what: string;
  readonly characteristic: string;
  readonly reading: Quantity;
  readonly limit: Quantity;
  readonly side: "lower" | "upper";
  /** How far beyond, or how much is left: not negative. */
  readonly by: Quantity;
  readonly uncertainty: Quantity | undefined;
  /** Of several readings, how many and how far apart. */
  readonly readings: number;
  readonly spread: Quantity | undefined;
}

export interface FindingData extends TextFaults {
  // notation
  "duplicate-name": { readonly what: string; readonly name: string };
  "unknown-reference": { readonly text: string; readonly kind: string; readonly nearest: readonly string[] };
  "ambiguous-reference": { readonly text: string; readonly candidates: readonly string[] };
  "reference-kind": { readonly text: string; readonly kind: string; readonly wanted: string };
  "like-cycle": { readonly paths: readonly string[] };
  "like-points-back": { readonly copy: string; readonly target: string };
  "no-vehicle": Record<never, never>;
  "second-vehicle": { readonly name: string; readonly first: string };
  "photo-not-found": { readonly path: string };
  "unknown-function": { readonly name: string; readonly nearest: readonly string[] };
  "out-of-range-argument": { readonly message: string };
  "calc-cycle": { readonly names: readonly string[] };
  "after-cycle": { readonly names: readonly string[] };
  // order of things
  "day-order": { readonly date: IsoDate; readonly before: IsoDate };
  "future-day": { readonly date: IsoDate; readonly today: IsoDate };
  "hours-over-day": { readonly booked: string; readonly day: string };
  "removed-twice": { readonly what: string; readonly place: string };
  "fitted-twice": { readonly what: string };
  "fitted-while-away": { readonly what: string; readonly supplier: string };
  "fitted-not-in-hand": {
    readonly what: string;
    readonly needed: number;
    readonly inHand: number;
    readonly decision: string;
  };
  "single-use-refitted": { readonly what: string };
  "fitted-condemned": { readonly what: string; readonly why: string };
  "fitted-not-inspected": { readonly what: string };
  "received-over-order": { readonly what: string; readonly received: number; readonly open: number };
  "seen-by-same": { readonly what: string; readonly by: string };
  "tightened-by-feel": { readonly joint: string };
  "self-locking-reused": { readonly joint: string };
  "done-before-started": { readonly job: string };
  "back-never-sent": { readonly what: string };
  "torqued-before-fitted": { readonly joint: string; readonly part: string; readonly place: string };
  "marked-before-torqued": { readonly joint: string; readonly state: string };
  "locked-before-torqued": { readonly joint: string; readonly state: string; readonly lock: string };
  // limits and measurements
  "over-limit": LimitData;
  "under-limit": LimitData;
  "limit-uncertain": LimitData;
  "near-limit": LimitData & { readonly zone: Quantity; readonly shareLeft: number };
  "measured-without-limit": {
    readonly what: string;
    readonly characteristic: string;
    readonly known: readonly string[];
  };
  "wear-rate": {
    readonly characteristic: string;
    readonly rate: string;
    readonly left: string;
    readonly limit: Quantity;
  };
  "fit-out-of-range": {
    readonly what: string;
    readonly other: string;
    readonly sense: "clearance" | "interference";
    readonly actual: Quantity;
    readonly limit: Quantity;
    readonly side: "lower" | "upper";
    readonly by: Quantity;
    readonly proven: boolean;
  };
  "pair-differs": {
    readonly what: string;
    readonly other: string;
    readonly difference: string;
    readonly allowed: string;
    readonly proven: boolean;
  };
  "gauge-out-of-date": { readonly gauge: string; readonly good: IsoDate; readonly used: IsoDate };
  "gauge-out-of-range": { readonly gauge: string; readonly reading: Quantity; readonly range: string };
  "gauge-too-coarse": {
    readonly gauge: string;
    readonly uncertainty: Quantity;
    readonly zone: Quantity;
    readonly ratio: number;
  };
  "gauge-in-doubt": { readonly gauge: string; readonly good: IsoDate | undefined; readonly found: string };
  "implausible-value": {
    readonly characteristic: string;
    readonly reading: Quantity;
    readonly nominal: Quantity;
    readonly factor: number;
  };
  "fitted-out-of-limit": {
    readonly what: string;
    readonly characteristic: string;
    readonly reading: Quantity;
    readonly limit: Quantity;
  };
  "limit-not-measured": {
    readonly what: string;
    readonly characteristic: string;
    readonly hold: string | undefined;
  };
  "setting-out-of-range": LimitData;
  // joints
  "bolt-too-short": {
    readonly joint: string;
    /** Past the nut, or into the tapped hole. */
    readonly into: "nut" | "hole";
    readonly reach: Quantity;
    readonly needed: Quantity;
    readonly why: string;
  };
  "torque-outside": LimitData & { readonly gaugeDoubt: boolean };
  "torque-over-proof": {
    readonly joint: string;
    readonly torque: Quantity;
    readonly percent: number;
    readonly strength: string;
    readonly friction: string;
    readonly over: boolean;
  };
}

/** Kinds in words for messages about references. */
export function kindInWords(kinds: readonly TreeKind[]): string {
  const named = kinds.filter((kind) => kind !== "assembly" && kind !== "vehicle");
  return (named.length === 0 ? kinds : named).map((kind) => `a ${kind}`).join(" or ");
}
