import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { buildOf, expectFindings, findingOf, findingsOf, partAt } from "./marked-build.ts";

const REFERENCES = ["unknown-reference", "ambiguous-reference", "reference-kind", "missing-value"] as const;

const CORNERS = `
part front.left.hub "Hub"
part front.left.disc "Disc"
  limit: thickness min 8.4 mm
part front.right.hub "Hub"
part front.right.disc "Disc"
part rear.left.hub "Hub"
part rear.left.drum "Drum"
part front.left.caliper "Caliper"
part front.left.caliper.piston "Piston"
part front.left.caliper.piston.seal "Seal"
joint front.left.hub_nut "Hub nut"
  joins: front.left.hub
joint front.left.caliper.bleeder "Bleed nipple"
  joins: front.left.caliper
part rack "Rack"
`;

/** The parts that a fact took off. */
function off(build: Build): string[] {
  return [...build.standing.parts.values()]
    .filter(({ place }) => place === "off")
    .map(({ node }) => node.path);
}

/** Marks a day with one fact beneath the corners. */
function corners(day: string): string {
  return `${CORNERS}\nday 2026-05-02\n${day}`;
}

describe("a reference is a full path or an unambiguous tail", () => {
  it("finds a thing by its path and by a tail that is nobody else's", () => {
    const build = expectFindings(REFERENCES, corners("  removed: front.left.hub, left.disc, drum"));
    expect(off(build)).toEqual(["front.left.hub", "front.left.disc", "rear.left.drum"]);
  });

  it("lists the candidates of an ambiguous tail and takes none of them", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  removed: left.hub, rack
           ^^^^^^^^ ambiguous-reference`),
    );
    expect(findingOf(build, "ambiguous-reference").data.candidates).toEqual([
      "front.left.hub",
      "rear.left.hub",
    ]);
    expect(off(build)).toEqual(["rack"]);
  });

  it("lets a full path win over a tail", () => {
    const build = expectFindings(
      REFERENCES,
      `
      part hub "The one hub"
      part front.hub "Front hub"
      day 2026-05-02
        removed: hub
      `,
    );
    expect(off(build)).toEqual(["hub"]);
  });

  it("seeks tails only among the kinds that the place takes", () => {
    const build = expectFindings(
      REFERENCES,
      `
      part front.nut "Nut"
      joint rear.nut "The joint"
        joins: front.nut
      day 2026-05-02
        removed: nut
        loosened: nut
      `,
    );
    expect(off(build)).toEqual(["front.nut"]);
  });

  it("seeks a tail even where something of another kind has that full path", () => {
    const build = expectFindings(
      REFERENCES,
      `
      joint nut "A joint in the root"
      part front.nut "A part"
      day 2026-05-02
        removed: nut
      `,
    );
    expect(off(build)).toEqual(["front.nut"]);
  });

  it("does not take for a candidate an assembly that holds nothing of the wanted kind", () => {
    const build = expectFindings(
      REFERENCES,
      `
      part front.wheel "Wheel"
      joint rear.wheel.nuts "Wheel nuts"
      day 2026-05-02
        removed: wheel
      `,
    );
    expect(off(build)).toEqual(["front.wheel"]);
  });

  it("offers near names for one that leads nowhere, and leaves the rest of the line alone", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  removed: front.left.hbu, rack
           ^^^^^^^^^^^^^^ unknown-reference`),
    );
    const { data, fixes } = findingOf(build, "unknown-reference");
    expect(data).toMatchObject({ text: "front.left.hbu", kinds: ["part", "assembly"] });
    expect(data.nearest[0]).toBe("front.left.hub");
    expect(fixes[0]).toMatchObject({ text: "front.left.hub", sure: false });
    expect(off(build)).toEqual(["rack"]);
  });

  it("says which kind was found where another is due", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  removed: front.left.hub_nut
           ^^^^^^^^^^^^^^^^^^ reference-kind
  loosened: rack
            ^^^^ reference-kind`),
    );
    expect(findingsOf(build, ["reference-kind"]).map(({ data }) => data)).toEqual([
      { text: "front.left.hub_nut", kind: "joint", wanted: "a part" },
      { text: "rack", kind: "part", wanted: "a joint" },
    ]);
  });
});

describe("an assembly means everything of the wanted kind below it", () => {
  it("takes every part of a branch, and of any prefix of a path", () => {
    const build = expectFindings(REFERENCES, corners("  removed: front.right"));
    expect(off(build)).toEqual(["front.right.hub", "front.right.disc"]);
  });

  it("takes the joints of a branch where joints are due", () => {
    const build = buildOf(corners("  loosened: front.left"));
    const loosened = [...build.standing.joints.values()].filter(({ stage }) => stage === "open");
    expect(loosened.map(({ node }) => node.path)).toEqual([
      "front.left.hub_nut",
      "front.left.caliper.bleeder",
    ]);
  });

  it("is the whole as vehicle", () => {
    const build = expectFindings(REFERENCES, corners("  removed: vehicle"));
    expect(off(build)).toContain("rack");
    expect(off(build)).toContain("rear.left.drum");
  });

  it("complains where it holds nothing of the wanted kind, for the fact would mean nothing", () => {
    expectFindings(
      REFERENCES,
      corners(`
  loosened: rear
            ^^^^ reference-kind`),
    );
  });

  it("may be referred to itself where the place takes it", () => {
    expectFindings(REFERENCES, corners("  measured: front.left weight 176 kg"));
  });
});

describe("a path with a part block means that part alone", () => {
  it("means the caliper, not what is in it", () => {
    const build = buildOf(corners("  found: front.left.caliper dirty"));
    expect(partAt(build, "front.left.caliper").item.events).toHaveLength(1);
    expect(partAt(build, "front.left.caliper.piston").item.events).toHaveLength(0);
  });

  it("means everything below with a star", () => {
    const build = buildOf(corners("  found: front.left.caliper.* dirty"));
    expect(partAt(build, "front.left.caliper").item.events).toHaveLength(0);
    expect(partAt(build, "front.left.caliper.piston").item.events).toHaveLength(1);
    expect(partAt(build, "front.left.caliper.piston.seal").item.events).toHaveLength(1);
  });

  it("is no assembly: where joints are due, those below it need the star", () => {
    expectFindings(
      REFERENCES,
      corners(`
  loosened: front.left.caliper
            ^^^^^^^^^^^^^^^^^^ reference-kind
  loosened: front.left.caliper.*`),
    );
  });
});

describe("sets", () => {
  it("takes each of a choice", () => {
    const build = expectFindings(REFERENCES, corners("  removed: front.left.{ disc ,hub }"));
    expect(off(build)).toEqual(["front.left.hub", "front.left.disc"]);
  });

  it("takes sub-paths in a choice", () => {
    const build = buildOf(corners("  removed: front.{left.disc, right.hub}"));
    expect(off(build)).toEqual(["front.left.disc", "front.right.hub"]);
  });

  it("takes every name for a star in the middle", () => {
    const build = expectFindings(REFERENCES, corners("  removed: front.*.disc"));
    expect(off(build)).toEqual(["front.left.disc", "front.right.disc"]);
  });

  it("takes everything below for a star at the end", () => {
    const build = expectFindings(REFERENCES, corners("  removed: front.right.*"));
    expect(off(build)).toEqual(["front.right.hub", "front.right.disc"]);
  });

  it("takes everything below the vehicle", () => {
    const build = expectFindings(REFERENCES, corners("  removed: vehicle.*"));
    expect(off(build)).toContain("rack");
  });

  it("may be a tail as long as what is left out before it is one path", () => {
    const build = expectFindings(REFERENCES, corners("  removed: right.*"));
    expect(off(build)).toEqual(["front.right.hub", "front.right.disc"]);
  });

  it("is ambiguous where the beginning that is left out could be several", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  removed: left.*
           ^^^^^^ ambiguous-reference`),
    );
    expect(findingOf(build, "ambiguous-reference").data.candidates).toEqual(["front.left.*", "rear.left.*"]);
    expect(off(build)).toEqual([]);
  });

  it("is a full path where it can be one, and a tail only else", () => {
    const build = expectFindings(
      REFERENCES,
      `
  part left.hub "Hub"
  part front.left.hub "Hub"
  day 2026-05-02
    removed: left.*
`,
    );
    expect(off(build)).toEqual(["left.hub"]);
  });

  it("says what is there where nothing below is of the kind that is due", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  opened: front.left.*
          ^^^^^^^^^^^^ reference-kind
  opened: fornt.left.*
          ^^^^^^^^^^^^ unknown-reference`),
    );
    expect(findingOf(build, "reference-kind").data).toMatchObject({ text: "front.left", kind: "assembly" });
  });

  it("loses only the choice that leads nowhere, and mends it in its place", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  removed: front.left.{disc, hbu}
           ^^^^^^^^^^^^^^^^^^^^^^ unknown-reference`),
    );
    expect(off(build)).toEqual(["front.left.disc"]);
    const { fixes, place } = findingOf(build, "unknown-reference");
    const [fix] = fixes;
    const text = place.site.block.text;
    const mended = text.slice(0, fix?.start) + (fix?.text ?? "") + text.slice(fix?.end);
    expect(mended).toContain("removed: front.left.{disc, hub}");
  });

  it("offers for a choice with a path of its own the whole choice", () => {
    const fixes = (written: string) =>
      findingsOf(buildOf(corners(`  removed: ${written}`)), ["unknown-reference"]).flatMap((found) =>
        found.fixes.map(({ start, end, text }) => {
          const block = found.place.site.block.text;
          return `${block.slice(start, end)} → ${text}`;
        }),
      );
    expect(fixes("front.{left.hbu, right.hub}")).toContain("left.hbu → left.hub");
    expect(fixes("front.{lift, right}.hub")).toContain("lift → left");
    // Nothing that begins or ends otherwise can stand in its place.
    expect(fixes("frnt.{left, right}.hub").filter((fix) => !fix.startsWith("frnt"))).toEqual([]);
  });
});

