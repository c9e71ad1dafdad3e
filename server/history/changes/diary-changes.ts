/** The diary of two revisions: days that came, and what became of those that were already recorded. */
import type { Change, ChangedThing, ChangeKind } from "./change.ts";
import { change, inAfter, inBefore } from "./change.ts";
import type { DiaryDay, DiaryLine } from "./diary.ts";

type Diary = ReadonlyMap<string, DiaryDay>;

/** What is known of a thing that a line is about. */
export type Lookup = (ref: string) => { readonly what: ChangedThing; readonly title: string | undefined };

/** @param lookup finds the things of the later revision, else of the earlier one */
export function diaryChanges(before: Diary, after: Diary, lookup: Lookup): Change[] {
  return new DiaryComparison(before, after, lookup).changes();
}

class DiaryComparison {
  private readonly before: Diary;
  private readonly after: Diary;
  private readonly lookup: Lookup;
  /** The last day that was recorded: what is written later than it is growth, all else is after the fact. */
  private readonly last: string;

  constructor(before: Diary, after: Diary, lookup: Lookup) {
    this.before = before;
    this.after = after;
    this.lookup = lookup;
    this.last = [...before.keys()].sort().at(-1) ?? "";
  }

  changes(): Change[] {
    const gone = [...this.before.values()].filter(({ date }) => !this.after.has(date));
    const come = [...this.after.values()].filter(({ date }) => !this.before.has(date));
    const moved = new Map(gone.flatMap((day) => this.laterDateOf(day, come)));
    const movedTo = new Set(moved.values());
    const dates = new Set([...this.before.keys(), ...this.after.keys()]);
    return [...dates].sort().flatMap((date) => {
      const [old, later] = [this.before.get(date), this.after.get(date)];
      if (old !== undefined && later !== undefined) return this.ofBoth(old, later);
      if (old !== undefined) return this.ofGone(old, moved.get(old));
      if (later === undefined || movedTo.has(later)) return [];
      return this.ofNew(later);
    });
  }

  /** A day that says the same, or all but its prose, under a date that is new. */
  private laterDateOf(day: DiaryDay, come: readonly DiaryDay[]): [DiaryDay, DiaryDay][] {
    const same = come.filter(
      (other) => contentOf(other) === contentOf(day) && (day.lines.length > 0 || other.prose === day.prose),
    );
    const [only, another] = same;
    return only === undefined || another !== undefined ? [] : [[day, only]];
  }

  private ofNew(day: DiaryDay): Change[] {
    const kind = day.date < this.last ? "day-inserted" : "day-added";
    return [
      change({
        ...aboutDay(day.date),
        kind,
        after: sayDay(day),
        at: inAfter(day.header),
      }),
      ...day.lines.filter(isReading).map((line) => this.reading("reading-added", undefined, line)),
    ];
  }

  private ofGone(day: DiaryDay, movedTo: DiaryDay | undefined): Change[] {
    if (movedTo !== undefined)
      return [
        change({
          ...aboutDay(movedTo.date),
          kind: "day-moved",
          before: day.date,
          after: movedTo.date,
          at: inAfter(movedTo.header),
        }),
      ];
    return [
      change({ ...aboutDay(day.date), kind: "day-removed", before: sayDay(day), at: inBefore(day.header) }),
      ...day.lines.filter(isReading).map((line) => this.reading("reading-removed", line, undefined)),
    ];
  }

  private ofBoth(old: DiaryDay, later: DiaryDay): Change[] {
    const { gone, come } = unlike(old.lines, later.lines);
    const pairs = [...pairUp(gone, come, ({ identity }) => identity)];
    const paired = new Set(pairs.flat());
    const [restGone, restCome] = [gone, come].map((lines) => lines.filter((line) => !paired.has(line)));
    for (const pair of pairUp(restGone ?? [], restCome ?? [], ({ word }) => word, 1)) {
      pairs.push(pair);
      for (const line of pair) paired.add(line);
    }
    return [
      ...this.hours(old, later),
      ...pairs.map(([was, is]) => this.altered(was, is)),
      ...gone.filter((line) => !paired.has(line)).map((line) => this.removed(line)),
      ...come.filter((line) => !paired.has(line)).map((line) => this.inserted(line)),
      ...this.prose(old, later),
    ];
  }

  private hours(old: DiaryDay, later: DiaryDay): Change[] {
    if (old.hours === later.hours) return [];
    const at = inAfter(later.header);
    return [
      change({ ...aboutDay(old.date), kind: "fact-altered", before: old.hours, after: later.hours, at }),
    ];
  }

  private altered(was: DiaryLine, is: DiaryLine): Change {
    if (isReading(is) && was.subject.join() === is.subject.join())
      return this.reading("reading-altered", was, is);
    return this.fact("fact-altered", was, is);
  }

  private removed(line: DiaryLine): Change {
    return isReading(line)
      ? this.reading("reading-removed", line, undefined)
      : this.fact("fact-removed", line, undefined);
  }

