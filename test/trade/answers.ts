/** Calls functions of the trade in tests. */

import { tradeFunction } from "../../server/trade/catalogue.ts";
import type { ArgumentValue } from "../../server/trade/function.ts";
import type { Material } from "../../server/trade/materials.ts";
import { readMaterial } from "../../server/trade/materials.ts";
import type { Computed, TradeResult } from "../../server/trade/result.ts";
import type { StrengthClass } from "../../server/trade/strength-class.ts";
import { readClass } from "../../server/trade/strength-class.ts";
import type { Thread } from "../../server/trade/thread.ts";
import { readThread } from "../../server/trade/thread.ts";

/** What a function of that name gives, a fault included. */
export function result(name: string, ...values: readonly ArgumentValue[]): TradeResult {
  const found = tradeFunction(name);
  if (found === undefined) throw new Error(`no function ${name}`);
  return found.call(values);
}

/** The same where a value is due. */
export function computed(name: string, ...values: readonly ArgumentValue[]): Computed {
  const answer = result(name, ...values);
  if ("fault" in answer) throw new Error(`${name}: ${JSON.stringify(answer.fault)}`);
  return answer;
}

/** The number that a function gives. */
export function value(name: string, ...values: readonly ArgumentValue[]): number {
  const answer = computed(name, ...values).value;
  if (typeof answer !== "number") throw new Error(`${name} gives limits`);
  return answer;
}

/** All notes of a result in one text. */
export function notes(name: string, ...values: readonly ArgumentValue[]): string {
  return computed(name, ...values).notes?.join("; ") ?? "";
}

export function thread(text: string): Thread {
  const read = readThread(text);
  if ("fault" in read) throw new Error(JSON.stringify(read.fault));
  return read;
}

export function cls(text: string): StrengthClass {
  const read = readClass(text);
  if (read === undefined) throw new Error(`no class ${text}`);
  return read;
}

export function material(word: string): Material {
  const read = readMaterial(word);
  if (read === undefined) throw new Error(`no material ${word}`);
  return read;
}
