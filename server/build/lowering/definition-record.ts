/** The records of definitions as values. One type for each word; `name` where a block may hold several by name. */
import type { ExpressionNode, ReferenceNode, Span } from "../../../grammar/syntax.ts";
import type { HOLD_NEEDS, LOCKS } from "../../../grammar/vocabulary/words.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import type { Limits } from "../../quantities/limits.ts";
import type { ExchangeRate, Money } from "../../quantities/money.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import type { Thread } from "../../trade/thread.ts";
import type { Bolt, FrictionSpec, Nut, TorqueSpec } from "./values.ts";

/** `N x REF`. */
export interface Counted {
  readonly count: number;
  /** False where the author left the number out. */
  readonly stated: boolean;
  readonly reference: ReferenceNode;
  readonly at: Money | undefined;
}

export type Lock = (typeof LOCKS)[number];
export type HoldNeed = (typeof HOLD_NEEDS)[number];

export type LifeSpec =
  | { readonly counted: "made" | "fitted"; readonly duration: Quantity }
  | { readonly counted: "running"; readonly amount: Quantity };

interface Payloads {
  // vehicle
  chassis: { readonly text: string };
  year: { readonly count: number };
  currency: { readonly currency: Money["currency"] };
  rate: { readonly rate: ExchangeRate };
  tax: { readonly share: Decimal };
  labour: { readonly money: Money };
  budget: { readonly money: Money };
  week: { readonly days: readonly { readonly day: string; readonly hours: Decimal }[] };
  hands: { readonly count: number };
  closed: { readonly from: IsoDate; readonly to: IsoDate };
  protrusion: { readonly figure: Decimal };
  near: { readonly share: Decimal };
  past: { readonly choice: "unknown" | "known" };
  today: { readonly date: IsoDate };
  // supplier, gauge
  lead: { readonly days: number };
  carriage: { readonly money: Money };
  minimum: { readonly money: Money };
  web: { readonly text: string };
  email: { readonly text: string };
  phone: { readonly text: string };
  reads: { readonly ranges: readonly Limits[] };
  resolution: { readonly quantity: Quantity };
  uncertainty: { readonly quantity: Quantity; readonly ofReading: boolean };
  calibrated: { readonly date: IsoDate; readonly valid: Quantity | undefined };
  // the tree
  limit: { readonly name: string; readonly limits: Limits; readonly each: boolean };
  setting: { readonly name: string; readonly limits: Limits; readonly each: boolean };
  test: { readonly name: string; readonly how: string | undefined };
  safety: { readonly choice: "critical" };
  second_check: { readonly yes: boolean };
  size: { readonly name: string; readonly size: Quantity | Thread };
  fit: {
    readonly name: string;
    readonly other: ReferenceNode;
    readonly sense: "clearance" | "interference";
    readonly limits: Limits;
  };
  pair: { readonly name: string; readonly other: ReferenceNode; readonly within: Quantity };
  default: { readonly record: DefinitionRecord };
  // part, donor
  count: { readonly count: number };
  number: { readonly text: string };
  maker: { readonly text: string };
  donor: { readonly text: string };
  material: { readonly choice: string };
  price: { readonly money: Money };
  supplier: { readonly reference: ReferenceNode };
  pack: { readonly count: number; readonly price: Money | undefined };
  stock: { readonly count: number };
  keep: { readonly count: number };
  kit: { readonly reference: ReferenceNode };
  single_use: { readonly yes: boolean };
  life: { readonly life: LifeSpec };
  expires: { readonly date: IsoDate };
  service: { readonly every: Quantity };
  made: { readonly date: IsoDate };
  as_found: { readonly choice: "on" | "missing" | "loose" | "shelf" };
  // joint
  joins: { readonly references: readonly ReferenceNode[] };
  bolt: { readonly bolt: Bolt };
  stud: { readonly bolt: Bolt };
  thread_length: { readonly quantity: Quantity };
  nut: { readonly nut: Nut };
  washers: { readonly count: number; readonly thickness: Quantity };
  grip: { readonly quantity: Quantity };
  torque: { readonly torque: TorqueSpec };
  stages: { readonly quantities: readonly Quantity[] };
  set_by: { readonly reference: ReferenceNode };
  friction: { readonly friction: FrictionSpec };
  lock: { readonly choice: Lock };
  mark: { readonly yes: boolean };
  after: { readonly references: readonly ReferenceNode[] };
  recheck: { readonly after: Quantity | undefined; readonly every: Quantity | undefined };
  uses: { readonly items: readonly Counted[] };
  // system
  fluid: { readonly text: string };
  capacity: { readonly quantity: Quantity };
  parts: { readonly references: readonly ReferenceNode[] };
  bleed: { readonly yes: boolean };
  pressure_test: { readonly pressure: Quantity; readonly time: Quantity | undefined };
  change: { readonly every: Quantity };
  // circuit
  supply: { readonly quantity: Quantity };
  load: { readonly quantity: Quantity };
  wire: { readonly area: Quantity } | { readonly gauge: string };
  length: { readonly quantity: Quantity };
  return: { readonly choice: "frame" | "wire" };
  fuse: { readonly quantity: Quantity };
  drop: { readonly limits: Limits };
  from: { readonly end: CircuitEnd };
  to: { readonly end: CircuitEnd };
  colour: { readonly text: string };
  relay: { readonly end: CircuitEnd };
  switch: { readonly end: CircuitEnd };
  earth: { readonly end: CircuitEnd };
  // job, hold, setup
  on: { readonly references: readonly ReferenceNode[] };
  /** In hours, or in calendar days where it is outside work. */
  takes: {
    readonly unit: "h" | "d";
    readonly optimistic: Decimal;
    readonly likely: Decimal;
    readonly pessimistic: Decimal;
  };
  by: { readonly reference: ReferenceNode };
  needs: { readonly items: readonly Counted[] } | { readonly kinds: readonly HoldNeed[] };
  start: { readonly date: IsoDate };
  covers: { readonly references: readonly ReferenceNode[] };
  planned: { readonly date: IsoDate };
  stops: { readonly jobs: readonly ReferenceNode[]; readonly ran: readonly ReferenceNode[] };
  with: { readonly text: string };
  // everywhere
  calc: { readonly name: string; readonly expression: ExpressionNode };
}

export type CircuitEnd = { readonly text: string } | { readonly references: readonly ReferenceNode[] };

export type RecordWord = keyof Payloads;

/** A record of a definition: its word, its values, and where it stands in its block. */
export type DefinitionRecord<W extends RecordWord = RecordWord> = {
  [Word in W]: { readonly word: Word; readonly at: Span } & Payloads[Word];
}[W];

/** Whether two records say the same thing of the same name, so that the later replaces the earlier. */
export function recordKey(record: DefinitionRecord): string {
  if (record.word === "default") return `default ${recordKey(record.record)}`;
  // A joint has bolts or studs: whichever is said last is what holds it.
  if (record.word === "stud") return "bolt";
  return "name" in record ? `${record.word} ${record.name}` : record.word;
}
