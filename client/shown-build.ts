/** The build that the views show: that of the log in the active editor, else the last one that was, else the first. */
import type { Disposable, Event, TextEditor, Uri } from "vscode";
import { commands, EventEmitter, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { State } from "vscode-languageclient";
import type {
  BuildOverview,
  Spot,
  ViewNotifications,
  ViewRequests,
} from "../server/language-server/protocol.ts";

const CHANGED: keyof ViewNotifications = "cotter/buildChanged";

/** ms in which a server that ended is running again. */
const LONGEST_START = 10_000;

/** What a request takes beside the log, which is filled in here. */
type Rest<M extends keyof ViewRequests> = Omit<ViewRequests[M]["params"], "uri">;

export class ShownBuild implements Disposable {
  private readonly client: BaseLanguageClient;
  private readonly changes = new EventEmitter<void>();
  private readonly subscriptions: Disposable[];
  private log: Uri | undefined;
  private known: BuildOverview | undefined;

  constructor(client: BaseLanguageClient) {
    this.client = client;
    this.log = logOf(window.activeTextEditor);
    this.subscriptions = [
      this.changes,
      client.onNotification(CHANGED, () => this.refresh()),
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) void this.refresh();
        else if (newState === State.Stopped) this.forgetLater();
      }),
      window.onDidChangeActiveTextEditor((editor) => this.follow(editor)),
    ];
  }

  /** Told when what is shown may have changed. */
  get onDidChange(): Event<void> {
    return this.changes.event;
  }

  /** As it was told last; undefined while there is no build. */
  get overview(): BuildOverview | undefined {
    return this.known;
  }

  /** Null where there is no such build, or the server is not there to answer. */
  async ask<M extends keyof ViewRequests>(
    method: M,
    rest: Rest<M>,
  ): Promise<ViewRequests[M]["result"] | null> {
    if (!this.client.isRunning()) return null;
    const uri = this.log === undefined ? null : this.client.code2ProtocolConverter.asUri(this.log);
    try {
      return await this.client.sendRequest(method, { ...rest, uri });
    } catch (error) {
      this.client.outputChannel.appendLine(`${method}: ${error instanceof Error ? error.message : error}`);
      return null;
    }
  }

  uriOf({ uri }: Pick<Spot, "uri">): Uri {
    return this.client.protocol2CodeConverter.asUri(uri);
  }

  async refresh(): Promise<void> {
    // While the server is being started again, what is shown stays.
    if (!this.client.isRunning()) return;
    await this.show((await this.ask("cotter/overview", {})) ?? undefined);
  }

  dispose(): void {
    for (const subscription of this.subscriptions) subscription.dispose();
  }

  private async show(overview: BuildOverview | undefined): Promise<void> {
    this.known = overview;
    await commands.executeCommand("setContext", "cotter.hasBuild", this.known !== undefined);
    this.changes.fire();
  }

  /** Of a server that does not come back nothing is shown: it would be taken for how things stand. */
  private forgetLater(): void {
    setTimeout(() => {
      if (!this.client.isRunning()) void this.show(undefined);
    }, LONGEST_START);
  }

  private follow(editor: TextEditor | undefined): void {
    const log = logOf(editor);
    if (log === undefined || log.toString() === this.log?.toString()) return;
    this.log = log;
    void this.refresh();
  }
}

function logOf(editor: TextEditor | undefined): Uri | undefined {
  return editor?.document.languageId === "cotter" ? editor.document.uri : undefined;
}
