/** From where on a diary is read that goes on from another one: what of that one still holds. */
import type { IsoDate } from "../../quantities/dates.ts";
import type { DatedDay, Gathered } from "../definitions.ts";
import type { FactList } from "../fact-list.ts";
import { asksForRechecks } from "../joint-recheck.ts";
import type { LostLine, LostLines } from "../lost-lines.ts";
import type { DifferencesTo } from "../memory.ts";
import type { Names } from "../names.ts";
import { isSame } from "../remembered.ts";
import type { DefinitionsInForce } from "../tree/definitions.ts";
import type { DefinedOtherwise } from "./asked.ts";
import type { DaysInOrder } from "./days-in-order.ts";
import type { Change, Moment } from "./moments.ts";
import { firstChange, lastBefore, tellsTheSame } from "./moments.ts";
import type { Replay, UnreadOfDay } from "./replay.ts";

export interface Diary {
  /** How things stand after the last fact that counts. */
  readonly replay: Replay;
  /** Every fact that counts. */
  readonly facts: FactList;
  /** The days that count, in the order in which they are read. */
  readonly days: DaysInOrder;
  /** What was unread from the start. */
  readonly lost: readonly LostLine[];
  /** The lines that were unread of each day, as it was read: diaries that go on from each other share them. */
  readonly lostInDays: WeakMap<DatedDay, readonly LostLine[]>;
  /** How things stood before some of the days: where reading can begin again. */
  readonly moments: readonly Moment[];
  /** How things stood within the day that was written in last, before the first fact that was other. */
  readonly inDay: Moment | undefined;
  /** How things stand other than in the diary that this one goes on from. */
  readonly differences: DifferencesTo | undefined;
}

/** From where on a diary is read. */
export interface Beginning {
  /** The diary that it goes on from. */
  readonly known: Diary | undefined;
  readonly change: Change;
  /** The moments of that diary that still hold. */
  readonly earlier: readonly Moment[];
  readonly start: Moment | undefined;
}

export const ANEW: Beginning = {
  known: undefined,
  change: { day: 0, within: undefined },
  earlier: [],
  start: undefined,
};

export function goingOn(known: Diary, days: DaysInOrder, { moments, inDay, blocksHold }: Footing): Beginning {
  const change = firstChange(known.days, days);
  const earlier = moments.filter(({ day }) => day <= change.day);
  if (blocksHold) return { known, change, earlier, start: lastBefore(change, earlier, inDay) };
  const start = earlier.at(-1);
  return { known, change: { day: start?.day ?? 0, within: undefined }, earlier, start };
}

/** Whether the same things are defined, and what looks at all days from the first one on finds the same. */
export function goesOn({ replay }: Diary, gathered: Gathered, names: Names, today: IsoDate): boolean {
  return (
    replay.names === names &&
    replay.today === today &&
    asksForRechecks(replay) === asksForRechecks({ gathered })
  );
}

/** What of a diary still holds on blocks of which some say other things. */
export interface Footing {
  /** The definitions in force at its end. */
  readonly inForce: DefinitionsInForce;
  /** What is said otherwise of some of the things. */
  readonly aspects: DefinedOtherwise["aspects"];
  /** The moments before which nothing was asked for that is otherwise. */
  readonly moments: readonly Moment[];
  readonly inDay: Moment | undefined;
  /** Whether nothing was asked for to the end that the blocks say otherwise. */
  readonly blocksHold: boolean;
  /** How things stand at its end, where nothing of it need be read again. */
  readonly atEnd: Replay | undefined;
}

/** @returns undefined where nothing of it holds */
export function footingOn(
  known: Diary,
  gathered: Gathered,
  lines: LostLines,
  days: DaysInOrder,
): Footing | undefined {
  const { replay, lost: lostBefore, moments, inDay } = known;
  const { definitions: lost } = lines;
  const aspects = gathered.written.differencesTo(replay.gathered.written, gathered.tree.all);
  const inForce = replay.definedBy(gathered, aspects);
  if (inForce === undefined) return undefined;
  const ofBlocks = { aspects, lost: difference(lostBefore, lost) };
  const blocksHold = !replay.asked.hasAny(ofBlocks);
  const others = blocksHold ? unreadOtherwise(known, days, lines) : undefined;
  const inDays = others?.flatMap((day) => difference(day.before, day.now)) ?? [];
  const stands = others !== undefined && !replay.asked.hasAny({ aspects: NOWHERE, lost: inDays });
  const unread = stands ? others : NOTHING_UNREAD;
  const ground = { inForce, lostBefore, lost, unread };
  const footing = {
    inForce,
    aspects,
    blocksHold,
    atEnd: stands ? replay.on(gathered, ground, days.length) : undefined,
  };
  if (aspects.size + ofBlocks.lost.length + unread.length === 0) return { ...footing, moments, inDay };
  const still = (moment: Moment): Moment[] => {
    if (isWithin(moment, unread) || moment.replay.asked.hasAny(ofBlocks)) return [];
    const own = moment.replay.on(gathered, ground, moment.day);
    return own === undefined ? [] : [{ ...moment, replay: own }];
  };
  return { ...footing, moments: moments.flatMap(still), inDay: inDay && still(inDay)[0] };
}

const NOWHERE: DefinedOtherwise["aspects"] = new Map();
const NOTHING_UNREAD: readonly UnreadOfDay[] = [];

/**
 * The days of which other lines could not be read than before, of a diary whose days all tell the same.
 *
 * @returns undefined where a day tells something else
 */
function unreadOtherwise(
  known: Diary,
  days: DaysInOrder,
  lost: LostLines,
): readonly UnreadOfDay[] | undefined {
  if (known.days.length !== days.length) return undefined;
  const others: UnreadOfDay[] = [];
  for (let index = firstChange(known.days, days).day; index < days.length; index++) {
    const [then, now] = [known.days.at(index) as DatedDay, days.at(index) as DatedDay];
    if (then === now) continue;
    if (!tellsTheSame(then, now)) return undefined;
    const [before, lines] = [known.lostInDays.get(then) ?? [], lost.inDay(now.site)];
    known.lostInDays.set(now, lines);
    if (before !== lines) others.push({ day: index, before, now: lines, behind: linesBefore(known, index) });
  }
  return others;
}

/** How many lines of a diary could not be read before a day: counted from the end, where one mostly writes. */
function linesBefore({ replay, lostInDays, days }: Diary, day: number): number {
  let count = replay.lost.length;
  for (let index = day; index < days.length; index++)
    count -= lostInDays.get(days.at(index) as DatedDay)?.length ?? 0;
  return count;
}

/** Whether it is a moment within one of some days. */
function isWithin({ day, ofDay }: Moment, unread: readonly UnreadOfDay[]): boolean {
  return ofDay > 0 && unread.some((one) => one.day === day);
}

/** What stands in one of two lists only. */
function difference<Item>(one: readonly Item[], other: readonly Item[]): readonly Item[] {
  if (isSame(one, other)) return [];
  const [before, now] = [new Set(one), new Set(other)];
  return [...one.filter((item) => !now.has(item)), ...other.filter((item) => !before.has(item))];
}
