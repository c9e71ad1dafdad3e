/** How values are written, with lines that read and a line that does not: the page of values, and its tests. */
import type { BadExample } from "../vocabulary/shape.ts";

export interface ValueForm {
  readonly name: string;
  readonly help: string;
  readonly choice?: string;
  /** Lines that read, as `block: record`. */
  readonly good: readonly string[];
  readonly bad: readonly BadExample[];
}

export const VALUE_FORMS: readonly ValueForm[] = [
  {
    name: "Name and path",
    help: "A name is a letter and then letters, digits and underscores. A path is names joined by dots, from the large to the small.",
    good: ["day: removed: front.left.disc", "day: greased: pedals"],
    bad: [
      { text: "day: removed: front-left.disc", code: "unreadable-value" },
      { text: "day: removed: front.left.", code: "unreadable-value" },
    ],
  },
  {
    name: "Reference",
    help: "A full path or any tail of it that leaves no doubt. Braces and stars make sets; a comma parts several. A bad one costs only itself.",
    good: [
      "day: removed: disc",
      "day: removed: front.left.{disc, hub}",
      "day: removed: front.*.disc, front.*.hub",
      "day: measured: front.left.disc.thickness 9.12 mm",
    ],
    bad: [
      { text: "day: removed: front.left.{disc, hub", code: "unreadable-value" },
      { text: "day: removed: front.left.{disc hub}", code: "unreadable-value" },
      { text: "day: removed: disc hub", code: "unreadable-value" },
    ],
    choice:
      "An unclosed brace takes the names behind it with it, because read by themselves they would be others.",
  },
  {
    name: "Text",
    help: 'In quotation marks, on one line. `\\"` and `\\\\` stand for those characters; any other backslash is a backslash.',
    good: ['day: tagged: front.left.hub "L, with a \\"dot\\""', 'part: maker: ""'],
    bad: [{ text: 'day: tagged: front.left.hub "L', code: "unclosed-string" }],
  },
  {
    name: "Date",
    help: "Year, month and day by ISO 8601; two of them joined by `..` make a period. No other order or sign is read.",
    good: ["part: expires: 2034-06-30", "vehicle: closed: 2026-08-01..2026-08-14"],
    bad: [
      { text: "part: expires: 2034-6-30", code: "bad-date" },
      { text: "part: expires: 30.6.2034", code: "bad-date" },
      { text: "part: expires: 2034-06-31", code: "bad-date" },
    ],
  },
  {
    name: "Number",
    help: "A point before decimals, never a comma. A fraction is written tight, a mixed number with a hyphen or a space and only before an inch or a foot.",
    good: [
      "part: size: bore 54.05 mm",
      "part: size: bore 1e-3 m",
      "part: size: bore 3/8 in",
      "part: size: bore 1-3/8 in",
      "part: size: offset -1.5 mm",
    ],
    bad: [
      { text: "part: size: bore 54,05 mm", code: "decimal-comma" },
      { text: "part: size: bore .5 mm", code: "unreadable-value" },
      { text: "part: size: bore 1-3/8 mm", code: "unreadable-value" },
    ],
    choice:
      "The minus sign of typesetters reads as a hyphen. A comma tight between figures makes a list where either side has a point: `9.12,9.10 mm`.",
  },
  {
    name: "Quantity",
    help: "A number and a unit. Units join with `.` or `·` and `/`, and take the powers 2, 3 and 4. A falling chain is one value: `1 deg 30 arcmin`, `5 ft 6 in`.",
    good: [
      "joint: torque: 24 N.m",
      "part: size: area 2.5 mm2",
      "part: size: rate 30 N/mm",
      "assembly: setting: camber -1 deg 30 arcmin ± 15 arcmin",
      "assembly: setting: camber -1° 30' ± 15'",
      "day: measured: disc thickness 9.12, 9.10, 9.14 mm",
    ],
    bad: [
      { text: 'part: size: bore 3/8"', code: "unknown-unit" },
      { text: "joint: grip: 6'", code: "unknown-unit" },
    ],
    choice:
      "A missing space before a unit is read, and put in by `format`. Behind a number `min`, `in` and `m` are units.",
  },
  {
    name: "Money",
    help: "A number and the code of a currency by ISO 4217.",
    good: ["part: price: 62.00 GBP", "vehicle: labour: 40 GBP/h", "vehicle: rate: 1 EUR = 0.86 GBP"],
    bad: [
      { text: "part: price: £62.00", code: "unreadable-value" },
      { text: "part: price: 62.00 gbp", code: "unreadable-value" },
    ],
  },
  {
    name: "Count",
    help: "A number, `x` or `×`, and what is counted.",
    good: ["day: counted: 4 x disc_nut", "day: counted: 4× disc_nut, 2 x caliper_kit"],
    bad: [{ text: "day: counted: 4 disc_nut", code: "unreadable-value" }],
    choice: "The spaces around the `x` may be left out behind a figure.",
  },
  {
    name: "Limits",
    help: "`min`, `max`, two figures joined by `..`, a value with `±` or with two deviations, or a size in mm and a class of ISO 286. `new` and the size of a new one may follow, to reckon wear.",
    good: [
      "part: limit: thickness min 8.4 mm new 9.5 mm",
      "part: limit: runout max 0.10 mm",
      "part: limit: bore 54.00..54.05 mm",
      "part: limit: bore 54 mm ± 0.05",
      "part: limit: bore 54 mm +0.05/-0.00",
      "part: limit: spigot 25 h6",
    ],
    bad: [{ text: "part: limit: thickness 8.4 mm", code: "unreadable-value" }],
    choice: "`min` and `max` may stand together, and a nought among deviations needs no sign.",
  },
  {
    name: "Thread and bolt",
    help: "Metric by diameter and pitch (coarse without), inch threads by size and series; `LH` behind it for a left-hand thread. A bolt adds its length, and a strength class behind it.",
    good: [
      "part: size: thread M10x1.25",
      "part: size: thread 1/4 BSW LH",
      "joint: bolt: 4 x M8x1.25x30 class 8.8",
      "joint: bolt: 4 x M8x30 class A2-70",
      "joint: stud: 6 x 3/8-24 UNF x 1-1/4 in grade 5",
      "joint: bolt: 2 BA class unknown",
    ],
    bad: [{ text: "joint: bolt: 4 x 3/8 x 2 in", code: "unreadable-value" }],
    choice: "Spaces around `x` are read. `LH` may stand before or behind the length.",
  },
  {
    name: "Expression",
    help: "Behind `calc: NAME =`: numbers with units, names, `REF.NAME`, functions, `+ - * / ^`, parentheses, and `in UNIT`, which binds loosest.",
    good: [
      "day: calc: wear = 9.5 mm - front.left.disc.thickness",
      "day: calc: force = preload(24 N.m, M8, 0.18) in kN",
      "day: calc: length = 3 in in mm",
      "day: calc: share = (a + b)/(a + b + c) in %",
      'day: calc: wear = max(9.1 mm, 9.2 mm) by "JR" "inner edge"',
    ],
    bad: [
      { text: "day: calc: wear = 9,5 mm", code: "decimal-comma" },
      { text: "day: calc: wear = (9.5 mm - 9.1 mm", code: "unreadable-expression" },
      { text: "day: calc: wear 9.5 mm", code: "unreadable-value" },
    ],
    choice:
      "Behind a tight `/`, `.` or `·` a unit goes on only if what follows is a unit: `9.5 mm/pitch` divides. An expression has at most 1000 words and signs and nests at most 50 deep.",
  },
];
