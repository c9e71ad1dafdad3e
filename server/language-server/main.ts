/** The server as a program of Node: over the channel that its arguments name (`--node-ipc`, `--stdio`, `--socket`, `--pipe`). */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { setEngine } from "./engine.ts";
import { nodeHost } from "./node-host.ts";
import { serve } from "./server.ts";
import { connectionOverStdio } from "./stdio.ts";
import { VERSION } from "./version.ts";

setEngine();
const connection = process.argv.includes("--stdio")
  ? connectionOverStdio()
  : createConnection(ProposedFeatures.all);
serve(connection, nodeHost, { name: "cotter", version: VERSION });
