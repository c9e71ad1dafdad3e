/** Why something is still open, in a few words and as an icon. */
import { l10n } from "vscode";
import type { OpenReason } from "../../server/language-server/protocol.ts";
import type { InBrief } from "./days-in-brief.ts";

type Code = OpenReason["code"];

const PLACES: Readonly<Record<NonNullable<OpenReason["where"]>, () => string>> = {
  off: () => l10n.t("off"),
  away: () => l10n.t("away"),
  missing: () => l10n.t("missing"),
  gone: () => l10n.t("gone"),
};

const REASONS: Readonly<Record<Code, (reason: OpenReason) => string>> = {
  "part-off": ({ where }) => PLACES[where ?? "off"](),
  "part-on-trial": () => l10n.t("on for trial"),
  "part-condemned": () => l10n.t("condemned"),
  "part-not-seen": () => l10n.t("not seen by another"),
  "limit-refused": () => l10n.t("out of limits"),
  "limit-unproven": () => l10n.t("limit not proved"),
  "limit-unmeasured": () => l10n.t("not measured"),
  "joint-unsecured": () => l10n.t("not secured"),
  "system-open": () => l10n.t("not filled"),
  "system-not-bled": () => l10n.t("not bled"),
  "system-not-proved": () => l10n.t("not proved"),
  "system-wrong-fluid": () => l10n.t("wrong fluid"),
  "circuit-at-fault": () => l10n.t("wrong fuse"),
  "circuit-untested": () => l10n.t("not tested"),
  "setting-not-set": () => l10n.t("not set"),
  "setting-out": () => l10n.t("out of setting"),
  "life-over": () => l10n.t("life used up"),
  "age-unknown": () => l10n.t("age unknown"),
  "test-not-passed": () => l10n.t("test not passed"),
  "snag-open": () => l10n.t("not cleared"),
  "job-not-done": ({ begun }) => (begun ? l10n.t("not finished") : l10n.t("not begun")),
  "hold-shut": () => l10n.t("not released"),
  "line-unread": () => l10n.t("line not read"),
};

/** @param inBrief a day, in short */
export function openWords(reason: OpenReason, inBrief: InBrief): string {
  const words = REASONS[reason.code](reason);
  return reason.since === null ? words : l10n.t("{0} since {1}", words, inBrief(reason.since));
}

/** Names of the editor's icons, one for each kind of thing that is to be done. */
export const OPEN_ICONS: Readonly<Record<Code, string>> = {
  "part-off": "tools",
  "part-on-trial": "tools",
  "part-condemned": "circle-slash",
  "part-not-seen": "eye",
  "limit-refused": "symbol-ruler",
  "limit-unproven": "symbol-ruler",
  "limit-unmeasured": "symbol-ruler",
  "joint-unsecured": "debug-disconnect",
  "system-open": "beaker",
  "system-not-bled": "beaker",
  "system-not-proved": "beaker",
  "system-wrong-fluid": "beaker",
  "circuit-at-fault": "plug",
  "circuit-untested": "plug",
  "setting-not-set": "symbol-ruler",
  "setting-out": "symbol-ruler",
  "life-over": "watch",
  "age-unknown": "watch",
  "test-not-passed": "checklist",
  "snag-open": "note",
  "job-not-done": "calendar",
  "hold-shut": "lock",
  "line-unread": "question",
};
