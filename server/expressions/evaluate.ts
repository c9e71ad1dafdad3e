/** The value of an expression: a walk over the closed tree, which ends in time proportional to its length. */
import { nearest } from "../../grammar/nearest.ts";
import type { Expression, Span, SyntaxFix } from "../../grammar/syntax.ts";
import type { ExchangeRate } from "../quantities/money.ts";
import { tradeFunction, tradeNames } from "../trade/catalogue.ts";
import type { Parameter as TradeParameter } from "../trade/function.ts";
import { readClass } from "../trade/strength-class.ts";
import { readBolt, readThread } from "../trade/thread.ts";
import { combine, converted, negated } from "./arithmetic.ts";
import { builtIns } from "./built-in-functions.ts";
import { literal } from "./literal.ts";
import type { ExpressionFault, ExpressionFaultCode, Refusal } from "./refusal.ts";
import { isRefusal } from "./refusal.ts";
import { parameterAt, refuseCount } from "./signature.ts";
import { nearestWords, wordFor } from "./trade-argument.ts";
import { callTrade } from "./trade-call.ts";
import { notInTable } from "./trade-fault.ts";
import type { Value } from "./value.ts";
import { shortened } from "./value.ts";

/** Why a name has no value here: nothing is called so, or what is has none yet. */
export interface NameFault {
  readonly fault: "unknown-name";
  readonly message: string;
  /** Names that were probably meant. */
  readonly nearest: readonly string[];
}

/** What a name stands for; given by the floor above. Undefined where there is no such name. */
export type Lookup = (name: string) => Value | NameFault | undefined;

export type Evaluated =
  | { readonly value: Value; readonly notes: readonly string[] }
  | { readonly fault: ExpressionFault };

/** For an expression that stands outside of any build. */
const noNames: Lookup = () => undefined;

/**
 * Evaluates a tree. `lookup` gives the values of names, `rates` let currencies meet. Never throws; every result is
 * finite, also as a binary float; notes are told once each, in the order of the calls that made them.
 */
export function evaluate(
  tree: Expression,
  lookup: Lookup = noNames,
  rates: readonly ExchangeRate[] = [],
): Evaluated {
  const notes = new Set<string>();
  const value = evaluateNode(tree, { lookup, rates, notes, depth: 0 });
  return "code" in value ? { fault: value } : { value, notes: [...notes] };
}

interface Surroundings {
  readonly lookup: Lookup;
  readonly rates: readonly ExchangeRate[];
  readonly notes: Set<string>;
  readonly depth: number;
}

type Step = Value | ExpressionFault;

/** Deeper than the longest expression that is read can nest, and far from the end of any stack. */
const MAX_DEPTH = 1200;

function evaluateNode(node: Expression, around: Surroundings): Step {
  if (around.depth > MAX_DEPTH) return fault("unreadable-expression", node, "the expression nests too deep");
  const inside = { ...around, depth: around.depth + 1 };
  switch (node.is) {
    case "quantity":
      return literal(node.value);
    case "text":
      return { kind: "text", text: node.value.text };
    case "wireGauge":
      return { kind: "text", text: `AWG ${node.value.number.text}` };
    case "thread":
      return threadNamed(node, node.value.text);
    case "class":
      return classNamed(node, `${node.value.system} ${node.value.text}`);
    case "name":
      return named(node, node.text, around);
    case "negative":
      return after([node.of], inside, node, ([of]) => negated(of));
    case "conversion":
      return convertedNode(node, inside);
    case "binary":
      return after([node.left, node.right], inside, node, ([left, right]) =>
        combine(node.operator, left, right, around.rates),
      );
    case "call":
      return called(node, inside);
  }
}

type Values<Nodes extends readonly Expression[]> = { readonly [Place in keyof Nodes]: Value };

/** Evaluates the operands in order, and then what is made of them; a refusal points to the operand it names. */
function after<const Nodes extends readonly Expression[]>(
  operands: Nodes,
  around: Surroundings,
  whole: Span,
  compute: (values: Values<Nodes>) => Value | Refusal,
): Step {
  const values: Value[] = [];
  for (const operand of operands) {
    const value = evaluateNode(operand, around);
    if ("code" in value) return value;
    values.push(value);
  }
  const result = compute(values as unknown as Values<Nodes>);
  return isRefusal(result) ? placed(result, operands, whole) : result;
}

function convertedNode(node: Expression & { is: "conversion" }, around: Surroundings): Step {
  const of = evaluateNode(node.of, around);
  if ("code" in of) return of;
  const result = converted(of, node.unit.text, around.rates);
  if (!isRefusal(result)) return result;
  const fixes = (result.units ?? []).map((text, index) =>
    replacement(node.unit, text, result.sure === true && index === 0),
  );
  return { ...fault(result.refused, node.unit, result.message), fixes };
}

