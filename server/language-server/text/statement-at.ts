/** Where a cursor stands in the syntax of a block: the line, its entry in the vocabulary, and the values around it. */
import type { BlockNode, HeaderNode, ItemNode, RecordNode } from "../../../grammar/syntax.ts";
import type { BlockEntry, RecordEntry } from "../../../grammar/vocabulary/shape.ts";
import { blockEntry, entriesOf, recordEntry } from "../../../grammar/vocabulary/vocabulary.ts";
import type { InnerNode } from "./inner-nodes.ts";
import { innerNodes, touches } from "./inner-nodes.ts";

/** The item that holds an offset; at the end of the text the last one. */
export function itemAt({ items }: BlockNode, offset: number): ItemNode | undefined {
  let low = 0;
  let high = items.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((items[middle] as ItemNode).start <= offset) low = middle;
    else high = middle - 1;
  }
  return items[low];
}

/** The header or record that an offset stands in. */
export function statementAt(block: BlockNode, offset: number): HeaderNode | RecordNode | undefined {
  const item = itemAt(block, offset);
  return item?.kind === "header" || item?.kind === "record" ? item : undefined;
}

/** What the vocabulary says of a header or record; undefined where its word is not known there. */
export function entryOf(
  block: BlockNode,
  statement: HeaderNode | RecordNode,
): BlockEntry | RecordEntry | undefined {
  const word = block.header?.block;
  if (statement.kind === "header") return word === undefined ? undefined : blockEntry(word);
  if (!statement.known) return undefined;
  return word === undefined ? entriesOf(statement.word.text)[0] : recordEntry(word, statement.word.text);
}

/** A value that an offset touches, with the role it has in its statement and the nodes down to the innermost. */
export interface ValueAt {
  readonly role: string;
  readonly nodes: readonly [InnerNode, ...InnerNode[]];
}

export function valueAt(statement: HeaderNode | RecordNode, offset: number): ValueAt | undefined {
  for (const [role, value] of statement.values) {
    if (!touches(value, offset)) continue;
    const [first, ...inner] = [...innerNodes(value)].filter((node) => touches(node, offset));
    if (first !== undefined) return { role, nodes: [first, ...inner] };
  }
  return undefined;
}
