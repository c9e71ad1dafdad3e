/** Lives that are over or end too soon, services that are due, ages that nobody knows. */
import { addDuration } from "../quantities/calendar-duration.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { coverOf } from "./cover.ts";
import type { NamedDefinition } from "./definitions.ts";
import { isShut } from "./hold-order.ts";
import { recordOf } from "./judgement.ts";
import type { Leanings } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import type { Life } from "./lives.ts";
import { isInUse, isOver, livesOf } from "./lives.ts";
import { pastUnknown } from "./past.ts";
import type { Replay } from "./replay/replay.ts";
import { placeAt } from "./source.ts";
import type { PartState } from "./states.ts";

export function complainOfLives(replay: Replay, leanings: Leanings): void {
  const planned = plannedHolds(replay);
  for (const part of replay.parts.values()) {
    const { definitions } = replay;
    const lifed = part.item.expires !== undefined || definitions.one(part.node, "life") !== undefined;
    const serviced = definitions.one(part.node, "service") !== undefined;
    if ((!lifed && !serviced) || !isInUse(replay, part)) continue;
    if (lifed) for (const life of livesOf(replay, part)) complainOfLife(replay, part, life, planned);
    if (serviced) complainOfService(replay, part, leanings);
  }
}

interface PlannedHold {
  readonly definition: NamedDefinition;
  readonly planned: IsoDate;
}

/** Hold points that are shut and planned, the earliest first. */
function plannedHolds({ holds }: Replay): readonly PlannedHold[] {
  return [...holds.values()]
    .filter(isShut)
    .flatMap(({ definition }) => {
      const planned = recordOf(definition, "planned")?.date;
      return planned === undefined ? [] : [{ definition, planned }];
    })
    .sort((a, b) => (a.planned < b.planned ? -1 : a.planned > b.planned ? 1 : 0));
}

function complainOfLife(
  replay: Replay,
  { node, item }: PartState,
  life: Life,
  planned: readonly PlannedHold[],
): void {
  const what = node.path;
  const since = item.since === undefined ? [] : [{ place: item.since.place, role: "fitted" }];
  const extras = { seeAlso: since.filter(({ place }) => place !== life.place) };
  if (life.is === "unknown") {
    const { counted, duration } = life;
    replay.complainOf(node, "no-made-date", life.place, { what, counted, life: duration }, extras);
  } else if (isOver(life, replay.today)) {
    const data =
      life.is === "dated"
        ? ({ is: "date", what, ends: life.ends, today: replay.today } as const)
        : ({ is: "running", what, used: life.used, amount: life.amount } as const);
    replay.complainOf(node, "life-expired", life.place, data, extras);
  } else if (life.is === "dated") {
    const missed = planned.find(
      (hold) => life.ends < hold.planned && coverOf(replay, hold.definition).nodes.has(node),
    );
    if (missed === undefined) return;
    const { definition } = missed;
    const data = {
      what,
      ends: life.ends,
      hold: definition.name,
      title: definition.title,
      planned: missed.planned,
    };
    replay.complainOf(node, "life-ends-soon", life.place, data, {
      seeAlso: [...extras.seeAlso, { place: definition.header, role: "hold point" }],
    });
  }
}

/** The service that is due by its interval, or by what the last one said; of unknown date once something leans on it. */
function complainOfService(replay: Replay, { node, item }: PartState, leanings: Leanings): void {
  const sourced = replay.definitions.one(node, "service");
  if (sourced === undefined) return;
  const { every } = sourced.record;
  const record = placeAt(sourced.site, sourced.record.at);
  const from = item.serviced?.date ?? item.since?.date ?? item.made;
  if (from === undefined) {
    const leaning = pastUnknown(replay) ? leanings.on(node, undefined, "lives") : undefined;
    if (leaning === undefined) return;
    const data = { what: node.path, every, serviced: undefined, due: undefined };
    replay.complainOf(node, "service-due", record, data, { seeAlso: [leaningPlace(leaning)] });
    return;
  }
  const due = item.serviced?.fact.until ?? addDuration(from, every);
  if (typeof due !== "string" || due >= replay.today) return;
  const place = item.serviced?.place ?? record;
  const data = { what: node.path, every, serviced: item.serviced?.date, due };
  replay.complainOf(node, "service-due", place, data, {
    seeAlso: item.serviced === undefined ? [] : [{ place: record, role: "service" }],
  });
}
