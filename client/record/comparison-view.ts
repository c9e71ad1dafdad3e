/** *What changed*: a comparison with a revision, in the terms of the build; it is there until it is closed. */
import type { Disposable, TreeDataProvider, TreeView } from "vscode";
import {
  commands,
  EventEmitter,
  l10n,
  ProgressLocation,
  ThemeColor,
  ThemeIcon,
  TreeItem,
  TreeItemCollapsibleState,
  window,
  workspace,
} from "vscode";
import type {
  BuildComparison,
  ChangeEntry,
  ChangesGroup,
  ViewRequests,
} from "../../server/language-server/protocol.ts";
import { sayNoBuild } from "../commands/no-build.ts";
import type { ShownBuild } from "../shown-build.ts";
import { sayRefusal } from "./refusal-words.ts";

const VIEW = "cotter.changes";

interface Asked {
  /** A log of the build. */
  readonly log: string | null;
  readonly revision: string;
}

interface Shown {
  readonly asked: Asked;
  readonly comparison: BuildComparison;
}

type Answer = ViewRequests["cotter/compare"]["result"] | null;

type Row = ChangesGroup | ChangeEntry;

export class ComparisonView implements TreeDataProvider<Row>, Disposable {
  private readonly build: ShownBuild;
  private readonly view: TreeView<Row>;
  private readonly changed = new EventEmitter<void>();
  private readonly subscriptions: Disposable[];
  /** What is shown, or will be once it is answered. */
  private asked: Asked | undefined;
  private shown: Shown | undefined;
  /** Questions are counted, so that an answer that was overtaken by a later one is left out. */
  private questions = 0;
  private answered = 0;

  constructor(build: ShownBuild) {
    this.build = build;
    this.view = window.createTreeView(VIEW, { treeDataProvider: this, showCollapseAll: true });
    this.subscriptions = [
      this.view,
      this.changed,
      workspace.onDidSaveTextDocument(({ languageId }) => {
        if (languageId === "cotter") void this.refresh();
      }),
    ];
  }

  get onDidChangeTreeData() {
    return this.changed.event;
  }

  /** Compares the build that is shown, as it is now, with a revision. */
  async compare(revision: string): Promise<void> {
    const asked: Asked = { log: this.build.log, revision };
    this.asked = asked;
    const title = l10n.t("Comparing with {0}…", revision.slice(0, LONGEST_NAME));
    const answer = await window.withProgress({ location: ProgressLocation.Window, title }, () =>
      this.answerTo(asked),
    );
    if (asked !== this.asked) return;
    if (answer === null || answer?.is === "refused") {
      this.asked = this.shown?.asked;
      return answer === null ? await sayNoBuild(this.build) : await sayRefusal(answer);
    }
    if (answer !== undefined) await this.show({ asked, comparison: answer.value });
    await commands.executeCommand(`${VIEW}.focus`);
  }

  async close(): Promise<void> {
    this.asked = undefined;
    await this.show(undefined);
  }

  getChildren(row?: Row): Row[] {
    if (row === undefined) return [...(this.shown?.comparison.groups ?? [])];
    return "changes" in row ? [...row.changes] : [];
  }

  getTreeItem(row: Row): TreeItem {
    return "changes" in row ? itemOfGroup(row) : itemOfChange(row, this.shown?.asked.log ?? null);
  }

  dispose(): void {
    for (const subscription of this.subscriptions) subscription.dispose();
  }

  /** The same comparison, of what has been saved since. */
  private async refresh(): Promise<void> {
    const { asked } = this;
    if (asked === undefined) return;
    const answer = await this.answerTo(asked);
    if (answer?.is === "recorded") await this.show({ asked, comparison: answer.value });
  }

  /** Undefined of an answer that comes too late: something else was asked for, or a later question was answered. */
  private async answerTo(asked: Asked): Promise<Answer | undefined> {
    const question = ++this.questions;
    const answer = await this.build.askOf(asked.log, "cotter/compare", { from: asked.revision, to: null });
    if (asked !== this.asked || question < this.answered) return undefined;
    this.answered = question;
    return answer;
  }

  private async show(shown: Shown | undefined): Promise<void> {
    this.shown = shown;
    this.view.description = shown === undefined ? "" : sinceWhen(shown.comparison);
    this.view.message = shown === undefined ? "" : summary(shown.comparison);
    await commands.executeCommand("setContext", "cotter.hasComparison", shown !== undefined);
    this.changed.fire();
  }
}

const LONGEST_NAME = 20;

function sinceWhen({ from: { day } }: BuildComparison): string {
  return l10n.t("since {0}", day ?? "");
}

function summary({ from: { short, hasBuild }, groups }: BuildComparison): string {
  const changes = groups.flatMap((group) => group.changes);
  const standOut = changes.filter(({ standsOut }) => standsOut).length;
  const compared = hasBuild
    ? l10n.t("Compared with {0}.", short ?? "")
    : l10n.t("There was nothing of this build at {0}: all of it is new.", short ?? "");
  const counted =
    changes.length === 0
      ? l10n.t("Nothing has changed in the terms of the build.")
      : l10n.t("Changes: {0}. To be looked at first: {1}.", changes.length, standOut);
  return `${compared} ${counted}`;
}

function itemOfGroup({ heading, changes }: ChangesGroup): TreeItem {
  const grave = changes.some(({ standsOut }) => standsOut);
  const item = new TreeItem(heading, TreeItemCollapsibleState[grave ? "Expanded" : "Collapsed"]);
  item.id = heading;
  item.description = String(changes.length);
  item.iconPath = grave ? new ThemeIcon("warning", WARNING) : new ThemeIcon("folder");
  return item;
}

const WARNING = new ThemeColor("list.warningForeground");

function itemOfChange(change: ChangeEntry, log: string | null): TreeItem {
  const item = new TreeItem(change.thing, TreeItemCollapsibleState.None);
  const words = [change.change, values(change)].filter((word) => word !== "").join(": ");
  const refs = change.refs.filter((ref) => ref !== change.thing).join(", ");
  item.description = refs === "" ? words : `${words} · ${refs}`;
  item.tooltip = [change.thing, refs, words].filter((line) => line !== "").join("\n");
  item.iconPath = iconOf(change);
  item.accessibilityInformation = { label: `${change.thing}, ${words}` };
  if (change.at !== null)
    item.command = { command: "cotter.showChange", title: "", arguments: [log, change.at] };
  return item;
}

function values({ before, after }: ChangeEntry): string {
  if (before === null) return after ?? "";
  return after === null ? before : `${before} → ${after}`;
}

function iconOf({ before, after, standsOut }: ChangeEntry): ThemeIcon {
  const icon = before === null ? "diff-added" : after === null ? "diff-removed" : "diff-modified";
  return standsOut ? new ThemeIcon(icon, WARNING) : new ThemeIcon(icon);
}
