/** What has become of each thing, as the diary tells it: derived once for each build, with the facts it came from. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import type { Money } from "../quantities/money.ts";
import type { Quantity } from "../quantities/quantity.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { Lock } from "./lowering/definition-record.ts";
import type { Condition, Decision, FactOf, FactWord, Method } from "./lowering/fact.ts";
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

/** One measurement of one characteristic. */
export interface Reading {
  readonly node: TreeNode;
  readonly name: string;
  readonly values: readonly [Quantity, ...Quantity[]];
  /** Expanded, k = 2; undefined where nothing states it. */
  readonly uncertainty: Quantity | undefined;
  readonly gauge: NamedDefinition | undefined;
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
  readonly since: DatedFact<"fitted"> | undefined;
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
  readonly decision: PartDecision | undefined;
  readonly sent: DatedFact<"sent"> | undefined;
  readonly tags: readonly DatedFact<"tagged">[];
}

export type JointStage = "as_found" | "open" | "nipped" | "torqued" | "locked" | "marked";

export interface JointState {
  readonly node: TreeNode;
  readonly stage: JointStage;
  /** The fact that opened it: a removal or a loosening. */
  readonly opened: DatedFact | undefined;
  readonly nipped: DatedFact<"nipped"> | undefined;
  /** The final tightening that counts, by torque or by feel. */
  readonly tightened: DatedFact<"torqued" | "tightened" | "rechecked"> | undefined;
  readonly locked: { readonly lock: Lock; readonly fact: DatedFact<"locked"> } | undefined;
  readonly marked: DatedFact<"marked"> | undefined;
  readonly seen: DatedFact<"seen"> | undefined;
  readonly rechecked: DatedFact | undefined;
  /** Running since the final tightening, and since the last recheck. */
  readonly sinceTightened: Running;
  readonly sinceRechecked: Running;
  /** Whether its nuts and washers are those that came with the vehicle, new, or used once since. */
  readonly hardware: "as found" | "new" | "used";
}

export type SystemStage = "as_found" | "open" | "filled" | "bled" | "proved";

export interface SystemState {
  readonly node: TreeNode;
  readonly stage: SystemStage;
  readonly opened: DatedFact | undefined;
  readonly filled: DatedFact<"filled"> | undefined;
  readonly bled: DatedFact<"bled"> | undefined;
  readonly proved: DatedFact<"proved"> | undefined;
}

export interface SettingState {
  readonly node: TreeNode;
  readonly name: string;
  readonly setup: NamedDefinition | undefined;
  readonly value: Quantity;
  readonly each: boolean;
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

export interface HoldState {
  readonly definition: NamedDefinition;
  readonly released: DatedFact<"released"> | undefined;
  /** The fact that made something open again that the release needed. */
  readonly lapsed: DatedFact | undefined;
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
  readonly orders: readonly OrderLine[];
  /** Facts that changed what is in hand, in order. */
  readonly movements: readonly { readonly change: number; readonly fact: DatedFact }[];
}
