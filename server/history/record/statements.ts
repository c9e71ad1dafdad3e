/** What a block says of a subject: the records of its definition, and the facts of a day that mean it. */
import type { BlockNode, HeaderNode, RecordNode, ReferenceNode, Span } from "../../../grammar/syntax.ts";
import type { Defined } from "../../build/definitions.ts";
import type { Names } from "../../build/names.ts";
import { namesOf } from "../../build/names.ts";
import type { ReferenceUse } from "../../build/reference-uses.ts";
import { referenceUses } from "../../build/reference-uses.ts";
import type { TreeKind } from "../../build/tree/node.ts";
import { isWithin } from "../../build/tree/node.ts";
import type { Written } from "../../build/tree/written.ts";
import { spaced } from "../changes/things.ts";
import { nameOf } from "./earlier-names.ts";
import type { Subject } from "./subject.ts";

export interface Statement {
  /** The day of a fact; undefined of a definition. */
  readonly day: string | undefined;
  readonly word: string;
  /** `thickness`, where it is about one characteristic. */
  readonly name: string | undefined;
  /** What stands behind the word, as written, the subject left out where it is named alone. */
  readonly text: string;
  /** Of its line in the block, counted from 0. */
  readonly line: number;
  /** Two statements of one key say the same: a fact is not altered by a new name of its subject. */
  readonly key: string;
}

/** A statement before it is known by what others say the same. */
type Unkeyed = Omit<Statement, "key">;

export class Statements {
  private readonly subject: Subject;
  /** The names of the subject, now and before. */
  private readonly refs: readonly string[];
  private readonly names: Names;
  private readonly written: Written;
  private readonly known = new WeakMap<BlockNode, readonly Statement[]>();

  constructor(subject: Subject, refs: readonly string[], defined: Defined) {
    this.subject = subject;
    this.refs = refs;
    this.names = namesOf(defined);
    this.written = defined.written;
  }

  in(block: BlockNode): readonly Statement[] {
    const known = this.known.get(block);
    if (known !== undefined) return known;
    const { characteristic } = this.subject;
    const found = this.read(block)
      .filter(({ name }) => characteristic === undefined || name === characteristic)
      .map((statement): Statement => ({ ...statement, key: this.keyOf(statement) }));
    this.known.set(block, found);
    return found;
  }

  private keyOf({ day, word, text }: Unkeyed): string {
    return `${day ?? ""}\n${word}\n${day === undefined ? text : this.renamed(text)}`;
  }

  /** A text with the name now in place of those before it. */
  private renamed(text: string): string {
    const [now = "", ...earlier] = this.refs;
    return earlier.reduce((said, name) => (said.includes(name) ? said.split(name).join(now) : said), text);
  }

  private read(block: BlockNode): readonly Unkeyed[] {
    const { header } = block;
    if (header?.block === "day") return this.factsIn(block, header);
    const name = header?.block === "vehicle" ? "vehicle" : nameOf(block);
    if (header === undefined || name === undefined) return [];
    if (!this.refs.includes(name) && name !== this.subject.copyOf) return [];
    const said = recordsOf(block).map((record) => definition(block, record));
    return [{ ...titled(block, header), word: header.word.text }, ...said];
  }

  private factsIn(block: BlockNode, header: HeaderNode): readonly Unkeyed[] {
    const date = header.values.get("date");
    if (date?.kind !== "date") return [];
    const uses = referenceUses(block).filter((use) => this.isMeant(use));
    if (uses.length === 0) return [];
    return recordsOf(block).flatMap((record) => {
      const within = uses.find(({ reference }) => isInside(reference, record));
      return within === undefined ? [] : [this.fact(block, record, within, date.text)];
    });
  }

  private fact(block: BlockNode, record: RecordNode, use: ReferenceUse, day: string): Unkeyed {
    const { reference, member } = use;
    const alone = reference.segments.every(({ is }) => is === "name");
    const start = record.word.end + 1;
    const before = block.text.slice(start, reference.start);
    const behind = block.text.slice(reference.end, record.contentEnd);
    const last = reference.text.slice(reference.text.lastIndexOf(".") + 1);
    const isFirst = before.trim() === "" && !/^\s*,/.test(behind);
    const text =
      alone && isFirst && this.isSubjectItself(reference, member)
        ? `${member ? last : ""}${behind}`
        : block.text.slice(start, record.contentEnd);
    const name = record.values.get("name");
    return {
      day,
      word: record.word.text,
      name: member ? last : name?.kind === "word" ? name.text : definedName(record),
      text: spaced(text),
      line: lineAt(block, record.start),
    };
  }

