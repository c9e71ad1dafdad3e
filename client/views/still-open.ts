/** *Still open*: the hold points, and below each what keeps it shut. */
import { l10n, ThemeColor, ThemeIcon } from "vscode";
import type { HoldEntry, OpenEntry } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import { LiveTree } from "./live-tree.ts";
import type { Row } from "./row.ts";

export function stillOpen(shown: ShownBuild): LiveTree {
  return new LiveTree(shown, {
    id: "cotter.stillOpen",
    roots: async () => {
      const holds = (await shown.ask("cotter/stillOpen", {})) ?? [];
      const next = holds.findIndex(({ released, open }) => !released && open.length > 0);
      return holds.map((hold, index) => rowOfHold(hold, index === next));
    },
  });
}

function rowOfHold(hold: HoldEntry, isNext: boolean): Row {
  const { ref, title, planned, state, spot, open } = hold;
  const aim = planned === null ? "" : l10n.t("planned for {0}", planned);
  const words = [state, aim].filter((word) => word !== "").join(", ");
  return {
    id: ref,
    label: title,
    description: words,
    icon: iconOfHold(hold),
    tooltip: `${title} (${ref})\n${words}`,
    spoken: `${l10n.t("hold point")} ${title}, ${words}`,
    spot,
    open: isNext,
    ...(open.length === 0 ? {} : { below: async () => rowsOfOpen(ref, open) }),
  };
}

function iconOfHold({ released, open }: HoldEntry): ThemeIcon {
  if (open.length === 0 && released) return new ThemeIcon("unlock", new ThemeColor("testing.iconPassed"));
  if (open.length === 0) return new ThemeIcon("pass", new ThemeColor("testing.iconPassed"));
  return new ThemeIcon("lock", new ThemeColor("list.warningForeground"));
}

function rowsOfOpen(hold: string, open: readonly OpenEntry[]): readonly Row[] {
  const seen = new Map<string, number>();
  return open.map((entry) => {
    const key = `${hold} ${entry.ref} ${entry.message}`;
    const before = seen.get(key) ?? 0;
    seen.set(key, before + 1);
    return rowOfOpen(entry, `${key} ${before}`);
  });
}

function rowOfOpen({ ref, title, message, critical, spot }: OpenEntry, id: string): Row {
  const label = title ?? (ref === "" ? l10n.t("The log") : ref);
  const caution = critical ? `, ${l10n.t("safety critical")}` : "";
  return {
    id,
    label,
    description: message,
    icon: critical
      ? new ThemeIcon("shield", new ThemeColor("list.warningForeground"))
      : new ThemeIcon("circle-large-outline"),
    tooltip: `${label}${ref === "" || ref === label ? "" : ` (${ref})`}${caution}\n${message}`,
    spoken: `${label}${caution}, ${message}`,
    spot,
  };
}
