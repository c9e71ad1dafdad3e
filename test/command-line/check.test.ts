import { describe, expect, it } from "vitest";
import { commands } from "../../server/command-line/commands.ts";
import { commandHelp, programHelp } from "../../server/command-line/help.ts";
import { cotter, folderWith } from "./program.ts";

/** A diary with four mistakes: a typo, a wrong unit, a reading over its limit, a bolt that is too short. */
const FOUR_MISTAKES = {
  "build.cotter": `vehicle "Marsh Kestrel"
  past: known
  today: 2026-05-04

gauge dial "Dial gauge"
  resolution: 0.01 mm

part front.hub "Hub"
part front.disc "Disc"
  limit: runout max 0.10 mm

joint front.disc_bolts "Disc to hub"
  joins: front.hub, front.disc
  bolt: 4 x M8x1.25x30 class 8.8
  nut: plain M8x1.25 class 8 height 6.5 mm
  grip: 24 mm
  torque: 24 N.m ± 10 %
  friction: oiled

day 2026-05-02 3 h
  A quiet evening with the left front.
  remvoed: front.disc
  measured: front.disc runout 0.14 mm with dial
  inspected: front.hub
  torqued: front.disc_bolts 24 nm
`,
};

describe("cotter check", () => {
  it("shows of a very long line what stands about the place", async () => {
    const line = `  removed: ${Array.from({ length: 60 }, () => "disc").join(", ")}, disk, disc`;
    const log = `vehicle "Marsh Kestrel"\n  past: known\n\npart disc "Disc"\n\nday 2026-05-02\n${line}\n`;
    const { out } = await cotter(["check"], folderWith({ "build.cotter": log }));
    const [, excerpt = "", carets = ""] = out.split("\n");
    expect(excerpt.length).toBeLessThan(260);
    expect(excerpt).toMatch(/ \| ….*, disk, disc$/);
    expect(excerpt.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1)).toBe("disk");
  });

  it("reports each mistake of a fresh diary at its place, and reads the rest", async () => {
    const { status, out } = await cotter(["check", "--json"], folderWith(FOUR_MISTAKES));
    expect(status).toBe(1);
    const { complaints } = JSON.parse(out);
    const errors = complaints
      .filter(({ severity }: { severity: string }) => severity === "error")
      .map(
        ({ code, from }: { code: string; from: { line: number; column: number } }) =>
          `${from.line}:${from.column} ${code}`,
      );
    expect(errors).toEqual([
      "14:3 bolt-too-short",
      "22:3 unknown-record",
      "23:31 over-limit",
      "25:32 wrong-dimension",
    ]);
  });

  it("underlines what is meant and says both figures", async () => {
    const { out } = await cotter(["check"], folderWith(FOUR_MISTAKES));
    expect(out).toContain(
      [
        "build.cotter:23:31: error over-limit: runout 0.14 mm is over its limit of 0.10 mm by 0.04 mm",
        "  23 |   measured: front.disc runout 0.14 mm with dial",
        "     |                               ^^^^^^^",
      ].join("\n"),
    );
  });

  it("ends with 0 where there is nothing to complain about", async () => {
    const folder = folderWith({ "a.cotter": 'vehicle "Marsh Kestrel"\n' });
    expect(await cotter(["check"], folder)).toEqual({
      status: 0,
      out: "nothing to complain about\n",
      err: "",
    });
  });

  it("counts warnings with --strict", async () => {
    const log =
      'vehicle "Marsh Kestrel"\n  past: known\n\npart hub "Hub"\n\nday 2026-05-02\n  removed: hub\n  removed: hub\n';
    const folder = folderWith({ "a.cotter": log });
    expect((await cotter(["check"], folder)).status).toBe(0);
    expect((await cotter(["check", "--strict"], folder)).status).toBe(1);
  });

  it("reads the build around the folder it is called in, and a file of it the same", async () => {
    const folder = folderWith({
      "vehicle.cotter": 'vehicle "Marsh Kestrel"\n  past: known\n',
      "diary/may.cotter": "day 2026-05-02\n  removed: nothing\n",
    });
    const below = await cotter(["check"], `${folder}/diary`);
    const file = await cotter(["check", `${folder}/diary/may.cotter`]);
    expect(below.out).toContain("diary/may.cotter:2:12: error unknown-reference");
    expect(file).toEqual(below);
  });

  it("leaves out a folder below that has a vehicle of its own", async () => {
    const folder = folderWith({
      "a.cotter": 'vehicle "Marsh Kestrel"\n',
      "other/b.cotter": 'vehicle "Marsh Merlin"\n  nonsense: 1\n',
    });
    expect((await cotter(["check"], folder)).status).toBe(0);
  });
});

describe("cotter", () => {
  it.each([
    [["check", "nowhere"], "there is no file or folder nowhere"],
    [["check", "--on", "2026-13-01"], "there is no month 13"],
    [["chekc"], "there is no command chekc"],
    [["check", "--nonsense"], "Unknown option '--nonsense'"],
    [["order", "--csv", "--json"], "choose one form"],
  ])("ends with 2 and says why: %j", async (words, message) => {
    const { status, out, err } = await cotter(words, folderWith({ "a.cotter": 'vehicle "Marsh Kestrel"\n' }));
    expect({ status, out }).toEqual({ status: 2, out: expect.any(String) });
    expect(err).toContain(message);
  });

  it("says the failure on standard output too, as an object, with --json", async () => {
    const { status, out } = await cotter(["check", "nowhere", "--json"]);
    expect(status).toBe(2);
    expect(JSON.parse(out)).toEqual({
      schema: "cotter/failure/1",
      message: "there is no file or folder nowhere",
    });
  });

  it("lists the builds below a folder that has several", async () => {
    const folder = folderWith({ "one/a.cotter": 'vehicle "A"\n', "two/b.cotter": 'vehicle "B"\n' });
    expect((await cotter(["check"], folder)).err).toContain("name one of one, two");
  });

  it("has help, which leads to that of a command", async () => {
    expect((await cotter(["--help"])).out).toContain("cotter COMMAND --help");
    const help = await cotter(["check", "--help"]);
    expect(help.status).toBe(0);
    expect(help.out).toContain("For example:\n  cotter check");
  });

  it.each([...commands])("has help with an example for %s", async (name, load) => {
    expect(programHelp()).toMatch(new RegExp(`^ {2}${name} {2}`, "m"));
    expect(commandHelp(await load())).toContain(`For example:\n  cotter ${name}`);
  });
});
