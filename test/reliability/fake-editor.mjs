// A seeded fake editor: it types, undoes, closes, renames, asks and calls off in any order, and says things that no
// editor should. In the end the server must say of the texts what a fresh one says of them.
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { applied, chanceOf, offsetOf } from "./edited-text.mjs";
import { AT_PLACE, MALFORMED, OF_FILE, PIECES, VIEWS } from "./fake-words.mjs";
import { root } from "./figures.mjs";
import { PROBED, RawClient } from "./raw-client.mjs";

/** How often each thing is done, of the sum of all. */
const DOINGS = [
  [60, "type"],
  [8, "undo"],
  [2, "replaceAll"],
  [12, "ask"],
  [4, "callOff"],
  [2, "close"],
  [2, "write"],
  [1, "rename"],
  [2, "malformed"],
  [2, "outOfTurn"],
];

export class FakeEditor {
  counts = { edits: 0, requests: 0, calledOff: 0, malformed: 0, outOfTurn: 0, files: 0, comparisons: 0 };
  faults = [];
  /** Of the server (MB), at each comparison. */
  memory = [];
  /** Of a probed server: what it holds after a collection (MB), each time that all is closed and as it was. */
  heaps = [];
  #open = new Map();
  #undo = [];
  #pending = [];
  #probed;

  /** @param sample a folder of `samples/`, which is copied */
  constructor({ seed, sample, probed = false }) {
    this.#probed = probed;
    this.chance = chanceOf(seed);
    this.original = path.join(root, "samples", sample);
    this.folder = mkdtempSync(path.join(tmpdir(), "cotter-reliability-"));
    cpSync(this.original, this.folder, { recursive: true });
    this.client = new RawClient({ words: probed ? PROBED : [] });
  }

