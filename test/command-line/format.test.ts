import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { cotter, folderWith } from "./program.ts";

const UNTIDY = '\ufeffvehicle "Marsh Kestrel"\r\n    year:   1961\r\n  Prose   stays.\r\n';
const TIDY = '\ufeffvehicle "Marsh Kestrel"\r\n  year: 1961\r\n  Prose   stays.\r\n';

describe("cotter format", () => {
  it("puts records in order, keeps prose, line ends and the byte order mark, and does nothing twice", async () => {
    const folder = folderWith({ "a.cotter": UNTIDY });
    const file = path.join(folder, "a.cotter");
    expect(await cotter(["format"], folder)).toEqual({ status: 0, out: "a.cotter: put in order\n", err: "" });
    expect(readFileSync(file, "utf8")).toBe(TIDY);
    expect(await cotter(["format"], folder)).toEqual({ status: 0, out: "", err: "" });
  });

  it("changes nothing with --check, and ends with 1 where the layout differs", async () => {
    const folder = folderWith({ "a.cotter": UNTIDY });
    expect((await cotter(["format", "--check"], folder)).status).toBe(1);
    expect(readFileSync(path.join(folder, "a.cotter"), "utf8")).toBe(UNTIDY);
  });
});
