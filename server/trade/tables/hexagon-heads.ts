/**
 * Hexagon heads: smallest washer face under the head (dw, grade A up to M24, grade B above) and the clearance hole
 * of the medium series, mm, by nominal diameter.
 *
 * Source: ISO 4014/4017 and ISO 273, from memory; M8 to M16 agree with the figures used in published tables of
 * VDI 2230.
 */

export interface HexagonHead {
  readonly washerFace: number;
  readonly clearanceHole: number;
}

const rows: readonly (readonly [diameter: number, washerFace: number, clearanceHole: number])[] = [
  [1.6, 2.27, 1.8],
  [2, 3.07, 2.4],
  [2.5, 4.07, 2.9],
  [3, 4.57, 3.4],
  [3.5, 5.07, 3.9],
  [4, 5.88, 4.5],
  [5, 6.88, 5.5],
  [6, 8.88, 6.6],
  [7, 9.63, 7.6],
  [8, 11.63, 9],
  [10, 14.63, 11],
  [12, 16.63, 13.5],
  [14, 19.64, 15.5],
  [16, 22.49, 17.5],
  [18, 25.34, 20],
  [20, 28.19, 22],
  [22, 31.71, 24],
  [24, 33.61, 26],
  [27, 38, 30],
  [30, 42.75, 33],
  [33, 46.55, 36],
  [36, 51.11, 39],
  [39, 55.86, 42],
];

export const hexagonHeads: ReadonlyMap<number, HexagonHead> = new Map(
  rows.map(([diameter, washerFace, clearanceHole]) => [diameter, { washerFace, clearanceHole }]),
);
