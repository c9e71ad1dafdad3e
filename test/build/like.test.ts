import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import type { RecordWord } from "../../server/build/lowering/definition-record.ts";
import { textAt } from "../../server/build/source.ts";
import { isWithin } from "../../server/build/tree/node.ts";
import { buildOf, expectFindings, findingOf, findingsOf, lineAndText, nodeAt } from "./marked-build.ts";

const COPIES = ["unknown-reference", "reference-kind", "like-cycle", "like-points-back"] as const;

/** The records of a thing as they are written, copies included. */
function said(build: Build, path: string): string[] {
  const { written } = build.standing.gathered;
  return written.records(nodeAt(build, path)).map(({ site, record }) => textAt({ site, ...record.at }));
}

/** What the references of a record mean, by path. */
function meant(build: Build, path: string, word: RecordWord & ("joins" | "parts")): string[] {
  const { definitions, names } = build.standing;
  return definitions
    .all(nodeAt(build, path), word)
    .flatMap(({ record, turns }) =>
      record.references.flatMap((reference) => names.targets(reference, ["part"], turns)),
    )
    .map(({ node }) => node.path);
}

function pathsBelow(build: Build, branch: string): string[] {
  return [...build.standing.gathered.tree.nodes()]
    .map(({ path }) => path)
    .filter((path) => isWithin(path, branch) && path !== branch);
}

const LEFT = `
part frame "Frame"
assembly front.left "Left corner"
  setting: camber -1.5 deg ± 0.25 deg
part front.left.hub "Hub"
  material: steel
  number: "FS-1104"
part front.left.disc "Disc"
  limit: thickness min 8.4 mm
  limit: runout max 0.10 mm
  pair: thickness with front.right.disc.thickness within 2 %
joint front.left.disc_bolts "Disc to hub"
  joins: front.left.disc, front.left.hub
  torque: 24 N.m
joint front.left.pivot "Hub to frame"
  joins: front.left.hub, frame
system front.left.brake "Brake"
  parts: front.left.disc
circuit front.left.lamp "Lamp"
  load: 5 A
`;

