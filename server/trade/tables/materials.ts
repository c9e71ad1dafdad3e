/**
 * Properties of materials at room temperature: typical figures, not minima. Alloys of one name differ by a few
 * per cent in modulus and by up to a tenth in expansion.
 *
 * Sources: expansion of aluminium and bronze as used in U. C. Jindal, Machine Design (2010); the others are usual
 * handbook figures from memory (Machinery's Handbook, Marks). Moduli, Poisson's ratios and densities are usual
 * handbook figures from memory.
 */

export interface MaterialRow {
  readonly name: string;
  /** GPa */
  readonly modulus?: number;
  readonly poissonRatio?: number;
  /** 1e-6 per kelvin */
  readonly expansion?: number;
  /** kg/m³ */
  readonly density?: number;
  readonly source: string;
}

const handbook = "usual handbook figures, from memory";
const worked =
  "expansion: U. C. Jindal, Machine Design (2010); the rest: usual handbook figures, from memory";
const varies = "differs too much from one sort to another for one figure";

export const materialRows: readonly MaterialRow[] = [
  { name: "steel", modulus: 206, poissonRatio: 0.29, expansion: 11.7, density: 7850, source: handbook },
  { name: "stainless", modulus: 193, poissonRatio: 0.3, expansion: 17, density: 7930, source: handbook },
  { name: "cast_iron", modulus: 110, poissonRatio: 0.26, expansion: 10.5, density: 7200, source: handbook },
  { name: "aluminium", modulus: 70, poissonRatio: 0.33, expansion: 23, density: 2700, source: worked },
  { name: "magnesium", modulus: 45, poissonRatio: 0.35, expansion: 26, density: 1800, source: handbook },
  { name: "titanium", modulus: 114, poissonRatio: 0.34, expansion: 8.6, density: 4430, source: handbook },
  { name: "brass", modulus: 103, poissonRatio: 0.34, expansion: 19, density: 8500, source: handbook },
  { name: "bronze", modulus: 110, poissonRatio: 0.34, expansion: 18, density: 8800, source: worked },
  { name: "copper", modulus: 120, poissonRatio: 0.34, expansion: 16.6, density: 8940, source: handbook },
  { name: "copper_nickel", modulus: 135, poissonRatio: 0.34, expansion: 17, density: 8900, source: handbook },
  { name: "glass", modulus: 70, poissonRatio: 0.22, expansion: 9, density: 2500, source: handbook },
  { name: "composite", source: varies },
  { name: "rubber", source: varies },
  { name: "plastic", source: varies },
  { name: "timber", source: varies },
  { name: "leather", source: varies },
];
