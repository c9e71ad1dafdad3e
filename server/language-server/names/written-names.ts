/**
 * Every name that is written in a block, with the place where it stands and what kind of thing it can be the name of.
 * It depends on the block's text alone and is remembered with it; what a name means in a build is `meaning.ts`.
 */
import type {
  BlockNode,
  BlockWord,
  DefinitionNode,
  Expression,
  HeaderNode,
  RecordNode,
  ReferenceNode,
  Span,
  ValueNode,
} from "../../../grammar/syntax.ts";
import type { ReferenceKind } from "../../../grammar/vocabulary/shape.ts";
import { TREE_KINDS } from "../../../grammar/vocabulary/shape.ts";
import type { NamedKind } from "../../build/block-definition.ts";
import type { ReferenceUse } from "../../build/reference-uses.ts";
import { referenceUses } from "../../build/reference-uses.ts";
import { namesIn } from "../../expressions/names.ts";
import type { SpelledPath } from "../text/reference-segments.ts";
import { spelledPaths } from "../text/reference-segments.ts";

export type WrittenName = Span & {
  readonly text: string;
  /** True where the name is given to a thing, and not used. */
  readonly defines: boolean;
} & (
    | { readonly is: "vehicle" }
    /** A name of a path in a header, up to which the path is `path`. */
    | { readonly is: "in path"; readonly path: string }
    | { readonly is: "named"; readonly kinds: readonly NamedKind[] }
    /** A name of a reference: for each path that it is part of, the path and its place in it. */
    | {
        readonly is: "in reference";
        readonly use: ReferenceUse;
        readonly in: readonly { readonly path: SpelledPath; readonly index: number }[];
      }
    /** A characteristic: of the block's own thing, of one that is referred to, or at the end of a reference. */
    | { readonly is: "characteristic"; readonly of: "block" | ReferenceNode | SpelledPath }
    | { readonly is: "snag" }
    | { readonly is: "order" }
    /** A name without dots in an expression, or one that `calc:` gives. */
    | { readonly is: "calculated" }
    | { readonly is: "function" }
  );

const remembered = new WeakMap<BlockNode, readonly WrittenName[]>();

/** The names of a block, in no particular order. */
export function writtenNames(block: BlockNode): readonly WrittenName[] {
  let names = remembered.get(block);
  if (names === undefined) {
    names = [...namesInBlock(block)];
    remembered.set(block, names);
  }
  return names;
}

function* namesInBlock(block: BlockNode): Generator<WrittenName> {
  const { header } = block;
  if (header !== undefined) yield* namesInHeader(header);
  for (const item of block.items)
    if (item.kind === "record" && item.known) yield* namesInRecord(item, header?.block);
  for (const use of referenceUses(block)) yield* namesInReference(use);
}

const IN_TREE: ReadonlySet<BlockWord> = new Set(TREE_KINDS);

function* namesInHeader({ block, values }: HeaderNode): Generator<WrittenName> {
  const name = values.get("name");
  const title = values.get("title");
  if (block === "vehicle" && title?.kind === "string")
    yield { is: "vehicle", ...spanOf(title), text: title.text, defines: true };
  if (block === undefined || name?.kind !== "word") return;
  if (IN_TREE.has(block)) {
    yield* namesInPath(name, true);
    const like = values.get("like");
    if (like?.kind === "word") yield* namesInPath(like, false);
  } else yield { is: "named", kinds: [block as NamedKind], ...spanOf(name), text: name.text, defines: true };
}

function* namesInPath(word: Span & { readonly text: string }, defines: boolean): Generator<WrittenName> {
  const [names = []] = spelledPaths(word);
  for (const [index, name] of names.entries()) {
    const path = names.slice(0, index + 1).map(({ text }) => text);
    const isLast = index === names.length - 1;
    yield { is: "in path", path: path.join("."), ...name, defines: defines && isLast };
  }
}

/** Words whose `name` is a characteristic, given to the block's own thing. */
const GIVING: ReadonlySet<string> = new Set(["limit", "size", "setting", "fit", "pair", "test"]);
/** Facts whose `name` is a characteristic of what they tell of. */
const TELLING: ReadonlySet<string> = new Set(["measured", "set", "tested"]);

