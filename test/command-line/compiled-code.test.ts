/** The compiled code that the build puts beside the parts of the program. */
import { cpSync, mkdtempSync, readdirSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { scriptOf } from "../../server/command-line/compiled-code.ts";
import { setEngine } from "../../server/command-line/engine-settings.ts";
import { cotter, folderWith, programIn } from "./program.ts";

const LOG = { "build.cotter": 'vehicle "Marsh Kestrel"\n  oops: 1\n' };

/** A copy of the program as it is shipped that the test may change, in a folder with a space. */
function copied() {
  const dist = path.join(mkdtempSync(path.join(tmpdir(), "cotter dist ")), "a copy");
  cpSync(fileURLToPath(new URL("../../dist", import.meta.url)), dist, { recursive: true });
  const parts = readdirSync(path.join(dist, "parts")).map((name) => path.join(dist, "parts", name));
  return {
    program: path.join(dist, "cotter.cjs"),
    codes: parts.filter((file) => file.endsWith(".cjs.code")),
  };
}

test("is that of the parts beside it, for the Node that has built them", () => {
  setEngine();
  const { codes } = copied();
  expect(codes.length).toBeGreaterThan(0);
  for (const code of codes) {
    const file = code.slice(0, -".code".length);
    expect(scriptOf(file).cachedDataRejected, file).toBe(false);
    writeFileSync(code, "code of something else");
    expect(scriptOf(file).cachedDataRejected, file).toBe(true);
    rmSync(code);
    expect(scriptOf(file).cachedDataRejected, file).toBeUndefined();
  }
});

test.each([
  ["is there", () => undefined],
  ["is cut off", (code: string) => truncateSync(code, 2000)],
  ["is something else", (code: string) => writeFileSync(code, "x".repeat(4000))],
  ["is not there", (code: string) => rmSync(code)],
])("changes nothing of what the program says where it %s", async (_, change) => {
  const { program, codes } = copied();
  codes.forEach(change);
  const folder = folderWith(LOG);
  const ended = programIn(program, ["check", "--no-colour"], folder);
  expect(ended.status).toBe(1);
  expect(ended).toEqual(await cotter(["check", "--no-colour"], folder));
});
