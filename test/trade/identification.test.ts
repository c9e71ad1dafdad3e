import { describe, expect, test } from "vitest";
import type { Match } from "../../server/trade/identification/match.ts";
import type { Identification } from "../../server/trade/identification.ts";
import { identify } from "../../server/trade/identification.ts";
import { given } from "./given.ts";

function namesOf(matches: readonly Match[]): readonly string[] {
  return matches.map(({ candidate }) => candidate.name);
}

function kindOf(match: Match | undefined): string | undefined {
  if (match === undefined) return undefined;
  return match.candidate.is === "donor" ? "donor" : match.candidate.family.name;
}

/** How the fit of each dimension is called, by the name that was given. */
function states(match: Match | undefined): Record<string, string> {
  return Object.fromEntries(
    (match?.dimensions ?? []).map((one) => [one.given.name, one.is === "compared" ? one.state : one.is]),
  );
}

function first({ candidates }: Pick<Identification, "candidates">): string | undefined {
  return candidates[0]?.candidate.name;
}

/**
 * An identification from a published table: what was measured, the right answer, its kind, and the source of its
 * dimensions. Worn parts are the published dimension less (a bore: more) some wear; the units are as a workshop mixes them.
 */
interface Published {
  readonly asked: string;
  readonly name: string;
  readonly kind: string;
  readonly source: string;
  /** Worn beyond what the uncertainty of the measurement explains. */
  readonly worn?: true;
}

