/** The drawing of a plan in words: beside its marks, and for those who do not see them. */
import type { IsoDate } from "../quantities/dates.ts";
import { daysBetween } from "../quantities/dates.ts";
import type { Programme, ProgrammeEntry, ProgrammeHold, ProgrammeJob } from "./programme.ts";

/** `2026-05-02 to 2026-05-09; critical`, without the title. */
export function entryWords(entry: ProgrammeEntry): string {
  return entry.kind === "job" ? jobWords(entry) : holdWords(entry);
}

/** The same in so few words that they have room beside the drawing, which shows the rest. */
export function briefWords(entry: ProgrammeEntry): string {
  if (entry.kind === "hold") {
    if (entry.progress.kind === "released") return `released ${entry.progress.on}`;
    const lapsed = entry.progress.lapsed ? ["lapsed"] : [];
    return [...lapsed, ...aimWords(entry.planned, entry.progress.reached)].join("; ");
  }
  const { progress, awayAt } = entry;
  if (progress.kind === "unplanned") return "no place in the plan";
  const done = progress.kind === "done" ? ["done"] : [];
  const critical = progress.kind === "planned" && progress.critical ? ["critical"] : [];
  const away = awayAt === undefined ? [] : ["away"];
  return [span(progress.from, progress.to), ...done, ...critical, ...away].join("; ");
}

/** Everything that the drawing shows, as sentences. */
export function programmeWords({ today, past, entries, finish50, finish90 }: Programme): string {
  const sentences = [
    `Today is ${today}.`,
    ...(past.length === 0 ? [] : [`Diary: ${diaryWords(past)}.`]),
    ...entries.map((entry) => `${entry.title}: ${entryWords(entry)}.`),
    ...finishWords(finish50, finish90),
  ];
  return sentences.join(" ");
}

/** Two odds of one day are told once. */
function finishWords(finish50: IsoDate | undefined, finish90: IsoDate | undefined): readonly string[] {
  if (finish50 !== undefined && finish50 === finish90) return [`Finish at 50 % and at 90 %: ${finish50}.`];
  return [
    ...(finish50 === undefined ? [] : [`Finish at 50 %: ${finish50}.`]),
    ...(finish90 === undefined ? [] : [`Finish at 90 %: ${finish90}.`]),
  ];
}

/** `41 days, 163.5 h` */
export function diaryWords(past: Programme["past"]): string {
  const tenths = past.reduce((sum, { hours }) => sum + Math.round((hours ?? 0) * 10), 0);
  return `${past.length} ${past.length === 1 ? "day" : "days"}, ${tenths / 10} h`;
}

function jobWords({ awayAt, progress }: ProgrammeJob): string {
  const words: string[] = [];
  switch (progress.kind) {
    case "done":
      words.push(`done, ${span(progress.from, progress.to)}`);
      break;
    case "planned":
      words.push(span(progress.from, progress.to));
      if (progress.critical) words.push("critical");
      if (progress.begun !== undefined) words.push(`begun ${progress.begun}`);
      break;
    case "unplanned":
      words.push("no place in the plan");
      break;
  }
  if (awayAt !== undefined) words.push(`away at ${awayAt}`);
  return words.join("; ");
}

function holdWords({ planned, progress }: ProgrammeHold): string {
  if (progress.kind === "released") return `hold point, released ${progress.on}`;
  const shut = progress.lapsed ? "hold point, release lapsed" : "hold point";
  return [shut, ...aimWords(planned, progress.reached)].join("; ");
}

function aimWords(planned: IsoDate | undefined, reached: IsoDate | undefined): readonly string[] {
  const aim = planned === undefined ? [] : [`planned ${planned}`];
  if (reached === undefined) return [...aim, "not reached in the plan"];
  if (planned === undefined || reached <= planned) return aim.length === 0 ? [`reached ${reached}`] : aim;
  const late = daysBetween(planned, reached);
  return [...aim, `${late} ${late === 1 ? "day" : "days"} late`];
}

function span(from: IsoDate, to: IsoDate): string {
  return from === to ? from : `${from} to ${to}`;
}
