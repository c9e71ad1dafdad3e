/**
 * What is there from the first moment, so that the editor need not wait for more to have the extension activated: every
 * command, and whoever brings back a panel. The rest, with the library that speaks to the server, is loaded in a turn of
 * its own, and what was asked for meanwhile waits for it.
 */
import type { Disposable, ExtensionContext, WebviewPanel } from "vscode";
import { commands, l10n, window } from "vscode";

/** The commands by the names in the manifest, and two behind rows of the views. */
export const COMMANDS = [
  "goTo",
  "startDiary",
  "newDay",
  "newPart",
  "insertPhoto",
  "openOrder",
  "openTimeline",
  "openJoints",
  "openOutstanding",
  "openCosts",
  "saveReport",
  "saveBook",
  "checkReading",
  "compareWithRevision",
  "closeComparison",
  "showChange",
  "historyOfThing",
  "openExample",
  "restartServer",
] as const;

export type Handlers = Readonly<Record<(typeof COMMANDS)[number], (...args: never[]) => unknown>>;

/** Of every panel; the manifest's conditions name it. */
export type PanelType = "cotter.report";
const PANELS: PanelType = "cotter.report";

/** The extension at work, once all of it is loaded. */
export interface AtWork {
  readonly handlers: Handlers;
  /** A panel that was open when the editor was closed. */
  readonly bringBack: (panel: WebviewPanel, state: unknown) => void;
  readonly outputChannel: { readonly appendLine: (line: string) => void };
  readonly stop: () => Promise<void>;
}

/** @param load loads the rest, and starts the server */
export function beginWith({ subscriptions }: ExtensionContext, load: () => Promise<AtWork>): Promise<AtWork> {
  const began = performance.now();
  const loading = nextTurn().then(load);
  loading.then(
    ({ outputChannel }) =>
      outputChannel.appendLine(
        `loaded ${Math.round(performance.now() - began)} ms after the extension was called`,
      ),
    sayNotLoaded,
  );
  subscriptions.push(...COMMANDS.map((name) => offerCommand(name, loading)), takeBackPanels(loading));
  return loading;
}

/** So that nothing of the loading is done before the editor goes on with what else it has to do. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve);
  });
}

function offerCommand(name: keyof Handlers, loading: Promise<AtWork>): Disposable {
  return commands.registerCommand(`cotter.${name}`, async (...args: never[]) => {
    const { handlers } = await loading;
    return await handlers[name](...args);
  });
}

function takeBackPanels(loading: Promise<AtWork>): Disposable {
  return window.registerWebviewPanelSerializer(PANELS, {
    deserializeWebviewPanel: async (panel, state: unknown) => (await loading).bringBack(panel, state),
  });
}

function sayNotLoaded(error: unknown): void {
  const reason = error instanceof Error ? error.message : String(error);
  void window.showErrorMessage(l10n.t("Cotter could not be loaded: {0}", reason));
}
