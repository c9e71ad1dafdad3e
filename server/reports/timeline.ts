/** What happened, and what is to come: the past by day, the jobs in the network and levelled, the forecast. */
import type { Build } from "../build/build.ts";
import type { DayBlock, NamedDefinition } from "../build/definitions.ts";
import { recordOf } from "../build/judgement.ts";
import { lineOf } from "../build/source.ts";
import type { DatedFact } from "../build/states.ts";
import type { Hours } from "../plan/hours.ts";
import { decimalHours, hours as hoursOf } from "../plan/hours.ts";
import type { Bound } from "../plan/levelling.ts";
import type { Plan } from "../plan/plan.ts";
import type { Decimal } from "../quantities/decimal.ts";
import { formatDecimal, roundToSignificant, ZERO } from "../quantities/decimal.ts";
import type { Table, TableRow } from "./table.ts";
import { column } from "./table.ts";

export interface TimelineReport {
  readonly schema: "cotter/timeline/1";
  readonly today: string;
  readonly past: readonly {
    readonly date: string;
    readonly hours: number | null;
    readonly file: string;
    readonly line: number;
    readonly facts: readonly {
      readonly word: string;
      readonly text: string;
      readonly file: string;
      readonly line: number;
    }[];
  }[];
  /** Jobs that are not done: network figures in hours of work from the start of the plan, levelled ones in dates. */
  readonly jobs: readonly JobReport[];
  readonly holds: readonly {
    readonly ref: string;
    readonly title: string | null;
    readonly planned: string | null;
    readonly expected: string | null;
    readonly late: boolean;
  }[];
  readonly criticalPath: readonly string[];
  readonly finish50: string | null;
  readonly finish90: string | null;
}

interface JobReport {
  readonly ref: string;
  readonly title: string | null;
  readonly started: boolean;
  readonly takes: {
    readonly optimistic: number;
    readonly likely: number;
    readonly pessimistic: number;
  } | null;
  readonly worked: number;
  readonly remaining: number;
  readonly after: readonly string[];
  readonly earliestStart: number | null;
  readonly earliestFinish: number | null;
  readonly latestStart: number | null;
  readonly latestFinish: number | null;
  readonly totalFloat: number | null;
  readonly critical: boolean;
  readonly levelledStart: string | null;
  readonly levelledFinish: string | null;
  readonly waitsFor: readonly string[];
}

export function timelineReport(build: Build, plan: Plan): TimelineReport {
  const { standing } = build;
  const jobs = plan.activities.filter(({ work }) => work.kind !== "hold");
  const holds = plan.activities.filter(({ work }) => work.kind === "hold");
  return {
    schema: "cotter/timeline/1",
    today: build.today,
    past: daysOf(build).map(({ day, facts }) => ({
      date: day.date ?? "",
      hours: day.hours?.toNumber() ?? null,
      file: day.site.file.path,
      line: lineOf(day.header),
      facts: facts.map(({ fact, place }) => ({
        word: fact.word,
        text: lineText(place),
        file: place.site.file.path,
        line: lineOf(place),
      })),
    })),
    jobs: jobs.flatMap(({ id }) => {
      const definition = standing.names.named("job", id);
      return definition === undefined ? [] : [jobReport(build, plan, definition)];
    }),
    holds: holds.flatMap(({ id }) => {
      const definition = standing.names.named("hold", id);
      if (definition === undefined) return [];
      const planned = recordOf(definition, "planned")?.date ?? null;
      const expected = plan.levelled.levelled.get(id)?.finish.date ?? null;
      return [
        {
          ref: id,
          title: definition.title ?? null,
          planned,
          expected,
          late: planned !== null && expected !== null && expected > planned,
        },
      ];
    }),
    criticalPath: plan.levelled.network.criticalPath,
    finish50: plan.forecast?.finish50.date ?? null,
    finish90: plan.forecast?.finish90.date ?? null,
  };
}

