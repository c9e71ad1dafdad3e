/**
 * From the text of values to values: numbers become exact decimals, unit texts units, threads threads. A value that
 * reads but makes no sense is complained about here, with the likely unit, and is undefined.
 */

import { nearest } from "../../../grammar/nearest.ts";
import type {
  BoltNode,
  ClassNode,
  DateNode,
  FrictionNode,
  LimitsNode,
  MoneyNode,
  NumberNode,
  NutNode,
  QuantityNode,
  Span,
  SyntaxFix,
  ThreadNode,
  TorqueNode,
  UnitNode,
} from "../../../grammar/syntax.ts";
import { FRICTION_WORDS, MATERIALS } from "../../../grammar/vocabulary/words.ts";
import { compoundQuantity } from "../../quantities/compound.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import { decimal, ZERO } from "../../quantities/decimal.ts";
import type { DimensionName } from "../../quantities/dimension.ts";
import { describeDimension, dimensionNamed } from "../../quantities/dimension.ts";
import type { Limits } from "../../quantities/limits.ts";
import { asymmetricLimits, boundLimits, nominalLimits, toleranceLimits } from "../../quantities/limits.ts";
import type { Money } from "../../quantities/money.ts";
import { readCurrency } from "../../quantities/money.ts";
import type { NumberRead } from "../../quantities/number.ts";
import { isNumberFault, readNumber } from "../../quantities/number.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import {
  asDifference,
  convert,
  hasDimension,
  quantityOf,
  writtenQuantity,
} from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import type { Unit } from "../../quantities/unit.ts";
import { adviseUnit, isUnitFault, NO_UNIT, readUnit, unit } from "../../quantities/unit.ts";
import type { UnitAdvice } from "../../quantities/unit-advice.ts";
import type { Friction } from "../../trade/friction.ts";
import { readFriction } from "../../trade/friction.ts";
import { isFaulty } from "../../trade/function.ts";
import { deviationsOf, readToleranceClass } from "../../trade/iso286.ts";
import type { NutClass, StrengthClass } from "../../trade/strength-class.ts";
import { readClass, readNutClass, unknownClass } from "../../trade/strength-class.ts";
import type { Thread } from "../../trade/thread.ts";
import { readBolt, readThread } from "../../trade/thread.ts";
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

/** Lowers the values of one block, collecting what is wrong with them. */
export class ValueLowering {
  readonly faults: LoweringFault[] = [];

  complain(
    code: LoweringFault["code"],
    { start, end }: Span,
    found: string,
    expected: string,
    { reason, fixes = [] }: { reason?: string | undefined; fixes?: readonly SyntaxFix[] } = {},
  ): undefined {
    this.faults.push({ code, start, end, found, expected, reason, fixes });
    return undefined;
  }

  number(node: NumberNode): NumberRead | undefined {
    const read = readNumber(node.text);
    if (!isNumberFault(read)) return read;
    return this.complain("unreadable-value", node, node.text, "a number");
  }

  /** A whole number that is not negative; the words say of what. */
  count(node: NumberNode | undefined, otherwise = 1): number | undefined {
    if (node === undefined) return otherwise;
    const read = this.number(node);
    if (read === undefined) return undefined;
    if (read.value.isInteger() && !read.value.isNegative() && read.value.lessThan(1e9))
      return read.value.toNumber();
    return this.complain("unreadable-value", node, node.text, "a whole number, not negative");
  }

  unit(node: UnitNode | undefined): Unit | undefined {
    if (node === undefined) return NO_UNIT;
    const read = readUnit(node.text);
    if (!isUnitFault(read)) return read;
    // The nanometre is a unit, of something else: a torque was meant.
    return this.complainOfUnit(node.text === "nm" ? "wrong-dimension" : "unknown-unit", node, read, "a unit");
  }

