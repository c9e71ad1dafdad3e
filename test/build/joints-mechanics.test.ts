/** Joints as they are specified: bolt, nut, thread, class, friction and torque against each other. */
import { describe, expect, it } from "vitest";
import { jointFaults } from "./joint-faults-of.ts";
import { readJoints } from "./joint-log.ts";

/** The faults of one joint of these records, as `code` with what tells it apart. */
const faults = (records: string, parts = "") => jointFaults(records, parts).map(({ code }) => code);
const TIGHT = "torque: 24 N.m\nfriction: zinc";

describe("past the nut", () => {
  const bolt = (length: number, more = "height 6.8 mm") =>
    `bolt: 2 x M8x1.25x${length} class 8.8\nnut: plain M8 class 8 ${more}\nwashers: 2 x 1.6 mm\ngrip: 14 mm\n${TIGHT}`;

  it("two pitches of thread are asked", () => {
    // 26.5 mm less 14 mm grip, 3.2 mm of washers and 6.8 mm of nut leaves 2.5 mm: two pitches of M8
    expect(faults(bolt(26.5))).toEqual([]);
    expect(jointFaults(bolt(26))).toMatchObject([
      {
        code: "bolt-too-short",
        grave: true,
        data: { into: "nut", pitches: expect.closeTo(1.6) },
      },
    ]);
  });

  it("the vehicle may ask for more or less", () => {
    const asked = (pitches: number) =>
      readJoints(
        `vehicle "Example"\n  protrusion: ${pitches}\n\njoint j "J"\n  bolt: 1 x M8x1.25x26 class 8.8\n  nut: plain M8 height 6.8 mm\n  washers: 2 x 1.6 mm\n  grip: 14 mm\n  ${TIGHT.replace("\n", "\n  ")}\n`,
      ).found("bolt-too-short");
    expect(asked(1)).toEqual([]);
    expect(asked(2)).toHaveLength(1);
  });

  it("a nut whose height is not stated is taken as 0.8 d", () => {
    // ISO 4032: nuts of style 1 are 0.8 to 0.9 d high, 6.8 mm for M8
    expect(faults(bolt(26.5, ""))).toEqual([]);
    expect(jointFaults(bolt(25, ""))).toMatchObject([
      { code: "bolt-too-short", data: { heightStated: false } },
    ]);
  });

  it("more than ten pitches are worth a word, no more", () => {
    const long = bolt(40).replace("nut:", "thread_length: 30 mm\nnut:");
    expect(jointFaults(long)).toMatchObject([{ code: "bolt-too-long", grave: false, data: { into: "nut" } }]);
  });

  it("of a stud counts from its whole length, with the end in the hole as short as any", () => {
    // DIN 938: 1 d is screwed in; 38 mm less 8, 20 and 6.4 leaves 3.6 mm at most
    const stud = (length: number) =>
      `stud: 4 x M8x1.25x${length} class 8.8\nnut: plain M8 class 8\ngrip: 20 mm\n${TIGHT}`;
    expect(faults(stud(38))).toEqual([]);
    expect(jointFaults(stud(36))).toMatchObject([{ code: "bolt-too-short", data: { atMost: true } }]);
    expect(faults(stud(36).replace("grip: 20 mm\n", ""))).toEqual([]);
  });
});

describe("in a tapped hole", () => {
  const hole = (length: number, depth: number, material: string, cls = "class 8.8", grip = 14) =>
    `bolt: 2 x M8x1.25x${length} ${cls}\nnut: tapped ${depth} mm in ${material}\ngrip: ${grip} mm\ntorque: 24 N.m\nfriction: oiled`;

  it.each([
    // material, class, diameters of engagement that are asked (common practice, no source)
    ["steel", "class 8.8", 8],
    ["cast_iron", "class 8.8", 10.4],
    ["aluminium", "class 8.8", 16],
    ["magnesium", "class 8.8", 20],
    ["steel", "class 10.9", 10],
    ["aluminium", "class 10.9", 20],
    ["aluminium", "class unknown", 16],
  ] as const)("in %s a bolt of %s needs %d mm", (material, cls, needed) => {
    const codes = (reach: number) =>
      faults(hole(14 + reach, 40, material, cls)).filter((code) => code === "bolt-too-short");
    expect(codes(needed)).toEqual([]);
    expect(codes(needed - 0.1)).toEqual(["bolt-too-short"]);
  });

  it("that is too shallow no longer bolt helps", () => {
    expect(jointFaults(hole(26, 12, "aluminium"))).toMatchObject([
      {
        code: "engagement-short",
        grave: true,
        data: { is: "hole" },
      },
    ]);
  });

  it("of plastic, timber or composite it takes an insert", () => {
    expect(jointFaults(hole(30, 20, "plastic"))).toMatchObject([
      { code: "engagement-short", data: { is: "insert" } },
    ]);
  });

  it("the bolt must not come to the bottom", () => {
    expect(faults(hole(30, 16, "aluminium"))).toEqual([]);
    expect(jointFaults(hole(32, 16, "aluminium"))).toMatchObject([
      {
        code: "bolt-too-long",
        grave: true,
        data: { into: "hole" },
      },
    ]);
  });
});

