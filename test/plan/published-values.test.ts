/** Published worked examples of the critical-path method and PERT; each row of the table names its source. */

import { describe, expect, test } from "vitest";
import type { Estimate } from "../../server/plan/estimate.ts";
import { singleEstimate, threePointEstimate } from "../../server/plan/estimate.ts";
import { reserveHours } from "../../server/plan/forecast.ts";
import type { Hours } from "../../server/plan/hours.ts";
import { addHours, decimalHours, hours, NO_HOURS } from "../../server/plan/hours.ts";
import type { Network } from "../../server/plan/network.ts";
import { network } from "../../server/plan/network.ts";
import { decimal, ONE } from "../../server/quantities/decimal.ts";
import type { ReferenceRow } from "../standards/reference-rows.ts";
import { referenceRows } from "../standards/reference-rows.ts";
import { unchecked } from "../standards/row-checks.ts";

interface Example {
  readonly network: Network;
  readonly estimates: ReadonlyMap<string, Estimate>;
}

const rows = referenceRows("14_project_scheduling");

/** Of the standard normal distribution: 0.6 of it lies below so many deviations over the mean (any printed table). */
const SIX_IN_TEN = decimal("0.2533471031");

/** What the plan gives for a row, in the order of its `quantity`. */
const answers: readonly {
  readonly quantity: RegExp;
  readonly answer: (row: ReferenceRow) => readonly Hours[];
}[] = [
  { quantity: /^ES \/ EF \/ LS \/ LF \/ total float \/ free float$/, answer: allFigures },
  { quantity: /^ES \/ EF \/ LS \/ LF \/ total float$/, answer: (row) => allFigures(row).slice(0, 5) },
  { quantity: /^free float$/, answer: (row) => [figuresOf(row).freeFloat] },
  { quantity: /^total float$/, answer: (row) => [figuresOf(row).totalFloat] },
  { quantity: /^(expected )?project duration$/, answer: (row) => [exampleOf(row).network.finish] },
  { quantity: /^PERT expected duration .* variance/, answer: meanAndVariance },
  { quantity: /^standard deviation of project duration$/, answer: deviation },
  { quantity: /^deadline met with probability 0\.6$/, answer: deadline },
];

describe("published values, 14_project_scheduling", () => {
  const checkable = rows.filter(({ id }) => unchecked[id] === undefined);

  test("all rows are checked", () => {
    expect(rows.filter((row) => !checkable.includes(row))).toEqual([]);
  });

  for (const row of checkable) {
    test(`${row.id} ${row.quantity}; ${row.inputs}: ${row.expected}; ${row.source}`, () => {
      expect(differences(row)).toEqual([]);
    });
  }
});

/** Answers that are not those of the row, in words; empty when all agree. */
function differences(row: ReferenceRow): readonly string[] {
  if (row.quantity === "critical path") {
    const path = exampleOf(row).network.criticalPath.join("-");
    return path === row.expected ? [] : [path];
  }
  const found = answers.find(({ quantity }) => quantity.test(row.quantity))?.answer(row) ?? [];
  const expected = row.expected.split(" / ");
  if (found.length !== expected.length) return [`${found.length} values for ${row.expected}`];
  return found
    .filter((value, place) => !agrees(value, expected[place] ?? "", row.tolerance))
    .map((value) => `${decimalHours(value)} is not in ${row.expected}`);
}

function agrees(found: Hours, expected: string, tolerance: string): boolean {
  return decimalHours(found).minus(expected).abs().lessThanOrEqualTo(tolerance);
}

function allFigures(row: ReferenceRow): readonly Hours[] {
  const { earliestStart, earliestFinish, latestStart, latestFinish, totalFloat, freeFloat } = figuresOf(row);
  return [earliestStart, earliestFinish, latestStart, latestFinish, totalFloat, freeFloat];
}

function meanAndVariance({ inputs }: ReferenceRow): readonly Hours[] {
  const { mean, variance } = pointsOf(inputs);
  return [mean, variance];
}

function deviation(row: ReferenceRow): readonly Hours[] {
  const example = exampleOf(row);
  const variance = example.network.criticalPath
    .map((id) => example.estimates.get(id)?.variance ?? NO_HOURS)
    .reduce(addHours, NO_HOURS);
  return [hours(reserveHours(variance, ONE))];
}

function deadline({ inputs }: ReferenceRow): readonly Hours[] {
  const [, mean = "", deviationText = ""] = /^mean (\S+); sd (\S+)$/.exec(inputs) ?? [];
  const squared = decimal(deviationText).pow(2);
  return [addHours(hours(mean), hours(reserveHours(hours(squared), SIX_IN_TEN)))];
}

function figuresOf(row: ReferenceRow) {
  const id = /^activity (\w+)/.exec(row.inputs)?.[1] ?? "";
  const figures = exampleOf(row).network.figures.get(id);
  if (figures === undefined) throw new Error(`no activity ${id} in ${row.id}`);
  return figures;
}

/** The example of a row: its own, or the one that it refers to. */
function exampleOf(row: ReferenceRow): Example {
  if (row.inputs.endsWith("of the PERT example")) return readExample(inputsOf("expected project duration"));
  if (row.inputs.endsWith("of the previous row")) return readExample(inputsOf("project duration"));
  return readExample(row.inputs);
}

function inputsOf(quantity: string): string {
  return rows.find((row) => row.quantity === quantity)?.inputs ?? "";
}

/** Reads `A=3 (no pred); D=1 after A; F=3 after C,D,E` or `A a=3 m=5 b=7 after -; I a=4 m=6 b=8 after FGH`. */
function readExample(inputs: string): Example {
  const estimates = new Map<string, Estimate>();
  const activities = inputs
    .split("; ")
    .filter((text) => !text.startsWith("activity "))
    .map((text) => {
      const [, id = "", time = "", before = ""] =
        /^(\w+)[ =](.*?)(?: after (.*)| \(no pred\))?$/.exec(text) ?? [];
      const estimate = time.includes("=") ? pointsOf(time) : singleEstimate(decimal(time));
      estimates.set(id, estimate);
      return { id, hours: estimate.mean, after: before.match(/\w/g) ?? [] };
    });
  return { network: network(activities), estimates };
}

function pointsOf(text: string): Estimate {
  const [, optimistic = "", likely = "", pessimistic = ""] = /a=(\S+) m=(\S+) b=(\S+)/.exec(text) ?? [];
  return threePointEstimate(decimal(optimistic), decimal(likely), decimal(pessimistic));
}
