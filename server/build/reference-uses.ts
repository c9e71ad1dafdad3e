/** Every reference that is written in a block, with the kinds that its place takes: read from the vocabulary's shapes. */
import type { BlockNode, ExpressionNode, ReferenceNode, ValueNode } from "../../grammar/syntax.ts";
import type { ArgumentShape, ReferenceKind, Shape } from "../../grammar/vocabulary/shape.ts";
import { entriesOf, recordEntry } from "../../grammar/vocabulary/vocabulary.ts";
import { namesIn } from "../expressions/names.ts";
import { asKept } from "./list-under.ts";
import { madeOnce } from "./remembered.ts";

export interface ReferenceUse {
  readonly reference: ReferenceNode;
  readonly kinds: readonly ReferenceKind[];
  /** True where it ends in the name of a characteristic. */
  readonly member: boolean;
  /** True where its place takes one thing, not a set; understood of a characteristic. */
  readonly one?: boolean;
}

const remembered = new WeakMap<BlockNode, readonly ReferenceUse[]>();

/** The references of a block's records, in the order of the text. */
export function referenceUses(block: BlockNode): readonly ReferenceUse[] {
  return madeOnce(remembered, block, () => {
    const found: ReferenceUse[] = [];
    const word = block.header?.block;
    for (const item of block.items) {
      if (item.kind !== "record" || !item.known) continue;
      const entry = word === undefined ? undefined : recordEntry(word, item.word.text);
      if (entry !== undefined) findInValues(found, item.values, entry);
    }
    return asKept(found);
  });
}

function findInValues(
  found: ReferenceUse[],
  values: ReadonlyMap<string, ValueNode>,
  shape: ArgumentShape,
): void {
  // `measured: REF NAME …` names the characteristic apart, `measured: REF.NAME …` within the reference.
  const apart = values.has("name");
  for (const { role, shape: inner } of shape.elements) {
    const value = values.get(role);
    if (value !== undefined) findInValue(found, value, inner, apart);
  }
  for (const { role, shape: inner } of shape.clauses) {
    const value = values.get(role);
    if (value !== undefined && inner !== undefined) findInValue(found, value, inner, false);
  }
}

/** @param apart whether the name of a characteristic stands beside the reference, not within it */
function findInValue(found: ReferenceUse[], value: ValueNode, shape: Shape, apart: boolean): void {
  const target = "to" in shape ? shape : undefined;
  const kinds = target?.to ?? [];
  const use = (reference: ReferenceNode) => found.push({ reference, kinds, one: false, member: false });
  switch (value.kind) {
    case "reference":
      if (target !== undefined) {
        const member = "member" in target && target.member === true && !apart;
        found.push({ reference: value, kinds, one: true, member });
      } else if (shape.value === "either") findInEither(found, value, shape, apart);
      return;
    case "references":
      if (target !== undefined) for (const reference of value.items) use(reference);
      else if (shape.value === "either") findInEither(found, value, shape, apart);
      return;
    case "countedReferences":
      for (const { reference } of value.items) use(reference);
      return;
    case "stops":
      for (const reference of value.jobs)
        found.push({ reference, kinds: ["job"], one: false, member: false });
      for (const reference of value.ran) found.push({ reference, kinds: TREE, one: false, member: false });
      return;
    case "expression":
      findInExpression(found, value);
      return;
    case "definition": {
      const entry = entriesOf(value.word.text).find(({ blocks }) =>
        blocks.some((block) => CHANGEABLE.has(block)),
      );
      if (entry !== undefined) findInValues(found, value.values, entry);
      return;
    }
    default:
  }
}

/** `REF.NAME` in a calculation; a name without a path is one that was calculated. */
function findInExpression(found: ReferenceUse[], { tree }: ExpressionNode): void {
  for (const name of namesIn(tree))
    if (name.text.includes(".")) found.push({ reference: memberReference(name), kinds: TREE, member: true });
}

/** A name with dots of an expression, as a reference. */
export function memberReference({
  text,
  start = 0,
  end = 0,
}: {
  readonly text: string;
  readonly start?: number;
  readonly end?: number;
}): ReferenceNode {
  const segments = text.split(".").map((name) => ({ is: "name" as const, text: name }));
  return { kind: "reference", text, segments, start, end };
}

function findInEither(
  found: ReferenceUse[],
  value: ValueNode,
  shape: Shape & { value: "either" },
  apart: boolean,
): void {
  const option = shape.options.find((candidate) => "to" in candidate && candidate.value === value.kind);
  if (option !== undefined) findInValue(found, value, option, apart);
}

const TREE: readonly ReferenceKind[] = ["assembly", "part", "joint", "system", "circuit"];
const CHANGEABLE: ReadonlySet<string> = new Set(TREE);
