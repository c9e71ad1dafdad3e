/**
 * The grammar of single values: one rule for each kind of value that a shape can ask for. The statement reader
 * (`statement.ts`) chooses the rule by the vocabulary, and does what lists and clauses need.
 */
import type { IToken, ParserMethod } from "chevrotain";
import { EmbeddedActionsParser } from "chevrotain";
import type {
  BoltNode,
  ClassNode,
  CountedQuantityNode,
  CountedReferenceNode,
  DateNode,
  DateRangeNode,
  ExchangeNode,
  FrictionNode,
  LifeNode,
  LimitsNode,
  MoneyNode,
  NumberNode,
  NutNode,
  PackNode,
  QuantityNode,
  QuantityPart,
  RecheckNode,
  ReferenceNode,
  ReferenceSegment,
  Span,
  StringNode,
  SyntaxFaultCode,
  SyntaxFix,
  TakesNode,
  ThreadNode,
  ToleranceNode,
  TorqueNode,
  UnitNode,
  WireGaugeNode,
  WordNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";

/** Thrown where a token is in place but cannot mean what it says; carries its own complaint. */
export class ValueFault extends Error {
  readonly code: SyntaxFaultCode;
  readonly span: Span;
  readonly fixes: readonly SyntaxFix[];
  readonly expected: string | undefined;

  constructor(
    code: SyntaxFaultCode,
    span: Span,
    expected: string | undefined,
    fixes: readonly SyntaxFix[] = [],
  ) {
    super(code);
    this.code = code;
    this.span = span;
    this.expected = expected;
    this.fixes = fixes;
  }
}

/** Units that follow each other within one value, the larger first. */
const CHAINS: readonly (readonly (readonly string[])[])[] = [
  [["deg", "°"], ["arcmin", "'"], ["arcsec"]],
  [["week", "weeks"], ["d"], ["h"], ["min"], ["s"]],
  [["ft"], ["in"]],
  [["lb"], ["oz"]],
  [
    ["year", "years"],
    ["month", "months"],
  ],
];

/** True where the smaller unit may follow the larger one within one value. */
export function followsInChain(larger: string, smaller: string): boolean {
  return CHAINS.some((chain) => {
    const at = chain.findIndex((names) => names.includes(larger));
    return at >= 0 && chain.slice(at + 1).some((names) => names.includes(smaller));
  });
}

export function spanOf(first: IToken, last: IToken = first): Span {
  return { start: first.startOffset, end: last.startOffset + last.image.length };
}

const CURRENCY = /^[A-Z]{3}$/;
const MONEY_RATE = /^([A-Z]{3})\/(h|d|min)$/;

export class ValueParser extends EmbeddedActionsParser {
  constructor() {
    super(token.RECORD_TOKENS, { maxLookahead: 2, recoveryEnabled: false, skipValidations: true });
  }

  /** `12`, `-1.5`, `1e-3`, `3/8`, `1-3/8`. */
  readonly number = this.RULE("number", (): NumberNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.Decimal) },
      { ALT: () => this.CONSUME(token.Fraction) },
      { ALT: () => this.CONSUME(token.Mixed) },
      { ALT: () => this.CONSUME(token.SpacedMixed) },
      { ALT: () => this.CONSUME(token.DecimalComma) },
      { ALT: () => this.CONSUME(token.BareFraction) },
    ]);
    this.ACTION(() => refuseBadNumber(read));
    return this.ACTION(() => ({ kind: "number", text: read.image, ...spanOf(read) }));
  });

  readonly unit = this.RULE("unit", (): UnitNode => unitNode(this.CONSUME(token.Unit)));

  /** One value: a number with its unit, or a falling chain of them. */
  readonly quantity = this.RULE("quantity", (): QuantityNode => {
    const first = this.SUBRULE(this.quantityPart);
    const parts: [QuantityPart, ...QuantityPart[]] = [first];
    this.MANY({
      GATE: () => this.chainGoesOn(parts.at(-1)),
      DEF: () => parts.push(this.SUBRULE2(this.quantityPart)),
    });
    const each = this.OPTION(() => this.CONSUME(token.Each));
    return this.ACTION(() => {
      const end = each === undefined ? partEnd(parts.at(-1) ?? first) : spanOf(each).end;
      return { kind: "quantity", parts, each: each !== undefined, start: first.number.start, end };
    });
  });

  private readonly quantityPart = this.RULE("quantityPart", (): QuantityPart => {
    const number = this.SUBRULE(this.number);
    const unit = this.OPTION(() => this.SUBRULE(this.unit));
    this.ACTION(() => this.refuseInchMark());
    this.ACTION(() => refuseMixedMetric(number, unit));
    return this.ACTION(() => ({ number, unit }));
  });

  readonly money = this.RULE("money", (): MoneyNode => {
    const number = this.SUBRULE(this.number);
    const unit = this.CONSUME(token.Unit);
    this.ACTION(() => {
      if (!CURRENCY.test(unit.image))
        throw new ValueFault(
          "unreadable-value",
          spanOf(unit),
          "a currency code behind the amount, such as 62.00 GBP",
          currencyFixes(unit),
        );
    });
    return this.ACTION(() => ({
      kind: "money",
      number,
      currency: unitNode(unit),
      per: undefined,
      start: number.start,
      end: spanOf(unit).end,
    }));
  });

  /** `40 GBP/h`. */
  readonly moneyRate = this.RULE("moneyRate", (): MoneyNode => {
    const number = this.SUBRULE(this.number);
    const unit = this.CONSUME(token.Unit);
    const match = this.ACTION(() => MONEY_RATE.exec(unit.image));
    this.ACTION(() => {
      if (match === null)
        throw new ValueFault("unreadable-value", spanOf(unit), "money by the hour, such as 40 GBP/h");
    });
    const start = unit.startOffset;
    const currency: UnitNode = { kind: "unit", text: match?.[1] ?? "", start, end: start + 3 };
    return this.ACTION(() => ({
      kind: "money",
      number,
      currency,
      per: match?.[2],
      start: number.start,
      end: spanOf(unit).end,
    }));
  });

  /** `1 EUR = 0.86 GBP`. */
  readonly exchange = this.RULE("exchange", (): ExchangeNode => {
    const from = this.SUBRULE(this.money);
    this.CONSUME(token.Equals);
    const to = this.SUBRULE2(this.money);
    return this.ACTION(() => ({ kind: "exchange", from, to, start: from.start, end: to.end }));
  });

  readonly tolerance = this.RULE("tolerance", (): ToleranceNode => {
    const sign = this.OPTION(() => this.CONSUME(token.PlusMinus));
    const value = this.SUBRULE(this.quantity);
    return this.ACTION(() => ({
      kind: "tolerance",
      value,
      start: sign?.startOffset ?? value.start,
      end: value.end,
    }));
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
    const word = this.CONSUME(token.Minimum);
    const lower = this.SUBRULE(this.quantity);
    const upper = this.OPTION(() => {
      this.CONSUME(token.Maximum);
      return this.SUBRULE2(this.quantity);
    });
    return this.ACTION(() => ({
      kind: "limits",
      form: "bounds",
      lower,
      upper,
      fresh: undefined,
      start: word.startOffset,
      end: upper?.end ?? lower.end,
    }));
  });

  private readonly maximum = this.RULE("maximum", (): LimitsNode => {
    const word = this.CONSUME(token.Maximum);
    const upper = this.SUBRULE(this.quantity);
    return this.ACTION(() => ({
      kind: "limits",
      form: "bounds",
      lower: undefined,
      upper,
      fresh: undefined,
      start: word.startOffset,
      end: upper.end,
    }));
  });

  private readonly aroundNominal = this.RULE("aroundNominal", (): LimitsNode => {
    const nominal = this.SUBRULE(this.quantity);
    const shared = this.ACTION(() => ({ kind: "limits", fresh: undefined, start: nominal.start }) as const);
    return this.OR({
      DEF: [
        {
          ALT: (): LimitsNode => {
            this.CONSUME(token.Range);
            const upper = this.SUBRULE2(this.quantity);
            return this.ACTION(() => ({ ...shared, form: "bounds", lower: nominal, upper, end: upper.end }));
          },
        },
        {
          ALT: (): LimitsNode => {
            this.CONSUME(token.PlusMinus);
            const tolerance = this.SUBRULE3(this.quantity);
            return this.ACTION(() => ({
              ...shared,
              form: "tolerance",
              nominal,
              tolerance,
              end: tolerance.end,
            }));
          },
        },
        {
          ALT: (): LimitsNode => {
            const deviations = this.CONSUME(token.Deviations);
            const unit = this.OPTION2(() => this.SUBRULE(this.unit));
            return this.ACTION((): LimitsNode => {
              const [above, below] = splitDeviations(deviations);
              return {
                ...shared,
                form: "asymmetric",
                nominal,
                above,
                below,
                unit,
                end: (unit ?? spanOf(deviations)).end,
              };
            });
          },
        },
        { ALT: (): LimitsNode => this.ACTION(() => nominalOrClass(nominal)) },
      ],
    });
  });

  readonly date = this.RULE("date", (): DateNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.DateText) },
      { ALT: () => this.CONSUME(token.OtherDate) },
    ]);
    this.ACTION(() => refuseBadDate(read));
    return this.ACTION(() => ({ kind: "date", text: read.image, ...spanOf(read) }));
  });

  readonly dateRange = this.RULE("dateRange", (): DateRangeNode => {
    const from = this.SUBRULE(this.date);
    this.CONSUME(token.Range);
    const to = this.SUBRULE2(this.date);
    return this.ACTION(() => ({ kind: "dateRange", from, to, start: from.start, end: to.end }));
  });

  readonly string = this.RULE("string", (): StringNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.Text) },
      { ALT: () => this.CONSUME(token.OpenText) },
    ]);
    return this.ACTION(() => stringNode(read));
  });

  readonly word = this.RULE("word", (): WordNode => wordNode(this.CONSUME(token.Word)));

  readonly reference = this.RULE("reference", (): ReferenceNode => {
    const read = this.OR([
      { ALT: () => this.CONSUME(token.Word) },
      { ALT: () => this.CONSUME(token.Thread) },
    ]);
    return this.ACTION(() => referenceNode(read));
  });

  /** `4 x REF at 2.00 GBP`; which of the parts may stand is the shape's to say. */
  readonly countedReference = this.RULE("countedReference", (): CountedReferenceNode => {
    const count = this.OPTION(() => this.SUBRULE(this.count));
    const reference = this.SUBRULE(this.reference);
    const at = this.OPTION2(() => {
      this.CONSUME(token.At);
      return this.SUBRULE(this.money);
    });
    return this.ACTION(() => ({
      kind: "counted",
      count,
      reference,
      at,
      start: count?.start ?? reference.start,
      end: at?.end ?? reference.end,
    }));
  });

  private readonly count = this.RULE("count", (): NumberNode => {
    const number = this.SUBRULE(this.number);
    this.CONSUME(token.Cross);
    return number;
  });

  readonly thread = this.RULE("thread", (): ThreadNode => threadNode(this.CONSUME(token.Thread)));

  /** `class 8.8`, `class A2-70`, `class S`, `class unknown`, `grade 5`. */
  readonly strength = this.RULE("strength", (): ClassNode => {
    const system = this.OR([
      { ALT: () => this.CONSUME(token.Class) },
      { ALT: () => this.CONSUME(token.Grade) },
    ]);
    const parts = this.OR2([
      { ALT: () => [this.CONSUME(token.Decimal)] },
      {
        ALT: () => {
          const name = this.CONSUME(token.Word);
          const figure = this.OPTION({
            GATE: () => this.LA(1).image.startsWith("-"),
            DEF: () => this.CONSUME2(token.Decimal),
          });
          return figure === undefined ? [name] : [name, figure];
        },
      },
    ]);
    return this.ACTION(() => ({
      kind: "class",
      system: system.image === "grade" ? "grade" : "class",
      text: parts.map(({ image }) => image).join(""),
      start: system.startOffset,
      end: spanOf(parts.at(-1) ?? system).end,
    }));
  });

  /** `4 x M8x1.25x30 class 8.8`. */
  readonly bolt = this.RULE("bolt", (): BoltNode => {
    const count = this.OPTION(() => this.SUBRULE(this.count));
    const thread = this.SUBRULE(this.thread);
    const strength = this.OPTION2(() => this.SUBRULE(this.strength));
    return this.ACTION(() => ({
      kind: "bolt",
      count,
      thread,
      strength,
      start: count?.start ?? thread.start,
      end: strength?.end ?? thread.end,
    }));
  });

  readonly nut = this.RULE(
    "nut",
    (): NutNode =>
      this.OR([{ ALT: () => this.SUBRULE(this.tappedHole) }, { ALT: () => this.SUBRULE(this.looseNut) }]),
  );

  /** `tapped 18 mm in aluminium`. */
  private readonly tappedHole = this.RULE("tappedHole", (): NutNode => {
    const form = wordNode(this.CONSUME(token.Tapped));
    const depth = this.OPTION(() => this.SUBRULE(this.quantity));
    const material = this.OPTION2(() => {
      this.CONSUME(token.In);
      return wordNode(this.CONSUME(token.Path));
    });
    const thread = this.OPTION3(() => this.SUBRULE(this.thread));
    const end = thread?.end ?? material?.end ?? depth?.end ?? form.end;
    return this.ACTION(() => ({
      kind: "nut",
      form,
      insert: undefined,
      thread,
      strength: undefined,
      height: undefined,
      depth,
      material,
      start: form.start,
      end,
    }));
  });

  /** `self_locking nylon M8x1.25 class 8 height 8 mm`, in any order behind the form. */
  private readonly looseNut = this.RULE("looseNut", (): NutNode => {
    const form = wordNode(this.CONSUME(token.Path));
    let insert: WordNode | undefined;
    let thread: ThreadNode | undefined;
    let strength: ClassNode | undefined;
    let height: QuantityNode | undefined;
    this.MANY(() => {
      this.OR([
        {
          ALT: () => {
            insert = wordNode(this.CONSUME2(token.Path));
          },
        },
        {
          ALT: () => {
            thread = this.SUBRULE(this.thread);
          },
        },
        {
          ALT: () => {
            strength = this.SUBRULE(this.strength);
          },
        },
        {
          ALT: () => {
            this.CONSUME(token.Height);
            height = this.SUBRULE(this.quantity);
          },
        },
      ]);
    });
    const end = Math.max(form.end, insert?.end ?? 0, thread?.end ?? 0, strength?.end ?? 0, height?.end ?? 0);
    return this.ACTION(() => ({
      kind: "nut",
      form,
      insert,
      thread,
      strength,
      height,
      depth: undefined,
      material: undefined,
      start: form.start,
      end,
    }));
  });

  /** `2 x 1.6 mm`. */
  readonly countedQuantity = this.RULE("countedQuantity", (): CountedQuantityNode => {
    const count = this.OPTION(() => this.SUBRULE(this.count));
    const value = this.SUBRULE(this.quantity);
    return this.ACTION(() => ({
      kind: "countedQuantity",
      count,
      value,
      start: count?.start ?? value.start,
      end: value.end,
    }));
  });

  /** `24 N.m ± 10 %`, `min 35 lbf.ft to slot`, `20 N.m then 90 deg`, `from class`, `by hand`. */
  readonly torque = this.RULE(
    "torque",
    (): TorqueNode =>
      this.OR([
        {
          ALT: (): TorqueNode => {
            const from = this.CONSUME(token.From);
            const last = this.CONSUME(token.Class);
            return this.ACTION(() => ({ kind: "torque", form: "fromClass", ...spanOf(from, last) }));
          },
        },
        {
          ALT: (): TorqueNode => {
            const by = this.CONSUME(token.By);
            const last = this.CONSUME(token.Hand);
            return this.ACTION(() => ({ kind: "torque", form: "byHand", ...spanOf(by, last) }));
          },
        },
        {
          ALT: (): TorqueNode => {
            const limits = this.SUBRULE(this.limits);
            const slot = this.OPTION(() => {
              this.CONSUME(token.To);
              return this.CONSUME(token.Slot);
            });
            const then = this.OPTION2(() => {
              this.CONSUME(token.Then);
              return this.SUBRULE(this.quantity);
            });
            return this.ACTION((): TorqueNode => {
              const end = then?.end ?? (slot === undefined ? limits.end : spanOf(slot).end);
              return {
                kind: "torque",
                form: "limits",
                limits,
                then,
                toSlot: slot !== undefined,
                start: limits.start,
                end,
              };
            });
          },
        },
      ]),
  );

  /** `nut_factor 0.18`, `thread 0.14 head 0.12`, or a word; a bare number says nothing. */
  readonly friction = this.RULE(
    "friction",
    (): FrictionNode =>
      this.OR([
        {
          ALT: (): FrictionNode => {
            const word = this.CONSUME(token.NutFactor);
            const value = this.SUBRULE(this.number);
            return this.ACTION(() => ({
              kind: "friction",
              form: "nutFactor",
              value,
              start: word.startOffset,
              end: value.end,
            }));
          },
        },
        {
          ALT: (): FrictionNode => {
            const word = this.CONSUME(token.ThreadWord);
            const thread = this.SUBRULE2(this.number);
            this.CONSUME(token.Head);
            const head = this.SUBRULE3(this.number);
            return this.ACTION(() => ({
              kind: "friction",
              form: "coefficients",
              thread,
              head,
              start: word.startOffset,
              end: head.end,
            }));
          },
        },
        {
          ALT: (): FrictionNode => {
            const value = this.SUBRULE4(this.number);
            return this.ACTION((): FrictionNode => {
              throw new ValueFault(
                "friction-unnamed",
                value,
                "what the figure is: a nut factor, or the friction of thread and head",
                [
                  { ...value, text: `nut_factor ${value.text}`, title: "It is a nut factor", sure: false },
                  {
                    ...value,
                    text: `thread ${value.text} head ${value.text}`,
                    title: "It is the friction of thread and head",
                    sure: false,
                  },
                ],
              );
            });
          },
        },
        {
          ALT: (): FrictionNode => {
            const word = wordNode(this.CONSUME(token.Path));
            return this.ACTION(() => ({
              kind: "friction",
              form: "word",
              word,
              start: word.start,
              end: word.end,
            }));
          },
        },
      ]),
  );

  /** `5 year from made`, `20 h running`. */
  readonly life = this.RULE("life", (): LifeNode => {
    const value = this.SUBRULE(this.quantity);
    const counted = this.OR([
      { ALT: () => this.CONSUME(token.Running) },
      {
        ALT: () => {
          this.CONSUME(token.From);
          return this.OR2([
            { ALT: () => this.CONSUME(token.Made) },
            { ALT: () => this.CONSUME(token.Fitted) },
          ]);
        },
      },
    ]);
    return this.ACTION(() => ({
      kind: "life",
      value,
      counted: counted.image as LifeNode["counted"],
      start: value.start,
      end: spanOf(counted).end,
    }));
  });

  /** `after 1 h running, then every 10 h running`. */
  readonly recheck = this.RULE("recheck", (): RecheckNode => {
    const start = this.ACTION(() => this.LA(1).startOffset);
    let end = start;
    const figure = (quantity: QuantityNode, running: IToken | undefined): QuantityNode => {
      end = running === undefined ? quantity.end : spanOf(running).end;
      return quantity;
    };
    const after = this.OPTION(() => {
      this.CONSUME(token.After);
      const first = this.SUBRULE(this.quantity);
      const running = this.OPTION2(() => this.CONSUME(token.Running));
      this.OPTION3(() => {
        this.OPTION4(() => this.CONSUME(token.Comma));
        this.CONSUME(token.Then);
      });
      return this.ACTION(() => figure(first, running));
    });
    const every = this.OPTION5(() => {
      this.CONSUME(token.Every);
      const again = this.SUBRULE2(this.quantity);
      const running = this.OPTION6(() => this.CONSUME2(token.Running));
      return this.ACTION(() => figure(again, running));
    });
    return this.ACTION(() => ({ kind: "recheck", after, every, start, end }));
  });

  /** `6 h` or `4..6..10 h`. */
  readonly takes = this.RULE("takes", (): TakesNode => {
    const first = this.SUBRULE(this.quantity);
    const rest = this.OPTION((): readonly [QuantityNode, QuantityNode] => {
      this.CONSUME(token.Range);
      const likely = this.SUBRULE2(this.quantity);
      this.CONSUME2(token.Range);
      return [likely, this.SUBRULE3(this.quantity)];
    });
    return this.ACTION(() => ({
      kind: "takes",
      values: rest === undefined ? [first] : [first, ...rest],
      start: first.start,
      end: (rest?.[1] ?? first).end,
    }));
  });

  /** `10`, or `50 at 2.00 GBP`. */
  readonly pack = this.RULE("pack", (): PackNode => {
    const count = this.SUBRULE(this.number);
    const at = this.OPTION(() => {
      this.CONSUME(token.At);
      return this.SUBRULE(this.money);
    });
    return this.ACTION(() => ({ kind: "pack", count, at, start: count.start, end: at?.end ?? count.end }));
  });

  /** `AWG 14`. */
  readonly wireGauge = this.RULE("wireGauge", (): WireGaugeNode => {
    const word = this.CONSUME(token.Awg);
    const number = this.SUBRULE(this.number);
    return this.ACTION(() => ({ kind: "wireGauge", number, start: word.startOffset, end: number.end }));
  });

  private chainGoesOn(last: QuantityPart | undefined): boolean {
    return (
      last?.unit !== undefined &&
      this.LA(2).tokenType === token.Unit &&
      followsInChain(last.unit.text, this.LA(2).image)
    );
  }

  private refuseInchMark(): void {
    const mark = this.LA(1);
    if (mark.tokenType !== token.InchMark) return;
    const span = spanOf(mark);
    throw new ValueFault("unknown-unit", span, "a unit by its name", [
      { ...span, text: " in", title: "Write inches as in", sure: true },
    ]);
  }
}