describe("an assembly that is like another", () => {
  it("copies the whole branch: every part, joint, system and circuit", () => {
    const build = expectFindings(COPIES, `${LEFT}\nassembly front.right "Right corner" like front.left\n`);
    expect(pathsBelow(build, "front.right")).toEqual([
      "front.right.hub",
      "front.right.disc",
      "front.right.disc_bolts",
      "front.right.pivot",
      "front.right.brake",
      "front.right.lamp",
    ]);
    expect(said(build, "front.right")).toEqual(["setting: camber -1.5 deg ± 0.25 deg"]);
    expect(nodeAt(build, "front.right.hub")).toMatchObject({ copyOf: "front.left.hub", title: "Hub" });
  });

  it("turns references into the copied branch to the copy, and leaves others alone", () => {
    const build = buildOf(`${LEFT}\nassembly front.right "Right corner" like front.left\n`);
    expect(meant(build, "front.right.disc_bolts", "joins")).toEqual(["front.right.disc", "front.right.hub"]);
    expect(meant(build, "front.right.pivot", "joins")).toEqual(["front.right.hub", "frame"]);
    expect(meant(build, "front.right.brake", "parts")).toEqual(["front.right.disc"]);
  });

  it("turns references into the copy's own branch to the source, so that a pair works both ways", () => {
    const build = buildOf(`${LEFT}\nassembly front.right "Right corner" like front.left\n`);
    const [pair] = build.standing.definitions.all(nodeAt(build, "front.right.disc"), "pair");
    const other =
      pair && build.standing.names.member(build.standing.definitions, pair.record.other, pair.turns);
    expect(other?.node?.path).toBe("front.left.disc");
  });

  it("is added to and overridden by blocks of its own, record by record and name by name", () => {
    const build = buildOf(`${LEFT}
assembly front.right "Right corner" like front.left
  setting: camber -1 deg ± 0.25 deg
  setting: castor 4 deg ± 0.5 deg
part front.right.disc "Right disc"
  limit: thickness min 8.0 mm
  limit: thickness max 12 mm
part front.right.sensor "Only here"
`);
    expect(said(build, "front.right")).toEqual([
      "setting: camber -1 deg ± 0.25 deg",
      "setting: castor 4 deg ± 0.5 deg",
    ]);
    expect(said(build, "front.right.disc")).toEqual([
      "limit: runout max 0.10 mm",
      "pair: thickness with front.right.disc.thickness within 2 %",
      "limit: thickness min 8.0 mm",
      "limit: thickness max 12 mm",
    ]);
    expect(nodeAt(build, "front.right.disc").title).toBe("Right disc");
    expect(pathsBelow(build, "front.right")).toContain("front.right.sensor");
  });

  it("says the same whichever block comes first", () => {
    const own = 'part front.right.disc "Right disc"\n  limit: thickness min 8.0 mm\n';
    const line = 'assembly front.right "Right corner" like front.left\n';
    const ahead = buildOf(own + line + LEFT);
    const behind = buildOf(LEFT + line + own);
    expect(said(ahead, "front.right.disc")).toEqual(said(behind, "front.right.disc"));
  });

  it("copies a branch whose path is only a beginning, without a block", () => {
    const build = expectFindings(
      COPIES,
      `
      part left.hub "Hub"
        material: steel
      assembly right "Right" like left
      `,
    );
    expect(said(build, "right.hub")).toEqual(["material: steel"]);
  });

  it("copies a part with the parts in it", () => {
    const build = expectFindings(
      COPIES,
      `
      part left.caliper "Caliper"
        kit: kit
      part left.caliper.piston "Piston"
      assembly right.caliper "Caliper" like left.caliper
      part kit "Kit"
      `,
    );
    expect(nodeAt(build, "right.caliper").kind).toBe("part");
    expect(nodeAt(build, "right.caliper.piston").kind).toBe("part");
  });

  it("stands behind its block in the order of definition", () => {
    const build = buildOf(`${LEFT}\nassembly front.right "Right" like front.left\npart last "Last"\n`);
    expect(nodeAt(build, "front.right.hub").order).toBeLessThan(nodeAt(build, "last").order);
  });

  it("knows the line that copied it, and that its original was read only in part", () => {
    const build = buildOf(`
      part left.hub "Hub"
        material: stel
      assembly right "Right" like left
    `);
    const hub = nodeAt(build, "right.hub");
    expect(hub.header && lineAndText(hub.header)).toBe("3: right");
    expect(build.standing.definitions.unread(hub)).toEqual(["material"]);
  });
});

describe("copies of copies", () => {
  it("turn step by step, in whatever order the blocks stand", () => {
    const build = expectFindings(
      COPIES,
      `
      assembly third "Third" like second
      assembly second "Second" like first
      part first.hub "Hub"
      joint first.nut "Nut"
        joins: first.hub
      `,
    );
    expect(meant(build, "second.nut", "joins")).toEqual(["second.hub"]);
    expect(meant(build, "third.nut", "joins")).toEqual(["third.hub"]);
  });

  it("copy what the copied copy says of its own", () => {
    const build = buildOf(`
      part first.hub "Hub"
        material: steel
      assembly second "Second" like first
      part second.hub "Hub"
        material: titanium
      assembly third "Third" like second
    `);
    expect(said(build, "third.hub")).toEqual(["material: titanium"]);
  });

  it("hold copies inside the branch that they copy", () => {
    const build = expectFindings(
      COPIES,
      `
      part left.arm "Arm"
      part left.hub "Hub"
      joint left.upper "Upper"
        joins: left.arm
        torque: 24 N.m
      joint left.lower "Lower" like left.upper
        joins: left.hub
      assembly right "Right" like left
      `,
    );
    expect(said(build, "right.lower")).toEqual(["torque: 24 N.m", "joins: left.hub"]);
    expect(meant(build, "right.lower", "joins")).toEqual(["right.hub"]);
  });

  it("let a block's own like win over the branch copy around it, in whatever order they stand", () => {
    const parts = `
part spare "Spare hub"
  material: titanium
part left.hub "Hub"
  material: steel
  number: "L"
`;
    const branch = 'assembly right "Right" like left\n';
    const own = 'part right.hub "Right hub" like spare\n';
    for (const text of [parts + branch + own, own + parts + branch]) {
      expect(said(buildOf(text), "right.hub").sort()).toEqual(["material: titanium", 'number: "L"']);
    }
  });

  it("may copy what exists only as a copy", () => {
    const build = expectFindings(
      COPIES,
      `
      part left.hub "Hub"
        material: steel
      assembly right "Right" like left
      part spare "Spare" like right.hub
      `,
    );
    expect(said(build, "spare")).toEqual(["material: steel"]);
  });
});

