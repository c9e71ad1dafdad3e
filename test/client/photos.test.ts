/** Photos in a build: where they go, what they are called, and where their line goes. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Lines } from "../../client/photos/day-lines.ts";
import { indentAt, isInDay, lastLineOfRecord } from "../../client/photos/day-lines.ts";
import {
  cleanName,
  isPhoto,
  namesFor,
  PHOTO_ENDINGS,
  pathWithin,
  photoFact,
} from "../../client/photos/photo-names.ts";
import { Document } from "../../grammar/document.ts";
import { quoted } from "../../grammar/quoted.ts";

function linesOf(text: string): Lines {
  const lines = text.split("\n");
  return { count: lines.length, at: (line) => lines[line] ?? "" };
}

describe("a photo within the build's folder", () => {
  test("is written relative to it", () => {
    expect(pathWithin("/garage/otter", "/garage/otter/photos/disc.png")).toBe("photos/disc.png");
    expect(pathWithin("/", "/disc.png")).toBe("disc.png");
  });

  test.each([
    "/garage/otter2/disc.png",
    "/garage/disc.png",
    "/garage/otter",
    "/garage/otter/../disc.png",
    "/garage/otter/photos/../../disc.png",
    "/garage/otter//disc.png",
    "/garage/otter/./disc.png",
    "/garage/otter/..\\disc.png",
    "/garage/otter/a\nb.png",
  ])("is not %j", (file) => {
    expect(pathWithin("/garage/otter", file)).toBeUndefined();
  });
});

describe("the name of a photo from outside", () => {
  test.each([
    ["IMG_0042.JPG", "IMG_0042.jpg"],
    ["left disc (new).png", "left-disc-(new).png"],
    ["../../etc/passwd.png", "passwd.png"],
    ["C:\\Users\\me\\disc.png", "disc.png"],
    ['say "cheese".png', "say-cheese.png"],
    ["50%.png", "50.png"],
    [".png", "photo.png"],
    ["", "photo"],
    ["Bremsscheibe vorn.jpeg", "Bremsscheibe-vorn.jpeg"],
  ])("%j becomes %j", (name, clean) => {
    expect(cleanName(name)).toBe(clean);
  });

  test("is taken up again with a number until it is free", () => {
    const names = namesFor("disc.png");
    expect([names.next().value, names.next().value, names.next().value]).toEqual([
      "disc.png",
      "disc-2.png",
      "disc-3.png",
    ]);
  });

  test("stays in its folder, whatever it was called", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 40 }), (name) => {
        const path = `photos/${cleanName(name)}`;
        expect(pathWithin("/garage", `/garage/${path}`)).toBe(path);
      }),
    );
  });

  test("is that of a picture by its ending, as the server looks for it", () => {
    expect(PHOTO_ENDINGS.every((ending) => isPhoto(`a.b.${ending.toUpperCase()}`))).toBe(true);
    expect(["a.svg", "png", "a.png.exe", "a.cotter"].filter(isPhoto)).toEqual([]);
  });
});

describe("the line of a photo", () => {
  test("names it, with the caption where there is one", () => {
    expect(photoFact("photos/disc.png", "")).toBe('photo: "photos/disc.png"');
    expect(photoFact("photos/disc.png", ' the "new" disc ')).toBe(
      'photo: "photos/disc.png" "the \\"new\\" disc"',
    );
  });

  test("is read as it was meant, whatever the caption says", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 40 }), (caption) => {
        const day = Document.read(`day 2026-05-02\n  ${photoFact("photos/a.png", `x${caption}`)}\n`);
        const items = day.blocks[0]?.items ?? [];
        expect(items.map(({ kind }) => kind)).toEqual(["header", "record"]);
        expect(items.flatMap((item) => ("faults" in item ? item.faults : []))).toEqual([]);
      }),
    );
  });

  test("is a string of one line", () => {
    expect(quoted('a\\b"c\nd')).toBe('"a\\\\b\\"c d"');
  });
});

describe("where the line goes", () => {
  const text = `part disc
  limit: runout max 0.1 mm

day 2026-05-02 3 h
    All dry.
    removed: disc,
      pads,
      hub
    found: disc scored

# After that.
day 2026-05-03`;
  const lines = linesOf(text);

  test("into a day, and nowhere else", () => {
    const inDay = text.split("\n").map((_, line) => isInDay(lines, line));
    expect(inDay.map((is) => (is ? "x" : ".")).join("")).toBe("...xxxxxxxxx");
    expect(isInDay(linesOf("day trips are fun"), 0)).toBe(false);
    expect(isInDay(linesOf("  measured: a b 1 mm"), 0)).toBe(false);
  });

  test("not between a record and what goes on with it", () => {
    expect([4, 5, 6, 7, 8].map((line) => lastLineOfRecord(lines, line))).toEqual([4, 7, 7, 7, 8]);
    expect(lastLineOfRecord(linesOf("day 2026-05-02\n  removed: a,\n\n  b"), 1)).toBe(1);
    expect(lastLineOfRecord(linesOf("day 2026-05-02\n  removed: a,\n  found: b worn"), 1)).toBe(1);
  });

  test("indented as the lines around it", () => {
    expect(indentAt(lines, 8)).toBe("    ");
    expect(indentAt(lines, 11)).toBe("  ");
    expect(indentAt(linesOf("day 2026-05-02\n\tfound: a worn\n"), 2)).toBe("\t");
  });
});
