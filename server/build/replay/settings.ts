/** Settings as they were adjusted: the newest of each, by thing, name and setup. */
import type { NamedDefinition } from "../definitions.ts";
import { gaugeDoubts } from "../gauge-check.ts";
import type { SettingState } from "../states.ts";
import { characteristicIn } from "./characteristic-in.ts";
import type { Handlers } from "./replay.ts";

export const settingHandlers: Handlers = {
  set: (replay, fact) => {
    const subject = characteristicIn(replay, fact.fact);
    if (subject === undefined) return;
    const { node, name } = subject;
    const { value, each } = fact.fact;
    const setup = replay.named("setup", fact.fact.setup);
    const gauge = replay.named("gauge", fact.fact.gauge);
    const doubt = gauge && gaugeDoubts(replay, gauge, value)[0];
    const state: SettingState = { node, name, setup, value, each, gauge, doubt, fact };
    replay.settings.set(node, new Map(replay.settings.get(node)).set(keyOf(name, setup), state));
  },
};

/** Under which a setting of a thing is kept. */
function keyOf(name: string, setup: NamedDefinition | undefined): string {
  return setup === undefined ? name : `${name} ${setup.name}`;
}
