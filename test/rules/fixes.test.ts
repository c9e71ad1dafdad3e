import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { catalogue } from "../../server/rules/catalogue.ts";
import type { Complaint } from "../../server/rules/complaints.ts";
import { currentComplaints, exampleText, readExample } from "../../server/rules/example.ts";
import type { Fix } from "../../server/rules/rule.ts";

/** The text of a build of one file with a mend carried out. */
function mended(build: Build, { edits }: Fix): string {
  const [file] = build.files;
  const inFile = edits.map(({ place, text }) => {
    const offset = file?.document.offsets[place.site.index] ?? 0;
    return { start: offset + place.start, end: offset + place.end, text };
  });
  return inFile
    .sort((a, b) => b.start - a.start)
    .reduce(
      (text, edit) => text.slice(0, edit.start) + edit.text + text.slice(edit.end),
      file?.document.text ?? "",
    );
}

function offered(text: string): { build: Build; complaint: Complaint; fix: Fix }[] {
  const build = readExample(text);
  return currentComplaints(build).flatMap((complaint) =>
    complaint.fixes.map((fix) => ({ build, complaint, fix })),
  );
}

const ofExamples = [...catalogue.values()].flatMap((rule) =>
  offered(exampleText(rule, rule.bad)).map((each) => ({ ...each, code: rule.code, title: each.fix.title })),
);

describe("a mend", () => {
  it.each(ofExamples)("of $code, $title, ends that complaint", ({ build, complaint, fix }) => {
    const after = currentComplaints(readExample(mended(build, fix)));
    expect(after.map(({ code }) => code)).not.toContain(complaint.code);
  });

  it.each(ofExamples.filter(({ fix }) => fix.sure))(
    "that is sure, of $code, $title, leaves nothing to complain about",
    ({ build, fix }) => {
      expect(currentComplaints(readExample(mended(build, fix)))).toEqual([]);
    },
  );
});

describe("what an unknown reference names is defined", () => {
  const fixOf = (text: string, title: string) => {
    const found = offered(text).find(({ fix }) => fix.title === title);
    return found && mended(found.build, found.fix);
  };

  it("behind the things whose path is nearest", () => {
    const log = `vehicle "Example"
  past: known

part front.left.disc "Disc"

day 2026-05-02
  removed: front.left.pads
`;
    expect(fixOf(log, "Define the part front.left.pads")).toBe(`${log}\npart front.left.pads "Pads"\n`);
  });

  it("as whatever kind its place takes", () => {
    const log = `vehicle "Example"
  past: known

part hub "Hub"
  limit: bore 54.00..54.05 mm

day 2026-05-02
  measured: hub bore 54.02 mm with bore_gauge
`;
    expect(fixOf(log, "Define the gauge bore_gauge")).toBe(`${log}\ngauge bore_gauge "Bore gauge"\n`);
  });

  it("but not out of a set, which would lose the others", () => {
    const log = `vehicle "Example"
  past: known

part front.hub "Hub"

day 2026-05-02
  removed: front.{hub, disk}
`;
    const titles = offered(log).map(({ fix }) => fix.title);
    expect(titles).toEqual(["Define the part front.disk"]);
  });
});
