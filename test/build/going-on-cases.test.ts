/** What a build that goes on hears of, and what it keeps: cases that random edits seldom meet. */
import { deepStrictEqual } from "node:assert/strict";
import { test } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { fileAfter } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { readAgain } from "./edits.ts";
import { shown } from "./shown-build.ts";

test("keeps no more moments of a diary, however many of its days are written in", () => {
  const days = Array.from({ length: 200 }, (_, index) => {
    const date = new Date(Date.UTC(2026, 0, 1 + index)).toISOString().slice(0, 10);
    return `day ${date}\n  removed: disc\n`;
  });
  const document = Document.read(`vehicle "Pell Otter"\n\npart disc\n\n${days.join("\n")}`);
  const clock = "2026-12-31" as IsoDate;
  let file: SourceFile = { path: "log.cotter", document };
  let build = readBuild([file], { clock });
  const kept = days.map((_, index) => {
    const end = (file.document.offsets[index + 2] ?? 0) + (file.document.blocks[index + 2]?.text.length ?? 0);
    file = fileAfter(file, file.document.edit(end - 1, end - 1, "  cleaned: disc by solvent\n"));
    build = readBuild([file], { clock, before: build });
    return build.diary.moments.length;
  });
  deepStrictEqual(Math.max(...kept) <= 2 * 4 + 2, true);
  deepStrictEqual(Math.min(...kept.slice(50)) > 1, true);
});

test("hears of a line that can no longer be read in a day of the same facts, and of one that can again", () => {
  const clock = "2026-12-31" as IsoDate;
  const texts = ["day 2026-05-01\n  removed: disc", "day 2026-05-02\n  fitted: disc"];
  let file: SourceFile = {
    path: "log.cotter",
    document: Document.read(`vehicle "Pell Otter"\n\npart disc\n\n${texts.join("\n\n")}\n`),
  };
  let build = readBuild([file], { clock, isGoneOnFrom: true });
  const write = (text: string, instead: string) => {
    const start = file.document.text.indexOf(instead);
    file = fileAfter(file, file.document.edit(start, start + instead.length, text));
    build = readBuild([file], { clock, before: build });
    return build.standing.lost.map(({ text: lost }) => lost);
  };
  const steps = [
    write("removed: disc\n  A word more.", "removed: disc"),
    write("removd: disc", "A word more."),
    write("removd: disk", "removd: disc"),
    write("A word more.", "removd: disk"),
  ];
  deepStrictEqual(steps, [[], ["removd: disc"], ["removd: disk"], []]);
});

test("hears of what is written below a day whose date is none: nobody could read that either", () => {
  const clock = "2026-12-31" as IsoDate;
  let file: SourceFile = {
    path: "log.cotter",
    document: Document.read(
      `vehicle "Pell Otter"\n\npart disc\npart hub\n\nday 2026-02-30\n  removed: hub\n`,
    ),
  };
  let build = readBuild([file], { clock, isGoneOnFrom: true });
  const about = () => {
    const parts = build.standing.gathered.tree.ofKind("part");
    return parts.filter((node) => build.standing.source.lostAbout(node).length > 0).map(({ path }) => path);
  };
  deepStrictEqual(about(), ["hub"]);
  file = fileAfter(file, file.document.edit(file.document.length, file.document.length, "  removed: disc\n"));
  build = readBuild([file], { clock, before: build });
  deepStrictEqual(about(), ["disc", "hub"]);
});

/**
 * Writes in one log, and looks after each edit whether it is what a fresh reading gives.
 *
 * @returns whether a complaint of a code is there after the edit
 */
function writerIn(text: string, code: string) {
  const clock = "2026-12-31" as IsoDate;
  let file: SourceFile = { path: "log.cotter", document: Document.read(text) };
  let build = readBuild([file], { clock, isGoneOnFrom: true });
  return (of: string, instead: string): boolean => {
    const start = file.document.text.indexOf(of);
    file = fileAfter(file, file.document.edit(start, start + of.length, instead));
    build = readBuild([file], { clock, before: build });
    deepStrictEqual(shown(build), shown(readBuild(readAgain([file]), { clock })));
    return complaintsOf(build).complaints.some((one) => one.code === code);
  };
}

test("hears of a part that can hurt from now on, and of one that no longer can, in what was read of its joint", () => {
  const write = writerIn(
    `vehicle "Pell Otter"

part disc
  as_found: off
  material: steel

joint bolts
  joins: disc
  torque: 24 N.m

day 2026-05-01
  tightened: bolts
`,
    "tightened-by-feel",
  );
  const steps = [
    // The diary is read again from its beginning, and what hangs together is known from before.
    write("as_found: off", "as_found: on"),
    write("steel\n", "steel\n  safety: critical\n"),
    write("  safety: critical\n", ""),
  ];
  deepStrictEqual(steps, [false, true, false]);
});

test("hears of a name that can be measured no longer, and of one that can again, wherever it is referred to", () => {
  const write = writerIn(
    `vehicle "Pell Otter"

part hub
  limit: seal 0.05..0.13 mm
  limit: end_float 0.05..0.13 mm

part hub.seal

joint nut
  joins: hub
  set_by: hub.seal

day 2026-05-01
  measured: hub.seal 0.2 mm
`,
    "missing-value",
  );
  const steps = [
    write("limit: seal", "limit: sael"),
    write("limit: sael", "limit: seal"),
    write("limit: seal", "limit: gap"),
  ];
  deepStrictEqual(steps, [true, false, true]);
});

test("hears of records of a thing that the diary has changed, whichever is written anew", () => {
  const write = writerIn(
    `vehicle "Pell Otter"

part hub
  limit: end_float 0.05..0.13 mm
  limit: runout max 0.10 mm

day 2026-05-02
  changed: hub limit end_float 0.05..0.20 mm

day 2026-05-03
  measured: hub end_float 0.17 mm
  measured: hub runout 0.15 mm
`,
    "over-limit",
  );
  const steps = [
    write("0.05..0.13 mm", "0.04..0.13 mm"),
    write("max 0.10 mm", "max 0.20 mm"),
    write("0.05..0.20 mm", "0.05..0.16 mm"),
    write("  changed: hub limit end_float 0.05..0.16 mm\n", ""),
    write("0.04..0.13 mm", "0.04..0.18 mm"),
  ];
  deepStrictEqual(steps, [true, false, true, true, false]);
});
