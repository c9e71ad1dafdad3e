/** A build in a few figures: what it is called, and what is open before the next hold point. */
import { isShut } from "../../../build/hold-order.ts";
import { recordOf } from "../../../build/judgement.ts";
import { needsOf } from "../../../plan/needs.ts";
import type { InspectedHold } from "../../../reports/outstanding.ts";
import { inspectedHolds } from "../../../reports/outstanding.ts";
import type { BuildOverview, NextHold } from "../../protocol.ts";
import type { ChosenBuild } from "./chosen-build.ts";

export function overview(chosen: ChosenBuild): BuildOverview {
  const { build, snapshot, name } = chosen;
  const { header } = build.standing.gathered.vehicle;
  return {
    folder: snapshot.folder,
    name,
    today: build.today,
    spot: header === undefined ? null : chosen.spotOf(header),
    next: nextHold(chosen),
    toOrder: needsOf(build).filter(({ toOrder }) => toOrder > 0).length,
  };
}

/** Of the hold points that are shut the first by the day it is planned for, then by definition. */
function nextHold({ build }: ChosenBuild): NextHold | null {
  const { holds } = build.standing;
  const [first] = [...holds.values()]
    .filter(isShut)
    .map(({ definition }) => ({ definition, planned: recordOf(definition, "planned")?.date ?? "9999" }))
    .sort((a, b) => (a.planned < b.planned ? -1 : a.planned > b.planned ? 1 : 0));
  if (first === undefined && holds.size > 0) return null;
  const [next] = inspectedHolds(build, first?.definition);
  return next === undefined || (first === undefined && next.open.length === 0)
    ? null
    : inFigures(next, first === undefined);
}

function inFigures({ hold, open }: InspectedHold, isWhole: boolean): NextHold {
  return {
    title: hold.title ?? hold.name,
    planned: recordOf(hold, "planned")?.date ?? null,
    open: open.length,
    isWhole,
  };
}
