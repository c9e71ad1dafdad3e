/** Limits that no reading answers but a calculation: its own, or one further down the branch of an assembly. */
import { describe, expect, it } from "vitest";
import { calculatedLimits } from "../../server/build/calculated-limits.ts";
import { textAt } from "../../server/build/source.ts";
import { buildOf, nodeAt } from "./marked-build.ts";

/** Each limit that is answered, by the line that answers it and what that proves. */
function answered(log: string, path: string): string[] {
  const build = buildOf(log);
  return calculatedLimits(build.standing, nodeAt(build, path)).map(
    ({ limit, calculation, verdict }) =>
      `${limit.record.name}: ${textAt(calculation.place)} is ${verdict?.verdict ?? "not judged"}`,
  );
}

const FRONT = `
assembly front "Front"
  limit: track 1200..1210 mm
assembly front.left "Left"
part front.left.hub "Hub"
  size: offset 601 mm
  calc: track = front.left.hub.offset * 2
part front.right "Right"
  size: offset 606 mm
`;

describe("a limit of a thing", () => {
  it("is answered by the calculation of its name in the same block, and no other", () => {
    const log = `
part disc "Disc"
  size: worn 8.2 mm
  limit: wear max 1.1 mm
  limit: runout max 0.1 mm
  calc: other = 9.5 mm - disc.worn
  calc: wear = 9.5 mm - disc.worn
`;
    expect(answered(log, "disc")).toEqual(["wear: calc: wear = 9.5 mm - disc.worn is outside"]);
  });

  it("is answered by its reading where it was measured", () => {
    const log = `
part disc "Disc"
  limit: wear max 1.1 mm
  calc: wear = 9.5 mm - 9 mm

day 2026-05-02
  measured: disc wear 0.2 mm
`;
    expect(answered(log, "disc")).toEqual([]);
  });

  it("is not judged by what has no value, is no quantity, or is of another dimension", () => {
    const log = (calculation: string) => `
vehicle "Plover"
  past: known
  currency: GBP

part disc "Disc"
  limit: wear max 1.1 mm
  calc: wear = ${calculation}
`;
    for (const calculation of ["9.5 mm - disc.thickness", "5 GBP", "3 kg"])
      expect(answered(log(calculation), "disc")).toEqual([`wear: calc: wear = ${calculation} is not judged`]);
  });
});

describe("a limit of an assembly without a calculation of its own", () => {
  it("is answered by those further down its branch, at whatever depth", () => {
    expect(answered(FRONT, "front")).toEqual(["track: calc: track = front.left.hub.offset * 2 is within"]);
    const both = `${FRONT}  calc: track = front.right.offset * 2\n`;
    expect(answered(both, "front")).toEqual([
      "track: calc: track = front.left.hub.offset * 2 is within",
      "track: calc: track = front.right.offset * 2 is outside",
    ]);
  });

  it("is not answered by a calculation of another name", () => {
    expect(answered(FRONT.replace("calc: track", "calc: width"), "front")).toEqual([]);
  });

  it("is not answered by what answers a limit of its own", () => {
    const own = FRONT.replace("  calc: track", "  limit: track max 2000 mm\n  calc: track");
    expect(answered(own, "front")).toEqual([]);
    expect(answered(own, "front.left.hub")).toEqual([
      "track: calc: track = front.left.hub.offset * 2 is within",
    ]);
    const other = FRONT.replace("  calc: track", "  limit: runout max 1 mm\n  calc: track");
    expect(answered(other, "front")).toHaveLength(1);
  });

  it("is answered by its own where it has one", () => {
    const own = FRONT.replace("1200..1210 mm\n", "1200..1210 mm\n  calc: track = 1 mm\n");
    expect(answered(own, "front")).toEqual(["track: calc: track = 1 mm is outside"]);
  });
});

describe("a limit of a part with parts in it", () => {
  it("is not answered by them", () => {
    const log = `
part engine "Engine"
  limit: bore max 80 mm
part engine.block "Block"
  calc: bore = 81 mm
`;
    expect(answered(log, "engine")).toEqual([]);
  });
});
