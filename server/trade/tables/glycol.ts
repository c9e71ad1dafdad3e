/**
 * Freezing points of glycol in water: `[share by volume in %, °C]`.
 *
 * Sources: ethylene glycol: ASHRAE Handbook, Fundamentals, from memory; propylene glycol: Lange's Handbook of
 * Chemistry, 15th ed., table 5.13 (15 % and 30 % from memory).
 */

export type FreezingPoints = readonly (readonly [share: number, celsius: number])[];

export const propyleneFreezingPoints: FreezingPoints = [
  [0, 0],
  [5, -1.1],
  [10, -2.2],
  [15, -3.9],
  [20, -6.7],
  [25, -8.9],
  [30, -12.8],
  [35, -16.1],
  [40, -20.6],
  [45, -26.7],
  [50, -33.3],
];

export const ethyleneFreezingPoints: FreezingPoints = [
  [0, 0],
  [10, -3.4],
  [20, -7.9],
  [30, -13.7],
  [40, -23.5],
  [50, -36.8],
  [60, -52.8],
];
