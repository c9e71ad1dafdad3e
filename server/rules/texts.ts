/**
 * Why each rule is there and what to do about it, by its code. It is told when it is looked up, so the programs load it
 * late: the build takes these texts out of the rules and writes them down here.
 */
import { catalogue } from "./catalogue.ts";
import type { Rule } from "./rule.ts";

type RuleTexts = Pick<Rule, "why" | "remedy">;

export const ruleTexts: ReadonlyMap<string, RuleTexts> = new Map(
  [...catalogue].map(([code, { why, remedy }]) => [code, { why, remedy }]),
);
