/** The extension: starts the language server when a build log is opened, and stops it at the end. */
import path from "node:path";
import type { ExtensionContext } from "vscode";
import { workspace } from "vscode";
import type { LanguageClientOptions, ServerOptions } from "vscode-languageclient/node";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";

let client: LanguageClient | undefined;

export async function activate(context: ExtensionContext): Promise<void> {
  client = new LanguageClient("cotter", "Cotter", serverOptions(context), clientOptions());
  context.subscriptions.push(client);
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}

function serverOptions(context: ExtensionContext): ServerOptions {
  const module = context.asAbsolutePath(path.join("dist", "server.cjs"));
  const transport = TransportKind.ipc;
  return {
    run: { module, transport },
    debug: { module, transport, options: { execArgv: ["--nolazy", "--inspect=6049"] } },
  };
}

function clientOptions(): LanguageClientOptions {
  return {
    // Not `git:` and the like: the two sides of a comparison are no builds of their own.
    documentSelector: [
      { language: "cotter", scheme: "file" },
      { language: "cotter", scheme: "untitled" },
      { language: "cotter", scheme: "vscode-vfs" },
    ],
    synchronize: {
      configurationSection: "cotter",
      fileEvents: workspace.createFileSystemWatcher("**/*.cotter"),
    },
  };
}
