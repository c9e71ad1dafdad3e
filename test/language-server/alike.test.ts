import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { expect, it } from "vitest";
import { areAlike } from "../../server/language-server/alike.ts";

const asSent = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

it("values of the protocol are alike where they are written alike", () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (one, other) => {
      expect(areAlike(one, structuredClone(one))).toBe(true);
      expect(areAlike(one, other)).toBe(isDeepStrictEqual(asSent(one), asSent(other)));
    }),
  );
});

it("a list is not alike to one that is longer, nor an object to one that says more", () => {
  const range = { start: { line: 1, character: 2 }, end: { line: 1, character: 5 } };
  expect(areAlike([range], [range, range])).toBe(false);
  expect(areAlike([range, range], [range])).toBe(false);
  expect(areAlike(range, { ...range, more: 1 })).toBe(false);
  expect(areAlike({ ...range, more: 1 }, range)).toBe(false);
  expect(areAlike(range, { ...range, end: { line: 1, character: 6 } })).toBe(false);
  expect(areAlike({}, [])).toBe(false);
  expect(areAlike(null, {})).toBe(false);
});
