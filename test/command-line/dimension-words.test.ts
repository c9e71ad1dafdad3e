import { describe, expect, it } from "vitest";
import { readDimensionWord } from "../../server/command-line/dimension-words.ts";

/** `value, is ± uncertainty`, in SI units to nine figures. */
function read(word: string, donorNames: readonly string[] = []): string {
  const { given } = readDimensionWord(word, donorNames);
  const figure = (value: number) => Number(value.toPrecision(9));
  const within = given.uncertainty === undefined ? "" : ` ± ${figure(given.uncertainty)}`;
  return `${given.name} ${figure(given.value)} ${given.is}${within}`;
}

describe("a dimension as it is typed", () => {
  it.each([
    ["major=9.47mm", "major 0.00947 length"],
    ["major=9.47 mm", "major 0.00947 length"],
    ["bore=3/4in", "bore 0.01905 length"],
    ["bore=1-3/8 in", "bore 0.034925 length"],
    ["bore=1 3/8in", "bore 0.034925 length"],
    ["bore=669thou", "bore 0.0169926 length"],
    ["outside=1 ft 2 in", "outside 0.3556 length"],
    ["tpi=24", "tpi 0.00105833333 length"],
    ["tpi=24 1/in", "tpi 0.00105833333 length"],
    ["angle=47 deg 30 arcmin", "angle 0.829031395 angle"],
    ["area=2.5mm2", "area 0.0000025 area"],
    ["width=14mm±0.1mm", "width 0.014 length ± 0.0001"],
    ["width=14 mm ± 0.1", "width 0.014 length ± 0.0001"],
    ["width=14mm +- 4 thou", "width 0.014 length ± 0.0001016"],
    ["width=14mm ± 1 %", "width 0.014 length ± 0.00014"],
  ])("%s", (word, expected) => {
    expect(read(word)).toBe(expected);
  });

  it("may be a size that only the donors of a build have, of any kind", () => {
    expect(read("mass=1.5kg", ["mass"])).toBe("mass 1.5 mass");
    expect(() => read("mass=1.5kg")).toThrow("no kind of part is known by a dimension mass");
  });
});
