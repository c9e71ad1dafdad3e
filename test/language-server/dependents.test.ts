/** What would have to be looked at again if a reading were other. */

import { expect, test } from "vitest";
import type { CallHierarchyItem } from "vscode-languageserver";
import {
  dependencies,
  dependents,
  prepareDependents,
} from "../../server/language-server/features/dependents.ts";
import { marked } from "./marked-build.ts";

const LOG = `
  gauge mic25
  part left.disc
    limit: thickness min 8.4 mm
    pair: thickness with right.disc.thickness within 2 %
    calc: rest = thickness - 8.4 mm
  part right.disc
    limit: thickness min 8.4 mm
  joint nut
    set_by: left.disc.thickness
  hold ready
    covers: left
  day 2026-05-02
    measured: left.disc thick⁞ness 9.1 mm with mic25
    calc: sum = left.disc.thickness + right.disc.thickness
    calc: double = 2 * sum
`;

function item(name: string): CallHierarchyItem {
  const { view, position } = marked(LOG);
  const [start] = prepareDependents(view, position);
  if (start === undefined) throw new Error("nothing at the cursor");
  if (start.name === name) return start;
  const found = dependents(view, start).find(({ from }) => from.name === name);
  if (found === undefined) throw new Error(`nothing called ${name}`);
  return found.from;
}

const { view } = marked(LOG);
const namesOf = (items: readonly { readonly name: string }[]) => items.map(({ name }) => name).sort();

test("a reading: the calculations, comparisons, joints and hold points that build on it", () => {
  const reading = item("left.disc.thickness");
  expect(reading.detail).toBe("limit: thickness min 8.4 mm");
  expect(namesOf(dependents(view, reading).map(({ from }) => from))).toEqual([
    "left.disc.rest",
    "nut",
    "ready",
    "sum",
  ]);
});

test("a calculation: what builds on it, and what it builds on", () => {
  const sum = item("sum");
  expect(namesOf(dependents(view, sum).map(({ from }) => from))).toEqual(["double"]);
  expect(namesOf(dependencies(view, sum).map(({ to }) => to))).toEqual([
    "left.disc.thickness",
    "right.disc.thickness",
  ]);
});

test("a reading builds on the gauge that took it", () => {
  expect(namesOf(dependencies(view, item("left.disc.thickness")).map(({ to }) => to))).toEqual(["mic25"]);
});
