/** What is told of a function: by hover, signature help and the reference page. */
import { tradeFunction, tradeFunctions } from "../trade/catalogue.ts";
import type { FunctionGroup, TradeFunction } from "../trade/function.ts";
import type { BuiltInFunction } from "./built-in-function.ts";
import { builtInFunctions, builtIns } from "./built-in-functions.ts";
import { functionExamples } from "./function-examples.ts";
import type { FunctionTexts } from "./function-texts.ts";
import { functionTexts } from "./function-texts.ts";
import { parameterLabel, signature } from "./signature.ts";
import { gives, rangeOfParameter, takes } from "./trade-words.ts";

export interface ParameterDescription {
  /** As it stands in the signature: `thread`, `places?`, `x, …`. */
  readonly label: string;
  readonly doc: string;
  /** The kind of value, and the range of a quantity: `a torque (N.m), 0 N.m to 10000 N.m`. */
  readonly takes: string | undefined;
}

export interface FunctionDescription {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly group: FunctionGroup | "arithmetic";
  readonly signature: string;
  readonly summary: string;
  readonly formula: string;
  readonly parameters: readonly ParameterDescription[];
  readonly returns: string;
  /** Which definition is used, where there are several. */
  readonly meaning: string | undefined;
  /** Where the result stops being good. */
  readonly limits: string | undefined;
  readonly source: string | undefined;
  readonly example: string | undefined;
}

/** The description of a function by its name or an alias; undefined where there is none. */
export function describeFunction(name: string): FunctionDescription | undefined {
  const builtIn = builtIns.get(name);
  if (builtIn !== undefined) return ofBuiltIn(builtIn);
  const trade = tradeFunction(name);
  return trade === undefined ? undefined : ofTrade(trade);
}

/** All functions in the order of the reference page. */
export function allDescriptions(): readonly FunctionDescription[] {
  return [...builtInFunctions.map(ofBuiltIn), ...tradeFunctions().map(ofTrade)];
}

/** Markdown for a hover, without a heading. */
export function functionMarkdown(description: FunctionDescription): string {
  const { signature, summary, parameters, formula, returns, meaning, limits, source } = description;
  return [
    `\`\`\`cotter\n${signature}\n\`\`\``,
    summary,
    parameters.map(parameterLine).join("\n"),
    [
      `Formula: ${formula}`,
      `Gives ${returns}.`,
      ...(meaning === undefined ? [] : [meaning]),
      ...(limits === undefined ? [] : [`Limits: ${limits}`]),
      ...(source === undefined ? [] : [`Source: ${source}`]),
    ].join("  \n"),
  ].join("\n\n");
}

/** `- **torque**: Torque at the fastener. (a torque (N.m), 0 N.m to 10000 N.m)` */
export function parameterLine({ label, doc, takes }: ParameterDescription): string {
  return `- **${label}**: ${doc}${takes === undefined ? "" : ` *${takes}*`}`;
}

/** The texts of a function: of the function itself the programs carry none. */
function textsOf(name: string): FunctionTexts {
  const texts = functionTexts.get(name);
  if (texts === undefined) throw new Error(`nothing is told of ${name}`);
  return texts;
}

function ofBuiltIn(entry: BuiltInFunction): FunctionDescription {
  const { name, parameters, returns, example } = entry;
  const { summary, formula, meaning, docs } = textsOf(name);
  return {
    name,
    aliases: [],
    group: "arithmetic",
    signature: signature(entry),
    summary,
    formula,
    parameters: parameters.map((parameter, place) => ({
      label: parameterLabel(parameter),
      doc: docs[place] ?? "",
      takes: undefined,
    })),
    returns,
    meaning,
    limits: undefined,
    source: undefined,
    example,
  };
}

function ofTrade(entry: TradeFunction): FunctionDescription {
  const { name, aliases, group, parameters, returns, source } = entry;
  const { summary, formula, meaning, limits, docs } = textsOf(name);
  return {
    name,
    aliases,
    group,
    signature: signature(entry),
    summary,
    formula,
    parameters: parameters.map((parameter, place) => {
      const range = rangeOfParameter(parameter);
      return {
        label: parameterLabel(parameter),
        doc: docs[place] ?? "",
        takes: range === undefined ? takes(parameter) : `${takes(parameter)}, ${range}`,
      };
    }),
    returns: gives(returns),
    meaning,
    limits,
    source,
    example: functionExamples.get(name),
  };
}
