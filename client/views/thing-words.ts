/** How a thing of the vehicle stands, in a few words. */
import { l10n } from "vscode";
import type { BranchEntry, Look, ThingState } from "../../server/language-server/protocol.ts";
import type { InBrief } from "./days-in-brief.ts";

export const KINDS: Readonly<Record<BranchEntry["kind"], () => string>> = {
  assembly: () => l10n.t("assembly"),
  part: () => l10n.t("part"),
  joint: () => l10n.t("joint"),
  system: () => l10n.t("system"),
  circuit: () => l10n.t("circuit"),
};

const LOOKS: Readonly<Record<Look, () => string>> = {
  settled: () => l10n.t("in order"),
  unsettled: () => l10n.t("not in order yet"),
  condemned: () => l10n.t("not to be used as it is"),
  away: () => l10n.t("not here"),
  plain: () => l10n.t("as it was"),
};

type PartState = Extract<ThingState, { is: "part" }>;
type SystemLack = NonNullable<Extract<ThingState, { is: "system" }>["lack"]>;

const PLACES: Readonly<Record<PartState["place"], () => string>> = {
  on: () => l10n.t("on"),
  trial: () => l10n.t("on for trial"),
  off: () => l10n.t("off"),
  away: () => l10n.t("away"),
  shelf: () => l10n.t("on the shelf"),
  gone: () => l10n.t("gone"),
  missing: () => l10n.t("missing"),
};

const LACKS: Readonly<Record<SystemLack, () => string>> = {
  fluid: () => l10n.t("wants fluid"),
  bleeding: () => l10n.t("wants bleeding"),
  proof: () => l10n.t("wants proof"),
};

/** @param inBrief a day, in short */
export function thingWords({ state, look }: BranchEntry, inBrief: InBrief): string {
  switch (state.is) {
    case "part":
      return partWords(state, inBrief);
    case "joint":
      return state.secured ? l10n.t("secured") : l10n.t("not secured");
    case "system":
      return state.lack === null ? LOOKS[look]() : LACKS[state.lack]();
    case "circuit":
      if (state.atFault) return l10n.t("wrong fuse");
      return state.tested ? l10n.t("tested") : l10n.t("not tested");
    case "assembly":
      return state.wanting === 0 ? LOOKS[look]() : l10n.t("{0} of {1} open", state.wanting, state.of);
  }
}

function partWords({ place, since, condemned, inHand, outOfLimits }: PartState, inBrief: InBrief): string {
  if (condemned) return l10n.t("condemned");
  if (outOfLimits) return l10n.t("on, out of limits");
  if (inHand !== null) return inHand === 0 ? l10n.t("none in hand") : l10n.t("{0} in hand", inHand);
  const where = PLACES[place]();
  return since === null ? where : l10n.t("{0} since {1}", where, inBrief(since));
}
