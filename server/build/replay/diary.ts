/** Reads the whole diary: facts of all files by date, within a date by file name and then by line. */
import type { IsoDate } from "../../quantities/dates.ts";
import type { DatedDay, Gathered } from "../definitions.ts";
import { FactList } from "../fact-list.ts";
import type { LostLine, LostLines } from "../lost-lines.ts";
import type { LoweredFact } from "../lowering/fact.ts";
import type { DifferencesTo } from "../memory.ts";
import type { Names } from "../names.ts";
import { placeAt } from "../source.ts";
import type { DatedFact } from "../states.ts";
import type { DefinitionsInForce } from "../tree/definitions.ts";
import { calculationHandlers } from "./calculations.ts";
import { takeCare } from "./care.ts";
import { carryOutChanges } from "./changes.ts";
import type { DaysInOrder } from "./days-in-order.ts";
import { inDateOrder } from "./days-in-order.ts";
import type { Beginning, Diary, Footing } from "./footing.ts";
import { ANEW, footingOn, goesOn, goingOn } from "./footing.ts";
import { gaugeHandlers, gaugesAtStart } from "./gauges.ts";
import { finishHolds, holdHandlers, holdsAtStart, loseLine, settleHolds } from "./holds.ts";
import { settleComplaints } from "./joint-complaints.ts";
import { jointsAtStart } from "./joint-opening.ts";
import { jointHandlers } from "./joints.ts";
import { lifeHandlers } from "./lives.ts";
import { measurementHandlers } from "./measurements.ts";
import type { Moment } from "./moments.ts";
import { Moments } from "./moments.ts";
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

/**
 * @param today facts of later days are read but do not count
 * @param lost the lines of the whole text that could not be read
 * @param keeps whether moments are kept, for a diary that goes on from this one
 * @param before the diary as it was read before an edit: what comes before the first day that is other need not be read
 *   again
 */
export function readDiary(
  gathered: Gathered,
  names: Names,
  today: IsoDate,
  lost: LostLines,
  keeps: boolean,
  before?: Diary,
): Diary {
  const dated = inDateOrder(gathered.dayLists);
  const days = dated.until(today);
  const known = before !== undefined && goesOn(before, gathered, names, today) ? before : undefined;
  const still = known && footingOn(known, gathered, lost, days);
  if (known !== undefined && still?.atEnd !== undefined)
    return retold(known, still, still.atEnd, days, lost.definitions);
  const from = known === undefined || still === undefined ? ANEW : goingOn(known, days, still);
  const replay =
    from.start?.replay.copy(gathered) ??
    beginning(gathered, names, today, dated.at(0)?.date, lost, still?.inForce.first);
  return readFrom(from, replay, days, lost, keeps, still?.aspects);
}

/** @param replay how things stand where reading begins */
function readFrom(
  { known, change, earlier, start }: Beginning,
  replay: Replay,
  days: DaysInOrder,
  lost: LostLines,
  keeps: boolean,
  aspects: DifferencesTo["aspects"] | undefined,
): Diary {
  const facts = new FactList(known?.facts, start?.facts);
  const lostInDays = known?.lostInDays ?? new WeakMap<DatedDay, readonly LostLine[]>();
  const moments = new Moments(replay, facts, earlier, keeps ? days.length : 0);
  for (let index = start?.day ?? 0; index < days.length; index++) {
    const day = days.at(index) as DatedDay;
    const from = index === start?.day ? start.ofDay : 0;
    const isFirstOfDate = from === 0 && days.at(index - 1)?.date !== day.date;
    if (isFirstOfDate) moments.beforeDay(index, index === change.day || index === days.length - 1);
    replay.date = day.date;
    if (isFirstOfDate) carryOutChanges(replay, days.sameDate(index));
    const lostInDay = lost.inDay(day.site);
    lostInDays.set(day, lostInDay);
    const read = new DayReading(replay, day, lostInDay, facts, known?.facts);
    const ofDay = index === change.within?.day ? change.within.ofDay : from;
    read.facts(from, ofDay);
    if (index === change.within?.day) moments.inDay = from === ofDay ? start : moments.at(index, ofDay);
    read.toTheEnd(ofDay);
  }
  replay.date = replay.today;
  finishHolds(replay);
  settleComplaints(replay);
  replay.finish();
  const differences = known && compared(replay, known.replay, start, moments.all, aspects);
  facts.sortByWord(known?.facts, start?.facts ?? 0);
  const { beforeDays, inDay } = moments;
  return { replay, facts, days, lost: lost.definitions, lostInDays, moments: beforeDays, inDay, differences };
}

