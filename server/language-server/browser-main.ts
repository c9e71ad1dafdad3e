/** The server as a worker of a browser: it speaks with whoever started it by messages. */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  createConnection,
  ProposedFeatures,
} from "vscode-languageserver/browser";
import { browserHost } from "./browser-host.ts";
import { serve } from "./server.ts";
import { VERSION } from "./version.ts";

/** The worker itself: the types at hand are those of a page, whose `self` is a window. */
const worker = self as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];

const connection = createConnection(
  ProposedFeatures.all,
  new BrowserMessageReader(worker),
  new BrowserMessageWriter(worker),
);
serve(connection, browserHost(connection), { name: "cotter", version: VERSION });
