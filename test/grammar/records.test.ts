import { describe, expect, it } from "vitest";
import { expectMarked, readRecord, recordIn, said } from "./marked-log.ts";

/** The codes of what is wrong with a line. */
function codes(block: string, line: string): string[] {
  return recordIn(block, line).faults.map(({ code }) => code);
}

describe("threads", () => {
  it.each([
    "M10x1.25",
    "M10",
    "M10 x 1.25",
    "M10×1.25",
    "M2.5",
    "M10x1.25 LH",
    "M10 LH",
    "3/8-24 UNF",
    "1/4-20 UNC",
    "1-1/8-12 UNF",
    "#10-32 UNF",
    "3/8 BSF",
    "1/4 BSW",
    "2 BA",
    "1/2-20 BSC",
    "1/4 BSP",
    "3/8-24 UNF LH",
  ])("%s", (text) => {
    expect(said(readRecord("part", `size: thread ${text}`))).toEqual({ name: "thread", value: text });
  });

  it("a name that goes on is none", () => {
    expect(codes("part", "size: thread M10_long")).toEqual(["unreadable-value"]);
    expect(said(readRecord("part", "size: M10_bolt 3 mm"))).toEqual({ name: "M10_bolt", value: "3 mm" });
  });
});

describe("bolts and studs", () => {
  it.each([
    ["4 x M8x1.25x30 class 8.8", { count: "4", thread: "M8x1.25x30", strength: "class 8.8" }],
    ["4xM8x1.25x30 class 8.8", { count: "4", thread: "M8x1.25x30", strength: "class 8.8" }],
    ["M10x1.25x45", { thread: "M10x1.25x45" }],
    ["2 x M8x30", { count: "2", thread: "M8x30" }],
    ["2 x M8 x 1.25 x 30 mm class 10.9", { count: "2", thread: "M8 x 1.25 x 30 mm", strength: "class 10.9" }],
    ["2 x M8x30 mm", { count: "2", thread: "M8x30 mm" }],
    ["2 x M8x1.25 LH x 30 class 12.9", { count: "2", thread: "M8x1.25 LH x 30", strength: "class 12.9" }],
    ["2 x M8x1.25x30 LH class 12.9", { count: "2", thread: "M8x1.25x30 LH", strength: "class 12.9" }],
    [
      "6 x 3/8-24 UNF x 1-1/4 in grade 5",
      { count: "6", thread: "3/8-24 UNF x 1-1/4 in", strength: "grade 5" },
    ],
    [
      "6 x 3/8-24 UNF x 1 1/4 in grade 8",
      { count: "6", thread: "3/8-24 UNF x 1 1/4 in", strength: "grade 8" },
    ],
    ["6 x 3/8 BSF x 2 in class S", { count: "6", thread: "3/8 BSF x 2 in", strength: "class S" }],
    ["6 x 2 BA x 12 mm class unknown", { count: "6", thread: "2 BA x 12 mm", strength: "class unknown" }],
    ["4 x M6x20 class A2-70", { count: "4", thread: "M6x20", strength: "class A2-70" }],
  ])("%s", (text, expected) => {
    expect(said(readRecord("joint", `bolt: ${text}`))).toEqual({ value: expected });
    expect(said(readRecord("joint", `stud: ${text}`))).toEqual({ value: expected });
  });

  it.each(["", "4 x", "4 M8x30", "M8x30 8.8", "M8x30 class", "4 x M8x30 class A2 -70", 'M8x30 3/8" long'])(
    "not %s",
    (text) => expect(codes("joint", `bolt: ${text}`)).not.toEqual([]),
  );
});

