import { describe, expect, it } from "vitest";
import { outstandingReport, outstandingTable } from "../../server/reports/outstanding.ts";
import { renderText } from "../../server/reports/render-text.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { buildOf } from "../build/marked-build.ts";

const reportOf = (log: string) => {
  const build = buildOf(log);
  return outstandingReport(build, complaintsOf(build).waived);
};

describe("a build of forty joints", () => {
  const JOINTS = Array.from({ length: 40 }, (_, index) => `bolt${String(index + 1).padStart(2, "0")}`);
  /** What is done to each joint in turn, and whether it is then secured. */
  const WAYS: readonly { readonly facts: (joint: string) => string; readonly secured: boolean }[] = [
    { facts: (joint) => `  torqued: ${joint} 20 N.m\n  marked: ${joint}\n`, secured: true },
    { facts: (joint) => `  torqued: ${joint} 20 N.m\n`, secured: false },
    { facts: (joint) => `  torqued: ${joint} 24 N.m\n  marked: ${joint}\n`, secured: false },
    { facts: (joint) => `  nipped: ${joint}\n`, secured: false },
    { facts: () => "", secured: false },
    { facts: (joint) => `  torqued: ${joint} 21.9 N.m\n  marked: ${joint}\n`, secured: true },
    {
      facts: (joint) => `  torqued: ${joint} 20 N.m\n  marked: ${joint}\n  loosened: ${joint}\n`,
      secured: false,
    },
    {
      facts: (joint) => `  loosened: ${joint}\n  torqued: ${joint} 177 lbf.in\n  marked: ${joint}\n`,
      secured: true,
    },
  ];
  const way = (index: number) => WAYS[index % WAYS.length] as (typeof WAYS)[number];
  const log = `vehicle "Plover"
  past: unknown

hold ready "Ready"
  needs: joints

${JOINTS.map(
  (joint) => `part ${joint}_plate "Plate"
joint ${joint} "Plate to frame"
  joins: ${joint}_plate
  torque: 20 N.m ± 10 %
  lock: none
  mark: yes
`,
).join("\n")}
day 2026-05-02
${JOINTS.map((joint, index) => way(index).facts(joint)).join("")}`;

  it("has exactly those outstanding that are not secured", () => {
    const unsecured = JOINTS.filter((_, index) => !way(index).secured);
    const [ready] = reportOf(log).holds;
    expect(ready?.open.map(({ ref }) => ref)).toEqual(unsecured);
    expect(unsecured).toHaveLength(25);
    expect(new Set(ready?.open.map(({ code }) => code))).toEqual(new Set(["joint-unsecured"]));
  });
});

describe("the report", () => {
  const log = `
vehicle "Plover"
  past: known

hold first "First run"
  needs: parts
  planned: 2026-06-01
hold later "Later"
  needs: parts
  after: first
part seat "Seat"
part door "Door"
supplier hadley "Hadley"
part rod "Radius rod"
  safety: critical

day 2026-05-02
  released: first
  removed: seat, rod
  sent: rod to hadley for "straighten" due 2026-06-10  # waived safety-weld: jigged and crack tested
`;

  it("says for each hold point what is open and where, and lists what is waived", () => {
    const report = reportOf(log);
    expect(report.holds).toEqual([
      {
        ref: "first",
        title: "First run",
        planned: "2026-06-01",
        ready: false,
        released: null,
        lapsed: "2026-05-02",
        open: [
          { code: "part-off", ref: "seat", message: "off since 2026-05-02", file: "log.cotter", line: 18 },
          { code: "part-off", ref: "rod", message: "away since 2026-05-02", file: "log.cotter", line: 19 },
        ],
      },
      expect.objectContaining({ ref: "later", ready: false, released: null, lapsed: null, planned: null }),
    ]);
    expect(report.waived).toEqual([
      expect.objectContaining({ code: "safety-weld", reason: "jigged and crack tested", line: 19 }),
    ]);
  });

  it("says that the log proves nothing about the vehicle, whatever is open", () => {
    expect(reportOf(log).caution).toBe(
      "The log shows 3 items open; it does not prove the vehicle safe; inspection decides.",
    );
    expect(reportOf('part seat "Seat"\nhold ready "Ready"\n').caution).toBe(
      "The log shows nothing open; it does not prove the vehicle safe; inspection decides.",
    );
  });

  it("is of one hold point where one is asked for", () => {
    const build = buildOf(log);
    const later = build.standing.names.named("hold", "later");
    expect(outstandingReport(build, [], later).holds.map(({ ref }) => ref)).toEqual(["later"]);
  });

  it("of a build without hold points is of the vehicle as a whole", () => {
    const report = reportOf('part seat "Seat"\n\nday 2026-05-02\n  removed: seat\n');
    expect(report.holds).toMatchObject([{ ref: "vehicle", ready: false, open: [{ ref: "seat" }] }]);
  });

  it("of a build without hold points says so, and nothing of a release", () => {
    const said = (log: string) => {
      const { sections, notes } = outstandingTable(buildOf(log), []);
      return [sections.map(({ heading }) => heading), notes.map((note) => note.slice(0, 26))];
    };
    const seat = 'vehicle "Plover"\n  past: known\npart seat "Seat"\n';
    const note = "The log has no hold point,";
    expect(said(`${seat}day 2026-05-02\n  removed: seat\n`)).toEqual([
      ["Plover, as a whole: 1 open"],
      [note],
    ]);
    expect(said(seat)).toEqual([["Plover, as a whole"], [note]]);
    expect(said(`${seat}hold ready "Ready"\n`)).toEqual([["Ready (ready): ready to be released"], []]);
  });

  it("reads in a terminal: each hold point, a box for each item, the caution last", () => {
    const build = buildOf(log);
    const text = renderText(outstandingTable(build, complaintsOf(build).waived), {
      colour: false,
      width: 120,
    });
    expect(text).toContain("First run (first), planned for 2026-06-01: release lapsed on 2026-05-02, 2 open");
    expect(text).toContain("off since 2026-05-02");
    expect(text).toContain("waived at log.cotter:19: safety-weld");
    expect(text.trimEnd().endsWith("inspection decides.")).toBe(true);
  });
});
