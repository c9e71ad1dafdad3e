/** *As it stands*: the tree of the vehicle, each thing with its state. */
import { l10n, MarkdownString, ThemeColor, ThemeIcon, workspace } from "vscode";
import type { BranchEntry } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import { daysInBrief } from "./days-in-brief.ts";
import { LiveTree } from "./live-tree.ts";
import type { Row } from "./row.ts";
import { KINDS, thingWords } from "./thing-words.ts";

export function asItStands(shown: ShownBuild): LiveTree {
  const rowsBelow = async (path: string | null): Promise<readonly Row[]> => {
    const entries = await shown.ask("cotter/branch", { path });
    return (entries ?? []).map((entry) => rowOf(shown, entry, rowsBelow));
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

function rowOf(
  shown: ShownBuild,
  entry: BranchEntry,
  rowsBelow: (path: string) => Promise<readonly Row[]>,
): Row {
  const { path, name, kind, title, critical, hasMore, spot } = entry;
  const words = thingWords(entry, daysInBrief(shown));
  const spoken = [title ?? name, KINDS[kind](), critical ? l10n.t("safety critical") : "", words];
  return {
    id: path,
    label: title ?? name,
    description: words,
    icon: iconOf(entry),
    spoken: spoken.filter((word) => word !== "").join(", "),
    spot,
    ...(hasMore ? { below: () => rowsBelow(path) } : {}),
  };
}

const PLAIN = { assembly: "folder", part: "symbol-field", joint: "link", system: "beaker", circuit: "plug" };
const UNSETTLED = { ...PLAIN, part: "tools", joint: "debug-disconnect" };

/** What is in order is a tick whatever it is; all else shows what kind of thing it is, coloured by its state. */
function iconOf({ kind, look }: BranchEntry): ThemeIcon {
  switch (look) {
    case "settled":
      return new ThemeIcon("pass", new ThemeColor("testing.iconPassed"));
    case "unsettled":
      return new ThemeIcon(UNSETTLED[kind], new ThemeColor("list.warningForeground"));
    case "condemned":
      return new ThemeIcon("circle-slash", new ThemeColor("list.errorForeground"));
    case "away":
      return new ThemeIcon("export", new ThemeColor("list.warningForeground"));
    case "plain":
      return new ThemeIcon(PLAIN[kind]);
  }
}
