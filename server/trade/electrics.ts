/** Electrics: wires, voltage drop and fuses. */

import type { WireRow } from "./tables/wires.ts";
import { fuseRatings, wireRows } from "./tables/wires.ts";

/** Resistivity of annealed copper at 20 °C, Ω·m (IEC 60028). */
export const copperResistivity = 0.017241e-6;

/** Its rise per kelvin at 20 °C (IEC 60028). */
export const copperTemperatureCoefficient = 0.00393;

export const SQUARE_MILLIMETRE = 1e-6;
const referenceTemperature = 293.15;

/** Diameter of an American wire gauge, m (ASTM B258); 0, 00, 000 and 0000 are 0, −1, −2 and −3. */
export function wireDiameter(gauge: number): number {
  return 0.000127 * 92 ** ((36 - gauge) / 39);
}

/** The gauge of `AWG 14`, `14 AWG`, `AWG 00` or `AWG 2/0`; undefined when it is none. */
export function readWireGauge(text: string): number | undefined {
  const match = /^(?:AWG ?(\S+)|(\S+) ?AWG)$/.exec(text.trim());
  const name = match?.[1] ?? match?.[2] ?? "";
  const zeros = /^([1-4])\/0$/.exec(name)?.[1] ?? (/^0{2,4}$/.test(name) ? `${name.length}` : undefined);
  if (zeros !== undefined) return 1 - Number(zeros);
  return /^(?:\d|[1-3]\d|40)$/.test(name) ? Number(name) : undefined;
}

/** Every American wire gauge, 4/0 to 40. */
export function americanWireGauges(): readonly { readonly name: string; readonly diameter: number }[] {
  return Array.from({ length: 44 }, (_, place) => {
    const gauge = place - 3;
    return { name: gauge < 0 ? `AWG ${1 - gauge}/0` : `AWG ${gauge}`, diameter: wireDiameter(gauge) };
  });
}

/** Area of a round wire, m². */
export function wireArea(gauge: number): number {
  return (Math.PI / 4) * wireDiameter(gauge) ** 2;
}

/** Resistance of one copper conductor, Ω; length in m, area in m², temperature in K. */
export function wireResistance(area: number, length: number, temperature = referenceTemperature): number {
  const warmed = 1 + copperTemperatureCoefficient * (temperature - referenceTemperature);
  return ((copperResistivity * length) / area) * warmed;
}

/** Voltage lost on the way there and, unless the frame leads back, the way back; `length` is one way. */
export function voltageDrop(
  load: number,
  area: number,
  length: number,
  back: "wire" | "frame" = "wire",
): number {
  return load * wireResistance(area, back === "wire" ? 2 * length : length);
}

/** Current in A that a wire is trusted with: of the largest listed size that is not larger; undefined below all. */
export function wireCurrent(area: number): number | undefined {
  // A hair below a listed size is rounding.
  return wireRows.findLast((row) => row.area * SQUARE_MILLIMETRE <= area * (1 + 1e-9))?.current;
}

/** Largest resistance per metre that IEC 60228 allows plain copper at 20 °C, Ω/m; undefined where it lists none. */
export function largestResistance(area: number, conductor: "solid" | "flexible"): number | undefined {
  const perKilometre = wireRows.find((row) => row.area === Number((area / SQUARE_MILLIMETRE).toFixed(6)))?.[
    conductor
  ];
  return perKilometre === undefined ? undefined : perKilometre / 1000;
}

/** The next fuse there is for a current, A; undefined above the largest. */
export function nextFuse(current: number): number | undefined {
  return fuseRatings.find((rating) => rating >= current * (1 - 1e-9));
}

export interface WireChoice {
  /** Area that keeps to the drop, m². */
  readonly neededForDrop: number;
  /** The listed size to use, with the current it bears. */
  readonly row: WireRow;
}

/** The smallest listed wire that keeps to the drop (in V) and bears the load; undefined when none does. */
export function wireFor(load: number, length: number, drop: number): WireChoice | undefined {
  const neededForDrop = (2 * copperResistivity * length * load) / drop;
  const row = wireRows.find(
    (candidate) =>
      candidate.area * SQUARE_MILLIMETRE >= neededForDrop * (1 - 1e-9) && candidate.current >= load,
  );
  return row === undefined ? undefined : { neededForDrop, row };
}
