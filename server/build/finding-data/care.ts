import type { CautionKind } from "../cautions.ts";

/** Where work can hurt, or can weaken what must not fail. */
export interface CareFindings {
  "safety-caution": { readonly kind: CautionKind; readonly what: string };
  "safety-weld": { readonly what: readonly string[]; readonly work: string };
  "inspection-method":
    | {
        /** The method finds nothing in that material. */
        readonly is: "material";
        readonly what: readonly string[];
        readonly method: string;
        readonly material: string;
      }
    | {
        /** What was done to the face closes the cracks that the method looks for. */
        readonly is: "face";
        readonly what: readonly string[];
        readonly method: string;
        readonly face: "blasted" | "painted";
      };
  embrittlement: {
    readonly what: readonly string[];
    readonly work: string;
    /** A spring or a class 12.9 fastener on something whose failure can hurt. */
    readonly forbidden: boolean;
  };
}
