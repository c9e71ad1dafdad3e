/** The server in this process, behind the two streams that a process of its own has: what starts one costs is saved. */
import type { Readable, Writable } from "node:stream";
import { PassThrough } from "node:stream";
import { createConnection, createProtocolConnection, ProposedFeatures } from "vscode-languageserver";
import { StreamMessageReader, StreamMessageWriter } from "vscode-languageserver/node";
import { nodeHost } from "../../../server/language-server/node-host.ts";
import { serve } from "../../../server/language-server/server.ts";

/** What a server is spoken to by, and the status that it ends with. */
export interface ServerStreams {
  readonly stdin: Writable;
  readonly stdout: Readable;
  readonly stderr?: Readable;
  readonly exit: Promise<number | null>;
}

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
