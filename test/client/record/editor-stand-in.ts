/** What the record's part of the client uses of the editor, in the place of the module that only an editor has. */

type Listener<T> = (value: T) => void;

export class EventEmitter<T> {
  private readonly listeners = new Set<Listener<T>>();
  readonly event = (listener: Listener<T>) => {
    this.listeners.add(listener);
    return { dispose: () => void this.listeners.delete(listener) };
  };
  fire(value: T): void {
    for (const listener of this.listeners) listener(value);
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
  readonly path: string;
  readonly query: string;
}

export const Uri = {
  from: ({ scheme, path, query }: UriParts) => ({
    scheme,
    path,
    query,
    toString: () => `${scheme}:${path}?${query}`,
  }),
};

export const l10n = {
  t: (text: string, ...values: readonly unknown[]) =>
    text.replace(/\{(\d)\}/g, (_, index) => String(values[Number(index)])),
};

/** What the editor was asked to do. */
export const seen = {
  said: [] as string[],
  commands: [] as unknown[][],
  view: { description: "", message: "" },
  provider: undefined as unknown,
};

const saving = new EventEmitter<{ languageId: string }>();

export function saveLog(): void {
  saving.fire({ languageId: "cotter" });
}

export const commands = {
  executeCommand: (...words: unknown[]) => Promise.resolve(void seen.commands.push(words)),
};

const say = (words: string) => Promise.resolve(void seen.said.push(words));

export const window = {
  createTreeView: () => Object.assign(seen.view, { dispose: () => undefined }),
  withProgress: <T>(_: unknown, work: () => Promise<T>) => work(),
  showInformationMessage: say,
  showWarningMessage: say,
};

export const workspace = {
  onDidSaveTextDocument: saving.event,
  registerTextDocumentContentProvider: (_: string, provider: unknown) => {
    seen.provider = provider;
    return { dispose: () => undefined };
  },
};

export const ProgressLocation = { Window: 10 };
export const TreeItemCollapsibleState = { None: 0, Collapsed: 1, Expanded: 2 };
export class TreeItem {}
export class ThemeColor {}
export class ThemeIcon {}
