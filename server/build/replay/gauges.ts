/** Gauges: until when each is good. */
import { addDuration } from "../../quantities/calendar-duration.ts";
import type { IsoDate } from "../../quantities/dates.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import { placeAt } from "../source.ts";
import type { Handlers, Replay } from "./replay.ts";

export function gaugesAtStart(replay: Replay): void {
  for (const definition of replay.names.every("gauge")) {
    const sourced = definition.records.findLast(({ record }) => record.word === "calibrated");
    const record = sourced?.record.word === "calibrated" ? sourced.record : undefined;
    const calibrated = record &&
      sourced && {
        date: record.date,
        until: goodUntil(record.date, record.valid),
        place: placeAt(sourced.site, record.at),
      };
    replay.gauges.set(definition, { definition, calibrated, found: [] });
  }
}

export const gaugeHandlers: Handlers = {
  calibrated: (replay, fact) => {
    for (const reference of fact.fact.what) {
      const definition = replay.named("gauge", reference);
      const gauge = definition && replay.gauges.get(definition);
      if (gauge === undefined) continue;
      const before = definition?.records.findLast(({ record }) => record.word === "calibrated")?.record;
      const valid = fact.fact.valid ?? (before?.word === "calibrated" ? before.valid : undefined);
      gauge.calibrated = { date: fact.date, until: goodUntil(fact.date, valid), place: fact.place };
    }
  },

  found: (replay, fact) => {
    for (const reference of fact.fact.what) {
      const definition = replay.named("gauge", reference);
      const gauge = definition && replay.gauges.get(definition);
      if (gauge === undefined) continue;
      const found = fact.fact.conditions.map(({ condition, at }) => ({
        condition,
        fact,
        place: replay.placeIn(fact, at),
      }));
      gauge.found = [...gauge.found, ...found];
    }
  },
};

function goodUntil(date: IsoDate, valid: Quantity | undefined): IsoDate | undefined {
  const until = valid && addDuration(date, valid);
  return until === undefined || isFault(until as object) ? undefined : (until as IsoDate);
}
