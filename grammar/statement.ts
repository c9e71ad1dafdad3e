/**
 * Reads what stands behind a header or record word, by the shape that the vocabulary gives it: elements in their
 * places, then clauses in any order, then a note. It recovers within the line: a bad clause costs that clause, and
 * only something that the statement cannot do without costs the line.
 */
import type { IToken } from "chevrotain";
import { nearest } from "./nearest.ts";
import { AlreadyComplained, GIVEN_UP, isWord, MOST_FAULTS, ShapeReader } from "./shape-reader.ts";
import type { DefinitionNode, Span, SyntaxFault, SyntaxFix, ValueNode } from "./syntax.ts";
import * as token from "./tokens.ts";
import { ValueFault, writing } from "./value-fault.ts";
import { endOf, spanOf, startOf, wordNode } from "./value-nodes.ts";
import { Values } from "./values.ts";
import { describeShape } from "./vocabulary/describe.ts";
import type { ArgumentShape, Clause, Element, RecordEntry, Shape } from "./vocabulary/shape.ts";
import { TREE_KINDS } from "./vocabulary/shape.ts";
import { entriesIn } from "./vocabulary/vocabulary.ts";

export interface StatementReading {
  readonly values: ReadonlyMap<string, ValueNode>;
  readonly broken: boolean;
  readonly faults: readonly SyntaxFault[];
}

/** Characters behind a word; more is no line that anybody wrote, and is refused unread. */
const MAX_STATEMENT = 200_000;

/** Most statements have none, and share that. */
const NO_FAULTS: readonly SyntaxFault[] = [];

/** The role under which the note at the end of a fact is kept. */
const NOTE = "note";

/**
 * @param text what stands behind the word, comments blanked out
 * @param offset where `text` starts in its block; positions in the result are relative to the block
 */
export function readStatement(shape: ArgumentShape, text: string, offset: number): StatementReading {
  if (text.length > MAX_STATEMENT) return tooLong(text, offset);
  reader ??= new StatementReader();
  return reader.read(shape, text, offset);
}

function tooLong(text: string, offset: number): StatementReading {
  const found = text.trim();
  const start = offset + text.indexOf(found);
  const expected = `a line of at most ${MAX_STATEMENT} characters`;
  const fault: SyntaxFault = {
    code: "unreadable-value",
    start,
    end: start + found.length,
    found,
    expected,
    fixes: [],
  };
  return { values: new Values(), broken: true, faults: [fault] };
}

let reader: StatementReader | undefined;

export class StatementReader extends ShapeReader {
  private values = new Values();
  /** How many records stand around the one at hand. */
  private nesting = 0;

  constructor(checked = false) {
    super(checked);
    this.performSelfAnalysis();
  }

  read(shape: ArgumentShape, text: string, offset: number): StatementReading {
    this.text = text;
    this.offset = offset;
    this.values = new Values();
    this.faults = [];
    this.shape = shape;
    this.nesting = 0;
    this.input = token.recordTokens(text, offset);
    const broken = this.statement();
    const givenUp = this.faults.length >= MOST_FAULTS;
    const faults = this.faults.length === 0 ? NO_FAULTS : this.faults.slice(0, MOST_FAULTS);
    return { values: this.values, broken: broken || givenUp, faults };
  }

  /** The outermost rule, so that chevrotain treats the value rules as inner ones and lets their errors through. */
  private readonly statement = this.RULE("statement", (): boolean =>
    this.ACTION(() => this.readShape(this.values)),
  );

  /** True when the statement is broken. */
  private readShape(into: Values): boolean {
    const { elements } = this.shape;
    const waiting: Element[] = [];
    let broken = false;
    for (const [index, element] of elements.entries()) {
      const following = elements[index + 1];
      if (element.optional && !this.stands(element, following)) {
        if (following === undefined) waiting.push(element);
        continue;
      }
      const value = this.attempt(() => this.value(element.shape), element.shape);
      if (value === GIVEN_UP) {
        broken = true;
        break;
      }
      into.set(element.role, value);
    }
    if (broken) this.skipToClause();
    this.readClauses(into, waiting);
    this.sharePrice(into);
    if (!broken && this.saysNothing(into)) {
      if (this.faults.length === 0) this.complain("missing-value", this.gap(), expectedOf(this.shape));
      return true;
    }
    return this.missesClause(into, broken) || broken;
  }

