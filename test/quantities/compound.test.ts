import { describe, expect, test } from "vitest";
import { compoundQuantity, continuesCompound } from "../../server/quantities/compound.ts";
import { ok, q, shown } from "./written.ts";

const [of, printed] = [
  (...texts: readonly [string, ...string[]]) => {
    const [first, ...others] = texts;
    return compoundQuantity([q(first), ...others.map(q)]);
  },
  (...texts: readonly [string, ...string[]]) => {
    const [first, ...others] = texts;
    return shown(ok(compoundQuantity([q(first), ...others.map(q)])));
  },
];

describe("compound quantities", () => {
  test("add up in the first unit", () => {
    expect(printed("1 deg", "30 arcmin")).toBe("1.5 deg");
    expect(printed("5 ft", "3 in")).toBe("5.25 ft");
    expect(printed("2 h", "30 min")).toBe("2.5 h");
    expect(printed("2 year", "6 month")).toBe("2.5 year");
    expect(printed("1 lb", "8 oz")).toBe("1.5 lb");
    expect(printed("1 °", "30 '")).toBe("1.5°");
  });

  test("or in the last, where the first has no end in decimals", () => {
    expect(printed("1 deg", "20 arcmin")).toBe("80 arcmin");
    expect(printed("1 h", "10 min", "5 s")).toBe("4205 s");
    expect(printed("1 week", "1 d")).toBe("8 d");
  });

  test("a minus before the first holds for the whole, before nothing too", () => {
    expect(printed("-1 deg", "30 arcmin")).toBe("-1.5 deg");
    expect(printed("-0 deg", "30 arcmin")).toBe("-0.5 deg");
  });

  test("only along a chain, falling", () => {
    expect(of("30 arcmin", "1 deg")).toMatchObject({ fault: "no-compound" });
    expect(of("1 m", "5 mm")).toMatchObject({ fault: "no-compound" });
    expect(of("1 d", "5 min")).toMatchObject({ fault: "no-compound" });
    expect(of("1 deg", "-30 arcmin")).toMatchObject({ fault: "no-compound" });
    expect(continuesCompound("deg", "arcsec")).toBe(true);
    expect(continuesCompound("in", "ft")).toBe(false);
    expect(continuesCompound("mm", "N")).toBe(false);
  });
});
