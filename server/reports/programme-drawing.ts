/**
 * The plan as a drawing: a static SVG without scripts, in ink on paper as a workshop draws. It takes the colours and the
 * letters of the page it stands in (`--ink`, `--paper`, `--rule`, `--faint`, `--face`), or its own, light and dark.
 */
import type { IsoDate } from "../quantities/dates.ts";
import { addDays, daysBetween, laterDate } from "../quantities/dates.ts";
import type { Programme, ProgrammeEntry } from "./programme.ts";
import { drawKey } from "./programme-key.ts";
import { figure, hatching } from "./programme-marks.ts";
import { drawPlot, ROW } from "./programme-rows.ts";
import { briefWords, diaryWords, entryWords, programmeWords } from "./programme-words.ts";
import { fitted, plainText } from "./text-width.ts";
import type { TimeScale } from "./time-scale.ts";
import { dayBegins, dayEnds, ticks } from "./time-scale.ts";

export interface DrawingOptions {
  /** Starts the ids inside the drawing, unlike for each drawing of a page: letters, digits and hyphens. */
  readonly id?: string;
  /** How many entries fit on one sheet of paper. */
  readonly entriesPerSheet?: number;
  /** Rows are links, for a page with a script: each has a tab stop, its words, and its ref as `data-ref`. */
  readonly linked?: boolean;
}

const WIDTH = 820;
const NAMES_WIDTH = 238;
const PLOT_LEFT = 250;
const PLOT_RIGHT = WIDTH - 8;
/** Room above the plot for the days, today and the two finishes. */
const HEAD = 66;
/** Air below the last line. */
const FOOT = 6;
/** Of a date in small letters, with some air. */
const DATE_WIDTH = 74;
/** Height of the strip of the diary, for its longest day. */
const STRIP = 24;
/** Hours; a diary of short days does not fill the strip. */
const LEAST_LONGEST_DAY = 4;

/**
 * Draws a plan, on as many sheets as its entries need; each is a whole SVG. Days are drawn as whole days. Of the past at
 * most twice as much is drawn as of what is to come, and at least a month; what is earlier is told in words.
 */
export function drawProgramme(programme: Programme, options: DrawingOptions = {}): readonly string[] {
  const { id = "programme", entriesPerSheet = 24, linked = false } = options;
  const scale = scaleOf(programme);
  const count = Math.max(1, Math.ceil(programme.entries.length / entriesPerSheet));
  return Array.from({ length: count }, (_, sheet) => {
    const first = sheet * entriesPerSheet;
    const entries = programme.entries.slice(first, first + entriesPerSheet);
    const words = count === 1 ? "" : `sheet ${sheet + 1} of ${count}`;
    return drawSheet({ ...programme, entries }, scale, { id: `${id}-${sheet + 1}`, sheet: words, linked });
  });
}

interface Sheet {
  readonly id: string;
  /** `sheet 2 of 3`; empty where there is one. */
  readonly sheet: string;
  readonly linked: boolean;
}

function drawSheet(programme: Programme, scale: TimeScale, { id, sheet, linked }: Sheet): string {
  const { past, entries } = programme;
  const title = sheet === "" ? programme.title : `${programme.title}, ${sheet}`;
  const top = HEAD;
  const firstRow = top + (past.length === 0 ? 0 : ROW);
  const bottom = firstRow + entries.length * ROW;
  const middleOf = (row: number) => firstRow + row * ROW + ROW / 2;
  // Above the drawing, whose own places begin at 0: one knows the marks before one meets them.
  const key = drawKey(programme, 0, PLOT_RIGHT, `${id}-hatching`);
  const lines = [
    `<svg xmlns="http://www.w3.org/2000/svg" class="programme" viewBox="0 ${-key.height} ${WIDTH} ${bottom + FOOT + key.height}" role="${linked ? "group" : "img"}" aria-labelledby="${id}-title" aria-describedby="${id}-words">`,
    `<title id="${id}-title">${plainText(title)}</title>`,
    `<desc id="${id}-words">${plainText(programmeWords(programme))}</desc>`,
    `<style>${STYLE}</style>`,
    `<defs>${hatching(`${id}-hatching`)}</defs>`,
    `<g class="key">${key.marks.join("\n")}</g>`,
    ...(sheet === "" ? [] : [`<text class="small faint" x="0" y="14">${sheet}</text>`]),
    ...closedDays(programme, scale, top, bottom),
    ...dayLines(scale, top, bottom),
    `<path class="rule" d="M0 ${top}H${PLOT_RIGHT}M0 ${bottom}H${PLOT_RIGHT}"/>`,
    ...flags(programme, scale, bottom),
    ...(past.length === 0 ? [] : diary(programme, scale, top + ROW / 2)),
    ...entries.flatMap((entry, row) => [
      `${linked ? openLink(entry) : "<g>"}<title>${plainText(wordsOf(entry))}</title>`,
      ...names(entry, middleOf(row)),
      ...drawPlot(entry, scale, middleOf(row), `${id}-hatching`),
      "</g>",
    ]),
    "</svg>",
  ];
  return lines.join("\n");
}

