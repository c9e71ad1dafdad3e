import { describe, expect, it } from "vitest";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { costsTable } from "../../server/reports/costs.ts";
import { jointsTable } from "../../server/reports/joints.ts";
import { livesReport, livesTable } from "../../server/reports/lives.ts";
import { settingsReport, settingsTable } from "../../server/reports/settings.ts";
import { buildOf } from "../build/marked-build.ts";

describe("settings", () => {
  const build = buildOf(`
    setup one_up "Driver aboard"
      with: "75 kg on the seat"
    assembly front "Front"
      setting: camber -1.5 deg ± 0.25 deg
      setting: toe 1.5 mm ± 0.5 mm
    assembly rear "Rear"
      setting: toe 1 mm ± 0.5 mm

    day 2026-05-02
      set: front camber -1.4 deg for one_up
      set: rear toe 2 mm
  `);

  it("are what is wanted and what was set, by setup", () => {
    const { settings, setups } = settingsReport(build);
    expect(settings).toMatchObject([
      {
        ref: "front",
        name: "camber",
        wanted: { text: "-1.5 deg, -1.75 deg to -1.25 deg", lower: { value: -1.75, unit: "deg" } },
        state: "within",
        set: [{ setup: "one_up", value: { text: "-1.4 deg" }, verdict: "within", by: "set", line: 10 }],
      },
      { ref: "front", name: "toe", state: "not set", set: [] },
      { ref: "rear", name: "toe", state: "outside", set: [{ setup: null, date: "2026-05-02" }] },
    ]);
    expect(setups).toEqual([{ ref: "one_up", title: "Driver aboard", with: "75 kg on the seat" }]);
  });

  it("have a row for each, with a box where one is still to be set", () => {
    const [front, rear] = settingsTable(build).sections;
    expect(front?.rows.map(({ cells }) => cells.state)).toEqual([
      { text: "within", tone: "good" },
      { text: "not set", box: true },
    ]);
    expect(rear?.heading).toBe("Rear (rear)");
  });
});

describe("lives", () => {
  const build = buildOf(
    `
    part bottle "Extinguisher"
      expires: 2026-07-31
    part belt "Belt"
      life: 5 year from made
    part plug "Plug"
      life: 20 h running
    part magneto "Magneto"
      service: every 24 month
    system oil "Oil"
      capacity: 1 l
      change: every 12 month
    hold climb "Climb"
      needs: lives
      planned: 2026-08-15

    day 2026-01-31
      filled: oil 1 l
      serviced: magneto until 2026-03-01
      ran: vehicle 5.5 h
    `,
    "2026-05-02" as IsoDate,
  );

  it("are listed by when they end, with what is used and left", () => {
    const { lives } = livesReport(build);
    expect(lives).toMatchObject([
      { ref: "magneto", counted: "service", ends: "2026-03-01", daysLeft: -62, state: "over" },
      {
        ref: "bottle",
        counted: "expires",
        ends: "2026-07-31",
        daysLeft: 90,
        state: "ends soon",
        missed: "climb",
      },
      { ref: "oil", counted: "fluid", from: "2026-01-31", ends: "2027-01-31", state: "good" },
      { ref: "belt", counted: "made", life: { text: "5 year" }, ends: null, state: "unknown" },
      { ref: "plug", counted: "running", used: { text: "5.5 h" }, left: { text: "14.5 h" }, state: "good" },
    ]);
  });

  it("say which hold point they do not last for, and defer to the label", () => {
    const table = livesTable(build);
    expect(table.sections[0]?.rows[1]?.remarks).toEqual(["does not last for climb"]);
    expect(table.cautions.join(" ")).toContain("the maker's label and the rules of the event decide");
  });
});

it("of a log that has none says so", () => {
  const bare = buildOf('part seat "Seat"\n');
  expect(settingsTable(bare).notes).toEqual(["The log has no settings."]);
  expect(livesTable(bare).notes).toEqual([
    "Nothing in the log has a life, a service interval or a change interval.",
  ]);
  expect(jointsTable(bare).notes).toEqual(["The log has no joint."]);
  expect([livesTable(bare), costsTable(bare)].flatMap(({ sections }) => sections)).toEqual([]);
});
