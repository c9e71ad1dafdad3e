import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it("a disc out of true is an error while it is on, and the old one's reading is only information", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

part disc "Brake disc"
  price: 46.00 GBP
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.14 mm
                        ^^^^^^^ information over-limit: 0.14 mm is over its limit of 0.10 mm by 0.04 mm
  removed: disc
  decided: disc renew

day 2026-05-09
  bought: 1 x disc at 46.00 GBP
  fitted: disc
  measured: disc runout 0.12, 0.13 mm
                        ^^^^^^^^^^^^^ error over-limit: 0.13 mm is over its limit of 0.10 mm by 0.03 mm (the worst of 2 readings, 0.01 mm apart)
`);
  expect(complained).toEqual(marked);
});

it("a part that goes on in spite of its reading is complained about once, where it goes on", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

part disc "Brake disc"
  limit: thickness min 8.4 mm new 9.5 mm

day 2026-05-02
  removed: disc
  measured: disc thickness 8.1 mm
                           ^^^^^^ information under-limit

day 2026-05-09
  fitted: disc
  ^^^^^^^^^^^^ error fitted-out-of-limit: disc goes on with thickness 8.1 mm; its limit is 8.4 mm
`);
  expect(complained).toEqual(marked);
});
