/**
 * Tolerances of the usual external metric thread, class 6g, µm: deviation es of position g and tolerance of the major
 * diameter by pitch, tolerance of the pitch diameter by pitch and diameter.
 *
 * Source: ISO 965-1, from memory; M3 to M6 agree with the limits reprinted from Bossard technical pages.
 */

export interface CrestTolerance {
  /** mm */
  readonly pitch: number;
  /** Upper deviation, negative. */
  readonly deviation: number;
  readonly majorDiameter: number;
}

export const crestTolerances: readonly CrestTolerance[] = [
  { pitch: 0.35, deviation: -19, majorDiameter: 85 },
  { pitch: 0.4, deviation: -19, majorDiameter: 95 },
  { pitch: 0.45, deviation: -20, majorDiameter: 100 },
  { pitch: 0.5, deviation: -20, majorDiameter: 106 },
  { pitch: 0.6, deviation: -21, majorDiameter: 125 },
  { pitch: 0.7, deviation: -22, majorDiameter: 140 },
  { pitch: 0.75, deviation: -22, majorDiameter: 140 },
  { pitch: 0.8, deviation: -24, majorDiameter: 150 },
  { pitch: 1, deviation: -26, majorDiameter: 180 },
  { pitch: 1.25, deviation: -28, majorDiameter: 212 },
  { pitch: 1.5, deviation: -32, majorDiameter: 236 },
  { pitch: 1.75, deviation: -34, majorDiameter: 265 },
  { pitch: 2, deviation: -38, majorDiameter: 280 },
  { pitch: 2.5, deviation: -42, majorDiameter: 335 },
  { pitch: 3, deviation: -48, majorDiameter: 375 },
  { pitch: 3.5, deviation: -53, majorDiameter: 425 },
  { pitch: 4, deviation: -60, majorDiameter: 475 },
  { pitch: 4.5, deviation: -63, majorDiameter: 500 },
];

/** Tolerance of the pitch diameter by pitch in mm, for diameters above `over` up to `upTo` mm. */
export const pitchDiameterTolerances: readonly {
  readonly over: number;
  readonly upTo: number;
  readonly byPitch: ReadonlyMap<number, number>;
}[] = [
  {
    over: 1.4,
    upTo: 2.8,
    byPitch: new Map([
      [0.35, 63],
      [0.4, 67],
      [0.45, 71],
    ]),
  },
  {
    over: 2.8,
    upTo: 5.6,
    byPitch: new Map([
      [0.35, 67],
      [0.5, 75],
      [0.6, 85],
      [0.7, 90],
      [0.75, 90],
      [0.8, 95],
    ]),
  },
  {
    over: 5.6,
    upTo: 11.2,
    byPitch: new Map([
      [0.75, 100],
      [1, 112],
      [1.25, 118],
      [1.5, 132],
    ]),
  },
  {
    over: 11.2,
    upTo: 22.4,
    byPitch: new Map([
      [1, 118],
      [1.25, 132],
      [1.5, 140],
      [1.75, 150],
      [2, 160],
      [2.5, 170],
    ]),
  },
  {
    over: 22.4,
    upTo: 45,
    byPitch: new Map([
      [1, 125],
      [1.5, 150],
      [2, 170],
      [3, 200],
      [3.5, 212],
      [4, 224],
      [4.5, 236],
    ]),
  },
];
