/**
 * Spark plugs by thread and reach, mm.
 *
 * Source: ISO 28741 sizes and trade practice, from memory; 18 mm and 7/8 in of older engines: common practice, no
 * source.
 * Limits: reach is the threaded length from the seat; a plug of the wrong reach can meet the piston. Heat range,
 * gap and terminal are not here.
 */

export interface SparkPlugRow {
  /** As a thread is written. */
  readonly thread: string;
  readonly reach: number;
  readonly seat: "gasket" | "taper";
  /** Width across flats of the usual plug. */
  readonly hexagon: number;
}

export const sparkPlugRows: readonly SparkPlugRow[] = [
  { thread: "M10x1", reach: 12.7, seat: "gasket", hexagon: 16 },
  { thread: "M10x1", reach: 19, seat: "gasket", hexagon: 16 },
  { thread: "M12x1.25", reach: 12.7, seat: "gasket", hexagon: 18 },
  { thread: "M12x1.25", reach: 19, seat: "gasket", hexagon: 18 },
  { thread: "M12x1.25", reach: 26.5, seat: "gasket", hexagon: 14 },
  { thread: "M14x1.25", reach: 9.5, seat: "gasket", hexagon: 20.8 },
  { thread: "M14x1.25", reach: 12.7, seat: "gasket", hexagon: 20.8 },
  { thread: "M14x1.25", reach: 19, seat: "gasket", hexagon: 20.8 },
  { thread: "M14x1.25", reach: 19, seat: "gasket", hexagon: 16 },
  { thread: "M14x1.25", reach: 26.5, seat: "gasket", hexagon: 16 },
  { thread: "M14x1.25", reach: 11.2, seat: "taper", hexagon: 16 },
  { thread: "M14x1.25", reach: 17.5, seat: "taper", hexagon: 16 },
  { thread: "M18x1.5", reach: 12, seat: "gasket", hexagon: 26 },
  { thread: "M18x1.5", reach: 10.9, seat: "taper", hexagon: 20.8 },
];
