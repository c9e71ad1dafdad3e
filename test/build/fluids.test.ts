/** Whether what went into a system is what it takes, as the cans have it. */
import { expect, it } from "vitest";
import { fluidFamily, isOtherFluid } from "../../server/build/fluids.ts";

it.each([
  ["DOT 3", "glycol"],
  ["DOT 4", "glycol"],
  ["dot4", "glycol"],
  ["DOT 5.1", "glycol"],
  ["DOT 4.", "glycol"],
  ["DOT 5", "silicone"],
  ["DOT 5 silicone", "silicone"],
  ["silicone fluid", "silicone"],
  ["mineral oil LHM", "mineral"],
  ["DOT 41", undefined],
  ["DOT 5.2", undefined],
  ["20W-50", undefined],
  ["minerals", undefined],
])("%s is %s", (name, family) => {
  expect(fluidFamily(name)).toBe(family);
});

it.each([
  // Families decide where one is a brake fluid's grade and both have one.
  ["DOT 4", "DOT 3", false],
  ["DOT 4", "DOT 5.1", false],
  ["DOT 4", "DOT 5", true],
  ["DOT 5", "silicone fluid", false],
  ["DOT 4", "mineral oil", true],
  ["mineral oil", "DOT 4", true],
  // Words do where one has none.
  ["DOT 4", "racing brake fluid", true],
  ["DOT 4", "racing DOT 4", false],
  ["DOT 7", "DOT 8", true],
  ["20W-50", "20W-50 mineral", false],
  ["20W-50 mineral", "20w-50", false],
  ["20W-50", "10W-40", true],
  ["glycol 50 %", "water", true],
  ["silicone", "mineral", true],
])("where %s is asked for, %s is another: %s", (asked, filled, isOther) => {
  expect(isOtherFluid(asked, filled)).toBe(isOther);
});
