/** One block lowered: a pure function of its syntax, remembered with it, so that an untouched block costs nothing. */
import type { BlockNode, BlockWord, HeaderNode, ItemNode, Span, WordNode } from "../../../grammar/syntax.ts";
import { RESERVED_NAMES } from "../../../grammar/vocabulary/words.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import { readThread } from "../../trade/thread.ts";
import { asKept } from "../list-under.ts";
import { complainOfSense } from "./block-sense.ts";
import type { DefinitionRecord } from "./definition-record.ts";
import { lowerRecord } from "./definitions.ts";
import type { LoweredFact } from "./fact.ts";
import { lowerFact } from "./facts.ts";
import type { LoweringFault, TextFault } from "./fault.ts";
import { inHours } from "./times.ts";
import { ValueLowering } from "./values.ts";

export type LoweredBlock = { readonly faults: readonly TextFault[] } & (
  | { readonly is: "nothing" }
  | {
      readonly is: "definition";
      readonly block: Exclude<BlockWord, "day">;
      /** The name or path; of a vehicle its title. */
      readonly name: string;
      readonly nameAt: Span;
      readonly title: string | undefined;
      readonly like: WordNode | undefined;
      readonly header: HeaderNode;
      readonly records: readonly DefinitionRecord[];
      /** Records that could not be read: what they would have said is unknown. */
      readonly lost: readonly Span[];
    }
  | {
      readonly is: "day";
      /** Undefined where the date could not be read: the facts are then kept but count for nothing. */
      readonly date: IsoDate | undefined;
      readonly hours: Decimal | undefined;
      readonly header: HeaderNode;
      readonly facts: readonly LoweredFact[];
      readonly lost: readonly Span[];
    }
);

const remembered = new WeakMap<BlockNode, LoweredBlock>();

export function lowerBlock(block: BlockNode): LoweredBlock {
  const known = remembered.get(block);
  if (known !== undefined) return known;
  const lowered = lowerAfresh(block);
  remembered.set(block, lowered);
  return lowered;
}

function lowerAfresh(block: BlockNode): LoweredBlock {
  const { header } = block;
  const lowering = new ValueLowering(block.text);
  const syntax = block.items.flatMap((item) => ("faults" in item ? item.faults : []));
  const faults = () => asKept([...syntax, ...lowering.faults].sort((a, b) => a.start - b.start));
  if (header?.block === undefined) return { is: "nothing", faults: faults() };
  if (header.block === "day") {
    const { read: facts, lost } = lowerRecords(block, (record) => loweredFacts.of(lowering, record));
    const date = header.values.get("date");
    const hours = header.values.get("hours");
    return {
      is: "day",
      date: date?.kind === "date" ? lowering.date(date) : undefined,
      hours: hours?.kind === "quantity" ? inHours(lowering, hours) : undefined,
      header,
      facts,
      lost,
      faults: faults(),
    };
  }
  const name = header.values.get(header.block === "vehicle" ? "title" : "name");
  if (name === undefined || (name.kind !== "word" && name.kind !== "string"))
    return { is: "nothing", faults: faults() };
  if (name.kind === "word") refuseReserved(lowering, name, header.block);
  const { read, lost } = lowerRecords(block, (record) => loweredRecords.of(lowering, record));
  const refused = complainOfSense(lowering, block, header.block, read);
  const records = asKept(read.filter((record) => !refused.has(record)));
  const title = header.values.get("title");
  const like = header.values.get("like");
  return {
    is: "definition",
    block: header.block,
    name: name.text,
    nameAt: { start: name.start, end: name.end },
    title: title?.kind === "string" ? title.text : undefined,
    like: like?.kind === "word" ? like : undefined,
    header,
    records,
    lost: asKept([...lost, ...[...refused].map(({ at }) => at)]),
    faults: faults(),
  };
}

type Record = ItemNode & { kind: "record" };

interface LineRead<Read> {
  readonly read: Read | undefined;
  readonly faults: readonly LoweringFault[];
}

/** What lines say, which stays the same as long as the line does, although its block may not. */
class LinesRead<Read> {
  private readonly kept = new WeakMap<Record, LineRead<Read>>();
  private readonly lower: (lowering: ValueLowering, record: Record) => Read | undefined;

  constructor(lower: (lowering: ValueLowering, record: Record) => Read | undefined) {
    this.lower = lower;
  }

  of(lowering: ValueLowering, record: Record): Read | undefined {
    const known = this.kept.get(record);
    if (known !== undefined) {
      lowering.faults.push(...known.faults);
      return known.read;
    }
    const before = lowering.faults.length;
    const read = this.lower(lowering, record);
    this.kept.set(record, { read, faults: asKept(lowering.faults.slice(before)) });
    return read;
  }
}

const loweredFacts = new LinesRead<LoweredFact>(lowerFact);
const loweredRecords = new LinesRead<DefinitionRecord>(lowerRecord);

function lowerRecords<T>(
  block: BlockNode,
  lower: (record: Record) => T | undefined,
): { readonly read: readonly T[]; readonly lost: readonly Span[] } {
  const read: T[] = [];
  const lost: Span[] = [];
  for (const item of block.items) {
    if (item.kind !== "record") continue;
    const lowered = lower(item);
    if (lowered !== undefined) read.push(lowered);
    else lost.push({ start: item.word.start, end: item.contentEnd });
  }
  return { read: asKept(read), lost: asKept(lost) };
}

/** A name that the notation reads as something else could never be referred to. */
function refuseReserved(lowering: ValueLowering, name: WordNode, block: BlockWord): void {
  const reserved: readonly string[] = RESERVED_NAMES;
  const thread = !("fault" in readThread(name.text));
  if (!reserved.includes(name.text) && !thread) return;
  const reason = thread ? `${name.text} reads as a thread` : `${name.text} is a word of the notation`;
  lowering.complain("reserved-name", name, `another name for this ${block}`, { reason });
}
