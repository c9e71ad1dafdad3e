/** What each finding knows, by its code: the figures and names that its message is made of. */
import { withArticle } from "../../grammar/article.ts";
import type { SyntaxFaultCode } from "../../grammar/syntax.ts";
import type { CareFindings } from "./finding-data/care.ts";
import type { HoldFindings } from "./finding-data/holds.ts";
import type { JointFindings } from "./finding-data/joints.ts";
import type { LimitFindings } from "./finding-data/limits.ts";
import type { LifeFindings } from "./finding-data/lives.ts";
import type { NotationFindings } from "./finding-data/notation.ts";
import type { OrderFindings } from "./finding-data/order.ts";
import type { SupplyFindings } from "./finding-data/supply.ts";
import type { SystemFindings } from "./finding-data/systems.ts";
import type { LoweringFaultCode } from "./lowering/fault.ts";
import type { TreeKind } from "./tree/node.ts";

/** What is wrong with the text itself, whichever the code. */
export interface TextFaultData {
  readonly found: string;
  readonly expected: string;
  readonly reason: string | undefined;
}

type TextFaults = { readonly [C in SyntaxFaultCode | LoweringFaultCode]: TextFaultData };

export interface FindingData
  extends TextFaults,
    NotationFindings,
    OrderFindings,
    LimitFindings,
    JointFindings,
    SystemFindings,
    HoldFindings,
    LifeFindings,
    CareFindings,
    SupplyFindings {}

/** Kinds in words for messages about references. */
export function kindInWords(kinds: readonly TreeKind[]): string {
  const named = kinds.filter((kind) => kind !== "assembly" && kind !== "vehicle");
  return (named.length === 0 ? kinds : named).map(withArticle).join(" or ");
}
