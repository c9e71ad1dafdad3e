import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it.each([
  [
    "a calculation answers a limit of its name, at its own line",
    `
vehicle "Example"
  past: known

part disc "Brake disc"
  limit: wear max 1.1 mm
  calc: wear = 9.5 mm - thickness
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error over-limit: wear 1.3 mm is over its limit of 1.1 mm by 0.2 mm

day 2026-05-02
  measured: disc thickness 8.2 mm
`,
  ],
  [
    "a definition that waits for its measurement is no mistake; a day that does is",
    `
vehicle "Example"
  past: known

part disc "Brake disc"
  limit: thickness min 8.4 mm
  calc: wear = 9.5 mm - thickness

day 2026-05-02
  calc: left = disc.thickness - 8.4 mm
               ^^^^^^^^^^^^^^ error unreadable-expression: disc.thickness has not been measured before this line
  measured: disc thickness 9.2 mm
`,
  ],
  [
    "a day knows what stands above its line, and the newest of a name",
    `
vehicle "Example"
  past: known

part box "Box"
  size: gap 30 mm
  limit: gap 30..40 mm

day 2026-05-02
  calc: b = a + 1 mm
            ^ error unknown-reference: a leads to nothing
  calc: a = 2 mm
  calc: a = 35 mm
  calc: c = a + gap2
                ^^^^ error unknown-reference
  calc: d = a + 4 mm
  calc: e = box.gap + box.gop
                      ^^^^^^^ error unknown-reference: box.gop leads to nothing: expected box.gap
`,
  ],
  [
    "a mistake is complained about where it is made, not where it is built on",
    `
vehicle "Example"
  past: known

part spring "Spring"
  calc: load = 560 N + 2 mm
                       ^^^^ error wrong-dimension
  calc: rate = load / 20 mm
  calc: twice = 2 * rate
`,
  ],
  [
    "a copied mistake is said once",
    `
vehicle "Example"
  past: known

part left.spring "Spring"
  size: travel 20 mm
  calc: rate = 560 N / travel + 3 mm
                                ^^^^ error wrong-dimension
assembly right "Right" like left
`,
  ],
  [
    "a circle is complained about once, whatever leads into it",
    `
vehicle "Example"
  past: known

part spring "Spring"
  calc: a = b + 1 mm
            ^^^^^^^^ error calc-cycle: spring.a builds on spring.b builds on spring.a
  calc: b = spring.a
  calc: c = a + b
`,
  ],
  [
    "currencies meet by the rate that the vehicle states",
    `
vehicle "Example"
  past: known
  currency: GBP
  rate: 1 EUR = 0.86 GBP

day 2026-05-02
  calc: both = 10 GBP + 10 EUR
  calc: other = 10 GBP + 10 USD
                         ^^^^^^ error wrong-dimension
`,
  ],
])("%s", (_, story) => {
  const { complained, marked } = readStory(story);
  expect(complained).toEqual(marked);
});
