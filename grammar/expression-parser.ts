/**
 * The grammar of expressions: numbers with units, names, calls, `+ - * / ^`, parentheses, and `x in UNIT`, which
 * binds loosest. The tree is closed: nothing in it can call anything but a function by name.
 */
import type { IToken } from "chevrotain";
import { EmbeddedActionsParser } from "chevrotain";
import { parserSettings } from "./lookahead.ts";
import type { Expression, QuantityPart, Span, SyntaxFault, SyntaxFix } from "./syntax.ts";
import * as token from "./tokens.ts";
import { refuseInchMark, ValueFault, withoutComma, writing } from "./value-fault.ts";
import {
  followsInChain,
  numberNode,
  quantityNode,
  spanOf,
  startOf,
  stringNode,
  threadNode,
  unitNode,
  wordNode,
} from "./value-nodes.ts";

/** Longer than any honest calculation; beyond either an expression is refused unread. */
export const MAX_LENGTH = 200_000;
export const MAX_TOKENS = 1000;
/** How deep parentheses and signs may nest. */
export const MAX_DEPTH = 50;

type Operator = (Expression & { is: "binary" })["operator"];

const OPERATORS: ReadonlyMap<string, Operator> = new Map([
  ["+", "+"],
  ["-", "-"],
  ["\u2212", "-"],
  ["*", "*"],
  ["×", "*"],
  ["·", "*"],
  ["/", "/"],
  ["^", "^"],
]);

export class ExpressionParser extends EmbeddedActionsParser {
  /** @param checked whether the definition of the grammar is checked too, which a test does */
  constructor(checked = false) {
    super(token.EXPRESSION_TOKENS, parserSettings(checked));
    this.performSelfAnalysis();
  }

  readonly expression = this.RULE("expression", (): Expression => {
    const of = this.SUBRULE(this.sum);
    const unit = this.OPTION(() => {
      this.CONSUME(token.ConvertTo);
      return this.CONSUME(token.Unit);
    });
    return this.ACTION(() => {
      if (unit === undefined) return of;
      return { is: "conversion", of, unit: unitNode(unit), start: of.start, end: spanOf(unit).end };
    });
  });

  private readonly sum = this.RULE("sum", (): Expression => {
    let left = this.SUBRULE(this.product);
    this.MANY(() => {
      const operator = this.OR([
        { ALT: () => this.CONSUME(token.Plus) },
        { ALT: () => this.CONSUME(token.Minus) },
      ]);
      left = binary(operator, left, this.SUBRULE2(this.product));
    });
    return left;
  });

  private readonly product = this.RULE("product", (): Expression => {
    let left = this.SUBRULE(this.signed);
    this.MANY(() => {
      const operator = this.OR([
        { ALT: () => this.CONSUME(token.Times) },
        { ALT: () => this.CONSUME(token.Divide) },
      ]);
      left = binary(operator, left, this.SUBRULE2(this.signed));
    });
    return left;
  });

  /** A sign binds looser than a power: `-2^2` is `-(2^2)`. */
  private readonly signed = this.RULE(
    "signed",
    (): Expression =>
      this.OR<Expression>([
        {
          ALT: () => {
            const start = startOf(this.CONSUME(token.Minus));
            const of = this.SUBRULE(this.signed);
            return { is: "negative", of, start, end: of.end };
          },
        },
        {
          ALT: () => {
            this.CONSUME(token.Plus);
            return this.SUBRULE2(this.signed);
          },
        },
        { ALT: () => this.SUBRULE(this.power) },
      ]),
  );

  private readonly power = this.RULE("power", (): Expression => {
    const left = this.SUBRULE(this.operand);
    const raised = this.OPTION(() => binary(this.CONSUME(token.Power), left, this.SUBRULE(this.signed)));
    return raised ?? left;
  });

  private readonly operand = this.RULE(
    "operand",
    (): Expression =>
      this.OR<Expression>([
        { ALT: () => this.SUBRULE(this.quantity) },
        { ALT: () => this.SUBRULE(this.thread) },
        { ALT: () => this.SUBRULE(this.text) },
        { GATE: () => this.LA(2).tokenType === token.Open, ALT: () => this.SUBRULE(this.call) },
        { GATE: () => this.startsStrength(), ALT: () => this.SUBRULE(this.strength) },
        { GATE: () => this.startsWireGauge(), ALT: () => this.SUBRULE(this.wireGauge) },
        { ALT: () => this.SUBRULE(this.name) },
        { ALT: () => this.SUBRULE(this.group) },
      ]),
  );

  private readonly group = this.RULE("group", (): Expression => {
    const open = this.CONSUME(token.Open);
    const inner = this.SUBRULE(this.expression);
    const close = this.CONSUME(token.Close);
    return { ...inner, ...spanOf(open, close) };
  });

