/** The first file of a new build: small, true to life, without a complaint, and with a word beside each kind of line. */
import { quoted } from "../../../grammar/quoted.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import { addDays } from "../../quantities/dates.ts";

/** @param day the first evening of the diary */
export function firstFile(title: string, day: IsoDate): string {
  return `# One folder, one vehicle. Lines with a word and a colon are read and reckoned with; everything else that is
# indented is your story, and is kept as you write it. "cotter check" says what is wrong or still open.
# Change the lines below into those of your vehicle; several files in this folder make one build.

vehicle ${quoted(title)}
  currency: GBP
  week: tue 2 h, sat 6 h
  past: unknown
  Write here what it is, where it stood, and who had it before.

supplier corner "The shop on the corner"
  lead: 3 d

# A gauge knows how far it can be trusted. With no uncertainty: given, its resolution is taken.
gauge mic25 "Micrometer, 0 to 25 mm"
  reads: 0..25 mm
  resolution: 0.01 mm
  calibrated: ${addDays(day, -60)} for 12 month

# Parts have a path: front.left.disc is the disc of the left front corner. Take limits from the maker's manual:
# the figures here are examples.
part front.left.hub "Hub"

part front.left.disc "Brake disc"
  safety: critical
  limit: thickness min 8.4 mm new 9.5 mm
  price: 46.00 GBP
  supplier: corner

joint front.left.disc_bolts "Disc to hub"
  joins: front.left.hub, front.left.disc
  torque: 50 N.m ± 10 %
  lock: threadlocker

# Planned work, and the point that work does not pass until everything before it is in order.
job front_brake "Left front brake"
  on: front.left
  takes: 3..4..6 h

hold ready "Ready for the road"
  covers: front

# The diary. Write a day when you have done something.
day ${day} 2 h
  Took the left front wheel off and had a look. The disc is better than it sounded.
  started: front_brake
  removed: front.left.disc
  measured: front.left.disc thickness 9.12, 9.10, 9.14 mm with mic25
  inspected: front.left.disc by eye "no cracks"
  decided: front.left.disc reuse
  worked: 2 h on front_brake
`;
}
