/**
 * What an order comes to. Each line is closed to the minor unit of its currency, as on an invoice, and so are carriage
 * and the tax of each currency: the figures that are printed add up.
 */
import type { Decimal } from "../quantities/decimal.ts";
import { ZERO } from "../quantities/decimal.ts";
import type { Currency, ExchangeRate, Money } from "../quantities/money.ts";
import { convertMoney, noMoney, percentOfMoney, roundMoney } from "../quantities/money.ts";
import type { Purchase } from "./packs.ts";

export interface OrderedLine {
  /** Undefined where nobody is named. */
  readonly supplier: string | undefined;
  readonly purchase: Purchase;
}

export interface SupplierTerms {
  readonly name: string;
  readonly carriage: Money | undefined;
  /** The least that goods may come to, without tax and carriage. */
  readonly minimum: Money | undefined;
}

export interface OrderTerms {
  readonly suppliers: readonly SupplierTerms[];
  /** Added to goods and carriage alike (common practice). */
  readonly taxPercent: Decimal;
  /** Of the build. */
  readonly currency: Currency | undefined;
  readonly rates: readonly ExchangeRate[];
}

export type MinimumOrder =
  | { readonly kind: "met"; readonly minimum: Money }
  | { readonly kind: "short"; readonly minimum: Money; readonly by: Money }
  /** A line has no price, or there is no rate to the currency of the minimum. */
  | { readonly kind: "unknown"; readonly minimum: Money; readonly why: "no-price" | "no-rate" };

export interface SupplierOrder<L extends OrderedLine> {
  readonly supplier: string | undefined;
  readonly lines: readonly L[];
  /** Without tax, one a currency. */
  readonly goods: readonly Money[];
  /** Once for the whole order, in the currency it is stated in. */
  readonly carriage: Money | undefined;
  readonly minimum: MinimumOrder | undefined;
  /** How many lines have no price: the goods come to more. */
  readonly unpriced: number;
}

export interface OrderTotal {
  readonly goods: Money;
  readonly carriage: Money;
  readonly tax: Money;
  /** Goods, carriage and tax. */
  readonly amount: Money;
}

export type OwnTotal =
  | { readonly kind: "total"; readonly total: OrderTotal }
  | { readonly kind: "no-rate"; readonly from: readonly Currency[] };

export interface OrderSum<L extends OrderedLine> {
  /** In the order in which the lines first name them. */
  readonly suppliers: readonly SupplierOrder<L>[];
  /** One a currency, that of the build first and the others by their codes. */
  readonly totals: readonly OrderTotal[];
  /** Everything in the currency of the build; undefined where it has none. */
  readonly own: OwnTotal | undefined;
  readonly unpriced: number;
}

/** Adds up an order, supplier by supplier and currency by currency. */
export function sumOrder<L extends OrderedLine>(lines: readonly L[], terms: OrderTerms): OrderSum<L> {
  const suppliers = bySupplier(lines).map(([name, ones]) => supplierOrder(name, ones, terms));
  const goods = amounts(suppliers.flatMap((order) => order.goods));
  const carriage = amounts(suppliers.flatMap((order) => order.carriage ?? []));
  const totals = inOrder(new Set([...goods.keys(), ...carriage.keys()]), terms.currency).map((currency) =>
    total(
      { amount: goods.get(currency) ?? ZERO, currency },
      { amount: carriage.get(currency) ?? ZERO, currency },
      terms,
    ),
  );
  const unpriced = suppliers.reduce((sum, order) => sum + order.unpriced, 0);
  return { suppliers, totals, own: ownTotal(totals, terms), unpriced };
}

/** A line's total as it is printed and added up; undefined without a price. */
export function lineTotal({ purchase }: OrderedLine): Money | undefined {
  return purchase.total === undefined ? undefined : roundMoney(purchase.total);
}

function bySupplier<L extends OrderedLine>(
  lines: readonly L[],
): readonly [string | undefined, readonly L[]][] {
  const groups = new Map<string | undefined, L[]>();
  for (const line of lines) {
    const group = groups.get(line.supplier);
    if (group === undefined) groups.set(line.supplier, [line]);
    else group.push(line);
  }
  return [...groups];
}

