/** Measurements: readings of items, and what spoke against the gauge when they were taken. */
import { gaugeDoubts } from "../gauge-check.ts";
import { uncertaintyFor } from "../judgement.ts";
import { NO_RUNNING } from "../running.ts";
import type { Reading } from "../states.ts";
import { characteristicIn } from "./characteristic-in.ts";
import { record } from "./items.ts";
import type { Handlers, Replay } from "./replay.ts";

export const measurementHandlers: Handlers = {
  measured: (replay, fact) => {
    const subject = characteristicIn(replay, fact.fact);
    if (subject === undefined) return;
    const { node, name } = subject;
    const [first, ...others] = fact.fact.readings;
    if (first === undefined) return;
    const values = [first, ...others] as const;
    const gauge = replay.named("gauge", fact.fact.gauge);
    const reading: Reading = {
      node,
      name,
      values,
      uncertainty: uncertaintyFor(fact.fact.uncertainty, gauge, first),
      gauge,
      doubt: gauge && values.flatMap((value) => gaugeDoubts(replay, gauge, value))[0],
      setup: replay.named("setup", fact.fact.setup),
      fact,
      hours: replay.parts.get(node)?.item.running.hours ?? NO_RUNNING.hours,
    };
    keep(replay, reading);
  },
};

function keep(replay: Replay, reading: Reading): void {
  const part = replay.parts.get(reading.node);
  if (part === undefined) {
    replay.readings.set(reading.node, (replay.readings.get(reading.node) ?? []).concat(reading));
    return;
  }
  part.item = { ...part.item, readings: part.item.readings.concat(reading) };
  record(part, { is: "measured", fact: reading.fact });
}
