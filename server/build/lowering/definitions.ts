/** The records of definition blocks, from syntax to values. One entry for each word. */
import type {
  CountedReferencesNode,
  LimitsNode,
  QuantityNode,
  RecordNode,
  Span,
  ValueNode,
  WordNode,
} from "../../../grammar/syntax.ts";
import { AS_FOUND, HOLD_NEEDS, LOCKS } from "../../../grammar/vocabulary/words.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import { decimal } from "../../quantities/decimal.ts";
import type { DimensionName } from "../../quantities/dimension.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { convert, hasDimension } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import type { Unit } from "../../quantities/unit.ts";
import { unit } from "../../quantities/unit.ts";
import type { Counted, DefinitionRecord, LifeSpec, RecordWord } from "./definition-record.ts";
import { NodeValues } from "./node-values.ts";
import type { ValueLowering } from "./values.ts";
import { asFraction } from "./values.ts";

/** A record of a definition block; undefined where it is broken or its values make no sense (and were complained about). */
export function lowerRecord(lowering: ValueLowering, record: RecordNode): DefinitionRecord | undefined {
  if (record.broken) return undefined;
  const at = { start: record.word.start, end: record.contentEnd };
  return lowerWord(lowering, record.word.text, record.values, at);
}

function lowerWord(
  lowering: ValueLowering,
  word: string,
  values: ReadonlyMap<string, ValueNode>,
  at: Span,
): DefinitionRecord | undefined {
  if (!isRecordWord(word)) return undefined;
  const payload = LOWER[word](lowering, new NodeValues(values));
  if (payload === undefined) return undefined;
  return { ...payload, word, at: { start: at.start, end: at.end } } as DefinitionRecord;
}

/** The `WORD VALUE` of `changed:` and `default:`. */
export function lowerDefinitionValue(
  lowering: ValueLowering,
  values: NodeValues,
  role: string,
): DefinitionRecord | undefined {
  const node = values.get(role, "definition");
  return node && lowerWord(lowering, node.word.text, node.values, node);
}

type PayloadOf<W extends RecordWord> = Omit<DefinitionRecord<W>, "word" | "at">;
type Lower<W extends RecordWord> = (lowering: ValueLowering, values: NodeValues) => PayloadOf<W> | undefined;

function isRecordWord(word: string): word is RecordWord {
  return Object.hasOwn(LOWER, word);
}

const text = (_: ValueLowering, values: NodeValues) => {
  const read = values.text("value");
  return read === undefined ? undefined : { text: read };
};

const count = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "number");
  const read = node && lowering.count(node);
  return read === undefined ? undefined : { count: read };
};

const money = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "money");
  const read = node && lowering.money(node);
  return read === undefined ? undefined : { money: read };
};

const date = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "date") ?? values.get("date", "date");
  return node && { date: lowering.date(node) };
};

const yes = (_: ValueLowering, values: NodeValues) => {
  const read = values.text("value");
  return read === undefined ? undefined : { yes: read === "yes" };
};

const reference = (_: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "reference");
  return node && { reference: node };
};

const references = (_: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "references");
  return node && { references: node.items };
};

const chosen =
  <const T extends string>(words: readonly T[]) =>
  (lowering: ValueLowering, values: NodeValues) => {
    const choice = lowering.oneOf(values.get("value", "word"), words);
    return choice === undefined ? undefined : { choice };
  };

const quantityIn =
  (...due: DimensionName[]) =>
  (lowering: ValueLowering, values: NodeValues) => {
    const node = values.get("value", "quantity");
    const quantity = node && lowering.quantity(node, due);
    return quantity === undefined ? undefined : { quantity };
  };

const every = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("every", "quantity");
  const read = node && lowering.quantity(node, ["calendar", "time"]);
  return read === undefined ? undefined : { every: read };
};

const namedLimits = (lowering: ValueLowering, values: NodeValues) => {
  const name = values.text("name");
  const node = values.get("limits", "limits");
  const limits = node && lowering.limits(node);
  return name === undefined || limits === undefined ? undefined : { name, limits, each: saysEach(node) };
};

const end = (_: ValueLowering, values: NodeValues) => {
  const written = values.get("value", "string");
  if (written !== undefined) return { end: { text: written.text } };
  const node = values.get("value", "references");
  return node && { end: { references: node.items } };
};

