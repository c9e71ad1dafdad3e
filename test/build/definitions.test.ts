import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import type { RecordWord } from "../../server/build/lowering/definition-record.ts";
import { lineOf, textAt } from "../../server/build/source.ts";
import { buildOf, expectFindings, findingOf, findingsOf, nodeAt } from "./marked-build.ts";

/** The records of a word that are in force for a thing, as they are written. */
function inForce(build: Build, path: string, word: RecordWord): string[] {
  return build.standing.definitions
    .all(nodeAt(build, path), word)
    .map(({ site, record }) => textAt({ site, ...record.at }));
}

describe("the blocks of a build", () => {
  it("are read over all files, in the order of their paths by code point, then of their lines", () => {
    const build = buildOf({
      "b.cotter": 'part b.one "One"\npart b.two "Two"\n',
      "a/z.cotter": 'part a.z "Z"\n',
      "B.cotter": 'part upper "Upper"\n',
    });
    const parts = [...build.standing.gathered.tree.ofKind("part")].sort((a, b) => a.order - b.order);
    expect(parts.map(({ path }) => path)).toEqual(["upper", "a.z", "b.one", "b.two"]);
  });

  it("need no block for an assembly: every beginning of a path is one", () => {
    const build = buildOf('part front.left.hub "Hub"\n');
    expect(nodeAt(build, "front.left")).toMatchObject({ kind: "assembly", header: undefined });
    expect(nodeAt(build, "front").children.map(({ path }) => path)).toEqual(["front.left"]);
  });

  it("may have parts above parts", () => {
    const build = buildOf('part caliper.piston "Piston"\npart caliper "Caliper"\n');
    expect(nodeAt(build, "caliper.piston").parent).toBe(nodeAt(build, "caliper"));
  });

  it("say so where there is no vehicle among them, and where there are two", () => {
    expectFindings(
      ["no-vehicle", "second-vehicle"],
      'vehicle "One"\nvehicle "Two"\n        ^^^^^ second-vehicle\n',
    );
  });

  it("cannot take the name of the whole", () => {
    const build = expectFindings(
      ["reserved-name"],
      `
      part vehicle "Everything"
           ^^^^^^^ reserved-name
      part hub "Hub"
      `,
    );
    expect(nodeAt(build, "hub").parent?.kind).toBe("vehicle");
  });
});

describe("reserved names", () => {
  it("are refused as names of one segment, and may stand in a path", () => {
    expectFindings(
      ["reserved-name"],
      `
      part on "On"
           ^^ reserved-name
      job batch "Batch"
          ^^^^^ reserved-name
      part switch.on "On"
      gauge max "Max"
            ^^^ reserved-name
      part inner "In and on within a name are nothing"
      `,
    );
  });

  it("are words that read as a thread", () => {
    expectFindings(
      ["reserved-name"],
      `
      part M10 "A part"
           ^^^ reserved-name
      joint M10x "A joint"
      `,
    );
  });
});

