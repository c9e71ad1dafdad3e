/** The facts of day blocks, from syntax to values. One entry for each word. */
import type { QuantityNode, RecordNode, Span } from "../../../grammar/syntax.ts";
import { CONDITIONS, DECISIONS, LOCKS, METHODS } from "../../../grammar/vocabulary/words.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { asDifference, compare, formatQuantity, hasDimension } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import { lowerDefinitionValue } from "./definitions.ts";
import type { Due } from "./due.ts";
import { ANY, CALENDAR, PRESSURE, RUNNING, TIME, TORQUE, TURNING, VOLUME } from "./due.ts";
import type { FactOf, FactWord, LoweredFact } from "./fact.ts";
import { countedItems, quantitiesOf } from "./lists.ts";
import { NodeValues } from "./node-values.ts";
import { whole } from "./record-forms.ts";
import { inHours } from "./times.ts";
import type { ValueLowering } from "./values.ts";

/** A record of a day block; undefined where it is broken or makes no sense (and was complained about). */
export function lowerFact(lowering: ValueLowering, record: RecordNode): LoweredFact | undefined {
  const word = record.word.text;
  if (record.broken || !isFactWord(word)) return undefined;
  const values = new NodeValues(record.values);
  const payload = LOWER[word](lowering, values);
  if (payload === undefined) return undefined;
  const at = { start: record.word.start, end: record.contentEnd };
  return { ...payload, word, at, by: values.text("by"), note: values.text("note") } as LoweredFact;
}

type Lower<W extends FactWord> = (
  lowering: ValueLowering,
  values: NodeValues,
) => Omit<FactOf<W>, "word" | "at" | "by" | "note"> | undefined;

function isFactWord(word: string): word is FactWord {
  return Object.hasOwn(LOWER, word);
}

const what = (values: NodeValues) => values.get("what", "references")?.items ?? [];

const refsOnly = (_: ValueLowering, values: NodeValues) => ({ what: what(values) });

const reference = (values: NodeValues, role: string) => values.get(role, "reference");

const spanOf = (node: Span | undefined) => node && { start: node.start, end: node.end };

const date = (lowering: ValueLowering, values: NodeValues, role: string) => {
  const node = values.get(role, "date");
  return node && lowering.date(node);
};

const money = (lowering: ValueLowering, values: NodeValues, role: string) => {
  const node = values.get(role, "money");
  return node && lowering.sum(node);
};

/** A magnitude of what is due. */
const amount = (lowering: ValueLowering, values: NodeValues, role: string, due: Due) => {
  const node = values.get(role, "quantity");
  return node && lowering.amount(node, due);
};

const itemsFrom = (least: number) => (lowering: ValueLowering, values: NodeValues) => {
  const read = countedItems(lowering, values.get("items", "countedReferences"), least);
  return read.length === 0 ? undefined : { items: read };
};

const items = itemsFrom(1);

const withMethod = (lowering: ValueLowering, values: NodeValues) => ({
  what: what(values),
  method: lowering.oneOf(values.get("method", "word"), METHODS),
});

