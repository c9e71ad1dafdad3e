/**
 * Reads one value in place by the shape that the vocabulary gives it. Lists recover item by item: a bad reference
 * costs that reference.
 */
import type { IToken, ParserMethod, TokenType } from "chevrotain";
import { EOF, isRecognitionException } from "chevrotain";
import { readExpression } from "./expression-parser.ts";
import { nearest } from "./nearest.ts";
import { RecordValueParser } from "./record-value-parser.ts";
import type {
  CountedReferenceNode,
  QuantityNode,
  Span,
  StopsNode,
  SyntaxFault,
  SyntaxFaultCode,
  SyntaxFix,
  ValueNode,
  WeekNode,
  WordNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";
import { refuseNominal, ValueFault, writing } from "./value-fault.ts";
import { endOf, spanOf, startOf, wordNode } from "./value-nodes.ts";
import { describeShape } from "./vocabulary/describe.ts";
import type { ArgumentShape, Clause, DimensionHint, Shape } from "./vocabulary/shape.ts";
import { WEEKDAYS } from "./vocabulary/words.ts";

/** Stands for a value that could not be read; the complaint has been made. */
export const GIVEN_UP = Symbol("given up");
export type Attempt<T> = T | typeof GIVEN_UP;

/** Carries a failure outwards whose complaint has been made. */
export class AlreadyComplained extends Error {}

const NAME = /^[A-Za-z][A-Za-z0-9_]*$/;
const PATH = /^[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z][A-Za-z0-9_]*)*$/;
const CURRENCY = /^[A-Z]{3}$/;

/** A line with more wrong than this is given up: more complaints would help nobody. */
export const MOST_FAULTS = 20;

export abstract class ShapeReader extends RecordValueParser {
  protected text = "";
  protected offset = 0;
  /** The statement at hand; within `changed:` and `default:` that of the record which they hold. */
  protected shape: ArgumentShape = { elements: [], clauses: [], note: false };
  protected faults: SyntaxFault[] = [];

  /** A record within a record. */
  protected abstract readDefinition(): ValueNode;

  /** Reads, or complains once and gives up; what was already consumed stays consumed. */
  protected attempt<T>(read: () => T, shape: Shape): Attempt<T> {
    try {
      return read();
    } catch (error) {
      if (error instanceof AlreadyComplained) return GIVEN_UP;
      const fault = error instanceof ValueFault ? error : this.faultOf(error, shape);
      this.complain(fault.code, fault.span, fault.expected ?? describeShape(shape), fault.fixes);
      return GIVEN_UP;
    }
  }

