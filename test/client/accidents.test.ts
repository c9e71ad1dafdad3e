import { expect, test } from "vitest";
import { Accidents } from "../../client/accidents.ts";

const minutes = (count: number) => count * 60_000;

test("four ends in three minutes pass for accidents, a fifth does not", () => {
  const accidents = new Accidents();
  expect([0, 1, 2, 3, 4].map((second) => accidents.another(second * 1000))).toEqual([
    true,
    true,
    true,
    true,
    false,
  ]);
});

test("what is long past is forgotten", () => {
  const accidents = new Accidents();
  expect([0, 1, 2, 3, 4, 5, 6].map((count) => accidents.another(minutes(count)))).not.toContain(false);
});