function jobReport({ standing }: Build, plan: Plan, definition: NamedDefinition): JobReport {
  const { name, title } = definition;
  const activity = plan.activities.find(({ id }) => id === name);
  const figures = plan.levelled.network.figures.get(name);
  const levelled = plan.levelled.levelled.get(name);
  const takes = recordOf(definition, "takes");
  const state = standing.jobs.get(definition);
  // Outside work is stated in calendar days, and counts in the network as the hours that the week has in as many.
  const inHours = (value: Decimal) =>
    takes?.unit === "d" ? number(plan.levelled.calendar.hoursInDays(ratio(value))) : value.toNumber();
  return {
    ref: name,
    title: title ?? null,
    started: activity?.started ?? false,
    takes:
      takes === undefined
        ? null
        : {
            optimistic: inHours(takes.optimistic),
            likely: inHours(takes.likely),
            pessimistic: inHours(takes.pessimistic),
          },
    worked: (state?.worked ?? ZERO).toNumber(),
    remaining: figures === undefined ? 0 : number(figures.earliestFinish) - number(figures.earliestStart),
    after: activity?.after ?? [],
    earliestStart: maybe(figures?.earliestStart),
    earliestFinish: maybe(figures?.earliestFinish),
    latestStart: maybe(figures?.latestStart),
    latestFinish: maybe(figures?.latestFinish),
    totalFloat: maybe(figures?.totalFloat),
    critical: figures?.critical ?? false,
    levelledStart: levelled?.start.date ?? null,
    levelledFinish: levelled?.finish.date ?? null,
    waitsFor: (levelled?.bounds ?? []).map(sayBound),
  };
}

export function timelineTable(build: Build, plan: Plan): Table {
  const report = timelineReport(build, plan);
  return {
    title: `Build programme of ${build.standing.gathered.vehicle.title ?? "the vehicle"} on ${build.today}`,
    columns: [
      column("when", "When"),
      column("what", "What"),
      column("hours", "Hours", "right"),
      column("float", "Float", "right"),
      column("remark", "Remark"),
    ],
    sections: [
      { heading: "What has been done", rows: daysOf(build).map(pastRow(build)) },
      {
        heading: "What is to come",
        rows: [...plan.activities]
          .sort(byStart(plan))
          .map((activity) => activityRow(build, plan, activity.id)),
      },
    ].filter(({ rows }) => rows.length > 0),
    notes: notesOf(report),
    cautions: [],
  };
}

interface DayWithFacts {
  readonly day: DayBlock;
  readonly facts: readonly DatedFact[];
}

/** The days of the diary that count, by date, each with its facts. */
function daysOf({ standing, facts, today }: Build): DayWithFacts[] {
  const bySite = new Map<unknown, DatedFact[]>();
  for (const fact of facts) bySite.set(fact.place.site, [...(bySite.get(fact.place.site) ?? []), fact]);
  return standing.gathered.days
    .filter(({ date }) => date !== undefined && date <= today)
    .map((day) => ({ day, facts: bySite.get(day.site) ?? [] }))
    .sort((a, b) =>
      (a.day.date ?? "") < (b.day.date ?? "") ? -1 : (a.day.date ?? "") > (b.day.date ?? "") ? 1 : 0,
    );
}

/** What a day's facts were about, assembly by assembly: `front: removed 2, found; engine: measured 3`. */
function pastRow(build: Build): (day: DayWithFacts) => TableRow {
  const assemblies = assembliesByFact(build);
  return ({ day, facts }) => {
    const counts = new Map<string, Map<string, number>>();
    for (const dated of facts) {
      const assembly = assemblies(dated);
      const words = counts.get(assembly) ?? new Map<string, number>();
      counts.set(assembly, words.set(dated.fact.word, (words.get(dated.fact.word) ?? 0) + 1));
    }
    const what = [...counts].map(([assembly, words]) => {
      const said = [...words].map(([word, count]) => (count === 1 ? word : `${word} ${count}`)).join(", ");
      return assembly === "" ? said : `${assembly}: ${said}`;
    });
    const hours = day.hours === undefined ? "" : formatDecimal(day.hours);
    return { cells: { when: day.date ?? "", what: what.join("; "), hours } };
  };
}