  /**
   * A quantity in one of the dimensions; with none given, in any. A bare number takes `fallback`, the unit of its
   * neighbour; where a dimension is due and no unit given, that is a complaint.
   */
  quantity(node: QuantityNode, due: readonly DimensionName[] = [], fallback?: Unit): Quantity | undefined {
    const parts: Quantity[] = [];
    for (const { number, unit } of node.parts) {
      const value = this.number(number);
      const read = unit === undefined ? (fallback ?? NO_UNIT) : this.unit(unit);
      if (value === undefined || read === undefined) return undefined;
      parts.push(writtenQuantity(value, read));
    }
    const [first, ...others] = parts;
    if (first === undefined) return undefined;
    const quantity = others.length === 0 ? first : this.compound(node, [first, ...others]);
    if (quantity === undefined || due.length === 0) return quantity;
    return due.some((name) => hasDimension(quantity, name))
      ? quantity
      : this.refuseDimension(node, quantity, due);
  }

  private compound(node: QuantityNode, parts: readonly [Quantity, ...Quantity[]]): Quantity | undefined {
    const whole = compoundQuantity(parts);
    if (!isFault(whole)) return whole;
    return this.complain(
      "unreadable-value",
      node,
      writtenAs(node),
      "units that fall, such as 1 deg 30 arcmin",
      {
        reason: whole.message,
      },
    );
  }

  private refuseDimension(node: QuantityNode, quantity: Quantity, due: readonly DimensionName[]): undefined {
    const expected = due.map((name) => describeDimension(dimensionNamed(name))).join(" or ");
    const unit = node.parts[0].unit;
    const [name] = due;
    if (unit === undefined || name === undefined) {
      const units = name === undefined ? [] : adviseUnit(quantity.unit, name).nearest;
      return this.complain("wrong-dimension", node, writtenAs(node), `a ${expected}`, {
        fixes: units.slice(0, 3).map((text) => insertUnit(node, text)),
      });
    }
    return this.complainOfUnit("wrong-dimension", unit, adviseUnit(quantity.unit, name), `a ${expected}`);
  }

  private complainOfUnit(
    code: "unknown-unit" | "wrong-dimension",
    node: UnitNode,
    advice: UnitAdvice,
    expected: string,
  ): undefined {
    const { nearest, reason, sure } = advice;
    const fixes = nearest.map(
      (text, index): SyntaxFix => ({
        start: node.start,
        end: node.end,
        text,
        title: `Write ${text}`,
        sure: sure && index === 0,
      }),
    );
    const said = nearest.length === 0 ? expected : `${expected}, such as ${nearest.join(", ")}`;
    return this.complain(code, node, node.text, said, { reason, fixes });
  }

  money(node: MoneyNode): Money | undefined {
    const amount = this.number(node.number);
    const currency = this.currency(node.currency);
    return amount === undefined || currency === undefined ? undefined : { amount: amount.value, currency };
  }

  currency(node: Span & { readonly text: string }): Money["currency"] | undefined {
    const read = readCurrency(node.text);
    if (typeof read === "string") return read;
    const nearest = "nearest" in read ? read.nearest : [];
    const fixes = nearest.map((text) => ({
      ...spanOf(node),
      text,
      title: `Write ${text}`,
      sure: nearest.length === 1,
    }));
    return this.complain("unknown-unit", node, node.text, "a currency code of ISO 4217, such as GBP", {
      fixes,
    });
  }

  date(node: DateNode): IsoDate {
    return node.text as IsoDate;
  }

  /** Limits with everything in one dimension; a bare bound takes the unit of the one beside it. */
  limits(node: LimitsNode, due: readonly DimensionName[] = []): Limits | undefined {
    const bare = this.limitsWithoutNew(node, due);
    if (bare === undefined || node.fresh === undefined) return bare;
    const neighbour = (bare.lower ?? bare.upper ?? bare.nominal)?.unit;
    const fresh = this.quantity(node.fresh, due, neighbour);
    return fresh === undefined ? bare : { ...bare, fresh };
  }

