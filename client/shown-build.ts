/** The build that the views show: that of the log in the active editor, else the last one that was, else the first. */
import type { Disposable, DocumentSelector, Event, TextDocument, TextEditor, Uri } from "vscode";
import { commands, EventEmitter, languages, window } from "vscode";
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

/** As the manifest's conditions have it: until it has answered for the first time, nothing is said of any build. */
type ServerContext = "answers" | "gone";

/** What a request takes beside the log, which is filled in here. */
type Rest<M extends keyof ViewRequests> = Omit<ViewRequests[M]["params"], "uri">;

export class ShownBuild implements Disposable {
  private readonly client: BaseLanguageClient;
  private readonly logs: DocumentSelector;
  private readonly changes = new EventEmitter<void>();
  private readonly subscriptions: Disposable[];
  private active: Uri | undefined;
  private known: BuildOverview | undefined;
  private forgetting: ReturnType<typeof setTimeout> | undefined;

  /** @param logs what is a log: not the two sides of a comparison, which are no builds of their own */
  constructor(client: BaseLanguageClient, logs: DocumentSelector) {
    this.client = client;
    this.logs = logs;
    this.active = this.logOf(window.activeTextEditor);
    this.subscriptions = [
      this.changes,
      client.onNotification(CHANGED, () => this.refresh()),
      client.onDidChangeState(({ newState }) => {
        clearTimeout(this.forgetting);
        if (newState === State.Running) void this.refresh();
        else if (newState !== State.Starting) this.forgetLater();
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

  /** A log of it, as the server knows it; null where none was active. */
  get log(): string | null {
    return this.active === undefined ? null : this.asLog(this.active);
  }

  /** A file as the server knows it. */
  asLog(file: Uri): string {
    return this.client.code2ProtocolConverter.asUri(file);
  }

  /** Whether there is a server that answers. */
  get isServed(): boolean {
    return this.client.isRunning();
  }

  isLog(document: TextDocument): boolean {
    return languages.match(this.logs, document) > 0;
  }

  /** Null where there is no such build, or no server to answer; one that is being started is waited for. */
  ask<M extends keyof ViewRequests>(method: M, rest: Rest<M>): Promise<ViewRequests[M]["result"] | null> {
    return this.askOf(this.log, method, rest);
  }

  /** The same of the build of some log. */
  async askOf<M extends keyof ViewRequests>(
    uri: string | null,
    method: M,
    rest: Rest<M>,
  ): Promise<ViewRequests[M]["result"] | null> {
    if (!(await this.isStarted())) return null;
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
    if (!this.isServed) return;
    const overview = await this.ask("cotter/overview", {});
    if (this.isServed) await this.show(overview ?? undefined);
  }

  dispose(): void {
    clearTimeout(this.forgetting);
    for (const subscription of this.subscriptions) subscription.dispose();
  }

  private async isStarted(): Promise<boolean> {
    while (this.client.state === State.Starting)
      await new Promise<void>((resolve) => {
        const hearing = this.client.onDidChangeState(() => {
          hearing.dispose();
          resolve();
        });
      });
    return this.client.isRunning();
  }

  private async show(overview: BuildOverview | undefined): Promise<void> {
    this.known = overview;
    const server: ServerContext = this.isServed ? "answers" : "gone";
    await commands.executeCommand("setContext", "cotter.server", server);
    await commands.executeCommand("setContext", "cotter.hasBuild", this.known !== undefined);
    this.changes.fire();
  }

  /** Of a server that does not come back nothing is shown: it would be taken for how things stand. */
  private forgetLater(): void {
    this.forgetting = setTimeout(() => {
      if (!this.client.isRunning()) void this.show(undefined);
    }, LONGEST_START);
  }

  private follow(editor: TextEditor | undefined): void {
    const log = this.logOf(editor);
    if (log === undefined || log.toString() === this.active?.toString()) return;
    this.active = log;
    void this.refresh();
  }

  private logOf(editor: TextEditor | undefined): Uri | undefined {
    return editor !== undefined && this.isLog(editor.document) ? editor.document.uri : undefined;
  }
}
