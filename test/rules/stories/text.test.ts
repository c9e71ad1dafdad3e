import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it.each([
  [
    "one bad line costs that line: everything else is read",
    `
vehicle "Example"
  past: known

part disc "Brake disc"
  limit: thickness min 8.4 mm
  material: stel
            ^^^^ error unreadable-value: stel is not read here: expected steel

day 2026-05-02
  remvoed: disc
  ^^^^^^^ error unknown-record: remvoed is no record word; removed is
  measured: disc thickness 8,1 mm
                           ^^^ error decimal-comma: 8,1 has a decimal comma: expected 8.1
  measured: disc thickness 8.1 mm
                           ^^^^^^ error under-limit
  Prose with a colon: it is no record.
  photo: "photos/disc.png
         ^^^^^^^^^^^^^^^^ error unclosed-string
`,
  ],
  [
    "a record without its space, and a reference to another kind of thing, in plain words",
    `
vehicle "Example"
  past: known

part front.disc "Brake disc"

day 2026-05-02
  removed:front.disc
  ^^^^^^^^ error unknown-record: a record is its word in small letters, a colon and a space: expected removed: …
  torqued: front 24 N.m
           ^^^^^ error reference-kind: front is an assembly; expected a joint
`,
  ],
  [
    "the nanometre is a length, and no torque",
    `
vehicle "Example"
  past: known

part flange "Flange"
joint bolts "Bolts"
  joins: flange
  torque: 24 nm
             ^^ error wrong-dimension: nm is nanometre; a torque needs N.m
`,
  ],
  [
    "a reference is followed to the end: unknown, ambiguous, of another kind",
    `
vehicle "Example"
  past: known

part left.hub "Hub"
part right.hub "Hub"
joint left.bolts "Bolts"
  joins: left.hub
  torque: 24 N.m

day 2026-05-02
  removed: left.hubb
           ^^^^^^^^^ error unknown-reference: left.hubb leads to nothing: expected left.hub
  removed: hub
           ^^^ error ambiguous-reference: hub could mean left.hub or right.hub
  removed: left.bolts
           ^^^^^^^^^^ error reference-kind: left.bolts is a joint; expected a part
  measured: left.hub.bore 54 mm with mic
                          ^^^^^ hint measured-without-limit
                                     ^^^ error unknown-reference: mic leads to nothing: expected the name of a gauge
`,
  ],
  [
    "what is copied from nothing has no source",
    `
vehicle "Example"
  past: known

assembly front.right "Right" like front.letf
                                  ^^^^^^^^^^ error unknown-reference: front.letf leads to nothing
part front.left.hub "Hub"
`,
  ],
  [
    "a copied joint still points at the other corner",
    `
vehicle "Example"
  past: known

part left.disc "Disc"
part left.hub "Hub"
part right.disc "Disc"
joint left.bolts "Bolts"
  joins: left.disc, left.hub
  torque: 24 N.m
joint right.bolts "Bolts" like left.bolts
      ^^^^^^^^^^^ warning like-points-back: right.bolts is like left.bolts, and its joins: still means left.disc and left.hub
joint left.other "Other bolts" like left.bolts
`,
  ],
  [
    "jobs and hold points in a circle, through what a hold point stops",
    `
vehicle "Example"
  past: known

job paint "Paint"
  takes: 4 h
hold fit_to_paint "Fit to paint"
  after: paint
  ^^^^^^^^^^^^ error after-cycle
  stops: paint
`,
  ],
  [
    "a test by a name that nothing lists answers nothing; a circuit without a list is answered by any",
    `
vehicle "Example"
  past: known

assembly front "Front"
part front.hub "Hub"
  test: free_turning "by hand"
part lever "Lever"
circuit lamp "Lamp"
hold run "Run"
  needs: tests
  test: watch "Extinguisher in reach"

day 2026-05-02
  tested: front free_turning pass
  tested: front.hub free_turnin pass
                    ^^^^^^^^^^^ error unknown-reference: the test free_turnin leads to nothing: expected free_turning
  tested: lever travel fail
                ^^^^^^ error unknown-reference: expected a test: travel in the block of lever
  tested: lamp shines pass
  tested: run watch pass
  tested: run wathc pass
              ^^^^^ error unknown-reference: expected watch
  tested: run, lever pass
`,
  ],
  [
    "an order is received that nobody gave",
    `
vehicle "Example"
  past: known

part lever "Lever"

day 2026-05-02
  ordered: 1 x lever at 3.00 GBP ref "JR-105"
day 2026-05-09
  received: order "JR-15"
                  ^^^^^^^ error unknown-reference: order "JR-15" leads to nothing: expected "JR-105"
  received: order "JR-105"
`,
  ],
])("%s", (_, story) => {
  const { complained, marked } = readStory(story);
  expect(complained).toEqual(marked);
});
