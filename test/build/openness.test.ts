import { describe, expect, it } from "vitest";
import { openItems } from "../../server/build/openness.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { buildOf, lineAndText } from "./marked-build.ts";
import { openFor } from "./open-items.ts";

/** What is open for a hold point over the vehicle that asks for one kind of thing. */
const openOf = (needs: string, text: string, past: "known" | "unknown" = "known") =>
  openFor(
    buildOf(`vehicle "Plover"
  past: ${past}

hold ready "Ready"
  needs: ${needs}
${text}`),
    "ready",
  );

describe("parts", () => {
  it("are open while off, away, missing, on trial or condemned; not where they were scrapped, or are goods", () => {
    const open = openOf(
      "parts",
      `
supplier smith "Smith"
part on "On"
part off "Off"
part away "Away"
part lost "Lost"
  as_found: missing
part tried "Tried"
part bent "Bent"
part scrapped "Scrapped"
part goods "Goods"
  as_found: shelf

day 2026-05-02
  removed: off, away, tried, scrapped
  sent: away to smith for "measuring"
  fitted: tried for trial
  found: bent bent
  decided: scrapped scrap
`,
    );
    expect(open).toEqual([
      "part-off off: off since 2026-05-02",
      "part-off away: away since 2026-05-02",
      "part-off lost: missing",
      "part-on-trial tried: fitted for trial only since 2026-05-02",
      "part-condemned bent: condemned: bent on 2026-05-02",
    ]);
  });

  it("that ask for a second pair of eyes are open until another has looked at them since they went on", () => {
    const log = (facts: string) => `
part belt "Belt"
  second_check: yes

day 2026-05-02
${facts}`;
    const open = ["part-not-seen belt: no second pair of eyes since 2026-05-02"];
    const on = '  removed: belt\n  fitted: belt by "JR"\n';
    expect(openOf("parts", log(""))).toEqual([]);
    expect(openOf("parts", log(on))).toEqual(open);
    expect(openOf("parts", log(`${on}  seen: belt by "JR"\n`))).toEqual(open);
    expect(openOf("parts", log(`${on}  seen: belt by "KT"\n`))).toEqual([]);
  });

  it("are refused by a reading outside a limit, whether limits are asked for or not", () => {
    const log = `
part disc "Disc"
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.14 mm
`;
    const refused = ["limit-refused disc: runout 0.14 mm against max 0.10 mm: over it"];
    expect(openOf("parts", log)).toEqual(refused);
    expect(openOf("limits", log)).toEqual(refused);
    expect(openOf("tests", log)).toEqual([]);
  });
});

describe("limits", () => {
  const disc = (safety: string, day: string) => `
part disc "Disc"
  limit: runout max 0.10 mm
  limit: thickness min 8.4 mm
${safety}
day 2026-05-02
${day}`;

  it("unmeasured or not proved are open of what can hurt", () => {
    const open = openOf(
      "limits",
      disc("  safety: critical\n", "  measured: disc runout 0.095 mm ± 0.01 mm\n"),
    );
    expect(open).toEqual([
      "limit-unproven disc: runout 0.095 mm ± 0.01 mm against max 0.10 mm: not proved either way",
      "limit-unmeasured disc: thickness is not measured",
    ]);
  });

  it("are not of anything else", () => {
    expect(openOf("limits", disc("", "  measured: disc runout 0.095 mm ± 0.01 mm\n"))).toEqual([]);
  });

  it("that a calculation answers refuse a thing by what it comes to", () => {
    const log = (length: string) => `
part crank "Crank"
  size: web 10 mm
  size: gap ${length}
  limit: float max 0.20 mm
  calc: float = gap - web
`;
    expect(openOf("limits", log("10.15 mm").replaceAll("gap - web", "crank.gap - crank.web"))).toEqual([]);
    expect(openOf("limits", log("10.25 mm").replaceAll("gap - web", "crank.gap - crank.web"))).toEqual([
      "limit-refused crank: float 0.25 mm against max 0.20 mm: over it",
    ]);
  });

  it("of a fit refuse what does not fit", () => {
    const log = (bore: string) => `
part housing "Housing"
part bearing "Bearing"
  size: outside 62 mm
  fit: outside in housing.bore clearance 0.00..0.02 mm

day 2026-05-02
  measured: housing bore ${bore}
`;
    expect(openOf("limits", log("62.01 mm"))).toEqual([]);
    expect(openOf("limits", log("62.05 mm"))).toEqual([
      "limit-refused bearing: clearance of outside in housing.bore 0.05 mm against max 0.02 mm: over it",
    ]);
  });

  it("of a fit are shown where the newer of the two was measured", () => {
    const shown = (first: string, second: string) => {
      const build = buildOf(`
part housing "Housing"
part bearing "Bearing"
  fit: outside in housing.bore clearance 0.00..0.02 mm
hold road "Road"
  needs: limits

day 2026-05-02
  measured: ${first}
  measured: ${second}
`);
      const hold = build.standing.names.named("hold", "road");
      return hold && openItems(build.standing, hold).map(({ place }) => lineAndText(place));
    };
    expect(shown("housing bore 62.05 mm", "bearing outside 62 mm")).toEqual(["9: 62 mm"]);
    expect(shown("bearing outside 62 mm", "housing bore 62.05 mm")).toEqual(["9: 62.05 mm"]);
  });

  it("are asked again of a new item", () => {
    const log = disc(
      "  safety: critical\n",
      `  measured: disc runout 0.05 mm
  measured: disc thickness 9 mm
  removed: disc
  decided: disc renew
  bought: 1 x disc
  fitted: disc
`,
    );
    expect(openOf("parts, limits", log)).toEqual([
      "limit-unmeasured disc: runout is not measured",
      "limit-unmeasured disc: thickness is not measured",
    ]);
  });
});

