/** *Still open*: the hold points, and below each what keeps it shut. */
import { l10n, ThemeColor, ThemeIcon } from "vscode";
import type { HoldEntry, OpenEntry } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import type { InBrief } from "./days-in-brief.ts";
import { daysInBrief } from "./days-in-brief.ts";
import { LiveTree } from "./live-tree.ts";
import { OPEN_ICONS, openWords } from "./open-words.ts";
import type { Row } from "./row.ts";

export function stillOpen(shown: ShownBuild): LiveTree {
  const inBrief = daysInBrief(shown);
  return new LiveTree(shown, {
    id: "cotter.stillOpen",
    roots: async () => {
      const holds = (await shown.ask("cotter/stillOpen", {})) ?? [];
      const next = holds.findIndex(({ released, open }) => released === null && open.length > 0);
      return holds.map((hold, index) => rowOfHold(hold, index === next, inBrief));
    },
  });
}

function rowOfHold(hold: HoldEntry, isNext: boolean, inBrief: InBrief): Row {
  const { ref, title, planned, spot, open, isWhole } = hold;
  const words = holdWords(hold, inBrief);
  const inFull = [
    holdWords(hold, (day) => day),
    planned === null ? "" : l10n.t("planned for {0}", planned),
  ].filter((word) => word !== "");
  return {
    id: ref,
    label: title,
    description: words,
    icon: iconOfHold(hold),
    tooltip: `${isWhole ? title : `${title} (${ref})`}\n${inFull.join(", ")}`,
    spoken: `${isWhole ? "" : `${l10n.t("hold point")} `}${title}, ${inFull.join(", ")}`,
    spot,
    open: isNext,
    ...(open.length === 0 ? {} : { below: async () => rowsOfOpen(ref, open, inBrief) }),
  };
}

/** `3 open`; `released 8 Oct`; `lapsed 3 Nov, 2 open`. */
function holdWords({ released, lapsed, open, isWhole }: HoldEntry, inBrief: InBrief): string {
  const count = open.length === 0 ? "" : l10n.t("{0} open", open.length);
  if (isWhole) return [count || l10n.t("nothing open"), l10n.t("no hold point yet")].join(", ");
  const state =
    released !== null
      ? l10n.t("released {0}", inBrief(released))
      : lapsed !== null
        ? l10n.t("lapsed {0}", inBrief(lapsed))
        : open.length === 0
          ? l10n.t("ready to be released")
          : "";
  return [state, count].filter((word) => word !== "").join(", ");
}

function iconOfHold({ released, open, isWhole }: HoldEntry): ThemeIcon {
  if (isWhole) return new ThemeIcon("checklist");
  if (open.length > 0) return new ThemeIcon("lock", new ThemeColor("list.warningForeground"));
  return new ThemeIcon(released === null ? "pass" : "unlock", new ThemeColor("testing.iconPassed"));
}

function rowsOfOpen(hold: string, open: readonly OpenEntry[], inBrief: InBrief): readonly Row[] {
  const seen = new Map<string, number>();
  return open.map((entry) => {
    const key = `${hold} ${entry.ref} ${entry.message}`;
    const before = seen.get(key) ?? 0;
    seen.set(key, before + 1);
    return rowOfOpen(entry, `${key} ${before}`, inBrief);
  });
}

function rowOfOpen(
  { ref, title, why, message, critical, spot }: OpenEntry,
  id: string,
  inBrief: InBrief,
): Row {
  const name = title ?? (ref === "" ? l10n.t("The log") : ref);
  const words = openWords(why, inBrief);
  const caution = critical ? `, ${l10n.t("safety critical")}` : "";
  return {
    id,
    label: name,
    description: words + caution,
    icon: critical
      ? new ThemeIcon("shield", new ThemeColor("list.warningForeground"))
      : new ThemeIcon(OPEN_ICONS[why.code]),
    tooltip: `${name}${ref === "" || ref === name ? "" : ` (${ref})`}${caution}\n${message}`,
    spoken: `${name}, ${words}${caution}`,
    spot,
  };
}
