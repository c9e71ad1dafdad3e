/** Forms that the values of several records share. */
import type { ValueNode } from "../../../grammar/syntax.ts";
import type { DefinitionRecord, RecordWord } from "./definition-record.ts";
import type { Due } from "./due.ts";
import { CALENDAR, SHARE } from "./due.ts";
import type { NodeOf, NodeValues } from "./node-values.ts";
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

type Whole<T> = { [Part in keyof T]: Exclude<T[Part], undefined> };

/** What a line says where each of its parts makes sense; undefined otherwise. */
export function whole<T extends object>(parts: T): Whole<T> | undefined {
  return Object.values(parts).includes(undefined) ? undefined : (parts as Whole<T>);
}

/** A record of one value: what it says stands under a name; nothing does where it makes no sense. */
export const saying =
  <Name extends string, K extends ValueNode["kind"], T>(
    name: Name,
    kind: K,
    lower: (lowering: ValueLowering, node: NodeOf<K>) => T | undefined,
    role = "value",
  ) =>
  (lowering: ValueLowering, values: NodeValues) => {
    const node = values.get(role, kind);
    const read = node && lower(lowering, node);
    return read === undefined ? undefined : ({ [name]: read } as { readonly [Of in Name]: T });
  };

export const text = (_: ValueLowering, values: NodeValues) => {
  return whole({ text: values.text("value") });
};

export const countFrom = (least: number) =>
  saying("count", "number", (lowering, node) => lowering.count(node, { least }));

export const count = countFrom(0);

export const money = saying("money", "money", (lowering, node) => lowering.sum(node));

export const date = saying("date", "date", (lowering, node) => lowering.date(node));

export const yes = saying("yes", "word", (_, { text: said }) => said === "yes");

export const reference = saying("reference", "reference", (_, node) => node);

export const references = saying("references", "references", (_, { items }) => items);

export const chosen = <const T extends string>(words: readonly T[]) =>
  saying("choice", "word", (lowering, node) => lowering.oneOf(node, words));

/** A magnitude of what is due. */
export const amountOf = (due: Due) =>
  saying("quantity", "quantity", (lowering, node) => lowering.amount(node, due));

/** A percentage of something that there is no more than all of, as a fraction. */
export const shareOfAll = saying("share", "quantity", (lowering, node) => {
  const read = lowering.amount(node, SHARE);
  const share = read && asFraction(read);
  return share === undefined || share.lessThanOrEqualTo(1)
    ? share
    : lowering.complain("unreadable-value", node, "a percentage of 100 % at most");
});

export const every = saying(
  "every",
  "quantity",
  (lowering, node) => lowering.amount(node, CALENDAR),
  "every",
);
