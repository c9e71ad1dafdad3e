import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it.each([
  [
    "a condemned part goes back: what was found is what counts, not the line before it",
    `
vehicle "Example"
  past: known

part arm "Steering arm"

day 2026-05-02
  removed: arm
  found: arm bent
  cleaned: arm by solvent

day 2026-05-09
  fitted: arm
  ^^^^^^^^^^^ error fitted-condemned: arm goes back although it was found bent
`,
  ],
  [
    "a trial is no fitting: the old part may be tried while the new one is on its way",
    `
vehicle "Example"
  past: known

part hose "Brake hose"
  price: 16.20 GBP

day 2026-05-02
  removed: hose
  decided: hose renew
  fitted: hose for trial "does the new bracket clear it?"
  removed: hose

day 2026-05-09
  fitted: hose
  ^^^^^^^^^^^^ error fitted-not-in-hand: hose needs 1 new (decided renew); none is in hand
`,
  ],
  [
    "a part that is away goes on: one complaint, whatever else speaks against it",
    `
vehicle "Example"
  past: known

supplier millward "Millward Grinding"

part crank "Crankshaft"

day 2026-05-02
  removed: crank
  found: crank scored
  decided: crank recondition
  sent: crank to millward for "grind" due 2026-06-20

day 2026-05-09
  fitted: crank
  ^^^^^^^^^^^^^ error fitted-while-away: crank is still away at millward
`,
  ],
  [
    "with two pairs of hands a day has its hours twice",
    `
vehicle "Example"
  past: known
  hands: 2

job strip "Strip"
  takes: 20 h

day 2026-05-02 6 h
  worked: 6 h on strip
  worked: 6 h on strip by "KT"

day 2026-05-03 6 h
  worked: 6 h on strip
  worked: 6.5 h on strip
  ^^^^^^^^^^^^^^^^^^^^^^ error hours-over-day: 12.5 h of work are booked by 2 pairs of hands: expected at most the 6 h of the day for each
`,
  ],
  [
    "a day that states no hours has 24",
    `
vehicle "Example"
  past: known

job strip "Strip"
  takes: 60 h

day 2026-05-02
  worked: 20 h on strip
  worked: 20 h on strip by "KT"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error hours-over-day: 40 h of work are booked: expected at most the 24 h of the day
`,
  ],
  [
    "no day is longer than 24 hours",
    `
vehicle "Example"
  past: known

day 2026-05-03 25 h
    ^^^^^^^^^^ error hours-over-day: the day has 25 h: expected at most 24 h
`,
  ],
  [
    "days of two files stand in the order of their dates, not of the files",
    `
-- vehicle.cotter --
vehicle "Example"
  past: known

part hub "Hub"
-- diary/a.cotter --
day 2026-05-09
  fitted: hub
-- diary/b.cotter --
day 2026-05-02
  removed: hub

day 2026-05-01
    ^^^^^^^^^^ warning day-order: 2026-05-01 stands below 2026-05-02
`,
  ],
  [
    "what is missing is said where the log says so: where it was found so, or described so",
    `
vehicle "Example"
  past: known

part cap "Cap"

part plug "Plug"
  as_found: missing
  ^^^^^^^^^^^^^^^^^ information missing-undecided: plug is missing

day 2026-05-02
  found: cap missing
  ^^^^^^^^^^^^^^^^^^ information missing-undecided: cap is missing
`,
  ],
  [
    "through an assembly, what is off already is passed over",
    `
vehicle "Example"
  past: known

part front.hub "Hub"
part front.disc "Disc"

day 2026-05-02
  removed: front.hub
  removed: front
  removed: front.disc
  ^^^^^^^^^^^^^^^^^^^ warning removed-twice: front.disc is off already
`,
  ],
])("%s", (_, story) => {
  const { complained, marked } = readStory(story);
  expect(complained).toEqual(marked);
});
