// A small client of the language server protocol: starts a server, talks to it over its standard streams, and counts
// the processor time that it takes.
import { spawn } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { plainEnvironment } from "./environment.mjs";

/** How long a server may take for one answer (ms). */
const LONGEST = 120_000;

export class LanguageClient {
  /** Calls by method: what the server asks or tells. */
  #hears = new Map();
  #waiting = new Map();
  #buffered = Buffer.alloc(0);
  #nextId = 1;
  #ended;

  /**
   * @param words arguments for Node
   * @param settings what the server is told when it asks for a section of the settings
   * @param environment variables beside those that are plain
   */
  constructor(words, settings = {}, environment = {}) {
    this.settings = settings;
    const env = plainEnvironment(environment);
    this.process = spawn(process.execPath, words, { stdio: ["pipe", "pipe", "pipe"], env });
    let complaints = "";
    this.process.stderr.setEncoding("utf8").on("data", (text) => (complaints += text));
    this.process.stdout.on("data", (chunk) => this.#read(chunk));
    this.process.stdin.on("error", () => undefined);
    this.#ended = new Promise((resolve) => {
      this.process.on("close", (code) => {
        const error = new Error(`the server ended with ${code}: ${complaints.slice(-500)}`);
        for (const { reject } of this.#waiting.values()) reject(error);
        resolve();
      });
    });
  }

  async start(root, { capabilities = {}, options = {} } = {}) {
    await this.ask("initialize", {
      processId: process.pid,
      rootUri: root,
      workspaceFolders: [{ uri: root, name: "bench" }],
      initializationOptions: options,
      capabilities,
    });
    this.tell("initialized", {});
    this.tell("workspace/didChangeConfiguration", { settings: this.settings });
  }

  ask(method, params) {
    const id = this.#nextId++;
    return new Promise((resolve, reject) => {
      const clock = setTimeout(() => reject(new Error(`no answer to ${method}`)), LONGEST);
      const done = (settle) => (value) => {
        clearTimeout(clock);
        this.#waiting.delete(id);
        settle(value);
      };
      this.#waiting.set(id, { resolve: done(resolve), reject: done(reject) });
      this.#send({ id, method, params });
    });
  }

  tell(method, params) {
    this.#send({ method, params });
  }

  /** Resolves with what the server tells next by a method. */
  next(method) {
    return new Promise((resolve, reject) => {
      const clock = setTimeout(() => reject(new Error(`nothing came of ${method}`)), LONGEST);
      this.#hears.set(method, (params) => {
        clearTimeout(clock);
        this.#hears.delete(method);
        resolve(params);
      });
    });
  }

  /** Processor time of the server so far, of all its threads (ms); undefined where the system does not tell. */
  processorTime() {
    try {
      const tasks = `/proc/${this.process.pid}/task`;
      const spent = readdirSync(tasks).map((task) =>
        Number(readFileSync(`${tasks}/${task}/schedstat`, "utf8").split(" ")[0]),
      );
      return spent.reduce((sum, one) => sum + one, 0) / 1e6;
    } catch {
      return undefined;
    }
  }

  /** What the server holds of the machine's memory (MB); undefined where the system does not tell. */
  memory() {
    try {
      const status = readFileSync(`/proc/${this.process.pid}/status`, "utf8");
      return Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1]) / 1024;
    } catch {
      return undefined;
    }
  }

  async stop() {
    const given = setTimeout(() => this.process.kill("SIGKILL"), 3000);
    await this.ask("shutdown", null).catch(() => undefined);
    this.tell("exit");
    await this.#ended;
    clearTimeout(given);
  }

  #send(message) {
    const body = JSON.stringify({ jsonrpc: "2.0", ...message });
    this.process.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  #read(chunk) {
    this.#buffered = this.#buffered.length === 0 ? chunk : Buffer.concat([this.#buffered, chunk]);
    for (;;) {
      const end = this.#buffered.indexOf("\r\n\r\n");
      if (end < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(this.#buffered.toString("latin1", 0, end))?.[1]);
      if (this.#buffered.length < end + 4 + length) return;
      const body = this.#buffered.toString("utf8", end + 4, end + 4 + length);
      this.#buffered = this.#buffered.subarray(end + 4 + length);
      this.#hear(JSON.parse(body));
    }
  }

  #hear({ id, method, params, result, error }) {
    if (method === undefined) {
      const waiting = this.#waiting.get(id);
      if (error === undefined) waiting?.resolve(result);
      else waiting?.reject(new Error(error.message));
      return;
    }
    if (id !== undefined) this.#send({ id, result: this.#answer(method, params) });
    this.#hears.get(method)?.(params);
  }

  #answer(method, params) {
    if (method !== "workspace/configuration") return null;
    return params.items.map(({ section }) => this.settings[section] ?? null);
  }
}
