/** *Compare with revision*: asks for one among the newest commits, or as one types it. */
import type { QuickPickItem } from "vscode";
import { l10n, window } from "vscode";
import type { RecordedCommit } from "../../server/language-server/protocol.ts";
import { sayNoBuild } from "../commands/no-build.ts";
import type { ShownBuild } from "../shown-build.ts";
import type { ComparisonView } from "./comparison-view.ts";
import { sayRefusal } from "./refusal-words.ts";

export async function compareWithRevision(shown: ShownBuild, view: ComparisonView): Promise<void> {
  const commits = await shown.ask("cotter/commits", {});
  if (commits === null) return await sayNoBuild(shown);
  if (commits.is === "refused") return await sayRefusal(commits);
  const revision = await pickRevision(commits.value);
  if (revision !== undefined) await view.compare(revision);
}

interface Choice extends QuickPickItem {
  readonly revision: string;
}

function pickRevision(commits: readonly RecordedCommit[]): Promise<string | undefined> {
  const choices = commits.map(choiceOf);
  const box = window.createQuickPick<Choice>();
  box.title = l10n.t("Compare the build with a revision");
  box.placeholder = l10n.t("A commit, a branch, a tag, or a day such as 2026-05-02");
  box.matchOnDescription = true;
  box.items = choices;
  box.onDidChangeValue((value) => {
    const typed = value.trim();
    box.items = typed === "" ? choices : [...choices, choiceOfTyped(typed)];
  });
  return new Promise((resolve) => {
    box.onDidAccept(() => {
      resolve(box.activeItems[0]?.revision);
      box.hide();
    });
    box.onDidHide(() => {
      resolve(undefined);
      box.dispose();
    });
    box.show();
  });
}

function choiceOf({ id, short, day, author, subject }: RecordedCommit): Choice {
  return { label: `$(git-commit) ${subject}`, description: `${day} · ${author} · ${short}`, revision: id };
}

function choiceOfTyped(typed: string): Choice {
  return { label: l10n.t("Compare with “{0}”", typed), revision: typed, alwaysShow: true };
}
