/**
 * One block from its text: the header, and the lines under it as records, prose, comments and blanks. A block's
 * tree depends on its own text alone, which is what lets an edit leave all other blocks as they are.
 */
import { headerStart } from "./header-shape.ts";
import type { Content, Line } from "./lines.ts";
import { blanked, classifyLine, contentEndOf, contentOf, lineStartsOf } from "./lines.ts";
import { nearest } from "./nearest.ts";
import { readStatement } from "./statement.ts";
import type {
  BlockNode,
  BlockWord,
  CommentNode,
  HeaderNode,
  ItemNode,
  RecordNode,
  StrayNode,
  SyntaxFault,
  SyntaxFix,
  WordNode,
} from "./syntax.ts";
import { Values } from "./values.ts";
import type { ArgumentShape } from "./vocabulary/shape.ts";
import { textsOf } from "./vocabulary/texts-of.ts";
import {
  blockEntry,
  entriesIn,
  entriesOf,
  recordEntry,
  recordWords,
  vocabulary,
} from "./vocabulary/vocabulary.ts";
import { isSpace } from "./white-space.ts";

/**
 * Reads a block. `text` starts with a header line, unless it is what stands above the first header of a file.
 *
 * @param before the block as it was before an edit: the lines above the edit keep their trees
 */
export function readBlock(text: string, before?: BlockNode): BlockNode {
  return new BlockReader(text).read(before);
}

class BlockReader {
  private readonly text: string;
  private readonly lineStarts: number[];
  private line = 0;
  private block: BlockWord | undefined;
  /** False above the first header of a file, where nothing takes a record. */
  private hasHeader = false;

  constructor(text: string) {
    this.text = text;
    this.lineStarts = lineStartsOf(text);
  }

  read(before: BlockNode | undefined): BlockNode {
    const above = before === undefined ? NONE : itemsAbove(before, this.text);
    const items = above.slice(0, -1);
    const last = items.at(-1);
    const header = last === undefined ? this.readHeader() : before?.header;
    if (last !== undefined) this.line = this.lineStarts.findLastIndex((start) => start <= last.end);
    else if (header !== undefined) items.push(header);
    this.block = header?.block;
    this.hasHeader = header !== undefined;
    const lowest = items.length === 0 ? undefined : above.at(-1);
    while (this.line < this.lineStarts.length && this.startOf(this.line) < this.text.length) {
      const item = this.readItem();
      // It is read from its own text alone.
      items.push(item.start === lowest?.start && item.end === lowest.end ? lowest : item);
    }
    // Copies, which have no room left for more.
    return new Block(this.text, header, items.slice(), this.lineStarts.slice());
  }

  private readHeader(): HeaderNode | undefined {
    const end = this.endOf(0);
    const contentEnd = contentEndOf(this.text, 0, end);
    const start = headerStart(this.text, 0, contentEnd);
    if (start === undefined) return undefined;
    this.line = 1;
    const content = contentOf(this.text, 0, contentEnd);
    const word = this.word(0, start.word.length);
    const { block } = start;
    const entry = block === undefined ? undefined : blockEntry(block);
    const reading =
      entry === undefined
        ? NOTHING_READ
        : readStatement(entry, this.text.slice(word.end, content.end), word.end);
    const comments = this.comments([content], [contentEnd]);
    return {
      kind: "header",
      start: 0,
      end,
      word,
      block,
      values: reading.values,
      broken: reading.broken,
      faults: joined(
        block === word.text ? NONE : [unknownBlock(word, block)],
        joined(reading.faults, waiverFaults(comments)),
      ),
      comments,
    };
  }

  private readItem(): ItemNode {
    const start = this.startOf(this.line);
    const end = this.endOf(this.line);
    const line = classifyLine(this.text, start, contentEndOf(this.text, start, end));
    if (line.is === "record") return this.readRecord(line);
    this.line++;
    return line.is === "column 0" ? this.stray(start, end) : { kind: line.is, start, end };
  }

  private readRecord(line: Line & { is: "record" }): RecordNode {
    const first = this.line;
    const contents = this.contentsOfRecord(line.valueStart);
    const last = contents.at(-1) as Content;
    const ends = contents.map((_, index) =>
      contentEndOf(this.text, this.startOf(first + index), this.endOf(first + index)),
    );
    const word = this.word(line.wordStart, line.wordEnd);
    const shape = line.form === "record" ? this.shapeOf(word) : malformed(word, line, this.text);
    const known = !("faults" in shape);
    const comments = this.comments(contents, ends);
    const reading = known
      ? readStatement(shape, blanked(this.text, line.valueStart, last.end, comments), line.valueStart)
      : { ...NOTHING_READ, faults: shape.faults };
    return {
      kind: "record",
      start: this.startOf(first),
      end: this.endOf(this.line - 1),
      contentEnd: Math.max(last.end, line.valueStart),
      word,
      known,
      values: reading.values,
      broken: reading.broken,
      faults: joined(reading.faults, waiverFaults(comments)),
      comments,
    };
  }