describe("nuts", () => {
  it.each([
    [
      "self_locking M8x1.25 class 8 height 8 mm",
      { form: "self_locking", thread: "M8x1.25", strength: "class 8", height: "8 mm" },
    ],
    ["self_locking nylon", { form: "self_locking", insert: "nylon" }],
    [
      "self_locking height 8 mm class 8 metal M8",
      { form: "self_locking", insert: "metal", thread: "M8", strength: "class 8", height: "8 mm" },
    ],
    ["self_locking class 8 nylon", { form: "self_locking", insert: "nylon", strength: "class 8" }],
    ["plain class 04", { form: "plain", strength: "class 04" }],
    ["castle M12x1.25", { form: "castle", thread: "M12x1.25" }],
    ["tapped 18 mm in aluminium", { form: "tapped", depth: "18 mm", material: "aluminium" }],
    ["tapped 18 mm in aluminium M8", { form: "tapped", depth: "18 mm", material: "aluminium", thread: "M8" }],
    ["tapped", { form: "tapped" }],
  ])("%s", (text, expected) => {
    expect(said(readRecord("joint", `nut: ${text}`))).toEqual({ value: expected });
  });

  it("take each of these once", () => {
    expect(codes("joint", "nut: plain class 8 class 10")).toEqual(["unreadable-value"]);
    expect(codes("joint", "nut: self_locking nylon metal")).toEqual(["unreadable-value"]);
    expect(codes("joint", "nut: M8x1.25")).toEqual(["unreadable-value"]);
  });
});

describe("washers", () => {
  it.each([
    ["2 x 1.6 mm", { count: "2", value: "1.6 mm" }],
    ["2x1.6 mm", { count: "2", value: "1.6 mm" }],
    ["1.6 mm", { value: "1.6 mm" }],
  ])("%s", (text, expected) => {
    expect(said(readRecord("joint", `washers: ${text}`))).toEqual({ value: expected });
  });
});

describe("torques", () => {
  const nominal = { form: "nominal", nominal: "24 N.m" };
  it.each([
    ["24 N.m", { form: "limits", limits: nominal, toSlot: false }],
    [
      "24 N.m ± 10 %",
      { form: "limits", limits: { form: "tolerance", nominal: "24 N.m", tolerance: "10 %" }, toSlot: false },
    ],
    [
      "24 N.m +2/-0",
      {
        form: "limits",
        limits: { form: "asymmetric", nominal: "24 N.m", above: "+2", below: "-0" },
        toSlot: false,
      },
    ],
    [
      "35..45 lbf.ft",
      { form: "limits", limits: { form: "bounds", lower: "35", upper: "45 lbf.ft" }, toSlot: false },
    ],
    [
      "min 35 lbf.ft to slot",
      { form: "limits", limits: { form: "bounds", lower: "35 lbf.ft" }, toSlot: true },
    ],
    [
      "20 N.m then 90 deg",
      { form: "limits", limits: { form: "nominal", nominal: "20 N.m" }, toSlot: false, then: "90 deg" },
    ],
    [
      "20 N.m ± 5 % then 90 deg",
      {
        form: "limits",
        limits: { form: "tolerance", nominal: "20 N.m", tolerance: "5 %" },
        toSlot: false,
        then: "90 deg",
      },
    ],
    ["from class", { form: "fromClass" }],
    ["by hand", { form: "byHand" }],
  ])("%s", (text, expected) => {
    expect(said(readRecord("joint", `torque: ${text}`))).toEqual({ value: expected });
  });

  it.each(["from", "by", "by feel", "20 N.m then", "min 35 lbf.ft to", "tight", "20 N.m 30 N.m"])(
    "not %s",
    (text) => expect(codes("joint", `torque: ${text}`)).not.toEqual([]),
  );

  it("stages are a list", () => {
    expect(said(readRecord("joint", "stages: 15, 30 N.m"))).toEqual({ value: ["15", "30 N.m"] });
  });
});

describe("friction", () => {
  it.each([
    ["nut_factor 0.18", { form: "nutFactor", value: "0.18" }],
    ["thread 0.14 head 0.12", { form: "coefficients", thread: "0.14", head: "0.12" }],
    ["oiled", { form: "word", word: "oiled" }],
  ])("%s", (text, expected) => {
    expect(said(readRecord("joint", `friction: ${text}`))).toEqual({ value: expected });
  });

  it("is never a bare number: both meanings are offered", () => {
    const [fault] = recordIn("joint", "friction: 0.18").faults;
    expect(fault?.code).toBe("friction-unnamed");
    expect(fault?.fixes.map(({ text, sure }) => [text, sure])).toEqual([
      ["nut_factor 0.18", false],
      ["thread 0.18 head 0.18", false],
    ]);
  });
});

