/** Requests for views, as a client that shows some meets the server. */
import path from "node:path";
import { describe, expect, test } from "vitest";
import type { Book, BuildOverview, Report } from "../../../server/language-server/protocol.ts";
import { Editor, uriOf } from "./editor.ts";

const roadster = path.resolve("samples/roadster");
const told = { experimental: { cotter: { buildChanged: true } } };
const CHANGED = "cotter/buildChanged";

const changes = (editor: Editor) => editor.messages.filter(({ method }) => method === CHANGED).length;

describe("a client with views", () => {
  test("gets the build of the log it names, and the first one otherwise", async () => {
    const editor = await Editor.start({ program: "here", folders: [roadster], capabilities: told });
    const first = await editor.request<BuildOverview>("cotter/overview", { uri: null });
    expect([first.folder, first.name]).toEqual([uriOf(roadster), "Ledbrook Shrike 1600"]);
    editor.open("untitled:Untitled-1", 'vehicle "Another"\n');
    const other = await editor.request<BuildOverview>("cotter/overview", { uri: "untitled:Untitled-1" });
    expect(other.name).toBe("Another");
    expect(await editor.request("cotter/branch", { uri: null, path: "no.such.thing" })).toBeNull();
    expect(await editor.stop()).toBe(0);
  });

  test("is told of changes if it asks for that, and then gets what is new", async () => {
    const editor = await Editor.start({ program: "here", capabilities: told });
    const uri = "untitled:Untitled-1";
    editor.open(uri, 'vehicle "V"\n');
    await editor.untilTrue(() => changes(editor) > 0);
    const before = changes(editor);
    editor.change(uri, 0, 9, 10, "Renamed");
    await editor.untilTrue(() => changes(editor) > before);
    expect((await editor.request<BuildOverview>("cotter/overview", { uri })).name).toBe("Renamed");
    await editor.stop();
  });

  test("gets an answer to an expression where there is no build at all", async () => {
    const editor = await Editor.start({ program: "here" });
    expect(await editor.request("cotter/overview", { uri: null })).toBeNull();
    expect(await editor.request("cotter/calculate", { uri: null, expression: "1 in in mm" })).toEqual({
      text: "25.4 mm",
      notes: [],
      failed: false,
    });
    await editor.stop();
  });

  test("gets reports and the book, with the photos of the build's folder", async () => {
    const editor = await Editor.start({ folders: [roadster] });
    const report = await editor.request<Report>("cotter/report", { uri: null, report: "timeline" });
    expect(report.spots.every(({ uri }) => uri.startsWith(`${uriOf(roadster)}/`))).toBe(true);
    const book = await editor.request<Book>("cotter/book", { uri: null });
    expect([book.missing, book.photos]).toEqual([[], 6]);
    expect(book.page.match(/src="data:image\/png;base64,/g)).toHaveLength(6);
    await editor.stop();
  });
});