function supplierOrder<L extends OrderedLine>(
  supplier: string | undefined,
  lines: readonly L[],
  { suppliers, currency, rates }: OrderTerms,
): SupplierOrder<L> {
  const terms = suppliers.find(({ name }) => name === supplier);
  const sums = amounts(lines.flatMap((line) => lineTotal(line) ?? []));
  const goods = inOrder(sums.keys(), currency).map((one) => ({
    amount: sums.get(one) ?? ZERO,
    currency: one,
  }));
  const unpriced = lines.filter(({ purchase }) => purchase.total === undefined).length;
  return {
    supplier,
    lines,
    goods,
    carriage: terms?.carriage === undefined ? undefined : roundMoney(terms.carriage),
    minimum: terms?.minimum === undefined ? undefined : minimumOrder(goods, unpriced, terms.minimum, rates),
    unpriced,
  };
}

function minimumOrder(
  goods: readonly Money[],
  unpriced: number,
  minimum: Money,
  rates: readonly ExchangeRate[],
): MinimumOrder {
  const sum = sumIn(minimum.currency, goods, rates);
  if (sum.kind === "no-rate") return { kind: "unknown", minimum, why: "no-rate" };
  const short = minimum.amount.minus(sum.money.amount);
  if (short.lessThanOrEqualTo(0)) return { kind: "met", minimum };
  if (unpriced > 0) return { kind: "unknown", minimum, why: "no-price" };
  return { kind: "short", minimum, by: { amount: short, currency: minimum.currency } };
}

function total(goods: Money, carriage: Money, { taxPercent }: OrderTerms): OrderTotal {
  const net = { amount: goods.amount.plus(carriage.amount), currency: goods.currency };
  return closed(goods, carriage, percentOfMoney(net, taxPercent));
}

function ownTotal(totals: readonly OrderTotal[], { currency, rates }: OrderTerms): OwnTotal | undefined {
  if (currency === undefined) return undefined;
  const sums = (["goods", "carriage", "tax"] as const).map((part) =>
    sumIn(
      currency,
      totals.map((one) => one[part]),
      rates,
    ),
  );
  const [goods, carriage, tax] = sums.flatMap((sum) => (sum.kind === "sum" ? sum.money : []));
  if (goods === undefined || carriage === undefined || tax === undefined) {
    return { kind: "no-rate", from: sums[0]?.kind === "no-rate" ? sums[0].from : [] };
  }
  return { kind: "total", total: closed(goods, carriage, tax) };
}

/** Rounds each part to the minor unit and adds them as they are printed. */
function closed(goods: Money, carriage: Money, tax: Money): OrderTotal {
  const parts = { goods: roundMoney(goods), carriage: roundMoney(carriage), tax: roundMoney(tax) };
  const amount = parts.goods.amount.plus(parts.carriage.amount).plus(parts.tax.amount);
  return { ...parts, amount: { amount, currency: goods.currency } };
}

type Sum =
  | { readonly kind: "sum"; readonly money: Money }
  | { readonly kind: "no-rate"; readonly from: readonly Currency[] };

/** The sum in one currency, unrounded, or the currencies that no rate leads from. */
function sumIn(currency: Currency, ones: readonly Money[], rates: readonly ExchangeRate[]): Sum {
  let sum = noMoney(currency);
  const from = new Set<Currency>();
  for (const one of ones) {
    const converted = convertMoney(one, currency, rates);
    if ("fault" in converted) from.add(one.currency);
    else sum = { amount: sum.amount.plus(converted.amount), currency };
  }
  return from.size > 0 ? { kind: "no-rate", from: [...from] } : { kind: "sum", money: sum };
}

function amounts(ones: readonly Money[]): ReadonlyMap<Currency, Decimal> {
  const sums = new Map<Currency, Decimal>();
  for (const { amount, currency } of ones) sums.set(currency, (sums.get(currency) ?? ZERO).plus(amount));
  return sums;
}

function inOrder(currencies: Iterable<Currency>, first: Currency | undefined): readonly Currency[] {
  return [...currencies].sort((a, b) => {
    if (a === b) return 0;
    if (a === first) return -1;
    if (b === first) return 1;
    return a < b ? -1 : 1;
  });
}
