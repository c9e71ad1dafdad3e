/** Growth by heat and press fits: how much, how hot, how tight. */

import type { Material } from "./materials.ts";
import type { Computed, Faulty } from "./result.ts";

/** Growth of a length with temperature, m; `rise` in kelvin, negative when it cools. */
export function thermalGrowth(size: number, material: Material, rise: number): number | Faulty {
  return material.expansion === undefined
    ? noFigure(material, "coefficient of expansion")
    : size * material.expansion * rise;
}

/** Workshop temperature from which things are heated, K (ISO 1). */
const referenceTemperature = 293.15;

/** Temperature in K at which a bore has grown by the interference and the clearance wanted for slipping on. */
export function heatToFit(
  interference: number,
  size: number,
  material: Material,
  clearance: number,
): number | Faulty {
  const perKelvin = thermalGrowth(size, material, 1);
  return typeof perKelvin === "number"
    ? referenceTemperature + (interference + clearance) / perKelvin
    : perKelvin;
}

/** A ring or hub pressed on a shaft or tube; lengths in m, `inner` is the bore of the inner part, 0 when solid. */
export interface PressFit {
  /** Shaft less bore, on diameter. */
  readonly interference: number;
  readonly size: number;
  readonly outer: number;
  readonly inner: number;
  readonly hub: Material;
  readonly shaft: Material;
}

/** Pressure between two thick cylinders by Lamé's equations, Pa. */
export function interferencePressure(fit: PressFit): number | Faulty {
  const { interference, size, outer, inner } = fit;
  const hub = elasticity(fit.hub);
  const shaft = elasticity(fit.shaft);
  if ("fault" in hub) return hub;
  if ("fault" in shaft) return shaft;
  const hubRatio = (outer ** 2 + size ** 2) / (outer ** 2 - size ** 2);
  const shaftRatio = (size ** 2 + inner ** 2) / (size ** 2 - inner ** 2);
  const compliance =
    (hubRatio + hub.poissonRatio) / hub.modulus + (shaftRatio - shaft.poissonRatio) / shaft.modulus;
  return interference / (size * compliance);
}

/** Force along the axis that slips the fit, N. */
export function pressForce(pressure: number, size: number, length: number, friction: number): number {
  return Math.PI * size * length * pressure * friction;
}

/** Bearings lose their hardness, and sealed ones their grease, above this. */
const bearingHeatLimit = referenceTemperature + 100;

/** What has to be said beside a temperature that something is heated to. */
export function heatingNotes(
  size: number,
  material: Material,
  temperature: Computed<number>,
): readonly string[] {
  const perKelvin = thermalGrowth(size, material, 1);
  const wider = typeof perKelvin === "number" ? temperature.value + 5e-5 / perKelvin : temperature.value;
  const celsius = (kelvin: number) => (kelvin - 273.15).toFixed(0);
  return [
    `from 20 °C; with 0.05 mm more to slip it on: ${celsius(wider)} °C`,
    "bearings to 120 °C at most, sealed ones less, no naked flame; never heat magnesium or composite",
    ...(wider > bearingHeatLimit ? ["this is above what a bearing may see"] : []),
  ];
}

function elasticity(material: Material): { modulus: number; poissonRatio: number } | Faulty {
  const { modulus, poissonRatio } = material;
  if (modulus === undefined || poissonRatio === undefined) return noFigure(material, "modulus of elasticity");
  return { modulus, poissonRatio };
}

function noFigure(material: Material, what: string): Faulty {
  return {
    fault: { kind: "not-in-table", wanted: `${what} of ${material.name}`, table: material.source, known: [] },
  };
}
