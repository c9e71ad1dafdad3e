import { nodeHost } from "../../language-server/node-host.ts";
import { serve as serveClient } from "../../language-server/server.ts";
import { connectionOverStdio } from "../../language-server/stdio.ts";
import { VERSION } from "../../language-server/version.ts";
import type { Command, ExitStatus } from "../command.ts";
import { Failure } from "../command.ts";
import { collectInSteps } from "../engine-settings.ts";

export const serve: Command = {
  name: "serve",
  operands: "",
  summary: "the language server, for any editor that speaks the protocol",
  options: [{ name: "stdio", help: "over standard input and output" }],
  examples: ["cotter serve --stdio"],
  run: ({ options }) => {
    if (!options.has("stdio")) throw new Failure("serve speaks over standard input and output: add --stdio");
    collectInSteps();
    serveClient(connectionOverStdio(), nodeHost, { name: "cotter", version: VERSION });
    // The connection ends the process, by the client's word or with its input.
    return new Promise<ExitStatus>(() => undefined);
  },
};
