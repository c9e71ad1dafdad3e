/** Strength classes of bolts and nuts: their names, and what they promise at a diameter. */

import type { Faulty } from "./result.ts";
import type { StrengthClassRow } from "./tables/strength-classes.ts";
import { nutProofStresses, strengthClassRows } from "./tables/strength-classes.ts";

export interface StrengthClass {
  readonly kind: "class";
  readonly system: StrengthClassRow["system"] | "unknown";
  /** `8.8`, `A2-70`, `5` (of a grade), `T` or `unknown`. */
  readonly name: string;
  /** As it is written: `class 8.8`, `grade 5`, `class unknown`. */
  readonly text: string;
}

/** Minimum strengths at one diameter, Pa. */
export interface Strengths {
  readonly proof: number;
  readonly yield: number;
  readonly tensile: number;
  readonly remark?: string;
}

export interface NutClass {
  readonly kind: "nut class";
  readonly name: string;
  readonly text: string;
}

const MEGAPASCAL = 1e6;

export const unknownClass: StrengthClass = {
  kind: "class",
  system: "unknown",
  name: "unknown",
  text: "class unknown",
};

const classes: ReadonlyMap<string, StrengthClass> = new Map(
  strengthClassRows.map(({ system, name }) => {
    const text = `${system === "SAE J429" ? "grade" : "class"} ${name}`;
    return [text, { kind: "class", system, name, text }];
  }),
);

/** The class of a bolt as it is written: `class 8.8`, `grade 5`, `class T`, `class unknown`. */
export function readClass(text: string): StrengthClass | undefined {
  const tidy = text.trim().replace(/\s+/g, " ");
  return tidy === unknownClass.text ? unknownClass : classes.get(tidy);
}

/** Every way to write a class, in the order of the table. */
export const classTexts: readonly string[] = [...classes.keys(), unknownClass.text];

/** The class of a nut as it is written: `class 8`, `class 04`. */
export function readNutClass(text: string): NutClass | undefined {
  const name = /^class (\d\d?)$/.exec(text.trim().replace(/\s+/g, " "))?.[1];
  if (name === undefined || !Object.hasOwn(nutProofStresses, name)) return undefined;
  return { kind: "nut class", name, text: `class ${name}` };
}

export const nutClassTexts: readonly string[] = Object.keys(nutProofStresses)
  .sort((a, b) => Number(a) - Number(b) || b.length - a.length)
  .map((name) => `class ${name}`);

/** Minimum strengths of a class at a nominal diameter in m. */
export function strengthsOf(cls: StrengthClass, diameter: number): Strengths | Faulty {
  if (cls.system === "unknown") return { fault: { kind: "class-unknown", parameter: "class" } };
  const row = strengthClassRows.find(
    (candidate) => candidate.system === cls.system && candidate.name === cls.name,
  );
  // A hair above the limit is rounding: 3/4 in is 19.05 mm.
  const found = row?.strengths.find(({ upTo }) => upTo === undefined || diameter * 1000 <= upTo + 1e-6);
  if (row === undefined || found === undefined) {
    const upTo = row?.strengths.at(-1)?.upTo;
    return {
      fault: {
        kind: "not-in-table",
        wanted: `${cls.text} at ${(diameter * 1000).toFixed(1)} mm`,
        table: cls.system,
        known: upTo === undefined ? [] : [`${cls.text} up to ${upTo.toFixed(1)} mm`],
      },
    };
  }
  return {
    proof: found.proof * MEGAPASCAL,
    yield: found.yield * MEGAPASCAL,
    tensile: found.tensile * MEGAPASCAL,
    ...(row.remark === undefined ? {} : { remark: row.remark }),
  };
}

/** Stress under proof load of a nut of style 1 with coarse thread, Pa; diameter in m. */
export function nutProofStress(cls: NutClass, diameter: number): number | undefined {
  const stress = nutProofStresses[cls.name]?.find(([upTo]) => diameter * 1000 <= upTo + 1e-6)?.[1];
  return stress === undefined ? undefined : stress * MEGAPASCAL;
}

/**
 * Whether a nut bears the bolt it goes with: its class is at least the first figure of the bolt's (ISO 898-2);
 * thin nuts (04, 05) never do. Undefined where the systems cannot be compared.
 */
export function nutBears(nut: NutClass, bolt: StrengthClass): boolean | undefined {
  if (bolt.system !== "ISO 898-1") return undefined;
  if (nut.name.startsWith("0")) return false;
  return Number(nut.name) >= Math.floor(Number(bolt.name));
}
