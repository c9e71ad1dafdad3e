/** Forms that the values of several records share. */
import type { DefinitionRecord, RecordWord } from "./definition-record.ts";
import type { Due } from "./due.ts";
import { CALENDAR, SHARE } from "./due.ts";
import type { NodeValues } from "./node-values.ts";
import type { ValueLowering } from "./values.ts";
import { asFraction } from "./values.ts";

type PayloadOf<W extends RecordWord> = Omit<DefinitionRecord<W>, "word" | "at">;

/** From the values of one record's syntax to what it says; undefined where they make no sense. */
export type Lower<W extends RecordWord> = (
  lowering: ValueLowering,
  values: NodeValues,
) => PayloadOf<W> | undefined;

/** One entry for each of some words. */
export type LowerTable<W extends RecordWord> = { readonly [Word in W]: Lower<Word> };

export const text = (_: ValueLowering, values: NodeValues) => {
  const read = values.text("value");
  return read === undefined ? undefined : { text: read };
};

export const countFrom = (least: number) => (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "number");
  const read = node && lowering.count(node, { least });
  return read === undefined ? undefined : { count: read };
};

export const count = countFrom(0);

export const money = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "money");
  const read = node && lowering.sum(node);
  return read === undefined ? undefined : { money: read };
};

export const date = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "date") ?? values.get("date", "date");
  return node && { date: lowering.date(node) };
};

export const yes = (_: ValueLowering, values: NodeValues) => {
  const read = values.text("value");
  return read === undefined ? undefined : { yes: read === "yes" };
};

export const reference = (_: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "reference");
  return node && { reference: node };
};

export const references = (_: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "references");
  return node && { references: node.items };
};

export const chosen =
  <const T extends string>(words: readonly T[]) =>
  (lowering: ValueLowering, values: NodeValues) => {
    const choice = lowering.oneOf(values.get("value", "word"), words);
    return choice === undefined ? undefined : { choice };
  };

/** A magnitude of what is due. */
export const amountOf = (due: Due) => (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("value", "quantity");
  const quantity = node && lowering.amount(node, due);
  return quantity === undefined ? undefined : { quantity };
};

/** A percentage of something that there is no more than all of. */
export const shareOfAll = (lowering: ValueLowering, values: NodeValues) => {
  const read = amountOf(SHARE)(lowering, values);
  const node = values.get("value", "quantity");
  if (read === undefined || node === undefined) return undefined;
  const share = asFraction(read.quantity);
  if (share.lessThanOrEqualTo(1)) return { ...read, share };
  return lowering.complain("unreadable-value", node, "a percentage of 100 % at most");
};

export const every = (lowering: ValueLowering, values: NodeValues) => {
  const node = values.get("every", "quantity");
  const read = node && lowering.amount(node, CALENDAR);
  return read === undefined ? undefined : { every: read };
};