function wordsOf(entry: ProgrammeEntry): string {
  return `${entry.title}: ${entryWords(entry)}`;
}

/** The title that follows it is its name. */
function openLink({ ref }: ProgrammeEntry): string {
  return `<g class="link" role="link" tabindex="0" data-ref="${plainText(ref)}">`;
}

function scaleOf({ today, past, entries, finish50, finish90 }: Programme): TimeScale {
  const days = [...entries.flatMap(daysOf), ...past.map(({ date }) => date)];
  const all = [...days, finish50 ?? today, finish90 ?? today];
  const first = all.reduce((least, day) => (day < least ? day : least), today);
  const last = all.reduce(laterDate, today);
  const earliest = addDays(today, -Math.max(31, 2 * daysBetween(today, last)));
  const from = laterDate(first, earliest);
  // Some air at either end.
  const margin = Math.ceil(daysBetween(from, last) * 0.03) + 1;
  return { from: addDays(from, -margin), to: addDays(last, margin), left: PLOT_LEFT, right: PLOT_RIGHT };
}

function daysOf(entry: ProgrammeEntry): readonly IsoDate[] {
  const { progress } = entry;
  const days = entry.kind === "hold" ? [entry.planned] : [];
  switch (progress.kind) {
    case "done":
      return [progress.from, progress.to];
    case "planned":
      return [progress.from, progress.to, progress.begun ?? progress.from, progress.latest ?? progress.to];
    case "unplanned":
      return [];
    case "released":
      return [progress.on];
    case "shut":
      return [...days, progress.reached].flatMap((day) => day ?? []);
  }
}

function closedDays({ closed }: Programme, scale: TimeScale, top: number, bottom: number): readonly string[] {
  return closed
    .filter(({ from, to }) => from <= to && to >= scale.from && from <= scale.to)
    .flatMap(({ from, to }) => {
      const [left, right] = [dayBegins(scale, from), dayEnds(scale, to)];
      const band = `<rect class="closed" x="${figure(left)}" y="${top}" width="${figure(right - left)}" height="${bottom - top}"><title>closed, ${from} to ${to}</title></rect>`;
      const name = `<text class="small faint" x="${figure((left + right) / 2)}" y="${bottom - 4}" text-anchor="middle">closed</text>`;
      return right - left < 40 ? [band] : [band, name];
    });
}

function dayLines(scale: TimeScale, top: number, bottom: number): readonly string[] {
  return ticks(scale, DATE_WIDTH).map(({ date, label }) => {
    const x = figure(dayBegins(scale, date));
    const name = `<text class="small faint" x="${x}" dx="4" y="14">${label}</text>`;
    return `<path class="rule" d="M${x} 6V16M${x} ${top}V${bottom}"/>${label === "" ? "" : name}`;
  });
}

/**
 * Today and the two finishes, each on a line of its own. The later one begins higher, and words stand on the side where
 * no pole comes down.
 */
