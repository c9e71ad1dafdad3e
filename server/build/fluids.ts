/** Fluids as they are named on a can: whether what went in is what the system takes. */

/**
 * Brake fluids of different families are never mixed without a flush and new seals: DOT 3, 4 and 5.1 are glycol ethers,
 * DOT 5 is silicone (FMVSS 116, 49 CFR 571.116), mineral oil is neither.
 */
export type FluidFamily = "glycol" | "silicone" | "mineral";

/** The family that a name tells; undefined where it tells none. */
export function fluidFamily(name: string): FluidFamily | undefined {
  if (/\bDOT\s*(?:3|4|5\.1)(?!\.?\d)/i.test(name)) return "glycol";
  if (/\bDOT\s*5(?!\.?\d)/i.test(name) || /\bsilicone\b/i.test(name)) return "silicone";
  return /\bmineral\b/i.test(name) ? "mineral" : undefined;
}

/** True for the fluids of hydraulic brakes by their grade. */
function isBrakeFluid(name: string): boolean {
  return /\bDOT\s*\d/i.test(name);
}

/**
 * Whether a fluid is another than the one asked for. Families decide where both have one and one is a brake fluid's grade;
 * other names are compared by their words: one may say more than the other (`20W-50` and `20W-50 mineral`).
 */
export function isOtherFluid(asked: string, filled: string): boolean {
  if (isBrakeFluid(asked) || isBrakeFluid(filled)) {
    const [wanted, got] = [fluidFamily(asked), fluidFamily(filled)];
    if (wanted !== undefined && got !== undefined) return wanted !== got;
  }
  const [one, other] = [wordsOf(asked), wordsOf(filled)];
  const [less, more] = one.size < other.size ? [one, other] : [other, one];
  return [...less].some((word) => !more.has(word));
}

function wordsOf(name: string): ReadonlySet<string> {
  return new Set(name.toLowerCase().match(/[\p{L}\d]+/gu) ?? []);
}
