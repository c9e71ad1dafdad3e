/** What has become of each thing, as the diary tells it: derived once for each build, with the facts it came from. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import type { Money } from "../quantities/money.ts";
import type { Quantity } from "../quantities/quantity.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { Lock } from "./lowering/definition-record.ts";
import type { Condition, Decision, FactOf, FactWord, Method } from "./lowering/fact.ts";
import type { OpenItem } from "./open-item.ts";
import type { Place } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

/** A fact on its day, in the order in which facts are read. */
export interface DatedFact<W extends FactWord = FactWord> {
  readonly date: IsoDate;
  readonly fact: FactOf<W>;
  readonly place: Place;
  /** Counts up through the whole diary. */
  readonly order: number;
}

/** Running time, distance (m) and runs, added up. */
export interface Running {
  readonly hours: Decimal;
  readonly metres: Decimal;
  readonly runs: Decimal;
}

/** What speaks against a gauge on the day of a reading. */
export type GaugeDoubt =
  | {
      readonly is: "out of range";
      readonly gauge: NamedDefinition;
      readonly reading: Quantity;
      readonly range: string;
    }
  | { readonly is: "out of date"; readonly gauge: NamedDefinition; readonly good: IsoDate };

/** One measurement of one characteristic. */
export interface Reading {
  readonly node: TreeNode;
  readonly name: string;
  readonly values: readonly [Quantity, ...Quantity[]];
  /** Expanded, k = 2; undefined where nothing states it. */
  readonly uncertainty: Quantity | undefined;
  readonly gauge: NamedDefinition | undefined;
  /** The gravest of what spoke against the gauge. */
  readonly doubt: GaugeDoubt | undefined;
  readonly setup: NamedDefinition | undefined;
  readonly fact: DatedFact<"measured">;
  /** Running hours of the item when it was read. */
  readonly hours: Decimal;
}

/** What has happened to an item that bears on whether it may be used, in order. */
export type ItemEvent = { readonly fact: DatedFact } & (
  | { readonly is: "found"; readonly condition: Condition; readonly place: Place }
  | { readonly is: "decided"; readonly decision: Decision }
  | { readonly is: "reconditioned"; readonly kitInHand: boolean }
  | { readonly is: "inspected"; readonly method: Method | undefined }
  | { readonly is: "back" | "repaired" | "measured" | "seen" }
);

export interface Found {
  readonly condition: Condition;
  readonly fact: DatedFact<"found">;
  readonly place: Place;
}

/** Why a part may not go back as it is. */
export interface Condemnation {
  readonly why: Condition | Decision;
  readonly fact: DatedFact;
}

/**
 * One physical item in the place of a part. A new one starts when one from the goods in hand is fitted; readings,
 * hours, findings and age of the old one stay with the old.
 */
export interface Item {
  /** 1 for the one at the start of the log. */
  readonly number: number;
  /** The fact that put it on; undefined of the one at the start, and of a new one that is still in hand. */
  readonly since: DatedFact<"fitted"> | undefined;
  /** True of a new one that was looked at or measured before it was fitted. */
  readonly inHand: boolean;
  readonly made: IsoDate | undefined;
  readonly expires: IsoDate | undefined;
  readonly batch: string | undefined;
  readonly readings: readonly Reading[];
  readonly events: readonly ItemEvent[];
  readonly serviced: DatedFact<"serviced"> | undefined;
  readonly running: Running;
}

export type PartPlace = "on" | "trial" | "off" | "away" | "shelf" | "gone";

export interface PartDecision {
  readonly decision: Decision;
  readonly count: number;
  readonly fact: DatedFact<"decided">;
  /** The fact that carried it out: a new one fitted, the work on it finished. */
  readonly settled: DatedFact | undefined;
}

export interface PartState {
  readonly node: TreeNode;
  readonly place: PartPlace;
  /** The fact that put it there; undefined where it is as at the start. */
  readonly placed: DatedFact | undefined;
  readonly missing: boolean;
  readonly item: Item;
  /** Earlier items in the same place, oldest first. */
  readonly earlier: readonly Item[];
  /** Of the decisions that stand, the one that says most: the newest that still asks for something, else the newest. */
  readonly decision: PartDecision | undefined;
  /** The decisions that stand side by side, oldest first: `2 x` renew and the rest reuse. */
  readonly decisions: readonly PartDecision[];
  readonly sent: DatedFact<"sent"> | undefined;
  /** When what was sent last came back. */
  readonly returned: DatedFact<"back"> | undefined;
  readonly tags: readonly DatedFact<"tagged">[];
}

export type JointStage = "as_found" | "open" | "nipped" | "torqued" | "locked" | "marked";

/** A figure that a joint was tightened or checked to. */
export interface TorqueReading {
  readonly fact: DatedFact<"torqued" | "rechecked">;
  readonly torque: Quantity;
  /** Turned behind the torque; that of the tightening where a check gives none. */
  readonly angle: Quantity | undefined;
  readonly gauge: NamedDefinition | undefined;
  /** What spoke against the gauge on that day. */
  readonly doubts: readonly GaugeDoubt[];
}

/** Untouched since the start; new; or done up again on what had been undone, and whether it may be. */
export type JointHardware =
  | "as found"
  | "new"
  | "used again"
  | "self-locking used again"
  | "single-use used again";

export interface JointLock {
  readonly lock: Lock;
  readonly fact: DatedFact<"locked">;
  /** False for threadlocker that was said on another day than the final torque. */
  readonly holds: boolean;
}

