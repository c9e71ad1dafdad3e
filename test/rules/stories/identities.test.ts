import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it("a bearing that measures otherwise than what it was identified as is said with both figures, in the author's units", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

part bearing "Wheel bearing"
  price: 7.20 GBP
  limit: bore max 1 in
  limit: outside max 3 in

day 2026-05-02
  measured: bearing bore 0.669 in
  measured: bearing outside 1.850 in
  identified: bearing as "6203, 17 x 40 x 12"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning identity-contradicted: identified as 6203, but outside 1.850 in is 0.2752 in over its 1.5748 in (1.5717 in to 1.5748 in, wear allowed for)
`);
  expect(complained).toEqual(marked);
});

it("a donor is named with its block, and an item that is gone is only information", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

donor van_shaft "Van, driveshaft"
  size: length 438 mm

part shaft "Driveshaft"
  price: 70.00 GBP
  limit: length 400..450 mm

day 2026-05-02
  measured: shaft length 412 mm
  identified: shaft as "as on the van" from van_shaft
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ information identity-contradicted: identified as Van, driveshaft (van_shaft), but length 412 mm is 26 mm under its 438 mm (437.2 mm to 438.8 mm, wear allowed for)
  removed: shaft
  decided: shaft renew
  bought: 1 x shaft at 70.00 GBP
  fitted: shaft
`);
  expect(complained).toEqual(marked);
});
