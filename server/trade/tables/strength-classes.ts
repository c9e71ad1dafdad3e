/**
 * Strengths of threaded fasteners, minimum values.
 *
 * Sources: ISO 898-1 (metric steel), through reprints (Andrews Fasteners; dhm-online.com; Newton Lab) and, for 4.8,
 * 5.6, 6.8 and 9.8, from memory; ISO 3506-1 (stainless), from memory; SAE J429, through Shigley & Mischke, Mechanical
 * Engineering Design, 5th ed., p. 341; British letters A to X (tons force per square inch of tensile strength, as in
 * BS 1083 and BS 1768), from memory, their yield and proof taken as shares of it.
 */

export interface StrengthRow {
  /** Largest nominal diameter the row holds for, mm; absent when it holds for all. */
  readonly upTo?: number;
  /** Stress under proof load, yield or 0.2 % proof stress, tensile strength; MPa. */
  readonly proof: number;
  readonly yield: number;
  readonly tensile: number;
}

export interface StrengthClassRow {
  readonly system: "ISO 898-1" | "ISO 3506-1" | "SAE J429" | "British letter";
  readonly name: string;
  /** Ascending by `upTo`. */
  readonly strengths: readonly StrengthRow[];
  /** What has to be said where the figures are used. */
  readonly remark?: string;
}

const MPA_PER_KSI = 6.894757293168361;
const MPA_PER_TON = 15.4442563;
const INCH = 25.4;

function metric(name: string, proof: number, yieldStress: number, tensile: number): StrengthClassRow {
  return { system: "ISO 898-1", name, strengths: [{ proof, yield: yieldStress, tensile }] };
}

const noProof = "ISO 3506-1 gives no stress under proof load: the 0.2 % proof stress stands in for it";

function stainless(name: string, yieldStress: number, tensile: number): StrengthClassRow {
  return {
    system: "ISO 3506-1",
    name,
    strengths: [{ proof: yieldStress, yield: yieldStress, tensile }],
    remark: noProof,
  };
}

function sae(
  name: string,
  ...rows: readonly (readonly [inches: number, proof: number, yieldStress: number, tensile: number])[]
): StrengthClassRow {
  return {
    system: "SAE J429",
    name,
    strengths: rows.map(([inches, proof, yieldStress, tensile]) => ({
      upTo: inches * INCH,
      proof: proof * MPA_PER_KSI,
      yield: yieldStress * MPA_PER_KSI,
      tensile: tensile * MPA_PER_KSI,
    })),
  };
}

const lettersFromMemory =
  "British letter: tensile strength from memory, yield and proof estimated from it; ask the maker where it matters";

/** Yield as the share of the tensile strength usual for the steel of that letter, proof as 0.9 of yield. */
function letter(name: string, tons: number, yieldShare: number): StrengthClassRow {
  const tensile = tons * MPA_PER_TON;
  const yieldStress = yieldShare * tensile;
  return {
    system: "British letter",
    name,
    strengths: [{ proof: 0.9 * yieldStress, yield: yieldStress, tensile }],
    remark: lettersFromMemory,
  };
}

export const strengthClassRows: readonly StrengthClassRow[] = [
  metric("4.6", 225, 240, 400),
  metric("4.8", 310, 340, 420),
  metric("5.6", 280, 300, 500),
  metric("5.8", 380, 420, 520),
  metric("6.8", 440, 480, 600),
  {
    system: "ISO 898-1",
    name: "8.8",
    strengths: [
      { upTo: 16, proof: 580, yield: 640, tensile: 800 },
      { proof: 600, yield: 660, tensile: 830 },
    ],
  },
  { system: "ISO 898-1", name: "9.8", strengths: [{ upTo: 16, proof: 650, yield: 720, tensile: 900 }] },
  metric("10.9", 830, 940, 1040),
  metric("12.9", 970, 1100, 1220),
  stainless("A2-70", 450, 700),
  stainless("A4-80", 600, 800),
  sae("1", [1.5, 33, 36, 60]),
  sae("2", [0.75, 55, 57, 74], [1.5, 33, 36, 60]),
  sae("5", [1, 85, 92, 120], [1.5, 74, 81, 105]),
  sae("8", [1.5, 120, 130, 150]),
  letter("A", 28, 0.55),
  letter("B", 28, 0.55),
  letter("P", 35, 0.6),
  letter("R", 45, 0.75),
  letter("S", 50, 0.75),
  letter("T", 55, 0.8),
  letter("V", 65, 0.8),
  letter("X", 75, 0.85),
];

/**
 * Stress under proof load of nuts, style 1, coarse thread, MPa, by largest nominal diameter in mm.
 * Source: nut proof loads of ISO 898-2 as tabulated by SLS Bearings (classes 8, 10, 12), divided by the stress area;
 * classes 5 and 6 and the thin nuts 04 and 05 from memory of ISO 898-2:1992.
 */
export const nutProofStresses: Readonly<
  Record<string, readonly (readonly [upTo: number, stress: number])[]>
> = {
  "04": [[39, 380]],
  "05": [[39, 500]],
  "5": [
    [4, 520],
    [7, 580],
    [10, 590],
    [16, 610],
    [39, 630],
  ],
  "6": [
    [4, 600],
    [7, 670],
    [10, 680],
    [16, 700],
    [39, 720],
  ],
  "8": [
    [4, 800],
    [7, 855],
    [10, 870],
    [16, 880],
    [39, 920],
  ],
  "10": [
    [10, 1040],
    [16, 1050],
    [39, 1060],
  ],
  "12": [
    [7, 1150],
    [10, 1160],
    [16, 1190],
  ],
};