  protected value(shape: Shape): ValueNode {
    if (this.atReadableClause()) throw this.refuse(shape);
    switch (shape.value) {
      case "either":
        return this.value(
          shape.options.find((option) => this.canStart(option)) ?? (shape.options[0] as Shape),
        );
      case "word":
        return this.readWord(shape);
      case "words": {
        const items = this.list(shape, () => this.readWord({ value: "word", of: shape.of }));
        return { kind: "words", items, start: this.startOfItems(items), end: this.endOfItems(items) };
      }
      case "references": {
        const items = this.list(shape, () => this.rule(this.reference));
        return { kind: "references", items, start: this.startOfItems(items), end: this.endOfItems(items) };
      }
      case "countedReferences": {
        const items = this.list(shape, () => this.readCounted(shape));
        return {
          kind: "countedReferences",
          items,
          start: this.startOfItems(items),
          end: this.endOfItems(items),
        };
      }
      case "quantity":
        return this.readQuantity(shape.of);
      case "quantities": {
        const items = this.list(shape, () => this.readQuantity(shape.of));
        return { kind: "quantities", items, start: this.startOfItems(items), end: this.endOfItems(items) };
      }
      case "sequence": {
        const items = [this.rule(this.quantity)];
        while (token.isNumber(this.LA(1))) items.push(this.rule(this.quantity));
        return { kind: "quantities", items, start: this.startOfItems(items), end: this.endOfItems(items) };
      }
      case "ranges": {
        const items = this.list(shape, () => refuseNominal(this.rule(this.limits)));
        return { kind: "ranges", items, start: this.startOfItems(items), end: this.endOfItems(items) };
      }
      case "limits": {
        const read = this.rule(this.limits);
        return shape.nominal ? read : refuseNominal(read);
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
        return this.rule<ValueNode>(this[shape.value]);
    }
  }

  protected readString(): ValueNode {
    const node = this.rule(this.string);
    if (!node.closed) {
      const { end } = node;
      const close: SyntaxFix = { start: end, end, text: '"', title: 'Close the text with "', sure: false };
      this.complain("unclosed-string", node, 'a closing "', [close]);
    }
    return node;
  }

  private rule<T>(rule: ParserMethod<[], T>): T {
    return this.SUBRULE(rule);
  }

  /** Items by comma; a bad one is complained about and left out. Gives up only when none could be read. */
  private list<T extends Span>(shape: Shape, item: () => T): T[] {
    const items: T[] = [];
    for (;;) {
      const read = this.attempt(item, shape);
      if (read === GIVEN_UP) this.skipToComma();
      else items.push(read);
      if (!this.listGoesOn()) break;
      this.take();
    }
    if (items.length === 0) throw new AlreadyComplained();
    // A copy, which has no room left for more.
    return items.slice();
  }

  /** True at a comma with something behind it that can be an item. */
  private listGoesOn(): boolean {
    if (this.LA(1).tokenType !== token.Comma) return false;
    const next = this.LA(2).tokenType;
    return next !== EOF && !this.isText(2) && !this.atReadableClause(2);
  }

  private readWord(shape: Shape & { value: "word" }): WordNode {
    const read = this.LA(1);
    const isNameLikeThread = "names" in shape.of && read.tokenType === token.Thread;
    if (!isWord(read) && !isNameLikeThread) throw this.refuseAsName(shape);
    const word = wordNode(read);
    if ("choices" in shape.of) refuseOther(word, shape.of.choices, shape);
    else if (shape.of.names === "currency") refuseNoCurrency(word, shape);
    else refuseBadName(word, shape.of.names === "path", shape);
    this.take();
    this.refuseTail(word);
    return word;
  }

  /** Like any refusal, but of the whole of what stands there without a space between. */
  private refuseAsName(shape: Shape): ValueFault {
    const fault = this.refuse(shape);
    const run = this.tightRun(fault.span.start);
    const span = fault.code === "unreadable-value" && run.end > fault.span.end ? run : fault.span;
    return new ValueFault(fault.code, span, fault.expected);
  }

  private readCounted(shape: Shape & { value: "countedReferences" }): CountedReferenceNode {
    const node = this.rule(this.countedReference);
    if (node.count === undefined && shape.count === "required") {
      const { start } = node;
      throw new ValueFault("unreadable-value", node.reference, "a number before it, such as 1 x", [
        { start, end: start, text: "1 x ", title: "It is one", sure: false },
      ]);
    }
    if (node.at !== undefined && !shape.priced) this.complain("unreadable-value", node.at, "no price here");
    return node;
  }

  /** Where no angle is meant, a `'` behind a number means feet. */
  private readQuantity(of: DimensionHint): QuantityNode {
    const node = this.rule(this.quantity);
    const [{ unit }] = node.parts;
    if (of !== "any" && unit?.text === "'")
      throw new ValueFault("unknown-unit", unit, describeShape({ value: "quantity", of }), [
        { ...writing(unit, " ft"), title: "Write ft" },
      ]);
    return node;
  }

  private readWeek(shape: Shape): WeekNode {
    const days = this.list(shape, () => {
      const day = this.readWord({ value: "word", of: { choices: WEEKDAYS } });
      const hours = this.rule(this.quantity);
      return { day, hours, start: day.start, end: hours.end };
    });
    return { kind: "week", days, start: this.startOfItems(days), end: this.endOfItems(days) };
  }

  private readStops(shape: Shape): StopsNode {
    const items = this.list(shape, () => {
      const first = this.LA(1);
      const running = first.tokenType === token.Ran;
      if (running) this.take();
      const node = this.rule(this.reference);
      return { running, node, start: startOf(first), end: node.end };
    });
    const jobs = items.filter(({ running }) => !running).map(({ node }) => node);
    const ran = items.filter(({ running }) => running).map(({ node }) => node);
    return { kind: "stops", jobs, ran, start: this.startOfItems(items), end: this.endOfItems(items) };
  }

  /** What stands behind the `=`, up to a clause or a note, goes to the grammar of expressions. */
  private readExpression(): ValueNode {
    if (this.LA(1).tokenType !== token.Equals)
      throw this.refuse({ value: "expression" }, "= and an expression");
    const start = spanOf(this.take()).end;
    let depth = 0;
    while (!this.atEnd()) {
      if (depth <= 0 && (this.atReadableClause() || (this.shape.note && this.isText()))) break;
      const { tokenType, image } = this.take();
      if (tokenType === token.Unreadable) depth += image.split("(").length - image.split(")").length;
    }
    const { tree, fault } = readExpression(
      this.text.slice(start - this.offset, this.gap().end - this.offset),
      start,
    );
    if (fault === undefined) return { kind: "expression", tree, start: tree.start, end: tree.end };
    this.faults.push(fault);
    throw new AlreadyComplained();
  }

  /** The complaint about what stands next, or about nothing standing there where the place is empty. */
  protected refuse(shape: Shape, expected = describeShape(shape)): ValueFault {
    if (this.atEnd() || this.atReadableClause()) return new ValueFault("missing-value", this.gap(), expected);
    const isDate = shape.value === "date" || shape.value === "dateRange";
    return new ValueFault(isDate ? "bad-date" : "unreadable-value", spanOf(this.LA(1)), expected);
  }

  private faultOf(error: unknown, shape: Shape): ValueFault {
    if (error instanceof Error && isRecognitionException(error)) return this.refuse(shape);
    throw error;
  }

  /** After the last complaint that a statement gets, the rest of it is left unread. */
  protected complain(
    code: SyntaxFaultCode,
    { start, end }: Span,
    expected: string,
    fixes: readonly SyntaxFix[] = [],
  ): void {
    const found = this.text.slice(start - this.offset, end - this.offset);
    this.faults.push({ code, start, end, found, expected, fixes });
    if (this.faults.length >= MOST_FAULTS) while (!this.atEnd()) this.take();
  }

  /** True where a value of this shape can begin with the token at hand. */
  protected canStart(shape: Shape, ahead = 1): boolean {
    const { tokenType } = this.LA(ahead);
    switch (shape.value) {
      case "either":
        return shape.options.some((option) => this.canStart(option, ahead));
      case "string":
        return this.isText(ahead);
      case "date":
        return DATES.has(tokenType) && this.LA(ahead + 1).tokenType !== token.Range;
      case "dateRange":
        return DATES.has(tokenType) && this.LA(ahead + 1).tokenType === token.Range;
      case "word":
      case "words":
      case "reference":
      case "references":
      case "stops":
      case "week":
      case "definition":
      case "nut":
        return isWord(this.LA(ahead));
      case "countedReferences":
        return token.isNumber(this.LA(ahead)) || (shape.count === "optional" && isWord(this.LA(ahead)));
      case "thread":
      case "wireGauge":
      case "recheck":
      case "expression":
        return STARTS[shape.value]?.includes(tokenType) ?? false;
      default:
        return token.isNumber(this.LA(ahead)) || (STARTS[shape.value]?.includes(tokenType) ?? false);
    }
  }

  protected startsClause({ words }: Clause, ahead = 1): boolean {
    return words.every((word, index) => {
      const read = this.LA(ahead + index);
      return read.image === word || (word === "±" && read.tokenType === token.PlusMinus);
    });
  }

  /** True at the words of a clause, whatever stands behind them, or at a note. */
  protected atClause(): boolean {
    return (
      this.shape.clauses.some((clause) => this.startsClause(clause)) || (this.shape.note && this.isText())
    );
  }

  /** True at the words of a clause with its value behind them: then no value of another kind stands here. */
  protected atReadableClause(ahead = 1): boolean {
    return this.shape.clauses.some(
      (clause) =>
        this.startsClause(clause, ahead) &&
        (clause.shape === undefined || this.canStart(clause.shape, ahead + clause.words.length)),
    );
  }

  protected skipToClause(): void {
    while (!this.atEnd() && !this.atClause()) this.take();
  }

  /** An open brace takes all names behind it with it: read by themselves, they would be others. */
  private skipToComma(): void {
    let inBraces = false;
    while (!this.atEnd() && !this.atClause() && (inBraces || this.LA(1).tokenType !== token.Comma)) {
      const { tokenType, image } = this.take();
      inBraces ||= tokenType === token.Unreadable && image.includes("{");
    }
  }

  protected isText(ahead = 1): boolean {
    const { tokenType } = this.LA(ahead);
    return tokenType === token.Text || tokenType === token.OpenText;
  }

  protected atEnd(): boolean {
    return this.LA(1).tokenType === EOF;
  }

  protected take(): IToken {
    return this.CONSUME(this.LA(1).tokenType);
  }

  /** The empty place behind what was read last, where something is missing. */
  protected gap(): Span {
    const last = this.LA(0);
    const at = Number.isNaN(last.startOffset) ? this.offset : endOf(last);
    return { start: at, end: at };
  }

  private startOfItems(items: readonly Span[]): number {
    return items[0]?.start ?? this.gap().start;
  }

  private endOfItems(items: readonly Span[]): number {
    return items.at(-1)?.end ?? this.gap().end;
  }
}

const DATES: ReadonlySet<TokenType> = new Set([token.DateText, token.OtherDate]);

/** What a value can start with other than a number or a word. */
const STARTS: Readonly<Partial<Record<Shape["value"], readonly TokenType[]>>> = {
  limits: [token.Minimum, token.Maximum],
  ranges: [token.Minimum, token.Maximum],
  torque: [token.Minimum, token.Maximum, token.From, token.By],
  tolerance: [token.PlusMinus],
  bolt: [token.Thread],
  thread: [token.Thread],
  wireGauge: [token.Awg],
  friction: [token.NutFactor, token.ThreadWord, token.Path],
  recheck: [token.After, token.Every],
  expression: [token.Equals],
};

export function isWord(read: IToken): boolean {
  return read.tokenType === token.Path || (read.tokenType.CATEGORIES?.includes(token.Word) ?? false);
}

function refuseOther(word: WordNode, choices: readonly string[], shape: Shape): void {
  if (choices.includes(word.text)) return;
  const [near] = nearest(word.text, choices, 1);
  const expected = near === undefined ? describeShape(shape) : `${near}, or another of: ${choices.join(" ")}`;
  throw new ValueFault("unreadable-value", word, expected, near === undefined ? [] : [writing(word, near)]);
}

function refuseNoCurrency(word: WordNode, shape: Shape): void {
  if (CURRENCY.test(word.text)) return;
  const code = word.text.toUpperCase();
  throw new ValueFault(
    "unreadable-value",
    word,
    describeShape(shape),
    CURRENCY.test(code) ? [writing(word, code)] : [],
  );
}

function refuseBadName(word: WordNode, isPath: boolean, shape: Shape): void {
  if ((isPath ? PATH : NAME).test(word.text)) return;
  throw new ValueFault("unreadable-value", word, isPath ? describeShape(shape) : "one name, without dots");
}
