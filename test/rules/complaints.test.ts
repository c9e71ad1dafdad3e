import { describe, expect, it } from "vitest";
import { lineOf, textAt } from "../../server/build/source.ts";
import type { SeverityOverrides } from "../../server/rules/complaint.ts";
import type { Complaints } from "../../server/rules/complaints.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { readLogs } from "./read-log.ts";

const DISC = `vehicle "Example"
  past: known

part disc "Brake disc"
  limit: runout max 0.10 mm
`;

function complaints(text: string, overrides?: SeverityOverrides) {
  return complaintsOf(readLogs([{ path: "log.cotter", text }]), overrides);
}

const inShort = (text: string, overrides?: SeverityOverrides) =>
  complaints(text, overrides).complaints.map(({ severity, code }) => `${severity} ${code}`);

describe("a severity that is set otherwise", () => {
  const log = `${DISC}\nday 2026-05-02\n  measured: disc runout 0.14 mm\n`;

  it("is shown as it is set", () => {
    expect(inShort(log, new Map([["over-limit", "hint"]]))).toEqual(["hint over-limit"]);
  });

  it("is not shown when it is off", () => {
    expect(inShort(log, new Map([["over-limit", "off"]]))).toEqual([]);
  });
});

describe("a waiver", () => {
  const measured = (waiver: string) =>
    `${DISC}\nday 2026-05-02\n  measured: disc runout 0.14 mm  ${waiver}\n`;

  it("sets the complaint of its line aside, and keeps it with its reason", () => {
    const { complaints: left, waived } = complaints(measured("# waived over-limit: scrap disc, for the jig"));
    expect(left).toEqual([]);
    expect(waived.map(({ complaint, reason }) => [complaint.code, reason])).toEqual([
      ["over-limit", "scrap disc, for the jig"],
    ]);
  });

  it("without a reason sets it aside all the same, and is a warning itself", () => {
    expect(inShort(measured("# waived over-limit"))).toEqual(["warning waiver-without-reason"]);
  });

  it("of another line does nothing, and is said not to be needed", () => {
    const log = `${DISC}  # waived over-limit: elsewhere\n\nday 2026-05-02\n  measured: disc runout 0.14 mm\n`;
    const waived = log.replace("mm\n  # waived", "mm  # waived");
    expect(inShort(waived)).toEqual(["hint unused-waiver", "error over-limit"]);
  });

  it("may stand on any line of a record that goes on", () => {
    const log = `${DISC}\nday 2026-05-02\n  measured: disc runout 0.12,  # waived over-limit: jig\n    0.14 mm\n`;
    expect(inShort(log)).toEqual([]);
  });

  it("cannot set aside an error on something whose failure can hurt", () => {
    const log = measured("# waived over-limit: it will do").replace(
      "part disc",
      "assembly brakes\n  safety: critical\npart brakes.disc",
    );
    const { complaints: left, waived } = complaints(log.replace("measured: disc", "measured: brakes.disc"));
    expect(left.map(({ code }) => code)).toEqual(["over-limit"]);
    expect(left[0]?.message).toContain("not waived");
    expect(waived).toEqual([]);
  });

  it("cannot do so after its severity was set lower either", () => {
    const log = `${DISC.replace("runout max", "runout max").replace('"Brake disc"', '"Brake disc"\n  safety: critical')}
day 2026-05-02
  measured: disc runout 0.14 mm  # waived over-limit: it will do
`;
    expect(inShort(log, new Map([["over-limit", "warning"]]))).toEqual(["warning over-limit"]);
  });
});

describe("a waiver sets aside what its own line says", () => {
  const day = (first: string, second: string) =>
    `${DISC}\nday 2026-05-02\n  measured: disc runout 0.14 mm${first}\n  measured: disc runout 0.15 mm${second}\n`;
  const waiver = "  # waived over-limit: jig";
  const errors = (log: string) =>
    complaints(log)
      .complaints.filter(({ code }) => code === "over-limit")
      .map(({ place }) => lineOf(place));

  it("and nothing of the line before or behind", () => {
    expect(errors(day("", ""))).toEqual([8, 9]);
    expect(errors(day(waiver, ""))).toEqual([9]);
    expect(errors(day("", waiver))).toEqual([8]);
  });

  it("on a header too", () => {
    const log = `${DISC}\ngauge dial "Dial"  # waived unused-definition: bought for later\n`;
    const found = complaints(log);
    expect(found.complaints).toEqual([]);
    expect(found.waived.map(({ complaint }) => complaint.code)).toEqual(["unused-definition"]);
  });
});

