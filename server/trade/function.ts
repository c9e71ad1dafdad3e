/**
 * What a function of the trade is: data that hover, signature help and the reference page are made from, and
 * one pure computation. Quantities go in and come out as plain numbers in SI units (lengths in metres, angles in
 * radians, temperatures in kelvin, speeds of shafts in turns per second, shares as fractions), so nothing here
 * knows how a unit is written.
 */

import type { DimensionName } from "../quantities/dimension.ts";
import type { Friction } from "./friction.ts";
import type { Material } from "./materials.ts";
import type { Faulty, Limits, TradeResult } from "./result.ts";
import type { StrengthClass } from "./strength-class.ts";
import type { Thread } from "./thread.ts";

/** The subject a function belongs to; the reference page has one section for each. */
export type FunctionGroup =
  | "threads and bolts"
  | "tightening"
  | "fits and growth"
  | "measurement"
  | "springs"
  | "shafts"
  | "drive and gearing"
  | "brakes"
  | "alignment"
  | "electrics"
  | "engine and cooling";

interface ParameterBase {
  readonly name: string;
  /** What it means and how it is measured, in one sentence. */
  readonly doc: string;
  /** May be left out; only the last ones of a function. */
  readonly optional?: true;
  /** Takes all further arguments, at least one; only the last one of a function. */
  readonly variadic?: true;
}

/** A quantity; `min` and `max` are inclusive, in SI units, and `unit` is the one to print them in. */
export interface QuantityParameter extends ParameterBase {
  readonly is: "quantity";
  readonly dimension: DimensionName;
  readonly min: number;
  readonly max: number;
  readonly unit: string;
}

/** A quantity of any one dimension, the same for all such parameters of a function; so is its result. */
export interface AnyQuantityParameter extends ParameterBase {
  readonly is: "any quantity";
  /** The dimensions that make sense; absent when all do. */
  readonly among?: readonly DimensionName[];
  readonly min: number;
  readonly max: number;
}

/** A bare number; `unit: "%"` marks a share, which may be written as a percentage and arrives as a fraction. */
export interface NumberParameter extends ParameterBase {
  readonly is: "number";
  readonly min: number;
  readonly max: number;
  readonly whole?: true;
  readonly unit?: "%";
}

/** A word or a value of its own kind. `friction` also takes a bare nut factor. */
export interface WordParameter extends ParameterBase {
  readonly is: "thread" | "class" | "material" | "friction";
}

/** A string whose shape `expected` describes, as in `"52 H7"`. */
export interface TextParameter extends ParameterBase {
  readonly is: "text";
  readonly expected: string;
}

export type Parameter =
  | QuantityParameter
  | AnyQuantityParameter
  | NumberParameter
  | WordParameter
  | TextParameter;

export type ArgumentValue = number | string | Thread | StrengthClass | Material | Friction;

/** What a function gives. `unit` is the customary one to print; limits are a lower and an upper quantity. */
export type Returns =
  | { readonly is: "quantity"; readonly dimension: DimensionName; readonly unit: string }
  | { readonly is: "same quantity" }
  | { readonly is: "number"; readonly unit?: "%" }
  | { readonly is: "limits"; readonly dimension: DimensionName; readonly unit: string };

export interface TradeFunction {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly group: FunctionGroup;
  readonly parameters: readonly Parameter[];
  readonly returns: Returns;
  readonly summary: string;
  readonly formula: string;
  readonly source: string;
  /** Which definition is used, where the trade knows more than one. */
  readonly meaning?: string;
  /** Where the result stops being good. */
  readonly limits?: string;
  /** Checks number, kind and range of the arguments, in order of the parameters, and computes. Never throws. */
  readonly call: (values: readonly ArgumentValue[]) => TradeResult;
}

/** The type in which an argument reaches `compute`. */
type ArgumentOf<P extends Parameter> = P extends { is: "thread" }
  ? Thread
  : P extends { is: "class" }
    ? StrengthClass
    : P extends { is: "material" }
      ? Material
      : P extends { is: "friction" }
        ? Friction
        : P extends { is: "text" }
          ? string
          : number;

type ArgumentsOf<Ps extends readonly Parameter[]> = {
  readonly [P in Ps[number] as P["name"]]: P extends { variadic: true }
    ? readonly ArgumentOf<P>[]
    : P extends { optional: true }
      ? ArgumentOf<P> | undefined
      : ArgumentOf<P>;
};

