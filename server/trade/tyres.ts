/** Tyres by their names. */

export interface Tyre {
  /** Section width, m. */
  readonly width: number;
  /** Height over width; absent when the name tells none. */
  readonly aspect?: number;
  /** Rim diameter, m. */
  readonly rim: number;
}

const INCH = 0.0254;
const MILLIMETRE = 0.001;

/** Height over width of the old full-profile radials, whose names tell none (ISO 4000-1: series 80 to 82). */
export const fullProfile = { usual: 0.8, highest: 0.82 } as const;

/** Reads `185/70R13`, `185/70 R 13`, `90/90-18`, `155R13`. */
export function readTyre(text: string): Tyre | undefined {
  const match = /^(?:P|LT)?(\d{2,3})(?:\/(\d{2,3}))? ?(?:[A-Z]?R|[DB-]) ?(\d{2}(?:\.\d)?)(?: .*)?$/.exec(
    text.trim(),
  );
  if (match === null) return undefined;
  const [, width, aspect, rim] = match;
  return {
    width: Number(width) * MILLIMETRE,
    rim: Number(rim) * INCH,
    ...(aspect === undefined ? {} : { aspect: Number(aspect) / 100 }),
  };
}

/** Nominal overall diameter, m. */
export function tyreDiameter({ width, aspect = fullProfile.usual, rim }: Tyre): number {
  return 2 * width * aspect + rim;
}
