/** Orders added up by hand, line by line. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { OrderTerms, OrderTotal } from "../../server/plan/order-arithmetic.ts";
import { lineTotal, sumOrder } from "../../server/plan/order-arithmetic.ts";
import type { Selling } from "../../server/plan/packs.ts";
import { purchase } from "../../server/plan/packs.ts";
import { decimal, formatDecimal, ZERO } from "../../server/quantities/decimal.ts";
import type { Currency, Money } from "../../server/quantities/money.ts";
import { formatMoney, money } from "../../server/quantities/money.ts";

const GBP = "GBP" as Currency;
const EUR = "EUR" as Currency;

/** `8.50 GBP` */
function cash(text: string): Money {
  const [amount = "", code = ""] = text.split(" ");
  const read = money(amount, code);
  if ("fault" in read) throw new Error(`no money: ${text}`);
  return read;
}

function sold(price: string | undefined, pack?: { size: number; price?: string }): Selling {
  const paid = (text: string | undefined) => (text === undefined ? undefined : cash(text));
  return {
    price: paid(price),
    pack: pack === undefined ? undefined : { size: pack.size, price: paid(pack.price) },
  };
}

function line(
  supplier: string | undefined,
  wanted: number,
  price: string | undefined,
  pack?: { size: number; price?: string },
) {
  return { supplier, purchase: purchase(wanted, sold(price, pack)) };
}

function terms(changes: Partial<OrderTerms> = {}): OrderTerms {
  return { suppliers: [], taxPercent: decimal(20), currency: GBP, rates: [], ...changes };
}

function texts({ goods, carriage, tax, amount }: OrderTotal): string {
  return `${formatMoney(goods)} + ${formatMoney(carriage)} + ${formatMoney(tax)} = ${formatMoney(amount)}`;
}

describe("a purchase", () => {
  test("of single pieces is so many at the price of one", () => {
    const { quantity, packs, total } = purchase(3, sold("62.00 GBP"));
    expect([quantity, packs, total && formatMoney(total)]).toEqual([3, undefined, "186.00 GBP"]);
  });

  test("of packs at the price of one pays for whole packs", () => {
    // 11 in tens: two packs, 20 pieces at 0.35.
    const { quantity, packs, total } = purchase(11, sold("0.35 GBP", { size: 10 }));
    expect([quantity, packs, total && formatMoney(total)]).toEqual([20, { count: 2, size: 10 }, "7.00 GBP"]);
  });

  test("of packs with a price of their own pays that, whatever one costs", () => {
    const { quantity, unitPrice, total } = purchase(51, sold("0.10 GBP", { size: 50, price: "2.00 GBP" }));
    expect(quantity).toBe(100);
    expect(unitPrice && formatDecimal(unitPrice.amount)).toBe("0.04");
    expect(total && formatMoney(total)).toBe("4.00 GBP");
  });

  test("keeps the price of a pack that does not part evenly", () => {
    const { total } = purchase(3, sold(undefined, { size: 3, price: "1.00 GBP" }));
    expect(total && formatDecimal(total.amount)).toBe("1");
  });

  test("of exactly one pack is one pack, and of nothing none", () => {
    expect(purchase(10, sold("1 GBP", { size: 10 })).packs?.count).toBe(1);
    expect(purchase(0, sold("1 GBP", { size: 10 }))).toMatchObject({ quantity: 0, packs: { count: 0 } });
  });

  test("without a price has none", () => {
    expect(purchase(3, sold(undefined, { size: 2 }))).toEqual({
      quantity: 4,
      packs: { count: 2, size: 2 },
      unitPrice: undefined,
      total: undefined,
    });
  });
});

