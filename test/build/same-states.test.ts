/** What says the same as in the build before becomes the same object again: verdicts do not turn with it. */
import { expect, test } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
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
