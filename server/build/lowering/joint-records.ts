/** The records of joints, from syntax to values. */
import { LOCKS } from "../../../grammar/vocabulary/words.ts";
import { LENGTH, RUNNING, TORQUE } from "./due.ts";
import { lowerBolt, lowerFriction, lowerNut, lowerTorque } from "./fasteners.ts";
import { countedItems, quantitiesOf } from "./lists.ts";
import type { LowerTable } from "./record-forms.ts";
import { amountOf, chosen, reference, references, saying, whole, yes } from "./record-forms.ts";

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

const bolt = saying("bolt", "bolt", lowerBolt);

export const JOINT_RECORDS: LowerTable<Word> = {
  joins: references,
  bolt,
  stud: bolt,
  thread_length: amountOf(LENGTH),
  nut: saying("nut", "nut", lowerNut),
  washers: (lowering, values) => {
    const node = values.get("value", "countedQuantity");
    const number = node && lowering.count(node.count);
    const thickness = node && lowering.amount(node.value, LENGTH);
    return whole({ count: number, thickness });
  },
  grip: amountOf(LENGTH),
  torque: saying("torque", "torque", lowerTorque),
  stages: saying("quantities", "quantities", (lowering, { items }) => {
    const quantities = quantitiesOf(lowering, items, TORQUE);
    return quantities.length === 0 ? undefined : quantities;
  }),
  set_by: reference,
  friction: saying("friction", "friction", lowerFriction),
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
