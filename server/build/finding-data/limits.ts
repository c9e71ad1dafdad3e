import type { IsoDate } from "../../quantities/dates.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import type { Condition, FactOf } from "../lowering/fact.ts";

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

/** What readings, gauges and settings say. */
export interface LimitFindings {
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
    /** Change by hour of running or by day, with its sign. */
    readonly rate: Quantity;
    readonly over: "h" | "d";
    readonly left: Quantity;
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
    /** Of both readings, combined. */
    readonly uncertainty: Quantity | undefined;
    /** False where the uncertainty leaves it open. */
    readonly proven: boolean;
  };
  "pair-differs": {
    readonly what: string;
    readonly other: string;
    readonly difference: Quantity;
    readonly allowed: Quantity;
    /** As it was written: absolute, or a share of the larger one. */
    readonly within: Quantity;
    readonly uncertainty: Quantity | undefined;
    readonly proven: boolean;
  };
  "gauge-out-of-date": { readonly gauge: string; readonly good: IsoDate; readonly used: IsoDate };
  "gauge-out-of-range": { readonly gauge: string; readonly reading: Quantity; readonly range: string };
  "gauge-too-coarse":
    | {
        readonly is: "coarse for a limit" | "coarse for a torque";
        readonly gauge: string;
        readonly uncertainty: Quantity;
        readonly zone: Quantity;
        /** Uncertainty over zone. */
        readonly ratio: number;
        /** The greatest ratio that passes without a word. */
        readonly most: number;
      }
    | {
        readonly is: "low in its range";
        readonly gauge: string;
        readonly reading: Quantity;
        readonly greatest: Quantity;
        /** Reading over the greatest that it reads. */
        readonly ratio: number;
        readonly least: number;
      };
  "gauge-in-doubt": {
    readonly gauge: string;
    readonly good: IsoDate | undefined;
    readonly found: Condition;
    readonly on: IsoDate;
  };
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
    /** The fact that gave the reading: a newer one may answer it. */
    readonly measured: FactOf<"measured">;
  };
  "limit-not-measured": {
    readonly what: string;
    readonly characteristic: string;
    /** Of a part whose failure can hurt. */
    readonly critical: boolean;
    /** What leans on it: that it ran, a release, or a hold point that is near. */
    readonly leans: "ran" | "released" | "planned";
    readonly hold: string | undefined;
  };
  "setting-out-of-range": LimitData;
}
