import type { Rule } from "../rule.ts";

export const supplyRules: readonly Rule[] = [];
