/**
 * From the text of values to values: numbers become exact decimals, unit texts units. A value that reads but makes no
 * sense is complained about here, with the likely unit, and is undefined.
 */

import { nearest } from "../../../grammar/nearest.ts";
import type {
  DateNode,
  MoneyNode,
  NumberNode,
  QuantityNode,
  Span,
  SyntaxFix,
  UnitNode,
} from "../../../grammar/syntax.ts";
import { compoundQuantity } from "../../quantities/compound.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import { ZERO } from "../../quantities/decimal.ts";
import type { DimensionName } from "../../quantities/dimension.ts";
import type { Limits } from "../../quantities/limits.ts";
import type { Money } from "../../quantities/money.ts";
import { readCurrency } from "../../quantities/money.ts";
import type { NumberRead } from "../../quantities/number.ts";
import { isNumberFault, readNumber } from "../../quantities/number.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { convert, hasDimension, quantityOf, writtenQuantity } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import type { Unit } from "../../quantities/unit.ts";
import { adviseUnit, isUnitFault, NO_UNIT, readUnit } from "../../quantities/unit.ts";
import type { UnitAdvice } from "../../quantities/unlikely-unit.ts";
import type { Friction } from "../../trade/friction.ts";
import type { NutClass, StrengthClass } from "../../trade/strength-class.ts";
import type { Thread } from "../../trade/thread.ts";
import type { Due } from "./due.ts";
import { ANY } from "./due.ts";
import type { LoweringFault } from "./fault.ts";

/** A bolt as specified: number, thread, length under the head in m, class. */
export interface Bolt {
  readonly count: number;
  readonly thread: Thread;
  readonly length: number | undefined;
  /** Undefined where no class is given. */
  readonly strength: StrengthClass | undefined;
}

export type Nut =
  | {
      readonly form: "plain" | "self_locking" | "castle";
      readonly insert: "nylon" | "metal" | undefined;
      readonly thread: Thread | undefined;
      readonly strength: NutClass | undefined;
      readonly height: Quantity | undefined;
    }
  | {
      readonly form: "tapped";
      readonly thread: Thread | undefined;
      readonly depth: Quantity | undefined;
      readonly material: string | undefined;
    };

export type TorqueSpec =
  | {
      readonly form: "limits";
      readonly limits: Limits;
      readonly then: Quantity | undefined;
      readonly toSlot: boolean;
    }
  | { readonly form: "from class" }
  | { readonly form: "by hand" };

/** What is known of the friction in a joint. `word` is kept where the author used one. */
export type FrictionSpec =
  | { readonly form: "nut factor"; readonly friction: Friction }
  | { readonly form: "coefficients"; readonly thread: number; readonly head: number }
  | { readonly form: "no figure"; readonly word: string };

interface Complaint {
  /** What stands there, where it is not simply the text of the place. */
  readonly found?: string;
  readonly reason?: string | undefined;
  readonly fixes?: readonly SyntaxFix[];
}

/** Lowers the values of one block, collecting what is wrong with them. */
export class ValueLowering {
  readonly faults: LoweringFault[] = [];
  private readonly text: string;

  /** @param text the text of the block, to say what was found */
  constructor(text = "") {
    this.text = text;
  }

  complain(
    code: LoweringFault["code"],
    { start, end }: Span,
    expected: string,
    { found = this.text.slice(start, end), reason, fixes = [] }: Complaint = {},
  ): undefined {
    this.faults.push({ code, start, end, found, expected, reason, fixes });
    return undefined;
  }

  number(node: NumberNode): NumberRead | undefined {
    const read = readNumber(node.text);
    return isNumberFault(read) ? this.complain("unreadable-value", node, "a number") : read;
  }

  /** A whole number, at least so many; without one, `otherwise`. */
  count(node: NumberNode | undefined, { least = 0, otherwise = 1 } = {}): number | undefined {
    if (node === undefined) return otherwise;
    const read = this.number(node);
    if (read === undefined) return undefined;
    const { value } = read;
    if (value.isInteger() && value.greaterThanOrEqualTo(least) && value.lessThan(1e9))
      return value.toNumber();
    const expected = least === 0 ? "a whole number, not negative" : `a whole number, at least ${least}`;
    return this.complain("unreadable-value", node, expected);
  }

