import type { Rule } from "../rule.ts";
import { embrittlement } from "./embrittlement.ts";
import { inspectionMethod } from "./inspection-method.ts";
import { safetyCaution } from "./safety-caution.ts";
import { safetyWeld } from "./safety-weld.ts";

export const careRules: readonly Rule[] = [embrittlement, inspectionMethod, safetyCaution, safetyWeld];
