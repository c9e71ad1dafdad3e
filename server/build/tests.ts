/** Whether what is to be tried has been tried, and has not been disturbed since. */
import { coverOf } from "./cover.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { TestLack } from "./open-item.ts";
import type { Standing } from "./standing.ts";
import type { TestState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

/** Under which a test of the thing as a whole is kept. */
export const AS_A_WHOLE = "";

/** What a named test of a thing lacks; a test of the thing as a whole answers every one. Undefined where it has passed. */
export function namedTestLack(standing: Standing, node: TreeNode, name: string): TestLack | undefined {
  const states = standing.tests.get(node);
  const disturbed = standing.disturbed.get(node);
  return lackOf(newestOf([states?.get(name), states?.get(AS_A_WHOLE)]), disturbed?.order);
}

/** What the testing of a thing lacks: each of its tests by name, or, where it lists none, any test of it. */
export function testLack(standing: Standing, node: TreeNode): TestLack | undefined {
  const names = standing.definitions.all(node, "test").map(({ record }) => record.name);
  if (names.length > 0) {
    return names.map((name) => namedTestLack(standing, node, name)).find((lack) => lack !== undefined);
  }
  const newest = newestOf([...(standing.tests.get(node)?.values() ?? [])]);
  return lackOf(newest, standing.disturbed.get(node)?.order);
}

/** What a test of a hold point's own list lacks; it lapses when anything is disturbed that the hold point covers. */
export function holdTestLack(standing: Standing, hold: NamedDefinition, name: string): TestLack | undefined {
  const states = standing.holdTests.get(hold);
  const disturbed = Math.max(
    -1,
    ...coverOf(standing, hold).named.map((node) => standing.disturbed.get(node)?.order ?? -1),
  );
  return lackOf(newestOf([states?.get(name), states?.get(AS_A_WHOLE)]), disturbed);
}

function lackOf(newest: TestState | undefined, disturbed: number | undefined): TestLack | undefined {
  if (newest === undefined) return "never";
  if (!newest.pass) return "failed";
  return newest.fact.order < (disturbed ?? -1) ? "disturbed" : undefined;
}

function newestOf(states: readonly (TestState | undefined)[]): TestState | undefined {
  return states.reduce((newest, state) => {
    if (state === undefined) return newest;
    return newest === undefined || state.fact.order > newest.fact.order ? state : newest;
  }, undefined);
}
