import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { catalogue } from "../../server/rules/catalogue.ts";
import type { Complaint } from "../../server/rules/complaint.ts";
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
    complaint.fixes(build).map((fix) => ({ build, complaint, fix })),
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

/** The log after the mend offered for a code; what it brings to complain about instead, where it brings anything. */
function afterMending(log: string, code: string): string | undefined {
  const found = offered(log).find(({ complaint }) => complaint.code === code);
  if (found === undefined) return undefined;
  const text = mended(found.build, found.fix);
  const before = new Set(currentComplaints(found.build).map((each) => each.code));
  before.delete(code);
  const brought = currentComplaints(readExample(text)).filter((each) => !before.has(each.code));
  return brought.length === 0 ? text : `brings ${brought.map((each) => each.code).join(", ")}`;
}

describe("what was done and not written down", () => {
  const vehicle = `vehicle "Example"
  past: known

hold road "Road"
  needs: joints, systems
  planned: 2026-05-30
`;

  it("a lock and a mark go behind the tightening, whatever stands behind it on its line", () => {
    const log = (lines: string) => `${vehicle}
joint column "Column"
  torque: 24 N.m
  lock: lockwire
  mark: yes

day 2026-05-02
	loosened: column
	torqued: column 24 N.m by "JR" "at last"  # with the long bar${lines}
  The lower one was dry.
`;
    const locked = "\n\tlocked: column with lockwire";
    const marked = "\n\tmarked: column";
    expect(afterMending(log(""), "lock-missing")).toBe(log(locked));
    expect(afterMending(log(locked), "mark-missing")).toBe(log(marked + locked));
    expect(afterMending(log("").replaceAll("\n", "\r\n"), "mark-missing")).toBe(
      log(marked).replaceAll("\n", "\r\n"),
    );
  });

  it("but no threadlocker: whether the threads were clean cannot be seen afterwards", () => {
    const log = `${vehicle}
joint column "Column"
  torque: 24 N.m
  lock: threadlocker

day 2026-05-02
  loosened: column
  torqued: column 24 N.m
`;
    expect(currentComplaints(readExample(log)).map(({ code }) => code)).toEqual(["lock-missing"]);
    expect(offered(log)).toEqual([]);
  });

  it("new hardware is said behind the torque and its angle, of one joint at a time", () => {
    const log = (what: string, words: string) => `${vehicle}
joint upper "Upper"
  nut: self_locking M10x1.5
  torque: 20 N.m then 90 deg
joint lower "Lower" like upper

day 2026-05-02
  loosened: upper, lower
  torqued: ${what} 20 N.m then 90 deg${words} by "JR"
${what === "upper" ? "  torqued: lower 20 N.m then 90 deg on new hardware\n" : ""}`;
    expect(afterMending(log("upper", ""), "self-locking-reused")).toBe(log("upper", " on new hardware"));
    expect(afterMending(log("upper, lower", ""), "self-locking-reused")).toBeUndefined();
  });

  it("bleeding goes behind the filling, and is not offered of a system that was not filled", () => {
    const log = (lines: string) => `${vehicle}
system clutch "Clutch"
  bleed: yes
  parts: line

part line "Line"

day 2026-05-02
  opened: clutch
  filled: clutch 0.2 l
  bled: clutch
  removed: line
  fitted: line
${lines}`;
    const filled = "  filled: clutch 0.2 l\n";
    expect(afterMending(log(""), "opened-not-bled")).toBeUndefined();
    expect(afterMending(log(filled), "opened-not-bled")).toBe(log(`${filled}  bled: clutch\n`));
  });
});

describe("a mark behind a number where a length is due means feet", () => {
  it.each([
    'part hub "Hub"\n  limit: span max 12 ft\nday 2026-05-02\n  measured: hub span 5⁞\n',
    'part hub "Hub"\n  limit: span max 12 ft\nday 2026-05-02\n  measured: hub span 5, 4⁞ at "top"\n',
    'joint bolts "Bolts"\n  torque: 24 N.m\n  washers: 2 x 0.01⁞\n',
  ])("%j", (log) => {
    expect(afterMending(log.replace("⁞", "'"), "unknown-unit")).toBe(log.replace("⁞", " ft"));
  });
});
