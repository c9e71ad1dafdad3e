import { expect, it } from "vitest";
import { readStory } from "../story.ts";

it("a caliper is reconditioned with its kit, and its circuit is closed again in order", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

supplier tatlow "Tatlow Hydraulics"

part front.caliper "Front caliper"
  safety: critical
  kit: front.seal_kit

part front.hose "Front hose"
  safety: critical

part front.seal_kit "Caliper seal kit"
  as_found: shelf
  price: 24.50 GBP
  supplier: tatlow

joint front.banjo "Hose to caliper"
  joins: front.hose, front.caliper
  torque: 20 N.m ± 10 %
  lock: none

system brakes "Front brake circuit"
  fluid: "DOT 4"
  capacity: 0.4 l
  parts: front.caliper, front.hose
  bleed: yes
  pressure_test: 70 bar for 2 min

hold brakes_ok "Brakes, before it moves"
  covers: brakes, front
  needs: parts, joints, systems

day 2026-05-02 3 h
  removed: front.caliper
  ^^^^^^^^^^^^^^^^^^^^^^ information safety-caution: what was bled is never used again
  found: front.caliper seized
  decided: front.caliper recondition
  bought: 1 x front.seal_kit at 24.50 GBP from tatlow

day 2026-05-09 3 h
  reconditioned: front.caliper
  fitted: front.caliper
  ^^^^^^^^^^^^^^^^^^^^^ information safety-caution: pump the pedal until it is hard
  proved: brakes at 70 bar for 2 min
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error proved-while-open: neither filled nor bled since it was opened
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ information safety-caution: test with liquid, never with air
  torqued: front.banjo 20 N.m
  filled: brakes 0.35 l with "DOT 4"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ information safety-caution: what was bled is never used again
  bled: brakes
  proved: brakes at 60 bar for 2 min
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error proved-while-open: 60 bar where 70 bar is asked for
  released: brakes_ok
  ^^^^^^^^^^^^^^^^^^^ error released-with-open-items: stays shut with 1 item open: brakes: not proved since 2026-05-02; the proof there is does not count
  proved: brakes at 72 bar for 2 min
  released: brakes_ok
`);
  expect(complained).toEqual(marked);
});

it("a kit that is not in hand reconditions nothing", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

part front.caliper "Front caliper"
  kit: front.seal_kit

part front.seal_kit "Caliper seal kit"
  as_found: shelf
  price: 24.50 GBP

hold brakes_ok "Brakes, before it moves"
  covers: front
  needs: parts

day 2026-05-02 3 h
  removed: front.caliper
  found: front.caliper seized
  decided: front.caliper recondition

day 2026-05-09 3 h
  reconditioned: front.caliper
  fitted: front.caliper
  ^^^^^^^^^^^^^^^^^^^^^ error fitted-condemned
  ^^^^^^^^^^^^^^^^^^^^^ information safety-caution: pump the pedal
  released: brakes_ok
  ^^^^^^^^^^^^^^^^^^^ error released-with-open-items: front.caliper: condemned
`);
  expect(complained).toEqual(marked);
});

it("brakes are opened for a hose, done up, and driven without bleeding", () => {
  const log = (last: string) => `
vehicle "Example"
  past: known

part front.caliper "Front caliper"
part front.hose "Front hose"

joint front.banjo "Hose to caliper"
  joins: front.hose, front.caliper
  torque: 20 N.m ± 10 %
  lock: none

system brakes "Front brake circuit"
  fluid: "DOT 4"
  parts: front.caliper, front.hose
  bleed: yes

hold drive "Fit to drive"
  needs: joints, systems
  stops: ran vehicle

day 2026-05-02
  released: drive

day 2026-05-09
  The hose was kissing the wishbone. Turned it ten degrees.
${last}`;
  const driven = readStory(
    log(`  loosened: front.banjo
  ^^^^^^^^^^^^^^^^^^^^^ warning opened-not-bled: brakes was opened on 2026-05-09 and not bled since
  ^^^^^^^^^^^^^^^^^^^^^ warning release-lapsed: takes back the release of drive
  torqued: front.banjo 20 N.m
  ran: vehicle 4 km
  ^^^^^^^^^^^^^^^^^ error past-hold: past the shut hold point drive (Fit to drive), which stops it: its release lapsed on 2026-05-09
`),
  );
  expect(driven.complained).toEqual(driven.marked);
  const bled = readStory(
    log(`  loosened: front.banjo
  ^^^^^^^^^^^^^^^^^^^^^ information release-lapsed: takes back the release of drive
  torqued: front.banjo 20 N.m
  bled: brakes
  ^^^^^^^^^^^^ information safety-caution: what was bled is never used again
  released: drive
  ran: vehicle 4 km
`),
  );
  expect(bled.complained).toEqual(bled.marked);
});

