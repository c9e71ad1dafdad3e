/** Friction of a tightened joint: a nut factor, or one of the words that stand for one. */

import { frictionRows } from "./tables/friction.ts";

/** Nut factors at both ends of what is published; equal where one figure is. */
export interface Friction {
  readonly kind: "friction";
  readonly low: number;
  readonly high: number;
  readonly word?: string;
  readonly source?: string;
}

export type FrictionReading =
  | Friction
  /** The word is one, but it has no figure of its own. */
  | { readonly kind: "no figure"; readonly word: string; readonly source: string };

/** The friction that a word stands for; undefined when it is no such word. */
export function readFriction(word: string): FrictionReading | undefined {
  const row = frictionRows.find((candidate) => candidate.word === word);
  if (row === undefined) return undefined;
  const { low, high, source } = row;
  if (low === undefined || high === undefined) return { kind: "no figure", word, source };
  return { kind: "friction", low, high, word, source };
}

/** Every friction word, in the order of the table. */
export const frictionWords: readonly string[] = frictionRows.map((row) => row.word);

/** The figure to compute with where one is wanted: the middle of what is published. */
export function nominalNutFactor(friction: Friction): number {
  return (friction.low + friction.high) / 2;
}

/** How a friction is printed beside a result: `dry: nut factor 0.20 to 0.25 (after …)`. */
export function describeFriction({ low, high, word, source }: Friction): string {
  const figures =
    low === high ? `nut factor ${low.toFixed(2)}` : `nut factor ${low.toFixed(2)} to ${high.toFixed(2)}`;
  if (word === undefined) return figures;
  return `${word}: ${figures}${source === undefined ? "" : ` (${source})`}`;
}
