/**
 * Reads what stands behind a header or record word, by the shape that the vocabulary gives it: elements in their
 * places, then clauses in any order, then a note. It recovers within the line: a bad reference costs that
 * reference, a bad clause that clause, and only something that the statement cannot do without costs the line.
 */
import type { IToken, TokenType } from "chevrotain";
import { EOF, isRecognitionException } from "chevrotain";
import { readExpression } from "./expression-parser.ts";
import { nearest } from "./nearest.ts";
import type {
  CountedReferenceNode,
  DefinitionNode,
  Expression,
  ReferenceNode,
  Span,
  StopsNode,
  SyntaxFault,
  SyntaxFix,
  ValueNode,
  WeekNode,
  WordNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";
import { spanOf, ValueFault, ValueParser, wordNode } from "./value-parser.ts";
import { describeShape } from "./vocabulary/describe.ts";
import type { ArgumentShape, Clause, Element, Shape } from "./vocabulary/shape.ts";
import { entriesOf } from "./vocabulary/vocabulary.ts";
import { WEEKDAYS } from "./vocabulary/words.ts";

export interface StatementReading {
  readonly values: ReadonlyMap<string, ValueNode>;
  readonly broken: boolean;
  readonly faults: readonly SyntaxFault[];
}

/** The role under which the note at the end of a fact is kept. */
export const NOTE = "note";

/**
 * @param text what stands behind the word, comments blanked out
 * @param offset where `text` starts in its block; positions in the result are relative to the block
 */
export function readStatement(shape: ArgumentShape, text: string, offset: number): StatementReading {
  reader ??= new StatementReader();
  return reader.read(shape, text, offset);
}

let reader: StatementReader | undefined;

/** Raised when an element or clause could not be read; the complaint has been made. */
const GIVEN_UP = Symbol("given up");
type Attempt<T> = T | typeof GIVEN_UP;

class StatementReader extends ValueParser {
  private text = "";
  private offset = 0;
  private shape: ArgumentShape = { elements: [], clauses: [], note: false };
  private values = new Map<string, ValueNode>();
  private faults: SyntaxFault[] = [];
  private lastEnd = 0;

  constructor() {
    super();
    this.performSelfAnalysis();
  }

  read(shape: ArgumentShape, text: string, offset: number): StatementReading {
    const tokens = token.recordTokens(text);
    for (const read of tokens) read.startOffset += offset;
    const last = tokens.at(-1);
    Object.assign(this, {
      text,
      offset,
      shape,
      values: new Map(),
      faults: [],
      lastEnd: last === undefined ? offset : spanOf(last).end,
    });
    this.input = tokens;
    const broken = this.statement();
    return { values: this.values, broken, faults: this.faults };
  }

  /** The outermost rule, so that chevrotain treats the value rules as inner ones and lets their errors through. */
  private readonly statement = this.RULE("statement", (): boolean =>
    this.ACTION(() => this.readShape(this.shape, this.values)),
  );

  /** True when the statement is broken. */
  private readShape(shape: ArgumentShape, into: Map<string, ValueNode>): boolean {
    let broken = false;
    for (const [index, element] of shape.elements.entries()) {
      if (element.optional && !this.stands(element, shape.elements[index + 1])) continue;
      const value = this.attempt(() => this.value(element.shape), element.shape);
      if (value === GIVEN_UP) {
        broken = true;
        break;
      }
      into.set(element.role, value);
    }
    if (broken) this.skipToClause(shape);
    this.readClauses(shape, into);
    const nothing = !broken && into.size === 0;
    if (nothing)
      this.complain("missing-value", { start: this.lastEnd, end: this.lastEnd }, "", expectedOf(shape));
    return nothing || this.missesClause(shape, into, broken) || broken;
  }

  private readClauses(shape: ArgumentShape, into: Map<string, ValueNode>): void {
    while (!this.atEnd()) {
      const clause = this.clauseHere(shape);
      if (clause !== undefined) this.readClause(clause, shape, into);
      else if (shape.note && !into.has(NOTE) && this.isText()) into.set(NOTE, this.readString());
      else this.readLeftover(shape);
    }
  }

  /** The clause that starts here; of several with the same words, the one whose value can follow. */
  private clauseHere(shape: ArgumentShape): Clause | undefined {
    const [first, ...others] = shape.clauses.filter((candidate) => this.startsClause(candidate));
    if (first === undefined || others.length === 0) return first;
    return (
      [first, ...others].find(
        ({ shape: inner, words }) => inner !== undefined && this.canStart(inner, words.length + 1),
      ) ?? first
    );
  }

  private readClause(clause: Clause, shape: ArgumentShape, into: Map<string, ValueNode>): void {
    const first = this.LA(1);
    let last = first;
    for (const _ of clause.words) last = this.take();
    const inner = clause.shape;
    if (inner === undefined) {
      into.set(clause.role, { kind: "flag", ...spanOf(first, last) });
      return;
    }
    const value = this.attempt(() => this.value(inner), inner);
    if (value === GIVEN_UP) this.skipToClause(shape);
    else into.set(clause.role, value);
  }

  private missesClause(shape: ArgumentShape, into: ReadonlyMap<string, ValueNode>, broken: boolean): boolean {
    const missing = shape.clauses.filter(({ required, role }) => required && !into.has(role));
    const complained = broken || this.faults.length > 0;
    for (const { words, shape: inner } of missing) {
      if (complained || inner === undefined) continue;
      this.complain(
        "missing-value",
        { start: this.lastEnd, end: this.lastEnd },
        "",
        `${words.join(" ")} and ${describeShape(inner)}`,
      );
    }
    return missing.length > 0;
  }

  private readLeftover(shape: ArgumentShape): void {
    const first = this.take();
    let last = first;
    while (!this.atEnd() && !this.atClause(shape)) last = this.take();
    const words = shape.clauses.map(({ words: [word] }) => word);
    const [near] = nearest(first.image, words, 1);
    const fixes: SyntaxFix[] =
      near === undefined ? [] : [{ ...spanOf(first), text: near, title: `Write ${near}`, sure: true }];
    const expected =
      first.tokenType === token.Comma
        ? "something behind the comma, or no comma"
        : leftoverExpected(shape, first, near);
    this.complain("unreadable-value", spanOf(first, last), this.textOf(spanOf(first, last)), expected, fixes);
  }

  private value(shape: Shape): ValueNode {
    switch (shape.value) {
      case "either":
        return this.value(
          shape.options.find((option) => this.canStart(option)) ?? (shape.options[0] as Shape),
        );
      case "word":
        return this.readWord(shape);
      case "words": {
        const items = this.list(shape, () => this.readWord({ value: "word", of: shape.of }));
        return { kind: "words", items, ...this.spanOfItems(items) };
      }
      case "reference":
        return this.readReference();
      case "references": {
        const items = this.list(shape, () => this.readReference());
        return { kind: "references", items, ...this.spanOfItems(items) };
      }
      case "countedReferences": {
        const items = this.list(shape, () => this.readCounted(shape));
        return { kind: "countedReferences", items, ...this.spanOfItems(items) };
      }
      case "quantities": {
        const items = this.list(shape, () => this.rule(this.quantity));
        return { kind: "quantities", items, ...this.spanOfItems(items) };
      }
      case "sequence": {
        const items = [this.rule(this.quantity)];
        while (token.isNumber(this.LA(1))) items.push(this.rule(this.quantity));
        return { kind: "quantities", items, ...this.spanOfItems(items) };
      }
      case "ranges": {
        const items = this.list(shape, () => this.rule(this.limits));
        return { kind: "ranges", items, ...this.spanOfItems(items) };
      }
      case "week":
        return this.readWeek(shape);
      case "stops":
        return this.readStops(shape);
      case "definition":
        return this.readDefinition();
      case "expression":
        return this.readExpression();
      case "string":
        return this.readString();
      default:
        return this.rule(this[shape.value] as () => ValueNode);
    }
  }

  private rule<T>(rule: (this: this) => T): T {
    return rule.call(this);
  }

  /** Items by comma; a bad one is complained about and left out. Gives up only when none could be read. */
  private list<T extends Span>(shape: Shape, item: () => T): T[] {
    const items: T[] = [];
    let bad = false;
    for (;;) {
      const read = this.attempt(item, shape);
      if (read === GIVEN_UP) {
        bad = true;
        this.skipToComma();
      } else items.push(read);
      if (this.LA(1).tokenType !== token.Comma || this.LA(2).tokenType === EOF) break;
      this.take();
      if (shape.value === "quantities" && this.LA(1).tokenType === token.Comma) break;
    }
    if (items.length === 0 && bad) throw new AlreadyComplained();
    return items;
  }

  private readWord(shape: Shape & { value: "word" }): WordNode {
    const read = this.LA(1);
    if (!isWord(read)) throw this.refuse(read, shape);
    const word = wordNode(read);
    if ("choices" in shape.of && !shape.of.choices.includes(word.text)) {
      const [near] = nearest(word.text, shape.of.choices, 1);
      const fixes =
        near === undefined ? [] : [{ ...spanOf(read), text: near, title: `Write ${near}`, sure: true }];
      throw new ValueFault(
        "unreadable-value",
        spanOf(read),
        near === undefined ? describeShape(shape) : `${near}, or another of: ${shape.of.choices.join(" ")}`,
        fixes,
      );
    }
    this.take();
    return word;
  }

  private readReference(): ReferenceNode {
    const node = this.rule(this.reference);
    const hyphen = this.LA(1);
    if (
      hyphen.tokenType === token.Unreadable &&
      hyphen.startOffset === node.end &&
      hyphen.image.startsWith("-")
    ) {
      throw new ValueFault(
        "unreadable-value",
        spanOf(hyphen),
        "a name of letters, digits and underscores: names hold no hyphens",
      );
    }
    return node;
  }

  private readCounted(shape: Shape & { value: "countedReferences" }): CountedReferenceNode {
    const first = this.LA(1);
    const node = this.rule(this.countedReference);
    if (node.count === undefined && shape.count === "required") {
      this.complain("unreadable-value", spanOf(first), first.image, "a number before it, such as 1 x", [
        { start: first.startOffset, end: first.startOffset, text: "1 x ", title: "It is one", sure: false },
      ]);
    }
    return node;
  }

  private readWeek(shape: Shape): WeekNode {
    const days = this.list(shape, () => {
      const day = this.readWord({ value: "word", of: { choices: WEEKDAYS } });
      const hours = this.rule(this.quantity);
      return { day, hours, start: day.start, end: hours.end };
    });
    return { kind: "week", days, ...this.spanOfItems(days) };
  }

  private readStops(shape: Shape): StopsNode {
    const items = this.list(shape, () => {
      const running = this.LA(1).tokenType === token.Ran && isWord(this.LA(2));
      if (running) this.take();
      return {
        running,
        node: this.readReference(),
        start: this.LA(0).startOffset,
        end: spanOf(this.LA(0)).end,
      };
    });
    const jobs = items.filter(({ running }) => !running).map(({ node }) => node);
    const ran = items.filter(({ running }) => running).map(({ node }) => node);
    return { kind: "stops", jobs, ran, ...this.spanOfItems(items) };
  }

  /** `WORD VALUE`: reads on by the shape of that record, whatever blocks it may stand in. */
  private readDefinition(): DefinitionNode {
    const read = this.LA(1);
    const inTree = (candidate: string) =>
      entriesOf(candidate).find(({ blocks }) => blocks.some((block) => CHANGEABLE.has(block)));
    const entry = isWord(read) ? inTree(read.image) : undefined;
    if (entry === undefined)
      throw new ValueFault(
        "unreadable-value",
        read.tokenType === EOF ? { start: this.lastEnd, end: this.lastEnd } : spanOf(read),
        describeShape({ value: "definition" }),
      );
    const word = wordNode(this.take());
    const values = new Map<string, ValueNode>();
    const outer = this.shape;
    const clauses = outer.note
      ? [
          ...entry.clauses,
          ...outer.clauses.filter(({ role }) => !entry.clauses.some((own) => own.role === role)),
        ]
      : entry.clauses;
    const inner = { elements: entry.elements, clauses, note: outer.note };
    if (this.readShape(inner, values)) throw new AlreadyComplained();
    for (const role of [NOTE, "by"]) {
      const value = values.get(role);
      if (value !== undefined && outer.note) this.values.set(role, value);
      if (outer.note) values.delete(role);
    }
    return { kind: "definition", word, values, start: word.start, end: this.lastEnd };
  }

  /** Everything behind the `=` goes to the grammar of expressions. */
  private readExpression(): ValueNode {
    const equals = this.LA(1);
    if (equals.tokenType !== token.Equals)
      throw this.refuse(equals, { value: "expression" }, "= and an expression");
    const start = equals.startOffset + 1;
    while (!this.atEnd()) this.take();
    const { tree, fault } = readExpression(this.text.slice(start - this.offset), start);
    if (fault !== undefined) {
      this.faults.push(fault);
      throw new AlreadyComplained();
    }
    return { kind: "expression", tree: tree as Expression, start: tree.start, end: tree.end };
  }

  private readString(): ValueNode {
    const node = this.rule(this.string);
    if (!node.closed)
      this.complain("unclosed-string", node, this.textOf(node), 'a closing "', [
        { start: node.end, end: node.end, text: '"', title: 'Close the text with "', sure: false },
      ]);
    return node;
  }

  /** Reads, or complains once and gives up; what was already consumed stays consumed. */
  private attempt<T>(read: () => T, shape: Shape): Attempt<T> {
    try {
      return read();
    } catch (error) {
      if (error instanceof AlreadyComplained) return GIVEN_UP;
      const fault =
        error instanceof ValueFault
          ? error
          : isRecognitionException(error as Error)
            ? this.refuse(this.LA(1), shape)
            : undefined;
      if (fault === undefined) throw error;
      this.complain(
        fault.code,
        fault.span,
        this.textOf(fault.span),
        fault.expected ?? describeShape(shape),
        fault.fixes,
      );
      return GIVEN_UP;
    }
  }

  private refuse(at: IToken, shape: Shape, expected = describeShape(shape)): ValueFault {
    if (at.tokenType === EOF)
      return new ValueFault("missing-value", { start: this.lastEnd, end: this.lastEnd }, expected);
    return new ValueFault("unreadable-value", spanOf(at), expected);
  }

  private complain(
    code: SyntaxFault["code"],
    { start, end }: Span,
    found: string,
    expected: string,
    fixes: readonly SyntaxFix[] = [],
  ): void {
    this.faults.push({ code, start, end, found, expected, fixes });
  }

  /** True where an optional element stands next, and not the one behind it. */
  private stands(element: Element, following: Element | undefined): boolean {
    const next = this.LA(1);
    if (
      following !== undefined &&
      "of" in following.shape &&
      following.shape.value === "word" &&
      "choices" in following.shape.of &&
      following.shape.of.choices.includes(next.image)
    )
      return false;
    return this.canStart(element.shape) && !this.atClause(this.shape);
  }

  private canStart(shape: Shape, ahead = 1): boolean {
    const { tokenType } = this.LA(ahead);
    switch (shape.value) {
      case "either":
        return shape.options.some((option) => this.canStart(option, ahead));
      case "string":
        return this.isText(ahead);
      case "date":
      case "dateRange":
        return (
          DATES.has(tokenType) &&
          (shape.value === "dateRange") === (this.LA(ahead + 1).tokenType === token.Range)
        );
      case "thread":
        return tokenType === token.Thread;
      case "wireGauge":
        return tokenType === token.Awg;
      case "word":
      case "words":
      case "reference":
      case "references":
        return isWord(this.LA(ahead));
      case "countedReferences":
        return token.isNumber(this.LA(ahead)) || (shape.count === "optional" && isWord(this.LA(ahead)));
      default:
        return token.isNumber(this.LA(ahead));
    }
  }

  private startsClause({ words }: Clause): boolean {
    return words.every(
      (word, index) =>
        this.LA(index + 1).image === word || (word === "±" && this.LA(1).tokenType === token.PlusMinus),
    );
  }

  private atClause(shape: ArgumentShape): boolean {
    return shape.clauses.some((clause) => this.startsClause(clause)) || (shape.note && this.isText());
  }

  private skipToClause(shape: ArgumentShape): void {
    while (!this.atEnd() && !this.atClause(shape)) this.take();
  }

  private skipToComma(): void {
    while (!this.atEnd() && this.LA(1).tokenType !== token.Comma && !this.atClause(this.shape)) this.take();
  }

  private isText(ahead = 1): boolean {
    const { tokenType } = this.LA(ahead);
    return tokenType === token.Text || tokenType === token.OpenText;
  }

  private atEnd(): boolean {
    return this.LA(1).tokenType === EOF;
  }

  private take(): IToken {
    return this.CONSUME(this.LA(1).tokenType);
  }

  private textOf({ start, end }: Span): string {
    return this.text.slice(start - this.offset, end - this.offset);
  }

  private spanOfItems(items: readonly Span[]): Span {
    return { start: items[0]?.start ?? this.lastEnd, end: items.at(-1)?.end ?? this.lastEnd };
  }
}

/** Carries a failure outwards whose complaint has been made. */
class AlreadyComplained extends Error {}

const DATES: ReadonlySet<TokenType> = new Set([token.DateText, token.OtherDate]);

/** The blocks whose records `changed:` and `default:` can name. */
const CHANGEABLE: ReadonlySet<string> = new Set(["assembly", "part", "joint", "system", "circuit"]);

function isWord(read: IToken): boolean {
  return read.tokenType === token.Path || (read.tokenType.CATEGORIES?.includes(token.Word) ?? false);
}

function expectedOf({ elements, clauses }: ArgumentShape): string {
  const first = elements[0]?.shape ?? clauses[0]?.shape;
  return first === undefined ? "a value" : describeShape(first);
}

function leftoverExpected(shape: ArgumentShape, first: IToken, near: string | undefined): string {
  if (near !== undefined) return near;
  const lists = shape.elements.length === 1 && shape.elements[0]?.shape.value === "references";
  if (lists && isWord(first)) return "a comma between the two";
  const words = shape.clauses.map(({ words: parts }) => parts.join(" "));
  const note = shape.note ? ["a note in quotation marks"] : [];
  return ["the end of the line", ...words, ...note].join(", or ");
}