describe("what stands twice", () => {
  it("is a complaint at the second block, with the first beside it, and loses nothing", () => {
    const build = expectFindings(
      ["duplicate-name"],
      `
      part hub "Hub"
        material: steel
      part hub "Hub again"
           ^^^ duplicate-name
        price: 12.00 GBP
      `,
    );
    const { data, seeAlso } = findingOf(build, "duplicate-name");
    expect(data).toEqual({ what: "part", name: "hub" });
    expect(seeAlso.map(({ place }) => lineOf(place))).toEqual([1]);
    expect(
      build.standing.gathered.written.records(nodeAt(build, "hub")).map(({ record }) => record.word),
    ).toEqual(["material", "price"]);
  });

  it("is a path whatever the kinds: parts, joints, systems and circuits share one tree", () => {
    expectFindings(
      ["duplicate-name"],
      `
      part hub "Hub"
      joint hub "A joint of that path"
            ^^^ duplicate-name
      `,
    );
  });

  it("is a name of a job and a hold point, which share one name space; both stay", () => {
    const build = expectFindings(
      ["duplicate-name"],
      `
      job ready "Get ready"
      hold ready "Ready"
           ^^^^^ duplicate-name
      supplier ready "A supplier may be called so too"
      gauge ready "And a gauge"
      `,
    );
    expect(build.standing.jobs.size).toBe(1);
    expect(build.standing.holds.size).toBe(1);
  });

  it("keeps the records of a job that is written twice", () => {
    const build = expectFindings(
      ["duplicate-name"],
      `
      job strip "Strip"
        takes: 4 h
      job strip "Strip again"
          ^^^^^ duplicate-name
        start: 2026-05-02
      `,
    );
    const [job] = build.standing.names.every("job");
    expect(job?.records.map(({ record }) => record.word)).toEqual(["takes", "start"]);
  });

  it("is a second record where one counts: the last", () => {
    const build = expectFindings(
      ["duplicate-name"],
      `
      part hub "Hub"
        count: 2
        count: 3
        ^^^^^^^^ duplicate-name
      part disc "Disc"
      joint nut "Nut"
        joins: hub
        joins: disc
        ^^^^^^^^^^^ duplicate-name
      `,
    );
    expect(inForce(build, "hub", "count")).toEqual(["count: 3"]);
    expect(inForce(build, "nut", "joins")).toEqual(["joins: disc"]);
    expect(findingsOf(build, ["duplicate-name"])[0]?.data).toEqual({ what: "record", name: "count:" });
  });

  it("is none of limits, fits, pairs, uses, needs, loads, lives, rates and closed days", () => {
    expectFindings(
      ["duplicate-name"],
      `
      vehicle "Plover"
        rate: 1 EUR = 0.86 GBP
        rate: 1 USD = 0.75 GBP
        closed: 2026-08-01..2026-08-14
        closed: 2026-12-24..2026-12-31
      part hub "Hub"
        limit: play min 0.05 mm
        limit: play max 0.13 mm
        life: 5 year from made
        life: 20 h running
      part pin "Pin"
      joint nut "Nut"
        uses: 1 x pin
        uses: 2 x hub
      circuit lamp "Lamp"
        load: 5 A
        load: 21 W
      job strip "Strip"
        needs: 1 x pin
        needs: 1 x hub
      `,
    );
  });

  it("is a size, setting or test of one name, for it can only be one", () => {
    const build = expectFindings(
      ["duplicate-name"],
      `
      part spring "Spring"
        size: wire 10 mm
        size: free_length 292 mm
        size: wire 11 mm
        ^^^^^^^^^^^^^^^^ duplicate-name
      `,
    );
    expect(inForce(build, "spring", "size")).toEqual(["size: free_length 292 mm", "size: wire 11 mm"]);
  });

  it("is a bolt beside a stud: the last is what holds the joint", () => {
    const build = expectFindings(
      ["duplicate-name"],
      `
      joint nut "Nut"
        bolt: 4 x M8x1.25x30 class 8.8
        stud: 4 x M10x1.5x30 class 8.8
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ duplicate-name
      `,
    );
    expect(inForce(build, "nut", "bolt")).toEqual([]);
  });

  it("is a default of one word in one assembly", () => {
    expectFindings(
      ["duplicate-name"],
      `
      assembly front "Front"
        default: friction oiled
        default: lock lockwire
        default: friction zinc
        ^^^^^^^^^^^^^^^^^^^^^^ duplicate-name
      `,
    );
  });
});

describe("default:", () => {
  it("holds for everything below that says nothing itself, of the nearest assembly that has one", () => {
    const build = buildOf(`
      assembly front "Front"
        default: friction zinc
        default: lock lockwire
      assembly front.left "Left"
        default: friction oiled
      joint front.left.a "A"
      joint front.left.b "B"
        friction: dry
      joint front.right.c "C"
      joint rear.d "D"
    `);
    expect(inForce(build, "front.left.a", "friction")).toEqual(["friction oiled"]);
    expect(inForce(build, "front.left.a", "lock")).toEqual(["lock lockwire"]);
    expect(inForce(build, "front.left.b", "friction")).toEqual(["friction: dry"]);
    expect(inForce(build, "front.right.c", "friction")).toEqual(["friction zinc"]);
    expect(inForce(build, "rear.d", "friction")).toEqual([]);
  });

  it("is replaced name by name", () => {
    const build = buildOf(`
      assembly engine "Engine"
        default: limit runout max 0.10 mm
      part engine.shaft "Shaft"
        limit: play max 0.05 mm
      part engine.rod "Rod"
        limit: runout max 0.02 mm
    `);
    expect(inForce(build, "engine.shaft", "limit")).toEqual([
      "limit: play max 0.05 mm",
      "limit runout max 0.10 mm",
    ]);
    expect(inForce(build, "engine.rod", "limit")).toEqual(["limit: runout max 0.02 mm"]);
  });

  it("reaches only the kinds of things that take such a record", () => {
    const build = buildOf(`
      assembly engine "Engine"
        default: friction oiled
        default: material steel
      part engine.rod "Rod"
      joint engine.nut "Nut"
    `);
    expect(inForce(build, "engine.rod", "friction")).toEqual([]);
    expect(inForce(build, "engine.nut", "material")).toEqual([]);
  });

  it("does not give a joint bolts beside its own studs", () => {
    const build = buildOf(`
      assembly engine "Engine"
        default: bolt 4 x M8x1.25x30 class 8.8
      joint engine.head "Head"
        stud: 4 x M10x1.5x30 class 8.8
    `);
    expect(inForce(build, "engine.head", "bolt")).toEqual([]);
  });
});

