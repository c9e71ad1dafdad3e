/** What a rule says in each of its cases: its page shows one of them. */
import { describe, expect, it } from "vitest";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { readLogs } from "./read-log.ts";
import { said } from "./said.ts";

const EVENING = "\nday 2026-05-02\n";
const ROAD = 'hold road "Road"\n  needs: joints, systems\n  planned: 2026-06-05\n\n';
const FROM_CLASS = "  bolt: 2 x M8x1.25x30 class 8.8\n  torque: from class\n  friction: zinc\n";

function flange(lines: string, day = ""): string {
  return `joint flange "Flange"\n${lines}${day === "" ? "" : `${EVENING}${day}`}`;
}

/** A joint that is locked, undone and tightened again. */
function locked(lines: string, day: string): string {
  return `${ROAD}${flange(`  torque: 24 N.m\n${lines}`, `  loosened: flange\n${day}`)}`;
}

const CASES: Readonly<Record<string, readonly (readonly [log: string, ...said: string[]])[]>> = {
  "a bolt that is too short, or has too little to hold it": [
    [
      flange(
        "  bolt: 2 x M8x1.25x25 class 8.8\n  nut: plain M8x1.25 class 8\n  grip: 17 mm\n  torque: 24 N.m\n  friction: zinc\n",
      ),
      "error bolt-too-short: flange: the bolt comes 1.60 mm past the nut, 1.28 pitches: expected at least 2 pitches past the nut, 2.50 mm; the nut is taken as 0.8 d high",
    ],
    [
      flange(
        "  bolt: 2 x M8x1.25x20 class 8.8\n  nut: plain M8x1.25 class 8 height 6.8 mm\n  grip: 17 mm\n  torque: 24 N.m\n  friction: zinc\n",
      ),
      "error bolt-too-short: flange: the bolt ends 3.80 mm inside the nut: expected at least 2 pitches past the nut, 2.50 mm",
    ],
    [
      flange(
        "  bolt: 2 x M8x1.25x25 class 8.8\n  nut: tapped 22 mm in aluminium\n  grip: 17 mm\n  torque: 20 N.m\n  friction: zinc\n",
      ),
      "error bolt-too-short: flange: the bolt reaches 8.00 mm into the hole: expected 16.0 mm of full thread (2 d in aluminium), 8.00 mm more",
    ],
    [
      flange(
        "  bolt: 2 x M8x1.25x30 class 8.8\n  nut: plain M8x1.25 class 8 height 6 mm\n  grip: 12 mm\n  torque: 22 N.m\n  friction: zinc\n",
      ),
      "warning engagement-short: flange: the nut is 6 mm high, 0.75 d: expected at least 6.40 mm for its class",
    ],
    [
      flange(
        "  nut: tapped 22 mm in plastic\n  bolt: 2 x M8x1.25x30 class 8.8\n  grip: 12 mm\n  torque: 22 N.m\n  friction: zinc\n",
      ),
      "error engagement-short: flange: the thread is cut in plastic: expected a thread insert",
    ],
  ],
  "a lock": [
    [
      locked("  lock: split_pin\n", "  torqued: flange 24 N.m\n"),
      "warning lock-missing: flange is tightened and not locked: expected split pin",
    ],
    [
      locked("  lock: split_pin\n", "  torqued: flange 24 N.m\n  locked: flange with tab_washer\n"),
      "warning lock-missing: flange is locked with tab washer: expected split pin",
    ],
    [
      locked(
        "  lock: threadlocker\n",
        "  torqued: flange 24 N.m\n\nday 2026-05-03\n  locked: flange with threadlocker\n",
      ),
      "warning lock-missing: flange has threadlocker, but not of the day of its final torque: expected it said before or with the torque",
    ],
    [
      locked(
        "  lock: threadlocker\n  friction: moly\n",
        "  locked: flange with threadlocker\n  torqued: flange 24 N.m\n",
      ),
      "warning lock-missing: flange is locked by threadlocker, and its threads are coated with moly: expected them clean and dry",
    ],
    [
      locked(
        "  lock: threadlocker\n  friction: oiled\n",
        "  locked: flange with threadlocker\n  torqued: flange 24 N.m\n",
      ),
      "warning lock-missing: flange is locked by threadlocker, and its threads are oiled: expected them clean and dry",
    ],
    [
      `part tabs "Tab washer"\n  as_found: shelf\n  stock: 1\n\n${flange("  torque: 24 N.m\n  lock: tab_washer\n  uses: 3 x tabs\n", "  loosened: flange\n  torqued: flange 24 N.m\n  locked: flange\n")}`,
      "error single-use-refitted: flange was undone and takes 3 new tabs: 1 is in hand",
    ],
  ],
  "a torque from the strength class": [
    [
      flange("  bolt: 2 x M8x1.25x30\n  torque: from class\n  friction: zinc\n"),
      "warning torque-not-stated: flange: torque from class cannot be computed without its class: expected it, or the maker's figure",
    ],
    [
      flange("  torque: from class\n  friction: zinc\n"),
      "warning torque-not-stated: flange: torque from class cannot be computed without a bolt: expected it, or the maker's figure",
    ],
    [
      flange(`  safety: critical\n${FROM_CLASS}`),
      "warning torque-not-stated: flange: torque from class, and its failure can hurt: expected the maker's figure",
    ],
    [
      flange(FROM_CLASS.replace("8.8", "A2-70")),
      "error torque-not-stated: flange: torque from class, and it has stainless in it: expected the maker's figure",
    ],
    [
      flange(`${FROM_CLASS}  nut: tapped 25 mm in aluminium\n  grip: 10 mm\n`),
      "error torque-not-stated: flange: torque from class, and its thread is cut in aluminium: expected the maker's figure",
    ],
    [
      `part pipe "Pipe"\n  material: copper\n\n${flange(`  joins: pipe\n${FROM_CLASS}`)}`,
      "error torque-not-stated: flange: torque from class, and it clamps copper: expected the maker's figure",
    ],
    [
      `${flange(FROM_CLASS).replace("flange", "pivot_bolt")}`,
      "error torque-not-stated: pivot_bolt: torque from class, and it is a pivot: expected the maker's figure",
    ],
  ],
  "a torque that is not the one asked for": [
    [
      flange("  torque: min 20 N.m\n", "  torqued: flange 18 N.m\n"),
      "error torque-outside: flange: torque 18 N.m is under 20 N.m by 2 N.m: expected at least 20 N.m",
    ],
    [
      flange("  torque: max 20 N.m\n", "  torqued: flange 24 N.m\n"),
      "error torque-outside: flange: torque 24 N.m is over 20 N.m by 4 N.m: expected at most 20 N.m",
    ],
    [
      flange("  torque: 20 N.m ± 10 %\n", "  torqued: flange 24 N.m\n"),
      "error torque-outside: flange: torque 24 N.m is over 22 N.m by 2 N.m: expected 18 N.m to 22 N.m",
    ],
    [
      flange("  torque: 20 N.m then 90 deg\n", "  torqued: flange 20 N.m\n"),
      "error torque-outside: flange: the torque is written without the angle: expected then 90 deg",
    ],
    [
      flange("  torque: 20 N.m\n", "  torqued: flange 20 N.m then 30 deg\n"),
      "error torque-outside: flange: turned 30 deg behind the torque: expected the torque alone",
    ],
    [
      flange("  torque: 20 N.m then 90 deg\n", "  torqued: flange 20 N.m then 120 deg\n"),
      "error torque-outside: flange: angle 120 deg is over 99 deg by 21 deg: expected 81 deg to 99 deg",
    ],
    ...(["21.9", "18.1"] as const).map((reading): readonly [string, string] => [
      `gauge wrench "Wrench"\n  reads: 5..50 N.m\n  uncertainty: ± 4 %\n\n${flange("  torque: 20 N.m ± 10 %\n", `  torqued: flange ${reading} N.m with wrench\n`)}`,
      reading === "21.9"
        ? "warning torque-outside: flange: torque 21.9 N.m ± 0.876 N.m reaches over the limit of 22 N.m: the wrench cannot prove it"
        : "warning torque-outside: flange: torque 18.1 N.m ± 0.724 N.m reaches under the limit of 18 N.m: the wrench cannot prove it",
    ]),
  ],
  "a measurement": [
    [
      `gauge dti "Dial gauge"\n  reads: 0..10 mm\n\npart disc "Disc"\n  limit: runout max 0.10 mm\n${EVENING}  measured: disc runout 0.05 mm with dti\n\nday 2026-05-09\n  found: dti wrong\n`,
      "warning gauge-in-doubt: dti was found wrong on 2026-05-09: expected this reading to be taken again",
    ],
    [
      `gauge wrench "Wrench"\n  reads: 5..200 N.m\n\n${flange("  torque: 20 N.m\n", "  torqued: flange 20 N.m with wrench\n")}`,
      "warning gauge-too-coarse: 20 N.m is 10 % of the 200 N.m that wrench reads up to: expected at least 20 %",
    ],
    [
      `hold road "Road"\n  needs: limits\n\npart disc "Disc"\n  limit: thickness min 8.4 mm\n${EVENING}  released: road\n`,
      "hint limit-not-measured: thickness of disc is not measured, and it was released by road: expected a reading against its limit",
    ],
    [
      `part disc "Disc"\n${EVENING}  measured: disc width 9.2 mm\n`,
      "hint measured-without-limit: disc has no limit called width",
    ],
    [
      `part disc "Disc"\n  limit: thickness min 8.4 mm\n  limit: runout max 0.1 mm\n${EVENING}  measured: disc width 9.2 mm\n`,
      "hint measured-without-limit: disc has no limit called width; it has thickness and runout",
    ],
    [
      `part disc "Disc"\n  limit: thickness min 8.4 mm new 9.5 mm\n${EVENING}  measured: disc thickness 9.3 mm\n\nday 2026-05-20\n  measured: disc thickness 8.8 mm\n`,
      "information wear-rate: thickness changes by -0.0278 mm/d: at that rate it reaches 8.4 mm after 14.4 d",
    ],
  ],
  "what is in hand and what is on its way": [
    [
      `part kit "Kit"\n  price: 2 GBP\n  stock: 2\n  keep: 10\n${EVENING}  ordered: 6 x kit\n\nday 2026-05-03\n  received: 2 x kit\n`,
      "information below-keep: 4 of kit in hand, 4 on order: expected at least 10",
    ],
    ['part kit "Kit"\n  price: 2 GBP\n  stock: 10\n  keep: 10\n'],
    [
      'part kit "Kit"\n  price: 2 GBP\n  stock: 9\n  keep: 10\n',
      "information below-keep: 9 of kit in hand: expected at least 10",
    ],
    [
      `supplier northgate "Northgate"\n  lead: 10 d\n\npart kit "Kit"\n  price: 2 GBP\n  supplier: northgate\n${EVENING}  ordered: 3 x kit\n`,
      "warning delivery-overdue: 3 of 3 kit expected by its lead time on 2026-05-12: 20 days overdue",
    ],
    [
      `part kit "Kit"\n  price: 2 GBP\n${EVENING}  ordered: 3 x kit due 2026-05-31\n`,
      "warning delivery-overdue: 3 of 3 kit due on 2026-05-31: 1 day overdue",
    ],
    [`part kit "Kit"\n  price: 2 GBP\n${EVENING}  ordered: 3 x kit due 2026-06-01\n`],
    [`part kit "Kit"\n  price: 2 GBP\n${EVENING}  ordered: 3 x kit\n`],
    [
      `part hose "Hose"\n  count: 3\n${EVENING}  removed: hose\n  decided: hose renew\n  bought: 1 x hose at 16 GBP\n  fitted: hose\n`,
      "error fitted-not-in-hand: hose needs 3 new (decided renew); 1 of them in hand",
    ],
    [
      `part hose "Hose"\n  as_found: missing\n${EVENING}  fitted: hose\n`,
      "error fitted-not-in-hand: hose needs 1 new; none is in hand",
    ],
    [
      'part cap "Cap"\n  as_found: missing\n',
      "information missing-undecided: cap is missing and nothing is decided about it: expected renew, make or scrap",
    ],
  ],
  "money in a currency without a rate, of what is still to be ordered": [
    [
      'currency: GBP\n\npart clip "Clip"\n  as_found: missing\n\npart core "Core"\n  as_found: missing\n  price: 265.00 EUR\n\nday 2026-05-02\n  decided: clip renew\n  decided: core renew\n',
      "hint price-missing: clip has to be ordered (1) and has no price: expected price: and an amount",
      "error currency-without-rate: no rate leads from EUR to the currency of the build: expected rate: 1 EUR = … in the vehicle",
    ],
  ],
  "systems and circuits": [
    ['circuit fan "Fan"\n  load: 12 A\n  fuse: 15 A\n'],
    [
      'circuit fan "Fan"\n  load: 15 A\n  fuse: 15 A\n',
      "warning fuse-under-load: the load of 15 A is 100 % of its fuse of 15 A: expected at most 80 %, the next is 20 A; inrush and stall are not judged",
    ],
    [
      'circuit fan "Fan"\n  load: 150 A\n  fuse: 100 A\n',
      "error fuse-under-load: the load of 150 A is over its fuse of 100 A: expected at most 80 %, no blade fuse is that large; inrush and stall are not judged",
    ],
    ...(
      [
        ["max 3 %", "there and back", "1.26 V (10.5 %)", "3 %"],
        ["max 0.1 V\n  return: frame", "there, the frame leading back", "0.632 V (5.27 %)", "0.1 V"],
      ] as const
    ).map(([drop, way, lost, most]): readonly [string, string] => [
      `circuit lamp "Lamp"\n  supply: 12 V\n  load: 110 W\n  wire: 1 mm2\n  length: 4 m\n  drop: ${drop}\n`,
      `warning voltage-drop: ${lost} is lost at 9.17 A on the way ${way}: expected at most ${most}`,
    ]),
    [
      `system clutch "Clutch"\n  pressure_test: 40 bar for 2 min\n${EVENING}  opened: clutch\n  proved: clutch at 40 bar for 2 min\n`,
      "error proved-while-open: this proof of clutch is none: it has been neither filled nor bled since it was opened",
    ],
    [
      `system clutch "Clutch"\n  pressure_test: 40 bar for 2 min\n${EVENING}  proved: clutch at 40 bar for 1 min\n`,
      "error proved-while-open: this proof of clutch is none: it was held for 1 min where 2 min is asked for",
    ],
    [
      `${ROAD}system clutch "Clutch"\n  bleed: yes\n${EVENING}  opened: clutch\n  filled: clutch 0.2 l\n`,
      "warning opened-not-bled: clutch was opened on 2026-05-02 and not bled since: expected it bled",
    ],
    [
      `${ROAD}system oil "Oil"\n${EVENING}  opened: oil\n`,
      "warning opened-not-bled: oil was opened on 2026-05-02 and not filled since: expected it filled",
    ],
  ],
  "a fluid, by its name where it has one": [
    [
      'system gearbox "Gearbox"\n  capacity: 1.1 l\n  change: every 24 month\n\nday 2024-05-02\n  filled: gearbox 1.1 l\n',
      "warning fluid-change-due: the fluid of gearbox is of 2024-05-02: expected a change by 2026-05-02, every 24 month",
    ],
    [
      'system gearbox "Gearbox"\n  fluid: "SAE 90"\n  capacity: 1.1 l\n  change: every 24 month\n\nday 2024-05-02\n  filled: gearbox 1.1 l\n',
      "warning fluid-change-due: the fluid of gearbox (SAE 90) is of 2024-05-02: expected a change by 2026-05-02, every 24 month",
    ],
  ],
  "a release, by the first three things that are open": [
    [
      `hold road "On the road"\n  needs: parts\n\npart one "1"\npart two "2"\npart three "3"\npart four "4"\npart five "5"\n${EVENING}  removed: one, two, three, four, five\n  released: road\n`,
      "error released-with-open-items: road (On the road) stays shut with 5 items open: one: off since 2026-05-02, two: off since 2026-05-02, three: off since 2026-05-02 and 2 more",
    ],
    [
      `hold road\n  needs: parts\n\npart one "1"\npart two "2"\npart three "3"\n${EVENING}  removed: one, two, three\n  released: road\n`,
      "error released-with-open-items: road stays shut with 3 items open: one: off since 2026-05-02, two: off since 2026-05-02 and three: off since 2026-05-02",
    ],
  ],
  "what a release finds wanting of a joint": [
    [
      `hold road "Road"\n  needs: joints\n\n${flange("  torque: 24 N.m\n  lock: split_pin\n", "  loosened: flange\n  torqued: flange 24 N.m\n  locked: flange with tab_washer\n  released: road\n")}`,
      "warning lock-missing: flange is locked with tab washer: expected split pin",
      "error released-with-open-items: road (Road) stays shut with 1 item open: flange: not secured: locked with tab washer, not with split pin",
    ],
    [
      `hold road "Road"\n  needs: joints\n\npart hub "Hub"\n\njoint flange "Flange"\n  joins: hub\n  torque: 24 N.m\n${EVENING}  loosened: flange\n  removed: hub\n  fitted: hub for trial\n  torqued: flange 24 N.m\n  released: road\n`,
      "error released-with-open-items: road (Road) stays shut with 1 item open: flange: not secured: hub is on for trial only",
    ],
  ],
  "values that cannot be meant": [
    [
      "closed: 2026-05-03..2026-05-02\n",
      "error unreadable-value: 2026-05-02 is not read here: expected a day that is not before 2026-05-03",
    ],
    ["closed: 2026-05-03..2026-05-03\n"],
    [
      'part kit "Kit"\n  price: 2 GBP\n  stock: -1\n',
      "error unreadable-value: -1 is not read here: expected a whole number, not negative",
    ],
    [
      flange("  bolt: 0 x M8x30\n  torque: 24 N.m\n"),
      "error unreadable-value: 0 is not read here: expected a whole number, at least 1",
    ],
    ['part M8 "Bolt"\n', "error reserved-name: M8 reads as a thread: expected another name for this part"],
    [
      'part on "On"\n',
      "error reserved-name: on is a word of the notation: expected another name for this part",
    ],
  ],
  "what waits, and what goes back too early": [
    [
      `hold road "Road"\n  needs: snags\n\n${flange("  torque: 70 N.m\n  after: road\n", "  loosened: flange\n  nipped: flange\n")}`,
      "information final-torque-waiting: flange is only nipped until road is released",
    ],
    [
      `job alignment "Alignment"\n\n${flange("  torque: 70 N.m\n  after: alignment\n", "  loosened: flange\n  nipped: flange\n  ran: vehicle 1 h\n")}`,
      "warning final-torque-waiting: flange is only nipped, waits until alignment is started, and has run: expected it torqued",
    ],
    ...(
      [
        ["found: arm bent", "found bent: expected it repaired or renewed"],
        [
          "decided: arm recondition",
          "decided recondition: expected it reconditioned with its kit in hand, or back",
        ],
        ["decided: arm repair", "decided repair: expected it repaired, or back"],
      ] as const
    ).map(([fact, why]): readonly [string, string] => [
      `part arm "Arm"\n${EVENING}  removed: arm\n  ${fact}\n  fitted: arm\n`,
      `error fitted-condemned: arm goes back although it was ${why} first`,
    ]),
  ],
  "words and units that are not known": [
    [`part hub "Hub"\n  size: width 6 inches\n`, "error unknown-unit: inches is no unit here: written in"],
    [
      `part hub "Hub"\n  size: width 6 qqq\n`,
      "error unknown-unit: qqq is no unit here: expected a figure with its unit, such as 9.12 mm",
    ],
    [`part hub "Hub"\n${EVENING}  zzzz: hub\n`, "error unknown-record: zzzz is no record word"],
    [
      `part hub "Hub"\n${EVENING}  coated: hub\n`,
      "error unknown-record: coated is no record word; counted is",
    ],
    [
      `part hub "Hub"\n  material: ${"x".repeat(60)}\n`,
      `error unreadable-value: ${"x".repeat(39)}… is not read here: expected one of steel cast_iron aluminium magnesium titanium brass bronze copper copper_nickel composite rubber plastic glass timber leather`,
    ],
  ],
  "work that hides a fault, or makes one": [
    [
      `part pipe "Pipe"\n  material: copper_nickel\n${EVENING}  inspected: pipe by magnetic_particle\n`,
      "error inspection-method: pipe of copper nickel cannot be tested by magnetic particles: expected penetrant",
    ],
    [
      `supplier ashworth "Ashworth"\n\npart spring "Road spring"\n${EVENING}  sent: spring to ashworth for "zinc plate" due 2026-06-10\n`,
      'warning embrittlement: spring sent out for "zinc plate" can turn brittle with hydrogen: expected the plater asked about baking, or another coating; the maker\'s manual, local rules and a licensed practitioner come first',
    ],
  ],
};

describe.each(Object.entries(CASES))("of %s", (_, cases) => {
  it.each(cases.map(([log, ...expected]) => ({ log, expected })))(
    "is said: $expected",
    ({ log, expected }) => {
      expect(said(log)).toEqual(expected);
    },
  );
});

it("what leans on a system is shown with its part in it", () => {
  const roles = (leaning: string) => {
    const text = `vehicle "Example"\n\nhold road "Road"\n  needs: systems\n  planned: 2026-06-05\n\nsystem oil "Oil"\n${EVENING}  opened: oil\n${leaning}`;
    const { complaints } = complaintsOf(readLogs([{ path: "log.cotter", text }]));
    return complaints
      .filter(({ code }) => code === "opened-not-bled")
      .flatMap(({ seeAlso }) => seeAlso.map(({ message }) => message));
  };
  expect(roles("")).toEqual(["road is planned"]);
  expect(roles("  released: road\n")).toEqual(["released road"]);
  expect(roles("  ran: vehicle 1 h\n")).toEqual(["running"]);
});
