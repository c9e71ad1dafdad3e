/** What each hold point still finds open. */
import { isCritical } from "../../../build/criticality.ts";
import type { OpenItem } from "../../../build/open-item.ts";
import { sayOpenItem } from "../../../build/open-item.ts";
import { holdReport, inspectedHolds } from "../../../reports/outstanding.ts";
import type { HoldEntry, OpenEntry, OpenReason } from "../../protocol.ts";
import type { ChosenBuild } from "./chosen-build.ts";

export function stillOpen(chosen: ChosenBuild): readonly HoldEntry[] {
  return inspectedHolds(chosen.build).map((inspected) => {
    const { hold, open } = inspected;
    const report = holdReport(inspected);
    return {
      ref: hold.name,
      title: hold.title ?? hold.name,
      planned: report.planned,
      released: report.released,
      lapsed: report.lapsed,
      spot: chosen.spotOf(hold.header),
      open: open.map((item) => entryOf(chosen, item)),
      isWhole: chosen.build.standing.holds.size === 0,
    };
  });
}

function entryOf(chosen: ChosenBuild, item: OpenItem): OpenEntry {
  const { standing } = chosen.build;
  const { ref, node, place } = item;
  return {
    ref,
    title: node?.title ?? standing.names.named("job", ref)?.title ?? null,
    why: reasonOf(item),
    message: sayOpenItem(item),
    critical: node !== undefined && isCritical(standing, node),
    spot: chosen.spotOf(place),
  };
}

function reasonOf({ code, data }: OpenItem): OpenReason {
  return {
    code,
    since: ("since" in data ? data.since : undefined) ?? null,
    where: "where" in data ? data.where : null,
    begun: "started" in data && data.started,
  };
}
