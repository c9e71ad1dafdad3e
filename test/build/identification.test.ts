import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { dimensionsOfPart, identifiedFact, identifyPart } from "../../server/build/identification.ts";
import type { ContradictedIdentity } from "../../server/build/identities.ts";
import { contradictedIdentities } from "../../server/build/identities.ts";
import type { TreeNode } from "../../server/build/tree/node.ts";
import { formatQuantity } from "../../server/quantities/quantity.ts";
import { buildOf } from "./marked-build.ts";

function partAt({ standing }: Build, path: string): TreeNode {
  const node = standing.gathered.tree.at(path);
  if (node === undefined) throw new Error(`no part at ${path}`);
  return node;
}

/** What is known of a part: `bore 20.00 mm ± 0.01 mm, measured`. */
function known(build: Build, path: string): readonly string[] {
  return dimensionsOfPart(build.standing, partAt(build, path)).map(
    ({ given, quantity, uncertainty, from }) =>
      `${given.name} ${formatQuantity(quantity)}${uncertainty === undefined ? "" : ` ± ${formatQuantity(uncertainty)}`}, ${from}`,
  );
}

function candidates(build: Build, path: string): readonly string[] {
  const found = identifyPart(build.standing, partAt(build, path))?.identification.candidates ?? [];
  return found.map(({ candidate }) => candidate.name);
}

const DONORS = `
donor saloon_shaft "Saloon, driveshaft"
  number: "OS 2217"
  size: cap 27.0 mm
  size: length 412 mm
donor van_shaft "Van, driveshaft"
  size: cap 27.0 mm
  size: length 438 mm
`;

describe("what is known of a part", () => {
  it("is its newest readings with their uncertainty, and the sizes that nobody has measured", () => {
    const build = buildOf(`
      gauge mic "Micrometer"
        uncertainty: ± 0.004 mm
      part bearing "Bearing"
        size: bore 20 mm
        size: width 14 mm
      day 2026-05-02
        measured: bearing bore 19.90 mm
        measured: bearing outside 46.98 mm ± 0.02 mm
      day 2026-05-03
        measured: bearing bore 20.01 mm with mic
    `);
    expect(known(build, "bearing")).toEqual([
      "bore 20.01 mm ± 0.004 mm, measured",
      "outside 46.98 mm ± 0.02 mm, measured",
      "width 14 mm, size",
    ]);
  });

  it("is the mean of several readings, as uncertain as they differ", () => {
    const build = buildOf(`
      part shaft "Shaft"
      day 2026-05-02
        measured: shaft diameter 19.90, 19.96 mm ± 0.01 mm
    `);
    expect(known(build, "shaft")).toEqual(["diameter 19.93 mm ± 0.0300 mm, measured"]);
  });

  it("is a thread's diameter and pitch where a size is a thread", () => {
    const build = buildOf(`
      part plug "Plug"
        size: thread M14x1.25
    `);
    expect(known(build, "plug")).toEqual(["major 14 mm, size", "pitch 1.25 mm, size"]);
    expect(candidates(build, "plug")[0]).toBe("M14x1.25");
  });

  it("is what the one before measured while the new one has not been measured, and says so", () => {
    const build = buildOf(`
      part bearing "Bearing"
        stock: 1
      day 2026-05-02
        measured: bearing bore 17.00 mm
        removed: bearing
        decided: bearing renew
        fitted: bearing
    `);
    expect(known(build, "bearing")).toEqual(["bore 17.00 mm, measured before"]);
  });

  it("is nothing where nobody has measured, and then nothing is identified", () => {
    const build = buildOf('part shim "Shim"');
    expect(known(build, "shim")).toEqual([]);
    expect(identifyPart(build.standing, partAt(build, "shim"))).toBeUndefined();
  });
});

describe("what a part can be", () => {
  it("is found in the tables, whatever else was measured on it", () => {
    const build = buildOf(`
      part bearing "Bearing"
      day 2026-05-02
        measured: bearing bore 0.669 in
        measured: bearing outside 40.00 mm
        measured: bearing width 0.472 in
        measured: bearing end_float 0.1 mm
    `);
    expect(candidates(build, "bearing")).toEqual(["6203"]);
  });

  it("is one of the build's donors, by the names of their own sizes", () => {
    const build = buildOf(`
${DONORS}
part shaft "Driveshaft"
day 2026-05-02
  measured: shaft cap 27.00 mm
  measured: shaft length 411.5 mm ± 1 mm
`);
    expect(candidates(build, "shaft")).toEqual(["Saloon, driveshaft"]);
  });

  it("is not a donor that shares one dimension of several", () => {
    const build = buildOf(`
${DONORS}
part shaft "Driveshaft"
day 2026-05-02
  measured: shaft cap 27.00 mm
  measured: shaft length 300 mm
`);
    expect(candidates(build, "shaft")).toEqual([]);
  });
});