  private limitsWithoutNew(node: LimitsNode, due: readonly DimensionName[]): Limits | undefined {
    switch (node.form) {
      case "bounds":
        return this.bounds(node, due);
      case "tolerance": {
        const nominal = this.quantity(node.nominal, due);
        if (nominal === undefined) return undefined;
        const tolerance = this.quantity(node.tolerance, [], nominal.unit);
        if (tolerance === undefined) return undefined;
        return this.checked(node, toleranceLimits(nominal, asDifference(tolerance)));
      }
      case "asymmetric": {
        const nominal = this.quantity(node.nominal, due);
        const unit = node.unit === undefined ? nominal?.unit : this.unit(node.unit);
        const above = this.number(node.above);
        const below = this.number(node.below);
        if (nominal === undefined || unit === undefined || above === undefined || below === undefined)
          return undefined;
        const deviation = (read: NumberRead) => asDifference(writtenQuantity(read, unit));
        return this.checked(node, asymmetricLimits(nominal, deviation(above), deviation(below)));
      }
      case "iso286":
        return this.iso286(node);
      case "nominal": {
        const nominal = this.quantity(node.nominal, due);
        return nominal === undefined ? undefined : nominalLimits(nominal);
      }
    }
  }

  private bounds(node: LimitsNode & { form: "bounds" }, due: readonly DimensionName[]): Limits | undefined {
    const upperUnit = unitWritten(node.upper) ?? unitWritten(node.lower);
    const lowerUnit = unitWritten(node.lower) ?? unitWritten(node.upper);
    const lower = node.lower && this.quantity(node.lower, due, lowerUnit && this.unit(lowerUnit));
    const upper = node.upper && this.quantity(node.upper, due, upperUnit && this.unit(upperUnit));
    if ((node.lower && lower === undefined) || (node.upper && upper === undefined)) return undefined;
    return this.checked(node, boundLimits(lower, upper));
  }

  /** `25 h6`: the limits of size of a class of ISO 286, in mm. */
  private iso286(node: LimitsNode & { form: "iso286" }): Limits | undefined {
    const size = this.number(node.size);
    const tolerance = readToleranceClass(node.toleranceClass.text);
    if (size === undefined) return undefined;
    const deviations = tolerance && deviationsOf(size.value.toNumber(), tolerance);
    if (deviations === undefined || isFaulty(deviations)) {
      const found = `${node.size.text} ${node.toleranceClass.text}`;
      return this.complain(
        "unreadable-value",
        node,
        found,
        "a size and a class of ISO 286 that is tabulated, such as 25 h6",
      );
    }
    const nominal = writtenQuantity(size, unit("mm"));
    const deviation = (micrometres: number) => quantityOf(decimal(micrometres).div(1000), unit("mm"));
    return this.checked(
      node,
      asymmetricLimits(nominal, deviation(deviations.upper), deviation(deviations.lower)),
    );
  }

  /** Limits that contradict themselves (the lower above the upper, unlike dimensions) are refused. */
  private checked(
    node: LimitsNode,
    read: Limits | { readonly fault: string; readonly message: string },
  ): Limits | undefined {
    if (!("fault" in read)) return read;
    return this.complain("unreadable-value", node, "", "limits that leave room between them", {
      reason: read.message,
    });
  }

  thread(node: ThreadNode): Thread | undefined {
    const read = readThread(node.text);
    return "fault" in read ? this.refuseThread(node, read.fault) : read;
  }

  private refuseThread(
    node: ThreadNode,
    fault: { readonly kind: string; readonly known?: readonly string[]; readonly expected?: string },
  ): undefined {
    const known = fault.known?.slice(0, 6).join(", ");
    const expected =
      known === undefined ? (fault.expected ?? "a thread, such as M10x1.25") : `one of the series: ${known}`;
    return this.complain("unreadable-value", node, node.text, expected);
  }

  bolt(node: BoltNode): Bolt | undefined {
    const count = this.count(node.count);
    const size = readBolt(node.thread.text);
    if ("fault" in size) return this.refuseThread(node.thread, size.fault);
    const strength = node.strength && this.strength(node.strength);
    if (count === undefined || (node.strength && strength === undefined)) return undefined;
    return { count, thread: size.thread, length: size.length, strength };
  }

  strength(node: ClassNode): StrengthClass | undefined {
    if (node.text === "unknown") return unknownClass;
    const read = readClass(`${node.system} ${node.text}`);
    return (
      read ??
      this.complain(
        "unreadable-value",
        node,
        `${node.system} ${node.text}`,
        "a strength class, such as class 8.8, grade 5, class S or class unknown",
      )
    );
  }

