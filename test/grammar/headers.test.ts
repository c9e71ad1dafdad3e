import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { BlockWord } from "../../grammar/syntax.ts";
import { vocabulary } from "../../grammar/vocabulary/vocabulary.ts";
import { expectMarked, headerOf, linesOf, said } from "./marked-log.ts";

/** The blocks that a text divides into. */
function blocksOf(text: string): (BlockWord | undefined)[] {
  return Document.read(text).blocks.map(({ header }) => header?.block);
}

describe("what starts a block", () => {
  it.each([
    ['vehicle "Name"', "vehicle", { title: '"Name"' }],
    ['supplier tatlow "Tatlow Hydraulics"', "supplier", { name: "tatlow", title: '"Tatlow Hydraulics"' }],
    ["gauge mic25", "gauge", { name: "mic25" }],
    [
      'assembly front.right "Right" like front.left',
      "assembly",
      { name: "front.right", title: '"Right"', like: "front.left" },
    ],
    [
      'assembly front.right like front.left "Right"',
      "assembly",
      { name: "front.right", title: '"Right"', like: "front.left" },
    ],
    ["part a.b like c.d", "part", { name: "a.b", like: "c.d" }],
    ["part a.b", "part", { name: "a.b" }],
    ['part  a.b\t"T"  ', "part", { name: "a.b", title: '"T"' }],
    ['part a.b"T"', "part", { name: "a.b", title: '"T"' }],
    ['joint a.bolts "T"', "joint", { name: "a.bolts", title: '"T"' }],
    ['system brakes.front "T"', "system", { name: "brakes.front", title: '"T"' }],
    ['circuit fan "T"', "circuit", { name: "fan", title: '"T"' }],
    ['job front.strip "T"', "job", { name: "front.strip", title: '"T"' }],
    ['hold first_run "T"', "hold", { name: "first_run", title: '"T"' }],
    ['setup driver_up "T"', "setup", { name: "driver_up", title: '"T"' }],
    ['donor hub "T"', "donor", { name: "hub", title: '"T"' }],
    ["day 2026-05-02", "day", { date: "2026-05-02" }],
    ["day 2026-05-02 5.5 h", "day", { date: "2026-05-02", hours: "5.5 h" }],
    ["day 2026-05-02 5 h 30 min  # long", "day", { date: "2026-05-02", hours: "5 h 30 min" }],
    ["day 2026-05-02 90min", "day", { date: "2026-05-02", hours: "90 min" }],
  ])("%s", (line, block, values) => {
    const header = headerOf(line);
    expect(header).toMatchObject({ block, broken: false, faults: [] });
    expect(said(header)).toEqual(values);
  });

  it("a name may read as a thread or a word of the notation: that it cannot be one is said elsewhere", () => {
    expect(said(headerOf('part M10 "Bolt"'))).toEqual({ name: "M10", title: '"Bolt"' });
    expect(said(headerOf('part x "Ex"'))).toEqual({ name: "x", title: '"Ex"' });
  });
});

describe("any other line in column 0", () => {
  it.each([
    "day",
    "part",
    'day "today"',
    "day after day the same",
    "part of it was rusty",
    "vehicle came on a trailer",
    "hold the line, please",
    "Then tea and cake",
    "removed: front.left.hub",
    'supplier: "x"',
    "partfront.left",
    "2026-05-02",
    '"quoted"',
  ])("%s starts no block", (line) => {
    expect(blocksOf(`day 2026-05-02\n${line}\n`)).toEqual(["day"]);
  });
});

