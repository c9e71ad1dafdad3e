/** A day's writing through the whole server, in this process: a part is made up, measured, ordered, torqued and renamed. */
import { mkdtemp, realpath, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type {
  CallHierarchyItem,
  CodeAction,
  CodeLens,
  CompletionItem,
  CompletionList,
  DocumentSymbol,
  Hover,
  InlayHint,
  Location,
  SemanticTokens,
  SemanticTokensDelta,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import { edited } from "../marked-build.ts";
import type { ShownDiagnostic } from "./editor.ts";
import { AnsweredError, Editor, uriOf } from "./editor.ts";

const LOG = `vehicle "Halvorsen Sprint"
  currency: GBP
  today: 2026-05-03

gauge mic25 "Micrometer"
  reads: 0..25 mm

supplier northgate "Northgate Motor Factors"

part front.left.hub "Hub"

day 2026-05-02 4 h
  Stripped the corner.
`;

const CAPABILITIES = {
  workspace: { workspaceEdit: { documentChanges: true }, workspaceFolders: true },
  textDocument: {
    completion: { completionItem: { snippetSupport: true } },
    rename: { prepareSupport: true },
    publishDiagnostics: { relatedInformation: true },
  },
};

let folder: string;
let editor: Editor;
let uri: string;
let text: string;

beforeEach(async () => {
  folder = await realpath(await mkdtemp(path.join(tmpdir(), "cotter-day-")));
  const file = path.join(folder, "log.cotter");
  text = LOG;
  await writeFile(file, text);
  uri = uriOf(file);
  editor = await Editor.start({ program: "here", folders: [folder], capabilities: CAPABILITIES });
  editor.open(uri, text);
});

afterEach(async () => {
  const status = await editor.stop();
  if (status !== 0) throw new Error(`the server ended with ${status}`);
  await rm(folder, { recursive: true });
});

/** Writes lines at the end of the log, as typing does. */
function write(lines: string): void {
  const before = text.split("\n");
  const end = before.at(-1)?.length ?? 0;
  editor.change(uri, before.length - 1, end, end, lines);
  text += lines;
}

function take(edits: readonly TextEdit[]): void {
  for (const { range, newText } of [...edits].reverse()) {
    if (range.start.line !== range.end.line) throw new Error("an edit over several lines");
    editor.change(uri, range.start.line, range.start.character, range.end.character, newText);
  }
  text = edited(text, edits);
}

/** Where a word stands, in the last line that holds the whole piece. */
function at(piece: string, word = piece) {
  const lines = text.split("\n");
  const line = lines.findLastIndex((each) => each.includes(piece));
  const character = (lines[line] ?? "").indexOf(piece) + piece.indexOf(word);
  return { textDocument: { uri }, position: { line, character } };
}

function behind(piece: string) {
  const { textDocument, position } = at(piece);
  return { textDocument, position: { ...position, character: position.character + piece.length } };
}

const codes = (diagnostics: readonly ShownDiagnostic[]) => diagnostics.map(({ code }) => code);

describe("a day's writing", () => {
  test("a part is measured before it is defined, and defined by the mend that is offered", async () => {
    write("  measured: front.left.disc thickness 8.30 mm with mic25\n");
    await editor.until(uri, (diagnostics) => codes(diagnostics).includes("unknown-reference"));
    const { textDocument, position } = at("front.left.disc");
    const actions = await editor.request<CodeAction[]>("textDocument/codeAction", {
      textDocument,
      range: { start: position, end: position },
      context: { diagnostics: editor.diagnostics.get(uri) },
    });
    const define = actions.find(({ title }) => title === "Define the part front.left.disc");
    const [change] = define?.edit?.documentChanges ?? [];
    take(change !== undefined && "edits" in change ? (change.edits as TextEdit[]) : []);
    expect(define?.diagnostics?.map(({ code }) => code)).toEqual(["unknown-reference"]);
    await editor.until(uri, (diagnostics) => !codes(diagnostics).includes("unknown-reference"));
    write("  limit: thickness min 8.4 mm new 9.5 mm\n  price: 46.00 GBP\n  supplier: northgate\n");
    await editor.until(uri, (diagnostics) => codes(diagnostics).includes("under-limit"));
    const hover = await editor.request<Hover>(
      "textDocument/hover",
      at("front.left.disc thick", "front.left.disc"),
    );
    expect(JSON.stringify(hover)).toContain("2 parts on");
    const ofDisc = await editor.request<Hover>("textDocument/hover", at("disc thickness", "disc"));
    expect(JSON.stringify(ofDisc.contents)).toContain("outside by 0.10 mm");
  });

  test("it is ordered, its joint is torqued, and both are renamed with every line", async () => {
    write(`
part front.left.disc "Brake disc"
  price: 46.00 GBP
  supplier: northgate

joint front.left.disc_bolts "Disc to hub"
  joins: front.left.disc, front.left.hub
  torque: 24 N.m ± 10 %

day 2026-05-03
  removed: front.left.disc
  decided: front.left.disc renew
`);
    const range = { start: at("disc renew").position, end: at("disc renew").position };
    const actions = await editor.request<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri },
      range,
      context: { diagnostics: [] },
    });
    const order = actions.find(({ title }) => title === "Order 1 x front.left.disc");
    const [change] = order?.edit?.documentChanges ?? [];
    take(change !== undefined && "edits" in change ? (change.edits as TextEdit[]) : []);
    expect(text).toContain("  ordered: 1 x front.left.disc at 46.00 GBP from northgate\n");

    write("  received: 1 x front.left.disc\n  fitted: front.left.disc\n  torqued: ");
    const { items } = await editor.request<CompletionList>("textDocument/completion", behind("torqued: "));
    expect(items.map(({ label }) => label)).toContain("front.left.disc_bolts");
    const [first] = [...items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
    expect(first?.label).toBe("front.left.disc_bolts");
    const resolved = await editor.request<CompletionItem>("completionItem/resolve", first);
    expect(JSON.stringify(resolved.documentation)).toContain("torque 24 N.m");
    write("front.left.disc_bolts 30 N.m\n");
    await editor.until(uri, (diagnostics) => codes(diagnostics).includes("torque-outside"));
    const hints = await editor.request<InlayHint[]>("textDocument/inlayHint", {
      textDocument: { uri },
      range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } },
    });
    expect(hints).toEqual([]);

    const prepared = await editor.request("textDocument/prepareRename", at("disc_bolts 30", "disc_bolts"));
    expect(prepared).toMatchObject({ placeholder: "disc_bolts" });
    const edit = await editor.request<WorkspaceEdit>("textDocument/rename", {
      ...at("disc renew", "disc"),
      newName: "rotor",
    });
    const [renamed] = edit.documentChanges ?? [];
    take(renamed !== undefined && "edits" in renamed ? (renamed.edits as TextEdit[]) : []);
    expect(text).toContain('part front.left.rotor "Brake disc"');
    expect(text).toContain("joins: front.left.rotor, front.left.hub");
    expect(text).toContain("ordered: 1 x front.left.rotor at");
    expect(text).not.toMatch(/left\.disc\b/);
    await editor.until(uri, (diagnostics) => !codes(diagnostics).includes("unknown-reference"));
    await expect(
      editor.request("textDocument/rename", { ...at("part front.left.rotor", "rotor"), newName: "hub" }),
    ).rejects.toThrow("there is a front.left.hub already");
  });

  // ISO 15, dimension series 02: bore 25, outside 52, width 15 mm is the deep groove ball bearing 6205.
  test("an unknown bearing is measured, what it can be is shown, and written down", async () => {
    write(`
part front.left.bearing "Hub bearing"

day 2026-05-03
  measured: front.left.bearing bore 25.00 mm with mic25
  measured: front.left.bearing outside 52.0 mm
  measured: front.left.bearing width 15.0 mm
`);
    const place = at("front.left.bearing width", "bearing");
    const hover = await editor.request<Hover>("textDocument/hover", place);
    expect(JSON.stringify(hover.contents)).toContain("**6205** (rolling bearing)");
    const actions = await editor.request<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri },
      range: { start: place.position, end: place.position },
      context: { diagnostics: [] },
    });
    const identify = actions.find(({ title }) => title === "Write down that it is 6205 (rolling bearing)");
    const [change] = identify?.edit?.documentChanges ?? [];
    take(change !== undefined && "edits" in change ? (change.edits as TextEdit[]) : []);
    expect(text).toContain('  identified: front.left.bearing as "6205"\n');
    const known = await editor.request<Hover>("textDocument/hover", place);
    expect(JSON.stringify(known.contents)).not.toContain("can be");
  });

  test("the file is read by outline, references, states, tokens and forms", async () => {
    write(
      "  removed: front.left.hub\n  measured: front.left.hub bore 52.00 mm with mic25\n  calc: a = 1 mm + 1 mm\n",
    );
    const ofFile = { textDocument: { uri } };
    const symbols = await editor.request<DocumentSymbol[]>("textDocument/documentSymbol", ofFile);
    expect(symbols.map(({ name }) => name)).toEqual([
      "Halvorsen Sprint",
      "mic25",
      "northgate",
      "front.left.hub",
      "2026-05-02",
    ]);
    const found = await editor.request<Location[]>("textDocument/references", {
      ...at("part front.left.hub", "hub"),
      context: { includeDeclaration: false },
    });
    expect(found).toHaveLength(2);
    expect(await editor.request("textDocument/definition", at("with mic25", "mic25"))).toMatchObject([
      { uri },
    ]);
    expect(await editor.request("textDocument/documentHighlight", at("with mic25", "mic25"))).toHaveLength(2);
    const lenses = await editor.request<CodeLens[]>("textDocument/codeLens", ofFile);
    const titles = await Promise.all(
      lenses.map(async (lens) => (await editor.request<CodeLens>("codeLens/resolve", lens)).command?.title),
    );
    expect(titles).toContain("off since 2026-05-02");
    const tokens = await editor.request<SemanticTokens>("textDocument/semanticTokens/full", ofFile);
    expect(tokens.data.length % 5).toBe(0);
    write("  greased: front.left.hub\n");
    const delta = await editor.request<SemanticTokensDelta>("textDocument/semanticTokens/full/delta", {
      ...ofFile,
      previousResultId: tokens.resultId,
    });
    const again = await editor.request<SemanticTokens>("textDocument/semanticTokens/full", ofFile);
    const patched = [...tokens.data];
    for (const { start, deleteCount, data = [] } of delta.edits) patched.splice(start, deleteCount, ...data);
    expect(patched).toEqual(again.data);
    const form = await editor.request("textDocument/signatureHelp", behind("  greased: "));
    expect(JSON.stringify(form)).toContain("greased: ");
    expect(await editor.request("textDocument/foldingRange", ofFile)).not.toEqual([]);
    expect(await editor.request("workspace/symbol", { query: "hub" })).toMatchObject([
      { name: "front.left.hub" },
    ]);
    const [item] = await editor
      .request<CallHierarchyItem[]>("textDocument/prepareCallHierarchy", at("calc: a", "a ="))
      .catch(() => []);
    expect(item === undefined || item.name === "a").toBe(true);
    expect(await editor.request("textDocument/formatting", { ...ofFile, options: {} })).toEqual([]);
  });

  test("a photo that is moved in the editor keeps its line", async () => {
    write('  photo: "photos/lip.png" "the lip"\n');
    const edit = await editor.request<WorkspaceEdit>("workspace/willRenameFiles", {
      files: [
        { oldUri: `${uriOf(folder)}/photos/lip.png`, newUri: `${uriOf(folder)}/photos/disc%20lip.png` },
      ],
    });
    expect(JSON.stringify(edit)).toContain('"newText":"photos/disc lip.png"');
  });
});

