import fc from "fast-check";
import { expect, it } from "vitest";
import { sayOpenItemByName } from "../../server/build/open-item.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { buildOf } from "./marked-build.ts";
import { holdAt, openFor } from "./open-items.ts";

const VEHICLE = `vehicle "Plover"
  past: unknown

hold ready "Ready"
  planned: 2026-05-20
  test: look "walk round it"
job trim "Trim"
part hub "Hub"
  safety: critical
  limit: float 0.05..0.13 mm
part upright "Upright"
  limit: bore 62.00..62.03 mm
part bearing "Bearing"
  size: outside 62 mm
  fit: outside in upright.bore clearance 0.00..0.02 mm
part hose "Hose"
  life: 10 day from fitted
part plug "Plug"
  life: 2 h running
part bottle "Bottle"
  expires: 2026-05-08
joint hub_nut "Hub nut"
  joins: upright, bearing
  set_by: hub.float
  lock: split_pin
joint banjo "Banjo"
  joins: hose
  torque: 20 N.m
  recheck: every 1 h running
system brakes "Brakes"
  parts: hose
  bleed: yes
circuit lamp "Lamp"
  load: 5 A
  fuse: 10 A
assembly front "Front"
  setting: toe 1 mm ± 0.5 mm

`;

const FACTS = [
  "removed: hose",
  "fitted: hose",
  "removed: bearing",
  "fitted: bearing",
  "found: hub cracked",
  "repaired: hub",
  "measured: hub float 0.09 mm",
  "measured: hub float 0.2 mm",
  "measured: upright bore 62.01 mm",
  "measured: upright bore 62.025 mm",
  "locked: hub_nut with split_pin",
  "torqued: banjo 20 N.m",
  "loosened: banjo",
  "rechecked: banjo held",
  "bled: brakes",
  "opened: brakes",
  "tested: lamp pass",
  "changed: lamp load 12 A",
  "changed: lamp load 6 A",
  "set: front toe 1.2 mm",
  "set: front toe 2 mm",
  "ran: vehicle 40 min",
  "snag: rattle on hub",
  "cleared: rattle",
  "tested: ready look pass",
  "done: trim",
  "remvoed: hub",
];

it("an inspection that looks again only at what was touched finds what a whole one finds, after any facts", () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...FACTS), { minLength: 2, maxLength: 12 }), (facts) => {
      const days = facts.map((fact, index) => ({ date: dayOf(index), fact }));
      const today = dayOf(facts.length - 1);
      const diary = days.map(({ date, fact }) => `day ${date}\n  ${fact}\n`).join("  released: ready\n");
      const whole = openFor(buildOf(VEHICLE + diary, today), "ready");
      const { refused } = holdAt(buildOf(`${VEHICLE}${diary}  released: ready\n`, today), "ready");
      const again = refused?.open.map((item) => `${item.code} ${sayOpenItemByName(item)}`) ?? [];
      expect(again).toEqual(whole);
    }),
    { numRuns: 40 },
  );
});

function dayOf(index: number): IsoDate {
  return `2026-05-${String(index + 1).padStart(2, "0")}` as IsoDate;
}