  /** The content of the record's lines: its own, and those that go on with it. Moves behind them. */
  private contentsOfRecord(valueStart: number): Content[] {
    const contents: Content[] = [];
    let start = valueStart;
    for (;;) {
      const end = contentEndOf(this.text, start, this.endOf(this.line));
      const content = contentOf(this.text, start, end);
      contents.push(content);
      this.line++;
      if (!content.asksForMore || !this.goesOn()) return contents;
      start = this.startOf(this.line);
    }
  }

  /** True where the line at hand can go on with the record above it. */
  private goesOn(): boolean {
    if (this.line >= this.lineStarts.length) return false;
    const start = this.startOf(this.line);
    const end = contentEndOf(this.text, start, this.endOf(this.line));
    return classifyLine(this.text, start, end).is === "prose" && !startsWithBar(this.text, start);
  }

  /** The shape by which a record word is read here, or what is wrong with it. */
  private shapeOf(word: WordNode): ArgumentShape | { readonly faults: readonly SyntaxFault[] } {
    const entry = this.block === undefined ? entriesOf(word.text)[0] : recordEntry(this.block, word.text);
    if (entry !== undefined && this.hasHeader) return entry;
    const makeProse: SyntaxFix = {
      start: word.start,
      end: word.start,
      text: "| ",
      title: "Keep the line as prose",
      sure: false,
    };
    const places = entriesOf(word.text).flatMap(({ blocks }) => blocks);
    if (places.length > 0) {
      return {
        faults: [
          {
            ...fault("record-not-here", word),
            expected: `it in a block of ${[...new Set(places)].join(", ")}`,
            fixes: [makeProse],
          },
        ],
      };
    }
    const here =
      this.block === undefined ? recordWords : entriesIn(this.block).map((candidate) => candidate.word);
    const near = nearest(word.text, here);
    const candidates = near.length > 0 ? near : nearest(word.text, recordWords);
    const fixes = candidates.map(
      (text, index): SyntaxFix => ({
        start: word.start,
        end: word.end,
        text,
        title: `Write ${text}`,
        sure: index === 0 && candidates.length === 1,
      }),
    );
    return {
      faults: [
        { ...fault("unknown-record", word), expected: candidates.join(" or "), fixes: [...fixes, makeProse] },
      ],
    };
  }

  private comments(contents: readonly Content[], ends: readonly number[]): readonly CommentNode[] {
    if (contents.every(({ comment }) => comment === undefined)) return NONE;
    return contents.flatMap(({ comment }, index) => {
      const end = ends[index] as number;
      return comment === undefined ? [] : [commentNode(this.text, comment, end)];
    });
  }

  private stray(start: number, end: number): StrayNode {
    const contentEnd = contentEndOf(this.text, start, end);
    const found = this.text.slice(start, contentEnd);
    const known = vocabulary.blocks.find(({ word }) => found === word || found.startsWith(`${word} `));
    const expected =
      known === undefined
        ? "the start of a block, or an indented line"
        : `${known.word} as in: ${textsOf(known).example}`;
    const indent: SyntaxFix = { start, end: start, text: "  ", title: "Indent the line", sure: false };
    return {
      kind: "stray",
      start,
      end,
      faults: [{ code: "unreadable-line", start, end: contentEnd, found, expected, fixes: [indent] }],
    };
  }

  private word(start: number, end: number): WordNode {
    return { kind: "word", text: this.text.slice(start, end), start, end };
  }

  private startOf(line: number): number {
    return this.lineStarts[line] ?? this.text.length;
  }

  private endOf(line: number): number {
    return this.lineStarts[line + 1] ?? this.text.length;
  }
}

/** A block that can do without its items: they are then read again whenever they are asked for. */
class Block implements BlockNode {
  readonly text: string;
  readonly header: HeaderNode | undefined;
  readonly lineStarts: readonly number[];
  private kept: readonly ItemNode[] | undefined;
  /** Items that were read again, for as long as someone or the collector of memory still has them. */
  private lent: WeakRef<readonly ItemNode[]> | undefined;

  constructor(
    text: string,
    header: HeaderNode | undefined,
    items: readonly ItemNode[],
    lineStarts: readonly number[],
  ) {
    this.text = text;
    this.header = header;
    this.lineStarts = lineStarts;
    this.kept = items;
    this.lent = undefined;
  }