describe("a nut's own height", () => {
  const nut = (height: number) =>
    `bolt: 1 x M8x1.25x30 class 8.8\nnut: plain M8 class 8 height ${height} mm\n${TIGHT}`;

  it("under half the diameter holds nothing; under eight tenths not its class", () => {
    // ISO 898-2, from memory: full nuts from 0.8 d, thin nuts from 0.5 d
    expect(faults(nut(6.4))).toEqual([]);
    expect(jointFaults(nut(5))).toMatchObject([{ code: "engagement-short", grave: false }]);
    expect(jointFaults(nut(3.5))).toMatchObject([{ code: "engagement-short", grave: true }]);
  });
});

describe("the plain shank", () => {
  const shank = (records: string) => faults(`${records}\n${TIGHT}`);

  it("is no longer than what it clamps, by ISO 888 where the thread is not stated", () => {
    // M8x60: 2d + 6 = 22 mm of thread, 38 mm of shank
    const bolt = "bolt: 1 x M8x1.25x60 class 8.8";
    expect(shank(`${bolt}\ngrip: 38 mm`)).toEqual([]);
    expect(shank(`${bolt}\ngrip: 36 mm`)).toEqual(["threadbound"]);
    expect(shank(`${bolt}\ngrip: 36 mm\nwashers: 2 x 1.6 mm`)).toEqual([]);
    expect(shank(`${bolt}\ngrip: 36 mm\nthread_length: 30 mm`)).toEqual([]);
  });

  it("of an inch bolt goes by ASME B18.2.1", () => {
    // 1/2 x 3-1/2 in: 2d + 1/4 in = 1.25 in of thread, 2.25 in (57.15 mm) of shank; from memory
    const bolt = "bolt: 2 x 1/2-20 UNF x 3-1/2 in grade 5";
    const torque = "torque: 70 lbf.ft\nfriction: zinc";
    expect(faults(`${bolt}\ngrip: 57.2 mm\n${torque}`)).toEqual([]);
    expect(faults(`${bolt}\ngrip: 56 mm\n${torque}`)).toEqual(["threadbound"]);
  });
});

describe("threads and classes", () => {
  it("of one hand go together, and of one thread", () => {
    const pair = (bolt: string, nut: string) =>
      faults(`bolt: 1 x ${bolt}\nnut: plain ${nut}\ntorque: 24 N.m`);
    expect(pair("M8x1.25x30", "M8")).toEqual([]);
    expect(pair("1/2-20 UNF x 2 in LH", "1/2-20 UNF")).toEqual(["hand-differs"]);
    expect(pair("M8x1x30", "M8")).toEqual(["mixed-thread"]);
    // 1/2 in is the one size where coarse Unified and Whitworth differ in pitch too: 13 and 12 threads (ASME B1.1, BS 84)
    expect(pair("1/2-13 UNC x 2 in", "1/2 BSW")).toEqual(["mixed-thread"]);
    expect(pair("5/16-18 UNC x 1 in", "5/16 BSW")).toEqual(["mixed-thread"]);
  });

  it("a nut is of the first figure of its bolt's class at least", () => {
    // ISO 898-2
    const pair = (bolt: string, nut: string) =>
      faults(`bolt: 1 x M8x1.25x35 class ${bolt}\nnut: plain M8 class ${nut}\n${TIGHT}`).filter(
        (code) => code === "class-mismatch",
      );
    expect(pair("8.8", "8")).toEqual([]);
    expect(pair("8.8", "10")).toEqual([]);
    expect(pair("10.9", "8")).toEqual(["class-mismatch"]);
    expect(pair("8.8", "04")).toEqual(["class-mismatch"]);
    expect(pair("unknown", "8")).toEqual([]);
  });
});

