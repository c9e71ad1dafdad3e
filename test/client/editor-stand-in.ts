/**
 * As much of the editor as the client's own steps need to be tried without one, in the place of the module that only an
 * editor has: `vi.mock("vscode", async () => await import("./editor-stand-in.ts"))`.
 */
import { posix } from "node:path";

export class EventEmitter<T> {
  private readonly listeners = new Set<(value: T) => void>();
  readonly event = (listener: (value: T) => void) => {
    this.listeners.add(listener);
    return { dispose: () => void this.listeners.delete(listener) };
  };
  fire(value: T): void {
    for (const listener of [...this.listeners]) listener(value);
  }
  dispose(): void {
    this.listeners.clear();
  }
}

export const Disposable = {
  from: (...parts: readonly { dispose: () => void }[]) => ({
    dispose: () => {
      for (const part of parts) part.dispose();
    },
  }),
};

interface UriParts {
  readonly scheme: string;
  readonly authority?: string;
  readonly path: string;
  readonly query?: string;
}

export class Uri {
  readonly scheme: string;
  readonly authority: string;
  readonly path: string;
  readonly query: string;
  private constructor({ scheme, authority = "", path, query = "" }: UriParts) {
    [this.scheme, this.authority, this.path, this.query] = [scheme, authority, path, query];
  }
  static from(parts: UriParts): Uri {
    return new Uri(parts);
  }
  static parse(text: string): Uri {
    const [, scheme = "", authority = "", path = ""] = /^([a-z-]+):(?:\/\/([^/]*))?(.*)$/.exec(text) ?? [];
    return new Uri({ scheme, authority, path });
  }
  static joinPath(folder: Uri, ...names: readonly string[]): Uri {
    return new Uri({ ...folder, path: posix.join(folder.path, ...names) });
  }
  toString(): string {
    const { scheme, authority, path, query } = this;
    const start = scheme === "file" || authority !== "" ? `${scheme}://${authority}` : `${scheme}:`;
    return start + path + (query === "" ? "" : `?${query}`);
  }
}

/** A panel that cannot be used once it is closed, as those of the editor. */
export class Panel {
  readonly posted: unknown[] = [];
  private readonly disposing = new EventEmitter<void>();
  private isDisposed = false;
  readonly onDidDispose = this.disposing.event;
  readonly onDidChangeViewState = new EventEmitter<void>().event;
  get visible(): boolean {
    return this.whileOpen(true);
  }
  get webview() {
    return this.whileOpen({
      onDidReceiveMessage: new EventEmitter<unknown>().event,
      asWebviewUri: (uri: Uri) => uri,
      postMessage: (message: unknown) => Promise.resolve(void this.posted.push(this.whileOpen(message))),
    });
  }
  dispose(): void {
    this.isDisposed = true;
    this.disposing.fire();
  }
  private whileOpen<T>(what: T): T {
    if (this.isDisposed) throw new Error("Webview is disposed");
    return what;
  }
}

export class WorkspaceEdit {
  readonly created: { readonly path: string; readonly contents: unknown }[] = [];
  readonly texts: string[] = [];
  createFile({ path }: Uri, { contents }: { readonly contents: unknown }): void {
    this.created.push({ path, contents });
  }
  insert(_: Uri, __: unknown, text: string): void {
    this.texts.push(text);
  }
}

export class FileSystemError extends Error {}

type PanelBringer = Readonly<
  Record<"deserializeWebviewPanel", (...given: readonly unknown[]) => Promise<void>>
>;

type DropProvider = Readonly<Record<"provideDocumentDropEdits", (...given: readonly unknown[]) => unknown>>;

/** What the editor was asked to do, and what it has. */
export const seen = {
  said: [] as string[],
  commands: [] as unknown[][],
  view: { description: "", message: "" },
  /** Of texts that are no files. */
  provider: undefined as unknown,
  /** Of what is dropped. */
  drop: undefined as DropProvider | undefined,
  panels: [] as Panel[],
  /** Who brings back panels that were open. */
  bringer: undefined as PanelBringer | undefined,
  /** Commands that the extension carries out. */
  handlers: new Map<string, (...args: unknown[]) => Promise<unknown>>(),
  /** Paths of the files that are there. */
  files: new Set<string>(),
};

export function forgetAll(): void {
  Object.assign(seen, { said: [], commands: [], provider: undefined, drop: undefined, panels: [] });
  seen.handlers.clear();
  seen.files.clear();
}

export const l10n = {
  t: (text: string, ...values: readonly unknown[]) =>
    text.replace(/\{(\d)\}/g, (_, index) => String(values[Number(index)])),
};

const nothing = { dispose: () => undefined };

export const commands = {
  registerCommand: (name: string, run: (...args: unknown[]) => Promise<unknown>) => {
    seen.handlers.set(name, run);
    return nothing;
  },
  executeCommand: (...words: unknown[]) => Promise.resolve(void seen.commands.push(words)),
};

export const languages = {
  match: () => 1,
  registerDocumentDropEditProvider: (_: unknown, provider: DropProvider) => {
    seen.drop = provider;
    return nothing;
  },
  registerDocumentPasteEditProvider: () => nothing,
};

const say = (words: string) => Promise.resolve(void seen.said.push(words));

export const window = {
  activeTextEditor: undefined,
  onDidChangeActiveTextEditor: new EventEmitter<unknown>().event,
  createTreeView: () =>
    Object.assign(seen.view, { visible: true, onDidChangeVisibility: () => nothing, ...nothing }),
  createWebviewPanel: () => {
    const panel = new Panel();
    seen.panels.push(panel);
    return panel;
  },
  registerWebviewPanelSerializer: (_: string, bringer: PanelBringer) => {
    seen.bringer = bringer;
    return nothing;
  },
  withProgress: <T>(_: unknown, work: () => Promise<T>) => work(),
  showInformationMessage: say,
  showWarningMessage: say,
  showErrorMessage: say,
};

const saving = new EventEmitter<{ languageId: string }>();

export function saveLog(): void {
  saving.fire({ languageId: "cotter" });
}

export const workspace = {
  onDidSaveTextDocument: saving.event,
  registerTextDocumentContentProvider: (_: string, provider: unknown) => {
    seen.provider = provider;
    return nothing;
  },
  fs: {
    isWritableFileSystem: (scheme: string) => (scheme === "file" ? true : undefined),
    stat: ({ scheme, path }: Uri) =>
      scheme === "file" && seen.files.has(path)
        ? Promise.resolve({})
        : Promise.reject(new FileSystemError(path)),
    readFile: ({ path }: Uri) => Promise.resolve(`bytes of ${path}`),
  },
};

export const env = { language: "en" };
export const DocumentDropOrPasteEditKind = { Empty: { append: () => "cotter.photo" } };
export const ProgressLocation = { Window: 10 };
export const TreeItemCollapsibleState = { None: 0, Collapsed: 1, Expanded: 2 };
export const ViewColumn = { Active: -1, Beside: -2 };
export class DocumentDropEdit {}
export class DocumentPasteEdit {}
export class ThemeColor {}
export class ThemeIcon {}
export class TreeItem {}