describe("a waiver that is not needed", () => {
  const log = `${DISC}\nday 2026-05-02\n  measured: disc runout 0.04 mm \t # waived over-limit: jig\n`;

  it("is taken out with the spaces before it", () => {
    const build = readLogs([{ path: "log.cotter", text: log }]);
    const [unused] = complaintsOf(build).complaints;
    const [fix] = unused?.fixes(build) ?? [];
    expect(unused?.code).toBe("unused-waiver");
    expect(fix?.title).toBe("Take the waiver out");
    expect(fix?.sure).toBe(false);
    expect(fix?.edits.map(({ place, text }) => [textAt(place), text])).toEqual([
      [" \t # waived over-limit: jig", ""],
    ]);
  });

  it("is no complaint where that is off, and is graded as it is set", () => {
    expect(inShort(log, new Map([["unused-waiver", "off"]]))).toEqual([]);
    expect(inShort(log, new Map([["unused-waiver", "error"]]))).toEqual(["error unused-waiver"]);
  });

  it("is told apart from one of a rule that there is not", () => {
    const [known, unknown] = [log, log.replace("over-limit", "no-such-rule")].map(
      (text) => complaints(text).complaints[0]?.message,
    );
    expect(known).not.toBe(unknown);
    expect(unknown).toContain("no-such-rule");
  });
});

describe("complaints", () => {
  it("stand in the order of the text, whatever rule they are of", () => {
    const log = `${DISC}  material: stel

day 2026-05-02
  remvoed: disc
  measured: disc runout 0.14 mm
`;
    const { complaints: found } = complaints(log);
    expect(found.map(({ place }) => lineOf(place))).toEqual([6, 9, 10]);
  });

  it("are one where a copied line is wrong in each of its copies", () => {
    const log = `vehicle "Example"
  past: known

part left.disc "Disc"
  material: stel
assembly right "Right" like left
assembly spare "Spare" like left
`;
    expect(inShort(log)).toEqual(["error unreadable-value"]);
  });

  it("are about the words that are wrong, and no more", () => {
    const log = `${DISC}\nday 2026-05-02\n  measured: disc runout 0.14 mm with dti\n`;
    const texts = complaints(log).complaints.map(({ place }) => textAt(place));
    expect(texts).toEqual(["0.14 mm", "dti"]);
  });

  it("of one rule that fails take no other with them, and the failure is told", () => {
    const build = readLogs([
      { path: "log.cotter", text: `${DISC}\nday 2026-05-02\n  measured: disc runout 0.14 mm with dti\n` },
    ]);
    const findings = build.findings.map((each) =>
      each.code === "over-limit" ? { ...each, data: undefined as never } : each,
    );
    const { complaints: found } = complaintsOf({ ...build, findingLists: [findings] });
    expect(found.map(({ code }) => code)).toEqual(["over-limit", "unknown-reference"]);
    expect(found[0]?.message).toContain("the rule over-limit failed and has checked nothing");
  });

  it("go on from those that a rule could not tell, and to them, as if they were told afresh", () => {
    const build = readLogs([
      { path: "log.cotter", text: `${DISC}\nday 2026-05-02\n  measured: disc runout 0.14 mm with dti\n` },
    ]);
    const damaged = {
      ...build,
      findingLists: build.findingLists.map((list) =>
        list.map((each) => (each.code === "over-limit" ? { ...each, data: undefined as never } : each)),
      ),
    };
    const said = ({ complaints }: Complaints) => complaints.map(({ code, message }) => `${code}: ${message}`);
    const [whole, failed] = [complaintsOf(build), complaintsOf(damaged)];
    expect(said(whole)).not.toEqual(said(failed));
    expect(said(complaintsOf(damaged, undefined, whole))).toEqual(said(failed));
    expect(said(complaintsOf(build, undefined, failed))).toEqual(said(whole));
  });

  it("that stand at one place are in the order of their codes", () => {
    const log = `${DISC}  material: stel\n\nday 2026-05-02\n  remvoed: disc\n  measured: disc runout 0.14 mm with dti\n`;
    const build = readLogs([{ path: "log.cotter", text: log }]);
    // A rule that fails says so at the start of the log.
    const findings = build.findings.map((each) => ({ ...each, data: undefined as never }));
    const codes = complaintsOf({ ...build, findingLists: [findings.toReversed()] }).complaints.map(
      ({ code }) => code,
    );
    expect(codes.length).toBeGreaterThan(2);
    expect(codes).toEqual([...codes].sort());
  });

  it("lead to what they rest on", () => {
    const [over] = complaints(`${DISC}\nday 2026-05-02\n  measured: disc runout 0.14 mm\n`).complaints;
    expect(over?.seeAlso.map(({ place, message }) => [message, lineOf(place)])).toEqual([["limit", 5]]);
  });
});
