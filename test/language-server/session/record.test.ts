/** The record in git, as an editor meets it through the server: only of folders that it says are trusted. */
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import type { Hover } from "vscode-languageserver";
import { scriptedRepository } from "../../history/scripted-repository.ts";
import { removeBundles } from "./bundle.ts";
import { Editor, uriOf } from "./editor.ts";

const VEHICLE = 'vehicle "Kestrel"\n\npart hub "Hub"\n  limit: bore max 25.05 mm\n';
const DAY = "day 2026-05-02 1 h\n  removed: hub\n";
const READING = "  measured: hub bore 25.02 mm\n";

let folder: string;
let uri: string;
beforeAll(() => {
  folder = scriptedRepository([
    { day: "2026-05-02", files: { "build.cotter": VEHICLE, "diary.cotter": DAY } },
    { day: "2026-05-20", author: "KT", files: { "diary.cotter": DAY + READING } },
  ]);
  uri = uriOf(path.join(folder, "diary.cotter"));
});

afterAll(removeBundles);

const hoverAt = async (editor: Editor, line: number) => {
  const position = { line, character: 14 };
  return JSON.stringify(
    await editor.request<Hover>("textDocument/hover", { textDocument: { uri }, position }),
  );
};

/** Until git has answered. */
const eventually = <T>(look: () => Promise<T>) => vi.waitFor(look, { timeout: 20_000, interval: 20 });

describe("a hover", () => {
  test("says that a fact was written later than its day, once git has answered", async () => {
    const editor = await Editor.start({ folders: [folder], initializationOptions: { trusted: true } });
    expect(await hoverAt(editor, 2)).toContain("Hub");
    await eventually(async () =>
      expect(await hoverAt(editor, 2)).toContain("Written 18 days later, on 2026-05-20, by KT"),
    );
    expect(await hoverAt(editor, 1)).not.toContain("Written");
    expect(await editor.stop()).toBe(0);
  });

  test("does not, until the editor says that the folder is trusted", async () => {
    const editor = await Editor.start({ folders: [folder] });
    const untrusted = [await hoverAt(editor, 2), await hoverAt(editor, 2)];
    editor.notify("cotter/trusted", { trusted: true });
    await eventually(async () => expect(await hoverAt(editor, 2)).toContain("Written 18 days later"));
    editor.notify("cotter/trusted", { trusted: false });
    expect([...untrusted, await hoverAt(editor, 2)].join()).not.toContain("Written");
    await editor.stop();
  });

  test("does not, where its user does not want it", async () => {
    const editor = await Editor.start({
      folders: [folder],
      initializationOptions: { trusted: true, settings: { writtenLater: false } },
    });
    for (let times = 0; times < 3; times++) expect(await hoverAt(editor, 2)).not.toContain("Written");
    await editor.stop();
  });
});
