/** Settings as they were adjusted: the newest of each, by thing, name and setup. */
import type { NamedDefinition } from "../definitions.ts";
import type { DatedFact, SettingState } from "../states.ts";
import type { TreeKind, TreeNode } from "../tree/node.ts";
import type { Handlers, Replay } from "./replay.ts";

const TREE_KINDS: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];

export const settingHandlers: Handlers = {
  set: (replay, fact) => {
    const subject = subjectOf(replay, fact);
    if (subject === undefined) return;
    const { node, name } = subject;
    const { value, each } = fact.fact;
    const setup = replay.named("setup", fact.fact.setup);
    const gauge = replay.named("gauge", fact.fact.gauge);
    const state: SettingState = { node, name, setup, value, each, gauge, fact };
    const ofNode = replay.settings.get(node) ?? new Map<string, SettingState>();
    replay.settings.set(node, ofNode.set(keyOf(name, setup), state));
  },
};

/** Under which a setting of a thing is kept. */
function keyOf(name: string, setup: NamedDefinition | undefined): string {
  return setup === undefined ? name : `${name} ${setup.name}`;
}

/** What was set: the thing and the name of the setting, however it was written. */
function subjectOf(
  { names }: Replay,
  { fact: { target, name } }: DatedFact<"set">,
): { node: TreeNode; name: string } | undefined {
  if (name === undefined) {
    const member = names.member(target);
    return member.node && { node: member.node, name: member.name };
  }
  const node = names.one(target, TREE_KINDS);
  return node && { node, name };
}