  /** Clauses, a note, and an optional last element, in any order. */
  private readClauses(into: Values, waiting: Element[]): void {
    while (!this.atEnd()) {
      const clause = this.clauseHere();
      const late = waiting.find(({ shape }) => this.canStart(shape));
      if (clause !== undefined) this.readClause(clause, into);
      else if (late !== undefined) {
        waiting.splice(waiting.indexOf(late), 1);
        this.readInto(late.role, late.shape, into);
      } else if (this.shape.note && !into.has(NOTE) && this.isText()) into.set(NOTE, this.readString());
      else this.readLeftover();
    }
  }

  /** The clause that starts here; of several with the same words, the one whose value can follow. */
  private clauseHere(): Clause | undefined {
    const [first, ...others] = this.shape.clauses.filter((candidate) => this.startsClause(candidate));
    if (first === undefined || others.length === 0) return first;
    const follows = ({ shape: inner, words }: Clause) =>
      inner === undefined || this.canStart(inner, words.length + 1);
    return [first, ...others].sort((a, b) => b.words.length - a.words.length).find(follows) ?? first;
  }

  private readClause(clause: Clause, into: Values): void {
    const first = this.LA(1);
    let last = first;
    for (const _ of clause.words) last = this.take();
    const read = new Values();
    const inner = clause.shape;
    if (inner === undefined) read.set(clause.role, { kind: "flag", start: startOf(first), end: endOf(last) });
    else this.readInto(clause.role, inner, read);
    const before = this.shape.clauses.filter(
      (other) => into.has(other.role) && (other === clause || excludes(other, clause)),
    );
    const value = read.get(clause.role);
    if (value === undefined) return;
    if (before.length === 0) into.set(clause.role, value);
    else this.refuseAgain(clause, before, { start: startOf(first), end: value.end });
  }

  private refuseAgain(clause: Clause, before: readonly Clause[], at: Span): void {
    const words = before.map((each) => each.words.join(" "));
    const expected = words.includes(clause.words.join(" "))
      ? `${words[0]} once`
      : `${words[0]} or ${clause.words.join(" ")}, not both`;
    this.complain("unreadable-value", at, expected);
  }

  private readInto(role: string, shape: Shape, into: Values): void {
    const value = this.attempt(() => this.value(shape), shape);
    if (value === GIVEN_UP) this.skipToClause();
    else into.set(role, value);
  }

  /** True where nothing was said of what the statement is about. */
  private saysNothing(into: Values): boolean {
    const { elements, clauses } = this.shape;
    return ![...elements, ...clauses].some(({ role }) => role !== "by" && into.has(role));
  }

  /** Complains about each clause that the statement cannot do without; of clauses that exclude each other, once. */
  private missesClause(into: Values, broken: boolean): boolean {
    const { clauses, note } = this.shape;
    const missing = clauses.filter(
      (clause) =>
        clause.required &&
        !clauses.some((other) => into.has(other.role) && (other === clause || excludes(other, clause))),
    );
    const complained = broken || this.faults.length > 0;
    const [first] = missing;
    if (first !== undefined && !complained) {
      const either = clauses.filter((other) => other === first || excludes(other, first));
      const words = either.map((clause) => clause.words.join(" ")).join(" or ");
      const shape = first.shape === undefined ? "" : ` and ${describeShape(first.shape)}`;
      this.complain("missing-value", this.gap(), words + shape);
    }
    const lacksNote = note === "required" && !into.has(NOTE);
    if (lacksNote && first === undefined && !complained)
      this.complain("missing-value", this.gap(), 'why, in quotation marks, "…"');
    return missing.length > 0 || lacksNote;
  }

  /** A price behind the other clauses is that of each thing which has none of its own. */
  private sharePrice(into: Values): void {
    const list = into.get("items");
    const at = into.get("at");
    if (list?.kind !== "countedReferences" || at?.kind !== "money") return;
    into.delete("at");
    if (list.items.every((item) => item.at !== undefined))
      this.complain("unreadable-value", at, "one price for each");
    into.set("items", { ...list, items: list.items.map((item) => ({ ...item, at: item.at ?? at })) });
  }

  private readLeftover(): void {
    const first = this.take();
    let last = first;
    while (!this.atEnd() && !this.atClause()) last = this.take();
    const span = spanOf(first, last);
    const words = this.shape.clauses.map(({ words: [word] }) => word);
    const [near] = isWord(first) ? [this.clauseFor(first.image) ?? nearest(first.image, words, 1)[0]] : [];
    const expected = near ?? this.expectedInstead(first, last);
    const fixes = near === undefined ? [] : [writing(spanOf(first), near)];
    this.complain("unreadable-value", span, expected, expected === NO_COMMA ? [commaBefore(first)] : fixes);
  }

