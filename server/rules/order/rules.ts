import type { Rule } from "../rule.ts";

export const orderRules: readonly Rule[] = [];
