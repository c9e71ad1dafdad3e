/** The one status item: how much is open before the next hold point. */
import type { Disposable } from "vscode";
import { l10n, StatusBarAlignment, window } from "vscode";
import type { BuildOverview } from "../server/language-server/protocol.ts";
import type { ShownBuild } from "./shown-build.ts";
import { restrictedModeNote } from "./views/as-it-stands.ts";

export function showStatus(shown: ShownBuild): Disposable {
  const item = window.createStatusBarItem("cotter.open", StatusBarAlignment.Left, 5);
  item.name = l10n.t("Cotter: open before the next hold point");
  item.command = "cotter.stillOpen.focus";
  const show = () => {
    const { overview } = shown;
    if (overview === undefined || overview.next === null) {
      item.hide();
      return;
    }
    const words = statusWords(overview.next);
    item.text = `${overview.next.open === 0 ? "$(pass)" : "$(lock)"} ${words}`;
    item.tooltip = tooltipOf(overview, overview.next).join("\n");
    item.accessibilityInformation = { label: words };
    item.show();
  };
  const following = shown.onDidChange(show);
  show();
  return {
    dispose: () => {
      following.dispose();
      item.dispose();
    },
  };
}

type Next = NonNullable<BuildOverview["next"]>;

function statusWords({ title, open }: Next): string {
  return open === 0 ? l10n.t("{0}: nothing open", title) : l10n.t("{0}: {1} open", title, open);
}

function tooltipOf({ name, toOrder }: BuildOverview, next: Next): readonly string[] {
  const lines = [
    name,
    holdWords(next),
    next.isWhole
      ? l10n.t("{0} still open, {1} to order", next.open, toOrder)
      : l10n.t("{0} still open before it, {1} to order", next.open, toOrder),
    restrictedModeNote() ?? "",
  ];
  return lines.filter((line) => line !== "");
}

function holdWords({ title, planned, isWhole }: Next): string {
  if (isWhole) return l10n.t("No hold point is written yet");
  return planned === null
    ? l10n.t("Next hold point: {0}", title)
    : l10n.t("Next hold point: {0}, planned for {1}", title, planned);
}
