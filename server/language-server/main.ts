/** The server as a program of Node: over the channel that its arguments name (`--node-ipc`, `--stdio`, `--socket`, `--pipe`). */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { nodeHost } from "./node-host.ts";
import { serve } from "./server.ts";
import { VERSION } from "./version.ts";

serve(createConnection(ProposedFeatures.all), nodeHost, { name: "cotter", version: VERSION });
