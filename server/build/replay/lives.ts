/** The age of the item that is in a part's place, where a later line corrects it. */
import type { Handlers } from "./replay.ts";

export const lifeHandlers: Handlers = {
  changed: (replay, fact) => {
    const { target, record } = fact.fact;
    const node = replay.names.one(target, ["part"]);
    const part = node && replay.parts.get(node);
    if (part === undefined) return;
    if (record.word === "made") part.item = { ...part.item, made: record.date };
    if (record.word === "expires") part.item = { ...part.item, expires: record.date };
  },
};
