/** The facts of the diary as values. One type for each word; what is not written is undefined. */
import type { ExpressionNode, ReferenceNode, Span } from "../../../grammar/syntax.ts";
import type { CONDITIONS, DECISIONS, METHODS } from "../../../grammar/vocabulary/words.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import type { Money } from "../../quantities/money.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import type { Counted, DefinitionRecord, Lock } from "./definition-record.ts";

export type Condition = (typeof CONDITIONS)[number];
export type Decision = (typeof DECISIONS)[number];
export type Method = (typeof METHODS)[number];

type Refs = readonly ReferenceNode[];

interface What {
  readonly what: Refs;
}

interface FactPayloads {
  removed: What & { readonly asUnit: boolean };
  stripped: What;
  fitted: What & {
    readonly forTrial: boolean;
    readonly made: IsoDate | undefined;
    readonly expires: IsoDate | undefined;
    readonly batch: string | undefined;
  };
  cleaned: What & { readonly method: Method | undefined };
  inspected: What & { readonly method: Method | undefined };
  greased: What;
  serviced: What & { readonly until: IsoDate | undefined };
  changed: { readonly target: ReferenceNode; readonly record: DefinitionRecord };
  found: What & { readonly conditions: readonly { readonly condition: Condition; readonly at: Span }[] };
  measured: {
    readonly target: ReferenceNode;
    /** Undefined where the reference ends in the characteristic's name. */
    readonly name: string | undefined;
    readonly readings: readonly Quantity[];
    /** Where the readings stand. */
    readonly readingsAt: Span;
    readonly uncertainty: Quantity | undefined;
    readonly spot: string | undefined;
    readonly setup: ReferenceNode | undefined;
    readonly gauge: ReferenceNode | undefined;
  };
  decided: { readonly items: readonly Counted[]; readonly decision: Decision };
  tagged: What & { readonly tag: string };
  identified: {
    readonly target: ReferenceNode;
    readonly as: string;
    readonly from: ReferenceNode | undefined;
  };
  sent: What & {
    readonly to: ReferenceNode;
    readonly work: string | undefined;
    readonly due: IsoDate | undefined;
    readonly cost: Money | undefined;
  };
  back: What & { readonly cost: Money | undefined };
  ordered: {
    readonly items: readonly Counted[];
    readonly from: ReferenceNode | undefined;
    readonly due: IsoDate | undefined;
    readonly order: string | undefined;
  };
  received: {
    readonly items: readonly Counted[];
    readonly order: string | undefined;
    readonly orderAt: Span | undefined;
  };
  rejected: { readonly items: readonly Counted[] };
  returned: {
    readonly items: readonly Counted[];
    readonly to: ReferenceNode;
    readonly credit: Money | undefined;
  };
  bought: {
    readonly items: readonly Counted[];
    readonly from: ReferenceNode | undefined;
    readonly price: Money | undefined;
  };
  made: What;
  reconditioned: What;
  repaired: What;
  used: { readonly items: readonly Counted[]; readonly on: ReferenceNode | undefined };
  counted: { readonly items: readonly Counted[] };
  nipped: What;
  torqued: What & {
    readonly torque: Quantity;
    readonly torqueAt: Span;
    readonly then: Quantity | undefined;
    readonly newHardware: boolean;
    readonly gauge: ReferenceNode | undefined;
  };
  tightened: What;
  rechecked: What & {
    readonly torque: Quantity | undefined;
    readonly moved: boolean;
    readonly gauge: ReferenceNode | undefined;
  };
  locked: What & { readonly lock: Lock | undefined };
  marked: What;
  loosened: What;
  opened: What;
  drained: What;
  filled: What & { readonly volume: Quantity | undefined; readonly fluid: string | undefined };
  bled: What;
  proved: What & { readonly pressure: Quantity | undefined; readonly time: Quantity | undefined };
  set: {
    readonly target: ReferenceNode;
    readonly name: string | undefined;
    readonly value: Quantity;
    readonly each: boolean;
    readonly setup: ReferenceNode | undefined;
    readonly gauge: ReferenceNode | undefined;
  };
  tested: What & {
    readonly name: string | undefined;
    readonly nameAt: Span | undefined;
    readonly pass: boolean;
  };
  seen: What;
  ran: {
    readonly target: ReferenceNode;
    readonly hours: Decimal | undefined;
    readonly distance: Quantity | undefined;
    readonly runs: Decimal | undefined;
  };
  started: What;
  worked: { readonly hours: Decimal; readonly on: ReferenceNode };
  done: What;
  spent: { readonly money: Money; readonly on: ReferenceNode | undefined };
  calibrated: What & { readonly valid: Quantity | undefined; readonly supplier: ReferenceNode | undefined };
  snag: { readonly name: string; readonly on: ReferenceNode };
  cleared: { readonly name: string };
  conceded: { readonly name: string; readonly until: ReferenceNode };
  photo: { readonly path: string; readonly pathAt: Span; readonly of: Refs };
  released: What;
  calc: { readonly name: string; readonly expression: ExpressionNode };
}

export type FactWord = keyof FactPayloads;

/** A fact of a day block: what happened, by whom, with its note, and where it stands in its block. */
export type FactOf<W extends FactWord> = {
  [Word in W]: {
    readonly word: Word;
    readonly at: Span;
    readonly by: string | undefined;
    readonly note: string | undefined;
  } & FactPayloads[Word];
}[W];

export type LoweredFact = FactOf<FactWord>;
