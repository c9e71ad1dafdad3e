/** The key of a drawing: the marks that occur in it, each with its meaning. */
import type { Programme, ProgrammeHold, ProgrammeJob } from "./programme.ts";
import { missedDay } from "./programme.ts";
import {
  begunLine,
  doneBox,
  figure,
  floatLine,
  openGate,
  plannedPost,
  shutGate,
  workBox,
} from "./programme-marks.ts";
import { widthOf } from "./text-width.ts";

/** Height of a line of the key, and of the air below the last. */
const LINE = 28;
const AIR = 8;
const MARK_WIDTH = 30;
const GAP = 6;
const APART = 14;

export interface ProgrammeKey {
  readonly marks: readonly string[];
  readonly height: number;
}

interface Mark {
  readonly used: boolean;
  readonly words: string;
  readonly draw: (x: number, middle: number) => string;
}

/** The key above `bottom`, in as many lines as it takes up to `right`. */
export function drawKey(programme: Programme, bottom: number, right: number, hatching: string): ProgrammeKey {
  let [x, line] = [LEFT, 0];
  const places = marksOf(programme, hatching)
    .filter(({ used }) => used)
    .map((mark) => {
      const width = MARK_WIDTH + GAP + widthOf(mark.words, 11) + APART;
      if (x > LEFT && x + width > right) [x, line] = [LEFT, line + 1];
      const place = { mark, x, line };
      x += width;
      return place;
    });
  const height = places.length === 0 ? 0 : (line + 1) * LINE + AIR;
  const marks = places.flatMap(({ mark: { words, draw }, x: at, line: of }) => {
    const middle = bottom - height + of * LINE + LINE / 2;
    const wordsAt = figure(at + MARK_WIDTH + GAP);
    return [draw(at, middle), `<text class="small" x="${wordsAt}" y="${middle + 4}">${words}</text>`];
  });
  return { marks, height };
}

const LEFT = 4;

function marksOf({ past, entries, closed }: Programme, hatching: string): readonly Mark[] {
  const jobs = entries.filter((entry): entry is ProgrammeJob => entry.kind === "job");
  const holds = entries.filter((entry): entry is ProgrammeHold => entry.kind === "hold");
  const planned = jobs.flatMap(({ awayAt, progress }) =>
    progress.kind === "planned" ? { ...progress, awayAt } : [],
  );
  const box = (look: { away?: boolean; critical?: boolean }) => (x: number, middle: number) =>
    workBox(x, x + MARK_WIDTH, middle, look);
  return [
    {
      used: past.length > 0,
      words: "hours of a day",
      draw: (x, middle) => `<path class="day" d="${strokes(x + 5, middle + 9)}"/>`,
    },
    {
      used: planned.some(({ awayAt, critical }) => awayAt === undefined && !critical),
      words: "work to come",
      draw: box({}),
    },
    { used: planned.some(({ critical }) => critical), words: "critical", draw: box({ critical: true }) },
    { used: jobs.some(({ awayAt }) => awayAt !== undefined), words: "away", draw: box({ away: true }) },
    {
      used: jobs.some(({ progress }) => progress.kind === "done"),
      words: "done",
      draw: (x, middle) => doneBox(x, x + MARK_WIDTH, middle, hatching),
    },
    {
      used: planned.some(({ from, begun }) => begun !== undefined && begun < from),
      words: "begun before",
      draw: (x, middle) => begunLine(x, x + MARK_WIDTH, middle),
    },
    {
      used: planned.some(({ to, latest }) => latest !== undefined && latest > to),
      words: "float",
      draw: (x, middle) => floatLine(x, x + MARK_WIDTH, middle),
    },
    {
      used: holds.some(({ progress }) => progress.kind === "shut"),
      words: "hold point",
      draw: (x, middle) => shutGate(x + 2, middle),
    },
    {
      used: holds.some(({ progress }) => progress.kind === "released"),
      words: "released",
      draw: (x, middle) => openGate(x + 10, middle),
    },
    {
      used: holds.some((hold) => missedDay(hold) !== undefined),
      words: "day it was planned for",
      draw: (x, middle) => plannedPost(x + MARK_WIDTH / 2, middle),
    },
    {
      used: closed.length > 0,
      words: "closed",
      draw: (x, middle) =>
        `<rect class="closed" x="${figure(x)}" y="${middle - 10}" width="${MARK_WIDTH}" height="20"/>`,
    },
  ];
}

/** Days of few and of many hours. */
function strokes(x: number, foot: number): string {
  return [4, 14, 9, 18, 6].map((height, day) => `M${x + day * 5} ${foot}v${-height}`).join("");
}