it("a fan bigger than the old one, on its old fuse, and then on one that the wire does not bear", () => {
  const log = (last: string) => `
vehicle "Example"
  past: known

supplier wickstead "Wickstead Auto Electrics"

part cooling.fan "Fan"
  price: 69.00 GBP
  supplier: wickstead

circuit electrics.fan "Radiator fan"
  supply: 12 V
  load: 9 A
  wire: 2.5 mm2
  length: 1.8 m
  fuse: 15 A
  drop: max 5 %
  to: cooling.fan

hold first_run "First run"
  needs: circuits
  planned: 2026-06-20

day 2026-05-02 2 h
  removed: cooling.fan
  decided: cooling.fan renew "the new radiator is ten mm thicker"
  bought: 1 x cooling.fan at 69.00 GBP from wickstead
  fitted: cooling.fan
${last}`;
  const onOldFuse = readStory(
    log(`  changed: electrics.fan load 17 A
                         ^^^^^^^^^ error fuse-under-load: the load of 17 A is over its fuse of 15 A
  tested: electrics.fan pass
  released: first_run
  ^^^^^^^^^^^^^^^^^^^ error released-with-open-items: electrics.fan: its fuse is under the load
`),
  );
  expect(onOldFuse.complained).toEqual(onOldFuse.marked);
  const onOldWire = readStory(
    log(`  changed: electrics.fan load 17 A

day 2026-05-09 1 h
  changed: electrics.fan fuse 25 A
                         ^^^^^^^^^ error fuse-over-wire: a fuse of 25 A on 2.5 mm2: expected at most 21 A
  tested: electrics.fan pass
  released: first_run
  ^^^^^^^^^^^^^^^^^^^ error released-with-open-items: electrics.fan: its fuse is over what the wire carries
`),
  );
  expect(onOldWire.complained).toEqual(onOldWire.marked);
});

it("an extinguisher runs out of date before the scrutineer sees it, and is renewed", () => {
  const log = (last: string) => `
vehicle "Example"
  past: known
  today: 2026-05-30

part safety.extinguisher "Extinguisher"
  price: 164.00 GBP
${last}`;
  const old = readStory(
    log(`  expires: 2026-05-31
  ^^^^^^^^^^^^^^^^^^^ warning life-ends-soon: ends on 2026-05-31: expected it good for scrutineering (Club scrutineer) on 2026-06-27

hold scrutineering "Club scrutineer"
  needs: lives
  planned: 2026-06-27

day 2026-05-30
  released: scrutineering
  ^^^^^^^^^^^^^^^^^^^^^^^ error released-with-open-items: its life ends on 2026-05-31, before 2026-06-27
`),
  );
  expect(old.complained).toEqual(old.marked);
  const renewed = readStory(
    log(`  expires: 2026-05-31

hold scrutineering "Club scrutineer"
  needs: lives
  planned: 2026-06-27

day 2026-05-30
  bought: 1 x safety.extinguisher at 164.00 GBP
  removed: safety.extinguisher
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ information safety-caution: for a licensed practitioner
  decided: safety.extinguisher renew "out of date"
  fitted: safety.extinguisher expires 2030-05-31
  released: scrutineering
`),
  );
  expect(renewed.complained).toEqual(renewed.marked);
});