const PUBLISHED: readonly Published[] = [
  {
    asked: "major=9.47mm pitch=1.06mm",
    name: "3/8-24 UNF",
    kind: "external thread",
    source: "ASME B1.1; UNF table, boltport.com",
  },
  {
    asked: "major=0.3705in tpi=24",
    name: "3/8-24 UNF",
    kind: "external thread",
    source: "ASME B1.1; UNF table, boltport.com",
  },
  {
    asked: "effective=0.2854in tpi=24",
    name: "5/16-24 UNF",
    kind: "external thread",
    source: "UNF table, boltport.com: 0.2854 in",
  },
  {
    asked: "effective=9.188mm pitch=1.25mm",
    name: "M10x1.25",
    kind: "external thread",
    source: "ISO 724 table, engineeringhardware.com",
  },
  {
    asked: "minor=12.45mm pitch=1.5mm",
    name: "M14x1.5",
    kind: "internal thread",
    source: "ISO 724 table, engineeringhardware.com: 12.376 mm",
  },
  {
    asked: "major=12.65mm tpi=12",
    name: "1/2 BSW",
    kind: "external thread",
    source: "BS 84; BSW table, TR Fastenings knowledge base",
  },
  {
    asked: "effective=0.335in tpi=16 angle=55deg",
    name: "3/8 BSW",
    kind: "external thread",
    source: "TR Fastenings: 0.3350 in",
  },
  {
    asked: "major=4.65mm pitch=0.81mm",
    name: "2 BA",
    kind: "external thread",
    source: "BS 93: 4.7 mm, 0.81 mm",
  },
  {
    asked: "major=0.489in tpi=28",
    name: "1/2-28 UNEF",
    kind: "external thread",
    source: "Machinery's Handbook, 31st ed., 1/2-28 UNEF-2A",
    worn: true,
  },
  {
    asked: "major=7.68mm pitch=1.25mm",
    name: "M8",
    kind: "external thread",
    source: "ISO 261, ISO 965-1: 7.760 mm at least",
    worn: true,
  },
  {
    asked: "bore=20mm outside=47mm width=14mm",
    name: "6204",
    kind: "rolling bearing",
    source: "DIN 625-1 through BOLTS, bearings.blt",
  },
  {
    asked: "bore=0.669in outside=1.850in width=14mm",
    name: "6303",
    kind: "rolling bearing",
    source: "DIN 625-1 through BOLTS, bearings.blt",
  },
  {
    asked: "id=17.07mm od=39.90mm width=11.9mm",
    name: "6203",
    kind: "rolling bearing",
    source: "DIN 625-1 through BOLTS, bearings.blt",
    worn: true,
  },
  {
    asked: "bore=25mm outside=46.99mm width=8mm",
    name: "16005",
    kind: "rolling bearing",
    source: "DIN 625-1 through BOLTS, bearings.blt",
  },
  {
    asked: "bore=35mm outside=72mm width=24.3mm",
    name: "32207",
    kind: "rolling bearing",
    source: "a maker's table of metric tapered rollers",
  },
  {
    asked: "inside=18.6mm section=3.5mm",
    name: "AS568-210",
    kind: "O-ring",
    source: "AS568 size chart: 18.64 x 3.53 mm",
  },
  {
    asked: "inside=9.3mm section=2.4mm",
    name: "AS568-110",
    kind: "O-ring",
    source: "AS568 size chart: 9.19 x 2.62 mm",
    worn: true,
  },
  {
    asked: "inside=10.1mm thickness=0.98mm",
    name: "DIN 471 11 x 1",
    kind: "shaft circlip",
    source: "DIN 471 table, Westfield Fasteners: 10.2 mm",
  },
  {
    asked: "outside=18.5mm thickness=1mm",
    name: "DIN 472 17 x 1",
    kind: "bore circlip",
    source: "DIN 472 table of a circlip maker: 18.3 mm",
  },
  {
    asked: "pitch=1/2in roller=8.5mm width=7.8mm",
    name: "ISO 606 08B",
    kind: "roller chain",
    source: "428 of the Motomax table has the same",
  },
  {
    asked: "pitch=16.19mm roller=10.1mm width=6.4mm",
    name: "520",
    kind: "roller chain",
    source: "Motomax motorcycle chain table",
    worn: true,
  },
  {
    asked: "pitch=3/4in roller=11.9mm width=9.6mm",
    name: "630",
    kind: "roller chain",
    source: "Motomax motorcycle chain table",
  },
  {
    asked: "width=8mm height=7mm",
    name: "parallel key 8 x 7",
    kind: "key",
    source: "DIN 6885-1, standard parts catalogue, p. 2079",
  },
  {
    asked: "width=4.76mm height=3/16in",
    name: "parallel key 3/16 x 3/16 in",
    kind: "key",
    source: "ASME B17.1, chart of keys by shaft diameter",
  },
  {
    asked: "width=3/16in height=7.9mm diameter=3/4in",
    name: "Woodruff No. 606",
    kind: "key",
    source: "Shigley, Machine Elements, table 7-7: 0.313 in",
  },
  {
    asked: "width=4.64mm height=0.31in diameter=18.9mm",
    name: "Woodruff No. 606",
    kind: "key",
    source: "Shigley, table 7-7",
    worn: true,
  },
  {
    asked: "diameter=2.05mm area=3.31mm2",
    name: "AWG 12",
    kind: "wire",
    source: "ASTM B258: 2.0525 mm, 3.3088 mm2",
  },
  {
    asked: "width=165mm outside=561mm rim=13in",
    name: "165/70R13",
    kind: "tyre",
    source: "ISO 4000-1, designation: 561.2 mm",
  },
  {
    asked: "width=186mm outside=574mm rim=355.6mm",
    name: "185/60R14",
    kind: "tyre",
    source: "ISO 4000-1, designation: 577.6 mm",
  },
  {
    asked: "major=13.9mm pitch=1.25mm reach=3/4in hexagon=16mm",
    name: "M14x1.25, 19 mm reach, gasket seat, 16 mm hexagon",
    kind: "spark plug",
    source: "ISO 28741, from memory",
  },
];

