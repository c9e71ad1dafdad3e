/**
 * What is defined at one moment: the blocks as written, `changed:` in force, and `default:` of the assemblies above
 * for what a thing says nothing about itself.
 */
import type { BlockWord } from "../../../grammar/syntax.ts";
import { recordEntry } from "../../../grammar/vocabulary/vocabulary.ts";
import type { RecordWord } from "../lowering/definition-record.ts";
import { recordKey } from "../lowering/definition-record.ts";
import type { SourcedRecord, TreeNode } from "./node.ts";

export class Definitions {
  private readonly changes: ReadonlyMap<TreeNode, readonly SourcedRecord[]>;
  private readonly effective = new Map<TreeNode, ReadonlyMap<RecordWord, readonly SourcedRecord[]>>();

  constructor(changes: ReadonlyMap<TreeNode, readonly SourcedRecord[]> = new Map()) {
    this.changes = changes;
  }

  /** These definitions with the changes of one day carried out, all at once. */
  with(changes: readonly { readonly node: TreeNode; readonly record: SourcedRecord }[]): Definitions {
    const next = new Map(this.changes);
    for (const { node, record } of changes) {
      const key = recordKey(record.record);
      const before = next.get(node) ?? node.records;
      next.set(node, [
        ...before.filter(
          (other) => recordKey(other.record) !== key || changes.some((change) => change.record === other),
        ),
        record,
      ]);
    }
    return new Definitions(next);
  }

  /** Every record of a word, in order; empty where nothing is said. */
  all<W extends RecordWord>(node: TreeNode, word: W): readonly SourcedRecord<W>[] {
    return (this.of(node).get(word) ?? []) as readonly SourcedRecord<W>[];
  }

  /** The record of a word that counts: the last one. */
  one<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    return this.all(node, word).at(-1);
  }

  private of(node: TreeNode): ReadonlyMap<RecordWord, readonly SourcedRecord[]> {
    const known = this.effective.get(node);
    if (known !== undefined) return known;
    const records = [...(this.changes.get(node) ?? node.records)];
    const said = new Set(records.map(({ record }) => recordKey(record)));
    for (const fallback of this.defaultsAbove(node)) {
      if (!said.has(recordKey(fallback.record))) records.push(fallback);
    }
    const grouped = new Map<RecordWord, SourcedRecord[]>();
    for (const sourced of records) {
      const same = grouped.get(sourced.record.word);
      if (same === undefined) grouped.set(sourced.record.word, [sourced]);
      else same.push(sourced);
    }
    this.effective.set(node, grouped);
    return grouped;
  }

  /** The defaults that reach a thing, of the nearest assembly that has one for each word and name. */
  private defaultsAbove(node: TreeNode): SourcedRecord[] {
    const found = new Map<string, SourcedRecord[]>();
    for (let above = node.parent; above !== undefined; above = above.parent) {
      const here = new Map<string, SourcedRecord[]>();
      for (const sourced of this.changes.get(above) ?? above.records) {
        if (sourced.record.word !== "default") continue;
        const { record } = sourced.record;
        if (node.kind === "vehicle" || recordEntry(node.kind as BlockWord, record.word) === undefined)
          continue;
        const key = recordKey(record);
        here.set(key, [...(here.get(key) ?? []), { ...sourced, record }]);
      }
      for (const [key, records] of here) if (!found.has(key)) found.set(key, records);
    }
    return [...found.values()].flat();
  }
}
