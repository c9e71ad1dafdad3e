import type { Rule } from "../rule.ts";
import { overLimit } from "./over-limit.ts";

export const limitRules: readonly Rule[] = [overLimit];
