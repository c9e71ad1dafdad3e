// The side of an editor in a conversation with the built server, which may also say what no editor should. Written
// without the server's own library, so that both cannot be wrong alike.
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { program } from "./programs.mjs";

/** After this long without an answer the server counts as hung (ms). */
const HUNG = 60_000;

/** Answers that are no fault: invalid request or params, unknown method, called off, text changed since, refused. */
const EXPECTED_ERRORS = new Set([-32600, -32601, -32602, -32700, -32800, -32801, -32803]);

/** Words for Node by which a server tells at a signal what it holds after a collection. */
export const PROBED = [
  "--expose-gc",
  "--import",
  fileURLToPath(new URL("../bench/heap-probe.mjs", import.meta.url)),
];

/** How a message that is none is refused. */
const REFUSAL =
  /^(?:Notification handler '[^']*' failed|Received message which is neither|Received response message|Received empty message)/;

export class RawClient {
  /** Errors that a server should never have: what it wrote of itself, and answers of an inner failure. */
  faults = [];
  /** What it wrote of messages that it could not take for one. */
  refusals = [];
  #waiting = new Map();
  #received = Buffer.alloc(0);
  #next = 1;
  #stderr = "";
  #hung;

  /**
   * @param words arguments for Node
   * @param wrap a program that runs it, with its arguments
   * @param hung how long it may take for an answer (ms)
   */
  constructor({ words = [], wrap = [], env = process.env, hung = HUNG } = {}) {
    this.#hung = hung;
    const [first, ...rest] = [...wrap, process.execPath, ...words, program("server"), "--stdio"];
    this.process = spawn(first, rest, { stdio: ["pipe", "pipe", "pipe"], env });
    this.process.stdin.on("error", () => undefined);
    this.process.stderr
      .setEncoding("utf8")
      .on("data", (text) => (this.#stderr = (this.#stderr + text).slice(-2000)));
    this.process.stdout.on("data", (chunk) => this.#receive(chunk));
    this.ended = new Promise((resolve) => {
      this.process.on("close", (code) => {
        for (const { reject } of this.#waiting.values())
          reject(new Error(`the server ended with ${code}: ${this.#stderr}`));
        resolve(code);
      });
    });
  }

  async start(folderUri, options = {}) {
    const { capabilities } = await this.ask("initialize", {
      processId: null,
      rootUri: folderUri,
      workspaceFolders: [{ uri: folderUri, name: "log" }],
      initializationOptions: options,
      capabilities: { textDocument: { diagnostic: {}, rename: { prepareSupport: true } } },
    });
    this.tell("initialized", {});
    return capabilities;
  }

  /** Resolves with the result; with undefined for an error that an editor must expect. */
  ask(method, params) {
    return this.asked(method, params).answer;
  }

  /** The same with the number of the request, to call it off by. */
  asked(method, params) {
    const id = this.#next++;
    const answer = new Promise((resolve, reject) => {
      const clock = setTimeout(() => reject(new Error(`no answer to ${method}`)), this.#hung);
      const settle = (end) => (value) => {
        clearTimeout(clock);
        this.#waiting.delete(id);
        end(value);
      };
      this.#waiting.set(id, { method, resolve: settle(resolve), reject: settle(reject) });
    });
    this.send({ jsonrpc: "2.0", id, method, params });
    return { id, answer };
  }

  tell(method, params) {
    this.send({ jsonrpc: "2.0", method, params });
  }

  send(message) {
    this.sendBody(JSON.stringify(message));
  }

  /** Anything at all, framed as a message. */
  sendBody(body) {
    this.process.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  /** What the server holds of the machine's memory (MB); undefined where the system does not tell. */
  memory() {
    try {
      const status = readFileSync(`/proc/${this.process.pid}/status`, "utf8");
      return Math.round(Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1]) / 1024);
    } catch {
      return undefined;
    }
  }

  /** What a probed server holds after a collection (MB). */
  heap() {
    return new Promise((resolve, reject) => {
      const clock = setTimeout(() => reject(new Error("the probe does not answer")), HUNG);
      let heard = "";
      const hear = (text) => {
        heard += text;
        const bytes = /heap (\d+)\n/.exec(heard)?.[1];
        if (bytes === undefined) return;
        clearTimeout(clock);
        this.process.stderr.off("data", hear);
        resolve(Number((Number(bytes) / 1024 ** 2).toFixed(1)));
      };
      this.process.stderr.on("data", hear);
      this.process.kill("SIGUSR2");
    });
  }

  /** Ends the conversation as an editor does. Resolves with the exit status. */
  async stop() {
    const clock = setTimeout(() => this.process.kill("SIGKILL"), 10_000);
    await this.ask("shutdown", null).catch(() => undefined);
    this.tell("exit");
    const code = await this.ended;
    clearTimeout(clock);
    return code;
  }

  #receive(chunk) {
    this.#received = Buffer.concat([this.#received, chunk]);
    for (;;) {
      const end = this.#received.indexOf("\r\n\r\n");
      if (end < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(this.#received.toString("latin1", 0, end))?.[1]);
      if (this.#received.length < end + 4 + length) return;
      const body = this.#received.toString("utf8", end + 4, end + 4 + length);
      this.#received = this.#received.subarray(end + 4 + length);
      this.#hear(JSON.parse(body));
    }
  }

  #hear({ id, method, params, result, error }) {
    if (method !== undefined) {
      if (id !== undefined) this.send({ jsonrpc: "2.0", id, result: null });
      if (method === "window/logMessage" && params.type === 1)
        (REFUSAL.test(params.message) ? this.refusals : this.faults).push(params.message);
      return;
    }
    const waiting = this.#waiting.get(id);
    if (waiting === undefined) return;
    if (error !== undefined && !EXPECTED_ERRORS.has(error.code))
      this.faults.push(`${waiting.method}: ${error.code} ${error.message}`);
    waiting.resolve(error === undefined ? result : undefined);
  }
}
