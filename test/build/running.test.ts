/** Running added up, in hours, metres and runs. */
import { expect, it } from "vitest";
import { addRunning, NO_RUNNING } from "../../server/build/running.ts";
import { decimal } from "../../server/quantities/decimal.ts";
import { q } from "../quantities/written.ts";

const hours = (count: number) => decimal(count);

it("adds each of the three, whichever a line tells", () => {
  const first = { hours: hours(1.5), distance: q("2 km"), runs: hours(3) };
  const once = addRunning(NO_RUNNING, first);
  expect(once).toEqual({ hours: hours(1.5), metres: decimal(2000), runs: decimal(3) });
  expect(addRunning(once, first)).toEqual({ hours: hours(3), metres: decimal(4000), runs: decimal(6) });
  expect(addRunning(once, { hours: hours(0.5), distance: undefined, runs: undefined })).toEqual({
    hours: hours(2),
    metres: decimal(2000),
    runs: decimal(3),
  });
  expect(addRunning(NO_RUNNING, { hours: undefined, distance: undefined, runs: hours(2) })).toEqual({
    ...NO_RUNNING,
    runs: decimal(2),
  });
});

// A mile is 1609.344 m.
it("takes a distance in any unit of length, and none that is no distance", () => {
  const miles = { hours: undefined, distance: q("1 mile"), runs: undefined };
  expect(addRunning(NO_RUNNING, miles).metres.toString()).toBe("1609.344");
  const odd = { hours: undefined, distance: q("1 kg"), runs: undefined };
  expect(addRunning(NO_RUNNING, odd)).toEqual(NO_RUNNING);
});
