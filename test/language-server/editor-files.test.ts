/** Files that the editor reads for the server: the answers are those of a small tree in memory. */
import { describe, expect, test } from "vitest";
import { editorFiles } from "../../server/language-server/editor-files.ts";
import type { FolderEntry, OfFile } from "../../server/language-server/protocol.ts";

const LOG = 'vehicle "Halvorsen Sprint"\n';

/** Folders by URI, with what stands in them. */
const folders: Readonly<Record<string, readonly FolderEntry[]>> = {
  "memory://garage/sprint": [
    { name: "vehicle.cotter", kind: "file", link: false },
    { name: "front axle", kind: "folder", link: false },
    { name: "archive", kind: "folder", link: true },
    { name: "alias.cotter", kind: "file", link: true },
    { name: ".git", kind: "folder", link: false },
    { name: "node_modules", kind: "folder", link: false },
    { name: "photo.jpg", kind: "file", link: false },
  ],
  "memory://garage/sprint/front%20axle": [{ name: "hubs.cotter", kind: "file", link: false }],
  "memory://garage/sprint/archive": [{ name: "vehicle.cotter", kind: "file", link: false }],
  "memory://garage/sprint/.git": [{ name: "hidden.cotter", kind: "file", link: false }],
  "memory://garage/sprint/node_modules": [{ name: "other.cotter", kind: "file", link: false }],
};
const filesThere = new Set([
  "memory://garage/sprint/vehicle.cotter",
  "memory://garage/sprint/photo.jpg",
  "memory://garage/other/photo.jpg",
]);

function answerOf(method: string, { uri }: OfFile): unknown {
  if (method === "cotter/files/list") return folders[uri] ?? [];
  if (method === "cotter/files/kind")
    return filesThere.has(uri) ? "file" : folders[uri] === undefined ? null : "folder";
  if (method === "cotter/files/read" && filesThere.has(uri)) return LOG;
  throw new Error(`no ${method} of ${uri}`);
}

const files = editorFiles({
  sendRequest: <R>(method: string, params: OfFile) =>
    Promise.resolve().then(() => answerOf(method, params) as R),
});

const SPRINT = "memory://garage/sprint";

describe("files that the editor reads", () => {
  test("are searched below a folder: no links, no hidden folders, names escaped", async () => {
    expect(await files.logsBelow(SPRINT)).toEqual([
      `${SPRINT}/front%20axle/hubs.cotter`,
      `${SPRINT}/vehicle.cotter`,
    ]);
    expect(await files.logsBelow("memory://garage/elsewhere")).toEqual([]);
  });

  test("are listed in a folder itself", async () => {
    expect(await files.logsIn(SPRINT)).toEqual([`${SPRINT}/vehicle.cotter`]);
  });

  test("are read, and a missing one is refused", async () => {
    expect(await files.read(`${SPRINT}/vehicle.cotter`)).toBe(LOG);
    await expect(files.read(`${SPRINT}/missing.cotter`)).rejects.toThrow("missing.cotter");
  });

  test("are told from folders", async () => {
    expect(await files.isFile(`${SPRINT}/vehicle.cotter`)).toBe(true);
    expect(await files.isFile(SPRINT)).toBe(false);
    expect(await files.isFolder(SPRINT)).toBe(true);
    expect(await files.isFolder("memory://garage/elsewhere")).toBe(false);
  });

  test("are photos of a build only within its folder", async () => {
    expect(await files.isFileWithin(SPRINT, "photo.jpg")).toBe(true);
    expect(await files.isFileWithin(SPRINT, "./photo.jpg")).toBe(true);
    expect(await files.isFileWithin(SPRINT, "../other/photo.jpg")).toBe(false);
    expect(await files.isFileWithin(SPRINT, "front axle")).toBe(false);
    expect(await files.isFileWithin(SPRINT, "missing.jpg")).toBe(false);
  });
});
