import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectMarked, readRecord, recordIn, said } from "./marked-log.ts";

describe("facts", () => {
  it.each([
    ["removed: front.left.{hub, disc} as a unit", { what: ["front.left.{hub, disc}"], asUnit: true }],
    ["stripped: caliper", { what: ["caliper"] }],
    ["fitted: hub for trial", { what: ["hub"], forTrial: true }],
    [
      'fitted: belt made 2025-01-10 expires 2030-01-10 batch "B7"',
      { what: ["belt"], made: "2025-01-10", expires: "2030-01-10", batch: '"B7"' },
    ],
    ["cleaned: hub by solvent", { what: ["hub"], method: "solvent" }],
    ['cleaned: hub by "JR"', { what: ["hub"], by: '"JR"' }],
    ['cleaned: hub by "JR" by solvent', { what: ["hub"], by: '"JR"', method: "solvent" }],
    ["inspected: hub by magnetic_particle", { what: ["hub"], method: "magnetic_particle" }],
    ["serviced: extinguisher until 2027-03-01", { what: ["extinguisher"], until: "2027-03-01" }],
    [
      'found: joint.a, hub play, worn "loose"',
      { what: ["joint.a", "hub"], conditions: ["play", "worn"], note: '"loose"' },
    ],
    ["measured: disc.thickness 9.12 mm", { what: "disc.thickness", readings: ["9.12 mm"] }],
    [
      'measured: disc thickness 9.12 mm ± 0.01 at "rim" for one_up with mic25',
      {
        what: "disc",
        name: "thickness",
        readings: ["9.12 mm"],
        uncertainty: "0.01",
        at: '"rim"',
        setup: "one_up",
        gauge: "mic25",
      },
    ],
    ["decided: 2 x balljoint renew", { what: [{ count: "2", reference: "balljoint" }], decision: "renew" }],
    ["decided: hub, disc reuse", { what: [{ reference: "hub" }, { reference: "disc" }], decision: "reuse" }],
    ['tagged: hub "L" "ink"', { what: ["hub"], tag: '"L"', note: '"ink"' }],
    ['identified: hub as "saloon hub" from saloon', { what: "hub", as: '"saloon hub"', from: "saloon" }],
    [
      'sent: hub, disc to pinder for "grinding" due 2026-06-01 cost 90.00 GBP',
      { what: ["hub", "disc"], to: "pinder", for: '"grinding"', due: "2026-06-01", cost: "90.00 GBP" },
    ],
    ["back: hub cost 95.00 GBP", { what: ["hub"], cost: "95.00 GBP" }],
    ['received: order "N-4410"', { order: '"N-4410"' }],
    [
      "received: 2 x hub, 1 x disc",
      {
        items: [
          { count: "2", reference: "hub" },
          { count: "1", reference: "disc" },
        ],
      },
    ],
    [
      "returned: 1 x hub to north credit 31.50 GBP",
      { items: [{ count: "1", reference: "hub" }], to: "north", credit: "31.50 GBP" },
    ],
    ["used: 2 x nut on front.hub", { items: [{ count: "2", reference: "nut" }], on: "front.hub" }],
    [
      "torqued: a, b 24 N.m then 90 deg on new hardware with wrench",
      { what: ["a", "b"], torque: "24 N.m", then: "90 deg", newHardware: true, gauge: "wrench" },
    ],
    ["rechecked: a held", { what: ["a"], held: true }],
    ["rechecked: a held 24 N.m with wrench", { what: ["a"], held: true, torque: "24 N.m", gauge: "wrench" }],
    ["locked: a with split_pin", { what: ["a"], lock: "split_pin" }],
    ['filled: brakes with "DOT 4" 0.5 l', { what: ["brakes"], fluid: '"DOT 4"', volume: "0.5 l" }],
    ["proved: brakes for 2 min at 70 bar", { what: ["brakes"], pressure: "70 bar", time: "2 min" }],
    [
      "set: front camber -1 deg 30 arcmin for one_up with level",
      { what: "front", name: "camber", value: "-1 deg 30 arcmin", setup: "one_up", gauge: "level" },
    ],
    ["set: front.toe 1 mm each", { what: "front.toe", value: "1 mm each" }],
    ["tested: first_run, hub pass", { what: ["first_run", "hub"], result: "pass" }],
    ["tested: hub turning fail", { what: ["hub"], name: "turning", result: "fail" }],
    ['seen: hub by "KT"', { what: ["hub"], by: '"KT"' }],
    ["ran: vehicle 0.2 h 4 km 5 run", { what: "vehicle", running: ["0.2 h", "4 km", "5 run"] }],
    ["ran: vehicle 5 run 1 h 30 min", { what: "vehicle", running: ["5 run", "1 h 30 min"] }],
    ["worked: 2 h 30 min on strip", { hours: "2 h 30 min", on: "strip" }],
    ["spent: 12.40 GBP on front", { amount: "12.40 GBP", on: "front" }],
    [
      'calibrated: wrench by north by "JR" for 12 month',
      { what: ["wrench"], supplier: "north", by: '"JR"', for: "12 month" },
    ],
    ['snag: squeak on brakes "left side"', { name: "squeak", on: "brakes", note: '"left side"' }],
    ['photo: "a.png" of hub, disc "rust"', { path: '"a.png"', of: ["hub", "disc"], note: '"rust"' }],
    [
      'conceded: squeak until first_run "no effect" by "KT"',
      { name: "squeak", until: "first_run", note: '"no effect"', by: '"KT"' },
    ],
  ])("%s", (line, expected) => expect(said(readRecord("day", line))).toEqual(expected));
});

