import type { Rule } from "../rule.ts";

export const systemRules: readonly Rule[] = [];