  private readonly call = this.RULE("call", (): Expression => {
    const name = this.CONSUME(token.Name);
    this.CONSUME(token.Open);
    const values: Expression[] = [];
    this.MANY_SEP({
      SEP: token.Comma,
      DEF: () => values.push(this.SUBRULE(this.expression)),
    });
    const close = this.CONSUME(token.Close);
    return { is: "call", name: wordNode(name), arguments: values, ...spanOf(name, close) };
  });

  private readonly name = this.RULE("name", (): Expression => {
    const read = this.CONSUME(token.Name);
    return { is: "name", text: read.image, ...spanOf(read) };
  });

  private readonly text = this.RULE("text", (): Expression => {
    const read = this.CONSUME(token.Text);
    return this.ACTION(() => ({ is: "text", value: stringNode(read), ...spanOf(read) }));
  });

  private readonly thread = this.RULE("thread", (): Expression => {
    const read = this.CONSUME(token.Thread);
    return { is: "thread", value: threadNode(read), ...spanOf(read) };
  });

  /** `class 8.8`, `class A2-70`, `grade 5` as a value. */
  private readonly strength = this.RULE("strength", (): Expression => {
    const system = this.CONSUME(token.Name);
    const first = this.OR([
      { ALT: () => this.CONSUME(token.UnsignedDecimal) },
      { ALT: () => this.CONSUME2(token.Name) },
    ]);
    let figure: IToken | undefined;
    this.OPTION({
      GATE: () => this.isTightMinus(first),
      DEF: () => {
        this.CONSUME(token.Minus);
        figure = this.CONSUME2(token.UnsignedDecimal);
      },
    });
    return this.ACTION(() => {
      const span = spanOf(system, figure ?? first);
      const kind = system.image === "grade" ? "grade" : "class";
      const text = figure === undefined ? first.image : `${first.image}-${figure.image}`;
      return { is: "class", value: { kind: "class", system: kind, text, ...span }, ...span };
    });
  });

  private readonly wireGauge = this.RULE("wireGauge", (): Expression => {
    const word = this.CONSUME(token.Name);
    const number = this.CONSUME(token.UnsignedDecimal);
    const span = spanOf(word, number);
    return { is: "wireGauge", value: { kind: "wireGauge", number: numberNode(number), ...span }, ...span };
  });

  private readonly quantity = this.RULE("quantity", (): Expression => {
    const parts: [QuantityPart, ...QuantityPart[]] = [this.SUBRULE(this.quantityPart)];
    this.MANY({
      GATE: () => this.chainGoesOn(parts.at(-1)),
      DEF: () => parts.push(this.SUBRULE2(this.quantityPart)),
    });
    this.ACTION(() => refuseInchMark(this.LA(1), parts.at(-1)?.unit));
    return this.ACTION(() => {
      const value = quantityNode(parts, undefined);
      return { is: "quantity", value, start: value.start, end: value.end };
    });
  });

  private readonly quantityPart = this.RULE("quantityPart", (): QuantityPart => {
    const number = this.OR([
      { ALT: () => this.CONSUME(token.UnsignedDecimal) },
      { ALT: () => this.CONSUME(token.ExpressionFraction) },
    ]);
    const unit = this.OPTION(() => this.CONSUME(token.Unit));
    return this.ACTION(() => ({
      number: numberNode(number),
      unit: unit === undefined ? undefined : unitNode(unit),
    }));
  });

  private chainGoesOn(last: QuantityPart | undefined): boolean {
    return (
      last?.unit !== undefined &&
      this.LA(2).tokenType === token.Unit &&
      followsInChain(last.unit.text, this.LA(2).image)
    );
  }

  private startsStrength(): boolean {
    const word = this.LA(1).image;
    const next = this.LA(2).tokenType;
    return (word === "class" || word === "grade") && (next === token.UnsignedDecimal || next === token.Name);
  }

  private startsWireGauge(): boolean {
    return this.LA(1).image === "AWG" && this.LA(2).tokenType === token.UnsignedDecimal;
  }

  /** The `-70` of `A2-70`; a minus apart is an operator. */
  private isTightMinus(before: IToken): boolean {
    const [minus, figure] = [this.LA(1), this.LA(2)];
    return (
      /^A\d$/.test(before.image) &&
      minus.startOffset === spanOf(before).end &&
      figure.startOffset === minus.startOffset + 1
    );
  }
}

let parser: ExpressionParser | undefined;

export type ReadExpression =
  | { readonly tree: Expression; readonly fault: undefined }
  | { readonly tree: undefined; readonly fault: SyntaxFault };