export interface FunctionDefinition<Ps extends readonly Parameter[]>
  extends Omit<TradeFunction, "aliases" | "parameters" | "call"> {
  readonly aliases?: readonly string[];
  readonly parameters: Ps;
  readonly compute: (values: ArgumentsOf<Ps>) => TradeResult;
}

/** Makes a function of the trade from its description and its computation. */
export function defineFunction<const Ps extends readonly Parameter[]>(
  definition: FunctionDefinition<Ps>,
): TradeFunction {
  const { compute, aliases = [], ...description } = definition;
  return {
    ...description,
    aliases,
    call: (values) => {
      const bound = bind(definition.parameters, values);
      if ("fault" in bound) return bound;
      const result = compute(bound.values as ArgumentsOf<Ps>);
      return "fault" in result || hasFiniteValue(result.value) ? result : { fault: { kind: "not-finite" } };
    },
  };
}

/** Whether a result or a reading failed. */
export function isFaulty(result: object): result is Faulty {
  return "fault" in result;
}

function hasFiniteValue(value: number | Limits): boolean {
  return typeof value === "number"
    ? Number.isFinite(value)
    : Number.isFinite(value.lower) && Number.isFinite(value.upper);
}

type Bound = { readonly values: Readonly<Record<string, ArgumentValue | readonly ArgumentValue[]>> } | Faulty;

function bind(parameters: readonly Parameter[], given: readonly ArgumentValue[]): Bound {
  const least = parameters.filter((parameter) => !parameter.optional).length;
  const variadic = parameters.at(-1)?.variadic === true;
  const most = variadic ? Number.POSITIVE_INFINITY : parameters.length;
  if (given.length < least || given.length > most) {
    return { fault: { kind: "wrong-count", given: given.length, least, most } };
  }
  const values: Record<string, ArgumentValue | readonly ArgumentValue[]> = Object.create(null);
  for (const [place, parameter] of parameters.entries()) {
    const wanted = parameter.variadic ? given.slice(place) : given.slice(place, place + 1);
    const accepted: ArgumentValue[] = [];
    for (const value of wanted) {
      const checked = check(parameter, value);
      if (isFaultyCheck(checked)) return checked;
      accepted.push(checked.value);
    }
    const [first] = accepted;
    if (parameter.variadic) values[parameter.name] = accepted;
    else if (first !== undefined) values[parameter.name] = first;
  }
  return { values };
}

type Checked = { readonly value: ArgumentValue } | Faulty;

function isFaultyCheck(checked: Checked): checked is Faulty {
  return "fault" in checked;
}

function check(parameter: Parameter, value: ArgumentValue): Checked {
  switch (parameter.is) {
    case "quantity":
    case "any quantity":
    case "number":
      return typeof value === "number" ? checkRange(parameter, value) : wrongKind(parameter);
    case "text":
      return typeof value === "string" ? { value } : wrongKind(parameter);
    case "friction":
      return typeof value === "number" ? checkNutFactor(parameter, value) : checkWord(parameter, value);
    default:
      return checkWord(parameter, value);
  }
}

function checkRange(
  parameter: QuantityParameter | AnyQuantityParameter | NumberParameter,
  value: number,
): Checked {
  const { min, max } = parameter;
  const inside = value >= min && value <= max;
  if (inside && (parameter.is !== "number" || !parameter.whole || Number.isInteger(value))) return { value };
  const unit = "unit" in parameter && parameter.unit !== undefined ? { unit: parameter.unit } : {};
  return { fault: { kind: "out-of-range", parameter: parameter.name, value, min, max, ...unit } };
}

/** The range in which published nut factors lie, with room on both sides. */
const nutFactorRange = { min: 0.05, max: 0.6 } as const;

function checkNutFactor(parameter: WordParameter, value: number): Checked {
  const { min, max } = nutFactorRange;
  if (value >= min && value <= max) return { value: { kind: "friction", low: value, high: value } };
  return { fault: { kind: "out-of-range", parameter: parameter.name, value, min, max } };
}

function checkWord(parameter: WordParameter, value: ArgumentValue): Checked {
  return typeof value === "object" && value.kind === parameter.is ? { value } : wrongKind(parameter);
}

function wrongKind(parameter: Parameter): Faulty {
  return { fault: { kind: "wrong-kind", parameter: parameter.name, expected: parameter.is } };
}