  /** Works until so many edits are done, or the time is over; looks at the end, and every so many edits. */
  async work({ edits, until = Number.POSITIVE_INFINITY, compareEvery = 1000 }) {
    const each = DOINGS.flatMap(([weight, name]) => Array.from({ length: weight }, () => name));
    try {
      await this.client.start(pathToFileURL(this.folder).href);
      await this.client.ask("workspace/diagnostic", { previousResultIds: [] });
      while (this.counts.edits < edits && Date.now() < until) {
        const goal = Math.min(edits, this.counts.edits + compareEvery);
        while (this.counts.edits < goal && Date.now() < until) {
          await this[each[this.chance(each.length)]]();
          if (this.#pending.length > 20) await this.#answered();
        }
        await this.#answered();
        await this.compare();
        this.memory.push(this.client.memory());
        this.#startOver();
        if (this.#probed) {
          await this.client.ask("workspace/diagnostic", { previousResultIds: [] });
          this.heaps.push(await this.client.heap());
        }
      }
      const status = await this.client.stop();
      if (status !== 0) this.faults.push(`the server ended with ${status}`);
    } catch (error) {
      this.faults.push(error.message);
      this.client.process.kill("SIGKILL");
    } finally {
      this.faults.push(...this.client.faults);
      const { refusals } = this.client;
      if (refusals.length > this.counts.malformed)
        this.faults.push(`more refused than malformed: ${refusals.at(-1)}`);
      rmSync(this.folder, { recursive: true, force: true });
    }
  }

  // What it does.

  type() {
    const file = this.#someOpen();
    const changes = Array.from({ length: 1 + this.chance(2) }, () => this.#replacement(file));
    this.#change(file, changes);
  }

  undo() {
    const last = this.#undo.pop();
    const file = last === undefined ? undefined : this.#open.get(last.uri);
    if (file !== undefined) this.#change(file, [{ text: last.text }]);
  }

  replaceAll() {
    const file = this.#someOpen();
    this.#change(file, [{ text: this.#originalOf(file.uri) }]);
  }

  ask() {
    this.#request();
  }

  callOff() {
    const { id } = this.#request();
    this.client.tell("$/cancelRequest", { id });
    this.counts.calledOff++;
  }

  close() {
    const file = this.#someOpen();
    this.#open.delete(file.uri);
    this.client.tell("textDocument/didClose", { textDocument: { uri: file.uri } });
  }

  /** Another program, or the editor, writes a file. */
  write() {
    const file = this.#someFile();
    const text = readFileSync(file, "utf8");
    const at = this.chance(text.length + 1);
    const uri = pathToFileURL(file).href;
    writeFileSync(file, this.#open.get(uri)?.text ?? text.slice(0, at) + this.#piece() + text.slice(at));
    this.client.tell("workspace/didChangeWatchedFiles", { changes: [{ uri, type: 2 }] });
    this.counts.files++;
  }

  rename() {
    const from = this.#someFile();
    if (this.#open.has(pathToFileURL(from).href)) return;
    const to = path.join(path.dirname(from), `renamed-${this.chance(1000)}.cotter`);
    if (existsSync(to)) return;
    const [oldUri, newUri] = [from, to].map((each) => pathToFileURL(each).href);
    renameSync(from, to);
    if (this.chance(2) === 0) this.client.tell("workspace/didRenameFiles", { files: [{ oldUri, newUri }] });
    else
      this.client.tell("workspace/didChangeWatchedFiles", {
        changes: [
          { uri: newUri, type: 1 },
          { uri: oldUri, type: 3 },
        ],
      });
    this.counts.files++;
  }

  malformed() {
    this.client.sendBody(MALFORMED[this.chance(MALFORMED.length)]);
    this.counts.malformed++;
  }

  /** Notifications that come when they should not: of files that are not open, or open already; an older version. */
  outOfTurn() {
    this.counts.outOfTurn++;
    const uri = pathToFileURL(this.#someFile()).href;
    const known = this.#open.get(uri);
    const kind = this.chance(4);
    if (kind === 0 && known === undefined)
      this.client.tell("textDocument/didChange", {
        textDocument: { uri, version: 7 },
        contentChanges: [{ text: "?" }],
      });
    else if (kind === 1 && known === undefined)
      this.client.tell("textDocument/didClose", { textDocument: { uri } });
    else if (kind === 2 && known !== undefined) this.#openFile(uri, known.text);
    else if (known !== undefined) {
      known.version -= 5;
      this.#change(known, [this.#replacement(known)]);
    }
  }

  /** Whether the server says what a fresh one says of the same files and open texts. */
  async compare() {
    this.counts.comparisons++;
    const fresh = new RawClient();
    await fresh.start(pathToFileURL(this.folder).href);
    for (const { uri, text } of this.#open.values())
      fresh.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text } });
    let [ours, theirs] = ["", "-"];
    // Photos are looked for after the first answer: both are asked until they agree or it is plain that they do not.
    for (let round = 0; round < 40 && ours !== theirs; round++) {
      if (round > 0) await new Promise((resolve) => setTimeout(resolve, 50));
      [ours, theirs] = await Promise.all([this.client, fresh].map(shownBy));
    }
    if (ours !== theirs)
      this.faults.push(`after ${this.counts.edits} edits: ${firstDifference(ours, theirs)}`);
    await fresh.stop();
  }

  // How.

  #change(file, contentChanges) {
    this.#undo.push({ uri: file.uri, text: file.text });
    if (this.#undo.length > 50) this.#undo.shift();
    for (const change of contentChanges) file.text = applied(file.text, change);
    file.version++;
    const textDocument = { uri: file.uri, version: file.version };
    this.client.tell("textDocument/didChange", { textDocument, contentChanges });
    this.counts.edits++;
  }

  /** A place of the text as it will be for the first of several changes; the protocol cuts off what is beyond. */
  #replacement({ text }) {
    const start = this.#place(text);
    const wide = this.chance(12) === 0;
    const end = wide
      ? { line: start.line + this.chance(4), character: this.chance(40) }
      : { line: start.line, character: start.character + this.chance(4) };
    const [from, to] = [offsetOf(text, start), offsetOf(text, end)];
    return { range: from <= to ? { start, end } : { start, end: start }, text: this.#piece() };
  }

  #place(text) {
    const lines = text.split(/\r\n|\n|\r/);
    const line = this.chance(lines.length + (this.chance(50) === 0 ? 5 : 0));
    return { line, character: this.chance((lines[line] ?? "").length + 2) };
  }

  #piece() {
    return PIECES[this.chance(PIECES.length)];
  }

  #request() {
    const { uri, text } = this.#someOpen();
    const textDocument = { uri };
    const position = this.#place(text);
    const range = { start: { line: 0, character: 0 }, end: position };
    const options = { tabSize: 2, insertSpaces: true };
    const requests = [
      ...AT_PLACE.map((method) => [
        method,
        { textDocument, position, context: { includeDeclaration: true } },
      ]),
      ...OF_FILE.map((method) => [method, { textDocument }]),
      ...VIEWS.map((method) => [method, { uri, path: null, report: "order" }]),
      ["textDocument/codeAction", { textDocument, range, context: { diagnostics: [] } }],
      ["textDocument/inlayHint", { textDocument, range }],
      ["textDocument/semanticTokens/range", { textDocument, range }],
      ["textDocument/formatting", { textDocument, options }],
      ["textDocument/rangeFormatting", { textDocument, range, options }],
      ["textDocument/onTypeFormatting", { textDocument, position, ch: "\n", options }],
      ["textDocument/selectionRange", { textDocument, positions: [position] }],
      [
        "textDocument/rename",
        { textDocument, position, newName: this.chance(2) === 0 ? "renamed" : "not a name" },
      ],
      ["workspace/symbol", { query: "d" }],
      ["workspace/diagnostic", { previousResultIds: [] }],
      ["cotter/calculate", { uri, expression: "1 mm + 2 mm" }],
    ];
    const [method, params] = requests[this.chance(requests.length)];
    const asked = this.client.asked(method, params);
    this.#pending.push(asked.answer);
    this.counts.requests++;
    return asked;
  }

