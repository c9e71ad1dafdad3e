/** What is refused although its tokens are in place: numbers, dates and marks that cannot mean what they say. */
import type { IToken } from "chevrotain";
import type {
  LimitsNode,
  NumberNode,
  ReferenceNode,
  Span,
  SyntaxFaultCode,
  SyntaxFix,
  UnitNode,
} from "./syntax.ts";
import * as token from "./tokens.ts";
import { followsInChain, spanOf } from "./value-nodes.ts";

/** Thrown where a value is refused; carries its own complaint. */
export class ValueFault extends Error {
  readonly code: SyntaxFaultCode;
  readonly span: Span;
  readonly fixes: readonly SyntaxFix[];
  /** Undefined where what the place expects says enough. */
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

/** A fix that writes `text` in place of `span`. */
export function writing({ start, end }: Span, text: string, sure = true): SyntaxFix {
  return { start, end, text, title: `Write ${text}`, sure };
}

export function refuseBadNumber(read: IToken): void {
  const span = spanOf(read);
  if (read.tokenType === token.DecimalComma) {
    const { text, sure } = withoutComma(read.image);
    throw new ValueFault("decimal-comma", span, text, [writing(span, text, sure)]);
  }
  if (read.tokenType === token.BareFraction) {
    const text = read.image.replace(".", "0.");
    throw new ValueFault("unreadable-value", span, `a figure before the point: ${text}`, [
      writing(span, text),
    ]);
  }
  if (/\/0+$/.test(read.image))
    throw new ValueFault("unreadable-value", span, "a fraction that divides by more than nought");
}

/** With three digits behind it a comma can part thousands, so what was meant is not sure. */
export function withoutComma(image: string): { readonly text: string; readonly sure: boolean } {
  if (image.indexOf(",") !== image.lastIndexOf(",")) return { text: image.replaceAll(",", ""), sure: false };
  return { text: image.replace(",", "."), sure: !/,\d{3}$/.test(image) };
}

export function refuseMixedMetric(number: NumberNode, unit: UnitNode | undefined): void {
  if (!/\d[-\s\u00a0\u2000-\u200a\u202f]+\d+\//.test(number.text)) return;
  if (unit !== undefined && /^(?:in|ft)$/.test(unit.text)) return;
  throw new ValueFault("unreadable-value", number, "a mixed number only before an inch or a foot");
}

/** `3/8"`: inches, or seconds of arc behind minutes. */
export function refuseInchMark(mark: IToken, before: UnitNode | undefined): void {
  if (mark.tokenType !== token.InchMark) return;
  const span = spanOf(mark);
  const inArc = before !== undefined && followsInChain(before.text, "arcsec");
  const unit = inArc ? "arcsec" : "in";
  throw new ValueFault("unknown-unit", span, `a unit by its name, such as ${unit}`, [
    { ...span, text: ` ${unit}`, title: `Write ${unit}`, sure: !inArc },
  ]);
}

export function refuseNegative(count: NumberNode): void {
  if (/^[-\u2212]/.test(count.text))
    throw new ValueFault("unreadable-value", count, "a number that is not negative");
}

const OPTION = /^(?:[A-Za-z][A-Za-z0-9_]*|\*)(?:\.(?:[A-Za-z][A-Za-z0-9_]*|\*))*$/;

/** Throws where what stands in braces is not a list of names. */
export function refuseBadSet(reference: ReferenceNode): void {
  for (const segment of reference.segments) {
    if (segment.is === "choice" && !segment.options.every((option) => OPTION.test(option)))
      throw new ValueFault("unreadable-value", reference, "names parted by commas between { and }");
  }
}

/** Throws where a single figure stands for limits: it does not say on which side the bad lies. */
export function refuseNominal(limits: LimitsNode): LimitsNode {
  if (limits.form !== "nominal") return limits;
  const { start } = limits;
  throw new ValueFault(
    "unreadable-value",
    limits,
    "limits: min or max before the figure, two figures joined by .., or a tolerance behind it",
    ["min", "max"].map((word) => ({
      start,
      end: start,
      text: `${word} `,
      title: `Write ${word} before it`,
      sure: false,
    })),
  );
}

const CURRENCY = /^[A-Z]{3}$/;

/** Throws unless the unit looks like a code of ISO 4217. */
export function refuseOtherThanCurrency(unit: IToken): void {
  if (CURRENCY.test(unit.image)) return;
  const code = unit.image.toUpperCase();
  throw new ValueFault(
    "unreadable-value",
    spanOf(unit),
    "a currency code behind the amount, such as 62.00 GBP",
    CURRENCY.test(code) ? [writing(spanOf(unit), code)] : [],
  );
}

const LONGEST_MONTHS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** True for a date that exists, in the Gregorian calendar. */
function isCalendarDate(text: string): boolean {
  const [year = 0, month = 0, day = 0] = text.split("-").map(Number);
  const longest = LONGEST_MONTHS[month - 1];
  if (longest === undefined || day < 1 || day > longest) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month !== 2 || day < 29 || leap;
}

export function refuseBadDate(read: IToken): void {
  const span = spanOf(read);
  if (read.tokenType === token.DateText) {
    if (!isCalendarDate(read.image))
      throw new ValueFault("bad-date", span, "a day that the calendar has, as in 2026-05-02");
    return;
  }
  const iso = asIsoDate(read.image);
  const fixes = iso === undefined ? [] : [writing(span, iso.text, iso.sure)];
  throw new ValueFault("bad-date", span, "a date as year, month and day: 2026-05-02", fixes);
}

/**
 * The ISO form of a date in another: the year first where it stands first, else day, month, year, which nobody can be
 * sure of. Undefined where the year has two figures or the day does not exist.
 */
function asIsoDate(text: string): { readonly text: string; readonly sure: boolean } | undefined {
  const [, first = "", second = "", third = ""] = /^(\d+)[-/.](\d+)[-/.](\d+)/.exec(text) ?? [];
  const yearFirst = first.length === 4;
  if (!yearFirst && third.length !== 4) return undefined;
  const [year, day] = yearFirst ? [first, third] : [third, first];
  const iso = `${year}-${second.padStart(2, "0")}-${day.padStart(2, "0")}`;
  return isCalendarDate(iso) ? { text: iso, sure: yearFirst } : undefined;
}
