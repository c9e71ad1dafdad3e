/** In a folder that is not trusted, git is not started: a `git` of our own stands first on the path and leaves a mark. */
import { chmodSync, existsSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test, vi } from "vitest";
import { folderWith } from "../command-line/program.ts";
import { RawClient } from "./raw-client.mjs";

const LOG = 'vehicle "Kestrel"\n\npart hub "Hub"\n\nday 2026-05-02 1 h\n  removed: hub\n';

test("git is started once the folder is trusted, and by nothing before", async () => {
  const folder = folderWith({ "build.cotter": LOG });
  const mark = path.join(folderWith({}), "started");
  const git = path.join(folderWith({ git: `#!/bin/sh\necho "$@" >> "${mark}"\nexit 128\n` }), "git");
  chmodSync(git, 0o755);
  const client = new RawClient({
    env: { ...process.env, PATH: [path.dirname(git), process.env.PATH].join(path.delimiter) },
  });
  await client.start(pathToFileURL(folder).href);
  const uri = pathToFileURL(path.join(folder, "build.cotter")).href;
  client.tell("textDocument/didOpen", {
    textDocument: { uri, languageId: "cotter", version: 1, text: LOG },
  });
  const askAll = async () => {
    await client.ask("textDocument/hover", { textDocument: { uri }, position: { line: 5, character: 12 } });
    await client.ask("cotter/commits", { uri });
    await client.ask("cotter/compare", { uri, from: "HEAD", to: null });
    await client.ask("cotter/recordedText", { uri, commit: "HEAD", path: "build.cotter" });
    await client.ask("cotter/history", { uri, ref: "hub" });
  };
  for (let times = 0; times < 3; times++) await askAll();
  expect(existsSync(mark)).toBe(false);
  client.tell("cotter/trusted", { trusted: true });
  await vi.waitFor(
    async () => {
      await askAll();
      expect(existsSync(mark)).toBe(true);
    },
    { timeout: 20_000, interval: 50 },
  );
  expect(await client.stop()).toBe(0);
});
