import type { IsoDate } from "../../quantities/dates.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import type { Lock } from "../lowering/definition-record.ts";
import type { Condition, Decision } from "../lowering/fact.ts";

/** What cannot have happened, or not in that order. */
export interface OrderFindings {
  "day-order": { readonly date: IsoDate; readonly before: IsoDate };
  "future-day": { readonly date: IsoDate; readonly today: IsoDate };
  "hours-over-day":
    | {
        readonly is: "booked";
        readonly booked: Quantity;
        readonly day: Quantity;
        /** Pairs of hands, each of which has the day's hours. */
        readonly hands: number;
      }
    | { readonly is: "too long"; readonly day: Quantity };
  "removed-twice": { readonly what: string; readonly place: string };
  "fitted-twice": { readonly what: string };
  "fitted-while-away": { readonly what: string; readonly supplier: string };
  "fitted-not-in-hand": {
    readonly what: string;
    readonly needed: number;
    readonly inHand: number;
    readonly decision: string;
  };
  "fitted-condemned": { readonly what: string; readonly why: Condition | Decision };
  "fitted-not-inspected": { readonly what: string };
  "received-over-order": { readonly what: string; readonly received: number; readonly open: number };
  "seen-by-same": { readonly what: string; readonly by: string };
  "done-before-started": { readonly job: string };
  "back-never-sent": { readonly what: string };
  "torqued-before-fitted": {
    readonly joint: string;
    readonly part: string;
    readonly place: string;
  };
  "marked-before-torqued": { readonly joint: string; readonly state: string };
  "locked-before-torqued": { readonly joint: string; readonly state: string; readonly lock: Lock };
}