  /** @param neighbour the unit of its neighbours, where the place does not say what is measured */
  unit(node: UnitNode, due: Due = ANY, neighbour?: Unit): Unit | undefined {
    const read = readUnit(node.text);
    if (!isUnitFault(read)) return read;
    // A bare number beside it says nothing of what is measured.
    const hint = neighbour === NO_UNIT ? undefined : neighbour;
    const likely = hint?.dimension.name;
    const wanted = due.dimensions.length > 0 || likely === undefined ? due.dimensions : [likely];
    // The nanometre is a unit, of something else: a torque was meant.
    const code = node.text === "nm" && wanted.includes("torque") ? "wrong-dimension" : "unknown-unit";
    return this.complainOfUnit(
      code,
      node,
      adviceFor(read, node.text, wanted, hint === undefined ? due.units : [hint.symbol]),
      due.expected,
    );
  }

  /**
   * A quantity of what is due. A bare number takes `fallback`, the unit of its neighbour; where something is due and no
   * unit given, that is a complaint.
   */
  quantity(
    node: QuantityNode,
    due: Due = ANY,
    { fallback, hint }: { readonly fallback?: Unit | undefined; readonly hint?: Unit | undefined } = {},
  ): Quantity | undefined {
    const parts: Quantity[] = [];
    for (const { number, unit } of node.parts) {
      const value = this.number(number);
      const read = unit === undefined ? (fallback ?? NO_UNIT) : this.unit(unit, due, hint);
      if (value === undefined || read === undefined) return undefined;
      parts.push(writtenQuantity(value, read));
    }
    const [first, ...others] = parts;
    if (first === undefined) return undefined;
    const quantity = others.length === 0 ? first : this.compound(node, [first, ...others]);
    if (quantity === undefined || due.dimensions.length === 0) return quantity;
    if (isBare(node) && fallback === undefined) return this.complainOfBare(node, due);
    return due.dimensions.some((name) => hasDimension(quantity, name))
      ? quantity
      : this.refuseDimension(node, quantity, due);
  }

  /** A quantity of what is due that cannot be less than nothing. */
  amount(node: QuantityNode, due: Due, fallback?: Unit): Quantity | undefined {
    const read = this.quantity(node, due, { fallback });
    return read && this.notNegative(node, read);
  }

  notNegative(node: Span, quantity: Quantity): Quantity | undefined {
    if (!quantity.value.isNegative() || quantity.value.isZero()) return quantity;
    return this.complain("unreadable-value", node, "a figure that is not negative");
  }

  /** A figure with a unit, of whatever it measures. */
  withUnit(node: QuantityNode): Quantity | undefined {
    return isBare(node) ? this.complainOfBare(node, ANY) : this.quantity(node);
  }

  /** A figure without a unit, where one is needed. */
  complainOfBare(node: Span, due: Due): undefined {
    const [first, second] = due.units;
    // 20 where a percentage is due is no fraction; 0.2 may be one.
    const figure = readNumber(this.text.slice(node.start, node.end));
    const sure =
      first === "%" &&
      second === undefined &&
      !isNumberFault(figure) &&
      figure.value.abs().greaterThanOrEqualTo(1);
    const fixes = due.units.slice(0, 3).map((text) => insertUnit(node, text, sure));
    return this.complain("wrong-dimension", node, due.expected, { fixes });
  }

  private compound(node: QuantityNode, parts: readonly [Quantity, ...Quantity[]]): Quantity | undefined {
    const whole = compoundQuantity(parts);
    if (!isFault(whole)) return whole;
    const reason = whole.message;
    return this.complain("unreadable-value", node, "units that fall, such as 1 deg 30 arcmin", { reason });
  }

  private refuseDimension(node: QuantityNode, quantity: Quantity, due: Due): undefined {
    const unit = node.parts[0].unit;
    const [name] = due.dimensions;
    if (unit === undefined || name === undefined) return this.complainOfBare(node, due);
    const [, other] = due.dimensions;
    // The mark reads as minutes of arc; where nothing but a length is due, feet were meant.
    if (unit.text === "'" && name === "length" && other === undefined) {
      const fixes = [{ ...spanOf(unit), text: " ft", title: "Write ft", sure: true }];
      return this.complain("unknown-unit", unit, due.expected, { fixes });
    }
    const { nearest: near, reason, sure } = adviseUnit(quantity.unit, name);
    const advice: UnitAdvice =
      reason === undefined ? { nearest: due.units, sure: false } : { nearest: near, reason, sure };
    return this.complainOfUnit("wrong-dimension", unit, advice, due.expected);
  }

