/** A stranger's log under the pointer: its words stay words in what is shown as Markdown. */
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { folderWith } from "../command-line/program.ts";
import { HARM } from "./hostile.mjs";
import { hostileLog, SIGN } from "./hostile-log.mjs";
import { RawClient } from "./raw-client.mjs";

/** The Markdown without what stands between fences and backquotes, where nothing means anything (CommonMark 4.5, 6.1). */
function withoutCode(markdown: string): string {
  return markdown
    .replaceAll(/^(`{3,})[^`\n]*\n[\s\S]*?^\1`*$/gm, "")
    .replaceAll(/(?<![\\`])(`+)(?!`)[\s\S]*?(?<!`)\1(?!`)/g, "");
}

test("nothing of a hostile log comes through a hover, and no link leads out of the machine", async () => {
  const text = hostileLog();
  const folder = folderWith({ "build.cotter": text });
  const uri = pathToFileURL(path.join(folder, "build.cotter")).href;
  const client = new RawClient();
  await client.start(pathToFileURL(folder).href);
  client.tell("textDocument/didOpen", { textDocument: { uri, languageId: "cotter", version: 1, text } });
  const textDocument = { uri };
  const harms: string[] = [];
  let shown = 0;
  const lines = text.split("\n");
  for (const [line, words] of lines.entries())
    for (const character of [3, 6, words.indexOf(":") + 3].filter((each) => each < words.length)) {
      const position = { line, character };
      const hover = (await client.ask("textDocument/hover", { textDocument, position })) as {
        readonly contents: { readonly value: string };
      } | null;
      const told = hover?.contents.value ?? "";
      if (told.includes(SIGN)) shown++;
      harms.push(...HARM.markdown(withoutCode(told)).map((harm) => `line ${line + 1}: ${harm}`));
    }
  const links = JSON.stringify(await client.ask("textDocument/documentLink", { textDocument }));
  expect(links).not.toMatch(/"target":"(?!file:)/);
  expect(harms).toEqual([]);
  expect(shown).toBeGreaterThan(50);
  expect(client.faults).toEqual([]);
  expect(await client.stop()).toBe(0);
});
