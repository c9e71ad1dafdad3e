/** Reads the whole diary: facts of all files by date, within a date by file name and then by line. */
import type { IsoDate } from "../../quantities/dates.ts";
import { compareDates } from "../../quantities/dates.ts";
import type { DayBlock, Gathered } from "../definitions.ts";
import { FactList } from "../fact-list.ts";
import { asksForRechecks } from "../joint-recheck.ts";
import { inOneList } from "../list-under.ts";
import type { LostLine, LostLines } from "../lost-lines.ts";
import type { DifferencesTo } from "../memory.ts";
import type { Names } from "../names.ts";
import { isSame, Remembered } from "../remembered.ts";
import { placeAt } from "../source.ts";
import type { DatedFact } from "../states.ts";
import { calculationHandlers } from "./calculations.ts";
import { takeCare } from "./care.ts";
import { carryOutChanges } from "./changes.ts";
import { gaugeHandlers, gaugesAtStart } from "./gauges.ts";
import { finishHolds, holdHandlers, holdsAtStart, loseLine, settleHolds } from "./holds.ts";
import { settleComplaints } from "./joint-complaints.ts";
import { jointsAtStart } from "./joint-opening.ts";
import { jointHandlers } from "./joints.ts";
import { lifeHandlers } from "./lives.ts";
import { measurementHandlers } from "./measurements.ts";
import { partHandlers, partsAtStart } from "./parts.ts";
import type { Handlers } from "./replay.ts";
import { Replay } from "./replay.ts";
import { takeOverWhatIsSame } from "./same-states.ts";
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

type DatedDay = DayBlock & { readonly date: IsoDate };

export interface Diary {
  /** How things stand after the last fact that counts. */
  readonly replay: Replay;
  /** Every fact that counts. */
  readonly facts: FactList;
  /** The days that count, in the order in which they are read. */
  readonly days: readonly DatedDay[];
  /** What was unread from the start. */
  readonly lost: readonly LostLine[];
  /** How things stood before some of the days: where reading can begin again. */
  readonly moments: readonly Moment[];
  /** How things stand other than in the diary that this one goes on from. */
  readonly differences: DifferencesTo | undefined;
}

/** How things stood before a day of the diary. */
interface Moment {
  /** The index of the first day that has not been read. */
  readonly day: number;
  /** How many facts had been read. */
  readonly facts: number;
  readonly replay: Replay;
}

/** So many moments are kept of a diary, besides the one before the day that was written in last. */
const MOMENTS = 24;

/**
 * @param today facts of later days are read but do not count
 * @param lost the lines of the whole text that could not be read
 * @param before the diary as it was read before an edit: what comes before the first day that is other need not be read
 *   again. Without it no moments are kept.
 */
export function readDiary(
  gathered: Gathered,
  names: Names,
  today: IsoDate,
  lost: LostLines,
  before?: Diary,
): Diary {
  const dated = inDateOrder(gathered.dayLists);
  const days = until(dated, today);
  const known = before !== undefined && goesOn(before, gathered, names, today, lost) ? before : undefined;
  const first = known === undefined ? 0 : firstChange(known.days, days);
  const earlier = known?.moments.filter(({ day }) => day <= first) ?? [];
  const start = earlier.at(-1);
  const replay = start?.replay.copy(gathered) ?? beginning(gathered, names, today, dated[0]?.date, lost);
  const facts = new FactList(known?.facts, start?.facts);
  const between = before === undefined ? Number.POSITIVE_INFINITY : Math.ceil(days.length / MOMENTS);
  const moments = spacedOut(earlier, between);
  for (let index = start?.day ?? 0; index < days.length; index++) {
    const day = days[index] as DatedDay;
    const begins = days[index - 1]?.date !== day.date;
    const due = index === first || index === days.length - 1 || index >= (moments.at(-1)?.day ?? 0) + between;
    if (before !== undefined && begins && due && index > (moments.at(-1)?.day ?? 0))
      moments.push({ day: index, facts: facts.length, replay: replay.copy(gathered) });
    replay.date = day.date;
    if (begins) carryOutChanges(replay, sameDate(days, index));
    readDay(replay, day, lost.inDay(day.site), facts, known?.facts);
  }
  replay.date = today;
  finishHolds(replay);
  settleComplaints(replay);
  replay.finish();
  let differences: DifferencesTo | undefined;
  if (known !== undefined) {
    const anew = start === undefined ? moments : moments.slice(Math.max(0, moments.indexOf(start)));
    const count = start?.replay.findings.length ?? 0;
    const ofMoments = anew.map((moment) => moment.replay);
    differences = {
      earlier: known.replay,
      differences: takeOverWhatIsSame(replay, known.replay, count, ofMoments),
    };
  }
  facts.sortByWord(known?.facts, start?.facts ?? 0);
  return { replay, facts, days, lost: lost.definitions, moments, differences };
}