describe("lives and intervals", () => {
  it.each([
    ["5 year from made", { value: "5 year", counted: "made" }],
    ["5 years from fitted", { value: "5 years", counted: "fitted" }],
    ["20 h running", { value: "20 h", counted: "running" }],
    ["40 run running", { value: "40 run", counted: "running" }],
  ])("life: %s", (text, expected) => {
    expect(said(readRecord("part", `life: ${text}`))).toEqual({ value: expected });
  });

  it("service: every 24 month", () => {
    expect(said(readRecord("part", "service: every 24 month"))).toEqual({ every: "24 month" });
    expect(codes("part", "service: 24 month")).toEqual(["unreadable-value"]);
    expect(codes("part", "service:")).toEqual(["missing-value"]);
  });

  it.each([
    ["after 1 h running, then every 10 h running", { after: "1 h", every: "10 h" }],
    ["after 1 h running then every 10 h running", { after: "1 h", every: "10 h" }],
    ["after 1 h, every 10 h", { after: "1 h", every: "10 h" }],
    ["after 100 km", { after: "100 km" }],
    ["every 5 run", { every: "5 run" }],
  ])("recheck: %s", (text, expected) => {
    expect(said(readRecord("joint", `recheck: ${text}`))).toEqual({ value: expected });
  });

  it.each(["", "10 h", "after", "after 1 h then", "after 1 h,", "often"])("recheck is not %s", (text) => {
    expect(recordIn("joint", `recheck: ${text}`).faults).not.toEqual([]);
  });
});

describe("plans", () => {
  it.each([
    ["6 h", { values: ["6 h"] }],
    ["4..6..10 h", { values: ["4", "6", "10 h"] }],
    ["45..60..90 min", { values: ["45", "60", "90 min"] }],
    ["1 h 30 min", { values: ["1 h 30 min"] }],
  ])("takes: %s", (text, expected) => {
    expect(said(readRecord("job", `takes: ${text}`))).toEqual({ value: expected });
  });

  it("a hold point stops jobs, and the running of things", () => {
    expect(said(readRecord("hold", "stops: shakedown, ran engine, ran vehicle"))).toEqual({
      value: { jobs: ["shakedown"], ran: ["engine", "vehicle"] },
    });
    expect(codes("hold", "stops: ran")).toEqual(["missing-value"]);
  });

  it("and asks for kinds of things; a job needs parts", () => {
    expect(said(readRecord("hold", "needs: parts, joints"))).toEqual({ value: ["parts", "joints"] });
    expect(said(readRecord("job", "needs: 2 x kit, hose"))).toEqual({
      value: [{ count: "2", reference: "kit" }, { reference: "hose" }],
    });
  });

  it("a week is days with hours", () => {
    expect(said(readRecord("vehicle", "week: tue 2 h, sat 6 h"))).toEqual({
      value: {
        days: [
          { day: "tue", hours: "2 h" },
          { day: "sat", hours: "6 h" },
        ],
      },
    });
    expectMarked(`
      vehicle "Halvorsen Sprint"
        week: tuesday 2 h, sat 6 h
              ^^^^^^^ unreadable-value
        week: tue, sat 6 h
                 ^ unreadable-value
    `);
  });
});

describe("gauges and wires", () => {
  it("read ranges, with an uncertainty", () => {
    expect(said(readRecord("gauge", "reads: 0..25 mm, 50..75 mm"))).toEqual({
      value: [
        { form: "bounds", lower: "0", upper: "25 mm" },
        { form: "bounds", lower: "50", upper: "75 mm" },
      ],
    });
    expect(codes("gauge", "reads: 25 mm")).toEqual(["unreadable-value"]);
    expect(said(readRecord("gauge", "uncertainty: ± 4 % of reading"))).toEqual({
      value: { value: "4 %" },
      ofReading: true,
    });
    expect(said(readRecord("gauge", "uncertainty: +- 0.004 mm"))).toEqual({ value: { value: "0.004 mm" } });
    expect(said(readRecord("gauge", "calibrated: 2026-01-15 for 12 months"))).toEqual({
      date: "2026-01-15",
      for: "12 months",
    });
  });

  it("a wire has a gauge or an area", () => {
    expect(said(readRecord("circuit", "wire: AWG 14"))).toEqual({ value: { number: "14" } });
    expect(said(readRecord("circuit", "wire: 2.5 mm2"))).toEqual({ value: "2.5 mm2" });
  });

  it("the ends of a circuit are told in words or named", () => {
    expect(said(readRecord("circuit", 'from: "fuse box, 4"'))).toEqual({ value: '"fuse box, 4"' });
    expect(said(readRecord("circuit", "to: cooling.fan, lamp"))).toEqual({ value: ["cooling.fan", "lamp"] });
  });
});