/** Facts with their clauses, of which any number may stand in any order. */
const CLAUSES: readonly (readonly [string, readonly string[]])[] = [
  ["removed: front.left.{hub, disc}", ["as a unit", 'by "JR"', '"note"']],
  ["fitted: hub", ["for trial", "made 2025-01-10", "expires 2030-01-10", 'batch "B7"', 'by "JR"', '"note"']],
  ["cleaned: hub", ["by solvent", 'by "JR"', '"note"']],
  [
    "measured: disc thickness 9.1, 9.2 mm",
    ["± 0.01 mm", 'at "rim"', "for one_up", "with mic25", 'by "JR"', '"note"'],
  ],
  ["sent: hub", ["to pinder", 'for "grinding"', "due 2026-06-01", "cost 90.00 GBP", 'by "JR"', '"note"']],
  [
    "ordered: 2 x hub at 3.00 GBP, 1 x disc",
    ["from north", "due 2026-06-01", 'ref "N 1"', 'by "JR"', '"note"'],
  ],
  ["torqued: a, b 24 N.m", ["then 90 deg", "on new hardware", "with wrench", 'by "JR"', '"note"']],
  ["rechecked: a", ["24 N.m", "moved", "with wrench", 'by "JR"', '"note"']],
  ["filled: brakes", ["0.5 l", 'with "DOT 4"', 'by "JR"', '"note"']],
  ["proved: brakes", ["at 70 bar", "for 2 min", 'by "JR"', '"note"']],
  ["calibrated: wrench", ["for 12 month", "by north", 'by "JR"', '"note"']],
];

describe("clauses in brackets may come in any order", () => {
  it.each(CLAUSES)("%s", (start, clauses) => {
    const needed = start.startsWith("sent:") ? 1 : 0;
    fc.assert(
      fc.property(fc.shuffledSubarray([...clauses.slice(needed)]), (some) => {
        const chosen = [...clauses.slice(0, needed), ...some];
        const inOrder = clauses.filter((clause) => chosen.includes(clause));
        const written = readRecord("day", [start, ...chosen].join(" "));
        expect(said(written)).toEqual(said(readRecord("day", [start, ...inOrder].join(" "))));
        expect(written.values.size).toBe(
          readRecord("day", start + (needed ? " to pinder" : "")).values.size + some.length,
        );
      }),
      { numRuns: 40 },
    );
  });
});

