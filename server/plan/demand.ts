/** How many of a part are needed, from everything that asks for it. */

/** What makes a part needed. */
export type AskerKind =
  /** Decided to renew or make. */
  | "decision"
  /** The kit of a part decided to recondition. */
  | "kit"
  /** Hardware spent by a joint that is open or loosened. */
  | "joint"
  /** Never refitted, and off. */
  | "single_use"
  /** A job that is not done. */
  | "job"
  /** A life that ends before the next planned hold point. */
  | "life";

/** One that asks: how many, and why. `W` is whatever leads to the lines of the log. */
export interface Asker<W> {
  readonly kind: AskerKind;
  readonly count: number;
  readonly why: W;
}

export interface KindDemand<W> {
  readonly kind: AskerKind;
  readonly count: number;
  readonly askers: readonly Asker<W>[];
}

export interface Demand<W> {
  readonly needed: number;
  /** What each kind asks for, the largest first; equal ones in the order in which they first asked. */
  readonly kinds: readonly KindDemand<W>[];
}

/**
 * Askers of one kind add. Between kinds the larger counts: a bolt that is decided to be renewed and that its joint spends
 * is one bolt.
 */
export function combineDemand<W>(askers: readonly Asker<W>[]): Demand<W> {
  const byKind = new Map<AskerKind, Asker<W>[]>();
  for (const asker of askers) {
    if (asker.count <= 0) continue;
    const alike = byKind.get(asker.kind);
    if (alike === undefined) byKind.set(asker.kind, [asker]);
    else alike.push(asker);
  }
  const kinds = [...byKind].map(([kind, ones]) => ({
    kind,
    count: ones.reduce((sum, { count }) => sum + count, 0),
    askers: ones,
  }));
  kinds.sort((a, b) => b.count - a.count);
  return { needed: kinds[0]?.count ?? 0, kinds };
}

export interface Supply {
  readonly needed: number;
  /** The level to keep on the shelf. */
  readonly keep: number;
  readonly inHand: number;
  readonly onOrder: number;
}

/** What is still to be ordered, before packs: needed and kept, less what is in hand and on order. */
export function countToOrder({ needed, keep, inHand, onOrder }: Supply): number {
  return Math.max(0, needed + keep - inHand - onOrder);
}
