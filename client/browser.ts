/** The extension in a browser: the same server in a worker, which reads its files through the editor. */
import type { ExtensionContext } from "vscode";
import { Uri, workspace } from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { offerFiles } from "./offered-files.ts";

let client: LanguageClient | undefined;

export async function activate({ extensionUri, subscriptions }: ExtensionContext): Promise<void> {
  const worker = new Worker(Uri.joinPath(extensionUri, "dist/browser/server.js").toString(true));
  client = new LanguageClient("cotter", "Cotter", worker, {
    documentSelector: schemes().map((scheme) => ({ language: "cotter", scheme })),
    synchronize: {
      configurationSection: "cotter",
      fileEvents: workspace.createFileSystemWatcher("**/*.cotter"),
    },
  });
  offerFiles(client);
  subscriptions.push(client);
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}

/** Those of the open folders: a browser knows files by many. Not `git:` and the like, which are no builds of their own. */
function schemes(): readonly string[] {
  const ofFolders = (workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme);
  return [...new Set(["file", "untitled", "vscode-vfs", ...ofFolders])];
}
