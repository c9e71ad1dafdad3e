/** All that is shown of a build, so that two of them can be compared. */
import type { Build } from "../../server/build/build.ts";
import { costsOf } from "../../server/plan/costs.ts";
import { orderOf } from "../../server/plan/order.ts";
import { planOf } from "../../server/plan/plan.ts";
import { formatMoney } from "../../server/quantities/money.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { spot } from "./edits.ts";

/** All that is shown of a build, with the lines where it stands. */
export function shown(build: Build) {
  const { standing, facts, links, calculations } = build;
  const { complaints, waived } = complaintsOf(build);
  const plan = planOf(build);
  const order = orderOf(build, plan);
  const { costs, total } = costsOf(build);
  return {
    complaints: complaints.map(({ code, severity, message, place, seeAlso }) => [
      code,
      severity,
      message,
      spot(place),
      seeAlso.map((related) => `${spot(related.place)} ${related.message}`),
    ]),
    waived: waived.map(({ reason }) => reason),
    parts: [...standing.parts.values()].map(({ node, place, item }) => [node.path, place, item.number]),
    joints: [...standing.joints.values()].map(({ node, stage, hardware }) => [node.path, stage, hardware]),
    systems: [...standing.systems.values()].map(({ node, stage }) => [node.path, stage]),
    holds: [...standing.holds.values()].map(({ definition, released, lapsed }) => [
      definition.name,
      released?.date,
      lapsed?.date,
    ]),
    lost: standing.lost.map(({ place, text, nodes }) => [
      spot(place),
      text,
      nodes && [...nodes].map(({ path }) => path),
    ]),
    facts: facts.map(({ date, place }) => `${date} ${spot(place)}`),
    links: links.map(({ place, nodes }) => `${spot(place)} ${nodes.map(({ path }) => path)}`),
    calculations: calculations.map(({ name, place }) => `${name} ${spot(place)}`),
    order: order.lines.map(({ need, why, orderBy }) => [
      need.node.path,
      need.toOrder,
      orderBy,
      why.map(({ text, place }) => `${text} ${spot(place)}`),
    ]),
    plan: plan.activities.map(({ id, after, waits }) => [id, after, waits]),
    forecast: plan.forecast,
    costs: costs.map(({ money, tax, text, place }) => [
      formatMoney(money),
      formatMoney(tax),
      text,
      spot(place),
    ]),
    total: total && formatMoney(total),
  };
}
