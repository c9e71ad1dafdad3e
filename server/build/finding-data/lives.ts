import type { IsoDate } from "../../quantities/dates.ts";
import type { Quantity } from "../../quantities/quantity.ts";

/** What is wrong with lifed items. */
export interface LifeFindings {
  "life-expired":
    | { readonly is: "date"; readonly what: string; readonly ends: IsoDate; readonly today: IsoDate }
    | {
        readonly is: "running";
        readonly what: string;
        readonly used: Quantity;
        readonly amount: Quantity;
      };
  "life-ends-soon": {
    readonly what: string;
    readonly ends: IsoDate;
    readonly hold: string;
    readonly title: string | undefined;
    readonly planned: IsoDate;
  };
  "service-due": {
    readonly what: string;
    readonly every: Quantity;
    /** Undefined where nobody knows. */
    readonly serviced: IsoDate | undefined;
    readonly due: IsoDate | undefined;
  };
  "no-made-date": {
    readonly what: string;
    readonly counted: "made" | "fitted";
    readonly life: Quantity;
  };
}
