import type { Quantity } from "../../quantities/quantity.ts";
import type { LimitData } from "./limits.ts";

/** What is wrong with fastened joints. */
export interface JointFindings {
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
