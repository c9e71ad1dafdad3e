/** Whole packs, and what they cost. */
import type { Money } from "../quantities/money.ts";
import { timesMoney } from "../quantities/money.ts";

/** How a part is sold. */
export interface Selling {
  /** The price of one. */
  readonly price: Money | undefined;
  readonly pack: { readonly size: number; readonly price: Money | undefined } | undefined;
}

export interface Purchase {
  /** Pieces: what is wanted, or more where packs are not opened. */
  readonly quantity: number;
  /** Undefined where it is sold singly. */
  readonly packs: { readonly count: number; readonly size: number } | undefined;
  /** Of one; of a pack with a price of its own, its share, which may not come out even. */
  readonly unitPrice: Money | undefined;
  /** Exact, without tax. A pack with a price of its own costs that, whatever one would. */
  readonly total: Money | undefined;
}

/** What to buy for so many pieces. A pack of less than one piece is none. */
export function purchase(wanted: number, { price, pack }: Selling): Purchase {
  if (pack === undefined || pack.size < 1) {
    const total = price === undefined ? undefined : timesMoney(price, wanted);
    return { quantity: wanted, packs: undefined, unitPrice: price, total };
  }
  const count = Math.ceil(wanted / pack.size);
  const quantity = count * pack.size;
  const packs = { count, size: pack.size };
  if (pack.price === undefined) {
    const total = price === undefined ? undefined : timesMoney(price, quantity);
    return { quantity, packs, unitPrice: price, total };
  }
  const { amount, currency } = pack.price;
  const unitPrice = { amount: amount.div(pack.size), currency };
  return { quantity, packs, unitPrice, total: timesMoney(pack.price, count) };
}
