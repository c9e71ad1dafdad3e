import type { FindingData } from "../../build/finding-data.ts";
import { factBehind } from "../fact-behind.ts";
import { findingRule } from "../rule.ts";

export const lockMissing = findingRule<"lock-missing">({
  code: "lock-missing",
  group: "Joints",
  severity: "warning",
  summary: "A joint is not locked as it asks",
  why: "Torque alone does not hold under vibration where the maker asks for a lock. Threadlocker holds on clean, dry threads, put on with the final torque; it must cure before running, as its maker says.",
  remedy:
    "Lock the joint and write `locked:`. Threadlocker that went on another day: clean the threads and do it again with the torque.",
  source: "common practice, no source",
  bad: `hold road "On the road"
  needs: joints
  planned: 2026-05-09

joint disc_bolts "Disc to hub"
  torque: 24 N.m
  lock: lockwire

day 2026-05-02
  loosened: disc_bolts
  torqued: disc_bolts 24 N.m
`,
  good: `hold road "On the road"
  needs: joints
  planned: 2026-05-09

joint disc_bolts "Disc to hub"
  torque: 24 N.m
  lock: lockwire

day 2026-05-02
  loosened: disc_bolts
  torqued: disc_bolts 24 N.m
  locked: disc_bolts with lockwire
`,
  message: ({ data }) => `${data.joint} ${SAY[data.is](data as never)}`,
  // Whether the threads were clean and dry can no longer be seen: threadlocker is not written down afterwards.
  fixes: ({ data, place }) =>
    data.is === "not locked" && data.lock !== "threadlocker"
      ? factBehind(place, `locked: ${data.joint} with ${data.lock}`)
      : [],
});

type Data = FindingData["lock-missing"];

const SAY: { readonly [K in Data["is"]]: (data: Data & { is: K }) => string } = {
  "not locked": ({ lock }) => `is tightened and not locked: expected ${words(lock)}`,
  another: ({ lock, found }) => `is locked with ${words(found)}: expected ${words(lock)}`,
  "another day": () =>
    "has threadlocker, but not of the day of its final torque: expected it said before or with the torque",
  greasy: ({ friction }) =>
    `is locked by threadlocker, and its threads are ${friction === "moly" ? "coated with moly" : friction}: expected them clean and dry`,
};

function words(lock: string): string {
  return lock.replace("_", " ");
}