describe("joints, systems and circuits", () => {
  it("are open until secured, closed and tested", () => {
    const log = `
part a "A"
part b "B"
joint ab "A to B"
  joins: a, b
  torque: 20 N.m
  mark: yes
system s "System"
  parts: a
  bleed: yes
  pressure_test: 3 bar
circuit c "Circuit"
  load: 12 A
  fuse: 10 A

day 2026-05-02
  loosened: ab
  torqued: ab 20 N.m
`;
    expect(openOf("joints, systems, circuits", log)).toEqual([
      "joint-unsecured ab: not secured: no witness mark",
      "system-not-bled s: not bled since 2026-05-02",
      "circuit-at-fault c: its fuse is under the load",
      "circuit-untested c: not tested: not tried",
    ]);
    expect(openOf("systems", `${log}  bled: s\n`)).toEqual([
      "system-not-proved s: not proved since 2026-05-02",
    ]);
    expect(openOf("joints", `${log}  marked: ab\n`)).toEqual([]);
    expect(openOf("circuits", `${log}  changed: c fuse 15 A\n  tested: c pass\n`)).toEqual([]);
  });

  it("that nobody has touched are open on a vehicle whose past is unknown", () => {
    const log = `
part a "A"
joint a_bolt "A"
  joins: a
  torque: 20 N.m
system s "System"
  bleed: yes
`;
    expect(openOf("joints, systems", log)).toEqual([]);
    expect(openOf("joints, systems", log, "unknown").map((item) => item.split(":")[0])).toEqual([
      "joint-unsecured a_bolt",
      "system-not-bled s",
    ]);
  });

  it("wrongly filled stay open", () => {
    const log = `
system s "System"
  fluid: "DOT 4"

day 2026-05-02
  filled: s 1 l with "DOT 5"
`;
    expect(openOf("systems", log)).toEqual([
      "system-wrong-fluid s: filled with DOT 5 where DOT 4 is asked for",
    ]);
  });
});

describe("settings", () => {
  it("are open until the newest of what was set and measured is within", () => {
    const log = (facts: string) => `
assembly front "Front"
  setting: camber -1.5 deg ± 0.25 deg
  setting: toe 1.5 mm ± 0.5 mm

day 2026-05-02
${facts}`;
    expect(openOf("settings", log("  set: front camber -1.2 deg\n"))).toEqual([
      "setting-out front: camber -1.2 deg against max -1.25 deg: out of its setting",
      "setting-not-set front: toe is not set",
    ]);
    const measured = "  set: front camber -1.2 deg\n  measured: front camber -1.4 deg\n";
    // Toe of one side is half of the total that is wanted.
    expect(openOf("settings", log(`${measured}  set: front toe 0.8 mm each\n`))).toEqual([]);
    expect(openOf("settings", log(`${measured}  set: front toe 1.6 mm each\n`))).toEqual([
      "setting-out front: toe 3.2 mm against max 2.0 mm: out of its setting",
    ]);
  });
});

