/** Every rule by its code. The docs page, the settings and the links of complaints are made from this. */
import { careRules } from "./care/rules.ts";
import { holdRules } from "./holds/rules.ts";
import { jointRules } from "./joints/rules.ts";
import { limitRules } from "./limits/rules.ts";
import { lifeRules } from "./lives/rules.ts";
import { notationRules } from "./notation/rules.ts";
import { orderRules } from "./order/rules.ts";
import type { Rule } from "./rule.ts";
import { supplyRules } from "./supply/rules.ts";
import { systemRules } from "./systems/rules.ts";

export const catalogue: ReadonlyMap<string, Rule> = new Map(
  [
    notationRules,
    orderRules,
    holdRules,
    limitRules,
    jointRules,
    systemRules,
    lifeRules,
    supplyRules,
    careRules,
  ]
    .flat()
    .map((rule) => [rule.code, rule]),
);
