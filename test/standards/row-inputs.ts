/** Reads the inputs of reference rows into SI units, with factors of its own so that no product code is trusted. */

const LBF = 4.4482216152605;
const INCH = 0.0254;

const factors: Readonly<Record<string, number>> = {
  "": 1,
  "1": 1,
  "%": 0.01,
  m: 1,
  cm: 0.01,
  mm: 1e-3,
  µm: 1e-6,
  km: 1e3,
  in: INCH,
  mil: INCH / 1000,
  ft: 12 * INCH,
  "mm²": 1e-6,
  "in²": INCH ** 2,
  "m³": 1,
  "cm³": 1e-6,
  "in³": INCH ** 3,
  L: 1e-3,
  N: 1,
  kN: 1e3,
  lbf: LBF,
  N·m: 1,
  lbf·in: LBF * INCH,
  lbf·ft: LBF * 12 * INCH,
  in·lbf: LBF * INCH,
  Pa: 1,
  MPa: 1e6,
  GPa: 1e9,
  kPa: 1e3,
  psi: LBF / INCH ** 2,
  kpsi: (1000 * LBF) / INCH ** 2,
  "N/mm": 1e3,
  "lbf/in": LBF / INCH,
  kW: 1e3,
  hp: 550 * LBF * 12 * INCH,
  deg: Math.PI / 180,
  degree: Math.PI / 180,
  rad: 1,
  "'": Math.PI / 180 / 60,
  rpm: 1 / 60,
  "m/s": 1,
  "ft/min": (12 * INCH) / 60,
  A: 1,
  V: 1,
  "Ω·mm²/m": 1e-6,
  "Ω/km": 1e-3,
  "/K": 1,
  "1/K": 1,
  "/°F": 1.8,
  K: 1,
  "°F": 1 / 1.8,
  kg: 1,
  coils: 1,
  links: 1,
  thread: 1,
  teeth: 1,
  "1/in": 1 / INCH,
};

/** The SI size of one of a unit; temperatures count as differences. */
export function unitSize(unit: string): number {
  const factor = factors[unit];
  if (factor === undefined) throw new Error(`no factor for the unit "${unit}"`);
  return factor;
}

/** `5 mm`, `-8 mm`, `30e6 psi`, `1/8 in` or a bare number, in SI units. */
export function quantity(text: string): number {
  const match = /^\s*([-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?)(?:\/(\d+))?\s*(.*?)\s*$/i.exec(text);
  if (match === null) throw new Error(`no quantity: "${text}"`);
  return (Number(match[1]) / Number(match[2] ?? 1)) * unitSize(match[3] ?? "");
}

/** The value of `name=…` in a row such as `G=84000 MPa; d=5 mm; N=15`. */
export function named(inputs: string, name: string): number {
  const found = parts(inputs).find((part) => part.startsWith(`${name}=`));
  if (found === undefined) throw new Error(`no "${name}" in "${inputs}"`);
  return quantity(found.slice(name.length + 1));
}

/** The quantity behind a label, as in `bore 68 mm`. */
export function labelled(inputs: string, label: string): number {
  const found = new RegExp(`(?:^|[;,(] ?)${label} ?([-+]?[\\d.][^;,)]*)`).exec(inputs)?.[1];
  if (found === undefined) throw new Error(`no "${label}" in "${inputs}"`);
  return quantity(found);
}

/** Parts of a row between semicolons. */
export function parts(inputs: string): readonly string[] {
  return inputs.split(";").map((part) => part.trim());
}

/** Every number in a text, without units. */
export function numbers(text: string): readonly number[] {
  return (text.match(/[-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?/gi) ?? []).map(Number);
}
