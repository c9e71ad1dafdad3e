import type { Build } from "../../build/build.ts";
import { orderOf } from "../../plan/order.ts";
import { planOf } from "../../plan/plan.ts";
import { addDays } from "../../quantities/dates.ts";
import type { Notice } from "../rule.ts";
import { checkingRule } from "../rule.ts";

export const orderLate = checkingRule({
  code: "order-late",
  group: "Lives and supply",
  severity: "warning",
  summary: "Ordered today, a part comes after the work needs it",
  why: "The job that needs it waits, and so does every job and hold point behind it.",
  remedy: "Order it now and ask for it sooner, find another supplier, or plan the work for later.",
  bad: `supplier northgate "Northgate Motor Factors"
  lead: 10 d

part kit "Caliper kit"
  supplier: northgate
  price: 18.50 GBP

job brakes_back "Brakes back on"
  takes: 4 h
  needs: 1 x kit
  start: 2026-06-05
`,
  good: `supplier northgate "Northgate Motor Factors"
  lead: 2 d

part kit "Caliper kit"
  supplier: northgate
  price: 18.50 GBP

job brakes_back "Brakes back on"
  takes: 4 h
  needs: 1 x kit
  start: 2026-06-05
`,
  check: lateOrders,
});

function* lateOrders(build: Build): Generator<Notice> {
  for (const { need, why, needBy, leadDays = 0, late } of orderOf(build, planOf(build)).lines) {
    const place = why[0]?.place ?? need.node.header;
    if (!late || needBy === undefined || place === undefined) continue;
    const comes = addDays(build.today, leadDays);
    const message = `${need.node.path}: ordered today it comes on ${comes}, after ${leadDays} d; expected by ${needBy}`;
    yield { place, message };
  }
}
