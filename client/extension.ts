/** The extension: starts the language server when there is a build log, and stops it at the end. */
import path from "node:path";
import type { ExtensionContext } from "vscode";
import type { ServerOptions } from "vscode-languageclient/node";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { askToBeTold, clientOptions } from "./client-options.ts";
import { makeAtHome } from "./home.ts";
import { startInBackground } from "./start.ts";
import { offerCheckTask } from "./tasks/check-task.ts";

let client: LanguageClient | undefined;

export function activate(context: ExtensionContext): void {
  const schemes = ["file", "untitled", "vscode-vfs"];
  client = new LanguageClient("cotter", "Cotter", serverOptions(context), clientOptions(schemes));
  askToBeTold(client);
  makeAtHome(context, client, schemes);
  context.subscriptions.push(offerCheckTask(context.extensionUri), client);
  startInBackground(client);
}

export async function deactivate(): Promise<void> {
  // On its way up it cannot be stopped; it ends with its connection.
  if (client?.isRunning()) await client.stop();
}

function serverOptions(context: ExtensionContext): ServerOptions {
  const module = context.asAbsolutePath(path.join("dist", "server.cjs"));
  const transport = TransportKind.ipc;
  return {
    run: { module, transport },
    debug: { module, transport, options: { execArgv: ["--nolazy", "--inspect=6049"] } },
  };
}