describe("one bad clause costs that clause", () => {
  it("and the rest is read", () => {
    const document = expectMarked(`
      day 2026-05-02
        sent: hub to pinder due 1.6.2026 cost 90.00 GBP "soon"
                                ^^^^^^^^ bad-date
        torqued: a 24 N.m with by "JR"
                              ! missing-value
        torqued: a 24 N.m wiht wrench by "JR"
                          ^^^^^^^^^^^ unreadable-value
        cleaned: hub by solvant by "JR"
                        ^^^^^^^ unreadable-value
        proved: brakes at 70,5 bar for 2 min
                          ^^^^ decimal-comma
    `);
    const records = document.blocks[0]?.items.filter((item) => item.kind === "record") ?? [];
    expect(records.map((record) => record.broken)).toEqual(records.map(() => false));
    expect(records.map(said)).toEqual([
      { what: ["hub"], to: "pinder", cost: "90.00 GBP", note: '"soon"' },
      { what: ["a"], torque: "24 N.m", by: '"JR"' },
      { what: ["a"], torque: "24 N.m", by: '"JR"' },
      { what: ["hub"], by: '"JR"' },
      { what: ["brakes"], time: "2 min" },
    ]);
  });

  it("given twice, the second one", () => {
    const document = expectMarked(`
      day 2026-05-02
        torqued: a 24 N.m with wrench with big_wrench
                                      ^^^^^^^^^^^^^^^ unreadable-value
        cleaned: hub by "JR" by "KT"
                             ^^^^^^^ unreadable-value
        cleaned: hub by solvent by hand
                                ^^^^^^^ unreadable-value
        rechecked: a held moved
                          ^^^^^ unreadable-value
        bled: brakes "once" "twice"
                            ^^^^^^^ unreadable-value
    `);
    expect(document.blocks[0]?.items[1]).toMatchObject({ broken: false });
    expect(said(recordIn("day", "torqued: a 24 N.m with wrench with big_wrench"))).toMatchObject({
      gauge: "wrench",
    });
  });
});

describe("a fact that says nothing without a part of it", () => {
  it("is broken, and says what is missing", () => {
    const document = expectMarked(`
      day 2026-05-02
        removed:
                ! missing-value
        removed: by "JR"
                ! missing-value
        removed: as a unit
                ! missing-value
        removed: "all of it"
                 ^^^^^^^^^^^ unreadable-value
        received:
                 ! missing-value
        received: by "JR"
                         ! missing-value
        received: order N-4410
                        ^ unreadable-value
        sent: hub
                 ! missing-value
        sent: to pinder
             ! missing-value
        worked: 5 h
                   ! missing-value
        seen: hub
                 ! missing-value
        conceded: squeak until first_run by "KT"
                                                ! missing-value
        conceded: squeak until first_run "no effect"
                                                    ! missing-value
        torqued: with wrench
                ! missing-value
        torqued: a with wrench
                  ! missing-value
        measured: disc thickness
                                ! missing-value
        measured: 9.12 mm
                  ^^^^ unreadable-value
        tested: hub
                   ! missing-value
        tested: hub turning
                           ! missing-value
        found: hub
                  ! missing-value
        found: hub rusty
                   ^^^^^ unreadable-value
        decided: hub replace
                     ^^^^^^^ unreadable-value
        spent: 12.40
                    ! missing-value
        snag: on brakes
             ! missing-value
    `);
    const records = document.blocks[0]?.items.filter((item) => item.kind === "record") ?? [];
    expect(records.filter((record) => !record.broken)).toEqual([]);
  });
});

describe("a line with more wrong than anyone would read", () => {
  it("is given up after twenty complaints, and means nothing", () => {
    const record = recordIn("day", `removed: hub, ${"2, ".repeat(500)}disc`);
    expect(record.faults).toHaveLength(20);
    expect(record.broken).toBe(true);
  });
});
