/** Texts that read as a unit, but hardly as the one that was meant. */
export interface UnitAdvice {
  /** Units that were probably meant, the likeliest first. */
  readonly nearest: readonly string[];
  /** The likely trap in a sentence, where one is known. */
  readonly reason?: string;
  /** Whether the first of `nearest` can be put in without asking. */
  readonly sure: boolean;
}

/** Texts that could be read as a unit but are surely a slip: a mass where a force is meant. Undefined for all others. */
export function explainUnlikelyUnit(text: string): UnitAdvice | undefined {
  return UNLIKELY.get(text);
}

export function likely(reason: string, nearest: string, ...others: string[]): UnitAdvice {
  return { nearest: [nearest, ...others], reason, sure: others.length === 0 };
}

export const POUND_IS_MASS = "lb is a mass; a torque needs the force lbf";
export const KILOGRAM_IS_MASS = "kg is a mass; a torque needs the force kgf";
export const OUNCE_IS_MASS = "oz is a mass; a torque needs the force ozf";
const PER = "a torque is a force times a length, not one per the other";

const UNLIKELY = new Map<string, UnitAdvice>([
  ["lb.ft", likely(POUND_IS_MASS, "lbf.ft")],
  ["ft.lb", likely(POUND_IS_MASS, "ft.lbf")],
  ["lb.in", likely(POUND_IS_MASS, "lbf.in")],
  ["in.lb", likely(POUND_IS_MASS, "in.lbf")],
  ["oz.in", likely(OUNCE_IS_MASS, "ozf.in")],
  ["in.oz", likely(OUNCE_IS_MASS, "ozf.in")],
  ["kg.m", likely(KILOGRAM_IS_MASS, "kgf.m")],
  ["m.kg", likely(KILOGRAM_IS_MASS, "kgf.m")],
  ["kg.cm", likely(KILOGRAM_IS_MASS, "kgf.cm")],
  ["cm.kg", likely(KILOGRAM_IS_MASS, "kgf.cm")],
  ["ft/lb", likely(PER, "lbf.ft")],
  ["ft/lbf", likely(PER, "lbf.ft")],
  ["in/lb", likely(PER, "lbf.in")],
  ["in/lbf", likely(PER, "lbf.in")],
]);
