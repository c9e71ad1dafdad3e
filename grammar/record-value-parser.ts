/** The grammar of values with a form of their own: fasteners, torques, friction, lives, intervals, packs. */
import type { IToken } from "chevrotain";
import type {
  BoltNode,
  ClassNode,
  CountedQuantityNode,
  FrictionNode,
  LifeNode,
  NutNode,
  PackNode,
  QuantityNode,
  RecheckNode,
  TakesNode,
  ThreadNode,
  TorqueNode,
  WireGaugeNode,
  WordNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";
import { ValueFault } from "./value-fault.ts";
import { numberNode, spanOf, startOf, wordNode } from "./value-nodes.ts";
import { ValueParser } from "./value-parser.ts";

export class RecordValueParser extends ValueParser {
  /** `class 8.8`, `class A2-70`, `class S`, `class unknown`, `grade 5`. */
  readonly strength = this.RULE("strength", (): ClassNode => {
    const system = this.OR([
      { ALT: () => this.CONSUME(token.Class) },
      { ALT: () => this.CONSUME(token.Grade) },
    ]);
    const first = this.OR2([
      { ALT: () => this.CONSUME(token.Decimal) },
      { ALT: () => this.CONSUME(token.Word) },
    ]);
    const second = this.OPTION({
      GATE: () => this.isTightMinus(first),
      DEF: () => this.CONSUME2(token.Decimal),
    });
    return this.ACTION(() => ({
      kind: "class",
      system: system.image === "grade" ? "grade" : "class",
      text: first.image + (second?.image ?? ""),
      ...spanOf(system, second ?? first),
    }));
  });

  /** `4 x M8x1.25x30 class 8.8`. */
  readonly bolt = this.RULE("bolt", (): BoltNode => {
    const count = this.OPTION(() => this.SUBRULE(this.count));
    const thread = this.SUBRULE(this.thread);
    const strength = this.OPTION2(() => this.SUBRULE(this.strength));
    const start = count?.start ?? thread.start;
    return { kind: "bolt", count, thread, strength, start, end: strength?.end ?? thread.end };
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
    return { ...NO_NUT, form, thread, depth, material, start: form.start, end };
  });

  /** `self_locking nylon M8x1.25 class 8 height 8 mm`, in any order behind the form. */
  private readonly looseNut = this.RULE("looseNut", (): NutNode => {
    const form = wordNode(this.CONSUME(token.Path));
    let insert: WordNode | undefined;
    let thread: ThreadNode | undefined;
    let strength: ClassNode | undefined;
    let height: QuantityNode | undefined;
    let { end } = form;
    const reach = <T extends { readonly end: number }>(part: T): T => {
      end = part.end;
      return part;
    };
    this.MANY({
      // What is given twice is left over, and complained about there.
      GATE: () => !this.isGivenAlready(insert, thread, strength, height),
      DEF: () => {
        this.OR([
          { ALT: () => (insert = reach(wordNode(this.CONSUME2(token.Path)))) },
          { ALT: () => (thread = reach(this.SUBRULE(this.thread))) },
          { ALT: () => (strength = reach(this.SUBRULE(this.strength))) },
          {
            ALT: () => {
              this.CONSUME(token.Height);
              height = reach(this.SUBRULE(this.quantity));
            },
          },
        ]);
      },
    });
    return { ...NO_NUT, form, insert, thread, strength, height, start: form.start, end };
  });

  /** `2 x 1.6 mm`. */
  readonly countedQuantity = this.RULE("countedQuantity", (): CountedQuantityNode => {
    const count = this.OPTION({
      GATE: () => this.LA(2).tokenType === token.Cross,
      DEF: () => this.SUBRULE(this.count),
    });
    const value = this.SUBRULE(this.quantity);
    return { kind: "countedQuantity", count, value, start: count?.start ?? value.start, end: value.end };
  });

  /** `24 N.m ± 10 %`, `min 35 lbf.ft to slot`, `20 N.m then 90 deg`, `from class`, `by hand`. */
  readonly torque = this.RULE(
    "torque",
    (): TorqueNode =>
      this.OR<TorqueNode>([
        {
          ALT: () => {
            const from = this.CONSUME(token.From);
            return { kind: "torque", form: "fromClass", ...spanOf(from, this.CONSUME(token.Class)) };
          },
        },
        {
          ALT: () => {
            const by = this.CONSUME(token.By);
            return { kind: "torque", form: "byHand", ...spanOf(by, this.CONSUME(token.Hand)) };
          },
        },
        { ALT: () => this.SUBRULE(this.measuredTorque) },
      ]),
  );

  private readonly measuredTorque = this.RULE("measuredTorque", (): TorqueNode => {
    const limits = this.SUBRULE(this.limits);
    const slot = this.OPTION(() => {
      this.CONSUME(token.To);
      return this.CONSUME(token.Slot);
    });
    const then = this.OPTION2(() => {
      this.CONSUME(token.Then);
      return this.SUBRULE(this.quantity);
    });
    return this.ACTION(() => {
      const end = then?.end ?? (slot === undefined ? limits.end : spanOf(slot).end);
      const toSlot = slot !== undefined;
      return { kind: "torque", form: "limits", limits, then, toSlot, start: limits.start, end };
    });
  });

  /** `nut_factor 0.18`, `thread 0.14 head 0.12`, or a word; a bare number says nothing. */
  readonly friction = this.RULE(
    "friction",
    (): FrictionNode =>
      this.OR<FrictionNode>([
        {
          ALT: () => {
            const start = startOf(this.CONSUME(token.NutFactor));
            const value = this.SUBRULE(this.number);
            return { kind: "friction", form: "nutFactor", value, start, end: value.end };
          },
        },
        {
          ALT: () => {
            const start = startOf(this.CONSUME(token.ThreadWord));
            const thread = this.SUBRULE2(this.number);
            this.CONSUME(token.Head);
            const head = this.SUBRULE3(this.number);
            return { kind: "friction", form: "coefficients", thread, head, start, end: head.end };
          },
        },
        {
          ALT: () => {
            const value = this.SUBRULE4(this.number);
            return this.ACTION(() => refuseUnnamed(value));
          },
        },
        {
          ALT: () => {
            const word = wordNode(this.CONSUME(token.Path));
            return { kind: "friction", form: "word", word, start: word.start, end: word.end };
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

  /** `after 1 h running, then every 10 h running`, or either half. */
  readonly recheck = this.RULE(
    "recheck",
    (): RecheckNode =>
      this.OR<RecheckNode>([
        {
          ALT: () => {
            const start = startOf(this.CONSUME(token.After));
            const after = this.SUBRULE(this.runningTime);
            const every = this.OPTION(() => {
              this.OPTION2(() => this.CONSUME(token.Comma));
              this.OPTION3(() => this.CONSUME(token.Then));
              this.CONSUME(token.Every);
              return this.SUBRULE2(this.runningTime);
            });
            return { kind: "recheck", after, every, start, end: every?.end ?? after.end };
          },
        },
        {
          ALT: () => {
            const start = startOf(this.CONSUME2(token.Every));
            const every = this.SUBRULE3(this.runningTime);
            return { kind: "recheck", after: undefined, every, start, end: every.end };
          },
        },
      ]),
  );

  /** `10 h running`; the last word may be left out. */
  private readonly runningTime = this.RULE("runningTime", (): QuantityNode => {
    const value = this.SUBRULE(this.quantity);
    const running = this.OPTION(() => this.CONSUME(token.Running));
    return this.ACTION(() => (running === undefined ? value : { ...value, end: spanOf(running).end }));
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
    return { kind: "pack", count, at, start: count.start, end: at?.end ?? count.end };
  });

  /** `AWG 14`, `AWG 4/0`: the name of a size, and no fraction. */
  readonly wireGauge = this.RULE("wireGauge", (): WireGaugeNode => {
    const start = startOf(this.CONSUME(token.Awg));
    const read = this.OR([
      { ALT: () => this.CONSUME(token.Decimal) },
      { ALT: () => this.CONSUME(token.Fraction) },
    ]);
    return this.ACTION(() => {
      const number = numberNode(read);
      return { kind: "wireGauge", number, start, end: number.end };
    });
  });

  /** The `-70` of `A2-70`. */
  private isTightMinus(before: IToken): boolean {
    const next = this.LA(1);
    return next.image.startsWith("-") && next.startOffset === spanOf(before).end;
  }

  private isGivenAlready(
    insert: WordNode | undefined,
    thread: ThreadNode | undefined,
    strength: ClassNode | undefined,
    height: QuantityNode | undefined,
  ): boolean {
    switch (this.LA(1).tokenType) {
      case token.Path:
        return insert !== undefined;
      case token.Thread:
        return thread !== undefined;
      case token.Class:
      case token.Grade:
        return strength !== undefined;
      default:
        return height !== undefined;
    }
  }
}

const NO_NUT = {
  kind: "nut",
  insert: undefined,
  thread: undefined,
  strength: undefined,
  height: undefined,
  depth: undefined,
  material: undefined,
} as const;

function refuseUnnamed(value: {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}): never {
  const { start, end, text } = value;
  throw new ValueFault(
    "friction-unnamed",
    { start, end },
    "what the figure is: a nut factor, or the friction of thread and head",
    [
      { start, end, text: `nut_factor ${text}`, title: "It is a nut factor", sure: false },
      {
        start,
        end,
        text: `thread ${text} head ${text}`,
        title: "It is the friction of thread and head",
        sure: false,
      },
    ],
  );
}
