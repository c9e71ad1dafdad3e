/**
 * The grammar of single values: one rule for each kind that a shape can ask for. Values with a form of their own
 * (bolts, torques, lives) are in `record-value-parser.ts`; the shape reader chooses the rule by the vocabulary.
 *
 * Chevrotain runs each rule once with stand-ins for tokens, to learn its form. What reads into a token's text or may
 * throw is therefore wrapped in `ACTION`, which that first run leaves out.
 */
import type { TokenType } from "chevrotain";
import { EmbeddedActionsParser, EOF } from "chevrotain";
import { parserSettings } from "./lookahead.ts";
import type {
  CountedReferenceNode,
  DateNode,
  DateRangeNode,
  ExchangeNode,
  LimitsNode,
  MoneyNode,
  NumberNode,
  QuantityNode,
  QuantityPart,
  ReferenceNode,
  Span,
  StringNode,
  ThreadNode,
  ToleranceNode,
  UnitNode,
  WordNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";
import {
  refuseBadDate,
  refuseBadNumber,
  refuseBadSet,
  refuseInchMark,
  refuseMixedMetric,
  refuseNegative,
  refuseOtherThanCurrency,
  ValueFault,
} from "./value-fault.ts";
import {
  dateNode,
  followsInChain,
  nominalOrClass,
  numberNode,
  quantityNode,
  referenceNode,
  spanOf,
  splitDeviations,
  startOf,
  stringNode,
  threadNode,
  unitNode,
  wordNode,
} from "./value-nodes.ts";

/** What may stand tight behind a name. */
const ENDS_OF_NAMES: ReadonlySet<TokenType> = new Set([
  EOF,
  token.Comma,
  token.Equals,
  token.Text,
  token.OpenText,
]);

/** What a `"` behind a number can mean. */
const INCH_MARKS = ["in", "arcsec"];

const MONEY_RATE = /^([A-Z]{3})\/(h|d|min)$/;

export class ValueParser extends EmbeddedActionsParser {
  /** @param checked whether the definition of the grammar is checked too, which a test does */
  constructor(checked = false) {
    super(token.RECORD_TOKENS, parserSettings(checked));
  }

  /** `12`, `-1.5`, `1e-3`, `3/8`, `1-3/8`. */
  readonly number = this.RULE("number", (): NumberNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.Decimal) },
      { ALT: () => this.CONSUME(token.Fraction) },
      { ALT: () => this.CONSUME(token.Mixed) },
      { ALT: () => this.CONSUME(token.DecimalComma) },
      { ALT: () => this.CONSUME(token.BareFraction) },
    ]);
    this.ACTION(() => refuseBadNumber(read));
    return this.ACTION(() => numberNode(read));
  });

  readonly unit = this.RULE("unit", (): UnitNode => unitNode(this.CONSUME(token.Unit)));

  /** One value: a number with its unit, or a falling chain of them; `each` where one side is meant. */
  readonly quantity = this.RULE("quantity", (): QuantityNode => {
    const parts: [QuantityPart, ...QuantityPart[]] = [this.SUBRULE(this.quantityPart)];
    this.MANY({
      GATE: () => this.chainGoesOn(parts.at(-1)),
      DEF: () => parts.push(this.SUBRULE2(this.quantityPart)),
    });
    this.ACTION(() => refuseInchMark(this.LA(1), parts.findLast((part) => part.unit !== undefined)?.unit));
    const each = this.OPTION(() => this.CONSUME(token.Each));
    return this.ACTION(() => quantityNode(parts, each));
  });

  private readonly quantityPart = this.RULE("quantityPart", (): QuantityPart => {
    const number = this.SUBRULE(this.number);
    const unit = this.OPTION(() => this.SUBRULE(this.unit));
    this.ACTION(() => refuseMixedMetric(number, unit));
    return { number, unit };
  });

  readonly money = this.RULE("money", (): MoneyNode => {
    const number = this.SUBRULE(this.number);
    const currency = this.CONSUME(token.Unit);
    this.ACTION(() => refuseOtherThanCurrency(currency));
    return {
      kind: "money",
      number,
      currency: unitNode(currency),
      per: undefined,
      start: number.start,
      end: spanOf(currency).end,
    };
  });

  /** `40 GBP/h`. */
  readonly moneyRate = this.RULE("moneyRate", (): MoneyNode => {
    const number = this.SUBRULE(this.number);
    const unit = this.CONSUME(token.Unit);
    return this.ACTION(() => {
      const { start, end } = spanOf(unit);
      const [, text, per] = MONEY_RATE.exec(unit.image) ?? [];
      if (text === undefined)
        throw new ValueFault("unreadable-value", { start, end }, "money by the hour, such as 40 GBP/h");
      const currency: UnitNode = { kind: "unit", text, start, end: start + text.length };
      return { kind: "money", number, currency, per, start: number.start, end };
    });
  });

  /** `1 EUR = 0.86 GBP`. */
  readonly exchange = this.RULE("exchange", (): ExchangeNode => {
    const from = this.SUBRULE(this.money);
    this.CONSUME(token.Equals);
    const to = this.SUBRULE2(this.money);
    return { kind: "exchange", from, to, start: from.start, end: to.end };
  });

  readonly tolerance = this.RULE("tolerance", (): ToleranceNode => {
    const sign = this.OPTION(() => this.CONSUME(token.PlusMinus));
    const value = this.SUBRULE(this.quantity);
    return {
      kind: "tolerance",
      value,
      start: sign === undefined ? value.start : startOf(sign),
      end: value.end,
    };
  });

  /** `min 8.4 mm`, `54.00..54.05 mm`, `54 mm ± 0.05`, `54 mm +0.05/-0.00`, `25 h6`, and `new 9.5 mm` behind it. */
  readonly limits = this.RULE("limits", (): LimitsNode => {
    const bounds = this.OR([
      { ALT: () => this.SUBRULE(this.minimum) },
      { ALT: () => this.SUBRULE(this.maximum) },
      { ALT: () => this.SUBRULE(this.aroundNominal) },
    ]);
    const fresh = this.OPTION(() => {
      this.CONSUME(token.New);
      return this.SUBRULE(this.quantity);
    });
    return this.ACTION(() => ({ ...bounds, fresh, end: fresh?.end ?? bounds.end }));
  });

  private readonly minimum = this.RULE("minimum", (): LimitsNode => {
    const start = startOf(this.CONSUME(token.Minimum));
    const lower = this.SUBRULE(this.quantity);
    const upper = this.OPTION(() => {
      this.CONSUME(token.Maximum);
      return this.SUBRULE2(this.quantity);
    });
    const end = upper?.end ?? lower.end;
    return { kind: "limits", form: "bounds", lower, upper, fresh: undefined, start, end };
  });

  private readonly maximum = this.RULE("maximum", (): LimitsNode => {
    const start = startOf(this.CONSUME(token.Maximum));
    const upper = this.SUBRULE(this.quantity);
    const lower = this.OPTION(() => {
      this.CONSUME(token.Minimum);
      return this.SUBRULE2(this.quantity);
    });
    const end = lower?.end ?? upper.end;
    return { kind: "limits", form: "bounds", lower, upper, fresh: undefined, start, end };
  });

  private readonly aroundNominal = this.RULE("aroundNominal", (): LimitsNode => {
    const nominal = this.SUBRULE(this.quantity);
    const shared = { kind: "limits", fresh: undefined, start: nominal.start } as const;
    return this.OR<LimitsNode>([
      {
        ALT: () => {
          this.CONSUME(token.Range);
          const upper = this.SUBRULE2(this.quantity);
          return { ...shared, form: "bounds", lower: nominal, upper, end: upper.end };
        },
      },
      {
        ALT: () => {
          this.CONSUME(token.PlusMinus);
          const tolerance = this.SUBRULE3(this.quantity);
          return { ...shared, form: "tolerance", nominal, tolerance, end: tolerance.end };
        },
      },
      {
        ALT: () => {
          const deviations = this.CONSUME(token.Deviations);
          const unit = this.OPTION(() => this.SUBRULE(this.unit));
          const [above, below] = splitDeviations(deviations);
          const { end } = unit ?? spanOf(deviations);
          return { ...shared, form: "asymmetric", nominal, above, below, unit, end };
        },
      },
      { ALT: () => this.ACTION(() => nominalOrClass(nominal)) },
    ]);
  });

  readonly date = this.RULE("date", (): DateNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.DateText) },
      { ALT: () => this.CONSUME(token.OtherDate) },
    ]);
    this.ACTION(() => refuseBadDate(read));
    return this.ACTION(() => dateNode(read));
  });

  readonly dateRange = this.RULE("dateRange", (): DateRangeNode => {
    const from = this.SUBRULE(this.date);
    this.CONSUME(token.Range);
    const to = this.SUBRULE2(this.date);
    return { kind: "dateRange", from, to, start: from.start, end: to.end };
  });

  readonly string = this.RULE("string", (): StringNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.Text) },
      { ALT: () => this.CONSUME(token.OpenText) },
    ]);
    return this.ACTION(() => stringNode(read));
  });

  readonly word = this.RULE("word", (): WordNode => wordNode(this.CONSUME(token.Word)));

  /** A word that reads as a thread can be written as a name; that it cannot be one is said elsewhere. */
  readonly reference = this.RULE("reference", (): ReferenceNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.Word) },
      { ALT: () => this.CONSUME(token.Thread) },
    ]);
    return this.ACTION(() => {
      const node = referenceNode(read);
      refuseBadSet(node);
      this.refuseTail(node);
      return node;
    });
  });

  /** `4 x REF at 2.00 GBP`; which of the parts may stand is the shape's to say. */
  readonly countedReference = this.RULE("countedReference", (): CountedReferenceNode => {
    const count = this.OPTION(() => this.SUBRULE(this.count));
    const reference = this.SUBRULE(this.reference);
    const at = this.OPTION2(() => {
      this.CONSUME(token.At);
      return this.SUBRULE(this.money);
    });
    const start = count?.start ?? reference.start;
    return { kind: "counted", count, reference, at, start, end: at?.end ?? reference.end };
  });

  protected readonly count = this.RULE("count", (): NumberNode => {
    const number = this.SUBRULE(this.number);
    this.CONSUME(token.Cross);
    this.ACTION(() => refuseNegative(number));
    return number;
  });

  readonly thread = this.RULE("thread", (): ThreadNode => threadNode(this.CONSUME(token.Thread)));

  /** What is tight behind a name without being part of one: a hyphen, an open brace. Then the name is another. */
  protected refuseTail(name: Span): void {
    const { end } = this.tightRun(name.end);
    if (end === name.end) return;
    const opens = this.LA(1).image.includes("{");
    const expected = opens
      ? "a closing }"
      : "a name of letters, digits and underscores, or several joined by dots";
    throw new ValueFault("unreadable-value", { start: name.start, end }, expected);
  }

  /** What stands from here on without a space between, up to what may end a name. */
  protected tightRun(start: number): Span {
    let end = start;
    for (let ahead = 1; ; ahead++) {
      const { startOffset, tokenType, image } = this.LA(ahead);
      if (startOffset !== end || ENDS_OF_NAMES.has(tokenType)) return { start, end };
      end += image.length;
    }
  }

  private chainGoesOn(last: QuantityPart | undefined): boolean {
    const [number, unit] = [this.LA(1), this.LA(2)];
    if (last?.unit === undefined || /^[-+\u2212]/.test(number.image)) return false;
    if (unit.tokenType === token.InchMark)
      return INCH_MARKS.some((mark) => followsInChain(last.unit?.text ?? "", mark));
    return unit.tokenType === token.Unit && followsInChain(last.unit.text, unit.image);
  }
}
