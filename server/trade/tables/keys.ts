/**
 * Keys, mm.
 *
 * Sources: parallel keys: DIN 6885-1 (ISO 773), from memory; Woodruff keys: metric ISO 3912 (DIN 6888) and inch ASME
 * B17.2, from memory; inch parallel keys: ASME B17.1, through a published chart of key sizes by shaft diameter.
 * Limits: parallel keys for shafts of 6 to 110 mm, in inches of 5/16 to 4-1/2 in; of Woodruff keys the common sizes.
 */

export interface ParallelKeyRow {
  /** Shafts over and up to, mm. */
  readonly over: number;
  readonly upTo: number;
  readonly width: number;
  readonly height: number;
  /** Depth of the seat in the shaft and in the hub. */
  readonly shaftDepth: number;
  readonly hubDepth: number;
}

const parallel: readonly (readonly [
  over: number,
  upTo: number,
  width: number,
  height: number,
  shaftDepth: number,
  hubDepth: number,
])[] = [
  [6, 8, 2, 2, 1.2, 1],
  [8, 10, 3, 3, 1.8, 1.4],
  [10, 12, 4, 4, 2.5, 1.8],
  [12, 17, 5, 5, 3, 2.3],
  [17, 22, 6, 6, 3.5, 2.8],
  [22, 30, 8, 7, 4, 3.3],
  [30, 38, 10, 8, 5, 3.3],
  [38, 44, 12, 8, 5, 3.3],
  [44, 50, 14, 9, 5.5, 3.8],
  [50, 58, 16, 10, 6, 4.3],
  [58, 65, 18, 11, 7, 4.4],
  [65, 75, 20, 12, 7.5, 4.9],
  [75, 85, 22, 14, 9, 5.4],
  [85, 95, 25, 14, 9, 5.4],
  [95, 110, 28, 16, 10, 6.4],
];

export const parallelKeyRows: readonly ParallelKeyRow[] = parallel.map(
  ([over, upTo, width, height, shaftDepth, hubDepth]) => ({
    over,
    upTo,
    width,
    height,
    shaftDepth,
    hubDepth,
  }),
);

/** `[width, height]` in inches as they are written: square keys, then flat ones. */
export const inchKeyRows: readonly (readonly [width: string, height: string])[] = [
  ["3/32", "3/32"],
  ["1/8", "1/8"],
  ["3/16", "3/16"],
  ["1/4", "1/4"],
  ["5/16", "5/16"],
  ["3/8", "3/8"],
  ["1/2", "1/2"],
  ["5/8", "5/8"],
  ["3/4", "3/4"],
  ["7/8", "7/8"],
  ["1", "1"],
  ["1/8", "3/32"],
  ["3/16", "1/8"],
  ["1/4", "3/16"],
  ["5/16", "1/4"],
  ["3/8", "1/4"],
  ["1/2", "3/8"],
  ["5/8", "7/16"],
  ["3/4", "1/2"],
  ["7/8", "5/8"],
  ["1", "3/4"],
];

export interface WoodruffKeyRow {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Of the disc it is cut from. */
  readonly diameter: number;
}

const metricWoodruff: readonly (readonly [width: number, height: number, diameter: number])[] = [
  [1, 1.4, 4],
  [1.5, 2.6, 7],
  [2, 2.6, 7],
  [2, 3.7, 10],
  [2.5, 3.7, 10],
  [3, 5, 13],
  [3, 6.5, 16],
  [4, 6.5, 16],
  [4, 7.5, 19],
  [5, 6.5, 16],
  [5, 7.5, 19],
  [5, 9, 22],
  [6, 9, 22],
  [6, 10, 25],
  [8, 11, 28],
  [10, 13, 32],
];

const inchWoodruffNumbers: readonly string[] = [
  "204",
  "304",
  "305",
  "404",
  "405",
  "406",
  "505",
  "506",
  "507",
  "606",
  "607",
  "608",
  "609",
  "807",
  "808",
  "809",
  "810",
  "811",
  "812",
  "1008",
  "1009",
  "1010",
  "1011",
  "1012",
  "1210",
  "1211",
  "1212",
];

/** Height of inch keys by their diameter in eighths of an inch, in. */
const inchHeights: ReadonlyMap<number, number> = new Map([
  [4, 0.203],
  [5, 0.25],
  [6, 0.313],
  [7, 0.375],
  [8, 0.438],
  [9, 0.484],
  [10, 0.547],
  [11, 0.594],
  [12, 0.641],
]);

const INCH = 25.4;

/** The number of an inch key spells it: the last two figures are eighths of diameter, those before 32nds of width. */
function inchWoodruff(number: string): WoodruffKeyRow {
  const eighths = Number(number.slice(-2));
  return {
    name: `Woodruff No. ${number}`,
    width: (Number(number.slice(0, -2)) / 32) * INCH,
    height: (inchHeights.get(eighths) ?? Number.NaN) * INCH,
    diameter: (eighths / 8) * INCH,
  };
}

export const woodruffKeyRows: readonly WoodruffKeyRow[] = [
  ...metricWoodruff.map(([width, height, diameter]) => ({
    name: `Woodruff ${width} x ${height} mm`,
    width,
    height,
    diameter,
  })),
  ...inchWoodruffNumbers.map(inchWoodruff),
];
