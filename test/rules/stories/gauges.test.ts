import { expect, it } from "vitest";
import { readStory } from "../story.ts";

const GAUGE = `
vehicle "Example"
  past: known

gauge dti "Dial gauge"
  reads: 0..10 mm
  calibrated: 2026-03-01 for 12 month

part disc "Brake disc"
  limit: runout max 0.10 mm
part hub "Hub"
  limit: end_float max 0.13 mm
`;

it.each([
  [
    "a gauge found wrong casts doubt on what it read since it was last good, and on what still counts of that",
    `${GAUGE}
day 2026-02-20
  measured: hub end_float 0.10 mm with dti

day 2026-04-01
  measured: disc runout 0.07 mm with dti

day 2026-05-02
  measured: disc runout 0.05 mm with dti
                        ^^^^^^^ warning gauge-in-doubt: dti was found wrong on 2026-05-09 and was last known good on 2026-03-01

day 2026-05-09
  found: dti wrong
`,
  ],
  [
    "calibrated again, it is trusted from then on",
    `${GAUGE}
day 2026-05-09
  found: dti damaged
  measured: hub end_float 0.09 mm with dti
                          ^^^^^^^ warning gauge-in-doubt
  calibrated: dti for 12 month
  measured: disc runout 0.06 mm with dti
`,
  ],
  [
    "a gauge that reads millimetres has read no torque",
    `${GAUGE}
part pump "Pump"
  limit: drag max 2 N.m

day 2026-05-02
  measured: pump drag 1.2 N.m with dti
                      ^^^^^^^ error gauge-out-of-range: 1.2 N.m is outside what dti reads: 0 mm to 10 mm
`,
  ],
  [
    "a gauge out of date is doubted once for a measurement, however many readings it took",
    `
vehicle "Example"
  past: known

gauge mic "Micrometer"
  reads: 0..25 mm
  calibrated: 2025-01-15 for 12 month

part disc "Brake disc"
  limit: thickness min 8.4 mm

day 2026-05-02
  measured: disc thickness 9.1, 9.2, 9.3 mm with mic
                           ^^^^^^^^^^^^^^^^ warning gauge-out-of-date: mic was good until 2026-01-15 and is used on 2026-05-02
`,
  ],
  [
    "a setting made with a gauge out of date is doubted too; an overtaken reading no longer is",
    `
vehicle "Example"
  past: known

gauge level "Camber gauge"
  reads: -10..10 deg
  calibrated: 2025-01-15 for 12 month

assembly front "Front"
  setting: camber -1.5 deg ± 0.25 deg
part disc "Brake disc"
  limit: tilt max 1 deg

day 2026-05-02
  set: front camber -1.5 deg with level
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning gauge-out-of-date: level was good until 2026-01-15
  measured: disc tilt 0.5 deg with level
                      ^^^^^^^ information gauge-out-of-date
  measured: disc tilt 0.4 deg
`,
  ],
])("%s", (_, story) => {
  const { complained, marked } = readStory(story);
  expect(complained).toEqual(marked);
});