const bolt = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "bolt");
  const read = node && lowering.bolt(node);
  return read === undefined ? undefined : { bolt: read };
};

const LOWER: { readonly [W in RecordWord]: Lower<W> } = {
  chassis: text,
  year: count,
  currency: (lowering, values) => {
    const node = values.get("value", "word");
    const currency = node && lowering.currency(node);
    return currency === undefined ? undefined : { currency };
  },
  rate: (lowering, values) => {
    const node = values.get("value", "exchange");
    const from = node && lowering.money(node.from);
    const to = node && lowering.money(node.to);
    if (from === undefined || to === undefined || node === undefined) return undefined;
    if (from.amount.isZero())
      return lowering.complain("unreadable-value", node, from.amount.toString(), "an amount above nought");
    return { rate: { from: from.currency, to: to.currency, factor: to.amount.div(from.amount) } };
  },
  tax: (lowering, values) => {
    const read = quantityIn("ratio")(lowering, values);
    return read && { ...read, share: asFraction(read.quantity) };
  },
  labour: (lowering, values) => {
    const node = values.get("value", "money");
    const read = node && lowering.money(node);
    if (read === undefined) return undefined;
    const hours: Readonly<Record<string, number>> = { h: 1, min: 1 / 60, d: 24 };
    return { money: { ...read, amount: read.amount.div(decimal(hours[node?.per ?? "h"] ?? 1)) } };
  },
  budget: money,
  week: (lowering, values) => {
    const days = values
      .get("value", "week")
      ?.days.map(({ day, hours }) => ({ day: day.text, hours: inHours(lowering, hours) }));
    if (days === undefined || days.some(({ hours }) => hours === undefined)) return undefined;
    return { days: days as { day: string; hours: Decimal }[] };
  },
  hands: count,
  closed: (lowering, values) => {
    const range = values.get("value", "dateRange");
    if (range !== undefined) return { from: lowering.date(range.from), to: lowering.date(range.to) };
    const day = values.get("value", "date");
    return day && { from: lowering.date(day), to: lowering.date(day) };
  },
  protrusion: (lowering, values) => {
    const node = values.get("value", "number");
    const read = node && lowering.number(node);
    return read && { figure: read.value };
  },
  near: (lowering, values) => {
    const read = quantityIn("ratio")(lowering, values);
    return read && { share: asFraction(read.quantity) };
  },
  past: chosen(["unknown", "known"]),
  today: date,
  lead: (lowering, values) => {
    const node = values.get("value", "quantity");
    const read = node && lowering.quantity(node, ["time"]);
    const days = read && convert(read, unit("d"));
    return days === undefined || isFault(days) ? undefined : { days: days.value.ceil().toNumber() };
  },
  carriage: money,
  minimum: money,
  web: text,
  email: text,
  phone: text,
  reads: (lowering, values) => {
    const items = values.get("value", "ranges")?.items ?? [];
    const ranges = items.flatMap((item) => lowering.limits(item) ?? []);
    return ranges.length === 0 ? undefined : { ranges };
  },
  resolution: quantityIn(),
  uncertainty: (lowering, values) => {
    const node = values.get("value", "tolerance");
    const quantity = node && lowering.quantity(node.value);
    return quantity && { quantity, ofReading: values.has("ofReading") || hasDimension(quantity, "ratio") };
  },
  calibrated: (lowering, values) => {
    const node = values.get("date", "date");
    const valid = values.get("for", "quantity");
    return (
      node && { date: lowering.date(node), valid: valid && lowering.quantity(valid, ["calendar", "time"]) }
    );
  },
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
    const size = thread ? lowering.thread(thread) : node && lowering.quantity(node);
    return name === undefined || size === undefined ? undefined : { name, size };
  },
  fit: (lowering, values) => {
    const name = values.text("name");
    const other = values.get("in", "reference");
    const sense = values.has("interference") ? "interference" : "clearance";
    const node = values.get(sense, "limits");
    const limits = node && lowering.limits(node, ["length"]);
    return name === undefined || other === undefined || limits === undefined
      ? undefined
      : { name, other, sense, limits };
  },
  pair: (lowering, values) => {
    const name = values.text("name");
    const other = values.get("with", "reference");
    const node = values.get("within", "quantity");
    const within = node && lowering.quantity(node);
    return name === undefined || other === undefined || within === undefined
      ? undefined
      : { name, other, within };
  },
  default: (lowering, values) => {
    const record = lowerDefinitionValue(lowering, values, "value");
    return record && { record };
  },
  count,
  number: text,
  maker: text,
  donor: text,
  material: (_, values) => {
    const choice = values.text("value");
    return choice === undefined ? undefined : { choice };
  },
  price: money,
  supplier: reference,
  pack: (lowering, values) => {
    const node = values.get("value", "pack");
    const size = node && lowering.count(node.count);
    if (node === undefined || size === undefined) return undefined;
    if (size === 0)
      return lowering.complain("unreadable-value", node.count, node.count.text, "at least one in a pack");
    return { count: size, price: node.at && lowering.money(node.at) };
  },
  stock: count,
  keep: count,
  kit: reference,
  single_use: yes,
  life: (lowering, values) => {
    const node = values.get("value", "life");
    if (node === undefined) return undefined;
    const running = node.counted === "running";
    const quantity = lowering.quantity(
      node.value,
      running ? ["time", "length", "run"] : ["calendar", "time"],
    );
    if (quantity === undefined) return undefined;
    const life: LifeSpec =
      node.counted === "running"
        ? { counted: "running", amount: quantity }
        : { counted: node.counted, duration: quantity };
    return { life };
  },
  expires: date,
  service: every,
  made: date,
  as_found: chosen(AS_FOUND),
  joins: references,
  bolt,
  stud: bolt,
  thread_length: quantityIn("length"),
  nut: (lowering, values) => {
    const node = values.get("value", "nut");
    const nut = node && lowering.nut(node);
    return nut === undefined ? undefined : { nut };
  },
  washers: (lowering, values) => {
    const node = values.get("value", "countedQuantity");
    const number = node && lowering.count(node.count);
    const thickness = node && lowering.quantity(node.value, ["length"]);
    return number === undefined || thickness === undefined ? undefined : { count: number, thickness };
  },
  grip: quantityIn("length"),
  torque: (lowering, values) => {
    const node = values.get("value", "torque");
    const torque = node && lowering.torque(node);
    return torque === undefined ? undefined : { torque };
  },
  stages: (lowering, values) => {
    const quantities = quantitiesOf(lowering, values.get("value", "quantities")?.items ?? [], ["torque"]);
    return quantities.length === 0 ? undefined : { quantities };
  },
  set_by: reference,
  friction: (lowering, values) => {
    const node = values.get("value", "friction");
    const friction = node && lowering.friction(node);
    return friction === undefined ? undefined : { friction };
  },
  lock: chosen(LOCKS),
  mark: yes,
  after: references,
  recheck: (lowering, values) => {
    const node = values.get("value", "recheck");
    const due = ["time", "length", "run"] as const;
    const after = node?.after && lowering.quantity(node.after, due);
    const again = node?.every && lowering.quantity(node.every, due);
    return after === undefined && again === undefined ? undefined : { after, every: again };
  },
  uses: (lowering, values) => ({ items: countedItems(lowering, values.get("value", "countedReferences")) }),
  fluid: text,
  capacity: quantityIn("volume"),
  parts: references,
  bleed: yes,
  pressure_test: (lowering, values) => {
    const node = values.get("pressure", "quantity");
    const time = values.get("for", "quantity");
    const pressure = node && lowering.quantity(node, ["pressure"]);
    return pressure && { pressure, time: time && lowering.quantity(time, ["time"]) };
  },
  change: every,
  supply: quantityIn("voltage"),
  load: quantityIn("current", "power"),
  wire: (lowering, values) => {
    const gauge = values.get("value", "wireGauge");
    if (gauge !== undefined) return { gauge: `AWG ${gauge.number.text}` };
    const node = values.get("value", "quantity");
    const area = node && lowering.quantity(node, ["area"]);
    return area === undefined ? undefined : { area };
  },
  length: quantityIn("length"),
  return: chosen(["frame", "wire"]),
  fuse: quantityIn("current"),
  drop: (lowering, values) => {
    const node = values.get("value", "limits");
    const limits = node && lowering.limits(node, ["ratio", "voltage"]);
    return limits && { limits };
  },
  from: end,
  to: end,
  colour: text,
  relay: end,
  switch: end,
  earth: end,
  on: references,
  takes: (lowering, values) => {
    const node = values.get("value", "takes");
    if (node === undefined) return undefined;
    const last = node.values.at(-1)?.parts[0].unit;
    const calendar = last !== undefined && CALENDAR.test(last.text);
    const times = node.values.map((value) => {
      const borrowed = last && lowering.unit(last);
      return calendar ? inDays(lowering, value, borrowed) : inHours(lowering, value, borrowed);
    });
    if (times.some((value) => value === undefined)) return undefined;
    const [optimistic, likely = optimistic, pessimistic = optimistic] = times as [
      Decimal,
      Decimal?,
      Decimal?,
    ];
    if (optimistic.lessThanOrEqualTo(likely) && likely.lessThanOrEqualTo(pessimistic)) {
      return { unit: calendar ? "d" : "h", optimistic, likely, pessimistic };
    }
    const expected = "an optimistic, a likely and a pessimistic time, each no shorter than the one before";
    return lowering.complain("unreadable-value", node, "", expected);
  },
  by: reference,
  needs: (lowering, values) => {
    const kinds = values.get("value", "words");
    if (kinds !== undefined)
      return { kinds: kinds.items.flatMap((item: WordNode) => lowering.oneOf(item, HOLD_NEEDS) ?? []) };
    return { items: countedItems(lowering, values.get("value", "countedReferences")) };
  },
  start: date,
  covers: references,
  planned: date,
  stops: (_, values) => {
    const node = values.get("value", "stops");
    return node && { jobs: node.jobs, ran: node.ran };
  },
  with: text,
  calc: (_, values) => {
    const name = values.text("name");
    const expression = values.get("expression", "expression");
    return name === undefined || expression === undefined ? undefined : { name, expression };
  },
};