describe("answers", () => {
  test("are not given for a text that has changed since, nor after the request was called off", async () => {
    const params = at("part front.left.hub", "hub");
    const stale = editor.together(() => {
      const asked = editor.asking("textDocument/hover", params);
      editor.change(uri, 0, 0, 0, "");
      return asked;
    });
    await expect(stale.answer).rejects.toMatchObject({ code: -32801 });
    const called = editor.together(() => {
      const asked = editor.asking("textDocument/hover", params);
      editor.notify("$/cancelRequest", { id: asked.id });
      return asked;
    });
    await expect(called.answer).rejects.toMatchObject({ code: -32800 });
    await expect(editor.request("textDocument/hover", params)).resolves.not.toBeNull();
  });

  test("are empty for a file that nobody has opened, and for a place that is not there", async () => {
    const elsewhere = {
      textDocument: { uri: "file:///nowhere/log.cotter" },
      position: { line: 0, character: 0 },
    };
    expect(await editor.request("textDocument/hover", elsewhere)).toBeNull();
    expect(
      await editor.request("textDocument/hover", {
        textDocument: { uri },
        position: { line: 999, character: 9 },
      }),
    ).toBeNull();
  });

  test("to what is not understood are errors, and the server goes on", async () => {
    await expect(editor.request("cotter/noSuchThing", {})).rejects.toBeInstanceOf(AnsweredError);
    editor.notify("textDocument/didChange", {
      textDocument: { uri: "file:///nowhere/log.cotter", version: 2 },
      contentChanges: [{ text: "x" }],
    });
    editor.notify("cotter/noSuchThing", {});
    expect(await editor.request("textDocument/hover", at("part front.left.hub", "hub"))).not.toBeNull();
  });
});

