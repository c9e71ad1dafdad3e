/**
 * Lines on which a careless pattern takes time in the square of their length: of this length it would not answer before
 * the client takes it for hung.
 */
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { folderWith } from "../command-line/program.ts";
import { RawClient } from "./raw-client.mjs";

const LONG = 200_000;

/** Told by `npm run reliability -- regexes`, one for each pattern that was mended, and what else people hold a key on. */
const LINES: Readonly<Record<string, string>> = {
  "a designation that shouts": `part shout "Bearing ${"!".repeat(LONG)}x"`,
  "spaces before a waiver": `part wide "Wide"\n  material: ${" ".repeat(LONG)}steel  # waived no-such-rule because`,
  "spaces in a definition": `gauge mic "Micrometer"\n  reads: 0..25${" ".repeat(LONG)} mm`,
  "a number that goes on": `part long "Long"\n  limit: bore max ${"..1".repeat(LONG / 3)}-`,
  "a path that goes on": `day 2026-05-02\n  removed: ${"a".repeat(LONG)}-`,
  "a definition changed behind spaces": `day 2026-05-03\n  changed: ${" ".repeat(LONG)}A`,
  "prose of dashes": `day 2026-05-04\n  ${"-".repeat(LONG)} x`,
};

test.each(Object.entries(LINES))("%s", async (_, lines) => {
  const text = `vehicle "Kestrel"\n${lines}`;
  const folder = folderWith({ "build.cotter": text });
  const uri = pathToFileURL(path.join(folder, "build.cotter")).href;
  const client = new RawClient();
  await client.start(pathToFileURL(folder).href);
  client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text } });
  const textDocument = { uri };
  const last = text.split("\n").length - 1;
  const end = { line: last, character: text.length - text.lastIndexOf("\n") - 1 };
  expect(await client.ask("textDocument/diagnostic", { textDocument })).toBeDefined();
  await client.ask("textDocument/completion", { textDocument, position: end });
  for (const line of [1, last])
    await client.ask("textDocument/hover", { textDocument, position: { line, character: 7 } });
  const range = { start: { line: 0, character: 0 }, end };
  await client.ask("textDocument/codeAction", { textDocument, range, context: { diagnostics: [] } });
  await client.ask("textDocument/formatting", { textDocument, options: { tabSize: 2, insertSpaces: true } });
  expect(client.faults).toEqual([]);
  expect(await client.stop()).toBe(0);
});
