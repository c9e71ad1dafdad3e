/** The server in an editor that knows nothing of it: Neovim, by its own LSP client (Debian package `neovim`). */
import { spawnSync } from "node:child_process";
import { mkdtemp, realpath, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, test } from "vitest";
import { bundleOf } from "./bundle.ts";

const NEOVIM = "nvim";
const SCRIPT = path.resolve("test/language-server/session/neovim.lua");

const LOG = `vehicle "Halvorsen Sprint"

part front.disc "Brake disc"
  limit: thickness min 8.4 mm

day 2026-05-02 4 h
  remvoed: front.disc
`;

interface Seen {
  readonly at_first: readonly string[];
  readonly hover: string;
  readonly completion: readonly string[];
  readonly renamed: readonly string[];
  readonly refused: string;
  readonly formatted: string;
  readonly exit: number;
}

test("Neovim shows complaints as one writes, hovers, completes, renames, formats, and ends the server", async () => {
  const folder = await realpath(await mkdtemp(path.join(tmpdir(), "cotter-neovim-")));
  await writeFile(path.join(folder, "log.cotter"), LOG);
  const { error, stdout, stderr } = spawnSync(
    NEOVIM,
    [
      "--headless",
      "--noplugin",
      "-n",
      "-u",
      "NONE",
      "-i",
      "NONE",
      "-c",
      `luafile ${SCRIPT}`,
      "-c",
      "quitall!",
    ],
    {
      encoding: "utf8",
      timeout: 55_000,
      env: {
        ...process.env,
        HOME: folder,
        XDG_STATE_HOME: folder,
        COTTER_NODE: process.execPath,
        COTTER_PROGRAM: await bundleOf("cotter"),
        COTTER_FOLDER: folder,
      },
    },
  );
  await rm(folder, { recursive: true });
  if (error !== undefined)
    throw new Error("Neovim does not start: install the Debian package neovim", { cause: error });
  const line = stdout.split("\n").find((each) => each.startsWith("{"));
  if (line === undefined) throw new Error(`Neovim says: ${stdout}${stderr}`);
  const seen = JSON.parse(line) as Seen;
  expect(seen.at_first).toEqual(["unknown-record"]);
  expect(seen.hover).toContain("**Brake disc** `front.disc`");
  expect(seen.hover).toContain("off since 2026-05-02");
  expect(seen.completion).toEqual(expect.arrayContaining(["renew", "reuse", "scrap"]));
  expect(seen.renamed).toEqual([
    'vehicle "Halvorsen Sprint"',
    "",
    'part front.rotor "Brake disc"',
    "  limit: thickness min 8.4 mm",
    "",
    "day 2026-05-02 4 h",
    "  removed: front.rotor",
    "  decided: front.rotor renew",
  ]);
  expect(seen.refused).toBe("with is a word of the notation");
  expect(seen.formatted).toBe("  decided: front.rotor renew");
  expect(seen.exit).toBe(0);
});