  get items(): readonly ItemNode[] {
    const known = this.kept ?? this.lent?.deref();
    if (known !== undefined) return known;
    const { items } = readBlock(this.text);
    const again = this.header === undefined ? items : [this.header, ...items.slice(1)];
    this.lent = new WeakRef(again);
    return again;
  }

  forget(): void {
    this.kept = undefined;
  }
}

/** Lets go of the items of a block, which are most of its tree. Who asks for them later is given others that say the same. */
export function forgetItems(block: BlockNode): void {
  if (block instanceof Block) block.forget();
}

/**
 * The items of a block whose text a changed text has too, header first: of the last it is not known whether it is the same,
 * since a line can say that the next one goes on with it. None where the header is not the same.
 */
function itemsAbove({ items, header, text: before }: BlockNode, text: string): readonly ItemNode[] {
  if (header === undefined) return [];
  const most = Math.min(before.length, text.length);
  let same = 0;
  while (same < most && before.charCodeAt(same) === text.charCodeAt(same)) same++;
  const firstOther = items.findIndex(({ end }) => end >= same);
  return items.slice(0, Math.max(0, firstOther));
}

/** Prose by its bar: such a line goes on with nothing. */
function startsWithBar(text: string, start: number): boolean {
  let at = start;
  while (isSpace(text.charCodeAt(at))) at++;
  return text.charAt(at) === "|";
}

/** Most statements have no fault and no comment, and share that. */
const NONE: readonly never[] = [];

/** Two lists in one: one of them where the other is empty. */
function joined<Item>(one: readonly Item[], other: readonly Item[]): readonly Item[] {
  if (other.length === 0) return one;
  return one.length === 0 ? other : [...one, ...other];
}

const NOTHING_READ = { values: new Values(), broken: true, faults: NONE as readonly SyntaxFault[] } as const;

function fault(code: SyntaxFault["code"], word: WordNode): Omit<SyntaxFault, "expected" | "fixes"> {
  return { code, start: word.start, end: word.end, found: word.text };
}

function unknownBlock(word: WordNode, block: BlockWord | undefined): SyntaxFault {
  const fixes: SyntaxFix[] =
    block === undefined
      ? []
      : [{ start: word.start, end: word.end, text: block, title: `Write ${block}`, sure: true }];
  return {
    ...fault("unknown-block", word),
    expected: block ?? vocabulary.blocks.map((entry) => entry.word).join(" "),
    fixes,
  };
}

/** A known word in other case, or with its colon misplaced: never silently prose. */
function malformed(
  word: WordNode,
  line: Line & { is: "record" },
  text: string,
): { readonly faults: readonly SyntaxFault[] } {
  const right = `${word.text.toLowerCase()}: `;
  let end = line.valueStart;
  while (isSpace(text.charCodeAt(end))) end++;
  const mend: SyntaxFix = { start: word.start, end, text: right, title: `Write ${right.trim()}`, sure: true };
  const prose: SyntaxFix = {
    start: word.start,
    end: word.start,
    text: "| ",
    title: "Keep the line as prose",
    sure: false,
  };
  const written = { start: word.start, end: line.valueStart };
  return {
    faults: [
      {
        code: "unknown-record",
        ...written,
        found: text.slice(written.start, written.end),
        expected: `${right}…`,
        reason: "a record is its word in small letters, a colon and a space",
        fixes: [mend, prose],
      },
    ],
  };
}

const WAIVER = /^#[\s\u00a0]+waived[\s\u00a0]+([A-Za-z0-9-]+)[\s\u00a0]*(?::([\s\S]*))?$/;
/** Behind a code with a hyphen, a reason without the colon is a waiver all the same: one that lacks its reason. */
const WAIVER_WITHOUT_COLON = /^#[\s\u00a0]+waived[\s\u00a0]+([a-z0-9]+(?:-[a-z0-9]+)+)[\s\u00a0]+[^:\s]/;

function commentNode(text: string, start: number, end: number): CommentNode {
  const comment = text.slice(start, end);
  const [, code = "", reason = ""] = WAIVER.exec(comment) ?? WAIVER_WITHOUT_COLON.exec(comment) ?? [];
  return { start, end, waiver: code === "" ? undefined : { code, reason: reason.trim(), start, end } };
}

function waiverFaults(comments: readonly CommentNode[]): readonly SyntaxFault[] {
  if (comments.length === 0) return NONE;
  return comments.flatMap(({ waiver }) => {
    if (waiver === undefined || waiver.reason !== "") return [];
    const { start, end, code } = waiver;
    const expected = `the reason behind a colon: # waived ${code}: measured again, see the day`;
    return [{ code: "waiver-without-reason", start, end, found: `# waived ${code}`, expected, fixes: [] }];
  });
}