describe("the load of the bolt", () => {
  it("is a word from 90 % of proof and an error over it, at the top of the torque and the lowest friction", () => {
    // M8 class 8.8: proof 21 200 N (ISO 898-1); K 0.20: 100 % is 33.9 N.m
    const at = (torque: string) =>
      jointFaults(`bolt: 1 x M8x1.25x30 class 8.8\ntorque: ${torque}\nfriction: zinc`, "");
    expect(at("24..30 N.m")).toEqual([]);
    expect(at("24..31 N.m")).toMatchObject([{ code: "torque-over-proof", grave: false }]);
    expect(at("24..34 N.m")).toMatchObject([{ code: "torque-over-proof", grave: true }]);
  });

  it("is a warning where even the most comes to under half, an information where only the aim does", () => {
    const at = (torque: string) =>
      jointFaults(`bolt: 1 x M8x1.25x30 class 8.8\ntorque: ${torque}\nfriction: zinc`, "");
    expect(at("14 N.m ± 10 %")).toMatchObject([{ code: "torque-low-preload", data: { atMost: true } }]);
    expect(at("16.5 N.m ± 10 %")).toMatchObject([{ code: "torque-low-preload", data: { atMost: false } }]);
    expect(at("18 N.m ± 10 %")).toEqual([]);
    expect(at("10 N.m then 90 deg")).toEqual([]);
  });

  it("takes friction that is not stated as dry, and says so", () => {
    expect(jointFaults("bolt: 1 x M8x1.25x30 class 8.8\ntorque: 25 N.m")).toMatchObject([
      {
        code: "friction-assumed",
        grave: false,
        data: { friction: expect.stringContaining("0.20 to 0.25") },
      },
    ]);
  });

  it("is left out where the class is unknown", () => {
    expect(faults("bolt: 1 x M8x1.25x30 class unknown\ntorque: 60 N.m")).toEqual([]);
    expect(faults("bolt: 1 x M8x1.25x30\ntorque: 60 N.m")).toEqual([]);
  });
});

describe("a torque from the class", () => {
  const records = (more = "friction: zinc") => `bolt: 1 x M8x1.25x30 class 8.8\ntorque: from class\n${more}`;
  const doubt = (is: string, grave: boolean) => ({
    code: "torque-not-stated",
    grave,
    data: { is: "from class", doubt: { is } },
  });

  it("is good for plain steel, a warning where failure can hurt", () => {
    expect(faults(records())).toEqual([]);
    expect(jointFaults(records("friction: zinc\nsafety: critical"))).toMatchObject([
      doubt("critical", false),
    ]);
  });

  it.each([
    ["titanium", "friction: zinc", "material: titanium"],
    ["soft part", "friction: zinc", "material: timber"],
    ["soft thread", "friction: zinc\nnut: tapped 30 mm in aluminium", "material: steel"],
    ["stainless", "friction: stainless", "material: steel"],
  ])("is an error for %s", (is, more, part) => {
    expect(jointFaults(records(more), part)).toMatchObject([doubt(is, true)]);
  });

  it("is an error for what the author calls a pivot, a bearing or a banjo", () => {
    const named = (title: string) => jointFaults(records(), "material: steel", title);
    expect(named("Banjo to caliper")).toMatchObject([doubt("banjo", true)]);
    expect(named("Arm pivot")).toMatchObject([doubt("pivot", true)]);
  });

  it("that cannot be computed is none", () => {
    expect(jointFaults("bolt: 1 x M8x1.25x30 class unknown\ntorque: from class")).toMatchObject([
      {
        code: "torque-not-stated",
        data: { is: "not computed", missing: "class" },
      },
    ]);
    expect(jointFaults(records("friction: threadlocker"))).toMatchObject([{ data: { missing: "friction" } }]);
  });
});

describe("the rest", () => {
  it("a torque that is neither stated nor lost is missing", () => {
    expect(faults("lock: none")).toEqual(["torque-not-stated"]);
    expect(faults("torque: 24 nm")).toEqual([]);
    expect(faults("torque: by hand")).toEqual([]);
  });

  it("threadlocker does not hold on oiled threads or under moly", () => {
    const lock = (friction: string) => faults(`torque: 24 N.m\nlock: threadlocker\nfriction: ${friction}`);
    expect(lock("oiled")).toEqual(["lock-missing"]);
    expect(lock("moly")).toEqual(["lock-missing"]);
    expect(lock("dry")).toEqual([]);
  });
});

describe("joints copied from one", () => {
  const corner = `
vehicle "Example"

assembly left "Left"
part left.hub "Hub"
  material: steel
joint left.bolts "Bolts"
  joins: left.hub
  bolt: 2 x M8x1.25x20 class 8.8
  nut: plain M8 height 6.8 mm
  grip: 14 mm
  torque: 24 N.m
  friction: zinc
joint left.clip "Clip"
  joins: left.hub
assembly right "Right" like left
`;

  it("have one mistake between them, at the record that they came from", () => {
    const log = readJoints(corner);
    expect(log.found("bolt-too-short")).toEqual(["bolt-too-short: bolt: 2 x M8x1.25x20 class 8.8"]);
    expect(log.found("torque-not-stated")).toEqual(["torque-not-stated: left.clip"]);
    expect(log.wants("right.bolts")).toContain("bolt-too-short");
  });

  it("weigh as the gravest of them", () => {
    const log = readJoints(`${corner}part right.hub "Hub"\n  safety: critical\n`);
    expect(log.build.findings.find(({ code }) => code === "bolt-too-short")?.critical).toBe(true);
  });

  it("have two where one of them says something of its own", () => {
    const log = readJoints(`${corner}joint right.bolts "Bolts"\n  grip: 15 mm\n`);
    expect(log.found("bolt-too-short")).toHaveLength(2);
  });
});