  /** `with threadlocker` for a word that only stands behind another one. */
  private clauseFor(word: string): string | undefined {
    const clause = this.shape.clauses.find(
      ({ shape }) => shape?.value === "word" && "choices" in shape.of && shape.of.choices.includes(word),
    );
    return clause && `${clause.words.join(" ")} ${word}`;
  }

  private expectedInstead(first: IToken, last: IToken): string {
    const { elements, clauses, note, repeats } = this.shape as Partial<RecordEntry> & ArgumentShape;
    const takesList = elements.some(({ shape }) => LISTS.has(shape.value));
    if (first.tokenType === token.Comma) {
      if (first === last || takesList) return "something behind the comma, or no comma";
      return repeats ? "one to a line: write the record again" : "the end of the line, for it takes no list";
    }
    if (takesList && isWord(first)) return NO_COMMA;
    const words = clauses.map(({ words: parts }) => parts.join(" "));
    return ["the end of the line", ...words, ...(note ? ["a note in quotation marks"] : [])].join(", or ");
  }

  /** True where an optional element stands next, and not the one behind it. */
  private stands(element: Element, following: Element | undefined): boolean {
    const shape = following?.shape;
    if (shape?.value === "word" && "choices" in shape.of && shape.of.choices.includes(this.LA(1).image))
      return false;
    return this.canStart(element.shape) && !this.atReadableClause();
  }

  /**
   * `WORD VALUE`: reads on by the shape of that record, whatever blocks it may stand in. The clauses and the note of
   * the fact around it may stand behind it, and are the fact's.
   */
  protected override readDefinition(): DefinitionNode {
    const outer = this.shape;
    const words = this.changeableWords();
    const read = this.LA(1);
    const entry = isWord(read) && words.includes(read.image) ? changeable.get(read.image) : undefined;
    if (entry === undefined) throw this.refuseDefinition(words);
    const word = wordNode(this.take());
    const values = new Values();
    const own = entry.clauses;
    const added = outer.clauses.filter(
      ({ role }) => role === "by" && !own.some((clause) => clause.role === role),
    );
    this.shape = { elements: entry.elements, clauses: [...own, ...added], note: outer.note };
    this.nesting++;
    try {
      if (this.readShape(values)) throw new AlreadyComplained();
    } finally {
      this.shape = outer;
      this.nesting--;
    }
    for (const role of [NOTE, ...added.map((clause) => clause.role)]) {
      const value = values.get(role);
      if (value !== undefined) this.values.set(role, value);
      values.delete(role);
    }
    return { kind: "definition", word, values, start: word.start, end: endOfAll(values, word) };
  }

  private refuseDefinition(words: readonly string[]): ValueFault {
    const shape: Shape = { value: "definition" };
    const read = this.LA(1);
    if (!isWord(read) || this.atReadableClause()) return this.refuse(shape);
    const [near] = nearest(read.image, words, 1);
    const fixes = near === undefined ? [] : [writing(spanOf(read), near)];
    return new ValueFault("unreadable-value", spanOf(read), near ?? describeShape(shape), fixes);
  }

  /** A default holds no default, or a line could nest without end. */
  private changeableWords(): readonly string[] {
    const inDefault = this.nesting > 0 || (this.shape as Partial<RecordEntry>).word === DEFAULT;
    return [...changeable.keys()].filter((word) => !inDefault || word !== DEFAULT);
  }
}

const DEFAULT = "default";
const NO_COMMA = "a comma between the two";

function commaBefore(behind: IToken): SyntaxFix {
  const start = startOf(behind);
  return { start, end: start, text: ", ", title: "Put a comma between", sure: false };
}

/** The records that `changed:` and `default:` can name, by their words. */
const changeable: ReadonlyMap<string, RecordEntry> = new Map(
  TREE_KINDS.flatMap((block) => entriesIn(block).map((entry) => [entry.word, entry] as const)),
);

const LISTS: ReadonlySet<Shape["value"]> = new Set([
  "words",
  "references",
  "countedReferences",
  "quantities",
  "ranges",
  "week",
  "stops",
]);

function excludes(a: Clause, b: Clause): boolean {
  return a !== b && a.insteadOf !== undefined && a.insteadOf === b.insteadOf;
}

function expectedOf({ elements, clauses }: ArgumentShape): string {
  const first = elements[0]?.shape ?? clauses[0]?.shape;
  return first === undefined ? "a value" : describeShape(first);
}

function endOfAll(values: Values, word: Span): number {
  return Math.max(word.end, ...[...values.values()].map(({ end }) => end));
}