it("the coolant goes over its limit on the first run, and the car does not drive until it stays under", () => {
  const first = `
vehicle "Example"
  past: known

assembly engine "Engine"
  limit: coolant_temperature max 95 degC
  limit: oil_pressure min 2.5 bar

part engine.block "Block"
part cooling.radiator "Radiator"

hold fire_up "Engine may be started"
  covers: engine, cooling
  needs: parts
  stops: ran engine

hold first_run "First run under its own power"
  after: fire_up
  needs: parts, limits
  stops: ran vehicle

day 2026-05-02 2 h
  released: fire_up
  ran: engine 20 min
  ^^^^^^^^^^^^^^^^^^ information safety-caution: exhaust gas kills without a smell
  ^^^^^^^^^^^^^^^^^^ information safety-caution: first start with an extinguisher in reach
  measured: engine oil_pressure 3.4 bar
`;
  const tooHot = readStory(`${first}  measured: engine coolant_temperature 102 degC "the fan never cut in"
                                       ^^^^^^^^ error over-limit: 102 degC is over its limit of 95 degC by 7 degC
  released: first_run
  ^^^^^^^^^^^^^^^^^^^ error released-with-open-items: engine: coolant_temperature 102 degC against max 95 degC: over it
  ran: vehicle 1 km
  ^^^^^^^^^^^^^^^^^ error past-hold: its release on 2026-05-02 was refused
`);
  expect(tooHot.complained).toEqual(tooHot.marked);
  const cured = readStory(`${first}  measured: engine coolant_temperature 102 degC "the fan never cut in"
                                       ^^^^^^^^ information over-limit

day 2026-05-09 2 h
  The switch was wired to the wrong pole.
  ran: engine 20 min
  ^^^^^^^^^^^^^^^^^^ information safety-caution: exhaust gas kills without a smell
  measured: engine coolant_temperature 84 degC
  released: first_run
  ran: vehicle 1 km
`);
  expect(cured.complained).toEqual(cured.marked);
});

it("a second-hand radiator is chosen over a new one, and the first does not fit", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

supplier kastelijn "Kastelijn Koelers"

part cooling.radiator "Radiator"
  price: 265.00 GBP
  supplier: kastelijn
  size: width 430 mm
  limit: core_thickness max 46 mm

hold cooling_ok "Cooling"
  covers: cooling
  needs: parts, limits

day 2026-05-02 2 h
  removed: cooling.radiator
  found: cooling.radiator leaking, corroded
  decided: cooling.radiator renew "265 new and six weeks away; 30 off the van, today"
  bought: 1 x cooling.radiator at 30.00 GBP
  fitted: cooling.radiator for trial
  measured: cooling.radiator width 430 mm
  measured: cooling.radiator core_thickness 48 mm
                                            ^^^^^ information over-limit: 48 mm is over its limit of 46 mm by 2 mm
  released: cooling_ok
  ^^^^^^^^^^^^^^^^^^^^ error released-with-open-items: 2 items open: cooling.radiator: fitted for trial only since 2026-05-02

day 2026-05-09 2 h
  removed: cooling.radiator
  decided: cooling.radiator renew "two millimetres too many; 45 off the other van"
  bought: 1 x cooling.radiator at 45.00 GBP
  fitted: cooling.radiator
  measured: cooling.radiator core_thickness 40 mm
  released: cooling_ok
`);
  expect(complained).toEqual(marked);
});

it("a driveshaft is straightened, doubted and remade", () => {
  const { complained, marked } = readStory(`
vehicle "Example"
  past: known

supplier hadley "F. Hadley, straightening and crack detection"

part rear.driveshaft "Driveshaft"
  material: steel
  safety: critical
  price: 140.00 GBP
  limit: runout max 0.20 mm

joint rear.flange "Driveshaft to final drive"
  joins: rear.driveshaft
  torque: 34 N.m ± 10 %
  lock: none

hold drive "Fit to drive"
  needs: parts, joints, limits
  stops: ran vehicle

day 2026-05-02 2 h
  removed: rear.driveshaft
  measured: rear.driveshaft runout 0.6 mm
                                   ^^^^^^ information over-limit
  found: rear.driveshaft bent
  decided: rear.driveshaft repair
  sent: rear.driveshaft to hadley for "straighten" due 2026-05-12 cost 40.00 GBP
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning safety-weld: is sent out for "straighten"

day 2026-05-13 2 h
  back: rear.driveshaft cost 40.00 GBP
  measured: rear.driveshaft runout 0.15 mm
  inspected: rear.driveshaft by magnetic_particle
  found: rear.driveshaft cracked "a line at the yoke, or is it?"
  fitted: rear.driveshaft
  ^^^^^^^^^^^^^^^^^^^^^^^ error fitted-condemned
  torqued: rear.flange 34 N.m
  released: drive
  ^^^^^^^^^^^^^^^ error released-with-open-items: rear.driveshaft: condemned

day 2026-05-20 2 h
  Nobody slept well on it. A new one, turned by the man at the mill.
  removed: rear.driveshaft
  decided: rear.driveshaft make
  made: rear.driveshaft
  fitted: rear.driveshaft
  measured: rear.driveshaft runout 0.05 mm
  torqued: rear.flange 34 N.m
  released: drive
  ran: vehicle 3 km
`);
  expect(complained).toEqual(marked);
});
