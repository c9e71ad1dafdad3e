/** The server in this process, behind the two streams that a process of its own has: what starts one costs is saved. */
import { PassThrough } from "node:stream";
import { createConnection, createProtocolConnection, ProposedFeatures } from "vscode-languageserver";
import { StreamMessageReader, StreamMessageWriter } from "vscode-languageserver/node";
import { nodeHost } from "../../../server/language-server/node-host.ts";
import { serve } from "../../../server/language-server/server.ts";
import type { ServerStreams } from "./editor.ts";

export function serverHere(): ServerStreams {
  const [stdin, stdout] = [new PassThrough(), new PassThrough()];
  const exit = new Promise<number>((resolve) => {
    const connection = createConnection(
      (logger) =>
        createProtocolConnection(new StreamMessageReader(stdin), new StreamMessageWriter(stdout), logger),
      { shutdownReceived: false, initialize: () => undefined, exit: resolve },
      ProposedFeatures.all,
    );
    serve(connection, nodeHost, { name: "cotter" });
  });
  return { stdin, stdout, exit };
}