describe("a part, joint, system or circuit that is like another", () => {
  it("copies that block alone", () => {
    const build = expectFindings(
      COPIES,
      `
      part left.caliper "Caliper"
        material: cast_iron
      part left.caliper.piston "Piston"
      part right.caliper "Caliper" like left.caliper
      joint a "A"
        torque: 24 N.m
      joint b "B" like a
      system c "C"
        fluid: "DOT 4"
      system d "D" like c
      circuit e "E"
        load: 5 A
      circuit f "F" like e
      `,
    );
    expect(said(build, "right.caliper")).toEqual(["material: cast_iron"]);
    expect(pathsBelow(build, "right.caliper")).toEqual([]);
    expect([said(build, "b"), said(build, "d"), said(build, "f")]).toEqual([
      ["torque: 24 N.m"],
      ['fluid: "DOT 4"'],
      ["load: 5 A"],
    ]);
  });

  it("turns references in the same way", () => {
    const build = buildOf(`
      part left.spring "Spring"
        pair: rate with right.spring.rate within 3 %
      part right.spring "Spring" like left.spring
    `);
    const [pair] = build.standing.definitions.all(nodeAt(build, "right.spring"), "pair");
    expect(
      pair &&
        build.standing.names.member(build.standing.definitions, pair.record.other, pair.turns).node?.path,
    ).toBe("left.spring");
  });

  it("replaces copied bolts with studs of its own, for a joint has one or the other", () => {
    const build = buildOf(`
      joint a "A"
        bolt: 4 x M8x1.25x30 class 8.8
      joint b "B" like a
        stud: 4 x M10x1.5x30 class 10.9
    `);
    expect(said(build, "b")).toEqual(["stud: 4 x M10x1.5x30 class 10.9"]);
  });

  it("must be like a thing of its own kind", () => {
    const build = expectFindings(
      COPIES,
      `
      part hub "Hub"
      joint nut "Nut" like hub
                           ^^^ reference-kind
      part front.disc "Disc"
      part other "Other" like front
                              ^^^^^ reference-kind
      joint left "Left"
      part left.stud "Stud"
      assembly right "Right" like left
                                  ^^^^ reference-kind
      `,
    );
    expect(nodeAt(build, "nut").kind).toBe("joint");
    expect(findingsOf(build, ["reference-kind"]).map(({ data }) => data)).toEqual([
      { text: "hub", kind: "part", wanted: "a joint" },
      { text: "front", kind: "assembly", wanted: "a part" },
      { text: "left", kind: "joint", wanted: "an assembly" },
    ]);
  });

  it("is said where a block of another kind stands in the way of a branch copy", () => {
    const build = expectFindings(
      COPIES,
      `
      joint left.nut "Nut"
      assembly right "Right" like left
      part right.nut "A part of that name"
           ^^^^^^^^^ reference-kind
      `,
    );
    expect(nodeAt(build, "right.nut").kind).toBe("part");
  });
});

describe("what is never copied", () => {
  it("is made, expires, as_found, stock and keep: the history and the stock of the original", () => {
    const build = buildOf(`
      part left.hose "Hose"
        made: 2024-06-01
        expires: 2030-06-01
        as_found: missing
        stock: 2
        keep: 1
        life: 6 year from made
      assembly right "Right" like left
      part spare "Spare" like left.hose
    `);
    expect(said(build, "right.hose")).toEqual(["life: 6 year from made"]);
    expect(said(build, "spare")).toEqual(["life: 6 year from made"]);
  });

  it("is not copied as a default either", () => {
    const build = buildOf(`
      assembly left "Left"
        default: expires 2030-06-01
        default: friction zinc
        default: lock lockwire
      assembly right "Right" like left
    `);
    expect(said(build, "right")).toEqual(["default: friction zinc", "default: lock lockwire"]);
  });

  it("is history: what happened to the original happened to it alone", () => {
    const build = buildOf(`
      part left.hose "Hose"
      assembly right "Right" like left
      day 2026-05-02
        removed: left.hose
        tagged: left.hose "L"
        found: left.hose chafed
    `);
    const hose = build.standing.parts.get(nodeAt(build, "right.hose"));
    expect(hose).toMatchObject({ place: "on", tags: [], item: { events: [] } });
  });
});

