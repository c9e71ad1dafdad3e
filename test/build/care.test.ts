import { describe, expect, it } from "vitest";
import type { CautionKind } from "../../server/build/cautions.ts";
import { CAUTIONS } from "../../server/build/cautions.ts";
import { buildOf, expectFindings } from "./marked-build.ts";

const kindsOf = (log: string): CautionKind[] =>
  buildOf(log).findings.flatMap((finding) => (finding.code === "safety-caution" ? [finding.data.kind] : []));

/** One log for each kind of caution, that brings it. */
const BRINGS: { readonly [K in CautionKind]: string } = {
  "lifted vehicle": 'part front.wheel "Wheel"\n\nday 2026-05-02\n  removed: front.wheel\n',
  "spring under load": 'part front.spring "Road spring"\n\nday 2026-05-02\n  removed: front.spring\n',
  "gas damper": 'part front.damper "Damper"\n\nday 2026-05-02\n  stripped: front.damper\n',
  fuel: 'system supply "Supply"\n  fluid: "unleaded, 97 octane"\n\nday 2026-05-02\n  drained: supply\n',
  "fuel tank and heat":
    'supplier smith "Smith"\npart fuel.tank "Tank"\n\nday 2026-05-02\n  sent: fuel.tank to smith for "solder the seam"\n',
  "brake fluid": 'system brakes "Brakes"\n  fluid: "DOT 4"\n\nday 2026-05-02\n  bled: brakes\n',
  "brake pedal": 'part front.pads "Pads"\n  as_found: loose\n\nday 2026-05-02\n  fitted: front.pads\n',
  "pistons and air": 'part front.caliper "Caliper"\n\nday 2026-05-02\n  stripped: front.caliper\n',
  "blasting media": 'part front.caliper "Caliper"\n\nday 2026-05-02\n  cleaned: front.caliper by blasting\n',
  "old coatings": 'part bracket "Bracket"\n\nday 2026-05-02\n  cleaned: bracket by blasting\n',
  "friction dust": 'part rear.shoes "Shoes"\n\nday 2026-05-02\n  removed: rear.shoes\n',
  battery: 'part battery "Battery"\n\nday 2026-05-02\n  removed: battery\n',
  "pressure test":
    'system cooling "Cooling"\n  fluid: "coolant"\n\nday 2026-05-02\n  proved: cooling at 1 bar\n',
  "hot coolant": 'system cooling "Cooling"\n  fluid: "coolant"\n\nday 2026-05-02\n  opened: cooling\n',
  "chlorinated cleaner":
    'supplier smith "Smith"\npart bracket "Bracket"\n\nday 2026-05-02\n  cleaned: bracket by solvent\n  sent: bracket to smith for "weld the crack"\n',
  "burnt seals": 'part oil_seal "Seal"\n\nday 2026-05-02\n  found: oil_seal glazed\n',
  "paint mist": 'job body "Paint the body"\n\nday 2026-05-02\n  started: body\n',
  "coated faces":
    'supplier smith "Smith"\npart bracket "Bracket"\n\nday 2026-05-02\n  sent: bracket to smith for "powder coat"\n',
  magnesium:
    'part wheel_centre "Wheel centre"\n  material: magnesium\n\nday 2026-05-02\n  repaired: wheel_centre\n',
  "composite and heat":
    'supplier smith "Smith"\npart tail "Tail"\n  material: composite\n\nday 2026-05-02\n  sent: tail to smith for "bake the primer"\n',
  "sodium valves":
    'part engine.exhaust_valves "Exhaust valves"\n\nday 2026-05-02\n  decided: engine.exhaust_valves scrap\n',
  "exhaust gas": "day 2026-05-02\n  ran: vehicle 10 min\n",
  "first start": "day 2026-05-02\n  ran: vehicle 10 min\n",
  "heated bearing":
    'part front.bearings "Bearings"\n  as_found: loose\n\nday 2026-05-02\n  fitted: front.bearings\n',
  "structural repair": 'part frame "Frame"\n  safety: critical\n\nday 2026-05-02\n  repaired: frame\n',
  "plated fasteners":
    'supplier smith "Smith"\npart bolts "Bolts"\n\nday 2026-05-02\n  sent: bolts to smith for "zinc plating"\n',
  "licensed work": 'system air "Air conditioning"\n  fluid: "R134a"\n\nday 2026-05-02\n  opened: air\n',
  "dated equipment":
    'part harness "Harness"\n  safety: critical\n  as_found: loose\n\nday 2026-05-02\n  fitted: harness\n',
};

