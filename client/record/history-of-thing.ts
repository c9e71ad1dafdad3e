/** *History of this thing*: what the log said of the thing at the cursor, and when; a choice leads to that commit. */
import type { QuickPickItem } from "vscode";
import { l10n, ProgressLocation, window } from "vscode";
import type { RecordedStatement, TwoSided } from "../../server/language-server/protocol.ts";
import { sayNoBuild } from "../commands/no-build.ts";
import type { ShownBuild } from "../shown-build.ts";
import { sayRefusal } from "./refusal-words.ts";
import { showTwoSided } from "./show-two-sided.ts";

export async function historyOfThing(shown: ShownBuild): Promise<void> {
  const { log } = shown;
  const editor = window.activeTextEditor;
  if (editor === undefined || log === null || !shown.isLog(editor.document)) return await sayWhere();
  const { line, character } = editor.selection.active;
  const ref = await shown.askOf(log, "cotter/thingAt", { line, character });
  if (ref === null) return await (shown.isServed ? sayWhere() : sayNoBuild(shown));
  const title = l10n.t("Reading the history of {0}…", ref);
  const history = await window.withProgress({ location: ProgressLocation.Window, title }, () =>
    shown.askOf(log, "cotter/history", { ref }),
  );
  if (history === null) return await sayNoBuild(shown);
  if (history.is === "refused") return await sayRefusal(history);
  const { statements, earlierNames, title: named } = history.value;
  const chosen = await window.showQuickPick([...statements].reverse().map(choiceOf), {
    title: l10n.t("History of {0}", named === null ? ref : `${named} (${ref})`),
    placeHolder:
      earlierNames.length === 0
        ? l10n.t("Newest first. A choice shows what that commit changed.")
        : l10n.t("Called {0} before. A choice shows what that commit changed.", earlierNames.join(", ")),
    matchOnDescription: true,
    matchOnDetail: true,
  });
  if (chosen !== undefined) await showTwoSided(shown, log, chosen.at);
}

async function sayWhere(): Promise<void> {
  await window.showInformationMessage(l10n.t("Put the cursor on a part, a joint or a reading first."));
}

interface Choice extends QuickPickItem {
  readonly at: TwoSided;
}

const ICONS: Readonly<Record<RecordedStatement["is"], string>> = {
  written: "diff-added",
  altered: "diff-modified",
  "taken out": "diff-removed",
};

function choiceOf(statement: RecordedStatement): Choice {
  const { is, says, was, day, at } = statement;
  const details = [was === null ? "" : l10n.t("was: {0}", was), written(statement)];
  return {
    label: `$(${ICONS[is]}) ${says}`,
    description: day ?? "",
    detail: details.filter((detail) => detail !== "").join(" · "),
    at,
  };
}

function written({ commit, daysLater }: RecordedStatement): string {
  if (commit === null) return l10n.t("not committed yet");
  const { day, author, subject } = commit;
  const by = l10n.t("{0} by {1}: {2}", day, author, subject);
  if (daysLater === null) return by;
  const later =
    daysLater === 1 ? l10n.t("the day after it tells of") : l10n.t("{0} days after it tells of", daysLater);
  return `${by} · ${later}`;
}