function* namesInRecord(record: RecordNode, block: BlockWord | undefined): Generator<WrittenName> {
  const { values } = record;
  const word = record.word.text;
  const name = values.get("name");
  const what = values.get("what");
  if (name?.kind === "word") {
    const written = { ...spanOf(name), text: name.text };
    if (word === "calc") yield { is: "calculated", ...written, defines: true };
    else if (GIVING.has(word)) yield { is: "characteristic", of: "block", ...written, defines: true };
    else if (TELLING.has(word)) {
      const [first] = referencesIn(what);
      if (first !== undefined) yield { is: "characteristic", of: first, ...written, defines: false };
    } else if (word === "snag") yield { is: "snag", ...written, defines: true };
  }
  if (name?.kind === "reference") yield { is: "snag", ...spanOf(name), text: name.text, defines: false };
  const order = values.get(word === "ordered" ? "ref" : "order");
  if (order?.kind === "string")
    yield { is: "order", ...spanOf(order), text: order.text, defines: word === "ordered" };
  for (const value of values.values()) {
    if (value.kind === "expression") yield* namesInExpression(value.tree);
    if (value.kind === "definition") yield* namesInDefinition(value, what, block);
  }
}

/** `changed: REF limit NAME …`, `default: limit NAME …`. */
function* namesInDefinition(
  { word, values }: DefinitionNode,
  what: ValueNode | undefined,
  block: BlockWord | undefined,
): Generator<WrittenName> {
  const name = values.get("name");
  if (name?.kind !== "word" || !GIVING.has(word.text)) return;
  const [of] = block === "day" ? referencesIn(what) : ["block" as const];
  if (of !== undefined) yield { is: "characteristic", of, ...spanOf(name), text: name.text, defines: true };
}

function* namesInReference(use: ReferenceUse): Generator<WrittenName> {
  const { reference, kinds } = use;
  if (kinds.includes("snag")) return;
  const named = kinds.filter((kind): kind is NamedKind => !IN_TREE_OR_SNAG.has(kind));
  if (named.length === kinds.length) {
    yield { is: "named", kinds: named, ...spanOf(reference), text: reference.text, defines: false };
    return;
  }
  // A place that takes both (`found:` of a part or a gauge): a name without dots may be either.
  if (named.length > 0 && !reference.text.includes("."))
    yield { is: "named", kinds: named, ...spanOf(reference), text: reference.text, defines: false };
  const places = new Map<number, { path: SpelledPath; index: number }[]>();
  for (const spelled of spelledPaths(reference)) {
    const path = use.member ? spelled.slice(0, -1) : spelled;
    for (const [index, { start }] of path.entries()) {
      const known = places.get(start);
      if (known === undefined) places.set(start, [{ path, index }]);
      else known.push({ path, index });
    }
    const last = spelled.at(-1);
    if (use.member && last !== undefined) yield { is: "characteristic", of: path, ...last, defines: false };
  }
  for (const within of places.values()) {
    const [first] = within;
    const name = first?.path[first.index];
    if (name !== undefined && name.text !== "*")
      yield { is: "in reference", use, in: within, ...name, defines: false };
  }
}

const IN_TREE_OR_SNAG: ReadonlySet<ReferenceKind> = new Set([...TREE_KINDS, "snag"]);

/** Names without a path; those with one are references, and come with them. */
function* namesInExpression(tree: Expression): Generator<WrittenName> {
  for (const name of namesIn(tree))
    if (!name.text.includes(".")) yield { is: "calculated", ...name, defines: false };
  yield* calledIn(tree);
}

function* calledIn(node: Expression): Generator<WrittenName> {
  switch (node.is) {
    case "call":
      yield { is: "function", ...spanOf(node.name), text: node.name.text, defines: false };
      for (const argument of node.arguments) yield* calledIn(argument);
      return;
    case "negative":
    case "conversion":
      yield* calledIn(node.of);
      return;
    case "binary":
      yield* calledIn(node.left);
      yield* calledIn(node.right);
      return;
    default:
  }
}

/** The references of a value that takes one or several. */
export function referencesIn(value: ValueNode | undefined): readonly ReferenceNode[] {
  switch (value?.kind) {
    case "reference":
      return [value];
    case "references":
      return value.items;
    case "countedReferences":
      return value.items.map(({ reference }) => reference);
    default:
      return [];
  }
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
