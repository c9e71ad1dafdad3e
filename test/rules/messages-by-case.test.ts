/** What a rule says where something else is the matter than in the example on its page. */
import { describe, expect, it } from "vitest";
import { said } from "./said.ts";

const EVENING = "\nday 2026-05-02\n";
const SEAT = 'job shakedown "Up the lane"\n\npart seat "Seat"\n\n';
const OLD = 'vehicle "Example"\n  past: unknown\n\n';
const PLANNED = 'hold road "Road"\n  needs: lives, systems, circuits\n  planned: 2026-06-05\n\n';
const BRACKET = 'joint bracket "Bracket"\n  friction: zinc\n';

const CASES: Readonly<Record<string, readonly (readonly [log: string, ...said: string[]])[]>> = {
  "a hold point that is passed": [
    [
      `${SEAT}hold first "First"\n  needs: parts\n\nhold road "Road"\n  after: first\n  needs: snags\n  stops: shakedown\n\nday 2026-05-01\n  removed: seat\n${EVENING}  started: shakedown\n`,
      "error past-hold: the job shakedown goes on past the shut hold point first (First), which comes before road, which stops it: it is not released",
    ],
    [
      `${SEAT}hold road\n  needs: parts\n  stops: shakedown\n\nday 2026-05-01\n  removed: seat\n  released: road\n${EVENING}  started: shakedown\n`,
      "error released-with-open-items: road stays shut with 1 item open: seat: off since 2026-05-01",
      "error past-hold: the job shakedown goes on past the shut hold point road, which stops it: its release on 2026-05-01 was refused",
    ],
    [
      `${SEAT}hold road "Road"\n  needs: parts\n  stops: shakedown\n\nday 2026-05-01\n  released: road\n${EVENING}  removed: seat\n\nday 2026-05-03\n  worked: 1 h on shakedown\n`,
      "warning release-lapsed: this takes back the release of road, open again: seat: off since 2026-05-02",
      "error past-hold: the job shakedown goes on past the shut hold point road (Road), which stops it: its release lapsed on 2026-05-02",
    ],
    [
      `${SEAT}hold road "Road"\n  needs: parts\n  stops: shakedown\n${EVENING}  removed: seet\n  released: road\n  started: shakedown\n`,
      "error unknown-reference: seet leads to nothing: expected seat",
      "error released-with-open-items: road (Road) stays shut with 1 item open: this line could not be read: removed: seet",
      "error past-hold: the job shakedown goes on past the shut hold point road (Road), which stops it: its release on 2026-05-02 was refused; this follows from nothing but lines that could not be read",
    ],
  ],
  "a name that leads nowhere": [
    [
      `part arm "Arm"\n  calc: gap = wob + 1 mm\n${EVENING}  calc: gap = wab + 1 mm\n  received: order "N-9"\n`,
      "error unknown-reference: wob leads to nothing",
      "error unknown-reference: wab leads to nothing",
      'error unknown-reference: order "N-9" leads to nothing: expected the ref of an order above',
    ],
    [
      `part arm "Arm"\n  size: width 3 mm\n  calc: gap = arm.widht + 1 mm\n`,
      "error unknown-reference: arm.widht leads to nothing: expected arm.width",
    ],
    [
      `job strip "Strip"\n  needs: 2 x zzd\n\njoint flange "Flange"\n  torque: 24 N.m\n  uses: 2 x zze\n${EVENING}  ordered: 1 x zza\n  decided: zzb renew\n  used: 1 x zzc\n`,
      ..."deabc"
        .split("")
        .map((name) => `error unknown-reference: zz${name} leads to nothing: expected the name of a part`),
    ],
    [
      `part hub "Hub"\n${EVENING}  changed: hub supplier zzz\n  changed: hub kit yyy\n`,
      "error unknown-reference: zzz leads to nothing: expected the name of a supplier",
      "error unknown-reference: yyy leads to nothing: expected the name of a part",
    ],
    [
      `part hubs "Hubs"\n\npart hubc "Hub cap"\n${EVENING}  removed: hubb\n`,
      "error unknown-reference: hubb leads to nothing: expected hubs or hubc",
    ],
    [
      `part hubs "Hubs"\n${EVENING}  torqued: zzz 20 N.m\n  opened: zzz\n  found: zzz worn\n`,
      "error unknown-reference: zzz leads to nothing: expected the name of a joint",
      "error unknown-reference: zzz leads to nothing: expected the name of a system",
      "error unknown-reference: zzz leads to nothing: expected the name of a part, a joint, a system, a circuit or a gauge",
    ],
  ],
  "a snag that is not there to be cleared": [
    [
      `assembly body "Body"\n${EVENING}  snag: rattle on body "r"\n  cleared: rattle\n\nday 2026-05-03\n  cleared: rattle\n`,
      "error cleared-unknown-snag: the snag rattle was cleared on 2026-05-02 already",
    ],
    [
      `assembly body "Body"\n${EVENING}  cleared: rattle\n`,
      "error cleared-unknown-snag: no snag rattle was noted before it is cleared: none is open",
    ],
  ],
  "a fastener": [
    [
      `${BRACKET}  bolt: 2 x M8x1.25x60 class 8.8\n  nut: plain M8x1.25 class 8 height 6.8 mm\n  grip: 20 mm\n  torque: 24 N.m\n`,
      "information bolt-too-long: bracket: the bolt comes 33.2 mm past the nut, 26.56 pitches: more than 10 are of no use",
      "error threadbound: bracket: the shank by ISO 888 is 38.0 mm and clamps 20.0 mm: expected no more shank than that, 18.0 mm less",
    ],
    [
      `${BRACKET}  bolt: 1 x M8x1.25x60 class 8.8\n  thread_length: 20 mm\n  nut: tapped 26 mm in steel\n  grip: 35 mm\n  torque: 24 N.m\n`,
      "error threadbound: bracket: the shank is 40.0 mm and clamps 35.0 mm: expected no more shank than that, 5.00 mm less",
    ],
    [
      `${BRACKET}  stud: 2 x M8x1.25x25 class 8.8\n  nut: plain M8x1.25 class 8 height 6.8 mm\n  grip: 20 mm\n  torque: 24 N.m\n`,
      "error bolt-too-short: bracket: the stud ends 9.80 mm inside the nut: expected at least 2 pitches past the nut, 2.50 mm",
    ],
    [
      `${BRACKET}  stud: 2 x M8x1.25x36 class 8.8\n  nut: plain M8x1.25 class 8 height 6.8 mm\n  grip: 20 mm\n  torque: 24 N.m\n`,
      "error bolt-too-short: bracket: the stud comes at most 1.20 mm past the nut, 0.96 pitches: expected at least 2 pitches past the nut, 2.50 mm",
    ],
    [
      `${BRACKET}  bolt: 2 x M8x1.25x30 class 8.8\n  torque: 34 N.m ± 10 %\n`,
      "error torque-over-proof: bracket: 37.4 N.m comes to 110 % of the proof load of class 8.8 (zinc: nut factor 0.20 (Shigley, Mechanical Engineering Design, Table 8-15 (from memory))), an estimate: expected under 90 %; if it is the maker's figure, check the friction",
    ],
    [
      // 33 N.m / (0.159 × 1.25 + 0.578 × 7.188 × 0.12 + 0.12 × 10.3 / 2) mm (VDI 2230) of 580 MPa × 36.6 mm² (ISO 898-1), by hand.
      'joint bracket "Bracket"\n  friction: thread 0.12 head 0.12\n  bolt: 2 x M8x1.25x30 class 8.8\n  torque: 30 N.m ± 10 %\n',
      "error torque-over-proof: bracket: 33 N.m comes to 118 % of the proof load of class 8.8 (thread 0.12, head 0.12), an estimate: expected under 90 %; if it is the maker's figure, check the friction",
    ],
    [
      `${BRACKET}  bolt: 2 x M8x1.25x30 class 8.8\n  torque: max 10 N.m\n`,
      "warning torque-low-preload: bracket: 10 N.m comes to at most 29 % of the proof load of class 8.8 (zinc: nut factor 0.20 (Shigley, Mechanical Engineering Design, Table 8-15 (from memory))), an estimate: expected at least 50 %",
    ],
    [
      `joint bracket "Bracket"\n  safety: critical\n${EVENING}  tightened: bracket\n`,
      "warning torque-not-stated: bracket: no torque is stated: expected torque: or set_by:",
      "warning tightened-by-feel: bracket can hurt and is tightened by feel: expected a torque for it",
    ],
    [
      `joint upper "Damper to frame"\n  safety: critical\n  nut: self_locking nylon M10x1.5 class 8\n  torque: 45 N.m\n${EVENING}  loosened: upper\n  torqued: upper 45 N.m\n`,
      "error self-locking-reused: upper was undone and is done up again on the same self-locking nut: expected new hardware",
    ],
  ],
  "a torque that cannot be read, once, though others are like it": [
    [
      'joint one "One"\n  torque: 24 nm\n\njoint two "Two" like one\n\njoint three "Three" like two\n',
      "error wrong-dimension: nm is nanometre; a torque needs N.m",
    ],
  ],
  "a joint on its way to the torque": [
    [
      `hold road "Road"\n  needs: snags\n\njoint arm "Arm"\n  torque: 60 N.m\n  after: road\n${EVENING}  torqued: arm 60 N.m\n`,
      "warning torqued-too-soon: arm is finally tightened before road is released: expected it only nipped",
    ],
    [
      `joint flange "Flange"\n  torque: 70 N.m\n${EVENING}  loosened: flange\n  nipped: flange\n  ran: vehicle 1 h\n`,
      "warning final-torque-waiting: flange is only nipped: expected it torqued by now",
    ],
    [
      `joint flange "Flange"\n  torque: 70 N.m\n  recheck: after 1 h running\n${EVENING}  torqued: flange 70 N.m\n  ran: vehicle 0.5 h\n  rechecked: flange 70 N.m moved\n  ran: vehicle 2 h\n`,
      "warning final-torque-waiting: flange has moved when it was checked: expected it torqued by now",
    ],
    [
      `joint flange "Flange"\n  lock: split_pin\n  torque: 20 N.m\n${EVENING}  loosened: flange\n  nipped: flange\n  locked: flange with split_pin\n  marked: flange\n`,
      "warning locked-before-torqued: flange is only nipped: expected it torqued before its split pin goes in",
      "warning marked-before-torqued: flange is only nipped: expected it torqued before it is marked",
    ],
    ...(
      [
        ["  as_found: shelf\n", "", "on the shelf"],
        ["", "  removed: disc\n", "off"],
        ["", "  removed: disc\n  sent: disc to ashworth\n", "away"],
      ] as const
    ).map(([found, facts, where]): readonly [string, ...string[]] => [
      `supplier ashworth "Ashworth"\n  lead: 3 d\n\npart disc "Disc"\n  price: 4 GBP\n  supplier: ashworth\n${found}\njoint flange "Flange"\n  joins: disc\n  torque: 20 N.m\n${EVENING}${facts}  loosened: flange\n  torqued: flange 20 N.m\n`,
      `error torqued-before-fitted: flange holds disc, which is ${where}: expected it on`,
    ]),
    [
      `part disc "Disc"\n  as_found: missing\n\njoint flange "Flange"\n  joins: disc\n  torque: 20 N.m\n${EVENING}  loosened: flange\n  torqued: flange 20 N.m\n`,
      "information missing-undecided: disc is missing and nothing is decided about it: expected renew, make or scrap",
      "error torqued-before-fitted: flange holds disc, which is missing: expected it on",
    ],
  ],
  "a reading": [
    [
      `gauge dti "Dial gauge"\n  reads: 0..10 mm\n  calibrated: 2026-03-01 for 12 month\n\npart disc "Disc"\n  limit: runout max 0.10 mm\n${EVENING}  measured: disc runout 0.05 mm with dti\n\nday 2026-05-09\n  found: dti out_of_date\n`,
      "warning gauge-in-doubt: dti was found out of date on 2026-05-09 and was last known good on 2026-03-01: expected this reading to be taken again",
    ],
    ...(
      [
        ["3 %", "28.0 N/mm ± 1 N/mm", "27.5 N/mm ± 1 N/mm"],
        ["1 N/mm", "28.0 N/mm", "25.0 N/mm"],
      ] as const
    ).map(([within, left, right]): readonly [string, string] => [
      `part left.spring "Spring"\n  pair: rate with right.spring.rate within ${within}\n\npart right.spring "Spring"\n${EVENING}  measured: left.spring rate ${left}\n  measured: right.spring rate ${right}\n`,
      within === "3 %"
        ? "warning pair-differs: left.spring.rate and right.spring.rate differ by 0.5 N/mm ± 1.41 N/mm: too near to the 3 %, 0.84 N/mm allowed to prove that they agree"
        : "warning pair-differs: left.spring.rate and right.spring.rate differ by 3.0 N/mm: expected at most 1 N/mm",
    ]),
    ...(
      [
        [
          "clearance",
          "19.98 mm ± 0.01 mm",
          "20.01 mm ± 0.01 mm",
          "warning fit-out-of-range: clearance of pin.diameter in bush.bore is 0.03 mm ± 0.0141 mm: too near to its limit to prove the at most 0.04 mm that it must be",
        ],
        [
          "clearance",
          "19.98 mm ± 0.01 mm",
          "20.00 mm ± 0.01 mm",
          "warning fit-out-of-range: clearance of pin.diameter in bush.bore is 0.02 mm ± 0.0141 mm: too near to its limit to prove the at least 0.01 mm that it must be",
        ],
        [
          "interference",
          "20.00 mm",
          "19.995 mm",
          "error fit-out-of-range: interference of pin.diameter in bush.bore is 0.005 mm: expected at least 0.01 mm, it is 0.005 mm less",
        ],
      ] as const
    ).map(([sense, pin, bush, words]): readonly [string, string] => [
      `part pin "King pin"\n  fit: diameter in bush.bore ${sense} 0.01..0.04 mm\n\npart bush "Bush"\n${EVENING}  measured: pin diameter ${pin}\n  measured: bush bore ${bush}\n`,
      words,
    ]),
    [
      `assembly corner "Corner"\n  setting: camber -1.5 deg ± 0.25 deg\n${EVENING}  set: corner camber -2.5 deg\n`,
      "warning setting-out-of-range: camber -2.5 deg is under -1.75 deg, the end of its tolerance, by 0.75 deg",
    ],
    [
      `part disc "Disc"\n  limit: thickness min 8.4 mm new 9.5 mm\n${EVENING}  measured: disc thickness 9.4 mm\n  ran: vehicle 10 h\n\nday 2026-05-20\n  measured: disc thickness 8.8 mm\n`,
      "information wear-rate: thickness changes by -0.0600 mm/h: at that rate it reaches 8.4 mm after another 6.67 h of running",
    ],
    ...(
      [
        ["292 mm", "29.2 mm", "1/10 of"],
        ["2.92 mm", "29.2 mm", "10 times"],
      ] as const
    ).map(([size, reading, times]): readonly [string, string] => [
      `part spring "Spring"\n  size: free_length ${size}\n${EVENING}  measured: spring free_length ${reading}\n`,
      `warning implausible-value: free_length ${reading} is ${times} the ${size} expected: a slipped decimal, or another unit?`,
    ]),
  ],
  "a reading of another kind than its limit": [
    ...(
      [
        ["weight max 3 kg", "6'", "error wrong-dimension: 6' is not read here: expected a mass, as in 3 kg"],
        [
          "width max 3 ft",
          "2 kg",
          "error wrong-dimension: 2 kg is not read here: expected a length, as in 3 ft",
        ],
        [
          "lean max 3 deg",
          "2 kg",
          "error wrong-dimension: 2 kg is not read here: expected an angle, as in 3 deg",
        ],
        ["width max 3 ft", "2'", "error unknown-unit: ' is no unit here: expected a length, as in 3 ft"],
      ] as const
    ).map(([limit, reading, words]): readonly [string, string] => [
      `part hub "Hub"\n  limit: ${limit}\n${EVENING}  measured: hub ${limit.split(" ")[0]} ${reading}\n`,
      words,
    ]),
  ],
  "what is too old": [
    [
      `part magneto "Magneto"\n  service: every 24 month\n  price: 4 GBP\n\nday 2024-02-01\n  removed: magneto\n  decided: magneto renew\n  bought: 1 x magneto\n  fitted: magneto\n`,
      "warning service-due: magneto is not serviced yet: expected a service by 2026-02-01, every 24 month",
    ],
    [
      `${OLD}${PLANNED}part magneto "Magneto"\n  service: every 24 month\n\nsystem gearbox "Gearbox"\n  fluid: "SAE 90"\n  change: every 24 month\n\nsystem axle "Axle"\n  change: every 24 month\n`,
      "warning service-due: when magneto was serviced is unknown: expected a service every 24 month",
      "warning fluid-change-due: when the fluid of gearbox (SAE 90) was changed is unknown: expected a change every 24 month",
      "warning fluid-change-due: when the fluid of axle was changed is unknown: expected a change every 24 month",
    ],
    [
      `part tank "Tank"\n  life: 20 h running\n${EVENING}  removed: tank\n  fitted: tank\n  ran: vehicle 30 h\n`,
      "error life-expired: tank has run 30 h: expected less than its life of 20 h",
    ],
    [
      `part bottle "Extinguisher"\n  price: 48.00 GBP\n  expires: 2026-07-31\n\nhold climb\n  needs: lives\n  planned: 2026-08-15\n`,
      "warning life-ends-soon: the life of bottle ends on 2026-07-31: expected it good for climb on 2026-08-15",
    ],
  ],
  "systems and circuits that are not ready": [
    [
      // A proof that is none has its own complaint, and needs no second.
      `${PLANNED}system clutch "Clutch"\n  pressure_test: 40 bar\n${EVENING}  opened: clutch\n  filled: clutch 1 l\n  proved: clutch at 30 bar\n`,
      "error proved-while-open: this proof of clutch is none: 30 bar where 40 bar is asked for",
    ],
    [
      `hold road "Road"\n  needs: tests, circuits\n\ncircuit lamp "Lamp"\n  test: glows\n  load: 2 A\n${EVENING}  released: road\n`,
      "information circuit-untested: lamp has not been tested: expected a test that passes",
      "error released-with-open-items: road (Road) stays shut with 1 item open: lamp: not tested: not tried",
    ],
    [
      `hold road "Road"\n  needs: tests\n\ncircuit lamp "Lamp"\n  test: glows\n\npart arm "Arm"\n  test: free "by hand"\n${EVENING}  released: road\n`,
      "error released-with-open-items: road (Road) stays shut with 2 items open: lamp: test glows: not tried and arm: test free (by hand): not tried",
    ],
    [
      `${PLANNED}system clutch "Clutch"\n  bleed: yes\n${EVENING}  drained: clutch\n`,
      "warning opened-not-bled: clutch was opened on 2026-05-02 and not filled since: expected it filled, and then bled",
    ],
    [
      `${PLANNED}system clutch "Clutch"\n  pressure_test: 40 bar\n${EVENING}  opened: clutch\n  filled: clutch 1 l\n`,
      "warning not-proved: clutch was opened on 2026-05-02 and not proved since: expected 40 bar",
    ],
    [
      'circuit lamp "Lamp"\n  load: 10 A\n  wire: 1 mm2\n  length: 4 m\n  drop: max 0.1 V\n',
      "warning voltage-drop: 1.38 V is lost at 10 A on the way there and back: expected at most 0.1 V",
    ],
    [
      `${PLANNED}circuit lamp "Lamp"\n  load: 10 A\n${EVENING}  tested: lamp fail\n`,
      "information circuit-untested: lamp has failed its test: expected a test that passes",
    ],
    // Of one family, by the standard that names both: common practice, no source.
    [`system brakes "Brakes"\n  fluid: "DOT 4"\n${EVENING}  filled: brakes 1 l with "DOT 5.1"\n`],
    ...(
      [
        ["DOT 5", ": silicone and glycol fluids are never mixed without a flush and new seals"],
        ["mineral LHM", ": mineral and glycol fluids are never mixed without a flush and new seals"],
        ["HS-1", ""],
      ] as const
    ).map(([filled, mixed]): readonly [string, string] => [
      `system brakes "Brakes"\n  fluid: "DOT 4"\n${EVENING}  filled: brakes 1 l with "${filled}"\n`,
      `error wrong-fluid: brakes is filled with ${filled}, expected DOT 4${mixed}`,
    ]),
  ],
  "a setting of another kind": [
    // It counts as not set: nothing is known of the camber.
    [
      `hold road "Road"\n  needs: settings\n\nassembly front "Front"\n  setting: camber -1 deg ± 0.25 deg\n${EVENING}  set: front camber 3 mm\n  released: road\n`,
      "error wrong-dimension: 3 mm is not read here: expected an angle, as in -1 deg",
      "error released-with-open-items: road (Road) stays shut with 1 item open: front: camber is not set",
    ],
    [
      `hold road "Road"\n  needs: settings\n\nassembly front "Front"\n  setting: camber -1 deg ± 0.25 deg\n${EVENING}  set: front camber -1.1 deg\n  released: road\n`,
    ],
  ],
  "a second pair of eyes": [
    [
      `${PLANNED.replace("lives", "parts, lives")}part arm "Arm"\n  second_check: yes\n${EVENING}  removed: arm\n  fitted: arm\n`,
      "warning not-seen: arm is done and not seen by a second pair of eyes: expected seen:",
    ],
    ...["repaired: arm", "reconditioned: arm", "inspected: arm by penetrant"].map(
      (work): readonly [string, string] => [
        `part arm "Arm"\n  second_check: yes\n${EVENING}  removed: arm\n  ${work} by "JR"\n  seen: arm by "JR"\n  seen: arm by "KT"\n`,
        "error seen-by-same: arm was done by JR and seen by JR: expected somebody else",
      ],
    ),
    // Who cleaned it has not looked at the work.
    [
      `part arm "Arm"\n  second_check: yes\n${EVENING}  removed: arm\n  cleaned: arm by solvent by "JR"\n  seen: arm by "JR"\n`,
    ],
  ],
  "calculations that go round": [
    [
      "calc: a = b\n  calc: b = a\n",
      "error calc-cycle: a builds on b builds on a: expected one of them to start from figures",
    ],
    [
      'part arm "Arm"\n  calc: a = b\n  calc: b = a\n',
      "error calc-cycle: arm.a builds on arm.b builds on arm.a: expected one of them to start from figures",
    ],
  ],
  "what goes back too early": [
    ...(
      [
        ["renew", "to be a new one"],
        ["make", "to be the one that was made"],
        ["scrap", "to be another one"],
      ] as const
    ).map(([decision, expected]): readonly [string, string] => [
      `part arm "Arm"\n  as_found: shelf\n  stock: 1\n  price: 4 GBP\n${EVENING}  decided: arm ${decision}\n  fitted: arm\n`,
      `error fitted-condemned: arm goes back although it was decided ${decision}: expected it ${expected} first`,
    ]),
    [
      `part ring "Ring"\n  single_use: yes\n  price: 4 GBP\n${EVENING}  removed: ring\n  fitted: ring\n`,
      "error single-use-refitted: ring is used once and was off: expected 1 new, and 0 are in hand",
    ],
    [
      `part upright "Upright"\n  material: aluminium\n${EVENING}  removed: upright\n  cleaned: upright by blasting\n  inspected: upright by penetrant\n`,
      "warning inspection-method: penetrant may find nothing on upright, blasted before: expected the face opened by etching or chemical stripping",
    ],
    [
      `supplier ashworth "Ashworth"\n\npart spring "Spring"\n\npart bolt "Bolt 12.9"\n${EVENING}  sent: spring, bolt to ashworth for "chrome plate" due 2026-06-10\n`,
      'warning embrittlement: spring and bolt sent out for "chrome plate" can turn brittle with hydrogen: expected the plater asked about baking, or another coating; the maker\'s manual, local rules and a licensed practitioner come first',
    ],
  ],
  "hours of a day": [
    [
      'job strip "Strip"\n\nday 2026-05-02 30 h\n  worked: 5 h on strip\n',
      "error hours-over-day: the day has 30 h: expected at most 24 h",
    ],
    [
      'hands: 2\n\njob strip "Strip"\n\nday 2026-05-02 6 h\n  worked: 15 h on strip\n',
      "error hours-over-day: 15 h of work are booked by 2 pairs of hands: expected at most the 6 h of the day for each",
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
