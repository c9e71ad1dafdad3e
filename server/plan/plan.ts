/** The plan of a build: what is still to be done, in the network and levelled, what has to be bought and by when. */
import type { Build } from "../build/build.ts";
import type { DayBlock, NamedDefinition } from "../build/definitions.ts";
import { isShut, jobsAskedBy } from "../build/hold-order.ts";
import { recordOf, recordsOf } from "../build/judgement.ts";
import { Kept } from "../build/kept.ts";
import { KeptOfAll } from "../build/kept-of-each.ts";
import { asksFor } from "../build/leaning.ts";
import { listUnder } from "../build/list-under.ts";
import { plannedHolds } from "../build/planned-holds.ts";
import type { Standing } from "../build/standing.ts";
import type { HoldState, JobState } from "../build/states.ts";
import type { TreeNode } from "../build/tree/node.ts";
import { isWithin } from "../build/tree/node.ts";
import type { IsoDate, Weekday } from "../quantities/dates.ts";
import { addDays } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import { decimal, ZERO } from "../quantities/decimal.ts";
import type { Estimate } from "./estimate.ts";
import { remainingEstimate, threePointEstimate } from "./estimate.ts";
import type { Forecast } from "./forecast.ts";
import { forecast } from "./forecast.ts";
import { wholeAbove } from "./hours.ts";
import type { LevelledPlan } from "./levelling.ts";
import { level } from "./levelling.ts";
import type { LatestBeginning } from "./needed-by.ts";
import { latestBeginnings } from "./needed-by.ts";
import type { PartNeed } from "./needs.ts";
import { needsOf, partsNeededBy } from "./needs.ts";
import type { PlannedActivity, PlannedWork, Wait } from "./planned-activity.ts";
import type { Week } from "./working-calendar.ts";
import { DEFAULT_WEEK, WorkingCalendar } from "./working-calendar.ts";

export interface Plan {
  readonly activities: readonly PlannedActivity[];
  readonly levelled: LevelledPlan;
  readonly forecast: Forecast | undefined;
  /** By job or hold point: when it must begin for the next planned hold point to keep its day. */
  readonly latest: ReadonlyMap<string, LatestBeginning>;
  readonly needs: readonly PartNeed[];
}

const remembered = new WeakMap<Build, Plan>();
const plans = new KeptOfAll<Plan>();

/** The plan of a build; the same object as long as nothing else is to be planned. */
export function planOf(build: Build): Plan {
  const known = remembered.get(build);
  if (known !== undefined) return known;
  const { standing } = build;
  const needs = needsOf(build);
  const booked = bookedToday(build);
  const plan = plans.of(standing, [booked.toString(), needs], (own) => makePlan(own, needs, booked));
  remembered.set(build, plan);
  return plan;
}

/** @param booked the hours that today has behind it */
function makePlan(standing: Standing, needs: readonly PartNeed[], booked: Decimal): Plan {
  const calendar = calendarOf(standing, booked);
  const activities = new Activities(standing, needs).all();
  const levelled = level(activities, calendar, handsOf(standing));
  const holds = plannedHolds(standing).map(({ definition, planned }) => ({
    id: definition.name,
    planned,
  }));
  return {
    activities,
    levelled,
    forecast: forecast(levelled),
    latest: latestBeginnings(activities, holds, calendar),
    needs,
  };
}

/** The working hours of the build, from today on, less what today has behind it. */
function calendarOf({ definitions, gathered, date }: Standing, booked: Decimal): WorkingCalendar {
  const { root } = gathered.tree;
  const days = definitions.one(root, "week")?.record.days;
  const week: Week = days === undefined ? DEFAULT_WEEK : sumByDay(days);
  const closed = definitions.all(root, "closed").map(({ record: { from, to } }) => ({ from, to }));
  return new WorkingCalendar({ week, closed, today: date, bookedToday: booked });
}

function sumByDay(days: readonly { readonly day: string; readonly hours: Decimal }[]): Week {
  const week: Partial<Record<Weekday, Decimal>> = {};
  for (const { day, hours } of days) week[day as Weekday] = (week[day as Weekday] ?? ZERO).plus(hours);
  return week;
}