export interface JointState {
  readonly node: TreeNode;
  readonly stage: JointStage;
  /** True where one of its parts was not on at the start of the log: it was open then. */
  readonly apart: boolean;
  /** The fact that opened it last: a removal, a loosening, a part fitted to it. */
  readonly opened: DatedFact | undefined;
  /** The fact that opened it, while it has not been tightened since: its single-use hardware is due. */
  readonly undone: DatedFact | undefined;
  /** Run up and pinched, brought to a stage of its torque, or found to have moved. */
  readonly nipped: DatedFact<"nipped" | "torqued" | "rechecked"> | undefined;
  /** The final tightening that counts, by torque or by feel. */
  readonly tightened: DatedFact<"torqued" | "tightened" | "rechecked"> | undefined;
  /** The newest figure of that tightening; undefined where it was done by feel. */
  readonly reading: TorqueReading | undefined;
  /** A part that was not there when it was tightened. */
  readonly without: TreeNode | undefined;
  readonly locked: JointLock | undefined;
  readonly marked: DatedFact<"marked"> | undefined;
  readonly seen: DatedFact<"seen"> | undefined;
  /** A look by the one who did it, which is none. */
  readonly seenBySame: DatedFact<"seen"> | undefined;
  readonly rechecked: DatedFact<"rechecked" | "torqued" | "tightened"> | undefined;
  /** Running since it was tightened after being open (since the start, as found), and since the last recheck. */
  readonly sinceTightened: Running;
  readonly sinceRechecked: Running;
  /** The running with which its recheck fell due. */
  readonly recheckDue: DatedFact<"ran"> | undefined;
  /** Its nuts, pins and washers, at the last tightening. */
  readonly hardware: JointHardware;
}

export type SystemStage = "as_found" | "open" | "filled" | "bled" | "proved";

export interface SystemState {
  readonly node: TreeNode;
  readonly stage: SystemStage;
  /** The fact that first opened it since it was last closed. */
  readonly opened: DatedFact | undefined;
  /** What was done since it was last opened. */
  readonly filled: DatedFact<"filled"> | undefined;
  readonly bled: DatedFact<"bled"> | undefined;
  readonly proved: DatedFact<"proved"> | undefined;
  /** A proof since it was last opened that is none. */
  readonly refusedProof: DatedFact<"proved"> | undefined;
  /** Emptied since it was last filled. */
  readonly drained: DatedFact<"drained"> | undefined;
  /** The filling from which the age of its fluid counts. */
  readonly freshened: DatedFact<"filled"> | undefined;
}

export interface SettingState {
  readonly node: TreeNode;
  readonly name: string;
  readonly setup: NamedDefinition | undefined;
  readonly value: Quantity;
  readonly each: boolean;
  readonly gauge: NamedDefinition | undefined;
  /** The gravest of what spoke against the gauge. */
  readonly doubt: GaugeDoubt | undefined;
  readonly fact: DatedFact<"set">;
}

/** The newest test of a thing, by name; `undefined` names the thing as a whole. */
export interface TestState {
  readonly name: string | undefined;
  readonly pass: boolean;
  readonly fact: DatedFact<"tested">;
}

export interface SnagState {
  readonly name: string;
  readonly on: TreeNode | undefined;
  readonly fact: DatedFact<"snag">;
  readonly cleared: DatedFact<"cleared"> | undefined;
  readonly conceded: DatedFact<"conceded"> | undefined;
}

export interface JobState {
  readonly definition: NamedDefinition;
  readonly started: DatedFact | undefined;
  readonly done: DatedFact<"done"> | undefined;
  readonly worked: Decimal;
}

/**
 * The end of a release: something that it needed is open again. `fact` is undefined where no fact did that: a life ran
 * out, or a line that could not be read may have.
 */
export interface Lapse {
  readonly fact: DatedFact | undefined;
  readonly date: IsoDate;
  readonly open: readonly OpenItem[];
}

/** The releases that one fact took back, and what it opened. */
export interface LapsedReleases {
  readonly fact: DatedFact;
  readonly holds: readonly NamedDefinition[];
  readonly open: readonly OpenItem[];
}

export interface HoldState {
  readonly definition: NamedDefinition;
  /** The release that was granted last; undefined while there was none. */
  readonly released: DatedFact<"released"> | undefined;
  readonly lapsed: Lapse | undefined;
  /** A release that was refused since, and what was open. */
  readonly refused: { readonly fact: DatedFact<"released">; readonly open: readonly OpenItem[] } | undefined;
  /** Jobs that were gone on with although it stops them, since it was last shut. */
  readonly passedBy: readonly NamedDefinition[];
  /** What has fallen due with running since it was released, on which nothing has leant yet. */
  readonly due: { readonly fact: DatedFact<"ran">; readonly nodes: ReadonlySet<TreeNode> } | undefined;
}

export interface GaugeState {
  readonly definition: NamedDefinition;
  readonly calibrated:
    | { readonly date: IsoDate; readonly until: IsoDate | undefined; readonly place: Place }
    | undefined;
  readonly found: readonly Found[];
}

export interface OrderLine {
  readonly node: TreeNode;
  readonly count: number;
  readonly received: number;
  readonly price: Money | undefined;
  readonly fact: DatedFact<"ordered">;
  readonly place: Place;
}

/** Goods of one part: on the shelf and on their way. */
export interface SupplyState {
  readonly node: TreeNode;
  readonly inHand: number;
  /** Of those in hand, how many were received, bought or made; the stock at the start is used up first. */
  readonly acquired: number;
  /** Rejected and not sent back: no longer in hand, but still there. */
  readonly rejected: number;
  /** Taken although none was in hand while some were on order: what comes of that order is already gone. */
  readonly ahead: number;
  readonly orders: readonly OrderLine[];
  /** Facts that changed what is in hand, in order. */
  readonly movements: readonly { readonly change: number; readonly fact: DatedFact }[];
}
