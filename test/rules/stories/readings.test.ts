import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it.each([
  [
    "a disc out of true is an error while it is on, and the old one's reading is only information",
    `
vehicle "Example"
  past: known

part disc "Brake disc"
  price: 46.00 GBP
  limit: runout max 0.10 mm

day 2026-05-02
  measured: disc runout 0.14 mm
                        ^^^^^^^ information over-limit: 0.14 mm is over its limit of 0.10 mm by 0.04 mm (only information: another line answers it)
  removed: disc
  decided: disc renew

day 2026-05-09
  bought: 1 x disc at 46.00 GBP
  fitted: disc
  measured: disc runout 0.12, 0.13 mm
                        ^^^^^^^^^^^^^ error over-limit: 0.13 mm is over its limit of 0.10 mm by 0.03 mm (the worst of 2 readings, 0.01 mm apart)
`,
  ],
  [
    "a part that goes on in spite of its reading is complained about once, where it goes on",
    `
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
`,
  ],
  [
    "the float of a hub is made when it goes on: what it was before speaks against nothing",
    `
vehicle "Example"
  past: known

part hub "Hub"
  limit: end_float 0.05..0.13 mm
part upright "Upright"

joint hub_nut "Hub nut"
  joins: hub, upright
  set_by: hub.end_float

day 2026-05-02
  measured: hub end_float 0.31 mm
                          ^^^^^^^ information over-limit
  removed: hub

day 2026-05-09
  fitted: hub
  measured: hub end_float 0.09 mm
`,
  ],
  [
    "a reading at one spot does not answer one at another, and one of the whole answers both",
    `
vehicle "Example"
  past: known

part head "Cylinder head"
  limit: flatness max 0.08 mm
part block "Block"
  limit: flatness max 0.08 mm

day 2026-05-02
  measured: head flatness 0.11 mm at "front"
                          ^^^^^^^ error over-limit
  measured: head flatness 0.02 mm at "rear"
  measured: block flatness 0.11 mm at "front"
                           ^^^^^^^ information over-limit

day 2026-05-09
  measured: block flatness 0.03 mm
`,
  ],
  [
    "a reading under one setup does not answer one under another",
    `
vehicle "Example"
  past: known

setup empty "Empty"
setup one_up "Driver aboard"

assembly front "Front"
  limit: ride_height 125..135 mm

day 2026-05-02
  measured: front ride_height 141 mm for empty
                              ^^^^^^ error over-limit
  measured: front ride_height 131 mm for one_up
`,
  ],
  [
    "a coolant temperature on the first run is over its limit, with the gauge's doubt taken off",
    `
vehicle "Example"
  past: known

gauge thermometer "Probe"
  uncertainty: ± 2 degC

part radiator "Radiator"
  limit: outlet max 95 degC

day 2026-05-02
  ran: vehicle 0.2 h
  measured: radiator outlet 96 degC with thermometer
                            ^^^^^^^ information limit-uncertain: outlet 96 degC ± 2 degC is too near its limit of 95 degC
  measured: radiator outlet 99 degC with thermometer
                            ^^^^^^^ error over-limit: outlet 99 degC is over its limit of 95 degC by 4 degC
`,
  ],
  [
    "a share of the reading is the uncertainty that the author states",
    `
vehicle "Example"
  past: known

part pump "Oil pump"
  limit: pressure min 3.0 bar

day 2026-05-02
  measured: pump pressure 3.1 bar ± 5 %
                          ^^^^^^^ warning limit-uncertain: pressure 3.1 bar ± 0.155 bar
`,
  ],
  [
    "what was measured for a fit, a pair, a calculation or an identification needs no limit",
    `
vehicle "Example"
  past: known

donor van_shaft "Van"
  size: joint_cap 27.0 mm

part pin "Pin"
  fit: diameter in bush.bore clearance 0.01..0.04 mm
part bush "Bush"
part shaft "Shaft"
part left.spring "Spring"
  pair: rate with right.spring.rate within 3 %
part right.spring "Spring"

day 2026-05-02
  measured: pin diameter 19.98 mm
  measured: bush bore 20.00 mm
  measured: shaft joint_cap 27.00 mm
  measured: shaft length 412 mm
  calc: half = shaft.length / 2
  measured: left.spring rate 28.0 N/mm
  measured: right.spring rate 28.1 N/mm
  measured: shaft colour_band 12 mm
                              ^^^^^ hint measured-without-limit: shaft has no limit called colour_band
`,
  ],
  [
    "a limit that nobody measured is a warning where it can hurt, once the thing has run",
    `
vehicle "Example"
  past: known

part disc "Brake disc"
  safety: critical
  limit: thickness min 8.4 mm
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning limit-not-measured: thickness of disc is not measured, and it has run
part fan "Fan"
  limit: tip_clearance min 10 mm
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ hint limit-not-measured

day 2026-05-02
  ran: vehicle 0.5 h
`,
  ],
  [
    "of a part that was fitted, the missing measurement is due where it went on",
    `
vehicle "Example"
  past: known

part disc "Brake disc"
  safety: critical
  limit: runout max 0.10 mm

day 2026-05-02
  removed: disc
  fitted: disc
  ^^^^^^^^^^^^ warning limit-not-measured: runout of disc is not measured, and it has run
  ran: vehicle 0.5 h
`,
  ],
  [
    "work on a part ends its wear: what was measured before says nothing of it now",
    `
vehicle "Example"
  past: known

supplier millward "Millward Grinding"

part drum "Drum"
  limit: bore max 230.1 mm new 228.6 mm

day 2026-03-01
  measured: drum bore 228.90 mm
  removed: drum
  sent: drum to millward for "skim" due 2026-04-01

day 2026-04-01
  back: drum
  measured: drum bore 229.40 mm
  fitted: drum
`,
  ],
])("%s", (_, story) => {
  const { complained, marked } = readStory(story);
  expect(complained).toEqual(marked);
});
