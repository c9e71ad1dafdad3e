import { findingRule } from "../rule.ts";
import { onNewHardware } from "./new-hardware.ts";

export const singleUseRefitted = findingRule<"single-use-refitted">({
  code: "single-use-refitted",
  group: "Joints",
  severity: "error",
  summary: "Something that is used once goes on again",
  why: "A stretched bolt, a crushed washer or a bent tab has done its work; the second time it gives less or nothing.",
  remedy:
    "Fit a new one. If it was new, write where it came from: `bought:`, `received:`, `counted:`, or `on new hardware`.",
  source: "common practice, no source",
  bad: `part tab_washers "Tab washers"
  as_found: shelf

joint sprocket_bolts "Sprocket to hub"
  torque: 20 N.m
  lock: tab_washer
  uses: 3 x tab_washers

day 2026-05-02
  loosened: sprocket_bolts
  torqued: sprocket_bolts 20 N.m
  locked: sprocket_bolts
`,
  good: `part tab_washers "Tab washers"
  as_found: shelf
  stock: 4

joint sprocket_bolts "Sprocket to hub"
  torque: 20 N.m
  lock: tab_washer
  uses: 3 x tab_washers

day 2026-05-02
  loosened: sprocket_bolts
  torqued: sprocket_bolts 20 N.m
  locked: sprocket_bolts
`,
  message: ({ data: { what, joint, needed, inHand } }) => {
    const there = `${inHand} ${inHand === 1 ? "is" : "are"} in hand`;
    return joint === undefined
      ? `${what} is used once and was off: expected ${needed} new, and ${there}`
      : `${joint} was undone and takes ${needed} new ${what}: ${there}`;
  },
  fixes: ({ data, place }, build) => (data.joint === undefined ? [] : onNewHardware(place, build)),
});
