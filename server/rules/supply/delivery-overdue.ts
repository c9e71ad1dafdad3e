import type { Build } from "../../build/build.ts";
import { KeptOfEach } from "../../build/kept-of-each.ts";
import type { Standing } from "../../build/standing.ts";
import type { OrderLine } from "../../build/states.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { leadDaysOf } from "../../plan/plan.ts";
import { addDays, daysBetween } from "../../quantities/dates.ts";
import type { Notice } from "../rule.ts";
import { checkingRule } from "../rule.ts";

export const deliveryOverdue = checkingRule({
  code: "delivery-overdue",
  group: "Lives and supply",
  severity: "warning",
  summary: "Something that was ordered has not come by the day it was due",
  why: "What nobody asks after stays away, and the work waits for it.",
  remedy: "Ask the supplier; write received: when it is there, or the new date with a new ordered:.",
  bad: `part kit "Caliper kit"
  price: 18.50 GBP

day 2026-05-02
  ordered: 1 x kit due 2026-05-12
`,
  good: `part kit "Caliper kit"
  price: 18.50 GBP

day 2026-05-02
  ordered: 1 x kit due 2026-05-12

day 2026-05-11
  received: 1 x kit
`,
  check: overdueDeliveries,
});

const ofParts = new KeptOfEach<TreeNode, Notice>();

function overdueDeliveries({ standing }: Build): readonly Notice[] {
  return ofParts.of(standing, standing.gathered.tree.ofKind("part"), [], (own, node) =>
    (own.supply.get(node)?.orders ?? []).flatMap((line) => overdue(own, node, line)),
  );
}

function overdue(standing: Standing, node: TreeNode, line: OrderLine): readonly Notice[] {
  const { count, received, fact, place } = line;
  if (received >= count) return [];
  const lead = leadDaysOf(standing, node);
  const due = fact.fact.due ?? (lead === undefined ? undefined : addDays(fact.date, lead));
  if (due === undefined || due >= standing.date) return [];
  const stated = fact.fact.due === undefined ? "expected by its lead time on" : "due on";
  const days = daysBetween(due, standing.date);
  const message = `${count - received} of ${count} ${node.path} ${stated} ${due}: ${days} ${days === 1 ? "day" : "days"} overdue`;
  return [{ place, message }];
}
