import { describe, expect, it } from "vitest";
import { catalogue } from "../../server/rules/catalogue.ts";
import { AWAITED, CODES } from "./codes.ts";

const expected = CODES.flatMap(({ group, codes }) => codes.map((each) => ({ group, ...each })));

describe("the catalogue", () => {
  it("has every rule that was set out, and no other", () => {
    const codes = [...catalogue.keys(), ...AWAITED];
    expect(codes.sort()).toEqual(expected.map(({ code }) => code).sort());
  });

  it("awaits no rule that is there", () => {
    expect(AWAITED.filter((code) => catalogue.has(code))).toEqual([]);
  });

  it.each(expected.filter(({ code }) => catalogue.has(code)))(
    "has $code under $group as $severity",
    ({ code, group, severity }) => {
      expect(catalogue.get(code)).toMatchObject({ code, group, severity });
    },
  );

  it.each([...catalogue.values()])("says of $code what is wrong, why it matters and what to do", (rule) => {
    const sentence = /^[A-Z].*[.)?"…]$/s;
    expect(rule.summary).toMatch(/^[A-Z].*[^.]$/);
    expect(rule.why).toMatch(sentence);
    expect(rule.remedy).toMatch(sentence);
  });
});