describe("the fact that says what a part is", () => {
  it("names a standard part, or a donor by its block", () => {
    const build = buildOf(`
${DONORS}
part shaft "Driveshaft"
  size: cap 27 mm
  size: length 438 mm
part bearing "Bearing"
  size: bore 20 mm
  size: outside 47 mm
  size: width 14 mm
`);
    const fact = (path: string) => {
      const best = identifyPart(build.standing, partAt(build, path))?.identification.candidates[0];
      return best && identifiedFact(path, best.candidate);
    };
    expect(fact("shaft")).toBe('identified: shaft as "Van, driveshaft" from van_shaft');
    expect(fact("bearing")).toBe('identified: bearing as "6204"');
  });

  it("reads back as it was written, with what a text cannot hold bare", () => {
    const text = identifiedFact("shaft", {
      is: "donor",
      donor: "odd",
      name: 'Shaft "2\\3"',
      source: "donor odd",
      dimensions: new Map(),
      kinds: new Map(),
    });
    const build = buildOf(`
donor odd "Odd one"
part shaft "Driveshaft"
day 2026-05-02
  ${text}
`);
    const [fact] = build.facts;
    expect(fact?.fact.word === "identified" && fact.fact.as).toBe('Shaft "2\\3"');
    expect(build.findings).toEqual([]);
  });
});

describe("an identification", () => {
  /** What contradicts it: `6203: outside, width`. */
  function contradictions(text: string): readonly string[] {
    const build = buildOf(text);
    return contradictedIdentities(build.standing, build.diary.facts).map(say);
  }

  function say({ as, against, past }: ContradictedIdentity): string {
    return `${as.name}: ${against.map(({ given }) => given.name).join(", ")}${past ? " (past)" : ""}`;
  }

  const bearing = (facts: string) => `
part bearing "Bearing"
  stock: 1
day 2026-05-02
  measured: bearing bore 17.02 mm
  measured: bearing outside 46.96 mm
  measured: bearing width 14.00 mm
${facts}`;

  it("stands where worn dimensions are still those of the part that it names", () => {
    expect(contradictions(bearing('  identified: bearing as "6303-2RS"'))).toEqual([]);
  });

  it("is contradicted by the dimensions that are too far off", () => {
    expect(contradictions(bearing('  identified: bearing as "6203, off the gearbox"'))).toEqual([
      "6203: outside, width",
    ]);
  });

  it("counts whenever they were measured, before or after", () => {
    const text = `
part bearing "Bearing"
day 2026-05-02
  identified: bearing as "6203"
day 2026-05-03
  measured: bearing outside 46.96 mm
`;
    expect(contradictions(text)).toEqual(["6203: outside"]);
  });

  it("is left alone where it names nothing that a table knows, or nothing was measured of it", () => {
    expect(contradictions(bearing('  identified: bearing as "off a saloon of 1962"'))).toEqual([]);
    expect(contradictions('part b "B"\nday 2026-05-02\n  identified: b as "6203"')).toEqual([]);
  });

  it("is left alone where one of several parts that it names fits", () => {
    expect(contradictions(bearing('  identified: bearing as "6203 or 6303 bearing"'))).toEqual([]);
  });

  it("of a thread is held against the bolt where its diameter over the crests is known", () => {
    const text = (thread: string) => `
part stud "Stud"
day 2026-05-02
  measured: stud major 9.47 mm
  measured: stud pitch 1.06 mm
  identified: stud as "${thread} stud"
`;
    expect(contradictions(text("3/8-24 UNF"))).toEqual([]);
    expect(contradictions(text("M10x1"))).toEqual(["M10x1: major, pitch"]);
  });

  it("of a donor is held against the donor's sizes", () => {
    const text = (donor: string) => `
${DONORS}
part shaft "Driveshaft"
day 2026-05-02
  measured: shaft length 412 mm ± 1 mm
  identified: shaft as "what it looks like" from ${donor}
`;
    expect(contradictions(text("saloon_shaft"))).toEqual([]);
    expect(contradictions(text("van_shaft"))).toEqual(["Van, driveshaft: length"]);
  });

  it("is replaced by a later one of the same item", () => {
    const facts = '  identified: bearing as "6203"\n  identified: bearing as "6303"';
    expect(contradictions(bearing(facts))).toEqual([]);
  });

  it("of an item that is gone is past", () => {
    const facts = `  identified: bearing as "6203"
  removed: bearing
  decided: bearing renew
  fitted: bearing`;
    expect(contradictions(bearing(facts))).toEqual(["6203: outside, width (past)"]);
  });
});