describe("a place that takes one thing", () => {
  it("refuses a set, listing what it means", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  measured: front.*.disc thickness 9.1 mm
            ^^^^^^^^^^^^ ambiguous-reference`),
    );
    expect(findingOf(build, "ambiguous-reference").data.candidates).toEqual([
      "front.left.disc",
      "front.right.disc",
    ]);
  });

  it("takes a set that means one thing alone", () => {
    const build = expectFindings(REFERENCES, corners("  measured: {rack} travel 120 mm"));
    expect(partAt(build, "rack").item.readings.map(({ name }) => name)).toEqual(["travel"]);
  });

  it("refuses an assembly where one part is due", () => {
    expectFindings(
      REFERENCES,
      `
      part caliper "Caliper"
        kit: stores
             ^^^^^^ reference-kind
      part stores.caliper_kit "Kit"
      `,
    );
  });
});

describe("a characteristic", () => {
  it("stands behind the reference or within it", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  measured: front.left.disc thickness 9.1 mm
  measured: left.disc.thickness 9.0 mm`),
    );
    const { readings } = partAt(build, "front.left.disc").item;
    expect(readings.map(({ name }) => name)).toEqual(["thickness", "thickness"]);
  });

  it("is missing where the whole reference names a thing", () => {
    const build = expectFindings(
      REFERENCES,
      corners(`
  measured: front.left.disc 9.1 mm
            ^^^^^^^^^^^^^^^ missing-value
  measured: rack 12 mm
            ^^^^ missing-value`),
    );
    expect(findingsOf(build, ["missing-value"])[0]).toMatchObject({
      data: { expected: "the name of what is meant of front.left.disc, such as thickness" },
      fixes: [{ text: " thickness", sure: false }],
    });
    expect(build.standing.readings.size).toBe(0);
  });

  it("is the name in a fit, a pair and a measurement that sets a joint", () => {
    expectFindings(
      REFERENCES,
      `
      part upright "Upright"
        size: housing 62 mm
      part bearing "Bearing"
        fit: outside in upright.housing interference 0.004..0.036 mm
        pair: outside with other.outside within 2 %
                           ^^^^^^^^^^^^^ unknown-reference
      joint nut "Nut"
        joins: bearing
        set_by: bearing.end_float
      `,
    );
  });
});

