/** What can be asked of a definition, and sets of it that answers are kept for. */
import type { RecordWord } from "../lowering/definition-record.ts";

/** What a thing says under a word, the names that it gives to what can be measured of it, or which lines could not be read. */
export type Aspect = RecordWord | "characteristics" | "unread";

/** Some aspects that something follows from. One is made for each use, when its module is loaded. */
export class AspectSet {
  /** All that were made. */
  private static readonly made: AspectSet[] = [];
  readonly aspects: readonly Aspect[];

  constructor(...aspects: readonly Aspect[]) {
    this.aspects = aspects;
    AspectSet.made.push(this);
  }

  /** The sets that have one of some aspects. */
  static with(aspects: ReadonlySet<Aspect>): readonly AspectSet[] {
    return AspectSet.made.filter((set) => set.hasAnyOf(aspects));
  }

  hasAnyOf(aspects: ReadonlySet<Aspect>): boolean {
    return this.aspects.some((aspect) => aspects.has(aspect));
  }
}

const numbers = new Map<Aspect, number>();

/** More numbers than there are aspects that anyone asks for while a diary is being read. */
export const MOST_NUMBERS = 64;

/** The number of an aspect, below `MOST_NUMBERS`: those that come after all have been given share the last one. */
export function numberOf(aspect: Aspect): number {
  const known = numbers.get(aspect);
  if (known !== undefined) return known;
  const number = Math.min(numbers.size, MOST_NUMBERS - 1);
  numbers.set(aspect, number);
  return number;
}