  #someFile() {
    const names = readdirSync(this.folder, { recursive: true }).filter((name) => name.endsWith(".cotter"));
    return path.join(this.folder, names.sort()[this.chance(names.length)]);
  }

  /** An open file; another one is opened now and then. */
  #someOpen() {
    if (this.#open.size === 0 || this.chance(30) === 0) {
      const file = this.#someFile();
      const uri = pathToFileURL(file).href;
      if (!this.#open.has(uri)) this.#openFile(uri, readFileSync(file, "utf8"));
    }
    const open = [...this.#open.values()];
    return open[this.chance(open.length)];
  }

  #openFile(uri, text) {
    this.#open.set(uri, { uri, text, version: 1 });
    this.client.tell("textDocument/didOpen", {
      textDocument: { uri, languageId: "cotter", version: 1, text },
    });
  }

  #originalOf(uri) {
    const file = path.join(
      this.original,
      decodeURIComponent(uri).split(`${path.basename(this.folder)}/`)[1] ?? "",
    );
    return existsSync(file) ? readFileSync(file, "utf8") : 'part spare "Spare"\n';
  }

  async #answered() {
    await Promise.all(this.#pending);
    this.#pending = [];
  }

  /** Everything closed and the files as they were, so that there is always a log to damage. */
  #startOver() {
    for (const uri of this.#open.keys()) this.client.tell("textDocument/didClose", { textDocument: { uri } });
    this.#open.clear();
    this.#undo = [];
    const before = this.#logs();
    for (const file of before) rmSync(path.join(this.folder, file));
    cpSync(this.original, this.folder, { recursive: true });
    const changes = [...before.map((file) => [file, 3]), ...this.#logs().map((file) => [file, 1])];
    this.client.tell("workspace/didChangeWatchedFiles", {
      changes: changes.map(([file, type]) => ({
        uri: pathToFileURL(path.join(this.folder, file)).href,
        type,
      })),
    });
  }

  #logs() {
    return readdirSync(this.folder, { recursive: true }).filter((name) => name.endsWith(".cotter"));
  }
}

async function shownBy(client) {
  const { items } = await client.ask("workspace/diagnostic", { previousResultIds: [] });
  const shown = items.flatMap(({ uri, items: own }) => own.map((one) => JSON.stringify([uri, one])));
  return shown.sort().join("\n");
}

function firstDifference(ours, theirs) {
  const [mine, other] = [ours, theirs].map((each) => each.split("\n"));
  const only = (some, rest) => some.find((one) => !rest.includes(one));
  return `only after editing: ${only(mine, other)}; only when fresh: ${only(other, mine)}`.slice(0, 900);
}
