/** Checks every row of a table of published values against the functions of the trade. */

import { readFileSync } from "node:fs";
import { afterAll, describe, expect, test } from "vitest";
import { tradeFunction } from "../../server/trade/catalogue.ts";
import type { ArgumentValue } from "../../server/trade/function.ts";
import type { Material } from "../../server/trade/materials.ts";
import type { Limits } from "../../server/trade/result.ts";
import type { StrengthClass } from "../../server/trade/strength-class.ts";
import { readClass } from "../../server/trade/strength-class.ts";
import type { Thread } from "../../server/trade/thread.ts";
import { readThread } from "../../server/trade/thread.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { referenceRows } from "./reference-rows.ts";
import { unitSize } from "./row-inputs.ts";

/** What the functions give for a row, in the unit of its `expected`, in the order of its `quantity`. */
export type Answer =
  | readonly number[]
  | { readonly values: readonly number[]; readonly tolerances: readonly number[] };

export interface RowHandler {
  /** Which rows it answers, by `quantity` and, where that does not tell, by `inputs`. */
  readonly quantity: RegExp;
  readonly inputs?: RegExp;
  readonly answer: (row: ReferenceRow) => Answer;
}

/** Why rows of the tables are not checked: row id to reason. */
export const unchecked: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(new URL("./unchecked.json", import.meta.url), "utf8"),
);

/** Declares one test for each row that is not listed as unchecked, and one that the lists are complete. */
export function checkRows(table: string, handlers: readonly RowHandler[]): void {
  const rows = referenceRows(table);
  const checkable = rows.filter((row) => unchecked[row.id] === undefined);
  describe(`published values, ${table}`, () => {
    for (const row of checkable) {
      test(titleOf(row), () => {
        const handler = handlers.find((candidate) => answers(candidate, row));
        if (handler === undefined) throw new Error(`no check for ${row.id}: ${row.quantity}; ${row.inputs}`);
        expect(differences(row, handler.answer(row))).toEqual([]);
      });
    }
    test("every handler answers a row", () => {
      const idle = handlers.filter((handler) => !checkable.some((row) => answers(handler, row)));
      expect(idle.map((handler) => handler.quantity)).toEqual([]);
    });
    afterAll(() => {
      process.stdout.write(`${table}: ${checkable.length} of ${rows.length} published values checked\n`);
    });
  });
}

function answers(handler: RowHandler, row: ReferenceRow): boolean {
  return handler.quantity.test(row.quantity) && (handler.inputs?.test(row.inputs) ?? true);
}

function titleOf(row: ReferenceRow): string {
  const memory = row.evidence === "memory" ? " (from memory)" : "";
  return `${row.id} ${row.quantity}; ${row.inputs}: ${row.expected} ${row.unit}${memory}; ${row.source}`;
}

/** In words, how the answer differs from what is published; empty when it agrees. */
function differences(row: ReferenceRow, answer: Answer): readonly string[] {
  const expected = row.expected.split(/\/|;| to /).map((text) => Number(text));
  const given = "tolerances" in answer ? answer : { values: answer, tolerances: [] };
  if (given.values.length !== expected.length) return [`${given.values.length} values for ${row.expected}`];
  return expected.flatMap((wanted, place) => {
    const value = given.values[place] ?? Number.NaN;
    const tolerance = given.tolerances[place] ?? Number(row.tolerance);
    // Room for binary rounding, far below any printed digit.
    const rounding = 1e-12 * Math.max(1, Math.abs(wanted));
    const agrees = Math.abs(value - wanted) <= tolerance + rounding;
    return agrees ? [] : [`${value} differs from ${wanted} by more than ${tolerance} ${row.unit}`];
  });
}

/** A function of the trade called by its name, SI in and out; a fault is an error. */
export function call(name: string, ...values: readonly ArgumentValue[]): number {
  const value = result(name, values);
  if (typeof value !== "number") throw new Error(`${name} gives limits`);
  return value;
}

/** The same for a function that gives limits. */
export function callLimits(name: string, ...values: readonly ArgumentValue[]): Limits {
  const value = result(name, values);
  if (typeof value === "number") throw new Error(`${name} gives one value`);
  return value;
}

function result(name: string, values: readonly ArgumentValue[]): number | Limits {
  const found = tradeFunction(name);
  if (found === undefined) throw new Error(`no function ${name}`);
  const answer = found.call(values);
  if ("fault" in answer) throw new Error(`${name}: ${JSON.stringify(answer.fault)}`);
  return answer.value;
}

/** A value of a function in the unit of the row. */
export function inUnit(value: number, unit: string): number {
  return value / unitSize(unit);
}

export function thread(text: string): Thread {
  const read = readThread(text);
  if ("fault" in read) throw new Error(JSON.stringify(read.fault));
  return read;
}

export function strengthClass(text: string): StrengthClass {
  const read = readClass(text);
  if (read === undefined) throw new Error(`no class ${text}`);
  return read;
}

/** A material with the properties a row gives. */
export function materialWith(properties: Partial<Material>): Material {
  return { kind: "material", name: "of the row", source: "the row", ...properties };
}