describe("a caution", () => {
  it.each(Object.entries(BRINGS))("for %s is brought by its work", (kind, log) => {
    expect(kindsOf(log)).toContain(kind);
  });

  it("is there for every kind of the catalogue", () => {
    expect(CAUTIONS.map(({ kind }) => kind).sort()).toEqual(Object.keys(BRINGS).sort());
  });

  it("is shown once in a day for each kind, at the first line that brings it, and again on another day", () => {
    expectFindings(
      ["safety-caution"],
      `
      part left.wheel "Wheel"
      part right.wheel "Wheel"

      day 2026-05-02
        removed: left.wheel
        ^^^^^^^^^^^^^^^^^^^ safety-caution
        removed: right.wheel

      day 2026-05-03
        fitted: left.wheel, right.wheel
        removed: left.wheel
        ^^^^^^^^^^^^^^^^^^^ safety-caution
      `,
    );
  });

  it.each([
    ['part steering.wheel_nut "Nut"\n\nday 2026-05-02\n  removed: steering.wheel_nut\n'],
    ['part engine.flywheel "Flywheel"\n\nday 2026-05-02\n  removed: engine.flywheel\n'],
    ['part engine.pistons "Pistons"\n\nday 2026-05-02\n  removed: engine.pistons\n'],
    ['part bash_plate "Plate"\n\nday 2026-05-02\n  removed: bash_plate\n'],
    ['part oil.tank "Oil tank"\n\nday 2026-05-02\n  removed: oil.tank\n'],
    ['part seat "Seat"\n\nday 2026-05-02\n  ran: vehicle 3 km\n'],
    ['part front.pads "Pads"\n\nday 2026-05-02\n  found: front.pads worn "springs and battery next time"\n'],
    ["day 2026-05-02\n  Welded the petrol tank, and lived.\n"],
  ])("is none of %j", (log) => {
    expect(kindsOf(log)).toEqual([]);
  });

  it("is none of what came off inside a unit", () => {
    const log = 'part engine.block "Block"\npart engine.head_gasket "Gasket"\n\nday 2026-05-02\n';
    expect(kindsOf(`${log}  removed: engine as a unit\n`)).toEqual([]);
    expect(kindsOf(`${log}  removed: engine\n`)).toEqual(["friction dust"]);
  });

  it("for the first start is shown once in a log", () => {
    const log = "day 2026-05-02\n  ran: vehicle 10 min\n\nday 2026-05-03\n  ran: vehicle 10 min\n";
    expect(kindsOf(log).filter((kind) => kind === "first start")).toHaveLength(1);
  });
});

const PARTS = `
  supplier smith "Smith"
  part arm "Steering arm"
    material: steel
    safety: critical
  part bracket "Bracket"
    material: aluminium
  part spring "Road spring"
    safety: critical
  part link_bolts "Link bolts, 12.9"
    safety: critical
  part cover_bolts "Cover bolts, 10.9"
`;

describe("work sent out", () => {
  it.each([
    ["arm", "weld and crack test", ["safety-weld"]],
    ["arm", "straighten", ["safety-weld"]],
    ["arm", "zinc plating", ["safety-weld"]],
    ["arm", "crack test", []],
    ["arm", "remagnetise", []],
    ["arm, bracket", "new bottom plates measured", []],
    ["bracket", "weld", []],
    ["spring", "zinc plate", ["embrittlement"]],
    ["link_bolts", "cadmium plate", ["embrittlement"]],
    ["cover_bolts", "zinc plate", ["embrittlement"]],
    ["spring, arm", "zinc plate", ["embrittlement", "safety-weld"]],
  ])("%s for %j", (what, work, codes) => {
    const build = buildOf(`${PARTS}
  day 2026-05-02
    sent: ${what} to smith for "${work}"`);
    const found = build.findings.map(({ code }) => code).filter((code) => code !== "safety-caution");
    expect(found).toEqual(codes);
  });

  it("for plating is forbidden only of springs and class 12.9 that can hurt", () => {
    const forbidden = (what: string) =>
      buildOf(`${PARTS}
  day 2026-05-02
    sent: ${what} to smith for "zinc plate"`).findings.flatMap((finding) =>
        finding.code === "embrittlement" ? [finding.data.forbidden] : [],
      );
    expect(["spring", "link_bolts", "cover_bolts"].map(forbidden)).toEqual([[true], [true], [false]]);
  });
});

describe("a crack test", () => {
  it("by magnetic particles finds nothing in what does not magnetise", () => {
    expectFindings(
      ["inspection-method"],
      `${PARTS}
  day 2026-05-02
    inspected: arm by magnetic_particle
    inspected: arm, bracket by magnetic_particle
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ inspection-method
    inspected: bracket by penetrant
      `,
    );
  });

  it("by penetrant finds little on a face that was blasted or painted before", () => {
    expectFindings(
      ["inspection-method"],
      `${PARTS}
  day 2026-05-02
    cleaned: bracket by blasting
    inspected: bracket by penetrant
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ inspection-method
    cleaned: bracket by solvent
    inspected: bracket by penetrant
    sent: arm to smith for "powder coat"
    inspected: arm by penetrant
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^ inspection-method
      `,
    );
  });
});