/**
 * The dated days of all files by date, within a date by file and then by line. The days of a file are mostly in order, and
 * files mostly follow each other.
 */
function inDateOrder(lists: readonly (readonly DayBlock[])[]): readonly DatedDay[] {
  const sorted = lists.map(datedIn).filter(({ length }) => length > 0);
  const inTurn = [...sorted].sort((a, b) => compareDates(firstDate(a), firstDate(b)));
  const follow = inTurn.every((list, index) => {
    const last = inTurn[index - 1]?.at(-1);
    return last === undefined || last.date < firstDate(list);
  });
  return follow ? inOneList(inTurn) : inOneList(sorted).sort((a, b) => compareDates(a.date, b.date));
}

const datedDays = new Remembered<readonly DayBlock[], readonly DatedDay[]>();

/** The dated days of one file, by date. */
function datedIn(days: readonly DayBlock[]): readonly DatedDay[] {
  return datedDays.of(days, [], () =>
    days
      .filter((day): day is DatedDay => day.date !== undefined)
      .sort((a, b) => compareDates(a.date, b.date)),
  );
}

function firstDate([first]: readonly DatedDay[]): IsoDate {
  return first?.date as IsoDate;
}

/** Of days in order those that are no later. */
function until(days: readonly DatedDay[], today: IsoDate): readonly DatedDay[] {
  const count = days.findLastIndex(({ date }) => date <= today) + 1;
  return count === days.length ? days : days.slice(0, count);
}

/** Of moments those that stand far enough apart, and the last: each edit would add one otherwise. */
function spacedOut(moments: readonly Moment[], between: number): Moment[] {
  const kept: Moment[] = [];
  for (const [index, moment] of moments.entries()) {
    const isLast = index === moments.length - 1;
    if (isLast || moment.day >= (kept.at(-1)?.day ?? 0) + between) kept.push(moment);
  }
  return kept;
}

/** Whether everything but the days is as it was, and what looks at all days from the first one on finds the same. */
function goesOn(
  { replay, lost: lostBefore }: Diary,
  gathered: Gathered,
  names: Names,
  today: IsoDate,
  lost: LostLines,
): boolean {
  return (
    replay.names === names &&
    replay.today === today &&
    isSame(lostBefore, lost.definitions) &&
    asksForRechecks(replay) === asksForRechecks({ gathered })
  );
}

/** The index of the first day that is not as it was, or of the first of its date: changes of one date belong together. */
function firstChange(before: readonly DatedDay[], days: readonly DatedDay[]): number {
  let index = 0;
  while (index < days.length && before[index] === days[index]) index++;
  const dates = [before[index]?.date, days[index]?.date].flatMap((date) => date ?? []).sort(compareDates);
  while (index > 0 && dates[0] !== undefined && days[index - 1]?.date === dates[0]) index--;
  return index;
}

/** How things stand as the log begins. */
function beginning(
  gathered: Gathered,
  names: Names,
  today: IsoDate,
  firstDay: IsoDate | undefined,
  lost: LostLines,
): Replay {
  const replay = new Replay(gathered, names, today, firstDay ?? today);
  for (const begin of BEGINNINGS) begin(replay);
  replay.lost.push(...lost.definitions);
  return replay;
}

function readDay(
  replay: Replay,
  { date, site, facts: ofDay }: DatedDay,
  lost: readonly LostLine[],
  facts: FactList,
  before: FactList | undefined,
): void {
  const unread = [...lost];
  for (const fact of ofDay) {
    loseLines(replay, unread, fact.at.start);
    const order = facts.length;
    const known = before?.at(order);
    const isSame = known?.fact === fact && known.date === date && known.place.site === site;
    const dated = isSame ? known : ({ date, fact, place: placeAt(site, fact.at), order } as DatedFact);
    facts.push(dated);
    replay.touched.clear();
    for (const hear of LISTENERS.get(fact.word) ?? NOBODY) hear(replay, dated);
    settleHolds(replay, dated);
    takeCare(replay, dated);
  }
  loseLines(replay, unread, Number.POSITIVE_INFINITY);
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
