/** Every reference that is written in a block, with the kinds that its place takes: read from the vocabulary's shapes. */
import type { BlockNode, ReferenceNode, ValueNode } from "../../grammar/syntax.ts";
import type { ArgumentShape, ReferenceKind, Shape } from "../../grammar/vocabulary/shape.ts";
import { entriesOf, recordEntry } from "../../grammar/vocabulary/vocabulary.ts";

export interface ReferenceUse {
  readonly reference: ReferenceNode;
  readonly kinds: readonly ReferenceKind[];
  /** True where it may end in the name of a characteristic. */
  readonly member: boolean;
}

const remembered = new WeakMap<BlockNode, readonly ReferenceUse[]>();

/** The references of a block's records, in the order of the text. */
export function referenceUses(block: BlockNode): readonly ReferenceUse[] {
  const known = remembered.get(block);
  if (known !== undefined) return known;
  const uses = [...usesIn(block)];
  remembered.set(block, uses);
  return uses;
}

function* usesIn(block: BlockNode): Generator<ReferenceUse> {
  const word = block.header?.block;
  for (const item of block.items) {
    if (item.kind !== "record" || !item.known) continue;
    const entry = word === undefined ? undefined : recordEntry(word, item.word.text);
    if (entry !== undefined) yield* usesInValues(item.values, entry);
  }
}

function* usesInValues(
  values: ReadonlyMap<string, ValueNode>,
  shape: ArgumentShape,
): Generator<ReferenceUse> {
  const named = values.has("name");
  for (const { role, shape: inner } of [...shape.elements, ...shape.clauses]) {
    const value = values.get(role);
    if (value !== undefined && inner !== undefined) yield* usesInValue(value, inner, named);
  }
}

function* usesInValue(value: ValueNode, shape: Shape, named: boolean): Generator<ReferenceUse> {
  const target = "to" in shape ? shape : undefined;
  const kinds = target?.to ?? [];
  switch (value.kind) {
    case "reference":
      // `measured: REF NAME …` names the characteristic apart, `measured: REF.NAME …` within the reference.
      if (target !== undefined)
        yield { reference: value, kinds, member: "member" in target && target.member === true && !named };
      else if (shape.value === "either") yield* usesInEither(value, shape, named);
      return;
    case "references":
      if (target !== undefined)
        for (const reference of value.items) yield { reference, kinds, member: false };
      else if (shape.value === "either") yield* usesInEither(value, shape, named);
      return;
    case "countedReferences":
      for (const { reference } of value.items) yield { reference, kinds, member: false };
      return;
    case "stops":
      for (const reference of value.jobs) yield { reference, kinds: ["job"], member: false };
      for (const reference of value.ran) yield { reference, kinds: TREE, member: false };
      return;
    case "definition": {
      const entry = entriesOf(value.word.text).find(({ blocks }) =>
        blocks.some((block) => CHANGEABLE.has(block)),
      );
      if (entry !== undefined) yield* usesInValues(value.values, entry);
      return;
    }
    default:
  }
}

function* usesInEither(
  value: ValueNode,
  shape: Shape & { value: "either" },
  named: boolean,
): Generator<ReferenceUse> {
  const option = shape.options.find((candidate) => "to" in candidate && candidate.value === value.kind);
  if (option !== undefined) yield* usesInValue(value, option, named);
}

const TREE: readonly ReferenceKind[] = ["assembly", "part", "joint", "system", "circuit"];
const CHANGEABLE: ReadonlySet<string> = new Set(TREE);