describe("names of their own kind", () => {
  const NAMED = `
    supplier tatlow "Tatlow"
    gauge mic25 "Micrometer"
    setup one_up "Driver aboard"
    job strip "Strip"
    hold ready "Ready"
    part strip.tatlow "A part whose names clash with nothing"
  `;

  it("clash with nothing in the tree", () => {
    const build = expectFindings(
      [...REFERENCES, "duplicate-name"],
      `${NAMED}
    day 2026-05-02
      started: strip
      removed: strip
      sent: strip.tatlow to tatlow for "paint"
    `,
    );
    expect(build.standing.jobs.size).toBe(1);
    expect(partAt(build, "strip.tatlow").place).toBe("away");
  });

  it("are sought only in the kind that the place takes", () => {
    const build = expectFindings(
      REFERENCES,
      `${NAMED}
    day 2026-05-02
      started: ready
               ^^^^^ unknown-reference
      sent: strip.tatlow to mic25 for "paint"
                            ^^^^^ unknown-reference
    `,
    );
    expect(findingsOf(build, ["unknown-reference"]).map(({ data }) => data.kinds)).toEqual([
      ["job"],
      ["supplier"],
    ]);
  });

  it("may stand beside the tree where a place takes both", () => {
    const build = expectFindings(
      REFERENCES,
      `${NAMED}
    day 2026-05-02
      found: mic25 damaged
      found: strip.tatlow worn
      tested: ready pass
    `,
    );
    expect([...build.standing.gauges.values()][0]?.found).toHaveLength(1);
    expect(partAt(build, "strip.tatlow").item.events).toHaveLength(1);
  });
});
