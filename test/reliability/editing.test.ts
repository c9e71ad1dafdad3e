/** The server as it is built, against an editor that does things in any order: the short form of the long run. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { folderWith } from "../command-line/program.ts";
import { FakeEditor } from "./fake-editor.mjs";
import { RawClient } from "./raw-client.mjs";

test("a session of random doings ends with what a fresh server says of the same texts", async () => {
  const editor = new FakeEditor({ seed: 20261125, sample: "evening" });
  await editor.work({ edits: 60, compareEvery: 30 });
  expect(editor.faults).toEqual([]);
  expect(editor.counts).toMatchObject({ edits: 60, comparisons: 2 });
});

async function shown(client: RawClient): Promise<string> {
  return JSON.stringify(await client.ask("workspace/diagnostic", { previousResultIds: [] }));
}

test("a file that is opened without a text ends no server, and is taken once it comes with one", async () => {
  const folder = folderWith({ "build.cotter": 'vehicle "Kestrel"\n' });
  const uri = pathToFileURL(path.join(folder, "build.cotter")).href;
  const client = new RawClient();
  await client.start(pathToFileURL(folder).href);
  client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1 } });
  const text = 'vehicle "Kestrel"\n\nday 2026-13-45\n';
  client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text } });
  expect(await shown(client)).toContain("2026-13-45");
  expect(await client.stop()).toBe(0);
});

test("a change of a file that is closed is dropped: the file on disk is what counts", async () => {
  const folder = folderWith({ "build.cotter": 'vehicle "Kestrel"\n' });
  const file = path.join(folder, "build.cotter");
  const uri = pathToFileURL(file).href;
  const client = new RawClient();
  await client.start(pathToFileURL(folder).href);
  await shown(client);
  client.tell("textDocument/didChange", {
    textDocument: { uri, version: 7 },
    contentChanges: [{ text: "day 2026-13-45\n" }],
  });
  expect(await shown(client)).not.toContain("2026-13-45");
  writeFileSync(file, "day 2026-14-46\n");
  client.tell("workspace/didChangeWatchedFiles", { changes: [{ uri, type: 2 }] });
  expect(await shown(client)).toContain("2026-14-46");
  expect(await client.stop()).toBe(0);
});
