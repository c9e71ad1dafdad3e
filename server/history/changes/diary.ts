/** The days of a build as lines that can be compared: what each says, of what, and where. */
import type { Build } from "../../build/build.ts";
import type { DayBlock } from "../../build/definitions.ts";
import type { Place } from "../../build/source.ts";
import { placeAt } from "../../build/source.ts";
import { formatDecimal } from "../../quantities/decimal.ts";
import { proseOf } from "../../reports/story.ts";
import { recordsIn, spaced, textOfItem } from "./things.ts";
import type { Wording } from "./wording.ts";

export interface DiaryLine {
  readonly date: string;
  readonly word: string;
  /** What stands behind the word, as written. */
  readonly text: string;
  /** The whole line with every reference in full: lines of one wording say the same. */
  readonly wording: string;
  /** What it is about, by full names; empty of what names nothing. */
  readonly subject: readonly string[];
  /** What it says of the subject: `thickness 9.12 mm with mic25`. */
  readonly said: string;
  /** The word, subject and characteristic: two lines of one identity on one day tell of the same. */
  readonly identity: string;
  readonly place: Place;
}

export interface DiaryDay {
  readonly date: string;
  readonly header: Place;
  /** `5.5 h` */
  readonly hours: string | undefined;
  readonly lines: readonly DiaryLine[];
  readonly prose: string;
}

/** Every day that is written, by date; several blocks of a date are one day. */
export function diaryOf({ standing: { gathered } }: Build, wording: Wording): ReadonlyMap<string, DiaryDay> {
  const days = new Map<string, DiaryDay>();
  for (const block of gathered.days) {
    if (block.date === undefined) continue;
    const day = dayOf(block, block.date, wording);
    const known = days.get(block.date);
    days.set(block.date, known === undefined ? day : joined(known, day));
  }
  return days;
}

function dayOf({ site, header, hours }: DayBlock, date: string, wording: Wording): DiaryDay {
  return {
    date,
    header,
    hours: hours && `${formatDecimal(hours)} h`,
    lines: recordsIn(site).map((item) => {
      const place = placeAt(site, { start: item.word.start, end: item.contentEnd });
      const word = item.word.text;
      const text = textOfItem(site, item).slice(word.length).replace(/^\s*:/, "").trim();
      const subject = wording.subjectOf(place);
      const subjectAt = wording.subjectAt(place);
      const said = subjectAt === undefined ? text : without(place, subjectAt);
      const name = NAMED.has(word) ? (/^[A-Za-z]\w*/.exec(said)?.[0] ?? "") : "";
      const identity = [word, subject.join("+"), subject.length === 0 ? text : name].join("|");
      return { date, word, text, wording: wording.of(place), subject, said, identity, place };
    }),
    prose: proseOf(site.block).join("\n"),
  };
}

/** Facts that say something of a characteristic. */
const NAMED: ReadonlySet<string> = new Set(["measured", "set", "tested", "changed"]);

/** What a line says behind its subject; `front.hub.end_float 0.1 mm` keeps the name that stands in the reference. */
function without({ site: { block }, end }: Place, subject: Place): string {
  const reference = block.text.slice(subject.start, subject.end);
  const behind = spaced(block.text.slice(subject.end, end));
  const isNamed = /^[A-Za-z]\w*/.test(behind);
  return isNamed || behind === "" ? behind : `${reference.slice(reference.lastIndexOf(".") + 1)} ${behind}`;
}

function joined(one: DiaryDay, other: DiaryDay): DiaryDay {
  return {
    ...one,
    hours: [one.hours, other.hours].filter((hours) => hours !== undefined).join(" and ") || undefined,
    lines: [...one.lines, ...other.lines],
    prose: [one.prose, other.prose].filter((prose) => prose !== "").join("\n"),
  };
}
