/** What is told of a value: a quantity in other units, a date's day of the week, a thread's figures, a class's strength. */
import type { QuantityNode } from "../../../../grammar/syntax.ts";
import { ValueLowering } from "../../../build/lowering/values.ts";
import type { IsoDate } from "../../../quantities/dates.ts";
import { daysBetween, isDateFault, readDate, weekday } from "../../../quantities/dates.ts";
import type { Quantity } from "../../../quantities/quantity.ts";
import { computedQuantity, formatQuantity } from "../../../quantities/quantity.ts";
import { unit } from "../../../quantities/unit.ts";
import { isFaulty } from "../../../trade/function.ts";
import { readClass, strengthsOf } from "../../../trade/strength-class.ts";
import type { Thread } from "../../../trade/thread.ts";
import { readBolt, readThread } from "../../../trade/thread.ts";
import { isInchThread, stressArea } from "../../../trade/threads.ts";
import { code, escaped, list, paragraphs } from "../../markdown.ts";
import type { InnerNode } from "../../text/inner-nodes.ts";
import { inOtherUnits, inUnit } from "../../words/other-units.ts";

export interface ToldNode {
  readonly node: InnerNode;
  readonly markdown: string;
}

/** The innermost of some nodes, outermost first, that has something to tell, with what it tells. */
export function describeValue(today: IsoDate, nodes: readonly InnerNode[]): ToldNode | undefined {
  for (const node of [...nodes].reverse()) {
    const markdown = tell(today, node);
    if (markdown !== undefined) return { node, markdown };
  }
  return undefined;
}

function tell(today: IsoDate, node: InnerNode): string | undefined {
  if (!("kind" in node)) return undefined;
  switch (node.kind) {
    case "quantity":
      return tellQuantity(node);
    case "date":
      return tellDate(today, node.text);
    case "thread":
      return tellThread(node.text);
    case "bolt": {
      const strength = node.strength && `${node.strength.system} ${node.strength.text}`;
      return paragraphs(tellThread(node.thread.text), strength && tellClass(strength, node.thread.text));
    }
    default:
      return undefined;
  }
}

/** A quantity that is written out, if it can be read. */
export function quantityOfNode(node: QuantityNode): Quantity | undefined {
  return new ValueLowering().quantity(node);
}

function tellQuantity(node: QuantityNode): string | undefined {
  const quantity = quantityOfNode(node);
  const others = quantity === undefined ? [] : inOtherUnits(quantity);
  if (quantity === undefined || others.length === 0) return undefined;
  return paragraphs(`**${escaped(formatQuantity(quantity))}**`, list(others.map(escaped)));
}

const DAYS = {
  mon: "Monday",
  tue: "Tuesday",
  wed: "Wednesday",
  thu: "Thursday",
  fri: "Friday",
  sat: "Saturday",
  sun: "Sunday",
} as const;

function tellDate(today: IsoDate, text: string): string | undefined {
  const date = readDate(text);
  if (isDateFault(date)) return undefined;
  const days = daysBetween(today, date);
  const distance =
    days === 0
      ? "today"
      : `${Math.abs(days)} ${Math.abs(days) === 1 ? "day" : "days"} ${days < 0 ? "ago" : "from today"}`;
  return `${DAYS[weekday(date)]}, ${distance}`;
}

function tellThread(text: string): string | undefined {
  const thread = threadOf(text);
  if (thread === undefined) return undefined;
  const { pitch, majorDiameter, threadsPerInch, hand, standard } = thread;
  const length = (metres: number) => {
    const written = computedQuantity(metres, unit("m"), 4);
    const asked = inUnit(written, isInchThread(thread) ? "in" : "mm") ?? formatQuantity(written);
    const other = inUnit(written, isInchThread(thread) ? "mm" : "in");
    return other === undefined ? asked : `${asked} (${other})`;
  };
  const lines = [
    `diameter ${length(majorDiameter)}`,
    `pitch ${length(pitch)}${threadsPerInch === undefined ? "" : `, ${threadsPerInch} to the inch`}`,
    `stress area ${formatQuantity(computedQuantity(stressArea(thread) * 1e6, unit("mm2"), 3))}`,
    ...(hand === "left" ? ["left-hand thread"] : []),
    ...(standard === undefined ? [] : [standard]),
  ];
  return paragraphs(code(thread.designation), list(lines.map(escaped)));
}

function tellClass(text: string, threadText: string): string | undefined {
  const strength = readClass(text);
  const thread = threadOf(threadText);
  const strengths = strength && thread && strengthsOf(strength, thread.majorDiameter);
  if (strength === undefined || strengths === undefined || isFaulty(strengths)) return undefined;
  const stress = (pascal: number) => formatQuantity(computedQuantity(pascal / 1e6, unit("MPa"), 3));
  const lines = [`proof stress ${stress(strengths.proof)}`, `tensile strength ${stress(strengths.tensile)}`];
  return paragraphs(code(strength.text), list(lines.map(escaped)));
}

function threadOf(text: string): Thread | undefined {
  const thread = readThread(text);
  if (!("fault" in thread)) return thread;
  const bolt = readBolt(text);
  return "fault" in bolt ? undefined : bolt.thread;
}
