/**
 * A small editor: starts a server, as a process unless one in this process will do, speaks the protocol to it over its
 * standard input and output, and keeps what it is told. Framing and numbering are its own, so that the server is not tested with its own library.
 */
import { spawn } from "node:child_process";
import { pathToFileURL } from "node:url";
import type { Program } from "./bundle.ts";
import { bundleOf } from "./bundle.ts";
import type { ServerStreams } from "./server-here.ts";
import { serverHere } from "./server-here.ts";

export interface EditorOptions {
  /** The bundle that is started as the server, or the file of another; "here" for the server in this process. */
  readonly program?: Program | "here" | { readonly file: string };
  readonly capabilities?: object;
  /** Absolute paths of the folders that are open. */
  readonly folders?: readonly string[];
  /** The section `cotter` of the settings. */
  readonly settings?: object;
  readonly initializationOptions?: object;
}

export interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

export interface ShownDiagnostic {
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
  readonly severity: number;
  readonly code: string;
  readonly message: string;
}

/** An answer of the server that is an error. */
export class AnsweredError extends Error {
  readonly code: number;

  constructor(code: number, message: string) {
    super(message);
    this.code = code;
  }
}

/** ms; only to end a test that would hang. */
const LONGEST_SILENCE = 30_000;

type Waiting = { readonly resolve: (value: unknown) => void; readonly reject: (error: Error) => void };

export class Editor {
  readonly messages: Message[] = [];
  /** The newest diagnostics by URI, where the server sends them. */
  readonly diagnostics = new Map<string, readonly ShownDiagnostic[]>();
  capabilities: Record<string, unknown> = {};
  stderr = "";
  readonly exit: Promise<number | null>;
  private readonly server: ServerStreams;
  private readonly options: EditorOptions;
  private readonly waiting = new Map<number, Waiting>();
  private readonly watchers = new Set<() => void>();
  private readonly versions = new Map<string, number>();
  private received = Buffer.alloc(0);
  private numbers = 0;

  private constructor(server: ServerStreams, options: EditorOptions) {
    this.server = server;
    this.options = options;
    this.exit = server.exit;
    server.stdout.on("data", (data: Buffer) => this.receive(data));
    server.stderr?.on("data", (data: Buffer) => {
      this.stderr += data.toString();
    });
    void this.exit.then(() => {
      for (const { reject } of this.waiting.values())
        reject(new Error(`the server has ended\n${this.stderr}`));
    });
  }

  static async start(options: EditorOptions = {}): Promise<Editor> {
    const { program = "server" } = options;
    const editor = new Editor(program === "here" ? serverHere() : await started(program), options);
    const folders = (options.folders ?? []).map((folder) => ({ uri: uriOf(folder), name: folder }));
    const result = (await editor.request("initialize", {
      processId: process.pid,
      rootUri: folders[0]?.uri ?? null,
      workspaceFolders: folders,
      capabilities: options.capabilities ?? {},
      initializationOptions: options.initializationOptions,
    })) as { capabilities: Record<string, unknown> };
    editor.capabilities = result.capabilities;
    editor.notify("initialized", {});
    return editor;
  }

  async request<R = unknown>(method: string, params: unknown): Promise<R> {
    return (await this.asking(method, params).answer) as R;
  }

  /** A request that can be called off by its number. */
  asking(method: string, params: unknown): { readonly id: number; readonly answer: Promise<unknown> } {
    const id = ++this.numbers;
    const answer = new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
    this.send({ id, method, params });
    return { id, answer };
  }

  notify(method: string, params: unknown): void {
    this.send({ method, params });
  }

  open(uri: string, text: string): void {
    this.versions.set(uri, 1);
    this.notify("textDocument/didOpen", {
      textDocument: { uri, languageId: "cotter", version: 1, text },
    });
  }

  /** Sends several messages so that the server gets them at once. */
  together<T>(send: () => T): T {
    this.server.stdin.cork();
    const result = send();
    this.server.stdin.uncork();
    return result;
  }

