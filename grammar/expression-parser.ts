/**
 * The grammar of expressions: numbers with units, names, calls, `+ - * / ^`, parentheses, and `x in UNIT`, which
 * binds loosest. The tree is closed: nothing in it can call anything but a function by name.
 */
import type { IToken } from "chevrotain";
import { EmbeddedActionsParser } from "chevrotain";
import type {
  Expression,
  NumberNode,
  QuantityNode,
  QuantityPart,
  Span,
  SyntaxFault,
  UnitNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";
import { followsInChain, spanOf, wordNode } from "./value-parser.ts";

/** Longer than any honest calculation; beyond it an expression is refused unread. */
export const MAX_TOKENS = 1000;
/** How deep parentheses and signs may nest. */
export const MAX_DEPTH = 50;

type Operator = (Expression & { is: "binary" })["operator"];

const OPERATORS: ReadonlyMap<string, Operator> = new Map([
  ["+", "+"],
  ["-", "-"],
  ["−", "-"],
  ["*", "*"],
  ["×", "*"],
  ["·", "*"],
  ["/", "/"],
  ["^", "^"],
]);

class ExpressionParser extends EmbeddedActionsParser {
  constructor() {
    super(token.EXPRESSION_TOKENS, { maxLookahead: 2, recoveryEnabled: false, skipValidations: true });
    this.performSelfAnalysis();
  }

  readonly expression = this.RULE("expression", (): Expression => {
    const of = this.SUBRULE(this.sum);
    const unit = this.OPTION(() => {
      this.CONSUME(token.ConvertTo);
      return this.CONSUME(token.Unit);
    });
    return unit === undefined
      ? of
      : this.ACTION(() => ({
          is: "conversion",
          of,
          unit: unitNode(unit),
          start: of.start,
          end: spanOf(unit).end,
        }));
  });

  private readonly sum = this.RULE("sum", (): Expression => {
    let left = this.SUBRULE(this.product);
    this.MANY(() => {
      const operator = this.OR([
        { ALT: () => this.CONSUME(token.Plus) },
        { ALT: () => this.CONSUME(token.Minus) },
      ]);
      const right = this.SUBRULE2(this.product);
      left = this.ACTION(() => binary(operator, left, right));
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
      const right = this.SUBRULE2(this.signed);
      left = this.ACTION(() => binary(operator, left, right));
    });
    return left;
  });

  /** A sign binds looser than a power: `-2^2` is `-(2^2)`. */
  private readonly signed = this.RULE(
    "signed",
    (): Expression =>
      this.OR([
        {
          ALT: () => {
            const minus = this.CONSUME(token.Minus);
            const of = this.SUBRULE(this.signed);
            return this.ACTION(
              (): Expression => ({ is: "negative", of, start: minus.startOffset, end: of.end }),
            );
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
    const raised = this.OPTION(() => {
      const operator = this.CONSUME(token.Power);
      const right = this.SUBRULE(this.signed);
      return this.ACTION(() => binary(operator, left, right));
    });
    return raised ?? left;
  });

  private readonly operand = this.RULE(
    "operand",
    (): Expression =>
      this.OR([
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
    return this.ACTION(() => ({ ...inner, ...spanOf(open, close) }));
  });

  private readonly call = this.RULE("call", (): Expression => {
    const name = this.CONSUME(token.Name);
    this.CONSUME(token.Open);
    const values: Expression[] = [];
    this.MANY_SEP({ SEP: token.Comma, DEF: () => values.push(this.SUBRULE(this.expression)) });
    const close = this.CONSUME(token.Close);
    return this.ACTION(() => ({
      is: "call",
      name: wordNode(name),
      arguments: values,
      ...spanOf(name, close),
    }));
  });

  private readonly name = this.RULE("name", (): Expression => {
    const read = this.CONSUME(token.Name);
    return this.ACTION(() => ({ is: "name", text: read.image, ...spanOf(read) }));
  });

  private readonly text = this.RULE("text", (): Expression => {
    const read = this.CONSUME(token.Text);
    return this.ACTION(() => ({
      is: "text",
      value: { kind: "string", text: read.image.slice(1, -1), closed: true, ...spanOf(read) },
      ...spanOf(read),
    }));
  });

  private readonly thread = this.RULE("thread", (): Expression => {
    const read = this.CONSUME(token.Thread);
    return this.ACTION(() => ({
      is: "thread",
      value: { kind: "thread", text: read.image, ...spanOf(read) },
      ...spanOf(read),
    }));
  });

  /** `class 8.8`, `class A2-70`, `grade 5` as a value. */
  private readonly strength = this.RULE("strength", (): Expression => {
    const system = this.CONSUME(token.Name);
    const parts: IToken[] = [];
    this.OR([
      { ALT: () => parts.push(this.CONSUME(token.UnsignedDecimal)) },
      {
        ALT: () => {
          parts.push(this.CONSUME2(token.Name));
          this.OPTION({
            GATE: () => /^A\d$/.test(this.LA(0).image),
            DEF: () => {
              parts.push(this.CONSUME(token.Minus));
              parts.push(this.CONSUME2(token.UnsignedDecimal));
            },
          });
        },
      },
    ]);
    return this.ACTION((): Expression => {
      const span = spanOf(system, parts.at(-1) ?? system);
      const text = parts.map(({ image }) => image).join("");
      return {
        is: "class",
        value: { kind: "class", system: system.image === "grade" ? "grade" : "class", text, ...span },
        ...span,
      };
    });
  });

  private readonly wireGauge = this.RULE("wireGauge", (): Expression => {
    const word = this.CONSUME(token.Name);
    const number = this.CONSUME(token.UnsignedDecimal);
    return this.ACTION(() => ({
      is: "wireGauge",
      value: { kind: "wireGauge", number: numberNode(number), ...spanOf(word, number) },
      ...spanOf(word, number),
    }));
  });

  private readonly quantity = this.RULE("quantity", (): Expression => {
    const first = this.SUBRULE(this.quantityPart);
    const parts: [QuantityPart, ...QuantityPart[]] = [first];
    this.MANY({
      GATE: () => this.chainGoesOn(parts.at(-1)),
      DEF: () => parts.push(this.SUBRULE2(this.quantityPart)),
    });
    return this.ACTION(() => {
      const last = parts.at(-1) ?? first;
      const span = { start: first.number.start, end: (last.unit ?? last.number).end };
      const value: QuantityNode = { kind: "quantity", parts, each: false, ...span };
      return { is: "quantity", value, ...span };
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
}

let parser: ExpressionParser | undefined;

export type ReadExpression =
  | { readonly tree: Expression; readonly fault: undefined }
  | { readonly tree: undefined; readonly fault: SyntaxFault };

/** Reads an expression that stands at `offset` in its block; positions in the tree are relative to the block. */
export function readExpression(text: string, offset: number): ReadExpression {
  const tokens = expressionTokens(text, offset);
  const last = tokens.at(-1);
  if (last === undefined)
    return refused(
      "missing-value",
      { start: offset, end: offset },
      "",
      "an expression, such as 54 mm - 53.9 mm",
    );
  const tooMuch = beyondCaps(tokens);
  if (tooMuch !== undefined)
    return refused("unreadable-expression", spanOf(tooMuch, last), tooMuch.image, tooMuchSaid);
  parser ??= new ExpressionParser();
  parser.input = tokens;
  const tree = parser.expression();
  const error = parser.errors[0];
  if (error === undefined) return { tree, fault: undefined };
  return refusedAt(error.token, last, tokens);
}

const tooMuchSaid = `an expression of at most ${MAX_TOKENS} words and signs, nested at most ${MAX_DEPTH} deep`;

function expressionTokens(text: string, offset: number): IToken[] {
  const tokens = token.expressionTokens(text);
  for (const read of tokens) read.startOffset += offset;
  return tokens;
}

/** The token at which an expression is longer or deeper than is read; undefined within the caps. */
function beyondCaps(tokens: readonly IToken[]): IToken | undefined {
  if (tokens.length > MAX_TOKENS) return tokens[MAX_TOKENS];
  let depth = 0;
  let signs = 0;
  let powers = 0;
  for (const read of tokens) {
    if (read.tokenType === token.Open) depth++;
    else if (read.tokenType === token.Close) depth--;
    const nests =
      read.tokenType === token.Minus || read.tokenType === token.Plus || read.tokenType === token.Power;
    signs = nests ? signs + 1 : 0;
    if (depth > MAX_DEPTH || signs > MAX_DEPTH) return read;
    if (read.tokenType === token.Power && ++powers > MAX_DEPTH) return read;
  }
  return undefined;
}

function refusedAt(at: IToken, last: IToken, tokens: readonly IToken[]): ReadExpression {
  const atEnd = Number.isNaN(at.startOffset);
  const end = last.startOffset + last.image.length;
  if (atEnd) {
    const open = tokens.filter(({ tokenType }) => tokenType === token.Open).length;
    const closed = tokens.filter(({ tokenType }) => tokenType === token.Close).length;
    return refused(
      "unreadable-expression",
      spanOf(last),
      last.image,
      open > closed ? "a closing parenthesis" : "a value behind this",
    );
  }
  const comma = decimalComma(at, tokens);
  if (comma !== undefined) return comma;
  if (at.tokenType === token.OpenText) return refused("unclosed-string", spanOf(at), at.image, 'a closing "');
  return refused(
    "unreadable-expression",
    { start: at.startOffset, end: Math.max(end, at.startOffset + at.image.length) },
    at.image,
    "an operator, or the end of the expression",
  );
}

/** `9,12` outside a call's parentheses is a decimal comma. */
function decimalComma(at: IToken, tokens: readonly IToken[]): ReadExpression | undefined {
  const index = tokens.indexOf(at);
  const before = tokens[index - 1];
  const after = tokens[index + 1];
  if (
    at.tokenType !== token.Comma ||
    before?.tokenType !== token.UnsignedDecimal ||
    after?.tokenType !== token.UnsignedDecimal
  )
    return undefined;
  const text = `${before.image}.${after.image}`;
  const span = spanOf(before, after);
  const fix = { ...span, text, title: `Write ${text}`, sure: after.image.length !== 3 };
  return {
    tree: undefined,
    fault: {
      code: "decimal-comma",
      found: `${before.image},${after.image}`,
      expected: text,
      fixes: [fix],
      ...span,
    },
  };
}

function refused(code: SyntaxFault["code"], span: Span, found: string, expected: string): ReadExpression {
  return { tree: undefined, fault: { code, found, expected, fixes: [], ...span } };
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

function numberNode(read: IToken): NumberNode {
  return { kind: "number", text: read.image, ...spanOf(read) };
}

function unitNode(read: IToken): UnitNode {
  return { kind: "unit", text: read.image, ...spanOf(read) };
}
