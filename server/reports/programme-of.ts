/** The drawing's content from a build and its plan: done jobs, planned jobs in order of work, hold points among them. */
import type { Build } from "../build/build.ts";
import type { NamedDefinition } from "../build/definitions.ts";
import { recordOf } from "../build/judgement.ts";
import type { HoldState, JobState } from "../build/states.ts";
import { addHours } from "../plan/hours.ts";
import type { Plan } from "../plan/plan.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { compareDates } from "../quantities/dates.ts";
import type { Programme, ProgrammeEntry } from "./programme.ts";

export function programmeOf(build: Build, plan: Plan): Programme {
  const { standing, today } = build;
  const { definitions, gathered } = standing;
  const jobs = [...standing.jobs.values()].map((job) => ({
    day: dayOfJob(plan, job),
    entry: jobEntry(plan, job),
  }));
  const holds = [...standing.holds.values()].map((hold) => ({
    day: dayOfHold(plan, hold),
    entry: holdEntry(plan, hold),
  }));
  const days = gathered.days.filter(({ date }) => date !== undefined && date <= today);
  return {
    title: gathered.vehicle.title ?? "Build programme",
    today,
    past: days
      .map(({ date, hours }) => ({ date: date as IsoDate, hours: hours?.toNumber() }))
      .sort((a, b) => compareDates(a.date, b.date)),
    entries: [...jobs, ...holds].sort((a, b) => compareDates(a.day, b.day)).map(({ entry }) => entry),
    closed: definitions.all(gathered.tree.root, "closed").map(({ record: { from, to } }) => ({ from, to })),
    finish50: plan.forecast?.finish50.date,
    finish90: plan.forecast?.finish90.date,
  };
}

const LAST_DAY = "9999-12-31" as IsoDate;

function titleOf({ title, name }: NamedDefinition): string {
  return title ?? name;
}

function dayOfJob({ levelled }: Plan, { definition, started, done }: JobState): IsoDate {
  if (done !== undefined) return started?.date ?? done.date;
  return levelled.levelled.get(definition.name)?.start.date ?? LAST_DAY;
}

function dayOfHold({ levelled }: Plan, { definition, released, lapsed }: HoldState): IsoDate {
  if (released !== undefined && lapsed === undefined) return released.date;
  return (
    levelled.levelled.get(definition.name)?.finish.date ?? recordOf(definition, "planned")?.date ?? LAST_DAY
  );
}

function jobEntry(plan: Plan, { definition, started, done }: JobState): ProgrammeEntry {
  const common = {
    kind: "job",
    ref: definition.name,
    title: titleOf(definition),
    awayAt: recordOf(definition, "by")?.reference.text,
  } as const;
  if (done !== undefined)
    return { ...common, progress: { kind: "done", from: started?.date ?? done.date, to: done.date } };
  const levelled = plan.levelled.levelled.get(definition.name);
  const figures = plan.levelled.network.figures.get(definition.name);
  if (levelled === undefined) return { ...common, progress: { kind: "unplanned" } };
  const slack =
    figures === undefined
      ? undefined
      : plan.levelled.calendar.workEnds(addHours(levelled.finishHours, figures.totalFloat));
  return {
    ...common,
    progress: {
      kind: "planned",
      from: levelled.start.date,
      to: levelled.finish.date,
      begun: started?.date,
      latest: figures?.critical ? undefined : slack?.date,
      critical: figures?.critical ?? false,
    },
  };
}

function holdEntry(plan: Plan, { definition, released, lapsed }: HoldState): ProgrammeEntry {
  const common = {
    kind: "hold",
    ref: definition.name,
    title: titleOf(definition),
    planned: recordOf(definition, "planned")?.date,
  } as const;
  if (released !== undefined && lapsed === undefined)
    return { ...common, progress: { kind: "released", on: released.date } };
  const reached = plan.levelled.levelled.get(definition.name)?.finish.date;
  return { ...common, progress: { kind: "shut", reached, lapsed: lapsed !== undefined } };
}
