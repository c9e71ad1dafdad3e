/** One row of the drawing of a plan: its marks along the days. */
import type { IsoDate } from "../quantities/dates.ts";
import type { ProgrammeEntry, ProgrammeHold, ProgrammeJob } from "./programme.ts";
import { missedDay } from "./programme.ts";
import {
  begunLine,
  doneBox,
  figure,
  floatLine,
  GATE_LEAF,
  OPEN_LEAF,
  openGate,
  plannedLine,
  plannedPost,
  shutGate,
  workBox,
} from "./programme-marks.ts";
import { fitted, widthOf } from "./text-width.ts";
import type { TimeScale } from "./time-scale.ts";
import { dayBegins, dayEnds } from "./time-scale.ts";

/** Height of a row. */
export const ROW = 36;
const GAP = 6;

/** The marks of an entry; `hatching` is the id of the pattern for what is done. */
export function drawPlot(
  entry: ProgrammeEntry,
  scale: TimeScale,
  middle: number,
  hatching: string,
): readonly string[] {
  return entry.kind === "job" ? job(entry, scale, middle, hatching) : hold(entry, scale, middle);
}

function job(
  { awayAt, progress }: ProgrammeJob,
  scale: TimeScale,
  middle: number,
  hatching: string,
): readonly string[] {
  if (progress.kind === "unplanned") return [];
  if (progress.to < scale.from) return [earlier(scale, middle)];
  const away = awayAt !== undefined;
  const [left, right] = [dayBegins(scale, progress.from), dayEnds(scale, progress.to)];
  if (progress.kind === "done") return [doneBox(left, right, middle, hatching, { away })];
  const { begun, latest, critical } = progress;
  return [
    ...(begun === undefined || begun >= progress.from
      ? []
      : [begunLine(dayBegins(scale, begun), left, middle)]),
    ...(latest === undefined || latest <= progress.to
      ? []
      : [floatLine(right, dayEnds(scale, latest), middle)]),
    workBox(left, right, middle, { away, critical }),
    ...(critical ? [criticalWord(left, right, scale, middle)] : []),
  ];
}

function hold(entry: ProgrammeHold, scale: TimeScale, middle: number): readonly string[] {
  const { title, planned, progress } = entry;
  if (progress.kind === "released") {
    if (progress.on < scale.from) return [earlier(scale, middle, title)];
    const x = dayMiddle(scale, progress.on);
    return [
      openGate(x, middle, sideOf(x, scale)),
      gateName(title, { gate: x, leaf: OPEN_LEAF, post: x }, scale, middle),
    ];
  }
  const missed = missedDay(entry);
  const day = missed === undefined ? (planned ?? progress.reached) : progress.reached;
  if (day === undefined)
    return [text(fitted(title, scale.right - scale.left, 13), "name", scale.left + GAP, middle, "start")];
  const x = dayMiddle(scale, day);
  const post = missed === undefined ? x : dayMiddle(scale, missed);
  const aim = missed === undefined ? [] : [plannedLine(post, x, middle), plannedPost(post, middle)];
  return [
    ...aim,
    shutGate(x, middle, sideOf(x, scale)),
    gateName(title, { gate: x, leaf: GATE_LEAF, post }, scale, middle),
  ];
}

/**
 * The name behind a gate, or before it and the post that belongs to it, or above the line between the two; where it fits
 * nowhere, cut short on the side with more room.
 */
function gateName(
  title: string,
  { gate, leaf, post }: { readonly gate: number; readonly leaf: number; readonly post: number },
  scale: TimeScale,
  middle: number,
): string {
  const hangsBehind = sideOf(gate, scale) === 1;
  const [behind, between] = hangsBehind ? [gate + leaf + GAP, gate - GAP] : [gate + GAP, gate - leaf - GAP];
  const before = post < gate ? post - 2 * GAP : between;
  const width = widthOf(title, 13);
  const cut = (room: number) => fitted(title, room, 13);
  if (behind + width <= scale.right) return text(cut(width), "name", behind, middle, "start");
  if (post < gate && before - width >= scale.left) return text(cut(width), "name", before, middle, "end");
  const [roomBehind, roomBefore] = [scale.right - behind, between - scale.left];
  const raised = post < gate ? middle - 8 : middle;
  return roomBehind > roomBefore
    ? text(cut(roomBehind), "name", behind, middle, "start")
    : text(cut(roomBefore), "name", between, raised, "end");
}

/** What happens on a day stands in the middle of it. */
function dayMiddle(scale: TimeScale, day: IsoDate): number {
  return (dayBegins(scale, day) + dayEnds(scale, day)) / 2;
}

/** Behind its post, unless there is no room. */
function sideOf(gate: number, { right }: TimeScale): 1 | -1 {
  return gate + GATE_LEAF <= right ? 1 : -1;
}

/** The word behind a box, or before it where there is no room behind. */
function criticalWord(left: number, right: number, scale: TimeScale, middle: number): string {
  const hasRoom = right + GAP + widthOf("critical", 11) <= scale.right;
  return hasRoom
    ? text("critical", "small", right + GAP, middle, "start")
    : text("critical", "small", left - GAP, middle, "end");
}

function text(words: string, look: string, x: number, middle: number, anchor: "start" | "end"): string {
  return `<text class="${look}" x="${figure(x)}" y="${middle + 4}" text-anchor="${anchor}">${words}</text>`;
}

function earlier(scale: TimeScale, middle: number, title = ""): string {
  const words = title === "" ? "earlier" : `${title}, earlier`;
  return text(fitted(words, scale.right - scale.left, 11), "small faint", scale.left + GAP, middle, "start");
}