describe("a header that means to be one starts a block, so that what is below does not fall to the block above", () => {
  it.each([
    ["day 2026-5-2", "2026-05-02"],
    ["day 2026/05/02", "2026-05-02"],
    ["day 2026.05.02 4 h", "2026-05-02"],
    ["day 2.5.2026", "2026-05-02"],
    ["day 02/05/2026", "2026-05-02"],
    ["day 2026-05-02T18:30", "2026-05-02"],
    ["day 2026-05-02T18:30:00Z", "2026-05-02"],
    ["day 2026-05-02+01:00", "2026-05-02"],
    ["day 2026-05-02Z", "2026-05-02"],
    ["day 2/5/26", undefined],
    ["day 2026-02-30", undefined],
    ["day 2026-05", undefined],
    ["day 20260502", undefined],
    ["day 2 of the strip", undefined],
    ["day Sat 2026-05-02", undefined],
    ["day May 2", undefined],
    ["day Saturday 2nd May", undefined],
  ])("%s", (line, fix) => {
    const { blocks } = Document.read(`part hub\n  count: 1\n${line}\n  bled: brakes\n`);
    expect(blocks.map(({ header }) => header?.block)).toEqual(["part", "day"]);
    const header = blocks[1]?.header;
    expect(header?.broken).toBe(true);
    expect(header?.faults[0]?.code).toBe("bad-date");
    expect(header?.faults[0]?.fixes[0]?.text).toBe(fix);
  });

  it("is sure of a date with the year first, and not of one with the day first", () => {
    expect(headerOf("day 2026-5-2").faults[0]?.fixes[0]?.sure).toBe(true);
    expect(headerOf("day 2.5.2026").faults[0]?.fixes[0]?.sure).toBe(false);
  });

  it("keeps the date where only something behind it is wrong", () => {
    const document = expectMarked(`
      day 2026-05-02 Sat 5 h
                     ^^^^^^^ unreadable-value
        bled: brakes.front
    `);
    const header = document.blocks[0]?.header;
    expect(header?.broken).toBe(false);
    expect(header?.values.has("date")).toBe(true);
  });

  it("refuses names that cannot be one, at the name", () => {
    expectMarked(`
      part front-left.hub "Hub"
           ^^^^^^^^^^^^^^ unreadable-value
      part 2nd_gear "Second gear"
           ^^^^^^^^ unreadable-value
      part front.*.hub "Hub"
           ^^^^^^^^^^^ unreadable-value
      part front..hub "Hub"
           ^^^^^^^^^^ unreadable-value
      part "Hub"
           ^^^^^ unreadable-value
      hold first.run "First run"
           ^^^^^^^^^ unreadable-value
      vehicle Sprint
              ^^^^^^ unreadable-value
    `);
  });

  it("reads an unclosed title to the end of its line", () => {
    const document = expectMarked(`
      part hub "Hub, left
               ^^^^^^^^^^ unclosed-string
        count: 1
    `);
    expect(said(document.blocks[0]?.header as never)).toEqual({ name: "hub", title: '"Hub, left"' });
  });

  it("loses only a clause that is wrong", () => {
    const document = expectMarked(`
      assembly front.right "Right" like
                                       ! missing-value
      assembly front.right "Right" liek front.left
                                   ^^^^^^^^^^^^^^^ unreadable-value
    `);
    expect(document.blocks.map(({ header }) => header?.broken)).toEqual([false, false]);
  });
});

describe("an unknown word in the place of a block word", () => {
  it.each([
    ['vehcle "Sprint"', "vehicle"],
    ['suplier tatlow "T"', "supplier"],
    ['Part front.hub "Hub"', "part"],
    ["assemby front like rear", "assembly"],
    ["jiont front.bolts", "joint"],
    ["dya 2026-05-02", "day"],
    ["Day 2026-05-02 4 h", "day"],
    ["Day 2.5.2026", "day"],
    ["date 2026-05-02", "day"],
    ['wheel front.left "Wheel"', undefined],
    ["Hello world", undefined],
  ])("%s reads on as %s", (line, block) => {
    const header = headerOf(line);
    expect(header.block).toBe(block);
    expect(header.faults[0]).toMatchObject({ code: "unknown-block", start: 0, found: line.split(" ")[0] });
  });

  it("reads what is below as it would read there", () => {
    const document = expectMarked(`
      jont front.bolts "Bolts"
      ^^^^ unknown-block
        torque: 24 N.m
      wheel front.left "Wheel"
      ^^^^^ unknown-block
        torque: 24 N.m
    `);
    expect(linesOf(document)).toEqual(["header joint", "record torque", "header ?", "record torque"]);
  });

  it("starts no block where the rest is not in shape", () => {
    for (const line of ["dya 2026-5", "wheel front.left is bent", "He said 12 mm"])
      expect(blocksOf(`day 2026-05-02\n${line}`)).toEqual(["day"]);
  });
});

describe("every block word", () => {
  it.each(vocabulary.blocks.map(({ word, example }) => [word, example]))(
    "%s reads by its example",
    (word, example) => {
      expect(headerOf(example)).toMatchObject({ block: word, broken: false, faults: [] });
    },
  );
});