function called(node: Expression & { is: "call" }, around: Surroundings): Step {
  const name = node.name.text;
  const builtIn = builtIns.get(name);
  if (builtIn !== undefined) {
    const count = refuseCount(builtIn, node.arguments.length);
    if (count !== undefined) return placed(count, [], node);
    return after(node.arguments, around, node, (values) => builtIn.call(values, around.rates));
  }
  const trade = tradeFunction(name);
  if (trade === undefined) return unknownFunction(node.name);
  const count = refuseCount(trade, node.arguments.length);
  if (count !== undefined) return placed(count, [], node);
  const values: Value[] = [];
  for (const [place, argument] of node.arguments.entries()) {
    const value = tradeArgument(argument, parameterAt(trade.parameters, place), around);
    if ("code" in value) return value;
    values.push(value);
  }
  const result = callTrade(trade, values);
  if (isRefusal(result)) return placed(result, node.arguments, node);
  for (const note of result.notes) around.notes.add(note);
  return result.value;
}

/** A bare name is the word of its parameter where that takes words, else a name of the build. */
function tradeArgument(node: Expression, parameter: TradeParameter | undefined, around: Surroundings): Step {
  if (node.is !== "name" || parameter === undefined) return evaluateNode(node, around);
  return wordFor(parameter, node.text) ?? named(node, node.text, around, nearestWords(parameter, node.text));
}

function named(node: Span, name: string, around: Surroundings, words: readonly string[] = []): Step {
  const found = around.lookup(name);
  if (found !== undefined && "kind" in found) return found;
  const near = [...words, ...(found?.nearest ?? [])];
  const message = found?.message ?? `nothing is called ${shortened(name)} here`;
  return {
    ...fault("unknown-name", node, withSuggestions(message, near)),
    fixes: near.map((text) => replacement(node, text)),
  };
}

function unknownFunction(node: Span & { readonly text: string }): ExpressionFault {
  const near = nearest(node.text, [...builtIns.keys(), ...tradeNames]);
  return {
    ...fault("unknown-function", node, withSuggestions(`there is no function ${shortened(node.text)}`, near)),
    fixes: near.map((text) => replacement(node, text)),
  };
}

/** A thread; of a bolt with its length, its thread. */
function threadNamed(node: Span, text: string): Step {
  const thread = readThread(text);
  if (!("fault" in thread)) return { kind: "thread", thread };
  const bolt = thread.fault.kind === "unreadable" ? readBolt(text) : thread;
  if (!("fault" in bolt)) return { kind: "thread", thread: bolt.thread };
  const message =
    bolt.fault.kind === "unreadable"
      ? `${shortened(text)} is not read; due is ${bolt.fault.expected}`
      : notInTable(bolt.fault);
  return fault("out-of-range-argument", node, message);
}

function classNamed(node: Span, text: string): Step {
  const strength = readClass(text);
  return strength === undefined
    ? fault("out-of-range-argument", node, `there is no ${shortened(text)} of bolts`)
    : { kind: "class", class: strength };
}

/** A refusal at its operand; units that may have been meant become fixes where the operand is a plain literal. */
function placed(refusal: Refusal, operands: readonly Expression[], whole: Span): ExpressionFault {
  const operand = refusal.operand === undefined ? undefined : operands[refusal.operand];
  const fixes = operand === undefined ? [] : unitFixes(operand, refusal.units ?? []);
  return { ...fault(refusal.refused, operand ?? whole, refusal.message), fixes };
}

function unitFixes(operand: Expression, units: readonly string[]): readonly SyntaxFix[] {
  if (operand.is !== "quantity" || operand.value.parts.length > 1) return [];
  const { number, unit } = operand.value.parts[0];
  return units.map((text) =>
    unit === undefined
      ? {
          start: number.end,
          end: number.end,
          text: ` ${text}`,
          title: `Write ${number.text} ${text}`,
          sure: false,
        }
      : replacement(unit, text),
  );
}

function replacement({ start, end }: Span, text: string, sure = false): SyntaxFix {
  return { start, end, text, title: `Write ${text}`, sure };
}

function withSuggestions(message: string, near: readonly string[]): string {
  return near.length === 0 ? message : `${message}; did you mean ${near.join(" or ")}?`;
}

function fault(code: ExpressionFaultCode, { start, end }: Span, message: string): ExpressionFault {
  return { code, message, start, end, fixes: [] };
}
