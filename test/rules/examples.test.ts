import { describe, expect, it } from "vitest";
import { catalogue } from "../../server/rules/catalogue.ts";
import { currentComplaints, exampleText, readExample } from "../../server/rules/example.ts";
import { inOneLine } from "./read-log.ts";

describe.each([...catalogue.values()])("the examples of $code", (rule) => {
  it("bring exactly this one complaint where they are bad", () => {
    const complaints = currentComplaints(readExample(exampleText(rule, rule.bad)));
    expect(complaints.map(inOneLine)).toEqual([expect.stringContaining(` ${rule.code}: `)]);
  });

  it("bring none where they are good", () => {
    const complaints = currentComplaints(readExample(exampleText(rule, rule.good)));
    expect(complaints.map(inOneLine)).toEqual([]);
  });
});
