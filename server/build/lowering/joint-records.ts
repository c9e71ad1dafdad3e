/** The records of joints, from syntax to values. */
import { LOCKS } from "../../../grammar/vocabulary/words.ts";
import { LENGTH, RUNNING, TORQUE } from "./due.ts";
import { lowerBolt, lowerFriction, lowerNut, lowerTorque } from "./fasteners.ts";
import { countedItems, quantitiesOf } from "./lists.ts";
import type { NodeValues } from "./node-values.ts";
import type { LowerTable } from "./record-forms.ts";
import { amountOf, chosen, reference, references, yes } from "./record-forms.ts";
import type { ValueLowering } from "./values.ts";

type Word =
  | "joins"
  | "bolt"
  | "stud"
  | "thread_length"
  | "nut"
  | "washers"
  | "grip"
  | "torque"
  | "stages"
  | "set_by"
  | "friction"
  | "lock"
  | "mark"
  | "after"
  | "recheck"
  | "uses";

const bolt = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "bolt");
  const read = node && lowerBolt(lowering, node);
  return read === undefined ? undefined : { bolt: read };
};

export const JOINT_RECORDS: LowerTable<Word> = {
  joins: references,
  bolt,
  stud: bolt,
  thread_length: amountOf(LENGTH),
  nut: (lowering, values) => {
    const node = values.get("value", "nut");
    const nut = node && lowerNut(lowering, node);
    return nut === undefined ? undefined : { nut };
  },
  washers: (lowering, values) => {
    const node = values.get("value", "countedQuantity");
    const number = node && lowering.count(node.count);
    const thickness = node && lowering.amount(node.value, LENGTH);
    return number === undefined || thickness === undefined ? undefined : { count: number, thickness };
  },
  grip: amountOf(LENGTH),
  torque: (lowering, values) => {
    const node = values.get("value", "torque");
    const torque = node && lowerTorque(lowering, node);
    return torque === undefined ? undefined : { torque };
  },
  stages: (lowering, values) => {
    const quantities = quantitiesOf(lowering, values.get("value", "quantities")?.items ?? [], TORQUE);
    return quantities.length === 0 ? undefined : { quantities };
  },
  set_by: reference,
  friction: (lowering, values) => {
    const node = values.get("value", "friction");
    const friction = node && lowerFriction(lowering, node);
    return friction === undefined ? undefined : { friction };
  },
  lock: chosen(LOCKS),
  mark: yes,
  after: references,
  recheck: (lowering, values) => {
    const node = values.get("value", "recheck");
    const after = node?.after && lowering.amount(node.after, RUNNING);
    const again = node?.every && lowering.amount(node.every, RUNNING);
    return after === undefined && again === undefined ? undefined : { after, every: again };
  },
  uses: (lowering, values) => ({ items: countedItems(lowering, values.get("value", "countedReferences")) }),
};
