/** Complaints that go on from those of the build before are those of a fresh reading of the same texts. */
import { deepStrictEqual, strictEqual } from "node:assert/strict";
import fc from "fast-check";
import { test } from "vitest";
import type { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import { isSame } from "../../server/build/remembered.ts";
import type { Place, SourceFile } from "../../server/build/source.ts";
import { fileAfter, inOrder } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import type { Complaint, SeverityOverrides } from "../../server/rules/complaint.ts";
import type { Complaints, FileComplaints } from "../../server/rules/complaints.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { carriedOut, edit, generated, readAgain, roadster, share, spot } from "../build/edits.ts";

/** Few in the fast tests, which everyone waits for; more by `npm run test:long`. */
const RUNS = Number(process.env.COTTER_RUNS ?? 2);

/**
 * An edit anywhere; the line of a complaint, or one that it rests on, taken out or with another figure; a complaint, or
 * none, set aside with a reason; severities set otherwise.
 */
type Step =
  | { readonly is: "edit"; readonly file: number; readonly edit: Parameters<typeof carriedOut>[1] }
  | { readonly is: "cut" | "figure" | "waive"; readonly which: number; readonly beside: boolean }
  | { readonly is: "grade"; readonly as: number };

const GRADES: readonly SeverityOverrides[] = [
  new Map(),
  new Map([
    ["near-limit", "error"],
    ["safety-caution", "hint"],
    ["missing-value", "hint"],
    ["unknown-reference", "off"],
    ["delivery-overdue", "off"],
  ]),
  new Map([
    ["near-limit", "off"],
    ["unknown-reference", "hint"],
    ["unused-waiver", "off"],
    ["below-keep", "error"],
  ]),
];

const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({ is: fc.constant("edit" as const), file: fc.nat(), edit }),
  },
  {
    weight: 6,
    arbitrary: fc.record({
      is: fc.constantFrom("cut" as const, "figure" as const, "waive" as const),
      which: share,
      beside: fc.boolean(),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ is: fc.constant("grade" as const), as: fc.nat(GRADES.length - 1) }),
  },
);

const looked = { arbitrary: fc.constant(true), weight: 3 };
const unlooked = { arbitrary: fc.constant(false), weight: 1 };
const steps = fc.array(fc.record({ step, looks: fc.oneof(looked, unlooked) }), {
  minLength: 6,
  maxLength: 14,
  size: "max",
});

/** All that is shown of complaints: by file, and of all files together. */
function shown({ files, complaints, waived }: Complaints, build: Build) {
  const inWords = ({ code, severity, message, place, seeAlso, fixes, waivable }: Complaint) => [
    `${severity} ${code} ${spot(place)} ${waivable}: ${message}`,
    seeAlso.map((related) => `${spot(related.place)} ${related.message}`),
    fixes(build).map(({ title, sure, edits }) => [
      title,
      sure,
      edits.map(({ place, text }) => `${spot(place)} ${text}`),
    ]),
  ];
  return {
    files: files.map((file) => [
      file.file.path,
      file.complaints.map(inWords),
      file.waived.map(({ complaint, reason }) => [reason, ...inWords(complaint)]),
    ]),
    complaints: complaints.map(inWords),
    waived: waived.map(({ complaint, reason }) => [reason, ...inWords(complaint)]),
  };
}

/** The document with the line of a place taken out, with another figure in it, or with a reason behind it. */
function changedAt({ site, start }: Place, is: "cut" | "figure" | "waive", code: string): Document {
  const { document } = site.file;
  const { line } = document.positionIn(site.index, start);
  const from = document.offsetAt({ line, character: 0 });
  const end = document.offsetAt({ line, character: Number.MAX_SAFE_INTEGER });
  if (is === "waive") return document.edit(end, end, `  # waived ${code}: looked at`);
  if (is === "cut") return document.edit(from, end + 1, "");
  const digit = /\d(?!.*\d)/.exec(document.text.slice(from, end));
  if (digit === null) return document;
  const at = from + digit.index;
  return document.edit(at, at + 1, String((Number(digit[0]) + 3) % 10));
}

function changed(files: readonly SourceFile[], told: Complaints, step: Step): SourceFile[] {
  const replaced = (old: SourceFile, document: Document) => {
    const after = fileAfter(old, document);
    return files.map((each) => (each === old ? after : each));
  };
  if (step.is === "grade") return [...files];
  if (step.is === "edit") {
    const file = files[step.file % files.length] as SourceFile;
    return replaced(file, carriedOut(file.document, step.edit));
  }
  const complaint = told.complaints[Math.floor(step.which * told.complaints.length)];
  if (complaint === undefined) return [...files];
  const { place } = (step.beside ? complaint.seeAlso[0] : undefined) ?? complaint;
  return replaced(place.site.file, changedAt(place, step.is, complaint.code));
}

function expectGoingOn(texts: readonly SourceFile[], clock: IsoDate, numRuns: number): void {
  fc.assert(
    fc.property(steps, (all) => {
      let files = readAgain(texts);
      let build = readBuild(files, { clock });
      let overrides = GRADES[0] as SeverityOverrides;
      let told = complaintsOf(build, overrides);
      for (const { step, looks } of all) {
        files = changed(files, complaintsOf(build, overrides), step);
        if (step.is === "grade") overrides = GRADES[step.as] as SeverityOverrides;
        build = readBuild(files, { clock, before: build });
        // As in an editor, where nobody may have asked for the complaints since the last key.
        if (!looks) continue;
        const before = told;
        told = complaintsOf(build, overrides, before);
        const again = readBuild(readAgain(files), { clock });
        for (const [index, file] of inOrder(files).entries()) strictEqual(told.files[index]?.file, file);
        deepStrictEqual(shown(told, build), shown(complaintsOf(again, overrides), again));
        if (before.grounds?.overrides === overrides) expectSameLists(before, told);
      }
    }),
    { numRuns },
  );
}

/** A list that holds the same is the same. */
function expectSameLists(before: Complaints, now: Complaints): void {
  for (const [index, { complaints, waived }] of before.files.entries()) {
    const file = now.files[index] as FileComplaints;
    deepStrictEqual(isSame(file.complaints, complaints), file.complaints === complaints);
    deepStrictEqual(isSame(file.waived, waived), file.waived === waived);
  }
}

test("of a diary of months, with its mistakes", () => {
  expectGoingOn(generated({ lines: 300, broken: 0.05 }), "2024-01-01" as IsoDate, RUNS);
});

test("of a build with hold points, calculations, systems and lives", () => {
  expectGoingOn(roadster(), "2026-11-25" as IsoDate, Math.ceil(RUNS / 2));
});
