/**
 * ISO metric threads: the pitches that go with each nominal diameter.
 *
 * Source: ISO 261, general plan, diameters 1 to 100 mm, from memory; its coarse pitches and the selection of
 * ISO 262 agree with the data files MetricPitchTable.csv and iso262def.csv of the FreeCAD Fasteners workbench.
 */

export interface MetricThreadRow {
  /** Nominal diameter, mm. */
  readonly diameter: number;
  /** Coarse pitch, mm; absent where the diameter has fine pitches only. */
  readonly coarse?: number;
  /** Fine pitches, mm, falling. */
  readonly fine: readonly number[];
  /** Those of `fine` that ISO 262 selects for screws, bolts and nuts. */
  readonly selected?: readonly number[];
}

export const metricThreadRows: readonly MetricThreadRow[] = [
  { diameter: 1, coarse: 0.25, fine: [0.2] },
  { diameter: 1.1, coarse: 0.25, fine: [0.2] },
  { diameter: 1.2, coarse: 0.25, fine: [0.2] },
  { diameter: 1.4, coarse: 0.3, fine: [0.2] },
  { diameter: 1.6, coarse: 0.35, fine: [0.2] },
  { diameter: 1.8, coarse: 0.35, fine: [0.2] },
  { diameter: 2, coarse: 0.4, fine: [0.25] },
  { diameter: 2.2, coarse: 0.45, fine: [0.25] },
  { diameter: 2.5, coarse: 0.45, fine: [0.35] },
  { diameter: 3, coarse: 0.5, fine: [0.35] },
  { diameter: 3.5, coarse: 0.6, fine: [0.35] },
  { diameter: 4, coarse: 0.7, fine: [0.5] },
  { diameter: 4.5, coarse: 0.75, fine: [0.5] },
  { diameter: 5, coarse: 0.8, fine: [0.5] },
  { diameter: 5.5, fine: [0.5] },
  { diameter: 6, coarse: 1, fine: [0.75] },
  { diameter: 7, coarse: 1, fine: [0.75] },
  { diameter: 8, coarse: 1.25, fine: [1, 0.75], selected: [1] },
  { diameter: 9, coarse: 1.25, fine: [1, 0.75] },
  { diameter: 10, coarse: 1.5, fine: [1.25, 1, 0.75], selected: [1.25, 1] },
  { diameter: 11, coarse: 1.5, fine: [1, 0.75] },
  { diameter: 12, coarse: 1.75, fine: [1.5, 1.25, 1], selected: [1.5, 1.25] },
  { diameter: 14, coarse: 2, fine: [1.5, 1.25, 1], selected: [1.5] },
  { diameter: 15, fine: [1.5, 1] },
  { diameter: 16, coarse: 2, fine: [1.5, 1], selected: [1.5] },
  { diameter: 17, fine: [1.5, 1] },
  { diameter: 18, coarse: 2.5, fine: [2, 1.5, 1], selected: [2, 1.5] },
  { diameter: 20, coarse: 2.5, fine: [2, 1.5, 1], selected: [2, 1.5] },
  { diameter: 22, coarse: 2.5, fine: [2, 1.5, 1], selected: [2, 1.5] },
  { diameter: 24, coarse: 3, fine: [2, 1.5, 1], selected: [2] },
  { diameter: 25, fine: [2, 1.5, 1] },
  { diameter: 26, fine: [1.5] },
  { diameter: 27, coarse: 3, fine: [2, 1.5, 1], selected: [2] },
  { diameter: 28, fine: [2, 1.5, 1] },
  { diameter: 30, coarse: 3.5, fine: [3, 2, 1.5, 1], selected: [2] },
  { diameter: 32, fine: [2, 1.5] },
  { diameter: 33, coarse: 3.5, fine: [3, 2, 1.5], selected: [2] },
  { diameter: 35, fine: [1.5] },
  { diameter: 36, coarse: 4, fine: [3, 2, 1.5], selected: [3] },
  { diameter: 38, fine: [1.5] },
  { diameter: 39, coarse: 4, fine: [3, 2, 1.5], selected: [3] },
  { diameter: 40, fine: [3, 2, 1.5] },
  { diameter: 42, coarse: 4.5, fine: [4, 3, 2, 1.5], selected: [3] },
  { diameter: 45, coarse: 4.5, fine: [4, 3, 2, 1.5], selected: [3] },
  { diameter: 48, coarse: 5, fine: [4, 3, 2, 1.5], selected: [3] },
  { diameter: 50, fine: [3, 2, 1.5] },
  { diameter: 52, coarse: 5, fine: [4, 3, 2, 1.5], selected: [4] },
  { diameter: 55, fine: [4, 3, 2, 1.5] },
  { diameter: 56, coarse: 5.5, fine: [4, 3, 2, 1.5], selected: [4] },
  { diameter: 58, fine: [4, 3, 2, 1.5] },
  { diameter: 60, coarse: 5.5, fine: [4, 3, 2, 1.5], selected: [4] },
  { diameter: 62, fine: [4, 3, 2, 1.5] },
  { diameter: 64, coarse: 6, fine: [4, 3, 2, 1.5], selected: [4] },
  { diameter: 65, fine: [4, 3, 2, 1.5] },
  { diameter: 68, coarse: 6, fine: [4, 3, 2, 1.5], selected: [4] },
  { diameter: 70, fine: [6, 4, 3, 2, 1.5] },
  { diameter: 72, fine: [6, 4, 3, 2, 1.5], selected: [6, 4] },
  { diameter: 75, fine: [4, 3, 2, 1.5] },
  { diameter: 76, fine: [6, 4, 3, 2, 1.5], selected: [6, 4] },
  { diameter: 80, fine: [6, 4, 3, 2, 1.5], selected: [6, 4] },
  { diameter: 85, fine: [6, 4, 3, 2], selected: [6, 4] },
  { diameter: 90, fine: [6, 4, 3, 2], selected: [6, 4] },
  { diameter: 95, fine: [6, 4, 3, 2], selected: [6, 4] },
  { diameter: 100, fine: [6, 4, 3, 2], selected: [6, 4] },
];

/**
 * Pitches of the metric system, mm. A diameter that ISO 261 does not list is read with any of them, since special
 * threads (old makers' sizes, lock nuts) follow this series too.
 */
export const metricPitches: readonly number[] = [
  0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5,
  5.5, 6,
];