describe("files and folders", () => {
  test("what happens on disk is heard of", async () => {
    const other = path.join(folder, "other.cotter");
    await writeFile(other, "day 2026-05-03\n  removed: wing\n");
    editor.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: uriOf(other), type: 1 }] });
    await editor.until(uriOf(other), (diagnostics) => codes(diagnostics).includes("unknown-reference"));
    await rm(other);
    editor.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: uriOf(other), type: 3 }] });
    await editor.until(uriOf(other), (diagnostics) => diagnostics.length === 0);
  });

  test("a second folder comes and goes with its own build", async () => {
    const second = await realpath(await mkdtemp(path.join(tmpdir(), "cotter-second-")));
    const file = path.join(second, "log.cotter");
    await writeFile(file, 'vehicle "Other"\n  yaer: 1950\n');
    const event = (added: object[], removed: object[]) =>
      editor.notify("workspace/didChangeWorkspaceFolders", { event: { added, removed } });
    const root = { uri: uriOf(second), name: "second" };
    event([root], []);
    await editor.until(uriOf(file), (diagnostics) => codes(diagnostics).includes("unknown-record"));
    event([], [root]);
    await editor.until(uriOf(file), (diagnostics) => diagnostics.length === 0);
    await rm(second, { recursive: true });
  });
});