/** The diary before, of days that tell the same. */
function retold(
  known: Diary,
  { moments, inDay, aspects }: Footing,
  replay: Replay,
  days: DaysInOrder,
  lost: readonly LostLine[],
): Diary {
  replay.finish();
  const differences = takeOverWhatIsSame(replay, known.replay, replay.findings.length, []);
  return {
    ...known,
    replay,
    days,
    lost,
    moments,
    inDay,
    differences: { earlier: known.replay, differences, aspects },
  };
}

/** What is other than in the diary before; all else becomes what it was there. */
function compared(
  replay: Replay,
  earlier: Replay,
  start: Moment | undefined,
  moments: readonly Moment[],
  aspects: DifferencesTo["aspects"] = new Map(),
): DifferencesTo {
  const anew = moments.filter(({ day }) => day >= (start?.day ?? 0)).map((moment) => moment.replay);
  const count = start?.replay.findings.length ?? 0;
  const differences = takeOverWhatIsSame(replay, earlier, count, anew);
  return { earlier, differences, aspects };
}

/** How things stand as the log begins. */
function beginning(
  gathered: Gathered,
  names: Names,
  today: IsoDate,
  firstDay: IsoDate | undefined,
  lost: LostLines,
  inForce: DefinitionsInForce | undefined,
): Replay {
  const replay = new Replay(gathered, names, today, firstDay ?? today, undefined, inForce);
  for (const begin of BEGINNINGS) begin(replay);
  replay.lose(...lost.definitions);
  return replay;
}

/** The reading of one day, which can be interrupted. */
class DayReading {
  private readonly replay: Replay;
  private readonly day: DatedDay;
  private readonly lost: readonly LostLine[];
  /** The index of the first lost line that has not been come to. */
  private next = 0;
  private readonly known: FactList;
  private readonly before: FactList | undefined;

  /**
   * @param lost the lines of the day that could not be read, in the order of the text
   * @param known where the facts are put, as they are dated
   * @param before the facts of the diary before
   */
  constructor(
    replay: Replay,
    day: DatedDay,
    lost: readonly LostLine[],
    known: FactList,
    before: FactList | undefined,
  ) {
    this.replay = replay;
    this.day = day;
    this.lost = lost;
    this.known = known;
    this.before = before;
  }

  /** Reads the facts from an index up to another. */
  facts(from: number, to: number): void {
    for (let index = from; index < to; index++) {
      this.loseLinesAbove(index);
      this.hear(this.day.facts[index] as LoweredFact);
    }
  }

  /** Reads the facts from an index on, and what stands below the last. */
  toTheEnd(from: number): void {
    this.facts(from, this.day.facts.length);
    this.loseLinesAbove(this.day.facts.length);
  }

  private hear(fact: LoweredFact): void {
    const { replay, known, before } = this;
    const { date, site } = this.day;
    const order = known.length;
    const one = before?.at(order);
    const isSame = one?.fact === fact && one.date === date && one.place.site === site;
    const dated = isSame ? one : ({ date, fact, place: placeAt(site, fact.at), order } as DatedFact);
    known.push(dated);
    replay.touched.clear();
    for (const hear of LISTENERS.get(fact.word) ?? NOBODY) hear(replay, dated);
    settleHolds(replay, dated);
    takeCare(replay, dated);
  }

  /**
   * Lines between a fact of the day and the one above it that could not be read: from there on, nobody knows what they
   * would have said.
   */
  private loseLinesAbove(index: number): void {
    const { lost } = this;
    const { facts } = this.day;
    const after = facts[index - 1]?.at.start ?? Number.NEGATIVE_INFINITY;
    const before = facts[index]?.at.start ?? Number.POSITIVE_INFINITY;
    while (this.startOfNext() < after) this.next++;
    while (this.startOfNext() < before) loseLine(this.replay, lost[this.next++] as LostLine);
  }

  private startOfNext(): number {
    return this.lost[this.next]?.place.start ?? Number.POSITIVE_INFINITY;
  }
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