  /** Replaces a stretch of a line, or inserts at a place. */
  change(uri: string, line: number, from: number, to: number, text: string): void {
    const version = (this.versions.get(uri) ?? 0) + 1;
    this.versions.set(uri, version);
    const range = { start: { line, character: from }, end: { line, character: to } };
    this.notify("textDocument/didChange", {
      textDocument: { uri, version },
      contentChanges: [{ range, text }],
    });
  }

  /** Resolves once the diagnostics of a file are as asked; those that came before count too. */
  async until(uri: string, isSo: (diagnostics: readonly ShownDiagnostic[]) => boolean): Promise<void> {
    await this.untilTrue(() => {
      const shown = this.diagnostics.get(uri);
      return shown !== undefined && isSo(shown);
    });
  }

  /** Resolves once something is so; gives up, with what the server has said, when it is silent for too long. */
  async untilTrue(isSo: () => boolean): Promise<void> {
    if (isSo()) return;
    await new Promise<void>((resolve, reject) => {
      const giveUp = () =>
        reject(new Error(`it never came to that: ${JSON.stringify([...this.diagnostics])}`));
      const alarm = setTimeout(giveUp, LONGEST_SILENCE);
      const watcher = () => {
        if (!isSo()) return;
        clearTimeout(alarm);
        this.watchers.delete(watcher);
        resolve();
      };
      this.watchers.add(watcher);
      void this.exit.then(() => reject(new Error(`the server has ended\n${this.stderr}`)));
    });
  }

  /** Ends the server in the order of the protocol; gives its exit status. */
  async stop(): Promise<number | null> {
    await this.request("shutdown", undefined);
    this.notify("exit", undefined);
    return await this.exit;
  }

  /** Ends the server's input, as when an editor dies. */
  hangUp(): void {
    this.server.stdin.end();
  }

  private send(message: object): void {
    const body = Buffer.from(JSON.stringify({ jsonrpc: "2.0", ...message }));
    this.server.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.server.stdin.write(body);
  }

  private receive(data: Buffer): void {
    this.received = Buffer.concat([this.received, data]);
    for (;;) {
      const head = this.received.indexOf("\r\n\r\n");
      if (head < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(this.received.subarray(0, head).toString())?.[1]);
      if (this.received.length < head + 4 + length) return;
      const body = this.received.subarray(head + 4, head + 4 + length).toString();
      this.received = this.received.subarray(head + 4 + length);
      this.handle(JSON.parse(body) as Message);
    }
  }

  private handle(message: Message): void {
    this.messages.push(message);
    const { id, method, params } = message;
    if (method === undefined) this.settle(message);
    else if (id !== undefined) this.send({ id, result: this.answerTo(method, params) });
    else if (method === "textDocument/publishDiagnostics") {
      const { uri, diagnostics } = params as { uri: string; diagnostics: ShownDiagnostic[] };
      this.diagnostics.set(uri, diagnostics);
    }
    for (const watcher of [...this.watchers]) watcher();
  }

  private settle({ id, result, error }: Message): void {
    const waiting = this.waiting.get(id as number);
    this.waiting.delete(id as number);
    if (error === undefined) waiting?.resolve(result);
    else waiting?.reject(new AnsweredError(error.code, error.message));
  }

  private answerTo(method: string, params: unknown): unknown {
    if (method !== "workspace/configuration") return null;
    return (params as { items: unknown[] }).items.map(() => this.options.settings ?? null);
  }
}

async function started(program: Program | { readonly file: string }): Promise<ServerStreams> {
  const words = program === "cotter" ? ["serve", "--stdio"] : ["--stdio"];
  const file = typeof program === "object" ? program.file : await bundleOf(program);
  const server = spawn(process.execPath, [file, ...words]);
  const { stdin, stdout, stderr } = server;
  return { stdin, stdout, stderr, exit: new Promise((resolve) => server.on("exit", resolve)) };
}

export function uriOf(file: string): string {
  return pathToFileURL(file).href;
}