  private inserted(line: DiaryLine): Change {
    const kind = isReading(line) ? "reading-added" : "fact-added";
    const made = isReading(line) ? this.reading(kind, undefined, line) : this.fact(kind, undefined, line);
    // On the last day one may still be writing; before it, it was written in later.
    return { ...made, standsOut: line.date < this.last };
  }

  private reading(kind: ChangeKind, was: DiaryLine | undefined, is: DiaryLine | undefined): Change {
    return this.line(kind, was, is, ({ said }) => said);
  }

  private fact(kind: ChangeKind, was: DiaryLine | undefined, is: DiaryLine | undefined): Change {
    return this.line(kind, was, is, ({ word, text }) => `${word} ${text}`);
  }

  private line(
    kind: ChangeKind,
    was: DiaryLine | undefined,
    is: DiaryLine | undefined,
    say: (line: DiaryLine) => string,
  ): Change {
    const line = (is ?? was) as DiaryLine;
    const [ref] = line.subject;
    const about = ref === undefined ? aboutDay(line.date) : { ref, ...this.lookup(ref) };
    return change({
      ...about,
      kind,
      before: was && say(was),
      after: is && say(is),
      day: line.date,
      at: is === undefined ? inBefore(line.place) : inAfter(line.place),
    });
  }

  private prose(old: DiaryDay, later: DiaryDay): Change[] {
    const [was, is] = [old.prose, later.prose];
    const added = is.startsWith(was);
    if (was === is || (added && old.date >= this.last)) return [];
    const [before, after] = firstUnlike(was, is);
    const at = inAfter(later.header);
    return [change({ ...aboutDay(old.date), kind: "prose-altered", before, after, at })];
  }
}

function aboutDay(date: string): Pick<Change, "ref" | "what" | "day"> {
  return { ref: date, what: "day", day: date };
}

/** What is read from a gauge or set by one. */
function isReading({ word }: DiaryLine): boolean {
  return word === "measured" || word === "set";
}

function contentOf({ lines }: DiaryDay): string {
  return JSON.stringify(lines.map(({ wording }) => wording).sort());
}

/**
 * Lines of one side that the other does not have, each as often as it is there too often. A line that stands as it was
 * has not been altered, even if a name in it means something else now.
 */
function unlike(
  was: readonly DiaryLine[],
  is: readonly DiaryLine[],
): { readonly gone: readonly DiaryLine[]; readonly come: readonly DiaryLine[] } {
  const written = ({ word, text }: DiaryLine) => `${word} ${text}`;
  const [gone, come] = [less(was, is, written), less(is, was, written)];
  const wording = (line: DiaryLine) => line.wording;
  return { gone: less(gone, come, wording), come: less(come, gone, wording) };
}

function less(
  lines: readonly DiaryLine[],
  others: readonly DiaryLine[],
  key: (line: DiaryLine) => string,
): readonly DiaryLine[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(key(other), (left.get(key(other)) ?? 0) + 1);
  return lines.filter((line) => {
    const count = left.get(key(line)) ?? 0;
    left.set(key(line), count - 1);
    return count <= 0;
  });
}

/** Pairs of one key, in order, where both sides have as many; at most so many of each. */
function* pairUp(
  gone: readonly DiaryLine[],
  come: readonly DiaryLine[],
  key: (line: DiaryLine) => string,
  most = Number.POSITIVE_INFINITY,
): Generator<[DiaryLine, DiaryLine]> {
  for (const id of new Set(gone.map(key))) {
    const [old, later] = [gone, come].map((lines) => lines.filter((line) => key(line) === id));
    if (old === undefined || later === undefined || old.length > most || later.length > most) continue;
    for (const [index, line] of old.entries()) {
      const other = later[index];
      if (other !== undefined) yield [line, other];
    }
  }
}

/** `12 facts, 6 h` */
function sayDay({ lines, hours }: DiaryDay): string {
  const count = `${lines.length} ${lines.length === 1 ? "fact" : "facts"}`;
  return hours === undefined ? count : `${count}, ${hours}`;
}

/** Longer stretches of prose are cut. */
const LONGEST_PROSE = 120;

/** The first paragraphs that differ, from shortly before the first word that does. */
function firstUnlike(was: string, is: string): readonly [string | undefined, string | undefined] {
  const [old, later] = [was.split("\n"), is.split("\n")];
  const index = old.findIndex((line, at) => line !== later[at]);
  const at = index < 0 ? old.length : index;
  const [first = "", second = ""] = [old[at], later[at]];
  let same = 0;
  while (same < first.length && first[same] === second[same]) same++;
  const from = Math.max(0, first.lastIndexOf(" ", Math.max(0, same - WORDS_BEFORE)) + 1);
  return [shortened(first, from), shortened(second, from)];
}

/** So many characters before the first difference are shown too. */
const WORDS_BEFORE = 25;

function shortened(text: string, from: number): string | undefined {
  if (text === "") return undefined;
  const shown = `${from > 0 ? "…" : ""}${text.slice(from)}`;
  return shown.length <= LONGEST_PROSE ? shown : `${shown.slice(0, LONGEST_PROSE - 1)}…`;
}
