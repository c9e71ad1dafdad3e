/**
 * Wires and fuses.
 *
 * Sources: IEC 60228, nominal areas and largest resistances at 20 °C of plain copper (classes 1 and 2, class 5), read
 * from reprints, a few rows from memory. Currents: common practice, no source, deliberately low: one wire of a loom,
 * PVC insulation, warm bay; below what thin-wall cable or free air would bear. Fuses: blade types C and E of ISO
 * 8820-3, from memory.
 */

export interface WireRow {
  /** mm² */
  readonly area: number;
  /** Ω/km at 20 °C, IEC 60228 class 1 and 2; absent for areas of vehicle cable that it does not list. */
  readonly solid?: number;
  /** Ω/km at 20 °C, IEC 60228 class 5. */
  readonly flexible?: number;
  /** Current in A that it is trusted with here. */
  readonly current: number;
}

export const wireRows: readonly WireRow[] = [
  { area: 0.35, current: 3 },
  { area: 0.5, solid: 36, flexible: 39, current: 4.5 },
  { area: 0.75, solid: 24.5, flexible: 26, current: 6.5 },
  { area: 1, solid: 18.1, flexible: 19.5, current: 8.75 },
  { area: 1.5, solid: 12.1, flexible: 13.3, current: 13 },
  { area: 2, current: 17 },
  { area: 2.5, solid: 7.41, flexible: 7.98, current: 21 },
  { area: 3, current: 25 },
  { area: 4, solid: 4.61, flexible: 4.95, current: 31 },
  { area: 6, solid: 3.08, flexible: 3.3, current: 42 },
  { area: 10, solid: 1.83, flexible: 1.91, current: 60 },
  { area: 16, solid: 1.15, flexible: 1.21, current: 85 },
  { area: 25, solid: 0.727, flexible: 0.78, current: 110 },
  { area: 35, solid: 0.524, flexible: 0.554, current: 135 },
  { area: 50, solid: 0.387, flexible: 0.386, current: 170 },
];

/** Rated currents of blade fuses, A. */
export const fuseRatings: readonly number[] = [
  1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100,
];
