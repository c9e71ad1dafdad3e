/**
 * Roller chains: pitch, largest roller diameter and least width between the inner plates, mm.
 *
 * Sources: ISO 606 (B and A series), from memory, 12B through V. B. Bhandari, Introduction to Machine Design; motorcycle
 * sizes: a trade table of chain dimensions (their first figure is the pitch in eighths of an inch, the others the width
 * in eightieths). Widths of 428 differ between tables from 7.75 to 7.94 mm.
 * Limits: simplex dimensions; side plates, pin lengths and strengths are not here.
 */

export interface RollerChainRow {
  readonly name: string;
  readonly standard: "ISO 606" | "motorcycle";
  readonly pitch: number;
  readonly roller: number;
  readonly innerWidth: number;
  readonly alsoCalled?: string;
}

function iso606(
  name: string,
  pitch: number,
  roller: number,
  innerWidth: number,
  alsoCalled?: string,
): RollerChainRow {
  const row = { name, standard: "ISO 606", pitch, roller, innerWidth } as const;
  return alsoCalled === undefined ? row : { ...row, alsoCalled };
}

function motorcycle(name: string, pitch: number, roller: number, innerWidth: number): RollerChainRow {
  return { name, standard: "motorcycle", pitch, roller, innerWidth };
}

export const rollerChainRows: readonly RollerChainRow[] = [
  iso606("04B", 6, 4, 2.8),
  iso606("05B", 8, 5, 3),
  iso606("06B", 9.525, 6.35, 5.72, "3/8 in x 7/32 in"),
  iso606("081", 12.7, 7.75, 3.3, "1/2 in x 1/8 in"),
  iso606("083", 12.7, 7.75, 4.88, "1/2 in x 3/16 in"),
  iso606("085", 12.7, 7.77, 6.25, "ANSI 41"),
  iso606("08B", 12.7, 8.51, 7.75, "1/2 in x 5/16 in"),
  iso606("10B", 15.875, 10.16, 9.65, "5/8 in x 3/8 in"),
  iso606("12B", 19.05, 12.07, 11.68, "3/4 in x 7/16 in"),
  iso606("16B", 25.4, 15.88, 17.02, "1 in"),
  iso606("20B", 31.75, 19.05, 19.56, "1-1/4 in"),
  iso606("24B", 38.1, 25.4, 25.4, "1-1/2 in"),
  iso606("04C", 6.35, 3.3, 3.1, "ANSI 25"),
  iso606("06C", 9.525, 5.08, 4.68, "ANSI 35"),
  iso606("08A", 12.7, 7.92, 7.85, "ANSI 40"),
  iso606("10A", 15.875, 10.16, 9.4, "ANSI 50"),
  iso606("12A", 19.05, 11.91, 12.57, "ANSI 60"),
  iso606("16A", 25.4, 15.88, 15.75, "ANSI 80"),
  iso606("20A", 31.75, 19.05, 18.9, "ANSI 100"),
  iso606("24A", 38.1, 22.23, 25.22, "ANSI 120"),
  motorcycle("415", 12.7, 7.77, 4.76),
  motorcycle("420", 12.7, 7.77, 6.35),
  motorcycle("428", 12.7, 8.51, 7.75),
  motorcycle("520", 15.875, 10.16, 6.35),
  motorcycle("525", 15.875, 10.16, 7.95),
  motorcycle("530", 15.875, 10.16, 9.53),
  motorcycle("532", 15.875, 11.1, 9.53),
  motorcycle("630", 19.05, 11.91, 9.53),
];
