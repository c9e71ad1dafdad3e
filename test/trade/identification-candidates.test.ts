/** What standard parts and donors may measure, new and worn. */
import { describe, expect, test } from "vitest";
import type { Candidate, DonorSize } from "../../server/trade/identification/candidate.ts";
import { donorCandidate, statedBy } from "../../server/trade/identification/candidate.ts";
import {
  externalThread,
  internalThread,
  standardCandidates,
} from "../../server/trade/identification/standard-candidates.ts";
import { readThread } from "../../server/trade/thread.ts";

const MILLIMETRE = 0.001;

const millimetres = (metres: number) => Number((metres / MILLIMETRE).toFixed(4));

/** `bore 17 (16.98..17, larger by 0.05)`, in mm: what it should be, what a new one may be, and what wear adds. */
function dimensionsOf({ dimensions }: Candidate): string[] {
  return [...dimensions].map(([name, { nominal, lower, upper, worn }]) => {
    const wear = worn === undefined ? "" : `, ${worn.side} by ${millimetres(worn.by)}`;
    return `${name} ${millimetres(nominal)} (${millimetres(lower)}..${millimetres(upper)}${wear})`;
  });
}

function standard(name: string): Candidate {
  const found = standardCandidates().find((each) => each.name === name);
  if (found === undefined) throw new Error(`no part ${name}`);
  return found;
}

describe("a standard part has the tolerances of its table, and wears one way", () => {
  test.each<[string, ...string[]]>([
    [
      "6203",
      "bore 17 (16.98..17, larger by 0.05)",
      "outside 40 (39.97..40, smaller by 0.05)",
      "width 12 (11.8..12, smaller by 0.05)",
    ],
    // The width of a tapered bearing lies either way.
    [
      "30204",
      "bore 20 (19.98..20, larger by 0.05)",
      "outside 47 (46.97..47, smaller by 0.05)",
      "width 15.25 (15.05..15.45, smaller by 0.05)",
    ],
    // AS568: 0.139 ± 0.004 in of the section of series 2; a ring without a series has one figure for all.
    [
      "AS568-210",
      "inside 18.6436 (18.3886..18.8986, larger by 0.3729)",
      "section 3.5306 (3.429..3.6322, smaller by 0.3531)",
      "outside 25.7048 (25.2466..26.163, larger by 0.5141)",
    ],
    [
      "AS568-901",
      "inside 4.699 (4.5499..4.8481, larger by 0.094)",
      "section 1.4224 (1.3424..1.5024, smaller by 0.1422)",
      "outside 7.5438 (7.2347..7.8529, larger by 0.1509)",
    ],
    [
      "DIN 471 20 x 1.2",
      "thickness 1.2 (1.14..1.2)",
      "inside 18.5 (18.08..18.63, larger by 0.555)",
      "shaft 20 (20..20, smaller by 0.05)",
      "groove 19 (18.79..19)",
    ],
    [
      "DIN 472 47 x 1.75",
      "thickness 1.75 (1.69..1.75)",
      "outside 50.5 (50.04..51.6, smaller by 1.515)",
      "bore 47 (47..47, larger by 0.05)",
      "groove 49.5 (49.5..49.8)",
    ],
    ["AWG 14", "diameter 1.6277 (1.6114..1.644)", "area 0.0021 (0.002..0.0022)"],
    // Of a nominal area the diameter is only nearly known.
    ["1.5 mm2", "diameter 1.382 (1.3405..1.4234)", "area 0.0015 (0.0014..0.0016)"],
    ["parallel key 8 x 7", "width 8 (7.95..8.03, smaller by 0.05)", "height 7 (6.87..7, smaller by 0.05)"],
    [
      "520",
      "pitch 15.875 (15.875..15.8988, larger by 0.4763)",
      "roller 10.16 (10.01..10.16, smaller by 0.3048)",
      "width 6.35 (6.35..6.6, larger by 0.15)",
    ],
  ])("%s", (name, ...expected) => {
    expect(dimensionsOf(standard(name))).toEqual(expected);
  });

  test("a thread is of its own standard, one that is in none of that of metric threads", () => {
    const sources = ["M10", "M10x0.5", "3/8-24 UNF"].map((text) => {
      const thread = readThread(text);
      if ("fault" in thread) throw new Error(text);
      return [externalThread(thread).source, internalThread(thread).source];
    });
    expect(sources).toEqual([
      ["ISO 261", "ISO 261"],
      ["ISO 965-1", "ISO 965-1"],
      ["ASME B1.1", "ASME B1.1"],
    ]);
  });

  test("and says what its table remarks", () => {
    expect(standard("30204").remark).toBe("tapered roller");
    expect(standard("DIN 472 47 x 1.75").remark).toBe("inside, in a bore");
    expect(standard("520")).not.toHaveProperty("remark");
  });
});

describe("a donor", () => {
  const length = (name: string, mm: number): DonorSize => ({ name, value: mm * MILLIMETRE, is: "length" });

  test("has general tolerances (ISO 2768-1 m), and wears as the name of its dimension says", () => {
    const sizes = ["bore", "hole_depth", "inner", "id", "outside", "shaft", "pin", "thickness", "length"];
    const donor = donorCandidate(
      "van",
      "Van",
      sizes.map((name) => length(name, 20)),
    );
    const wear = [...donor.dimensions].map(([name, { worn }]) => `${name} ${worn?.side ?? "neither"}`);
    expect(wear).toEqual([
      "bore larger",
      "hole_depth larger",
      "inner larger",
      "id larger",
      "outside smaller",
      "shaft smaller",
      "pin smaller",
      "thickness smaller",
      "length neither",
    ]);
    expect(dimensionsOf(donorCandidate("van", "Van", [length("length", 4), length("reach", 438)]))).toEqual([
      "length 4 (3.9..4.1)",
      "reach 438 (437.2..438.8)",
    ]);
    expect(dimensionsOf(donorCandidate("van", "Van", [length("bored", 4)]))).toEqual(["bored 4 (3.9..4.1)"]);
  });

  test("has none but for lengths: an angle and a count of threads are as they are stated", () => {
    const sizes = [
      { name: "taper", value: 0.5, is: "angle" },
      { name: "tpi", value: 0.001, is: "length" },
    ];
    expect(dimensionsOf(donorCandidate("van", "Van", sizes))).toEqual([
      "taper 500 (500..500)",
      "tpi 1 (1..1)",
    ]);
  });

  test("says its number where it has one", () => {
    expect(donorCandidate("van", "Van", [], "AB 12").remark).toBe("number AB 12");
    expect(donorCandidate("van", "Van", [])).not.toHaveProperty("remark");
  });

  test("is asked by the names of its own sizes first, else by one that means the same, and only of the same kind", () => {
    const donor = donorCandidate("van", "Van", [
      length("od", 40),
      length("outside", 47),
      length("width", 12),
    ]);
    const asked = (name: string, is = "length") => {
      const stated = statedBy(donor, { name, is });
      return stated && `${stated.name} ${millimetres(stated.expected.nominal)}`;
    };
    expect(asked("outside")).toBe("outside 47");
    expect(asked("od")).toBe("od 40");
    expect(asked("outer")).toBe("od 40");
    expect(asked("Width")).toBe("width 12");
    expect(asked("wear")).toBeUndefined();
    expect(asked("width", "angle")).toBeUndefined();
  });
});