describe("what cannot be copied", () => {
  it("is a path that nothing has, with the nearest ones offered", () => {
    const build = expectFindings(
      COPIES,
      `
      part left.hub "Hub"
      assembly right "Right" like lefft
                                  ^^^^^ unknown-reference
      `,
    );
    const { data, fixes } = findingOf(build, "unknown-reference");
    expect(data).toEqual({ text: "lefft", kinds: ["assembly"], nearest: ["left"] });
    expect(fixes.map(({ text }) => text)).toEqual(["left"]);
  });

  it("is a ring: one complaint, and each keeps what its own block says", () => {
    const build = expectFindings(
      COPIES,
      `
      assembly left "Left" like right
                                ^^^^^ like-cycle
      assembly right "Right" like left
      part left.hub "Hub"
      `,
    );
    expect(findingOf(build, "like-cycle").data.paths).toEqual(["left", "right", "left"]);
    expect(pathsBelow(build, "left")).toEqual(["left.hub"]);
    expect(pathsBelow(build, "right")).toEqual([]);
  });

  it("is a branch within itself", () => {
    expectFindings(
      COPIES,
      `
      part front.left.hub "Hub"
      assembly front.left.spare "Spare" like front
                                             ^^^^^ like-cycle
      part same "Same" like same
                            ^^^^ like-cycle
      `,
    );
  });

  it("grows without end nowhere", () => {
    const chain = Array.from(
      { length: 17 },
      (_, index) =>
        `assembly b${index + 1}.x "More" like b${index}\nassembly b${index + 1}.y "More" like b${index}\n`,
    );
    const build = buildOf(`part b0.p "Part"\n${chain.join("")}`);
    expect(findingsOf(build, ["like-cycle"]).length).toBeGreaterThan(0);
  });
});

describe("a copy that points back", () => {
  it("is a joint that still joins the parts of the original", () => {
    const build = expectFindings(
      COPIES,
      `
      part left.rod "Rod"
      part left.arm "Arm"
      part right.rod "Rod"
      joint left.nut "Nut"
        joins: left.rod, left.arm
      joint right.nut "Nut" like left.nut
            ^^^^^^^^^ like-points-back
      `,
    );
    const { data, seeAlso } = findingOf(build, "like-points-back");
    expect(data.copy).toBe("right.nut");
    expect(seeAlso.map(({ place }) => lineAndText(place))).toEqual(["5: joins: left.rod, left.arm"]);
  });

  it("is none once it says itself what it joins", () => {
    expectFindings(
      COPIES,
      `
      part left.rod "Rod"
      part right.rod "Rod"
      joint left.nut "Nut"
        joins: left.rod
      joint right.nut "Nut" like left.nut
        joins: right.rod
      `,
    );
  });

  it("is none where a branch turned with its parts, or where both join what is nobody's", () => {
    expectFindings(
      COPIES,
      `
      part frame "Frame"
      part left.rod "Rod"
      joint left.nut "Nut"
        joins: left.rod, frame
      assembly right "Right" like left
      joint left.strap "Strap"
        joins: frame
      joint rear.strap "Strap" like left.strap
      `,
    );
  });

  it("is a fit or a pair that still asks about the original's neighbours", () => {
    expectFindings(
      COPIES,
      `
      part left.hub "Hub"
        size: bore 62 mm
      part left.bearing "Bearing"
        fit: outside in left.hub.bore interference 0.01..0.03 mm
      part right.bearing "Bearing" like left.bearing
           ^^^^^^^^^^^^^ like-points-back
      `,
    );
  });
});
