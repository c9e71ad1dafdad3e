/** The extension in a browser: the same server in a worker, which reads its files through the editor. */
import type { ExtensionContext } from "vscode";
import { Uri, workspace } from "vscode";
import type { MessageTransports } from "vscode-languageclient/browser";
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from "vscode-languageclient/browser";
import { askToBeTold, clientOptions } from "./client-options.ts";
import { makeAtHome } from "./home.ts";
import { offerFiles } from "./offered-files.ts";
import { startInBackground } from "./start.ts";

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const script = Uri.joinPath(context.extensionUri, "dist/browser/server.js").toString(true);
  const schemes = schemesOfLogs();
  client = new LanguageClient(
    "cotter",
    "Cotter",
    () => Promise.resolve(startWorker(script)),
    clientOptions(schemes),
  );
  offerFiles(client);
  askToBeTold(client);
  makeAtHome(context, client, schemes);
  context.subscriptions.push(client);
  startInBackground(client);
}

export async function deactivate(): Promise<void> {
  // On its way up it cannot be stopped; it ends with its connection.
  if (client?.isRunning()) await client.stop();
}

/** A new worker for each start, so that the server can be started again. */
function startWorker(script: string): MessageTransports {
  // Not left to the library, which does not take the editor's own kind of worker for one.
  const worker = new Worker(script);
  return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
}

/** Those of the open folders: a browser knows files by many. Not `git:` and the like, which are no builds of their own. */
function schemesOfLogs(): readonly string[] {
  const ofFolders = (workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme);
  return [...new Set(["file", "untitled", "vscode-vfs", ...ofFolders])];
}
