/**
 * Nut factors K of T = K·F·d by the state of the threads and the face under the head.
 *
 * Source: torque factors of Shigley, Mechanical Engineering Design, Table 8-15 (zinc, oiled, cadmium; confirmed
 * from memory only); dry: the range given after Shigley and Machinery's Handbook; moly: common practice, no source;
 * stainless: common practice, no source (it galls, so it is never used dry where it matters).
 */

export interface FrictionRow {
  readonly word: string;
  readonly low?: number;
  readonly high?: number;
  readonly source: string;
}

const shigley = "Shigley, Mechanical Engineering Design, Table 8-15 (from memory)";
const practice = "common practice, no source";

export const frictionRows: readonly FrictionRow[] = [
  { word: "dry", low: 0.2, high: 0.25, source: "after Shigley and Machinery's Handbook" },
  { word: "oiled", low: 0.18, high: 0.18, source: shigley },
  { word: "zinc", low: 0.2, high: 0.2, source: shigley },
  { word: "cadmium", low: 0.16, high: 0.16, source: shigley },
  { word: "stainless", low: 0.2, high: 0.3, source: practice },
  { word: "moly", low: 0.12, high: 0.12, source: practice },
  { word: "threadlocker", source: "wet threadlocker: the figure its maker gives" },
];
