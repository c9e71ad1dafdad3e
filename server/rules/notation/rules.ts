import type { Rule } from "../rule.ts";
import { unknownRecord } from "./unknown-record.ts";

export const notationRules: readonly Rule[] = [unknownRecord];
