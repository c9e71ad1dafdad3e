/** The connection over standard input and output. */
import { Console } from "node:console";
import { Writable } from "node:stream";
import type { Connection } from "vscode-languageserver";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";

export function connectionOverStdio(): Connection {
  // What a package logs must not get between two messages.
  Object.assign(globalThis, { console: new Console(process.stderr) });
  return createConnection(ProposedFeatures.all, process.stdin, new WholeMessages(process.stdout));
}

/**
 * Writes the header of a message together with its content. Each of the two would cost a call of the system and wake the
 * client, which can do nothing with a header alone: a tenth of what a key costs.
 */
class WholeMessages extends Writable {
  private readonly output: Writable;
  private header: Buffer | undefined;

  constructor(output: Writable) {
    super();
    this.output = output;
    output.on("error", (error) => this.destroy(error));
    output.on("close", () => this.destroy());
  }

  override _write(chunk: Buffer, _: BufferEncoding, done: (error?: Error | null) => void): void {
    if (this.header === undefined && chunk.subarray(-END_OF_HEADER.length).equals(END_OF_HEADER)) {
      this.header = chunk;
      done();
      return;
    }
    const whole = this.header === undefined ? chunk : Buffer.concat([this.header, chunk]);
    this.header = undefined;
    this.output.write(whole, done);
  }

  override _final(done: (error?: Error | null) => void): void {
    this.output.end(done);
  }
}

const END_OF_HEADER = Buffer.from("\r\n\r\n");
