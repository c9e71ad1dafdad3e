/** What to say about a text that is no unit. */
import type { UnitAdvice } from "./unlikely-unit.ts";
import { KILOGRAM_IS_MASS, likely, OUNCE_IS_MASS, POUND_IS_MASS } from "./unlikely-unit.ts";

/**
 * Advice for a text that does not read as a unit: a known trap first, then a unit that differs only in case, spaces or
 * joints, then the nearest spellings. `customary` units are preferred to those that are merely `possible`.
 */
export function explainUnknownUnit(
  text: string,
  customary: readonly string[],
  possible: readonly string[],
): UnitAdvice {
  const trap = TRAPS.get(text) ?? TRAPS.get(text.toLowerCase()) ?? WORDS.get(bare(text));
  if (trap !== undefined) return trap;
  return (
    explainSpelling(text, customary) ?? explainSpelling(text, possible) ?? nearestSpellings(text, possible)
  );
}

function explainSpelling(text: string, units: readonly string[]): UnitAdvice | undefined {
  const same = units.filter((unit) => bare(unit) === bare(text));
  const [first] = same;
  if (first === undefined) return undefined;
  const onlyCase = same.every((unit) => unit.toLowerCase() === text.toLowerCase());
  const reason = onlyCase ? `case matters in units: ${same.join(" or ")}` : `written ${first}`;
  return { nearest: same, reason, sure: same.length === 1 };
}

function nearestSpellings(text: string, units: readonly string[]): UnitAdvice {
  const near = units
    .map((unit) => ({ unit, distance: editDistance(unit.toLowerCase(), text.toLowerCase()) }))
    .filter(({ unit, distance }) => distance <= (Math.min(unit.length, text.length) > 3 ? 2 : 1))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 4);
  return { nearest: near.map(({ unit }) => unit), sure: false };
}

/** Symbols of something else, or of nothing, by the text as written or in small letters. */
const TRAPS = new Map<string, UnitAdvice>([
  ["nm", likely("nm is nanometre; a torque needs N.m", "N.m")],
  ["nM", likely("case matters in units: a torque is in N.m", "N.m")],
  ["NM", likely("case matters in units: a torque is in N.m", "N.m")],
  ["n.m", likely("case matters in units: a torque is in N.m", "N.m")],
  ["c", likely("C is the coulomb; a temperature needs degC", "degC")],
  ["f", likely("F is the farad; a temperature needs degF", "degF")],
  ["k", likely("case matters in units: the kelvin is K", "K")],
  ["r", likely("written ohm", "ohm")],
  ['"', likely('a tight " is no unit: inches are in, seconds of arc arcsec', "in", "arcsec")],
  ["''", likely("two strokes are no unit: inches are in, seconds of arc arcsec", "in", "arcsec")],
  ["″", likely("a double stroke is no unit: inches are in, seconds of arc arcsec", "in", "arcsec")],
  ["t", { nearest: ["kg"], reason: "the tonne is no unit here: write 1000 kg", sure: false }],
  ["km/hr", likely("written km/h", "km/h")],
  ["mi/h", likely("written mph", "mph")],
  ["rev/min", likely("written rpm", "rpm")],
  ["r/min", likely("written rpm", "rpm")],
]);

interface Spelling {
  readonly unit: string;
  readonly words: string;
  readonly reason?: string;
  readonly or?: string;
}

