/** The words for what a function of the trade cannot compute. */
import { withArticle } from "../../grammar/article.ts";
import type { ArgumentValue, Parameter, TradeFunction } from "../trade/function.ts";
import type { TradeFault } from "../trade/result.ts";
import type { Refusal } from "./refusal.ts";
import { refuse } from "./refusal.ts";
import { parameterAt, signature } from "./signature.ts";
import { between, takes } from "./trade-words.ts";
import type { Value } from "./value.ts";
import { formatValue, quoted, shortened } from "./value.ts";

/** Names of a table that are listed in a message. */
const MOST_NAMED = 6;

/** What a function was given, and what it was computed with. */
interface Given {
  readonly values: readonly Value[];
  readonly arguments: readonly ArgumentValue[];
}

/** A refusal that points to the argument at fault, where there is one. */
export function refuseTrade(called: TradeFunction, given: Given, fault: TradeFault): Refusal {
  const { name } = called;
  switch (fault.kind) {
    case "out-of-range":
      return outOfRange(called, given, fault);
    case "wrong-count":
      return refuse(
        "out-of-range-argument",
        `${name} takes other arguments: ${signature(called)}; ${fault.given} given`,
      );
    case "wrong-kind": {
      const place = placeOf(called, fault.parameter);
      const parameter = called.parameters.find((each) => each.name === fault.parameter);
      const due = parameter === undefined ? withArticle(fault.expected) : takes(parameter);
      return refuse("wrong-dimension", `${name}: ${fault.parameter} is ${due}`, at(place));
    }
    case "unreadable":
      return refuse(
        "out-of-range-argument",
        `${name}: ${quoted(fault.text)} is not read; due is ${fault.expected}`,
        at(placeOfText(given.values, fault.text)),
      );
    case "not-in-table":
      return refuse("out-of-range-argument", `${name}: ${notInTable(fault)}`);
    case "class-unknown":
      return refuse(
        "out-of-range-argument",
        `${name}: the class is unknown, so nothing is known of its strength`,
        at(placeOf(called, fault.parameter)),
      );
    case "impossible":
      return refuse("out-of-range-argument", `${name}: ${fault.reason}`);
    case "not-finite":
      return refuse("out-of-range-argument", `${name} has no finite result for these arguments`);
  }
}

/** `no figure for M10x2 (ISO 261); there is M10x1.5, M10x1.25`. */
export function notInTable(fault: Extract<TradeFault, { kind: "not-in-table" }>): string {
  const { wanted, table, known } = fault;
  const more = known.length > MOST_NAMED ? ", …" : "";
  const listed = known.length === 0 ? "" : `; there is ${known.slice(0, MOST_NAMED).join(", ")}${more}`;
  return `no figure for ${shortened(wanted)} (${table})${listed}`;
}

function outOfRange(
  called: TradeFunction,
  given: Given,
  fault: Extract<TradeFault, { kind: "out-of-range" }>,
): Refusal {
  const place = placeOfValue(called, given.arguments, fault) ?? placeOf(called, fault.parameter);
  const value = place === undefined ? undefined : given.values[place];
  const parameter = called.parameters.find(({ name }) => name === fault.parameter);
  const range = between(fault.min, fault.max, fault.unit);
  const whole = parameter?.is === "number" && parameter.whole ? "a whole number, " : "";
  const found = value === undefined ? "" : `, not ${formatValue(value)}`;
  const hint = isBareShare(parameter, value) ? "; a share is written 75 % or 0.75" : "";
  return refuse(
    "out-of-range-argument",
    `${called.name}: ${fault.parameter} must be ${whole}${range}${found}${hint}`,
    at(place),
  );
}

function isBareShare(parameter: Parameter | undefined, value: Value | undefined): boolean {
  return (
    parameter?.is === "number" &&
    parameter.unit === "%" &&
    value?.kind === "quantity" &&
    value.quantity.unit.symbol === ""
  );
}

function placeOf(called: TradeFunction, parameter: string): number | undefined {
  const place = called.parameters.findIndex(({ name }) => name === parameter);
  return place === -1 ? undefined : place;
}

/** The argument of that value, of several that one parameter takes. */
function placeOfValue(
  called: TradeFunction,
  given: readonly ArgumentValue[],
  fault: { readonly parameter: string; readonly value: number },
): number | undefined {
  const place = given.findIndex(
    (value, index) =>
      value === fault.value && parameterAt(called.parameters, index)?.name === fault.parameter,
  );
  return place === -1 ? undefined : place;
}

function placeOfText(values: readonly Value[], text: string): number | undefined {
  const place = values.findIndex((value) => value.kind === "text" && value.text === text);
  return place === -1 ? undefined : place;
}

function at(place: number | undefined): { readonly operand?: number } {
  return place === undefined ? {} : { operand: place };
}