describe("identification from published tables", () => {
  test("there are at least twenty, of every kind of part, worn ones and mixed units among them", () => {
    expect(PUBLISHED.length).toBeGreaterThanOrEqual(20);
    expect(new Set(PUBLISHED.map(({ kind }) => kind)).size).toBe(11);
    expect(PUBLISHED.filter(({ worn }) => worn).length).toBeGreaterThanOrEqual(5);
  });

  test.each(PUBLISHED)("$asked is $name ($kind; $source)", ({ asked, name, kind, worn = false }) => {
    const [best] = identify(given(asked)).candidates;
    expect(best?.candidate.name).toBe(name);
    expect(kindOf(best)).toBe(kind);
    expect(Object.values(states(best)).includes("worn")).toBe(worn);
  });
});

describe("wear", () => {
  test("an outside shrinks and a bore grows: what went that way still fits, and says that it is worn", () => {
    const { candidates } = identify(given("bore=20.06mm outside=46.90mm width=14mm"));
    expect(first({ candidates })).toBe("6204");
    expect(states(candidates[0])).toEqual({ bore: "worn", outside: "worn", width: "as made" });
  });

  test("the other way it does not: no ring grows outside, and no bore shrinks", () => {
    expect(identify(given("bore=20mm outside=47.09mm width=14mm")).candidates).toEqual([]);
    expect(identify(given("bore=19.89mm outside=47mm width=14mm")).candidates).toEqual([]);
  });

  test("a new part scores higher than a worn one, and that higher than one worn more", () => {
    const scoreOf = (outside: string) =>
      identify(given(`bore=20mm outside=${outside} width=14mm`)).candidates[0]?.score ?? 0;
    expect(scoreOf("47.00mm")).toBe(1);
    expect(scoreOf("46.93mm")).toBeLessThan(1);
    expect(scoreOf("46.89mm")).toBeLessThan(scoreOf("46.93mm"));
  });
});

describe("uncertainty", () => {
  test("a stated one is taken instead of the usual one", () => {
    const fits = (asked: string) => namesOf(identify(given(asked)).candidates);
    expect(fits("major=9.5mm pitch=1.06mm±0.005mm")).toEqual(["3/8-24 UNF"]);
    expect(fits("major=9.5mm pitch=1.03mm±0.06mm")).toContain("3/8-26 BSC");
  });

  test("a figure with one decimal is not taken as better than that decimal", () => {
    // 1.1 mm is 24 threads per inch as a rule with a tenth reads it; 1.10 mm is nothing.
    expect(first(identify(given("major=9.5mm pitch=1.1mm")))).toBe("3/8-24 UNF");
    expect(identify(given("major=9.5mm pitch=1.10mm")).candidates).toEqual([]);
  });
});

describe("threads that are confused", () => {
  /** What the best is told from, and by which measurement, with what that gives for each in mm (or degrees). */
  function told(asked: string): readonly string[] {
    return identify(given(asked)).tellApart.map(({ between, by }) => {
      const times = by?.measuring.times ?? 1;
      const unit = by?.dimension.is === "angle" ? Math.PI / 180 : 0.001;
      const values = by?.dimension.values.map(({ value }) => Number(((times * value) / unit).toFixed(2)));
      return `${between.map(({ name }) => name).join(" | ")}: ${by?.dimension.name} ${values?.join(" ")}`;
    });
  }

  test.each([
    // The pairs that every restorer of mixed machines meets; common practice, no source.
    ["major=9.47mm pitch=1.06mm", "3/8-24 UNF | M10x1: pitch 10.58 10"],
    ["major=7.85mm pitch=1.05mm", "5/16-24 UNF | M8x1: pitch 10.58 10"],
    ["major=7.8mm pitch=1.3mm", "M8 | 5/16-18 UNC: pitch 12.5 14.11"],
    ["major=6.3mm tpi=20", "1/4-20 UNC | 1/4 BSW: angle 60 55"],
    ["major=0.372in tpi=16", "3/8-16 UNC | 3/8 BSW: angle 60 55"],
    ["major=12.6mm pitch=2.0mm", "1/2-13 UNC | 1/2 BSW: pitch 19.54 21.17"],
    ["major=4.78mm tpi=32", "#10-32 UNF | M5: pitch 7.94 8"],
  ])("%s: %s", (asked, expected) => {
    expect(told(asked)).toContain(expected);
  });

  test("one that does not fit is said to be near, and stands in no candidate's place", () => {
    const { candidates, nearest, tellApart } = identify(given("major=9.47mm pitch=1.06mm"));
    expect(namesOf(candidates)).toEqual(["3/8-24 UNF"]);
    expect(namesOf(nearest)).toEqual(["M10x1"]);
    expect(tellApart.map(({ nearMiss }) => nearMiss)).toEqual([true]);
  });

  test("the same dimensions leave it open, and say so: the first of equals is the usual series", () => {
    const { candidates, tellApart } = identify(given("major=9.45mm tpi=16"));
    expect(namesOf(candidates)).toEqual(["3/8-16 UNC", "3/8 BSW"]);
    expect(candidates.map(({ score }) => score)).toEqual([1, 1]);
    expect(tellApart[0]?.by?.measuring.how).toContain("thread gauges");
  });
});