describe("changed:", () => {
  const JOINT = `
joint nut "Nut"
  bolt: 4 x M8x1.25x30 class 8.8
  torque: 24 N.m
`;

  it("makes a definition different from its day on; the block says how it was at the start", () => {
    const text = `${JOINT}
day 2026-05-01
  torqued: nut 24 N.m
day 2026-05-02
  torqued: nut 47 N.m
  changed: nut torque 47 N.m
day 2026-05-03
  torqued: nut 24 N.m
               ^^^^^^ torque-outside
`;
    const build = expectFindings(["torque-outside"], text);
    expect(inForce(build, "nut", "torque")).toEqual(["torque 47 N.m"]);
  });

  it("takes effect together with the other changes of its day, in whichever file and line they stand", () => {
    const build = buildOf({
      "a.cotter": `${JOINT}\nday 2026-05-02\n  changed: nut torque 47 N.m\n`,
      "b.cotter": "day 2026-05-02\n  changed: nut bolt 4 x M10x1.25x45 class 10.9\n",
    });
    expect(inForce(build, "nut", "torque")).toEqual(["torque 47 N.m"]);
    expect(inForce(build, "nut", "bolt")).toEqual(["bolt 4 x M10x1.25x45 class 10.9"]);
  });

  it("replaces every record of that word, and those of one day stand together", () => {
    const build = buildOf(`
      circuit fan "Fan"
        load: 5 A
        load: 6 A
      day 2026-05-02
        changed: fan load 17 A
        changed: fan load 2 A
    `);
    expect(inForce(build, "fan", "load")).toEqual(["load 17 A", "load 2 A"]);
  });

  it("replaces only records of that name, where they have one", () => {
    const build = buildOf(`
      part disc "Disc"
        limit: thickness min 8.4 mm
        limit: thickness max 12 mm
        limit: runout max 0.10 mm
      day 2026-05-02
        changed: disc limit thickness min 8.0 mm
    `);
    expect(inForce(build, "disc", "limit")).toEqual([
      "limit: runout max 0.10 mm",
      "limit thickness min 8.0 mm",
    ]);
  });

  it("replaces bolts by studs", () => {
    const build = buildOf(`${JOINT}
day 2026-05-02
  changed: nut stud 4 x M10x1.5x45 class 10.9
`);
    expect(inForce(build, "nut", "bolt")).toEqual([]);
    expect(inForce(build, "nut", "stud")).toEqual(["stud 4 x M10x1.5x45 class 10.9"]);
  });

  it("can be of a copy, and leaves its original alone", () => {
    const build = buildOf(`
      joint left.nut "Nut"
        torque: 24 N.m
      assembly right "Right" like left
      day 2026-05-02
        changed: right.nut torque 47 N.m
    `);
    expect(inForce(build, "right.nut", "torque")).toEqual(["torque 47 N.m"]);
    expect(inForce(build, "left.nut", "torque")).toEqual(["torque: 24 N.m"]);
  });

  it("can be of an assembly's default, and reaches everything below that said nothing itself", () => {
    const build = buildOf(`
      assembly front "Front"
        default: friction zinc
        default: lock lockwire
      joint front.a "A"
      joint front.b "B"
        friction: dry
      day 2026-05-02
        changed: front default friction oiled
    `);
    expect(inForce(build, "front.a", "friction")).toEqual(["friction oiled"]);
    expect(inForce(build, "front.a", "lock")).toEqual(["lock lockwire"]);
    expect(inForce(build, "front.b", "friction")).toEqual(["friction: dry"]);
  });

  it("wins over a default, and over an earlier change", () => {
    const build = buildOf(`
      assembly front "Front"
        default: friction zinc
      joint front.a "A"
      day 2026-05-02
        changed: front.a friction dry
      day 2026-05-03
        changed: front.a friction oiled
    `);
    expect(inForce(build, "front.a", "friction")).toEqual(["friction oiled"]);
  });

  it("does not count before its day, nor on a day to come", () => {
    const build = buildOf(
      `${JOINT}
day 2026-05-02
  changed: nut torque 30 N.m
day 2026-05-09
  changed: nut torque 47 N.m
`,
      "2026-05-05" as never,
    );
    expect(inForce(build, "nut", "torque")).toEqual(["torque 30 N.m"]);
  });

  it("is refused of a thing that has no such record", () => {
    const build = expectFindings(
      ["record-not-here"],
      `
      part disc "Disc"
      day 2026-05-02
        changed: disc torque 24 N.m
                      ^^^^^^^^^^^^^ record-not-here
      `,
    );
    expect(inForce(build, "disc", "torque")).toEqual([]);
  });

  it("disturbs the thing and everything above it", () => {
    const build = buildOf(`
      part front.disc "Disc"
      day 2026-05-02
        changed: front.disc limit runout max 0.2 mm
    `);
    const { disturbed } = build.standing;
    expect(disturbed.get(nodeAt(build, "front.disc"))?.fact.word).toBe("changed");
    expect(disturbed.get(nodeAt(build, "front"))?.fact.word).toBe("changed");
  });
});
