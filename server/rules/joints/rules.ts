import type { Rule } from "../rule.ts";

export const jointRules: readonly Rule[] = [];
