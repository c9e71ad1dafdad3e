/** The setting `cotter.severity` as the extension's manifest declares it: one entry for each rule. */
import { catalogue } from "./catalogue.ts";
import { SEVERITIES } from "./rule.ts";

/** A JSON schema for `contributes.configuration` of the manifest. */
export function severitySetting(): { readonly "cotter.severity": object } {
  const properties = [...catalogue.values()].map(({ code, severity, summary }) => [
    code,
    { enum: [...SEVERITIES, "off"], default: severity, description: `${summary}.` },
  ]);
  return {
    "cotter.severity": {
      type: "object",
      default: {},
      markdownDescription:
        'Severities of single rules, such as `{ "near-limit": "off" }`. What is secured, open or released does not depend on them.',
      additionalProperties: false,
      properties: Object.fromEntries(properties),
    },
  };
}
