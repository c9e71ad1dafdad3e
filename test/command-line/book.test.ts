import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { cotter, folderWith } from "./program.ts";

const LOG = {
  "build.cotter": `vehicle "Marsh Kestrel"
  past: known
  today: 2026-05-04

part hub "Hub"

day 2026-05-02 3 h
  A quiet evening.
  inspected: hub by eye
  photo: "photos/none.png" of hub
`,
};

describe("cotter book", () => {
  it("writes the page to standard output, and tells which photo it is without", async () => {
    const { status, out, err } = await cotter(["book"], folderWith(LOG));
    expect(status).toBe(0);
    expect(out).toMatch(/^<!doctype html>/);
    expect(out).toContain("No picture: photos/none.png.");
    expect(err).toBe(
      "cotter: the book is without photos/none.png: there is no such file in the build's folder\n",
    );
  });

  it("writes a file, keeps one that is there, and replaces it when asked to", async () => {
    const folder = folderWith({ ...LOG, "kept.html": "mine" });
    const first = await cotter(["book", "--out", "new.html"], folder);
    expect([first.status, first.out]).toEqual([0, ""]);
    const page = readFileSync(path.join(folder, "new.html"), "utf8");
    expect(page).toContain("<h1>Marsh Kestrel</h1>");

    const kept = await cotter(["book", "--out", "kept.html"], folder);
    expect(kept.status).toBe(2);
    expect(kept.err).toContain("kept.html is there already and was kept; --overwrite replaces it");
    expect(readFileSync(path.join(folder, "kept.html"), "utf8")).toBe("mine");

    expect((await cotter(["book", "--out", "kept.html", "--overwrite"], folder)).status).toBe(0);
    expect(readFileSync(path.join(folder, "kept.html"), "utf8")).toBe(page);
    expect(readdirSync(folder).sort()).toEqual(["build.cotter", "kept.html", "new.html"]);
  });

  it("says where it cannot write", async () => {
    const folder = folderWith({ ...LOG, "sub/other.txt": "" });
    const nowhere = await cotter(["book", "--out", "none/book.html"], folder);
    expect([nowhere.status, existsSync(path.join(folder, "none"))]).toEqual([2, false]);
    expect(nowhere.err).toContain("none/book.html cannot be written: there is no such folder");
    expect((await cotter(["book", "--out", "sub", "--overwrite"], folder)).err).toContain("sub is a folder");
  });

  it("gives machines the page or where it went", async () => {
    const folder = folderWith(LOG);
    const here = JSON.parse((await cotter(["book", "--json"], folder)).out);
    expect(here).toMatchObject({ schema: "cotter/book/1", file: null, title: "Marsh Kestrel" });
    expect(here.html).toMatch(/^<!doctype html>/);
    const there = JSON.parse((await cotter(["book", "--json", "--out", "a.html"], folder)).out);
    expect(there).toMatchObject({ file: "a.html", html: null });
    expect(there.photos).toEqual([
      { path: "photos/none.png", shown: false, why: "there is no such file in the build's folder" },
    ]);
  });
});