/** Hours in today's block: what its header says, else what its facts book. */
function bookedToday({ diary, standing }: Build): Decimal {
  return diary.days
    .atTheEnd(standing.date)
    .reduce((sum, { hours, facts }) => sum.plus(hours ?? hoursOf(facts)), ZERO);
}

function hoursOf(facts: DayBlock["facts"]): Decimal {
  return facts.reduce((sum, fact) => (fact.word === "worked" ? sum.plus(fact.hours) : sum), ZERO);
}

function handsOf({ definitions, gathered }: Standing): number {
  return definitions.one(gathered.tree.root, "hands")?.record.count ?? 1;
}

/** Jobs that are not done and hold points that are shut, as activities. */
class Activities {
  private readonly standing: Standing;
  private readonly needs: ReadonlyMap<TreeNode, PartNeed>;
  private readonly stoppedBy: ReadonlyMap<string, readonly string[]>;

  constructor(standing: Standing, needs: readonly PartNeed[]) {
    this.standing = standing;
    this.needs = new Map(needs.map((need) => [need.node, need]));
    this.stoppedBy = jobsStopped(standing);
  }

  all(): PlannedActivity[] {
    const { standing } = this;
    const jobs = [...standing.jobs.values()].filter(({ done }) => done === undefined);
    const holds = [...standing.holds.values()].filter(isShut);
    const named = [...jobs, ...holds].sort((a, b) => a.definition.order - b.definition.order);
    const after = this.precedenceAmong(
      named.map(({ definition }) => definition),
      holds,
    );
    return named.map((state): PlannedActivity => {
      const { name } = state.definition;
      const common = { id: name, after: [...(after.get(name) ?? [])] };
      if (!("worked" in state)) return { ...common, work: { kind: "hold" }, waits: [], started: false };
      return {
        ...common,
        work: this.workOf(state),
        waits: this.waitsOf(state),
        started: state.started !== undefined,
      };
    });
  }

  /**
   * What each waits for, of what is still open: what its `after:` says, a job the hold points that stop it, and a hold
   * point that asks for jobs those that it asks for. A job that the hold point already comes before is none of those.
   */
  private precedenceAmong(
    open: readonly NamedDefinition[],
    holds: readonly HoldState[],
  ): ReadonlyMap<string, ReadonlySet<string>> {
    const names = new Set(open.map(({ name }) => name));
    const after = new Map(
      open.map((definition) => [
        definition.name,
        new Set(
          [...afterOf(definition), ...(this.stoppedBy.get(definition.name) ?? [])].filter((id) =>
            names.has(id),
          ),
        ),
      ]),
    );
    for (const { definition } of holds) {
      if (!asksFor(definition, "jobs")) continue;
      const later = allBehind(after, definition.name);
      for (const { definition: job, done } of jobsAskedBy(this.standing, definition)) {
        if (done === undefined && !later.has(job.name)) after.get(definition.name)?.add(job.name);
      }
    }
    return after;
  }

  private workOf(job: JobState): PlannedWork {
    const takes = recordOf(job.definition, "takes");
    const outside = recordOf(job.definition, "by") !== undefined;
    const estimate =
      takes === undefined
        ? threePointEstimate(0, 0, 0)
        : threePointEstimate(takes.optimistic, takes.likely, takes.pessimistic);
    if (!outside) return { kind: "own", remaining: remainingEstimate(estimate, job.worked) };
    const days =
      takes?.unit === "h"
        ? threePointEstimate(days24(takes.optimistic), days24(takes.likely), days24(takes.pessimistic))
        : estimate;
    const back = this.expectedBack(job, days);
    return { kind: "outside", remaining: days, back };
  }

  /** The day on which what is away with the job's supplier is expected: the day it is due, else the days that the job takes. */
  private expectedBack({ definition }: JobState, days: Estimate): IsoDate | undefined {
    const { names, parts } = this.standing;
    const supplier = recordOf(definition, "by")?.reference.text;
    const expected = recordsOf(definition, "on")
      .flatMap(({ references }) => references.flatMap((reference) => names.targets(reference, ["part"])))
      .flatMap(({ node }) => {
        const part = parts.get(node);
        const sent = part?.place === "away" ? part.sent : undefined;
        if (sent === undefined || sent.fact.to.text !== supplier) return [];
        return [sent.fact.due ?? addDays(sent.date, wholeAbove(days.mean))];
      });
    return expected.sort().at(-1);
  }

