/** Reads the whole diary: facts of all files by date, within a date by file name and then by line. */
import type { IsoDate } from "../../quantities/dates.ts";
import { compareDates } from "../../quantities/dates.ts";
import { decimal, ZERO } from "../../quantities/decimal.ts";
import { quantityOf } from "../../quantities/quantity.ts";
import { unit } from "../../quantities/unit.ts";
import type { DayBlock, Gathered } from "../definitions.ts";
import type { LostLine, LostLines } from "../lost-lines.ts";
import type { Names } from "../names.ts";
import type { Place } from "../source.ts";
import { placeAt } from "../source.ts";
import type { DatedFact } from "../states.ts";
import { calculationHandlers } from "./calculations.ts";
import { carryOutChanges } from "./changes.ts";
import { gaugeHandlers, gaugesAtStart } from "./gauges.ts";
import { finishHolds, holdHandlers, holdsAtStart, loseLine, settleHolds } from "./holds.ts";
import { jointsAtStart } from "./joint-opening.ts";
import { jointHandlers } from "./joints.ts";
import { lifeHandlers } from "./lives.ts";
import { measurementHandlers } from "./measurements.ts";
import { partHandlers, partsAtStart } from "./parts.ts";
import type { Handlers } from "./replay.ts";
import { Replay } from "./replay.ts";
import { settingHandlers } from "./settings.ts";
import { snagHandlers } from "./snags.ts";
import { supplyAtStart, supplyHandlers } from "./supply.ts";
import { systemHandlers, systemsAtStart } from "./systems.ts";
import { testHandlers } from "./tests.ts";
import { workAtStart, workHandlers } from "./work.ts";

/**
 * Subjects in the order in which they hear of a fact: goods first, since fitting asks what is in hand; hold points last,
 * since they look at all others.
 */
const SUBJECTS: readonly Handlers[] = [
  supplyHandlers,
  gaugeHandlers,
  workHandlers,
  partHandlers,
  jointHandlers,
  systemHandlers,
  measurementHandlers,
  settingHandlers,
  calculationHandlers,
  testHandlers,
  snagHandlers,
  lifeHandlers,
  holdHandlers,
];

const NOBODY: readonly Handler[] = [];

/** How each subject stands as the log begins. */
const BEGINNINGS: readonly ((replay: Replay) => void)[] = [
  partsAtStart,
  jointsAtStart,
  systemsAtStart,
  supplyAtStart,
  gaugesAtStart,
  workAtStart,
  holdsAtStart,
];

export interface Diary {
  /** How things stand after the last fact that counts. */
  readonly replay: Replay;
  /** Every fact that counts, in the order in which they are read. */
  readonly facts: readonly DatedFact[];
}

/**
 * @param today facts of later days are read but do not count
 * @param lost the lines of the whole text that could not be read
 */
export function readDiary(gathered: Gathered, names: Names, today: IsoDate, lost: LostLines): Diary {
  const days = gathered.days.filter((day): day is DayBlock & { date: IsoDate } => day.date !== undefined);
  const inOrder = [...days].sort((a, b) => compareDates(a.date, b.date));
  const replay = new Replay(gathered, names, today, inOrder[0]?.date ?? today);
  for (const begin of BEGINNINGS) begin(replay);
  replay.lost.push(...lost.definitions);
  complainOfDays(replay, days);
  const facts: DatedFact[] = [];
  const counting = inOrder.filter(({ date }) => date <= today);
  for (const [index, day] of counting.entries()) {
    replay.date = day.date;
    if (counting[index - 1]?.date !== day.date) carryOutChanges(replay, sameDate(counting, index));
    const unread = [...(lost.days.get(day.site) ?? [])];
    for (const fact of day.facts) {
      loseLines(replay, unread, fact.at.start);
      const dated: DatedFact = {
        date: day.date,
        fact,
        place: placeAt(day.site, fact.at),
        order: facts.length,
      } as DatedFact;
      facts.push(dated);
      replay.touched.clear();
      for (const hear of LISTENERS.get(fact.word) ?? NOBODY) hear(replay, dated);
      settleHolds(replay, dated);
    }
    loseLines(replay, unread, Number.POSITIVE_INFINITY);
  }
  replay.date = today;
  finishHolds(replay);
  return { replay, facts };
}

type Handler = (replay: Replay, fact: DatedFact) => void;

/** Who listens to each word, in order. */
const LISTENERS: ReadonlyMap<string, readonly Handler[]> = listeners();

function listeners(): Map<string, Handler[]> {
  const byWord = new Map<string, Handler[]>();
  for (const subject of SUBJECTS) {
    for (const [word, handler] of Object.entries(subject)) {
      const known = byWord.get(word);
      if (known === undefined) byWord.set(word, [handler as Handler]);
      else known.push(handler as Handler);
    }
  }
  return byWord;
}

/** Lines above a place in a day that could not be read: from there on, nobody knows what they would have said. */
function loseLines(replay: Replay, unread: LostLine[], before: number): void {
  while (unread[0] !== undefined && unread[0].place.start < before) {
    const line = unread.shift();
    if (line !== undefined) loseLine(replay, line);
  }
}

/** The blocks from an index on that are of one date. */
function sameDate(inOrder: readonly DayBlock[], index: number): readonly DayBlock[] {
  let end = index + 1;
  while (inOrder[end]?.date === inOrder[index]?.date) end++;
  return inOrder.slice(index, end);
}

function complainOfDays(replay: Replay, days: readonly (DayBlock & { date: IsoDate })[]): void {
  for (const [index, day] of days.entries()) {
    const before = days[index - 1];
    if (before !== undefined && before.site.file === day.site.file && day.date < before.date) {
      const place = datePlace(day);
      replay.complain(
        "day-order",
        place,
        { date: day.date, before: before.date },
        { seeAlso: [{ place: datePlace(before), role: "the day above" }] },
      );
    }
    if (day.date > replay.today)
      replay.complain("future-day", datePlace(day), { date: day.date, today: replay.today });
    complainOfHours(replay, day);
  }
}

/** Work booked beyond the hours that the day had for each pair of hands, or a day of more than 24. */
function complainOfHours(replay: Replay, day: DayBlock): void {
  if (day.hours?.greaterThan(FULL_DAY)) {
    const data = { is: "too long", day: quantityOf(day.hours, HOUR) } as const;
    replay.complain("hours-over-day", datePlace(day), data);
  }
  const { definitions, gathered } = replay;
  const hands = definitions.one(gathered.tree.root, "hands")?.record.count ?? 1;
  const work = day.facts.filter((fact) => fact.word === "worked");
  const booked = work.reduce((sum, { hours }) => sum.plus(hours), ZERO);
  const hours = day.hours ?? FULL_DAY;
  const last = work.at(-1);
  if (last === undefined || !booked.greaterThan(hours.times(hands))) return;
  replay.complain(
    "hours-over-day",
    placeAt(day.site, last.at),
    { is: "booked", booked: quantityOf(booked, HOUR), day: quantityOf(hours, HOUR), hands },
    { seeAlso: [{ place: datePlace(day), role: "the day" }] },
  );
}

/** Hours that a day has where it states none. */
const FULL_DAY = decimal(24);

const HOUR = unit("h");

function datePlace({ site, header }: DayBlock): Place {
  return placeAt(site, site.block.header?.values.get("date") ?? header);
}
