/** The records of definition blocks, from syntax to values. */
import type { RecordNode, Span, ValueNode } from "../../../grammar/syntax.ts";
import { BUILD_RECORDS } from "./build-records.ts";
import type { DefinitionRecord, RecordWord } from "./definition-record.ts";
import { JOINT_RECORDS } from "./joint-records.ts";
import { NodeValues } from "./node-values.ts";
import { PLAN_RECORDS } from "./plan-records.ts";
import type { LowerTable } from "./record-forms.ts";
import { SYSTEM_RECORDS } from "./system-records.ts";
import { TREE_RECORDS } from "./tree-records.ts";
import type { ValueLowering } from "./values.ts";

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

const LOWER: LowerTable<RecordWord> = {
  ...BUILD_RECORDS,
  ...TREE_RECORDS,
  ...JOINT_RECORDS,
  ...SYSTEM_RECORDS,
  ...PLAN_RECORDS,
  default: (lowering, values) => {
    const record = lowerDefinitionValue(lowering, values, "value");
    return record && { record };
  },
};

function isRecordWord(word: string): word is RecordWord {
  return Object.hasOwn(LOWER, word);
}
