import type { Quantity } from "../quantities/quantity.ts";
import type { TradeFunction } from "../trade/function.ts";
import { isFaulty } from "../trade/function.ts";
import type { Refusal } from "./refusal.ts";
import { isRefusal } from "./refusal.ts";
import { parameterAt } from "./signature.ts";
import type { Argument } from "./trade-argument.ts";
import { argumentFrom } from "./trade-argument.ts";
import { refuseTrade } from "./trade-fault.ts";
import { resultFrom } from "./trade-result.ts";
import type { Value } from "./value.ts";

export interface Called {
  readonly value: Value;
  /** The figures used, with their sources, and what has to be said beside the result. */
  readonly notes: readonly string[];
}

/** A function of the trade over values, whose number has been checked. */
export function callTrade(called: TradeFunction, values: readonly Value[]): Called | Refusal {
  const taken = takeArguments(called, values);
  if (isRefusal(taken)) return taken;
  const given = taken.map(({ value }) => value);
  const result = called.call(given);
  if (isFaulty(result)) return refuseTrade(called, { values, arguments: given }, result.fault);
  return {
    value: resultFrom(called.returns, result, taken),
    notes: [
      ...taken.flatMap(({ note }) => note ?? []),
      ...(result.notes ?? []),
      `${called.name}: ${called.source}`,
    ],
  };
}

function takeArguments(called: TradeFunction, values: readonly Value[]): readonly Argument[] | Refusal {
  const taken: Argument[] = [];
  let first: Quantity | undefined;
  for (const [place, value] of values.entries()) {
    const parameter = parameterAt(called.parameters, place);
    if (parameter === undefined) break;
    const argument = argumentFrom(called.name, parameter, value, first);
    if (isRefusal(argument)) return { ...argument, operand: place };
    if (parameter.is === "any quantity") first ??= argument.quantity;
    taken.push(argument);
  }
  return taken;
}