/** Reads an expression that stands at `offset` in its block; positions in the tree are relative to the block. */
export function readExpression(text: string, offset: number): ReadExpression {
  const foundIn = ({ start, end }: Span) => text.slice(start - offset, end - offset);
  const refused = (fault: Omit<SyntaxFault, "found">): ReadExpression => ({
    tree: undefined,
    fault: { ...fault, found: foundIn(fault) },
  });
  if (text.length > MAX_LENGTH) {
    const start = offset + text.length - text.trimStart().length;
    const expected = `an expression of at most ${MAX_LENGTH} characters`;
    return refused(unreadable({ start, end: offset + text.trimEnd().length }, expected));
  }
  const tokens = token.expressionTokens(text, offset);
  if (tokens.length === 0) {
    const expected = "an expression, such as 54 mm - 53.9 mm";
    return refused({ code: "missing-value", start: offset, end: offset, expected, fixes: [] });
  }
  const tooMuch = beyondCaps(tokens);
  if (tooMuch !== undefined) return refused(tooMuch);
  parser ??= new ExpressionParser();
  parser.input = tokens;
  try {
    const tree = parser.expression();
    const error = parser.errors[0];
    return error === undefined ? { tree, fault: undefined } : refused(faultAt(error.token, tokens));
  } catch (error) {
    if (!(error instanceof ValueFault)) throw error;
    const { code, span, expected = "", fixes } = error;
    return refused({ code, start: span.start, end: span.end, expected, fixes });
  }
}

type Fault = Omit<SyntaxFault, "found">;

function unreadable(span: Span, expected: string, fixes: readonly SyntaxFix[] = []): Fault {
  return { code: "unreadable-expression", start: span.start, end: span.end, expected, fixes };
}

/** Refuses an expression that is longer or deeper than is read; undefined within the caps. */
function beyondCaps(tokens: readonly IToken[]): Fault | undefined {
  let depth = 0;
  let signs = 0;
  let powers = 0;
  for (const [index, read] of tokens.entries()) {
    if (read.tokenType === token.Open) depth++;
    else if (read.tokenType === token.Close) depth--;
    else if (read.tokenType === token.Power) powers++;
    signs = SIGNS.has(read.tokenType) ? signs + 1 : 0;
    if (index >= MAX_TOKENS || Math.max(depth, signs, powers) > MAX_DEPTH) {
      return unreadable(
        spanOf(read, tokens.at(-1)),
        `an expression of at most ${MAX_TOKENS} words and signs, nested at most ${MAX_DEPTH} deep`,
      );
    }
  }
  return undefined;
}

const SIGNS: ReadonlySet<unknown> = new Set([token.Minus, token.Plus, token.Power]);

function faultAt(at: IToken, tokens: readonly IToken[]): Fault {
  const last = tokens.at(-1) ?? at;
  if (Number.isNaN(at.startOffset)) return unreadable(spanOf(last), expectedAtEnd(last, tokens));
  if (at.tokenType === token.OpenText) {
    const { end } = spanOf(at);
    const close = { start: end, end, text: '"', title: 'Close the text with "', sure: false };
    return { code: "unclosed-string", ...spanOf(at), expected: 'a closing "', fixes: [close] };
  }
  return (
    decimalComma(at, tokens) ?? unreadable(spanOf(at, last), "an operator, or the end of the expression")
  );
}

function expectedAtEnd(last: IToken, tokens: readonly IToken[]): string {
  if (last.tokenType === token.ConvertTo) return "a unit behind in";
  const count = (type: unknown) => tokens.filter(({ tokenType }) => tokenType === type).length;
  if (VALUES.has(last.tokenType) && count(token.Open) > count(token.Close)) return "a closing parenthesis";
  return "a value behind this";
}

const VALUES: ReadonlySet<unknown> = new Set([
  token.Close,
  token.Name,
  token.UnsignedDecimal,
  token.ExpressionFraction,
  token.Unit,
  token.Thread,
  token.Text,
]);

/** `9,12` outside a call's parentheses is a decimal comma; with a point on either side it would be a list. */
function decimalComma(at: IToken, tokens: readonly IToken[]): Fault | undefined {
  const index = tokens.indexOf(at);
  const before = tokens[index - 1];
  const after = tokens[index + 1];
  const isWhole = (read: IToken) => read.tokenType === token.UnsignedDecimal && !read.image.includes(".");
  if (at.tokenType !== token.Comma || before === undefined || after === undefined) return undefined;
  const tight = spanOf(before).end === at.startOffset && spanOf(at).end === after.startOffset;
  if (!tight || !isWhole(before) || !isWhole(after)) return undefined;
  const { text, sure } = withoutComma(`${before.image},${after.image}`);
  const span = spanOf(before, after);
  return { code: "decimal-comma", ...span, expected: text, fixes: [writing(span, text, sure)] };
}

function binary(operator: IToken, left: Expression, right: Expression): Expression {
  return {
    is: "binary",
    operator: OPERATORS.get(operator.image) ?? "+",
    left,
    right,
    start: left.start,
    end: right.end,
  };
}
