/** The key of a drawing: the marks that occur in it, each with its meaning. */
import type { Programme, ProgrammeHold, ProgrammeJob } from "./programme.ts";
import { doneBox, figure, floatLine, GATE_HALF, openGate, shutGate, workBox } from "./programme-marks.ts";
import { widthOf } from "./text-width.ts";

/** Height of a line of the key. */
const LINE = 30;
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

/** The key below `top`, in as many lines as it takes up to `right`. */
export function drawKey(programme: Programme, top: number, right: number, hatching: string): ProgrammeKey {
  let [x, middle] = [4, top + LINE / 2 + 8];
  const marks: string[] = [];
  for (const { used, words, draw } of marksOf(programme, hatching)) {
    if (!used) continue;
    const width = MARK_WIDTH + GAP + widthOf(words, 11) + APART;
    if (x > 4 && x + width > right) [x, middle] = [4, middle + LINE];
    const wordsAt = figure(x + MARK_WIDTH + GAP);
    marks.push(draw(x, middle), `<text class="small" x="${wordsAt}" y="${middle + 4}">${words}</text>`);
    x += width;
  }
  return { marks, height: middle + LINE / 2 - top };
}

function marksOf({ entries, closed }: Programme, hatching: string): readonly Mark[] {
  const jobs = entries.filter((entry): entry is ProgrammeJob => entry.kind === "job");
  const holds = entries.filter((entry): entry is ProgrammeHold => entry.kind === "hold");
  const planned = jobs.flatMap(({ awayAt, progress }) =>
    progress.kind === "planned" ? { ...progress, awayAt } : [],
  );
  const box = (look: { away?: boolean; critical?: boolean }) => (x: number, middle: number) =>
    workBox(x, x + MARK_WIDTH, middle, look);
  return [
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
      used: planned.some(({ to, latest }) => latest !== undefined && latest > to),
      words: "float",
      draw: (x, middle) => floatLine(x, x + MARK_WIDTH, middle),
    },
    {
      used: holds.some(({ progress }) => progress.kind === "shut"),
      words: "hold point",
      draw: (x, middle) => shutGate(x + GATE_HALF, middle),
    },
    {
      used: holds.some(({ progress }) => progress.kind === "released"),
      words: "released",
      draw: (x, middle) => openGate(x + GATE_HALF, middle),
    },
    {
      used: closed.length > 0,
      words: "closed",
      draw: (x, middle) =>
        `<rect class="closed" x="${figure(x)}" y="${middle - 10}" width="${MARK_WIDTH}" height="20"/>`,
    },
  ];
}
