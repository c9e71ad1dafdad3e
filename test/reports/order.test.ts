/** One order list reckoned by hand, from the log to the cent. */
import { describe, expect, it } from "vitest";
import { planOf } from "../../server/plan/plan.ts";
import { orderReport, orderTable } from "../../server/reports/order.ts";
import { renderText } from "../../server/reports/render-text.ts";
import { readLogs } from "./sample-builds.ts";

/** Monday 1 June 2026. Hands work 6 h on Saturdays and 4 h on Sundays, so 20 h before the run on Saturday the 20th. */
const LOG = `vehicle "Marsh Kestrel"
  past: known
  today: 2026-06-01
  currency: GBP
  rate: 1 EUR = 0.86 GBP
  tax: 20 %

supplier northgate "Northgate Motor Factors"
  lead: 5 d
  carriage: 8.50 GBP
  minimum: 60 GBP

supplier ulmer "Ulmer Bearings"
  lead: 14 d
  carriage: 12.00 EUR

part belts "Belts"
  price: 96.00 GBP
  expires: 2026-06-10

part bracket "Bracket"

part caliper "Caliper"
  count: 2
  kit: caliper_kit

part caliper_kit "Caliper kit"
  as_found: shelf
  price: 18.40 GBP
  supplier: northgate
  stock: 1

part nuts "Locking nuts, M8"
  as_found: shelf
  pack: 10 at 2.00 GBP
  supplier: northgate
  stock: 3
  keep: 4

part bearing "Hub bearing"
  as_found: shelf
  number: "6204"
  price: 22.10 EUR
  supplier: ulmer

part pads "Pads"
  price: 31.25 GBP
  supplier: northgate

part grease "Grease"
  as_found: shelf
  price: 7.00 GBP
  stock: 1

joint bracket_nuts "Bracket to frame"
  joins: bracket
  torque: 24 N.m
  uses: 12 x nuts

job hubs "Hubs"
  takes: 6 h
  needs: 4 x bearing, 1 x grease

job brakes "Brakes"
  on: pads
  takes: 2 h

hold run "First run"
  planned: 2026-06-20

day 2026-05-30
  loosened: bracket_nuts
  decided: caliper recondition
  decided: pads renew
  ordered: 1 x bearing at 22.10 EUR from ulmer due 2026-06-10
`;

const build = readLogs({ "build.cotter": LOG });
const report = orderReport(build, planOf(build));

describe("the order list", () => {
  it("has each line as it is reckoned by hand, late ones first", () => {
    const lines = report.lines.map((line) => [
      line.ref,
      `${line.needed} + ${line.keep} - ${line.inHand} - ${line.onOrder} = ${line.quantity}`,
      `${line.unitPrice?.amount} ${line.currency}, ${line.total?.amount}`,
      `by ${line.orderBy} for ${line.needBy}${line.late ? ", late" : ""}`,
    ]);
    expect(lines).toEqual([
      // Hubs take hours 14 to 20: from Saturday the 13th. 14 days before that was 30 May.
      ["bearing", "4 + 0 - 0 - 1 = 3", "22.10 EUR, 66.30", "by 2026-05-30 for 2026-06-13, late"],
      // Brakes take hours 18 to 20, on Sunday the 14th.
      ["pads", "1 + 0 - 0 - 0 = 1", "31.25 GBP, 31.25", "by 2026-06-09 for 2026-06-14"],
      // What no job names is needed for the hold point.
      ["caliper_kit", "2 + 0 - 1 - 0 = 1", "18.40 GBP, 18.40", "by 2026-06-15 for 2026-06-20"],
      // 13 pieces are two packs of ten.
      ["nuts", "12 + 4 - 3 - 0 = 20", "0.20 GBP, 4.00", "by 2026-06-15 for 2026-06-20"],
      ["belts", "1 + 0 - 0 - 0 = 1", "96.00 GBP, 96.00", "by 2026-06-20 for 2026-06-20"],
    ]);
  });

  it("says why, and which lines of the log that comes from", () => {
    const lineOf = (text: string) => LOG.split("\n").findIndex((line) => line.includes(text)) + 1;
    const why = report.lines.map((line) => line.why.map((each) => `${each.text} ${each.line}`));
    expect(why).toEqual([
      [`4 × needed by the job hubs ${lineOf("needs: 4 x bearing")}`],
      [`decided: renew ${lineOf("decided: pads")}`],
      [`2 × kit to recondition caliper ${lineOf("decided: caliper")}`],
      [
        `12 × spent when bracket_nuts is tightened ${lineOf("loosened: bracket_nuts")}`,
        `4 to keep on the shelf ${lineOf("keep: 4")}`,
      ],
      [`life ends on 2026-06-10, before run, planned for 2026-06-20 ${lineOf("expires:")}`],
    ]);
  });

  it("adds up to the cent, a currency at a time, the build's own first", () => {
    // GBP: 31.25 + 18.40 + 4.00 + 96.00 = 149.65; with carriage 158.15; a fifth of that 31.63.
    // EUR: 66.30 and carriage 12.00 make 78.30; a fifth of that 15.66.
    expect(report.totals).toEqual([
      { amount: "189.78", currency: "GBP", carriage: "8.50", tax: "31.63" },
      { amount: "93.96", currency: "EUR", carriage: "12.00", tax: "15.66" },
    ]);
  });

  it("is printed by supplier, with what the smallest order lacks and the sum in the build's currency", () => {
    const printed = renderText(orderTable(build, planOf(build)), { colour: false, width: 100 });
    // 60.00 less 31.25 + 18.40 + 4.00.
    expect(printed).toContain(
      "goods 53.65 GBP, carriage 8.50 GBP, 6.35 GBP short of the smallest order of 60.00 GBP",
    );
    // 189.78 + 93.96 × 0.86 = 189.78 + 80.8056 = 270.5856.
    expect(printed).toMatch(/270\.59 GBP/);
  });
});
