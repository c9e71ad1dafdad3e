import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../server/rules/catalogue.ts";
import { severitySetting } from "../../server/rules/severity-setting.ts";

describe("the setting of severities", () => {
  const schema: object = severitySetting()["cotter.severity"];
  const accepts = new Ajv({ strict: false }).compile(schema);

  it.each(["error", "warning", "information", "hint", "off"])("takes %s for every rule", (severity) => {
    const all = Object.fromEntries([...catalogue.keys()].map((code) => [code, severity]));
    expect(accepts(all)).toBe(true);
  });

  it("takes no other word", () => {
    expect(accepts({ "near-limit": "loud" })).toBe(false);
  });

  it("takes no rule that there is not", () => {
    expect(accepts({ "nearly-limit": "off" })).toBe(false);
  });

  it("starts with the severity that the rule has", () => {
    expect(schema).toMatchObject({ properties: { "over-limit": { default: "error" } } });
  });
});
