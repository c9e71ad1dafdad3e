/** *As it stands*: the tree of the vehicle, each thing with its state. */
import { l10n, MarkdownString, ThemeColor, ThemeIcon, workspace } from "vscode";
import type { BranchEntry, Look } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import { LiveTree } from "./live-tree.ts";
import type { Row } from "./row.ts";

export function asItStands(shown: ShownBuild): LiveTree {
  const rowsBelow = async (path: string | null): Promise<readonly Row[]> => {
    const entries = await shown.ask("cotter/branch", { path });
    return (entries ?? []).map((entry) => rowOf(entry, rowsBelow));
  };
  return new LiveTree(shown, {
    id: "cotter.asItStands",
    roots: () => rowsBelow(null),
    describe: async ({ id }) => {
      const markdown = await shown.ask("cotter/describe", { path: id });
      return markdown === null ? undefined : new MarkdownString(markdown);
    },
    remark: restrictedModeNote,
  });
}

/** Undefined in a trusted folder. */
export function restrictedModeNote(): string | undefined {
  return workspace.isTrusted
    ? undefined
    : l10n.t(
        "Restricted Mode: the diary is checked as usual. Only git is not started, so history is not shown.",
      );
}

function rowOf(entry: BranchEntry, rowsBelow: (path: string) => Promise<readonly Row[]>): Row {
  const { path, name, kind, title, state, look, critical, hasMore, spot } = entry;
  const words = [KINDS[kind](), critical ? l10n.t("safety critical") : "", state];
  return {
    id: path,
    label: title ?? name,
    description: state,
    icon: iconOf(entry),
    spoken: `${title ?? name}, ${words.filter((word) => word !== "").join(", ")}, ${LOOKS[look]()}`,
    spot,
    ...(hasMore ? { below: () => rowsBelow(path) } : {}),
  };
}

const KINDS: Readonly<Record<BranchEntry["kind"], () => string>> = {
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

/** What is in order is a tick whatever it is; all else shows what kind of thing it is, coloured by its state. */
function iconOf({ kind, look }: BranchEntry): ThemeIcon {
  const icons = { assembly: "folder", part: "symbol-field", joint: "link", system: "beaker", circuit: "zap" };
  switch (look) {
    case "settled":
      return new ThemeIcon("pass", new ThemeColor("testing.iconPassed"));
    case "unsettled":
      return new ThemeIcon("circle-large-outline", new ThemeColor("list.warningForeground"));
    case "condemned":
      return new ThemeIcon("circle-slash", new ThemeColor("list.errorForeground"));
    case "away":
      return new ThemeIcon("export", new ThemeColor("list.warningForeground"));
    case "plain":
      return new ThemeIcon(icons[kind]);
  }
}