/** `N x REF` items; one whose number makes no sense is left out with its complaint. */
export function countedItems(lowering: ValueLowering, node: CountedReferencesNode | undefined): Counted[] {
  return (node?.items ?? []).flatMap(({ count: number, reference: target, at }) => {
    const read = lowering.count(number);
    if (read === undefined) return [];
    return [{ count: read, stated: number !== undefined, reference: target, at: at && lowering.money(at) }];
  });
}

/** A list in which a bare figure takes the unit of the one behind it. */
export function quantitiesOf(
  lowering: ValueLowering,
  nodes: readonly QuantityNode[],
  due: readonly DimensionName[] = [],
): Quantity[] {
  return nodes.flatMap((node, index) => {
    const written = nodes.slice(index).find(({ parts }) => parts[0].unit !== undefined)?.parts[0].unit;
    const before = nodes.findLast(({ parts }, at) => at < index && parts[0].unit !== undefined)?.parts[0]
      .unit;
    const borrowed = node.parts[0].unit ?? written ?? before;
    const read = lowering.quantity(node, due, borrowed && lowering.unit(borrowed));
    return read === undefined ? [] : [read];
  });
}

/** Hours of a time in h or min; other units of time are refused. */
export function inHours(
  lowering: ValueLowering,
  node: QuantityNode,
  fallback = unit("h"),
): Decimal | undefined {
  const read = lowering.quantity(node, ["time"], fallback);
  if (read === undefined) return undefined;
  if (node.parts.some((part) => part.unit !== undefined && !/^(?:h|min)$/.test(part.unit.text))) {
    return lowering.complain("unreadable-value", node, "", "hours or minutes, such as 2 h 30 min");
  }
  const hours = convert(read, unit("h"));
  if (isFault(hours)) return undefined;
  return hours.value.isNegative()
    ? lowering.complain("unreadable-value", node, "", "a time that is not negative")
    : hours.value;
}

/** Calendar days of a time in days or weeks. */
function inDays(
  lowering: ValueLowering,
  node: QuantityNode,
  fallback: Unit | undefined,
): Decimal | undefined {
  const read = lowering.quantity(node, ["time"], fallback);
  const days = read && convert(read, unit("d"));
  return days === undefined || isFault(days) ? undefined : days.value;
}

const CALENDAR = /^(?:d|week|weeks)$/;

function saysEach(node: LimitsNode | undefined): boolean {
  if (node === undefined) return false;
  return Object.values(node).some(
    (value) => typeof value === "object" && "each" in value && value.each === true,
  );
}
