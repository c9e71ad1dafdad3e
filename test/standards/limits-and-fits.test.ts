import { isFaulty } from "../../server/trade/function.ts";
import { deviationsOf, readToleranceClass } from "../../server/trade/iso286.ts";
import type { ReferenceRow } from "./reference-rows.ts";
import { call, callLimits, checkRows, inUnit } from "./row-checks.ts";
import { numbers } from "./row-inputs.ts";

const micrometres = (metres: number) => Number(inUnit(metres, "µm").toFixed(6));
const millimetres = (metres: number) => inUnit(metres, "mm");

/** Sizes in mm at both ends of `over 3 up to and incl. 6 mm`: just above the lower one, and the upper one. */
function sizesOf(row: ReferenceRow): readonly number[] {
  const [over = 0, upTo = 0] = numbers(row.inputs);
  return [over === 0 ? 0.5 : over + 0.001, upTo];
}

/** What holds at both ends of the range of a row; an error when the ends differ. */
function throughout(row: ReferenceRow, compute: (size: number) => readonly number[]): readonly number[] {
  const [first = [], ...others] = sizesOf(row).map(compute);
  if (others.some((other) => other.join() !== first.join())) throw new Error(`${first} is not ${others}`);
  return first;
}

/** Upper and lower deviation in µm. */
function deviations(size: number, text: string): readonly [number, number] {
  const tolerance = readToleranceClass(text);
  if (tolerance === undefined) throw new Error(`no class ${text}`);
  const pair = deviationsOf(size, tolerance);
  if (isFaulty(pair)) throw new Error(JSON.stringify(pair.fault));
  return [pair.upper, pair.lower];
}

/** The nominal size of `nominal 25 mm; …`. */
function nominal(row: ReferenceRow): number {
  return numbers(row.inputs)[0] ?? Number.NaN;
}

function fitOf(row: ReferenceRow): string {
  return /[A-Z]+\d+\/[a-z]+\d+/.exec(`${row.quantity} ${row.notes}`)?.[0] ?? "";
}

checkRows("05_iso286_limits_fits", [
  {
    quantity: /^standard tolerance IT\d+$/,
    answer: (row) => {
      const grade = row.quantity.split(" ").at(-1) ?? "";
      return throughout(row, (size) => [micrometres(call("tolerance_grade", size / 1000, grade))]);
    },
  },
  {
    quantity: /^(shaft|hole) limit deviations/,
    answer: (row) => {
      const cls = row.quantity.split(" ")[3] ?? "";
      return throughout(row, (size) => deviations(size, cls));
    },
  },
  {
    quantity: /^fundamental deviation es of/,
    answer: (row) => {
      const letter = row.quantity.at(-1) ?? "";
      return throughout(row, (size) => [deviations(size, `${letter}6`)[0]]);
    },
  },
  {
    quantity: /^fundamental deviation ei of/,
    answer: (row) => {
      const letter = row.quantity.split(" ")[4] ?? "";
      return throughout(row, (size) => [deviations(size, `${letter}6`)[1]]);
    },
  },
  {
    quantity: /^limits of size (shaft|hole)/,
    answer: (row) => {
      const { lower, upper } = callLimits("limits_of", `${nominal(row)} ${row.quantity.split(" ")[4]}`);
      return [millimetres(upper), millimetres(lower)];
    },
  },
  {
    quantity: /^(fit H7\/s6: max interference|interference fit: max)/,
    answer: (row) => {
      const { lower, upper } = callLimits("fit_range", `${nominal(row)} ${fitOf(row)}`);
      return [millimetres(-lower), millimetres(-upper)];
    },
  },
  {
    quantity: /min \/ max clearance$/,
    answer: (row) => {
      const { lower, upper } = callLimits("fit_range", `${nominal(row)} ${fitOf(row)}`);
      return [millimetres(lower), millimetres(upper)];
    },
  },
  {
    quantity: /max clearance \/ min clearance/,
    answer: (row) => {
      const { lower, upper } = callLimits("fit_range", `${nominal(row)} ${fitOf(row)}`);
      return [micrometres(upper), micrometres(lower)];
    },
  },
]);