  private complainOfUnit(
    code: "unknown-unit" | "wrong-dimension",
    node: UnitNode,
    { nearest: near, reason, sure }: UnitAdvice,
    expected: string,
  ): undefined {
    const fixes = near.map(
      (text, index): SyntaxFix => ({
        ...spanOf(node),
        text,
        title: `Write ${text}`,
        sure: sure && index === 0,
      }),
    );
    const said = code === "unknown-unit" && near.length > 0 ? `a unit, such as ${near.join(", ")}` : expected;
    return this.complain(code, node, said, { reason, fixes });
  }

  money(node: MoneyNode): Money | undefined {
    const amount = this.number(node.number);
    const currency = this.currency(node.currency);
    return amount === undefined || currency === undefined ? undefined : { amount: amount.value, currency };
  }

  /** Money that nobody is owed: a price, a budget. */
  sum(node: MoneyNode): Money | undefined {
    const read = this.money(node);
    if (read === undefined || !read.amount.isNegative() || read.amount.isZero()) return read;
    return this.complain("unreadable-value", node, "an amount that is not negative");
  }

  currency(node: Span & { readonly text: string }): Money["currency"] | undefined {
    const read = readCurrency(node.text);
    if (typeof read === "string") return read;
    const near = "nearest" in read ? read.nearest : [];
    const fixes = near.map((text) => ({
      ...spanOf(node),
      text,
      title: `Write ${text}`,
      sure: near.length === 1,
    }));
    return this.complain("unknown-unit", node, "a currency code of ISO 4217, such as GBP", { fixes });
  }

  date(node: DateNode): IsoDate {
    return node.text as IsoDate;
  }

  /** A word of a closed list; undefined with a complaint for another. */
  oneOf<const T extends string>(
    node: (Span & { readonly text: string }) | undefined,
    words: readonly T[],
  ): T | undefined {
    if (node === undefined) return undefined;
    const word = words.find((candidate) => candidate === node.text);
    if (word !== undefined) return word;
    const fixes = nearest(node.text, words, 1).map((text) => ({
      ...spanOf(node),
      text,
      title: `Write ${text}`,
      sure: true,
    }));
    return this.complain("unreadable-value", node, `one of ${words.join(" ")}`, { fixes });
  }
}

/** Advice for a text that is no unit: what measures what is due comes first, and only that is sure. */
function adviceFor(
  advice: UnitAdvice,
  text: string,
  wanted: readonly DimensionName[],
  usual: readonly string[],
): UnitAdvice {
  if (wanted.length === 0) {
    const [first = ""] = advice.nearest;
    // A prefix changes by its case: what else could have been meant is not known here.
    const onlyCase = first !== text && first.toLowerCase() === text.toLowerCase();
    return text === "nm" || (onlyCase && /^[MmGk]/.test(first)) ? { ...advice, sure: false } : advice;
  }
  const fitting = advice.nearest.filter((unit) => measures(unit, wanted));
  if (fitting.length === 0) return { nearest: usual, sure: false };
  return { ...advice, nearest: fitting, sure: advice.sure || fitting.length === 1 };
}

function measures(text: string, wanted: readonly DimensionName[]): boolean {
  const read = readUnit(text);
  return !isUnitFault(read) && wanted.some((name) => hasDimension(quantityOf(1, read), name));
}

/** The value of a percentage or ratio as a fraction of one. */
export function asFraction(quantity: Quantity): Decimal {
  const ratio = convert(quantity, NO_UNIT);
  return isFault(ratio) ? ZERO : ratio.value;
}

export function isBare(node: QuantityNode): boolean {
  return node.parts.every(({ unit }) => unit === undefined);
}

function insertUnit({ end }: Span, text: string, sure: boolean): SyntaxFix {
  return { start: end, end, text: ` ${text}`, title: `It is in ${text}`, sure };
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
