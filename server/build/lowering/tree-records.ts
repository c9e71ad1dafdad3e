/** The records of the tree and its parts, from syntax to values. */
import { AS_FOUND } from "../../../grammar/vocabulary/words.ts";
import type { LifeSpec } from "./definition-record.ts";
import { CALENDAR, LENGTH, RUNNING } from "./due.ts";
import { lowerThread } from "./fasteners.ts";
import { lowerLimits, saysEach } from "./limits.ts";
import type { NodeValues } from "./node-values.ts";
import type { LowerTable } from "./record-forms.ts";
import { chosen, count, date, every, money, reference, saying, text, whole, yes } from "./record-forms.ts";
import type { ValueLowering } from "./values.ts";

type Word =
  | "limit"
  | "setting"
  | "test"
  | "safety"
  | "second_check"
  | "size"
  | "fit"
  | "pair"
  | "count"
  | "number"
  | "maker"
  | "donor"
  | "material"
  | "price"
  | "supplier"
  | "pack"
  | "stock"
  | "keep"
  | "kit"
  | "single_use"
  | "life"
  | "expires"
  | "service"
  | "made"
  | "as_found";

const namedLimits = (lowering: ValueLowering, values: NodeValues) => {
  const name = values.text("name");
  const node = values.get("limits", "limits");
  const limits = node && lowerLimits(lowering, node);
  return whole({ name, limits, each: saysEach(node) });
};

export const TREE_RECORDS: LowerTable<Word> = {
  limit: namedLimits,
  setting: namedLimits,
  test: (_, values) => {
    const name = values.text("name");
    return name === undefined ? undefined : { name, how: values.text("how") };
  },
  safety: chosen(["critical"]),
  second_check: yes,
  size: (lowering, values) => {
    const name = values.text("name");
    const thread = values.get("value", "thread");
    const node = values.get("value", "quantity");
    const size = thread ? lowerThread(lowering, thread) : node && lowering.quantity(node);
    return whole({ name, size });
  },
  fit: (lowering, values) => {
    const name = values.text("name");
    const other = values.get("in", "reference");
    const sense = values.has("interference") ? "interference" : "clearance";
    const node = values.get(sense, "limits");
    const limits = node && lowerLimits(lowering, node, LENGTH);
    return whole({ name, other, sense, limits });
  },
  pair: (lowering, values) => {
    const name = values.text("name");
    const other = values.get("with", "reference");
    const node = values.get("within", "quantity");
    const within = node && lowering.withUnit(node);
    return whole({ name, other, within });
  },
  count,
  number: text,
  maker: text,
  donor: text,
  material: saying("choice", "word", (_, node) => node.text),
  price: money,
  supplier: reference,
  pack: (lowering, values) => {
    const node = values.get("value", "pack");
    const size = node && lowering.count(node.count, { least: 1 });
    if (node === undefined || size === undefined) return undefined;
    return { count: size, price: node.at && lowering.sum(node.at) };
  },
  stock: count,
  keep: count,
  kit: reference,
  single_use: yes,
  life: saying("life", "life", (lowering, { value, counted }): LifeSpec | undefined =>
    counted === "running"
      ? whole({ counted, amount: lowering.amount(value, RUNNING) })
      : whole({ counted, duration: lowering.amount(value, CALENDAR) }),
  ),
  expires: date,
  service: every,
  made: date,
  as_found: chosen(AS_FOUND),
};
