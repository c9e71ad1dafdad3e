/** What records and facts say, once they are read: the figures behind the words. */
import { expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { lowerBlock } from "../../server/build/lowering/block.ts";

/** The last record or fact of a block of these lines. */
function one(header: string, ...lines: string[]) {
  const [node] = Document.read([header, ...lines.map((line) => `  ${line}`)].join("\n")).blocks;
  const block = node && lowerBlock(node);
  if (block === undefined || block.is === "nothing") throw new Error("no block");
  return block.is === "day" ? block.facts.at(-1) : block.records.at(-1);
}

it.each([
  ["± 0.004 mm", false],
  ["± 4 %", true],
  ["± 4 % of reading", true],
])("the uncertainty %s of a gauge is of what it read: %s", (line, ofReading) => {
  expect(one('gauge mic "Micrometer"', "reads: 0..25 mm", `uncertainty: ${line}`)).toMatchObject({
    ofReading,
  });
});

it.each([
  ["30 GBP/h", "30"],
  ["0.5 GBP/min", "30"],
  ["240 GBP/d", "10"],
])("labour at %s is %s GBP by the hour, exactly", (line, amount) => {
  const record = one('vehicle "Plover"', `labour: ${line}`);
  expect(record?.word === "labour" ? `${record.money.amount}` : undefined).toBe(amount);
});

it("a day or a stretch of days is closed, and a lead time is counted in whole days", () => {
  const vehicle = (line: string) => one('vehicle "Plover"', line);
  expect(vehicle("closed: 2026-08-01")).toMatchObject({ from: "2026-08-01", to: "2026-08-01" });
  expect(vehicle("closed: 2026-08-01..2026-08-09")).toMatchObject({ from: "2026-08-01", to: "2026-08-09" });
  expect(one('supplier tatlow "Tatlow"', "lead: 1 week")).toMatchObject({ days: 7 });
  expect(one('supplier tatlow "Tatlow"', "lead: 1.5 d")).toMatchObject({ days: 2 });
});

it("work that is sent has what it is for and when it is due", () => {
  expect(one("day 2026-05-02", 'sent: hub to tatlow for "plating" due 2026-05-09')).toMatchObject({
    due: "2026-05-09",
    work: "plating",
    cost: undefined,
  });
});

it("stages take the unit of the one that has one", () => {
  const record = one('joint bolts "Bolts"', "stages: 15, 30 N.m");
  const units = record?.word === "stages" ? record.quantities.map(({ unit }) => unit.symbol) : [];
  expect(units).toEqual(["N.m", "N.m"]);
});