describe("an order", () => {
  const tatlow = { name: "tatlow", carriage: cash("8.50 GBP"), minimum: cash("25.00 GBP") };
  const sefton = { name: "sefton", carriage: cash("4.20 GBP"), minimum: cash("15.00 GBP") };

  test("comes to its lines, carriage once a supplier, and tax on both", () => {
    const lines = [
      line("tatlow", 2, "31.40 GBP"),
      line("sefton", 11, "0.35 GBP", { size: 10 }),
      line("tatlow", 1, "4.75 GBP"),
    ];
    const { suppliers, totals } = sumOrder(lines, terms({ suppliers: [tatlow, sefton] }));
    // tatlow 62.80 + 4.75 = 67.55; sefton 20 × 0.35 = 7.00.
    expect(suppliers.map(({ supplier, goods }) => [supplier, ...goods.map(formatMoney)])).toEqual([
      ["tatlow", "67.55 GBP"],
      ["sefton", "7.00 GBP"],
    ]);
    // Goods 74.55, carriage 8.50 + 4.20 = 12.70, tax 20 % of 87.25 = 17.45.
    expect(totals.map(texts)).toEqual(["74.55 GBP + 12.70 GBP + 17.45 GBP = 104.70 GBP"]);
  });

  test("says how much is short of a supplier's minimum, carriage not counted", () => {
    const lines = [line("sefton", 20, "0.35 GBP"), line("tatlow", 1, "25.00 GBP")];
    const { suppliers } = sumOrder(lines, terms({ suppliers: [tatlow, sefton] }));
    expect(suppliers.map(({ minimum }) => minimum)).toEqual([
      { kind: "short", minimum: sefton.minimum, by: cash("8.00 GBP") },
      { kind: "met", minimum: tatlow.minimum },
    ]);
  });

  test("cannot say so where a price or a rate is missing", () => {
    const priceless = sumOrder([line("sefton", 3, undefined)], terms({ suppliers: [sefton] }));
    expect(priceless.suppliers[0]?.minimum).toMatchObject({ kind: "unknown", why: "no-price" });
    const abroad = sumOrder([line("sefton", 3, "9 EUR")], terms({ suppliers: [sefton] }));
    expect(abroad.suppliers[0]?.minimum).toMatchObject({ kind: "unknown", why: "no-rate" });
  });

  test("counts lines without a price, whose carriage is still due", () => {
    const { unpriced, totals } = sumOrder([line("tatlow", 3, undefined)], terms({ suppliers: [tatlow] }));
    expect(unpriced).toBe(1);
    expect(totals.map(texts)).toEqual(["0.00 GBP + 8.50 GBP + 1.70 GBP = 10.20 GBP"]);
  });

  test("from nobody in particular has no carriage", () => {
    const { suppliers, totals } = sumOrder([line(undefined, 1, "10.00 GBP")], terms({ suppliers: [tatlow] }));
    expect(suppliers).toMatchObject([{ supplier: undefined, carriage: undefined, minimum: undefined }]);
    expect(totals.map(texts)).toEqual(["10.00 GBP + 0.00 GBP + 2.00 GBP = 12.00 GBP"]);
  });

  test("in two currencies has two totals, the build's first, and one in the build's by rate", () => {
    const rates = [{ from: EUR, to: GBP, factor: decimal("0.86") }];
    const lines = [line("brno", 3, "19.99 EUR"), line("tatlow", 1, "40.00 GBP")];
    const brno = { name: "brno", carriage: cash("12.00 EUR"), minimum: undefined };
    const { totals, own } = sumOrder(lines, terms({ suppliers: [tatlow, brno], rates }));
    // EUR: 59.97 + 12.00 = 71.97, tax 14.394, closed to 14.39. GBP: 40 + 8.50, tax 9.70.
    expect(totals.map(texts)).toEqual([
      "40.00 GBP + 8.50 GBP + 9.70 GBP = 58.20 GBP",
      "59.97 EUR + 12.00 EUR + 14.39 EUR = 86.36 EUR",
    ]);
    // 59.97 × 0.86 = 51.5742; 12 × 0.86 = 10.32; 14.39 × 0.86 = 12.3754.
    expect(own).toMatchObject({ kind: "total" });
    expect(own?.kind === "total" && texts(own.total)).toBe("91.57 GBP + 18.82 GBP + 22.08 GBP = 132.47 GBP");
  });

  test("names the currency that no rate leads from", () => {
    const { own } = sumOrder([line("brno", 1, "5 EUR"), line("tatlow", 1, "5 GBP")], terms());
    expect(own).toEqual({ kind: "no-rate", from: [EUR] });
  });

  test("of a build without a currency has no total of its own", () => {
    const { own, totals } = sumOrder([line("brno", 1, "5 EUR")], terms({ currency: undefined }));
    expect([own, totals.length]).toEqual([undefined, 1]);
  });

  test("of nothing comes to nothing", () => {
    const { suppliers, totals, own } = sumOrder([], terms({ suppliers: [tatlow] }));
    expect([suppliers, totals]).toEqual([[], []]);
    expect(own?.kind === "total" && texts(own.total)).toBe("0.00 GBP + 0.00 GBP + 0.00 GBP = 0.00 GBP");
  });

  test("closes a line to the minor unit, half to even", () => {
    // 3 × 0.125 = 0.375 is printed 0.38; 1 × 0.125 is 0.12.
    const [three, one] = [line(undefined, 3, "0.125 GBP"), line(undefined, 1, "0.125 GBP")];
    expect([three, one].map(lineTotal)).toEqual([cash("0.38 GBP"), cash("0.12 GBP")]);
    expect(sumOrder([three, one], terms()).totals.map(texts)).toEqual([
      "0.50 GBP + 0.00 GBP + 0.10 GBP = 0.60 GBP",
    ]);
  });

  test("knows currencies without a minor unit", () => {
    const { totals } = sumOrder([line(undefined, 3, "105 JPY")], terms({ taxPercent: decimal("7.7") }));
    // 315, tax 24.255.
    expect(totals.map(texts)).toEqual(["315 JPY + 0 JPY + 24 JPY = 339 JPY"]);
  });

  test("adds up to the penny, whatever is in it", () => {
    const pence = fc.integer({ min: 0, max: 999_999 }).map((tenths) => `${decimal(tenths).div(1000)} GBP`);
    const pack = fc.option(
      fc.integer({ min: 1, max: 60 }).map((size) => ({ size })),
      { nil: undefined },
    );
    const someLine = fc
      .tuple(fc.constantFrom("tatlow", "sefton", undefined), fc.integer({ min: 1, max: 500 }), pence, pack)
      .map(([supplier, wanted, price, sizes]) => line(supplier, wanted, price, sizes));
    fc.assert(
      fc.property(fc.array(someLine, { minLength: 1 }), (lines) => {
        const { suppliers, totals } = sumOrder(lines, terms({ suppliers: [tatlow, sefton] }));
        const printed = (ones: readonly (Money | undefined)[]) =>
          ones.reduce(
            (sum, one) => sum.plus(one === undefined ? 0 : (formatMoney(one).split(" ")[0] ?? 0)),
            ZERO,
          );
        const [total] = totals;
        expect(totals).toHaveLength(1);
        expect(total && printed([total.goods])).toEqual(printed(lines.map(lineTotal)));
        expect(total && printed([total.goods])).toEqual(printed(suppliers.flatMap(({ goods }) => goods)));
        expect(total && printed([total.goods, total.carriage, total.tax])).toEqual(
          total && printed([total.amount]),
        );
      }),
    );
  });
});
