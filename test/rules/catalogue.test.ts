import { describe, expect, it } from "vitest";
import { catalogue } from "../../server/rules/catalogue.ts";
import { CODES } from "./codes.ts";

const expected = CODES.flatMap(({ group, codes }) => codes.map((each) => ({ group, ...each })));

describe("the catalogue", () => {
  it("has every rule that was set out, and no other", () => {
    expect([...catalogue.keys()].sort()).toEqual(expected.map(({ code }) => code).sort());
  });

  it.each(expected)("has $code under $group as $severity", ({ code, group, severity }) => {
    expect(catalogue.get(code)).toMatchObject({ code, group, severity });
  });

  it.each([...catalogue.values()])("says of $code what is wrong, why it matters and what to do", (rule) => {
    const sentence = /^[A-Z].*[.)?"…]$/s;
    expect(rule.summary).toMatch(/^[A-Z].*[^.]$/);
    expect(rule.why).toMatch(sentence);
    expect(rule.remedy).toMatch(sentence);
  });
});
