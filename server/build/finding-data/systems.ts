import type { IsoDate } from "../../quantities/dates.ts";
import type { Quantity } from "../../quantities/quantity.ts";

/** Why a proof of a system is none. */
export type ProofComplaint =
  | { readonly why: "open" }
  | { readonly why: "joint"; readonly joint: string; readonly lacks: readonly string[] }
  | { readonly why: "pressure" | "time"; readonly proved: Quantity; readonly asked: Quantity };

/** What is wrong with fluid systems and circuits. */
export interface SystemFindings {
  "opened-not-bled": {
    readonly system: string;
    readonly opened: IsoDate;
    readonly lacks: "fluid" | "bleeding";
    /** The system asks to be bled; else filling it is enough. */
    readonly asksBleeding: boolean;
  };
  "proved-while-open": { readonly system: string } & ProofComplaint;
  "not-proved": {
    readonly system: string;
    readonly opened: IsoDate;
    readonly pressure: Quantity;
    readonly time: Quantity | undefined;
  };
  "wrong-fluid": { readonly system: string; readonly asked: string; readonly filled: string };
  overfilled: { readonly system: string; readonly volume: Quantity; readonly capacity: Quantity };
  "fluid-change-due": {
    readonly system: string;
    readonly fluid: string | undefined;
    readonly every: Quantity;
    /** Undefined where it was never filled in the log. */
    readonly filled: IsoDate | undefined;
    readonly due: IsoDate | undefined;
  };
  "fuse-over-wire": {
    readonly circuit: string;
    readonly fuse: Quantity;
    readonly wire: string;
    readonly carries: Quantity;
  };
  "fuse-under-load": {
    readonly circuit: string;
    readonly fuse: Quantity;
    readonly load: Quantity;
    /** Load over fuse. */
    readonly share: number;
    /** The greatest share that passes. */
    readonly most: number;
  };
  "voltage-drop": {
    readonly circuit: string;
    readonly drop: Quantity;
    readonly share: Quantity | undefined;
    readonly limit: Quantity;
    readonly load: Quantity;
    readonly back: "wire" | "frame";
  };
  "circuit-untested": { readonly circuit: string; readonly why: "never" | "failed" | "disturbed" };
}
