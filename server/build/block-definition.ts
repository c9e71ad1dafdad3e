/** What one block defines, apart from all others. */
import type { BlockWord } from "../../grammar/syntax.ts";
import { entriesOf, recordEntry } from "../../grammar/vocabulary/vocabulary.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import type { LoweredBlock } from "./lowering/block.ts";
import { lowerBlock } from "./lowering/block.ts";
import type { RecordWord } from "./lowering/definition-record.ts";
import { recordKey } from "./lowering/definition-record.ts";
import { Remembered } from "./remembered.ts";
import type { BlockSite, Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { SourcedRecord, Turn } from "./tree/node.ts";
import type { TextDefinition } from "./tree/text-definition.ts";
import type { Vehicle } from "./tree/tree.ts";

export type NamedKind = "job" | "hold" | "supplier" | "gauge" | "setup" | "donor";

/** A job, hold point, supplier, gauge, setup or donor as its block has it. */
export interface WrittenName {
  readonly name: string;
  readonly kind: NamedKind;
  readonly title: string | undefined;
  readonly header: Place;
  readonly records: readonly SourcedRecord[];
  readonly lost: readonly Place[];
}

/** What one block defines, and what is wrong with its text. */
export interface BlockDefinition {
  readonly definition:
    | { readonly is: "vehicle"; readonly vehicle: Vehicle & { readonly header: Place } }
    | { readonly is: "in tree"; readonly definition: TextDefinition }
    | { readonly is: "named"; readonly definition: WrittenName }
    | undefined;
  readonly findings: readonly Finding[];
}

const remembered = new Remembered<BlockSite, BlockDefinition>();

/** What a block defines: the same object for as long as the block is. */
export function definedIn(site: BlockSite): BlockDefinition {
  return remembered.of(site, [site.block], () => readBlock(site));
}

function readBlock(site: BlockSite): BlockDefinition {
  const lowered = lowerBlock(site.block);
  const findings = findingsAbout(site, lowered);
  if (lowered.is !== "definition") return { definition: undefined, findings };
  const { block, name, title, like, nameAt } = lowered;
  const written = lowered.records.map((record): SourcedRecord => ({ record, site, turns: NO_TURNS }));
  const records = thatCount(block, written);
  const header = placeAt(site, nameAt);
  const lost = lowered.lost.map((span) => placeAt(site, span));
  const said = { title, header, records, lost };
  return { definition: definitionIn(), findings: [...findings, ...repeats(block, written)] };

  function definitionIn(): BlockDefinition["definition"] {
    if (block === "vehicle") return { is: "vehicle", vehicle: { ...said, title: name } };
    if (!isInTree(block)) return { is: "named", definition: { ...said, name, kind: block } };
    return {
      is: "in tree",
      definition: { ...said, path: name, kind: block, site, like, copyOf: undefined },
    };
  }
}

const NO_TURNS: readonly Turn[] = [];

function isInTree(block: Definition["block"]): block is TextDefinition["kind"] {
  return TREE_BLOCKS.has(block);
}

/** A record that may stand once in a block, said twice: the last counts. */
function repeats(block: BlockWord, records: readonly SourcedRecord[]): Finding[] {
  const seen = new Map<string, SourcedRecord>();
  const findings: Finding[] = [];
  for (const sourced of records) {
    const key = onceKey(block, sourced);
    if (key === undefined) continue;
    const first = seen.get(key);
    if (first !== undefined) {
      const place = placeAt(sourced.site, sourced.record.at);
      findings.push(saidTwice("record", nameOf(sourced), place, placeAt(first.site, first.record.at)));
    }
    seen.set(key, sourced);
  }
  return findings;
}

export function saidTwice(what: string, name: string, place: Place, first: Place): Finding {
  return finding("duplicate-name", place, { what, name }, { seeAlso: [{ place: first, role: "the first" }] });
}

const TREE_BLOCKS: ReadonlySet<BlockWord> = new Set(["assembly", "part", "joint", "system", "circuit"]);
type Definition = LoweredBlock & { is: "definition" };

/** What is wrong with the text of a block. */
export function findingsAbout(site: BlockSite, { faults }: LoweredBlock): readonly Finding[] {
  if (faults.length === 0) return NOTHING;
  return faults.map((fault) => {
    const { code, found, expected, fixes } = fault;
    const reason = "reason" in fault ? fault.reason : undefined;
    return finding(code, placeAt(site, fault), { found, expected, reason }, { fixes });
  });
}

const NOTHING: readonly Finding[] = [];

/** Words that may repeat, but say one thing for each name. */
const ONCE_BY_NAME: ReadonlySet<RecordWord> = new Set(["size", "setting", "test", "calc"]);

/** What a record says once in a block; undefined where several may stand side by side. */
function onceKey(block: BlockWord, { record }: SourcedRecord): string | undefined {
  const said = record.word === "default" ? record.record : record;
  const entry = record.word === "default" ? entriesOf(said.word)[0] : recordEntry(block, said.word);
  return entry?.repeats === true && !ONCE_BY_NAME.has(said.word) ? undefined : recordKey(record);
}

function nameOf({ record }: SourcedRecord): string {
  if (record.word === "default") return `default: ${record.record.word}`;
  return "name" in record ? `${record.word}: ${record.name}` : `${record.word}:`;
}

/** Of records that say one thing, the last. */
export function thatCount(block: BlockWord, records: readonly SourcedRecord[]): readonly SourcedRecord[] {
  const last = new Map(records.map((sourced) => [onceKey(block, sourced) ?? sourced, sourced]));
  return last.size === records.length
    ? records
    : records.filter((sourced) => last.get(onceKey(block, sourced) ?? sourced) === sourced);
}
