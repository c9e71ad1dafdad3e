/** The program in a process of its own says and does what `run`, which all other tests call, says and does. */
import { describe, expect, it } from "vitest";
import { commands } from "../../server/command-line/commands.ts";
import { bundledCotter, cotter, folderWith } from "./program.ts";

const SLIP =
  'vehicle "Marsh Kestrel"\n  past: known\n\npart hub "Hub"\n  material: steel \u009b31m\n  oops: 1\n';

describe("the bundled program", () => {
  it.each([
    [0, ["--version"]],
    [0, ["parts"]],
    [1, ["check", "--no-colour"]],
    [2, ["check", "nowhere", "--json"]],
    [2, ["book", "--out", "none/book.html"]],
    [2, ["chekc"]],
  ])("ends with %i and says the same after %j", async (status, words) => {
    const folder = folderWith({ "build.cotter": SLIP });
    const ended = await bundledCotter(words, folder);
    expect(ended.status).toBe(status);
    expect(ended).toEqual(await cotter(words, folder));
  });

  it.each([...commands.keys()])("has the part of itself that %s needs", async (name) => {
    const { status, out, err } = await bundledCotter([name, "--help"]);
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain(`cotter ${name}`);
  });
});
