/** The client with a server that runs in Node. */
import path from "node:path";
import type { ExtensionContext } from "vscode";
import type { ServerOptions } from "vscode-languageclient/node";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { clientOptions } from "./client-options.ts";
import type { AtWork } from "./first.ts";
import { goToWork } from "./home.ts";

export function startClient(context: ExtensionContext): AtWork {
  const schemes = ["file", "untitled", "vscode-vfs"];
  const client = new LanguageClient("cotter", "Cotter", serverOptions(context), clientOptions(schemes));
  return goToWork(context, client, schemes);
}

function serverOptions(context: ExtensionContext): ServerOptions {
  const module = context.asAbsolutePath(path.join("dist", "server.cjs"));
  const transport = TransportKind.ipc;
  return {
    run: { module, transport },
    debug: { module, transport, options: { execArgv: ["--nolazy", "--inspect=6049"] } },
  };
}