  private nutStrength(node: ClassNode): NutClass | undefined {
    const read = readNutClass(`class ${node.text}`);
    return (
      read ??
      this.complain(
        "unreadable-value",
        node,
        `${node.system} ${node.text}`,
        "a class of nuts: 04 05 5 6 8 10 12",
      )
    );
  }

  nut(node: NutNode): Nut | undefined {
    const thread = node.thread && this.thread(node.thread);
    if (node.form.text === "tapped") {
      const depth = node.depth && this.quantity(node.depth, ["length"]);
      return { form: "tapped", thread, depth, material: this.oneOf(node.material, MATERIALS) };
    }
    const form = this.oneOf(node.form, ["plain", "self_locking", "castle"] as const);
    if (form === undefined) return undefined;
    const strength =
      node.strength && node.strength.text !== "unknown" ? this.nutStrength(node.strength) : undefined;
    const height = node.height && this.quantity(node.height, ["length"]);
    return { form, insert: this.oneOf(node.insert, ["nylon", "metal"] as const), thread, strength, height };
  }

  torque(node: TorqueNode): TorqueSpec | undefined {
    if (node.form === "fromClass") return { form: "from class" };
    if (node.form === "byHand") return { form: "by hand" };
    const limits = this.limits(node.limits, ["torque"]);
    const then = node.then && this.quantity(node.then, ["angle", "turn", "flat"]);
    if (limits === undefined || (node.then && then === undefined)) return undefined;
    return { form: "limits", limits, then, toSlot: node.toSlot };
  }

  friction(node: FrictionNode): FrictionSpec | undefined {
    switch (node.form) {
      case "nutFactor": {
        const value = this.figure(node.value);
        return value === undefined
          ? undefined
          : { form: "nut factor", friction: { kind: "friction", low: value, high: value } };
      }
      case "coefficients": {
        const thread = this.figure(node.thread);
        const head = this.figure(node.head);
        return thread === undefined || head === undefined
          ? undefined
          : { form: "coefficients", thread, head };
      }
      case "word": {
        const read = readFriction(node.word.text);
        if (read === undefined) return this.oneOf(node.word, FRICTION_WORDS) && undefined;
        return read.kind === "friction"
          ? { form: "nut factor", friction: read }
          : { form: "no figure", word: read.word };
      }
    }
  }

  /** A coefficient of friction or a nut factor: a bare number between 0.01 and 1. */
  private figure(node: NumberNode): number | undefined {
    const read = this.number(node);
    const value = read?.value.toNumber();
    if (value === undefined || (value >= 0.01 && value <= 1)) return value;
    return this.complain("unreadable-value", node, node.text, "a coefficient between 0.01 and 1");
  }

  /** A word of a closed list; undefined with a complaint for another. */
  oneOf<const T extends string>(
    node: (Span & { readonly text: string }) | undefined,
    words: readonly T[],
  ): T | undefined {
    if (node === undefined) return undefined;
    const word = words.find((candidate) => candidate === node.text);
    if (word !== undefined) return word;
    const [near] = nearest(node.text, words, 1);
    const fixes =
      near === undefined ? [] : [{ ...spanOf(node), text: near, title: `Write ${near}`, sure: true }];
    return this.complain("unreadable-value", node, node.text, `one of ${words.join(" ")}`, { fixes });
  }
}

/** The value of a percentage or ratio as a fraction of one. */
export function asFraction(quantity: Quantity): Decimal {
  const ratio = convert(quantity, NO_UNIT);
  return isFault(ratio) ? ZERO : ratio.value;
}

function unitWritten(node: QuantityNode | undefined): UnitNode | undefined {
  return node?.parts[0].unit;
}

function writtenAs(node: QuantityNode): string {
  return node.parts
    .map(({ number, unit }) => (unit === undefined ? number.text : `${number.text} ${unit.text}`))
    .join(" ");
}

function insertUnit(node: QuantityNode, text: string): SyntaxFix {
  return { start: node.end, end: node.end, text: ` ${text}`, title: `It is in ${text}`, sure: false };
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
