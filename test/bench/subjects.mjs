// The servers that are measured, each with a text of so many lines and someone who types into it.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { LanguageClient } from "./language-client.mjs";
import { bashText, jsonText, yamlText } from "./peer-texts.mjs";
import { Typist } from "./typist.mjs";

const FACT = "\n  measured: axle0.left.hub end_float 0.07 mm\n  Tea. Then the same again on the other side";
const RECORD = "\n  size: width 23.5 mm";

/** A server at work on one text. */
class Subject {
  #version = 1;

  constructor(name, client, uri, typist, pulled) {
    Object.assign(this, { name, client, uri, typist, pulled });
  }

  /** One key, up to the diagnostics that follow it: how long it took, and the server's processor time (ms). */
  async key() {
    const spent = this.client.processorTime();
    const began = performance.now();
    const told = this.pulled ? undefined : this.client.next("textDocument/publishDiagnostics");
    this.type();
    await (this.pulled ? this.diagnostics() : told);
    const wall = performance.now() - began;
    const after = this.client.processorTime();
    return { wall, processor: after === undefined ? undefined : after - spent };
  }

  type() {
    this.#version++;
    const contentChanges = [this.typist.next()];
    this.client.tell("textDocument/didChange", {
      textDocument: { uri: this.uri, version: this.#version },
      contentChanges,
    });
  }

  /** As an editor asks: a server that has named its last answer need not give the same again. */
  async diagnostics() {
    const asked = { textDocument: { uri: this.uri }, previousResultId: this.resultId };
    const told = await this.client.ask("textDocument/diagnostic", asked);
    this.resultId = told?.resultId ?? this.resultId;
    return told;
  }

  async open(languageId, text) {
    const told = this.pulled ? undefined : this.client.next("textDocument/publishDiagnostics");
    this.client.tell("textDocument/didOpen", {
      textDocument: { uri: this.uri, languageId, version: 1, text },
    });
    await (this.pulled ? this.diagnostics() : told);
  }
}

/** The generated build in a folder of its own. */
export class LogFolder {
  constructor(files) {
    this.files = files;
    this.path = mkdtempSync(path.join(tmpdir(), "cotter-bench-"));
    for (const file of files) {
      const target = path.join(this.path, file.path);
      mkdirSync(path.dirname(target), { recursive: true });
      writeFileSync(target, file.text);
    }
    this.uri = pathToFileURL(this.path).href;
  }

  uriOf(file) {
    return `${this.uri}/${file.path}`;
  }

  remove() {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** Where one types in a log: which file, at the end of which line, and what. */
const PLACES = {
  "end of the diary": (files) => {
    const file = files.at(-1);
    return { file, line: lastWritten(file.text), words: FACT };
  },
  "middle of the diary": (files) => {
    const diary = files.filter(({ path: name }) => name.startsWith("diary/"));
    const file = diary[diary.length >> 1];
    const lines = file.text.split("\n");
    return { file, line: lines.indexOf("", lines.length >> 1) - 1, words: FACT };
  },
  "block of a part": (files) => {
    const parts = files.filter(({ path: name }) => name.startsWith("parts/"));
    const file = parts[parts.length >> 1];
    const lines = file.text.split("\n");
    const header = lines.findIndex((line) => /^part \S+\.disc /.test(line));
    return { file, line: lines.indexOf("", header) - 1, words: RECORD };
  },
};

export const LOG_PLACES = Object.keys(PLACES);

function lastWritten(text) {
  return text.split("\n").findLastIndex((line) => line.trim() !== "");
}

/** Cotter's server on a build, asked for diagnostics as an editor asks. */
export async function cotterSubject(program, folder, place, words = []) {
  const { file, line, words: typed } = PLACES[place](folder.files);
  const client = new LanguageClient([...words, program, "--stdio"]);
  await client.start(folder.uri, {
    capabilities: { textDocument: { diagnostic: {}, publishDiagnostics: {} } },
  });
  const subject = new Subject(
    `Cotter, ${place}`,
    client,
    folder.uriOf(file),
    new Typist(file.text, line, typed),
    true,
  );
  await subject.open("cotter", file.text);
  return subject;
}

/** The empty server on the file that Cotter's is typed into. */
export async function emptySubject(folder, place) {
  const { file, line, words } = PLACES[place](folder.files);
  const program = fileURLToPath(new URL("empty-server.mjs", import.meta.url));
  const client = new LanguageClient([program]);
  await client.start(folder.uri);
  const subject = new Subject(
    "empty server",
    client,
    folder.uriOf(file),
    new Typist(file.text, line, words),
    false,
  );
  await subject.open("cotter", file.text);
  return subject;
}

/** Servers of other languages, as they are installed below a folder. */
const PEERS = [
  {
    name: "JSON server",
    program: "vscode-langservers-extracted/bin/vscode-json-language-server",
    words: ["--stdio"],
    language: "json",
    text: jsonText,
    at: /"worked": \d$/,
    types: ',\n      "more": [12, "bolts"]',
    pulled: true,
  },
  {
    name: "YAML server",
    program: "yaml-language-server/bin/yaml-language-server",
    words: ["--stdio"],
    language: "yaml",
    text: yamlText,
    at: / {4}worked: \d h$/,
    types: "\n    more: [12, bolts]",
    pulled: false,
    settings: { yaml: { validate: true, schemaStore: { enable: false } } },
  },
  {
    name: "bash server",
    program: "bash-language-server/out/cli.js",
    words: ["start"],
    language: "shellscript",
    text: bashText,
    at: /removed \S+ bolts; fi$/,
    types: "\n  removed hub bolts",
    pulled: false,
    settings: { bashIde: { shellcheckPath: "", backgroundAnalysisMaxFiles: 0 } },
  },
];

/** The peers that answer; those that do not are told of by name. */
export async function peerSubjects(modules, lines, folder) {
  const subjects = [];
  const failed = [];
  for (const peer of PEERS) {
    const { name, program, words, language, text, at, types, pulled, settings } = peer;
    const whole = text(lines);
    const all = whole.split("\n");
    const line = all.findIndex((one, index) => index >= all.length >> 1 && at.test(one));
    const client = new LanguageClient([path.join(modules, program), ...words], settings);
    try {
      const textDocument = { publishDiagnostics: {}, ...(pulled ? { diagnostic: {} } : {}) };
      await client.start(folder.uri, { capabilities: { textDocument, workspace: { configuration: true } } });
      const subject = new Subject(
        name,
        client,
        `${folder.uri}/peer.${language}`,
        new Typist(whole, line, types),
        pulled,
      );
      await subject.open(language, whole);
      subjects.push(subject);
    } catch (error) {
      failed.push(`${name}: ${error.message.split("\n")[0]}`);
      client.process.kill("SIGKILL");
    }
  }
  return { subjects, failed };
}
