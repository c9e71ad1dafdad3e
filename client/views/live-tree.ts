/** A native tree view of rows that follows the build: read again when it is seen and something has changed. */
import type { CancellationToken, Disposable, MarkdownString, TreeDataProvider, TreeView } from "vscode";
import { EventEmitter, TreeItem, TreeItemCollapsibleState, window } from "vscode";
import type { ShownBuild } from "../shown-build.ts";
import { namesInBrief } from "./in-brief.ts";
import type { Row } from "./row.ts";

export interface LiveTreeOptions {
  readonly id: string;
  readonly roots: () => Promise<readonly Row[]>;
  /** What is told of a row that has no tooltip. */
  readonly describe?: (row: Row) => Promise<MarkdownString | undefined>;
  /** A remark above the rows, worked out with them. */
  readonly remark?: () => string | undefined;
}

export class LiveTree implements TreeDataProvider<Row>, Disposable {
  readonly view: TreeView<Row>;
  private readonly options: LiveTreeOptions;
  private readonly shown: ShownBuild;
  private readonly changes = new EventEmitter<void>();
  private readonly subscriptions: Disposable[];
  private stale = false;

  constructor(shown: ShownBuild, options: LiveTreeOptions) {
    this.options = options;
    this.shown = shown;
    this.view = window.createTreeView(options.id, { treeDataProvider: this, showCollapseAll: true });
    this.subscriptions = [
      this.view,
      this.changes,
      shown.onDidChange(() => this.refresh()),
      this.view.onDidChangeVisibility(({ visible }) => {
        if (visible && this.stale) this.refresh();
      }),
    ];
    this.refresh();
  }

  get onDidChangeTreeData() {
    return this.changes.event;
  }

  async getChildren(row?: Row): Promise<Row[]> {
    return inBrief(await (row === undefined ? this.options.roots() : (row.below?.() ?? [])));
  }

  getTreeItem({ id, label, description, icon, spoken, tooltip, spot, below, open = false }: Row): TreeItem {
    const item = new TreeItem(label, below === undefined ? LEAF : open ? OPEN : CLOSED);
    item.id = id;
    item.description = description;
    item.iconPath = icon;
    item.accessibilityInformation = { label: spoken };
    if (tooltip !== undefined) item.tooltip = tooltip;
    if (spot !== null) item.command = { command: "cotter.goTo", title: "", arguments: [spot] };
    return item;
  }

  async resolveTreeItem(item: TreeItem, row: Row, token: CancellationToken): Promise<TreeItem> {
    const told = await this.options.describe?.(row);
    if (told !== undefined && !token.isCancellationRequested) item.tooltip = told;
    return item;
  }

  dispose(): void {
    for (const subscription of this.subscriptions) subscription.dispose();
  }

  private refresh(): void {
    this.view.description = this.shown.overview?.name ?? "";
    const remark = this.options.remark?.();
    if (remark === undefined) delete this.view.message;
    else this.view.message = remark;
    this.stale = !this.view.visible;
    if (this.view.visible) this.changes.fire();
  }
}

/** A name gives way to the fact behind it. */
function inBrief(rows: readonly Row[]): Row[] {
  const labels = namesInBrief(rows.map(({ label }) => label));
  return rows.map((row, index) =>
    row.description === "" ? row : { ...row, label: labels[index] ?? row.label },
  );
}

const { None: LEAF, Collapsed: CLOSED, Expanded: OPEN } = TreeItemCollapsibleState;
