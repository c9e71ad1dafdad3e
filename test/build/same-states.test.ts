/** What says the same as in the build before becomes the same object again: verdicts do not turn with it. */
import { expect, test } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import { securing } from "../../server/build/securing.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { fileAfter } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

const CLOCK = "2026-11-30" as IsoDate;

const WORN_DISC_FITTED = `vehicle "Pell Otter"

part disc
  limit: thickness min 8.4 mm

day 2026-11-30
  removed: disc
  measured: disc thickness 8.2 mm
  fitted: disc
`;

test("a fitting out of limits stays the mistake when its day gets a line more", () => {
  const file: SourceFile = { path: "log.cotter", document: Document.read(WORN_DISC_FITTED) };
  const before = readBuild([file], { clock: CLOCK });
  const { length } = file.document;
  const longer = fileAfter(file, file.document.edit(length, length, '  photo: "disc.jpg"\n'));
  const after = readBuild([longer], { clock: CLOCK, before });
  expect(after.findings.map(({ code, standing }) => [code, standing])).toEqual([
    ["fitted-out-of-limit", "current"],
    ["under-limit", "past"],
  ]);
});

/** The build of a log, and the one that goes on from it once one text of it is written anew. */
function goneOn(log: string, from: string, to: string) {
  const file: SourceFile = { path: "log.cotter", document: Document.read(log) };
  const before = readBuild([file], { clock: CLOCK });
  const at = log.indexOf(from);
  const after = fileAfter(file, file.document.edit(at, at + from.length, to));
  return readBuild([after], { clock: CLOCK, before });
}

test("a thing that is like another one than before is a copy of that one", () => {
  const log = `vehicle "Pell Otter"

part left
  limit: play max 1 mm

part rear
  limit: gap max 1 mm

part right like left
`;
  const { gathered, definitions } = goneOn(log, "like left", "like rear").standing;
  const right = gathered.tree.at("right");
  expect(right?.copyOf).toBe("rear");
  expect(right && definitions.all(right, "limit").map(({ record }) => record.name)).toEqual(["gap"]);
});

test("a recheck that is asked for in a later day counts what ran before it", () => {
  const log = `vehicle "Pell Otter"
  past: known

joint flange
  torque: 24 N.m

day 2026-11-01
  torqued: flange 24 N.m
  ran: vehicle 2 h

day 2026-11-02
  ran: vehicle 1 h

day 2026-11-30
  photo: "flange.jpg"
`;
  const asked = '  photo: "flange.jpg"\n  changed: flange recheck after 1 h\n';
  const build = goneOn(log, '  photo: "flange.jpg"\n', asked);
  const [joint] = build.standing.joints.keys();
  expect(joint && securing(build.standing, joint).lacks).toEqual(["to be checked after 1 h, ran 3 h"]);
});