describe("fits and pairs", () => {
  it.each([
    [
      "fit: spigot in hub.bore clearance 0.01..0.06 mm",
      { name: "spigot", in: "hub.bore", clearance: { form: "bounds", lower: "0.01", upper: "0.06 mm" } },
    ],
    [
      "fit: spigot interference max 0.03 mm in hub.bore",
      { name: "spigot", in: "hub.bore", interference: { form: "bounds", upper: "0.03 mm" } },
    ],
    [
      "pair: thickness with other.disc.thickness within 2 %",
      { name: "thickness", with: "other.disc.thickness", within: "2 %" },
    ],
    [
      "pair: camber within 15 arcmin with other.camber",
      { name: "camber", with: "other.camber", within: "15 arcmin" },
    ],
  ])("%s", (line, expected) => expect(said(readRecord("part", line))).toEqual(expected));

  it("need all their clauses, and of clearance and interference one", () => {
    expectMarked(`
      part disc
        fit: spigot in hub.bore
                               ! missing-value
        fit: spigot clearance 0.01..0.06 mm
                                           ! missing-value
        fit: spigot in hub.bore clearance 0.01..0.06 mm interference max 0.03 mm
                                                        ^^^^^^^^^^^^^^^^^^^^^^^^ unreadable-value
        pair: thickness with other.disc.thickness
                                                 ! missing-value
        pair: thickness with other.disc.thickness within 2 % within 3 %
                                                             ^^^^^^^^^^ unreadable-value
    `);
  });
});

describe("a record within a record", () => {
  it("changes or defaults any record of the tree", () => {
    expect(said(readRecord("assembly", "default: friction oiled"))).toEqual({
      value: { word: "friction", values: { value: { form: "word", word: "oiled" } } },
    });
    expect(
      said(readRecord("day", 'changed: rear.bolts bolt 4 x M10x1.25x45 class 10.9 by "JR" "stretched"')),
    ).toEqual({
      what: "rear.bolts",
      definition: {
        word: "bolt",
        values: { value: { count: "4", thread: "M10x1.25x45", strength: "class 10.9" } },
      },
      by: '"JR"',
      note: '"stretched"',
    });
    expect(said(readRecord("day", "changed: fan load 17 A"))).toEqual({
      what: "fan",
      definition: { word: "load", values: { value: "17 A" } },
    });
    expect(said(readRecord("day", "changed: front default friction dry"))).toMatchObject({
      definition: { word: "default", values: { value: { word: "friction" } } },
    });
    expect(said(readRecord("day", 'changed: hub test turning "by hand" "after the noise"'))).toEqual({
      what: "hub",
      definition: { word: "test", values: { name: "turning", how: '"by hand"' } },
      note: '"after the noise"',
    });
    expect(said(readRecord("day", 'changed: bolts torque by hand by "JR"'))).toMatchObject({
      definition: { values: { value: { form: "byHand" } } },
      by: '"JR"',
    });
  });

  it("spans its word and its values", () => {
    const node = readRecord("day", 'changed: fan load 17 A by "JR"').values.get("definition");
    expect(node).toMatchObject({ start: 34, end: 43 });
  });

  it("is named, and read by the rules of its own", () => {
    expectMarked(`
      assembly front
        default: oiled
                 ^^^^^ unreadable-value
        default: fricton oiled
                 ^^^^^^^ unreadable-value
        default:
                ! missing-value
        default: default friction oiled
                 ^^^^^^^ unreadable-value
      day 2026-05-02
        changed: fan load
                         ! missing-value
        changed: fan by "JR"
                    ! missing-value
        changed: front default default friction oiled
                               ^^^^^^^ unreadable-value
    `);
  });
});

describe("a record that is not complete", () => {
  it("says what is missing, where it is missing", () => {
    expectMarked(`
      part hub
        price:
              ! missing-value
        limit:
              ! missing-value
        limit: bore
                   ! missing-value
        life: 5 year
                    ! missing-value
        count:  # none
              ! missing-value
    `);
  });

  it("says what is too much", () => {
    expectMarked(`
      part hub
        count: 4 x
                 ^ unreadable-value
        material: steel steel
                        ^^^^^ unreadable-value
        maker: "Halvorsen" "and son"
                           ^^^^^^^^^ unreadable-value
    `);
  });
});