/** Plain words, plurals and run-together spellings, without case, spaces and joints. */
const SPELLINGS: readonly Spelling[] = [
  { unit: "in", words: "inch inches ins" },
  { unit: "ft", words: "foot feet fts" },
  { unit: "yd", words: "yard yards yds" },
  { unit: "mile", words: "miles mi" },
  { unit: "thou", words: "thous thousandth thousandths th" },
  { unit: "mil", words: "mils" },
  { unit: "mm", words: "mms millimetre millimetres millimeter millimeters" },
  { unit: "cm", words: "cms centimetre centimetres centimeter centimeters" },
  { unit: "m", words: "metre metres meter meters" },
  { unit: "km", words: "kms kilometre kilometres kilometer kilometers" },
  { unit: "µm", words: "micron microns micrometre micrometres micrometer micrometers" },
  { unit: "kg", words: "kgs kilo kilos kilogram kilograms" },
  { unit: "g", words: "gram grams gramme grammes gm gms" },
  { unit: "lb", words: "lbs pound pounds", or: "lbf", reason: "lb is a mass, lbf a force" },
  { unit: "oz", words: "ozs ounce ounces", or: "ozf", reason: "oz is a mass, ozf a force" },
  { unit: "lbf.ft", words: "lbfft lbffeet" },
  { unit: "ft.lbf", words: "ftlbf" },
  { unit: "lbf.in", words: "lbfin" },
  { unit: "in.lbf", words: "inlbf" },
  { unit: "lbf.ft", words: "lbft lbsft poundfeet poundfoot", reason: POUND_IS_MASS },
  { unit: "ft.lbf", words: "ftlb ftlbs footpound footpounds", reason: POUND_IS_MASS },
  { unit: "lbf.in", words: "lbin lbsin poundinch", reason: POUND_IS_MASS },
  { unit: "in.lbf", words: "inlb inlbs inchpound inchpounds", reason: POUND_IS_MASS },
  { unit: "ozf.in", words: "ozin inoz", reason: OUNCE_IS_MASS },
  { unit: "kgf.m", words: "kgm mkg", reason: KILOGRAM_IS_MASS },
  { unit: "kgf.cm", words: "kgcm cmkg", reason: KILOGRAM_IS_MASS },
  { unit: "kgf", words: "kp kilopond", reason: "the kilopond is written kgf" },
  { unit: "kgf.m", words: "kpm mkp", reason: "the kilopond metre is written kgf.m" },
  { unit: "N.m", words: "nms newtonmetre newtonmetres newtonmeter newtonmeters" },
  { unit: "N", words: "newton newtons" },
  { unit: "psi", words: "psig" },
  { unit: "bar", words: "bars barg" },
  { unit: "deg", words: "degree degrees degs" },
  { unit: "arcmin", words: "arcmins arcminute arcminutes" },
  { unit: "arcsec", words: "arcsecs arcsecond arcseconds" },
  { unit: "degC", words: "celsius centigrade degreec degreesc degcelsius" },
  { unit: "degF", words: "fahrenheit degreef degreesf degfahrenheit" },
  { unit: "l", words: "ltr ltrs litre litres liter liters" },
  { unit: "cc", words: "ccs ccm" },
  { unit: "imp_gal", words: "gal gals gallon gallons", or: "us_gal", reason: "a gallon is imperial or US" },
  { unit: "imp_pt", words: "pt pts pint pints", or: "us_pt", reason: "a pint is imperial or US" },
  { unit: "imp_floz", words: "floz", or: "us_floz", reason: "a fluid ounce is imperial or US" },
  { unit: "in3", words: "cuin ci" },
  { unit: "in2", words: "sqin" },
  { unit: "mm2", words: "sqmm" },
  { unit: "h", words: "hr hrs" },
  { unit: "s", words: "sec secs" },
  { unit: "week", words: "wk wks" },
  { unit: "month", words: "mth mths mo" },
  { unit: "year", words: "yr yrs y" },
  { unit: "km/h", words: "kph kmh kmph" },
  { unit: "m/s", words: "mps" },
  { unit: "l/min", words: "lpm" },
  { unit: "rpm", words: "rev revs", or: "turn", reason: "a speed is in rpm, a count in turn" },
  { unit: "hp", words: "bhp", or: "PS", reason: "mechanical horsepower is hp, metric horsepower PS" },
  { unit: "PS", words: "cv", reason: "metric horsepower is written PS" },
  { unit: "kW.h", words: "kwh" },
  { unit: "W.h", words: "wh" },
  { unit: "A", words: "amp amps ampere amperes" },
  { unit: "V", words: "volt volts vdc" },
  { unit: "W", words: "watt watts" },
  { unit: "ohm", words: "ohms" },
  { unit: "%", words: "percent pct" },
  { unit: "turn", words: "turns" },
  { unit: "click", words: "clicks" },
  { unit: "flat", words: "flats" },
  { unit: "slot", words: "slots" },
  { unit: "run", words: "runs" },
  { unit: "link", words: "links" },
];

const WORDS = new Map<string, UnitAdvice>(
  SPELLINGS.flatMap(({ unit, words, reason = `written ${unit}`, or }) =>
    words.split(" ").map((word) => [word, likely(reason, unit, ...(or === undefined ? [] : [or]))]),
  ),
);

/** Without case, spaces and joints: what is left when somebody writes `ft-lbs` or `N m`. */
function bare(text: string): string {
  return text.toLowerCase().replace(/[\s.·*_-]/g, "");
}

/** Number of letters to insert, delete or exchange (Levenshtein). */
function editDistance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 2) return 3;
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const exchange = (previous[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1);
      current.push(Math.min(exchange, (previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1));
    }
    previous = current;
  }
  return previous[b.length] ?? 0;
}