/** The value rules by name, as the shapes call them. */
export type ValueRule<T> = ParserMethod<[], T>;

function refuseBadNumber(read: IToken): void {
  const span = spanOf(read);
  if (read.tokenType === token.DecimalComma) {
    const sure = !/,\d{3}$/.test(read.image);
    const text = read.image.replace(",", ".");
    throw new ValueFault("decimal-comma", span, text, [{ ...span, text, title: `Write ${text}`, sure }]);
  }
  if (read.tokenType === token.BareFraction) {
    const text = read.image.replace(".", "0.");
    throw new ValueFault("unreadable-value", span, `a number with a figure before its point: ${text}`, [
      { ...span, text, title: `Write ${text}`, sure: true },
    ]);
  }
}

function refuseMixedMetric(number: NumberNode, unit: UnitNode | undefined): void {
  if (!/\d[- ]\d+\//.test(number.text)) return;
  if (unit !== undefined && /^(?:in|ft)$/.test(unit.text)) return;
  throw new ValueFault("unreadable-value", number, "a mixed number only before an inch or a foot");
}

function currencyFixes(unit: IToken): readonly SyntaxFix[] {
  const text = unit.image.toUpperCase();
  return CURRENCY.test(text) ? [{ ...spanOf(unit), text, title: `Write ${text}`, sure: true }] : [];
}

const DAYS_BEFORE_LEAP = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function refuseBadDate(read: IToken): void {
  const span = spanOf(read);
  if (read.tokenType === token.DateText) {
    if (!isCalendarDate(read.image))
      throw new ValueFault("bad-date", span, "a day that the calendar has, as in 2026-05-02");
    return;
  }
  const isoText = asIsoDate(read.image);
  const fixes =
    isoText === undefined
      ? []
      : [
          {
            ...span,
            text: isoText,
            title: `Write ${isoText}`,
            sure: read.image.startsWith(isoText.slice(0, 4)),
          },
        ];
  throw new ValueFault("bad-date", span, "a date as year, month and day: 2026-05-02", fixes);
}

/** True for a date that exists, in the Gregorian calendar. */
export function isCalendarDate(text: string): boolean {
  const [year = 0, month = 0, day = 0] = text.split("-").map(Number);
  const longest = DAYS_BEFORE_LEAP[month - 1];
  if (longest === undefined || day < 1 || day > longest) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month !== 2 || day < 29 || leap;
}

/** The ISO form of a date in another order: the year first where it stands first, else day, month, year. */
function asIsoDate(text: string): string | undefined {
  const parts = text.split(/[-/.]/);
  const [year, month, day] = parts[0]?.length === 4 ? parts : [...parts].reverse();
  const iso = `${year}-${month?.padStart(2, "0")}-${day?.padStart(2, "0")}`;
  return isCalendarDate(iso) ? iso : undefined;
}

function unitNode(read: IToken): UnitNode {
  return {
    kind: "unit",
    text: read.image,
    start: read.startOffset,
    end: read.startOffset + read.image.length,
  };
}

function threadNode(read: IToken): ThreadNode {
  return {
    kind: "thread",
    text: read.image,
    start: read.startOffset,
    end: read.startOffset + read.image.length,
  };
}

export function wordNode(read: IToken): WordNode {
  return {
    kind: "word",
    text: read.image,
    start: read.startOffset,
    end: read.startOffset + read.image.length,
  };
}

function stringNode(read: IToken): StringNode {
  const closed = read.tokenType === token.Text;
  const inner = read.image.slice(1, closed ? -1 : undefined);
  const text = inner.replace(/\\(["\\])/g, "$1");
  return { kind: "string", text: closed ? text : text.trimEnd(), closed, ...spanOf(read) };
}

export function referenceNode(read: IToken): ReferenceNode {
  return { kind: "reference", text: read.image, segments: segmentsOf(read.image), ...spanOf(read) };
}

const SEGMENT = /\{([^}]*)\}|\*|[^.]+/g;

function segmentsOf(text: string): ReferenceSegment[] {
  return [...text.matchAll(SEGMENT)].map(([whole, options]) => {
    if (whole === "*") return { is: "every" };
    return options === undefined
      ? { is: "name", text: whole }
      : {
          is: "choice",
          options: options
            .split(",")
            .map((option) => option.trim())
            .filter((option) => option !== ""),
        };
  });
}

function splitDeviations(read: IToken): [NumberNode, NumberNode] {
  const slash = read.image.indexOf("/");
  const part = (from: number, to: number): NumberNode => {
    const raw = read.image.slice(from, to);
    const start = read.startOffset + from + (raw.length - raw.trimStart().length);
    return { kind: "number", text: raw.trim(), start, end: start + raw.trim().length };
  };
  return [part(0, slash), part(slash + 1, read.image.length)];
}

const ISO_286_CLASS =
  /^(?:[a-hj-np-zA-HJ-NP-Z]|cd|CD|ef|EF|fg|FG|js|JS|za|ZA|zb|ZB|zc|ZC)(?:01|0|1[0-8]|[1-9])$/;

/** `25 h6` alone is a class of ISO 286; anything else alone is a nominal value without tolerance. */
function nominalOrClass(nominal: QuantityNode): LimitsNode {
  const { number, unit } = nominal.parts[0];
  const shared = { kind: "limits", fresh: undefined, start: nominal.start, end: nominal.end } as const;
  if (unit !== undefined && nominal.parts.length === 1 && ISO_286_CLASS.test(unit.text)) {
    return { ...shared, form: "iso286", size: number, toleranceClass: { ...unit, kind: "word" } };
  }
  return { ...shared, form: "nominal", nominal };
}

function partEnd(part: QuantityPart): number {
  return (part.unit ?? part.number).end;
}