  private waitsOf({ definition }: JobState): Wait[] {
    const start = recordOf(definition, "start")?.date;
    const waits: Wait[] = start === undefined ? [] : [{ until: start, why: `not before ${start}` }];
    for (const node of partsNeededBy(this.standing, definition)) {
      const until = this.arrivalOf(node);
      if (until !== undefined) waits.push({ until, why: `${node.path} in hand` });
    }
    return waits;
  }

  /** When enough of a part is in hand: now, when what is on order is due, or after its lead time from today. */
  private arrivalOf(node: TreeNode): IsoDate | undefined {
    const need = this.needs.get(node);
    const { standing } = this;
    const today = standing.date;
    if (need === undefined || need.inHand >= need.demand.needed) return undefined;
    const lead = leadDaysOf(standing, node);
    const dues = (standing.supply.get(node)?.orders ?? [])
      .filter(({ count, received }) => received < count)
      .map(({ fact }) => fact.fact.due ?? addDays(fact.date, lead ?? 0));
    if (need.toOrder > 0) dues.push(addDays(today, lead ?? 0));
    const last = dues.sort().at(-1);
    return last !== undefined && last > today ? last : undefined;
  }
}

function days24(hours: Decimal): Decimal {
  return hours.div(decimal(24));
}

/** Calendar days from order to delivery: the part's own, else its supplier's; undefined where neither says. */
export function leadDaysOf(standing: Standing, node: TreeNode): number | undefined {
  const own = standing.definitions.one(node, "lead")?.record.days;
  if (own !== undefined) return own;
  const supplier = supplierOf(standing, node);
  return supplier && recordOf(supplier, "lead")?.days;
}

export function supplierOf(standing: Standing, node: TreeNode): NamedDefinition | undefined {
  const reference = standing.definitions.one(node, "supplier")?.record.reference;
  return reference && standing.names.named("supplier", reference.text);
}

/** Everything that waits for an activity, directly or through others. */
function allBehind(after: ReadonlyMap<string, ReadonlySet<string>>, id: string): ReadonlySet<string> {
  const behind = new Map<string, string[]>();
  for (const [later, earlier] of after) {
    for (const each of earlier) behind.set(each, [...(behind.get(each) ?? []), later]);
  }
  const found = new Set<string>();
  const waiting = [...(behind.get(id) ?? [])];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (found.has(next)) continue;
    found.add(next);
    waiting.push(...(behind.get(next) ?? []));
  }
  return found;
}

function afterOf(definition: NamedDefinition): string[] {
  return recordsOf(definition, "after").flatMap(({ references }) => references.map(({ text }) => text));
}

/** Hold points that stop a job come before it. */
function jobsStopped({ names }: Standing): ReadonlyMap<string, readonly string[]> {
  const stopped = new Map<string, string[]>();
  for (const hold of names.every("hold")) {
    for (const { jobs } of recordsOf(hold, "stops")) {
      for (const { text } of jobs) stopped.set(text, [...(stopped.get(text) ?? []), hold.name]);
    }
  }
  return stopped;
}

function openJobs({ jobs }: Standing): readonly NamedDefinition[] {
  return [...jobs.values()].filter(({ done }) => done === undefined).map(({ definition }) => definition);
}

const needings = new Kept<TreeNode, ReadonlyMap<TreeNode, readonly NamedDefinition[]>>();

/** The jobs, not done, that need each part. */
function jobsByNeed(standing: Standing): ReadonlyMap<TreeNode, readonly NamedDefinition[]> {
  const byPart = new Map<TreeNode, NamedDefinition[]>();
  for (const job of openJobs(standing)) {
    for (const part of new Set(partsNeededBy(standing, job))) listUnder(byPart, part, job);
  }
  return byPart;
}

/** The jobs, not done, whose `needs:` or `on:` mean a part; those that need it first. */
export function jobsFor(standing: Standing, node: TreeNode): readonly NamedDefinition[] {
  const needing = needings.of(standing, standing.gathered.tree.root, [], jobsByNeed).get(node);
  if (needing !== undefined) return needing;
  return openJobs(standing).filter((job) =>
    recordsOf(job, "on").some(({ references }) =>
      references.some((reference) =>
        standing.names.targets(reference, ["part"]).some((target) => isWithin(target.node.path, node.path)),
      ),
    ),
  );
}