describe("what to measure next", () => {
  test("of bearings with one bore and outside, the width", () => {
    const { candidates, tellApart } = identify(given("bore=20mm outside=47mm"));
    expect(namesOf(candidates)).toEqual(["6204", "2204", "3204", "30204", "32204"]);
    expect(tellApart.map(({ by }) => by?.dimension.name)).toEqual(["width"]);
    const widths = tellApart[0]?.by?.dimension.values.map(({ value }) => Number((value * 1000).toFixed(2)));
    expect(widths).toEqual([14, 18, 20.6, 15.25, 19.25]);
  });

  test("of chains with one pitch and roller, the width between the plates", () => {
    const { tellApart } = identify(given("pitch=5/8in roller=10.1mm"));
    expect(tellApart[0]?.by?.dimension.name).toBe("width");
  });
});

describe("when nothing fits", () => {
  test("the answer is empty, with the nearest and how far off each dimension is", () => {
    const { candidates, nearest, tellApart } = identify(given("bore=20mm outside=47mm width=17mm"));
    expect(candidates).toEqual([]);
    expect(tellApart).toEqual([]);
    expect(namesOf(nearest)).toEqual(["2204", "32204", "30204"]);
    const [width] = nearest[0]?.dimensions.filter(({ given: { name } }) => name === "width") ?? [];
    expect(width?.is === "compared" && width.off).toBeCloseTo(-0.001, 9);
  });

  test("the nearest are of different kinds where several are asked", () => {
    const { candidates, nearest } = identify(given("outside=200mm thickness=9mm"));
    expect(candidates).toEqual([]);
    expect(new Set(nearest.map(kindOf)).size).toBe(3);
  });

  test("two names of one dimension are not two dimensions: width and height are a key's, not twice a bearing's width", () => {
    const { candidates } = identify(given("width=5mm height=5mm"));
    expect(new Set(candidates.map(kindOf))).toEqual(new Set(["key"]));
  });

  test("of equal fits the one whose own name was used stands first: a bore is a bearing's before it is a nut's", () => {
    const { candidates } = identify(given("bore=15mm"));
    expect(kindOf(candidates[0])).toBe("rolling bearing");
    expect(candidates.map(kindOf)).toContain("internal thread");
  });

  test("a dimension that nothing has is set aside, and said", () => {
    const { candidates, unknown } = identify(given("bore=20mm outside=47mm width=14mm runout=0.02mm"));
    expect(namesOf(candidates)).toEqual(["6204"]);
    expect(unknown.map(({ name }) => name)).toEqual(["runout"]);
  });

  test("nothing but such dimensions gives nothing at all", () => {
    const nothing = identify(given("runout=0.02mm"));
    expect([nothing.candidates, nothing.nearest]).toEqual([[], []]);
  });
});