/** The first name of the path of what a fact is about; empty for money, jobs and the like. */
function assembliesByFact({ links }: Build): (fact: DatedFact) => string {
  const bySite = new Map<unknown, { readonly start: number; readonly name: string }[]>();
  for (const { place, nodes } of links) {
    const name = nodes[0]?.path.split(".")[0];
    if (name === undefined) continue;
    const known = bySite.get(place.site);
    if (known === undefined) bySite.set(place.site, [{ start: place.start, name }]);
    else known.push({ start: place.start, name });
  }
  return ({ place: { site, start, end } }) =>
    bySite.get(site)?.find((link) => link.start >= start && link.start < end)?.name ?? "";
}

function activityRow({ standing }: Build, plan: Plan, id: string): TableRow {
  const definition = standing.names.named("job", id) ?? standing.names.named("hold", id);
  const figures = plan.levelled.network.figures.get(id);
  const levelled = plan.levelled.levelled.get(id);
  const hold = definition?.kind === "hold";
  const when =
    levelled === undefined
      ? "no place in the week"
      : levelled.start.date === levelled.finish.date
        ? levelled.finish.date
        : `${levelled.start.date} to ${levelled.finish.date}`;
  const hours =
    figures === undefined
      ? ZERO
      : decimalHours(figures.earliestFinish).minus(decimalHours(figures.earliestStart));
  const planned = definition && recordOf(definition, "planned")?.date;
  const late = hold && planned !== undefined && levelled !== undefined && levelled.finish.date > planned;
  const remark = [
    hold ? "hold point" : "",
    figures?.critical && !hold ? "critical" : "",
    levelled?.activity.started ? "begun" : "",
    planned === undefined ? "" : `planned for ${planned}`,
    late ? "late" : "",
  ].filter((word) => word !== "");
  return {
    cells: {
      when,
      what: definition?.title ?? id,
      hours: hold ? "" : sayHours(hours),
      float: figures === undefined || hold ? "" : sayHours(decimalHours(figures.totalFloat)),
      remark: late ? { text: remark.join(", "), tone: "bad" } : remark.join(", "),
    },
    remarks:
      levelled === undefined || levelled.bounds.length === 0
        ? []
        : [`${id}: after ${levelled.bounds.map(sayBound).join(", ")}`],
  };
}

function notesOf({ jobs, finish50, finish90, criticalPath }: TimelineReport): string[] {
  if (jobs.length === 0) return ["No job is open."];
  const forecast =
    finish50 === null || finish90 === null
      ? "No forecast: something in the plan has no place in the week."
      : finish50 === finish90
        ? `Forecast: done by ${finish90} with nine chances in ten; an even chance gives the same day.`
        : `Forecast: done by ${finish50} as likely as not, by ${finish90} with nine chances in ten.`;
  const path = criticalPath.length === 0 ? [] : [`Critical path: ${criticalPath.join(", ")}.`];
  return [
    forecast,
    ...path,
    "Float is what a job can slip in hours of work, in the network, without the last one being later.",
  ];
}

function byStart({ levelled: { levelled } }: Plan) {
  return (a: { readonly id: string }, b: { readonly id: string }): number => {
    const [left, right] = [
      levelled.get(a.id)?.start.date ?? "9999-12-31",
      levelled.get(b.id)?.start.date ?? "9999-12-31",
    ];
    return left < right ? -1 : left > right ? 1 : 0;
  };
}

function sayBound(bound: Bound): string {
  if (bound.kind === "wait") return bound.wait.why;
  return bound.kind === "after" ? bound.id : `hands free of ${bound.id}`;
}

function sayHours(hours: Decimal): string {
  return formatDecimal(roundToSignificant(hours, 3));
}

function lineText({ site, start, end }: DatedFact["place"]): string {
  return site.block.text.slice(start, end).replace(/\s+/g, " ");
}

function maybe(hours: Hours | undefined): number | null {
  return hours === undefined ? null : number(hours);
}

function number(hours: Hours): number {
  return decimalHours(hours).toDecimalPlaces(9).toNumber();
}

function ratio(value: Decimal): Hours {
  return hoursOf(value);
}
