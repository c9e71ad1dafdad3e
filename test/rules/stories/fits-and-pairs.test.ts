import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it.each([
  [
    "a bearing is measured and pressed: the interference is judged with both uncertainties combined",
    // √(0.004² + 0.003²) = 0.005 mm (JCGM 100:2008, equation 10); 62.000 - 61.985 = 0.015 mm.
    `
vehicle "Example"
  past: known

gauge mic75 "Micrometer"
  reads: 50..75 mm
  uncertainty: ± 0.004 mm
gauge bore_gauge "Bore gauge"
  reads: 35..100 mm
  uncertainty: ± 0.003 mm

part bearing "Wheel bearing"
  fit: outside in upright.housing interference 0.018..0.04 mm
part upright "Upright"

day 2026-05-02
  measured: bearing outside 62.000 mm with mic75
  measured: upright housing 61.985 mm with bore_gauge
                            ^^^^^^^^^ warning fit-out-of-range: interference of bearing.outside in upright.housing is 0.015 mm ± 0.00500 mm: too near to its limit
`,
  ],
  [
    "outside of the doubt it is an error, and the newer reading carries it",
    `
vehicle "Example"
  past: known

part bearing "Wheel bearing"
  fit: outside in upright.housing interference 0.018..0.04 mm
part upright "Upright"

day 2026-05-02
  measured: upright housing 61.990 mm
day 2026-05-03
  measured: bearing outside 62.000 mm
                            ^^^^^^^^^ error fit-out-of-range: 0.010 mm: expected at least 0.018 mm, it is 0.008 mm less
`,
  ],
  [
    "two nominal sizes are no fit; a measured one and a size are",
    `
vehicle "Example"
  past: known

part pin "Pin"
  size: diameter 20 mm
  fit: diameter in bush.bore clearance 0.01..0.04 mm
part bush "Bush"
  size: bore 20 mm
part other "Other pin"
  fit: diameter in bush.bore clearance 0.01..0.04 mm

day 2026-05-02
  measured: other diameter 19.9 mm
                           ^^^^^^^ error fit-out-of-range
`,
  ],
  [
    "the fit of a condemned part is no more than information",
    `
vehicle "Example"
  past: known

part pin "Pin"
  fit: diameter in bush.bore clearance 0.01..0.04 mm
  price: 9.00 GBP
part bush "Bush"
  price: 4.00 GBP

day 2026-05-02
  measured: bush bore 20.00 mm
  measured: pin diameter 19.90 mm
                         ^^^^^^^^ information fit-out-of-range
  decided: pin renew
`,
  ],
  [
    "sides that name each other are compared once",
    `
vehicle "Example"
  past: known

part left.spring "Spring"
  pair: rate with right.spring.rate within 3 %
part right.spring "Spring"
  pair: rate with left.spring.rate within 3 %

day 2026-05-02
  measured: left.spring rate 28.0 N/mm
  measured: right.spring rate 26.0 N/mm
                              ^^^^^^^^^ warning pair-differs: differ by 2.0 N/mm: expected at most 3 %, 0.84 N/mm
`,
  ],
  [
    "a copied corner pairs with the one that it was copied from",
    `
vehicle "Example"
  past: known

part left.spring "Spring"
  pair: rate with right.spring.rate within 1 N/mm
assembly right "Right" like left

day 2026-05-02
  measured: left.spring rate 28.0 N/mm
  measured: right.spring rate 26.0 N/mm
                              ^^^^^^^^^ warning pair-differs: differ by 2.0 N/mm: expected at most 1 N/mm
`,
  ],
  [
    "an angle takes an absolute figure: a share of it means nothing",
    `
vehicle "Example"
  past: known

assembly left "Left"
  pair: camber with right.camber within 5 %
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error wrong-dimension: within 5 % is not read here: expected an absolute figure
assembly right "Right"

day 2026-05-02
  set: left camber -1.5 deg
  set: right camber -1.4 deg
`,
  ],
  [
    "two sides under different setups are not compared",
    `
vehicle "Example"
  past: known

setup empty "Empty"
setup one_up "Driver aboard"

assembly left "Left"
  setting: ride_height 132 mm ± 5 mm
  pair: ride_height with right.ride_height within 2 mm
assembly right "Right"
  setting: ride_height 132 mm ± 5 mm

day 2026-05-02
  set: left ride_height 134 mm for empty
  set: right ride_height 130 mm for one_up
`,
  ],
])("%s", (_, story) => {
  const { complained, marked } = readStory(story);
  expect(complained).toEqual(marked);
});
