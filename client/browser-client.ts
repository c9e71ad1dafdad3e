/** The client with a server in a worker of a browser, which reads its files through the editor. */
import type { ExtensionContext } from "vscode";
import { Uri, workspace } from "vscode";
import type { MessageTransports } from "vscode-languageclient/browser";
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from "vscode-languageclient/browser";
import { clientOptions } from "./client-options.ts";
import type { AtWork } from "./first.ts";
import { goToWork } from "./home.ts";
import { offerFiles } from "./offered-files.ts";

export function startClient(context: ExtensionContext): AtWork {
  const script = Uri.joinPath(context.extensionUri, "dist/browser/server.js").toString(true);
  const schemes = schemesOfLogs();
  const serverOptions = () => Promise.resolve(startWorker(script));
  const client = new LanguageClient("cotter", "Cotter", serverOptions, clientOptions(schemes));
  offerFiles(client);
  return goToWork(context, client, schemes);
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
