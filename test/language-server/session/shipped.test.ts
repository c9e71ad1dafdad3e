/**
 * The server as it is shipped is bundled in another way than what most tests run: parts of it are loaded late, texts stand
 * apart from their tables, and of libraries only what is used is there. It answers the same all the same.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { Editor, uriOf } from "./editor.ts";

const roadster = path.resolve("samples/roadster");
const files = ["diary/2026-09.cotter", "parts/front.cotter", "parts/engine.cotter", "vehicle.cotter"].map(
  (name) => {
    const file = path.join(roadster, name);
    return { uri: uriOf(file), text: readFileSync(file, "utf8") };
  },
);
const capabilities = {
  textDocument: {
    diagnostic: {},
    definition: { linkSupport: true },
    rename: { prepareSupport: true },
    completion: { completionItem: { snippetSupport: true } },
  },
  workspace: { workspaceEdit: { documentChanges: true } },
};

let editors: readonly Editor[];
beforeAll(async () => {
  editors = await Promise.all(
    [{ file: path.resolve("dist/server.cjs") }, "here" as const].map((program) =>
      Editor.start({ program, folders: [roadster], capabilities }),
    ),
  );
  for (const editor of editors) for (const { uri, text } of files) editor.open(uri, text);
});
afterAll(() => Promise.all(editors.map((editor) => editor.stop())));

/** What each of the two answers. */
function answersTo(method: string, params: unknown): Promise<unknown[]> {
  return Promise.all(
    editors.map((editor) => editor.request(method, params).catch((error: Error) => error.message)),
  );
}

const everyFile = files.map(({ uri }) => ({ textDocument: { uri } }));
const whole = { start: { line: 0, character: 0 }, end: { line: 400, character: 0 } };

/** Places at which words begin or end, some in every file. */
const places = files.flatMap(({ uri, text }) =>
  text.split("\n").flatMap((line, number) => {
    if (number % 9 !== 4) return [];
    const characters = [...line.matchAll(/\b/g)].map(({ index }) => index).filter((_, at) => at % 3 === 0);
    return characters.map((character) => ({
      textDocument: { uri },
      position: { line: number, character },
    }));
  }),
);

/** Some of them, for what takes its time. */
const fewPlaces = places.filter((_, at) => at % 25 === 7);

const onlyUri = { uri: null };
const of = (path: string) => ({ uri: null, path });

test.each<[string, readonly object[]]>([
  ["workspace/diagnostic", [{ previousResultIds: [] }]],
  ["textDocument/documentSymbol", everyFile],
  ["textDocument/foldingRange", everyFile],
  ["textDocument/semanticTokens/full", everyFile],
  ["textDocument/documentLink", everyFile],
  ["textDocument/codeLens", everyFile],
  ["textDocument/inlayHint", everyFile.map((file) => ({ ...file, range: whole }))],
  ["textDocument/formatting", everyFile.map((file) => ({ ...file, options: {} }))],
  [
    "textDocument/codeAction",
    everyFile.map((file) => ({ ...file, range: whole, context: { diagnostics: [] } })),
  ],
  [
    "textDocument/selectionRange",
    places.map(({ textDocument, position }) => ({ textDocument, positions: [position] })),
  ],
  ["textDocument/hover", places],
  ["textDocument/completion", places],
  ["textDocument/signatureHelp", places],
  ["textDocument/definition", places],
  ["textDocument/references", places.map((place) => ({ ...place, context: { includeDeclaration: true } }))],
  ["textDocument/documentHighlight", places],
  ["textDocument/prepareRename", places],
  ["textDocument/rename", fewPlaces.map((place) => ({ ...place, newName: "other_name" }))],
  ["textDocument/prepareCallHierarchy", fewPlaces],
  ["workspace/symbol", [{ query: "disc" }, { query: "" }]],
  [
    "workspace/willRenameFiles",
    [{ files: [{ oldUri: uriOf(`${roadster}/photos`), newUri: uriOf(`${roadster}/p`) }] }],
  ],
  ["cotter/overview", [onlyUri]],
  ["cotter/branch", [of("front"), { uri: null, path: null }]],
  ["cotter/describe", [of("front.left.disc")]],
  ["cotter/stillOpen", [onlyUri]],
  ["cotter/toOrder", [onlyUri]],
  ["cotter/report", ["timeline", "outstanding", "order", "joints"].map((report) => ({ uri: null, report }))],
  [
    "cotter/calculate",
    ["preload(24 N.m, M8, 0.2)", 'fit(52 mm, "H7", "p6")', "no_such(1)", "sin(30 deg)"].map((expression) => ({
      uri: null,
      expression,
    })),
  ],
  ["cotter/dayPlace", files.map(({ uri }) => ({ uri }))],
  ["cotter/partPlace", [of("front.left.new_part")]],
  ["cotter/commits", [onlyUri]],
  ["cotter/thingAt", places.map(({ textDocument, position }) => ({ uri: textDocument.uri, ...position }))],
])("%s", async (method, asked) => {
  for (const params of asked) {
    const [shipped, here] = await answersTo(method, params);
    expect(shipped).toEqual(here);
  }
});

test("completionItem/resolve, of everything that is offered at a place", async () => {
  const lists = await Promise.all(
    places
      .slice(0, 12)
      .map((place) => editors[1]?.request<{ items: object[] }>("textDocument/completion", place)),
  );
  const items = lists.flatMap((list) => list?.items ?? []);
  expect(items.length).toBeGreaterThan(100);
  for (const item of items) {
    const [shipped, here] = await answersTo("completionItem/resolve", item);
    expect(shipped).toEqual(here);
  }
});

test("codeLens/resolve", async () => {
  for (const file of everyFile) {
    const lenses = (await editors[1]?.request<object[]>("textDocument/codeLens", file)) ?? [];
    for (const lens of lenses) {
      const [shipped, here] = await answersTo("codeLens/resolve", lens);
      expect(shipped).toEqual(here);
    }
  }
});
