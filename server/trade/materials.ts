/** Materials: what growth, press fits and thread engagement need to know of them. */

import type { MaterialRow } from "./tables/materials.ts";
import { materialRows } from "./tables/materials.ts";

export interface Material {
  readonly kind: "material";
  readonly name: string;
  /** Young's modulus in Pa; absent where one figure would mislead. */
  readonly modulus?: number;
  readonly poissonRatio?: number;
  /** Coefficient of linear expansion per kelvin, about 20 to 100 °C. */
  readonly expansion?: number;
  /** kg/m³ */
  readonly density?: number;
  readonly source: string;
}

const materials: ReadonlyMap<string, Material> = new Map(
  materialRows.map((row) => [row.name, materialOf(row)]),
);

function materialOf({ name, modulus, poissonRatio, expansion, density, source }: MaterialRow): Material {
  return {
    kind: "material",
    name,
    source,
    ...(modulus === undefined ? {} : { modulus: modulus * 1e9 }),
    ...(poissonRatio === undefined ? {} : { poissonRatio }),
    ...(expansion === undefined ? {} : { expansion: expansion * 1e-6 }),
    ...(density === undefined ? {} : { density }),
  };
}

/** The material of a word, as in `aluminium`; undefined when there is none. */
export function readMaterial(word: string): Material | undefined {
  return materials.get(word);
}

/** Every material word, in the order of the table. */
export const materialNames: readonly string[] = [...materials.keys()];