function flags(
  { today, finish50, finish90 }: Programme,
  scale: TimeScale,
  bottom: number,
): readonly string[] {
  const same = finish50 === finish90;
  const [only50, nine] = same ? [undefined, "50 % and 90 %"] : [finish50, "90 %"];
  const poles = [
    {
      y: same ? 45 : 31,
      x: finish90 && dayEnds(scale, finish90),
      words: `finish ${nine} ${finish90}`,
      look: "finish",
    },
    { y: 45, x: only50 && dayEnds(scale, only50), words: `finish 50 % ${only50}`, look: "finish" },
    { y: 59, x: dayBegins(scale, today), words: `today ${today}`, look: "today" },
  ];
  return poles.flatMap(({ x, y, words, look }) => {
    if (typeof x !== "number") return [];
    const before = x > PLOT_LEFT + 40;
    const text = `<text class="small" x="${figure(x)}" dx="${before ? -4 : 4}" y="${y}"${before ? ' text-anchor="end"' : ""}>${words}</text>`;
    return [`<path class="${look}" d="M${figure(x)} ${y - 10}V${bottom}"/>`, text];
  });
}

function diary({ past }: Programme, scale: TimeScale, middle: number): readonly string[] {
  const drawn = past.filter(({ date }) => date >= scale.from && date <= scale.to);
  const foot = middle + STRIP / 2;
  const longest = drawn.reduce((most, { hours }) => Math.max(most, hours ?? 0), LEAST_LONGEST_DAY);
  const strokes = drawn.map(({ date, hours }) => {
    const x = figure((dayBegins(scale, date) + dayEnds(scale, date)) / 2);
    const height = Math.max(3, ((hours ?? 0) / longest) * STRIP);
    const words = hours === undefined ? date : `${date}, ${hours} h`;
    return `<path class="day" d="M${x} ${foot}V${figure(foot - height)}"><title>${words}</title></path>`;
  });
  const left = past.length - drawn.length;
  const words = left === 0 ? diaryWords(past) : `${diaryWords(past)}; ${left} before ${scale.from}`;
  return [...twoLines("Diary", words, middle), ...strokes];
}

/** The name and the words of a row; the name of a hold point stands at its gate. */
function names(entry: ProgrammeEntry, middle: number): readonly string[] {
  const words = briefWords(entry);
  return entry.kind === "job" ? twoLines(entry.title, words, middle) : twoLines("Hold point", words, middle);
}

function twoLines(first: string, second: string, middle: number): readonly string[] {
  return [
    `<text x="0" y="${middle - 2}">${fitted(first, NAMES_WIDTH, 13)}</text>`,
    `<text class="small faint" x="0" y="${middle + 12}">${fitted(second, NAMES_WIDTH, 11)}</text>`,
  ];
}

const STYLE = `
.programme { --i: var(--ink, #1c2126); --p: var(--paper, #fdfcf9); --r: var(--rule, #b9b4a8); --f: var(--faint, #5d6468); display: block; width: 100%; height: auto; background: var(--p); font-family: var(--face, Georgia, "Times New Roman", serif); font-size: 13px; break-inside: avoid; }
@media (prefers-color-scheme: dark) { .programme { --i: var(--ink, #e8e4da); --p: var(--paper, #1b1f23); --r: var(--rule, #555a5e); --f: var(--faint, #a3a9ac); } }
@media print { .programme { --i: var(--ink, #000); --p: var(--paper, #fff); --r: var(--rule, #999); --f: var(--faint, #444); } }
.programme text { fill: var(--i); stroke: var(--p); stroke-width: 3px; stroke-linejoin: round; paint-order: stroke; }
.programme .small { font-size: 11px; font-variant-numeric: tabular-nums; }
.programme .faint { fill: var(--f); }
.programme .name { font-weight: bold; }
.programme path { fill: none; }
.programme path, .programme rect { stroke: var(--i); stroke-width: 1.2; }
.programme .rule { stroke: var(--r); stroke-width: .8; }
.programme .closed { fill: var(--f); fill-opacity: .13; stroke: none; }
.programme .today { stroke-width: 1.6; }
.programme .finish { stroke-dasharray: 1 4; stroke-linecap: round; stroke-width: 1.8; }
.programme .day { stroke-width: 1.6; }
.programme .work { fill: var(--p); }
.programme .away { stroke-dasharray: 5 3; }
.programme .critical { stroke-width: 3.4; }
.programme .done { fill: none; stroke-width: 1; }
.programme .hatched { stroke: none; }
.programme .hatch { stroke-width: 1.6; }
.programme .float, .programme .begun, .programme .aim, .programme .post { stroke: var(--f); }
.programme .aim { stroke-dasharray: 3 3; }
.programme .leaf { stroke-width: 1.4; }
.programme .posts { stroke-width: 3; stroke-linecap: round; }
`;
