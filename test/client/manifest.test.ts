/** What the manifest declares of the client, against what there is: commands, output of the program, the example. */
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test, vi } from "vitest";
import { folderNames } from "../../client/commands/folder-names.ts";
import { faultOfPath, titleFromPath } from "../../client/commands/part-path.ts";
import { today } from "../../client/commands/today.ts";
import { COMMANDS } from "../../client/first.ts";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { printCheck } from "../../server/reports/check-text.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { disk } from "../../server/workspace/disk.ts";
import { openBuild } from "../../server/workspace/open-build.ts";

vi.mock("vscode", async () => await import("./editor-stand-in.ts"));

const root = new URL("../../", import.meta.url);
const read = (file: string) => readFileSync(new URL(file, root), "utf8");
const { contributes } = JSON.parse(read("package.json"));
const clock = "2026-11-25" as IsoDate;

describe("the problem matcher", () => {
  const [{ pattern }] = contributes.problemMatchers;
  const regexp = new RegExp(pattern.regexp);

  test("finds every complaint of `cotter check`, and nothing else in its output", async () => {
    const opened = await openBuild(disk, new URL("samples/roadster", root).pathname);
    if (opened.is !== "build") throw new Error("no build");
    const { complaints } = complaintsOf(readBuild(opened.files, { clock }));
    const found = printCheck(complaints, { colour: false })
      .split("\n")
      .flatMap((line) => {
        const match = regexp.exec(line);
        return match === null ? [] : [[match[pattern.severity], match[pattern.code], match[pattern.message]]];
      });
    expect(complaints.length).toBeGreaterThan(20);
    expect(found).toEqual(complaints.map(({ severity, code, message }) => [severity, code, message]));
  });

  test("reads place and severity where they stand", () => {
    const line = "diary/May 2026.cotter:33:38: information over-limit: end_float 0.31 mm is over: why";
    const match = regexp.exec(line);
    expect(
      ["file", "line", "column", "severity", "code", "message"].map((part) => match?.[pattern[part]]),
    ).toEqual([
      "diary/May 2026.cotter",
      "33",
      "38",
      "information",
      "over-limit",
      "end_float 0.31 mm is over: why",
    ]);
    expect(regexp.test("       limit: parts/front.cotter:21")).toBe(false);
    expect(regexp.test("  18 |   measured: engine compression 9.6 bar")).toBe(false);
  });
});

describe("commands", () => {
  const declared: readonly string[] = contributes.commands.map(({ command }: { command: string }) => command);

  test("are those that the client carries out, but for the two behind rows", () => {
    const names = COMMANDS.map((name) => `cotter.${name}`);
    expect([...declared, "cotter.goTo", "cotter.showChange"].sort()).toEqual(names.sort());
  });

  test("of a build are offered only where there is one", () => {
    const always = ["cotter.startDiary", "cotter.openExample", "cotter.restartServer"];
    const conditions: readonly { command: string; when: string }[] = contributes.menus.commandPalette;
    expect(conditions.map(({ command }) => command).sort()).toEqual(
      declared.filter((command) => !always.includes(command)).sort(),
    );
    expect(conditions.filter(({ when }) => when.trim() === "")).toEqual([]);
  });

  test("in menus are declared", () => {
    const menus: readonly { command: string }[][] = Object.values(contributes.menus);
    expect(menus.flat().filter(({ command }) => !declared.includes(command))).toEqual([]);
  });
});

describe("the walkthrough", () => {
  const [{ steps }] = contributes.walkthroughs;

  test("has files that are there, and no more steps than one takes", () => {
    const files: readonly string[] = steps.map(
      ({ media }: { media: { markdown: string } }) => media.markdown,
    );
    expect(files.filter((file) => !existsSync(new URL(file, root)))).toEqual([]);
    expect(files.length).toBeLessThanOrEqual(5);
  });

  test("opens an example without errors or warnings, in which something is open", () => {
    const log = Document.read(read("media/walkthrough/example.cotter"));
    const build = readBuild([{ path: "example.cotter", document: log }], { clock });
    const { complaints } = complaintsOf(build);
    expect(complaints.map(({ severity, code }) => `${severity} ${code}`)).toEqual([
      "hint friction-assumed",
      "information under-limit",
      "information over-limit",
    ]);
  });

  test.each(["day", "example", "own", "programme"])("shows lines of a log that can be read: %s", (name) => {
    const [, log = ""] = /```\n(.*?)```/s.exec(read(`media/walkthrough/${name}.md`)) ?? [];
    const { blocks } = Document.read(log);
    expect(blocks.length).toBeGreaterThan(0);
    const faults = blocks.flatMap(({ items }) =>
      items.flatMap((item) => ("faults" in item ? item.faults : [])),
    );
    expect(faults).toEqual([]);
  });
});

describe("a new part", () => {
  test("is asked for by a path of names", () => {
    expect(["front.left.disc", "a", "rear.hub_2"].map(faultOfPath)).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(["front.9x", "front..disc", "vorn.Träger", "a b"].map(faultOfPath)).toEqual([
      "9x",
      "",
      "Träger",
      "a b",
    ]);
  });

  test("is called as its last name until one says otherwise", () => {
    expect(titleFromPath("front.left.hub_carrier")).toBe("Hub carrier");
    expect(titleFromPath("disc")).toBe("Disc");
  });
});

test("today is the day of the machine's own time zone", () => {
  expect(today(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
});

test("the folder of a new diary is called as its vehicle, with a number until it is free", () => {
  const namesOf = (vehicle: string) => {
    const names = folderNames(vehicle);
    return [names.next().value, names.next().value];
  };
  expect(namesOf("Pell Otter, 1961")).toEqual(["pell-otter-1961", "pell-otter-1961-2"]);
  expect(namesOf("Größe ../\\:*?")).toEqual(["große", "große-2"]);
  expect(namesOf("…")).toEqual(["vehicle", "vehicle-2"]);
});