describe("tests", () => {
  const log = (facts: string) => `
part pedal "Pedal"
  test: travel "hard, not past half way"

day 2026-05-02
${facts}`;

  it.each([
    ["", ["test-not-passed pedal: test travel (hard, not past half way): not tried"]],
    [
      "  tested: pedal travel fail\n",
      ["test-not-passed pedal: test travel (hard, not past half way): it failed"],
    ],
    ["  tested: pedal travel pass\n", []],
    ["  tested: pedal pass\n", []],
    [
      "  tested: pedal travel pass\n  removed: pedal\n  fitted: pedal\n",
      ["test-not-passed pedal: test travel (hard, not past half way): disturbed since it passed"],
    ],
    ["  removed: pedal\n  fitted: pedal\n  tested: pedal travel pass\n", []],
    [
      "  tested: pedal travel pass\n  changed: pedal material steel\n",
      ["test-not-passed pedal: test travel (hard, not past half way): disturbed since it passed"],
    ],
    ["  tested: pedal travel pass\n  changed: pedal price 12.00 GBP\n", []],
  ])("after %j", (facts, open) => {
    expect(openOf("tests", log(facts))).toEqual(open);
  });

  it("of a thing lapse when something below it is disturbed", () => {
    const open = openOf(
      "tests",
      `
assembly brakes "Brakes"
  test: balance "front locks first"
part brakes.pads "Pads"

day 2026-05-02
  tested: brakes balance pass
  removed: brakes.pads
  fitted: brakes.pads
`,
    );
    expect(open).toEqual([
      "test-not-passed brakes: test balance (front locks first): disturbed since it passed",
    ]);
  });

  it("of the hold point itself lapse when anything that it covers is disturbed", () => {
    const own = (facts: string) =>
      openFor(
        buildOf(`
hold ready "Ready"
  covers: brakes
  needs: tests
  test: dry "no weep after two minutes"
part brakes.pads "Pads"
part seat "Seat"

day 2026-05-02
  tested: ready dry pass
${facts}`),
        "ready",
      );
    expect(own("  removed: seat\n")).toEqual([]);
    expect(own("  removed: brakes.pads\n  fitted: brakes.pads\n")).toEqual([
      "test-not-passed ready: test dry (no weep after two minutes): disturbed since it passed",
    ]);
  });
});

describe("lives", () => {
  const openOn = (planned: string, text: string, past = "known") =>
    openFor(
      buildOf(
        `vehicle "Plover"
  past: ${past}

hold ready "Ready"
  needs: lives
  planned: ${planned}
${text}`,
        "2026-05-02" as IsoDate,
      ),
      "ready",
    );

  it("have to last to the day of the hold point, that day included", () => {
    const log = 'part bottle "Bottle"\n  expires: 2026-08-15\n';
    expect(openOn("2026-08-15", log)).toEqual([]);
    expect(openOn("2026-08-16", log)).toEqual([
      "life-over bottle: its life ends on 2026-08-15, before 2026-08-16",
    ]);
  });

  it("have to last to today where the hold point was planned for the past", () => {
    const log = 'part bottle "Bottle"\n  expires: 2026-05-01\n';
    expect(openOn("2026-03-01", log)).toEqual([
      "life-over bottle: its life ends on 2026-05-01, before 2026-05-02",
    ]);
  });

  it("are counted in calendar steps from when the item was made or fitted", () => {
    const log = `part belt "Belt"
  life: 5 year from made
  made: 2020-02-29
part hose "Hose"
  life: 18 month from fitted

day 2025-01-31
  removed: hose
  fitted: hose made 2024-12-01
`;
    // 29 February and five years is 28 February; 31 January and 18 months is 31 July.
    expect(openOn("2026-07-31", log)).toEqual([
      "life-over belt: its life ends on 2025-02-28, before 2026-07-31",
    ]);
    expect(openOn("2026-08-01", log)).toContain(
      "life-over hose: its life ends on 2026-07-31, before 2026-08-01",
    );
  });

  it("are used up by running of the item that is on, not of the one before", () => {
    const log = (facts: string) => `part plug "Plug"
  life: 20 h running

day 2026-01-02
  ran: vehicle 19.5 h
${facts}`;
    expect(openOn("2026-05-02", log(""))).toEqual([]);
    expect(openOn("2026-05-02", log("  ran: plug 30 min\n"))).toEqual([
      "life-over plug: its life of 20 h running is used up: 20 h",
    ]);
    const renewed =
      "  decided: plug renew\n  bought: 1 x plug\n  removed: plug\n  fitted: plug\n  ran: plug 30 min\n";
    expect(openOn("2026-05-02", log(renewed))).toEqual([]);
  });

  it("of unknown age are open of what can hurt, and of nothing else", () => {
    const log = (safety: string) => `part belt "Belt"
${safety}  life: 5 year from made
part rod "Rod"
${safety}  life: 40 run running
`;
    expect(openOn("2026-05-02", log(""), "unknown")).toEqual([]);
    expect(openOn("2026-05-02", log("  safety: critical\n"), "unknown")).toEqual([
      "age-unknown belt: when it was made is unknown",
      "age-unknown rod: its running before the log is unknown",
    ]);
    expect(openOn("2026-05-02", log("  safety: critical\n"))).toEqual([
      "age-unknown belt: when it was made is unknown",
    ]);
  });
});
