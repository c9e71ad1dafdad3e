import type { Rule } from "../rule.ts";
import { lifeEndsSoon } from "./life-ends-soon.ts";
import { lifeExpired } from "./life-expired.ts";
import { noMadeDate } from "./no-made-date.ts";
import { serviceDue } from "./service-due.ts";

export const lifeRules: readonly Rule[] = [lifeEndsSoon, lifeExpired, noMadeDate, serviceDue];
