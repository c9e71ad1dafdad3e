/** What one connection to an editor holds: what the editor can do, its settings, and the workspace. */
import type { CancellationToken, ClientCapabilities, Connection } from "vscode-languageserver";
import { LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { relativeTo } from "../workspace/file-store.ts";
import { Workspace } from "../workspace/workspace.ts";
import type { Host } from "./host.ts";
import { Records } from "./records.ts";
import type { Settings, StartOptions } from "./settings.ts";
import { decoded, normalUri } from "./uri.ts";
import { FileView } from "./view.ts";

/** What has changed a build: the typing in an open file, or anything else. */
export type ChangedBy = "typing" | "others";

export class Session {
  readonly connection: Connection;
  readonly host: Host;
  readonly client: ClientCapabilities;
  readonly rulesPage: string | undefined;
  readonly workspace: Workspace;
  readonly records: Records;
  settings: Settings;
  /** Called when builds may have changed. */
  readonly onChanged = new Set<(by: ChangedBy) => void>();
  /** Set where tokens went out by a build that has been overtaken: they are sent again once things are quiet. */
  tokensAreOld = false;
  /** Called when a file has been closed, with its path. */
  readonly onClosed = new Set<(path: string) => void>();
  /** The editor's own spelling of the URIs of files it has opened, by their normal form. */
  private readonly spelling = new Map<string, string>();
  /** The URI that was last asked about. */
  private latest: { readonly uri: string; readonly path: string } | undefined;

  constructor(connection: Connection, host: Host, client: ClientCapabilities, options: StartOptions) {
    this.connection = connection;
    this.host = host;
    this.client = client;
    this.rulesPage = options.rulesPage;
    this.settings = options.settings;
    this.workspace = new Workspace({
      files: host.files,
      clock: host.today,
      nameWithin: (folder, path) => decoded(relativeTo(folder, path)),
      onChange: () => this.changed("others"),
      onTrouble: (message) => this.connection.console.warn(message),
    });
    this.records = new Records(host, options.trusted, (error) => this.report(error));
    this.workspace.setSeverities(options.settings.severity);
  }

  useSettings(settings: Settings): void {
    this.settings = settings;
    this.workspace.setSeverities(settings.severity);
    this.changed("others");
  }

  /** Builds may have changed: whoever shows something of them is told. */
  changed(by: ChangedBy): void {
    for (const listener of this.onChanged) listener(by);
  }

  /** The path of a file by the URI that the editor uses, which is remembered. */
  pathOf(uri: string): string {
    const path = this.normalUri(uri);
    if (path !== uri) this.spelling.set(path, uri);
    return path;
  }

  /** Several times for each key it is the same file. */
  private normalUri(uri: string): string {
    if (this.latest?.uri !== uri) this.latest = { uri, path: normalUri(uri) };
    return this.latest.path;
  }

  /** The URI by which the editor knows a file. */
  uriOf(path: string): string {
    return this.spelling.get(path) ?? path;
  }

  /** A file in its build, as things stand now. */
  view(uri: string): FileView | undefined {
    const path = this.pathOf(uri);
    const snapshot = this.workspace.buildOf(path);
    const log = snapshot?.log(path);
    return snapshot === undefined || log === undefined
      ? undefined
      : new FileView(snapshot, log, (of) => this.uriOf(of));
  }

  /**
   * Answers a request about one file. What has come in since is heard first: a request that was called off, or whose
   * text is no longer the one it was asked about, gets no answer. A feature that fails answers nothing and is logged.
   *
   * @param nothing the answer where there is no such file, or the feature fails
   */
  async answer<R>(
    uri: string,
    token: CancellationToken,
    nothing: R,
    compute: (view: FileView) => R,
  ): Promise<R> {
    const version = this.workspace.versionOf(this.pathOf(uri));
    await this.host.turn();
    await this.workspace.settled();
    return this.answerNow(uri, version, token, nothing, compute);
  }

  /** The same where the text alone decides: it does not wait for the rest of the build to be found. */
  async answerFromText<R>(
    uri: string,
    token: CancellationToken,
    nothing: R,
    compute: (view: FileView) => R,
  ): Promise<R> {
    const version = this.workspace.versionOf(this.pathOf(uri));
    await this.host.turn();
    return this.answerNow(uri, version, token, nothing, compute);
  }

  private answerNow<R>(
    uri: string,
    version: number | undefined,
    token: CancellationToken,
    nothing: R,
    compute: (view: FileView) => R,
  ): R {
    this.stopIfCancelled(token);
    if (this.workspace.versionOf(this.pathOf(uri)) !== version)
      throw new ResponseError(LSPErrorCodes.ContentModified, "the text has changed since");
    return this.guarded(nothing, () => {
      const view = this.view(uri);
      return view === undefined ? nothing : compute(view);
    });
  }

  /** Answers a request about all builds. */
  async answerOfAll<R>(token: CancellationToken, nothing: R, compute: () => R): Promise<R> {
    await this.host.turn();
    await this.workspace.settled();
    this.stopIfCancelled(token);
    return this.guarded(nothing, compute);
  }

  /** The same with what is found out meanwhile, as from git; `signal` is given when the request is called off. */
  async answerMeanwhile<R>(
    token: CancellationToken,
    nothing: R,
    compute: (signal: AbortSignal) => Promise<R>,
  ): Promise<R> {
    await this.host.turn();
    await this.workspace.settled();
    this.stopIfCancelled(token);
    const off = new AbortController();
    const hearing = token.onCancellationRequested(() => off.abort());
    try {
      return await compute(off.signal);
    } catch (error) {
      return this.failed(error, nothing);
    } finally {
      hearing.dispose();
      this.stopIfCancelled(token);
    }
  }

  stopIfCancelled(token: CancellationToken): void {
    if (token.isCancellationRequested)
      throw new ResponseError(LSPErrorCodes.RequestCancelled, "the request was called off");
  }

  private guarded<R>(nothing: R, compute: () => R): R {
    try {
      return compute();
    } catch (error) {
      return this.failed(error, nothing);
    }
  }

  private failed<R>(error: unknown, nothing: R): R {
    if (error instanceof ResponseError) throw error;
    this.report(error);
    return nothing;
  }

  /** Writes an error of the server itself to the editor's log. */
  report(error: unknown): void {
    this.connection.console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
}