  /** Not an assembly above it. */
  private isSubjectItself({ text }: ReferenceNode, member: boolean): boolean {
    const path = member ? text.slice(0, text.lastIndexOf(".")) : text;
    return this.refs.some((ref) => ref === path || ref.endsWith(`.${path}`));
  }

  private isMeant({ reference, kinds, member, one }: ReferenceUse): boolean {
    const { what } = this.subject;
    if (what !== undefined && !TREE.has(what))
      return kinds.some((kind) => kind === what) && this.refs.includes(reference.text);
    const text = member ? reference.text.slice(0, reference.text.lastIndexOf(".")) : reference.text;
    if (!this.mayMean(text)) return false;
    const inTree = kinds.filter((kind): kind is Exclude<TreeKind, "vehicle"> => TREE.has(kind));
    const nodes = member
      ? [this.names.member(this.written, reference).node].filter((node) => node !== undefined)
      : one === true
        ? [this.names.one(reference, inTree)].filter((node) => node !== undefined)
        : this.names
            .targets(reference, inTree)
            .flatMap(({ node, through }) => [node, ...(through ? [through] : [])]);
    if (nodes.some(({ path }) => this.refs.includes(path))) return true;
    // What the build does not know now, it may have known then.
    return nodes.length === 0 && wordsOf(text).some((path) => this.refs.some((ref) => meansThen(path, ref)));
  }

  /** Cheap: whether any name of the subject, or of what stands above it, is there. */
  private mayMean(text: string): boolean {
    return (
      text.includes("*") ||
      text === "vehicle" ||
      this.refs.some((ref) => ref.split(".").some((name) => text.includes(name)))
    );
  }
}

const TREE: ReadonlySet<string> = new Set(["assembly", "part", "joint", "system", "circuit", "vehicle"]);

/** The paths of a set: `front.{disc, hub}` is two. */
function wordsOf(text: string): readonly string[] {
  const set = /^([^{}]*)\{([^{}]*)\}([^{}]*)$/.exec(text);
  if (set === null) return [text];
  const [, before = "", choices = "", behind = ""] = set;
  return choices.split(",").map((choice) => `${before}${choice.trim()}${behind}`);
}

/** A path, a tail of one, an assembly above, or any of these with `*`. */
function meansThen(written: string, ref: string): boolean {
  if (!written.includes("*")) return isWithin(ref, written) || ref.endsWith(`.${written}`);
  const [names, of] = [written.split("."), ref.split(".")];
  return names.length === of.length && names.every((name, index) => name === "*" || name === of[index]);
}

function recordsOf({ items }: BlockNode): readonly RecordNode[] {
  return items.filter((item) => item.kind === "record");
}

function isInside({ start, end }: Span, record: RecordNode): boolean {
  return start >= record.start && end <= record.end;
}

function titled(block: BlockNode, { word, values, start }: HeaderNode): Unkeyed {
  const end = Math.max(word.end, ...[...values.values()].map((value) => value.end));
  const text = spaced(block.text.slice(word.end, end));
  return { day: undefined, word: word.text, name: undefined, text, line: lineAt(block, start) };
}

function definition(block: BlockNode, record: RecordNode): Unkeyed {
  const text = spaced(block.text.slice(record.word.end + 1, record.contentEnd));
  const name = record.values.get("name");
  return {
    day: undefined,
    word: record.word.text,
    name: name?.kind === "word" ? name.text : undefined,
    text,
    line: lineAt(block, record.start),
  };
}

/** Of `changed: front.left.disc limit thickness min 8.4 mm`, the thickness. */
function definedName(record: RecordNode): string | undefined {
  const inner = record.values.get("definition");
  const name = inner?.kind === "definition" ? inner.values.get("name") : undefined;
  return name?.kind === "word" ? name.text : undefined;
}

function lineAt({ lineStarts }: BlockNode, offset: number): number {
  return lineStarts.findLastIndex((start) => start <= offset);
}
