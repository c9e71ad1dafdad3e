/** Where a line stands in another version of its text. Lines are counted from 0. */
import { describe, expect, test } from "vitest";
import { counterpartLine } from "../../client/record/counterpart-line.ts";

const OLD = [
  "day 2026-05-02",
  "  removed: hub",
  "",
  "day 2026-05-03",
  "  cleaned: hub",
  "  removed: hub",
  "end",
];
const old = OLD.join("\n");

describe("a line", () => {
  test("that the other text has too is where it is there", () => {
    expect(counterpartLine(old, `# first\n${old}`, 4)).toBe(5);
  });

  test("that stands there several times is the one at the most similar place", () => {
    expect(counterpartLine(old, `# first\n${old}`, 5)).toBe(6);
    expect(counterpartLine(old, old, 1)).toBe(1);
  });

  test("that was taken out is where it would stand: below the nearest line above it that is there", () => {
    expect(counterpartLine(old, OLD.toSpliced(4, 1).join("\n"), 4)).toBe(4);
    expect(counterpartLine(old, OLD.toSpliced(3, 2).join("\r\n"), 4)).toBe(2);
  });

  test("of a text that is another altogether is at its start", () => {
    expect(counterpartLine(old, "", 5)).toBe(0);
    expect(counterpartLine("", "vehicle", 3)).toBe(0);
    expect(counterpartLine(old, "day 2026-05-02", 6)).toBe(0);
  });
});
