/** Reports in panels: one for each report, which follows the build while it is seen. */
import type { Disposable, Uri as UriType, WebviewPanel } from "vscode";
import { l10n, Uri, ViewColumn, window } from "vscode";
import type { Report, ReportName } from "../../server/language-server/protocol.ts";
import { noBuildWords } from "../commands/no-build.ts";
import type { PanelType } from "../first.ts";
import { goTo } from "../go-to.ts";
import type { ShownBuild } from "../shown-build.ts";
import type { ToPage } from "./messages.ts";
import { readFromPage } from "./messages.ts";
import { allowedFragment, escaped, newNonce, panelPage } from "./page.ts";

const PANELS: PanelType = "cotter.report";

const REPORT_TITLES: Readonly<Record<ReportName, () => string>> = {
  order: () => l10n.t("Order list"),
  timeline: () => l10n.t("Build programme"),
  joints: () => l10n.t("Torque sheet"),
  outstanding: () => l10n.t("Outstanding"),
  costs: () => l10n.t("Costs"),
};

export class ReportPanels implements Disposable {
  private readonly shown: ShownBuild;
  private readonly extension: UriType;
  private readonly panels = new Map<ReportName, ReportPanel>();
  private readonly following: Disposable;

  /** @param extension the folder of the extension */
  constructor(shown: ShownBuild, extension: UriType) {
    this.shown = shown;
    this.extension = extension;
    this.following = shown.onDidChange(() => {
      for (const panel of this.panels.values()) void panel.refresh();
    });
  }

  /** A panel that was open when the editor was closed. */
  bringBack(panel: WebviewPanel, state: unknown): void {
    const name = reportOf(state);
    if (name === undefined || this.panels.has(name)) panel.dispose();
    else this.adopt(name, panel);
  }

  open(name: ReportName): void {
    const there = this.panels.get(name);
    if (there !== undefined) {
      there.panel.reveal();
      return;
    }
    const panel = window.createWebviewPanel(PANELS, REPORT_TITLES[name](), columnForReport(), {});
    this.adopt(name, panel);
  }

  /** The report of the panel that is active. */
  get active(): ReportName | undefined {
    return [...this.panels].find(([, { panel }]) => panel.active)?.[0];
  }

  dispose(): void {
    for (const { panel } of [...this.panels.values()]) panel.dispose();
    this.following.dispose();
  }

  private adopt(name: ReportName, panel: WebviewPanel): void {
    const media = Uri.joinPath(this.extension, "media");
    this.panels.set(name, new ReportPanel(this.shown, name, panel, media));
    panel.onDidDispose(() => this.panels.delete(name));
  }
}

function nothingToReport(shown: ShownBuild): Pick<Report, "fragment" | "spots"> {
  return { fragment: `<p>${escaped(noBuildWords(shown))}</p>`, spots: [] };
}

/** Beside the log, so that one sees what one's writing does. */
function columnForReport(): ViewColumn {
  return window.activeTextEditor === undefined ? ViewColumn.Active : ViewColumn.Beside;
}

function reportOf(state: unknown): ReportName | undefined {
  const name: unknown = (state as { name?: unknown } | undefined)?.name;
  return typeof name === "string" && Object.hasOwn(REPORT_TITLES, name) ? (name as ReportName) : undefined;
}

class ReportPanel {
  readonly panel: WebviewPanel;
  private readonly shown: ShownBuild;
  private readonly name: ReportName;
  private readonly nonce = newNonce();
  private isClosed = false;
  /** The report that the page has, and its number. */
  private sent: { readonly report: Pick<Report, "fragment" | "spots">; readonly number: number } | undefined;

  constructor(shown: ShownBuild, name: ReportName, panel: WebviewPanel, media: UriType) {
    this.shown = shown;
    this.name = name;
    this.panel = panel;
    const { webview } = panel;
    webview.options = { enableScripts: true, localResourceRoots: [media] };
    webview.onDidReceiveMessage((message: unknown) => this.hear(message));
    panel.onDidDispose(() => {
      this.isClosed = true;
    });
    panel.onDidChangeViewState(() => void this.refresh());
    webview.html = panelPage({
      nonce: this.nonce,
      script: webview.asWebviewUri(Uri.joinPath(media, "report.js")).toString(),
      style: webview.asWebviewUri(Uri.joinPath(media, "report.css")).toString(),
      title: REPORT_TITLES[name](),
      waiting: l10n.t("Reading the build…"),
    });
  }

  /** Sends the report as it is now, unless the page is hidden or has it. */
  async refresh(): Promise<void> {
    if (this.isClosed || !this.panel.visible) return;
    const report = await this.shown.ask("cotter/report", { report: this.name });
    // It may have been closed before the answer came.
    if (this.isClosed) return;
    if (report !== null) await this.send(report);
    else if (this.shown.overview === undefined) await this.send(nothingToReport(this.shown));
  }

  private async send(report: Pick<Report, "fragment" | "spots">): Promise<void> {
    if (report.fragment === this.sent?.report.fragment) return;
    const number = (this.sent?.number ?? 0) + 1;
    this.sent = { report, number };
    const fragment = allowedFragment(report.fragment, this.nonce);
    await this.panel.webview.postMessage({ fragment, number, name: this.name } satisfies ToPage);
  }

  private hear(message: unknown): void {
    const heard = readFromPage(message);
    if (heard?.is === "ready") {
      this.sent = undefined;
      void this.refresh();
    } else if (heard?.is === "go" && heard.report === this.sent?.number) {
      const spot = this.sent.report.spots[heard.spot];
      if (spot !== undefined) void goTo(this.shown, spot);
    }
  }
}
