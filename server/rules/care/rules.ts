import type { Rule } from "../rule.ts";

export const careRules: readonly Rule[] = [];
