import { describe, expect, test } from "vitest";
import { decimal } from "../../server/quantities/decimal.ts";
import type { Currency, ExchangeRate, Money } from "../../server/quantities/money.ts";
import {
  addMoney,
  compareMoney,
  convertMoney,
  costOf,
  currencies,
  formatMoney,
  minorDigits,
  money,
  noMoney,
  percentOfMoney,
  readCurrency,
  roundMoney,
  subtractMoney,
  timesMoney,
} from "../../server/quantities/money.ts";
import { unit } from "../../server/quantities/unit.ts";
import { ok, q } from "./written.ts";

function of(text: string): Money {
  const [amount = "", code = ""] = text.split(" ");
  return ok(money(amount, code));
}

const [GBP, EUR, USD] = ["GBP", "EUR", "USD"] as Currency[] as [Currency, Currency, Currency];

describe("money", () => {
  test("is exact and prints with the digits of its currency", () => {
    expect(formatMoney(ok(addMoney(of("0.10 GBP"), of("0.20 GBP"))))).toBe("0.30 GBP");
    expect(formatMoney(timesMoney(of("62.00 GBP"), 4))).toBe("248.00 GBP");
    expect(formatMoney(of("1200 JPY"))).toBe("1200 JPY");
    expect(formatMoney(of("1.5 KWD"))).toBe("1.500 KWD");
    expect(formatMoney(ok(subtractMoney(of("5 EUR"), of("7.50 EUR"))))).toBe("-2.50 EUR");
    expect(formatMoney(noMoney(GBP))).toBe("0.00 GBP");
  });

  test("is rounded, half to even, only where it is printed or closed as a total", () => {
    const share = percentOfMoney(of("0.33 GBP"), 50);
    expect(share.amount.toString()).toBe("0.165");
    expect(formatMoney(share)).toBe("0.16 GBP");
    expect(formatMoney(ok(addMoney(share, share)))).toBe("0.33 GBP");
    expect(formatMoney(ok(addMoney(roundMoney(share), roundMoney(share))))).toBe("0.32 GBP");
    expect(formatMoney(percentOfMoney(of("62.00 GBP"), decimal("20")))).toBe("12.40 GBP");
  });

  test("of two currencies never adds or compares without a rate", () => {
    expect(addMoney(of("1 GBP"), of("1 EUR"))).toMatchObject({
      fault: "unlike-currencies",
      message: "cannot add GBP and EUR without a rate",
    });
    expect(subtractMoney(of("1 GBP"), of("1 EUR"))).toEqual({
      fault: "unlike-currencies",
      left: "GBP",
      right: "EUR",
      message: "cannot subtract GBP and EUR without a rate",
    });
    expect(compareMoney(of("1 GBP"), of("1 EUR"))).toMatchObject({
      message: "cannot compare GBP and EUR without a rate",
    });
    expect(compareMoney(of("1.00 GBP"), of("1 GBP"))).toBe(0);
  });

  test("converts by a rate in either direction, the last one stated", () => {
    const rates: ExchangeRate[] = [
      { from: EUR, to: GBP, factor: decimal("0.90") },
      { from: EUR, to: GBP, factor: decimal("0.80") },
    ];
    expect(formatMoney(ok(convertMoney(of("100 EUR"), GBP, rates)))).toBe("80.00 GBP");
    expect(formatMoney(ok(convertMoney(of("80 GBP"), EUR, rates)))).toBe("100.00 EUR");
    expect(formatMoney(ok(convertMoney(of("80 GBP"), GBP, [])))).toBe("80.00 GBP");
    const others: ExchangeRate[] = [
      { from: EUR, to: USD, factor: decimal(2) },
      { from: USD, to: GBP, factor: decimal(4) },
    ];
    expect(convertMoney(of("1 EUR"), GBP, others)).toMatchObject({ fault: "no-rate" });
    expect(convertMoney(of("1 GBP"), EUR, others)).toMatchObject({
      fault: "no-rate",
      left: "GBP",
      right: "EUR",
    });
    expect(convertMoney(of("1 USD"), GBP, rates)).toMatchObject({
      fault: "no-rate",
      message: "no rate from USD to GBP",
    });
    expect(convertMoney(of("1 GBP"), USD, [{ from: USD, to: GBP, factor: decimal(0) }])).toMatchObject({
      fault: "no-rate",
    });
  });

  test("per hour: 2 h 30 min at 40 GBP/h is 100 GBP", () => {
    const price = { money: of("40 GBP"), per: unit("h") };
    expect(formatMoney(ok(costOf(q("150 min"), price)))).toBe("100.00 GBP");
    expect(costOf(q("1 mm"), price)).toMatchObject({ fault: "dimension" });
  });

  test("a currency that is none is answered with the nearest", () => {
    expect(readCurrency("gbp")).toMatchObject({ fault: "unknown-currency", nearest: ["GBP"] });
    expect(readCurrency("£")).toMatchObject({ nearest: ["GBP"] });
    expect(readCurrency("GBX")).toMatchObject({ nearest: expect.arrayContaining(["GBP"]) });
    expect(readCurrency("€")).toMatchObject({ nearest: ["EUR"] });
    expect(readCurrency("constructor")).toMatchObject({ nearest: [] });
    const near = readCurrency("AAD");
    expect(near).toHaveProperty("nearest.length", 4);
    expect(money("1", "XXQ")).toMatchObject({ fault: "unknown-currency", text: "XXQ" });
    expect(money(2, "GBP")).toEqual({ amount: decimal(2), currency: "GBP" });
    expect(money("1,50", "EUR")).toMatchObject({ fault: "decimal-comma" });
  });

  // ECMA-402 (CurrencyDigits) takes the minor unit from ISO 4217; the runtime's tables are CLDR's.
  test("codes are known to the runtime's tables (Unicode CLDR)", () => {
    const known = new Set(Intl.supportedValuesOf("currency"));
    expect(currencies.filter((code) => !known.has(code))).toEqual([]);
  });

  test("minor digits agree with the runtime's tables", () => {
    const digitsOf = (code: string) =>
      new Intl.NumberFormat("en", { style: "currency", currency: code }).resolvedOptions()
        .maximumFractionDigits;
    // CLDR departs from ISO 4217 where small coins are out of use.
    const outOfUse = currencies.filter((code) => digitsOf(code) !== minorDigits(code as Currency));
    expect(outOfUse.filter((code) => digitsOf(code) !== 0)).toEqual([]);
    expect(outOfUse).toEqual(expect.not.arrayContaining(["GBP", "EUR", "USD", "JPY", "KWD", "CHF", "AUD"]));
  });
});