const LOWER: { readonly [W in FactWord]: Lower<W> } = {
  removed: (_, values) => ({ what: what(values), asUnit: values.has("asUnit") }),
  stripped: refsOnly,
  fitted: (lowering, values) => ({
    what: what(values),
    forTrial: values.has("forTrial"),
    made: date(lowering, values, "made"),
    expires: date(lowering, values, "expires"),
    batch: values.text("batch"),
  }),
  cleaned: withMethod,
  inspected: withMethod,
  greased: refsOnly,
  serviced: (lowering, values) => ({ what: what(values), until: date(lowering, values, "until") }),
  changed: (lowering, values) => {
    const target = reference(values, "what");
    const record = lowerDefinitionValue(lowering, values, "definition");
    return whole({ target, record });
  },
  found: (lowering, values) => {
    const words = values.get("conditions", "words")?.items ?? [];
    const conditions = words.flatMap((node) => {
      const condition = lowering.oneOf(node, CONDITIONS);
      return condition === undefined ? [] : [{ condition, at: { start: node.start, end: node.end } }];
    });
    return conditions.length === 0 ? undefined : { what: what(values), conditions };
  },
  measured: (lowering, values) => {
    const said = whole({ target: reference(values, "what"), node: values.get("readings", "quantities") });
    if (said === undefined) return undefined;
    const { target, node } = said;
    const readings = quantitiesOf(lowering, node.items);
    if (readings.length === 0) return undefined;
    const written = values.get("uncertainty", "quantity");
    return {
      target,
      name: values.text("name"),
      readings,
      readingsAt: { start: node.start, end: node.end },
      uncertainty: written && uncertaintyOf(lowering, written, readings),
      spot: values.text("at"),
      setup: reference(values, "setup"),
      gauge: reference(values, "gauge"),
    };
  },
  decided: (lowering, values) => {
    const list = countedItems(lowering, values.get("what", "countedReferences"));
    const decision = lowering.oneOf(values.get("decision", "word"), DECISIONS);
    return list.length === 0 ? undefined : whole({ items: list, decision });
  },
  tagged: (_, values) => {
    return whole({ what: what(values), tag: values.text("tag") });
  },
  identified: (_, values) => {
    const said = whole({ target: reference(values, "what"), as: values.text("as") });
    return said && { ...said, from: reference(values, "from") };
  },
  sent: (lowering, values) => {
    const to = reference(values, "to");
    return (
      to && {
        what: what(values),
        to,
        work: values.text("for"),
        due: date(lowering, values, "due"),
        cost: money(lowering, values, "cost"),
      }
    );
  },
  back: (lowering, values) => ({ what: what(values), cost: money(lowering, values, "cost") }),
  ordered: (lowering, values) => {
    const list = items(lowering, values);
    return (
      list && {
        ...list,
        from: reference(values, "from"),
        due: date(lowering, values, "due"),
        order: values.text("ref"),
      }
    );
  },
  received: (lowering, values) => ({
    items: items(lowering, values)?.items ?? [],
    order: values.text("order"),
    orderAt: spanOf(values.get("order", "string")),
  }),
  rejected: items,
  returned: (lowering, values) => {
    const said = whole({ items: items(lowering, values)?.items, to: reference(values, "to") });
    return said && { ...said, credit: money(lowering, values, "credit") };
  },
  bought: (lowering, values) => {
    const list = items(lowering, values);
    return list && { ...list, from: reference(values, "from"), price: money(lowering, values, "at") };
  },
  made: refsOnly,
  reconditioned: refsOnly,
  repaired: refsOnly,
  used: (lowering, values) => {
    const list = items(lowering, values);
    return list && { ...list, on: reference(values, "on") };
  },
  // None on the shelf is a count too.
  counted: itemsFrom(0),
  nipped: refsOnly,
  torqued: (lowering, values) => {
    const node = values.get("torque", "quantity");
    const torque = node && lowering.amount(node, TORQUE);
    if (torque === undefined || node === undefined) return undefined;
    return {
      what: what(values),
      torque,
      torqueAt: { start: node.start, end: node.end },
      then: amount(lowering, values, "then", TURNING),
      newHardware: values.has("newHardware"),
      gauge: reference(values, "gauge"),
    };
  },
  tightened: refsOnly,
  rechecked: (lowering, values) => ({
    what: what(values),
    torque: amount(lowering, values, "torque", TORQUE),
    moved: values.has("moved"),
    gauge: reference(values, "gauge"),
  }),
  locked: (lowering, values) => ({
    what: what(values),
    lock: lowering.oneOf(values.get("lock", "word"), LOCKS),
  }),
  marked: refsOnly,
  loosened: refsOnly,
  opened: refsOnly,
  drained: refsOnly,
  filled: (lowering, values) => ({
    what: what(values),
    volume: amount(lowering, values, "volume", VOLUME),
    fluid: values.text("fluid"),
  }),
  bled: refsOnly,
  proved: (lowering, values) => ({
    what: what(values),
    pressure: amount(lowering, values, "pressure", PRESSURE),
    time: amount(lowering, values, "time", TIME),
  }),
  set: (lowering, values) => {
    const target = reference(values, "what");
    const node = values.get("value", "quantity");
    const value = node && lowering.quantity(node);
    if (target === undefined || value === undefined) return undefined;
    return {
      target,
      name: values.text("name"),
      value,
      each: node?.each ?? false,
      setup: reference(values, "setup"),
      gauge: reference(values, "gauge"),
    };
  },
  tested: (_, values) => ({
    what: what(values),
    name: values.text("name"),
    nameAt: spanOf(values.get("name", "word")),
    pass: values.text("result") === "pass",
  }),
  seen: refsOnly,
  ran: (lowering, values) => {
    const target = reference(values, "what");
    const nodes = values.get("running", "quantities")?.items ?? [];
    if (target === undefined) return undefined;
    const read: { hours?: FactOf<"ran">["hours"]; distance?: Quantity; runs?: FactOf<"ran">["runs"] } = {};
    for (const node of nodes) {
      const value = lowering.amount(node, RUNNING);
      if (value === undefined) continue;
      if (hasDimension(value, "time")) read.hours = inHours(lowering, node);
      else if (hasDimension(value, "length")) read.distance = value;
      else if (value.value.isInteger()) read.runs = value.value;
      else lowering.complain("unreadable-value", node, "a whole number of runs");
    }
    if (Object.keys(read).length === 0) return undefined;
    return { target, hours: read.hours, distance: read.distance, runs: read.runs };
  },
  started: refsOnly,
  worked: (lowering, values) => {
    const node = values.get("hours", "quantity");
    const hours = node && inHours(lowering, node);
    const on = reference(values, "on");
    return whole({ hours, on });
  },
  done: refsOnly,
  spent: (lowering, values) => {
    const read = money(lowering, values, "amount");
    return read && { money: read, on: reference(values, "on") };
  },
  calibrated: (lowering, values) => ({
    what: what(values),
    valid: amount(lowering, values, "for", CALENDAR),
    supplier: reference(values, "supplier"),
  }),
  snag: (_, values) => {
    return whole({ name: values.text("name"), on: reference(values, "on") });
  },
  cleared: (_, values) => whole({ name: reference(values, "name")?.text }),
  conceded: (_, values) =>
    whole({ name: reference(values, "name")?.text, until: reference(values, "until") }),
  photo: (_, values) => {
    const node = values.get("path", "string");
    return (
      node && {
        path: node.text,
        pathAt: { start: node.start, end: node.end },
        of: values.get("of", "references")?.items ?? [],
      }
    );
  },
  released: refsOnly,
  calc: (_, values) => {
    return whole({ name: values.text("name"), expression: values.get("expression", "expression") });
  },
};

/** What a reading states of its uncertainty: of what was read, or in percent of it. */
function uncertaintyOf(
  lowering: ValueLowering,
  node: QuantityNode,
  readings: readonly Quantity[],
): Quantity | undefined {
  const [reading] = readings;
  const stated = lowering.quantity(node, ANY, {
    fallback: readings.at(-1)?.unit,
    hint: reading?.unit,
  });
  if (stated === undefined || reading === undefined || hasDimension(stated, "ratio")) return stated;
  const difference = asDifference(stated);
  if (!isFault(compare(difference, asDifference(reading)))) return difference;
  const expected = `the uncertainty in the unit of the reading, as in ${formatQuantity(reading)}`;
  return lowering.complain("wrong-dimension", node.parts[0].unit ?? node, expected);
}
