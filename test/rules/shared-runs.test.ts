import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { carryOver, outside, sharedRuns } from "../../server/rules/shared-runs.ts";

const numbers = (from: number, to: number) => Array.from({ length: to - from }, (_, index) => from + index);

/** What has gone and what has come. */
function changes(before: readonly number[], now: readonly number[]) {
  const runs = sharedRuns(before, now);
  return {
    gone: outside(runs, "then", before.length).map((index) => before[index]),
    come: outside(runs, "now", now.length).map((index) => now[index]),
  };
}

describe("what two lists share", () => {
  it("is all of them where nothing has changed", () => {
    expect(changes(numbers(0, 200), numbers(0, 200))).toEqual({ gone: [], come: [] });
    expect(changes([], [])).toEqual({ gone: [], come: [] });
  });

  it("is nothing where one of them is empty", () => {
    expect(changes([], [1, 2])).toEqual({ gone: [], come: [1, 2] });
    expect(changes([1, 2], [])).toEqual({ gone: [1, 2], come: [] });
  });

  it("lies around each change, however many there are", () => {
    const before = numbers(0, 1000);
    const now = before.flatMap((each) =>
      each === 10 ? [] : each === 500 ? [-1] : each === 900 ? [900, -2] : [each],
    );
    expect(changes(before, now)).toEqual({ gone: [10, 500], come: [-1, -2] });
  });

  it("is found again behind many that were replaced, and at the end behind any number", () => {
    const replaced = (count: number) =>
      numbers(0, 1000).map((each) => (each >= 300 && each < 300 + count ? -each : each));
    expect(changes(numbers(0, 1000), replaced(60)).come).toHaveLength(60);
    expect(changes(numbers(0, 1000), replaced(600)).come).toHaveLength(600);
    expect(changes(numbers(0, 1000), replaced(1000)).come).toHaveLength(700);
  });

  it("is in the same order in both, and the same", () => {
    const list = fc.array(fc.integer({ min: 0, max: 6 }), { maxLength: 150 });
    fc.assert(
      fc.property(list, list, (before, now) => {
        const runs = sharedRuns(before, now);
        const gone = new Set(outside(runs, "then", before.length));
        const come = new Set(outside(runs, "now", now.length));
        const stayed = before.filter((_, index) => !gone.has(index));
        expect(stayed).toEqual(now.filter((_, index) => !come.has(index)));
        const into = now.map((each, index) => (come.has(index) ? each : -1));
        carryOver(runs, before, into);
        expect(into).toEqual(now);
      }),
    );
  });
});
