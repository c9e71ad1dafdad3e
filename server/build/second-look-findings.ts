/** Parts that nobody else has looked at since they were put on, once something leans on them. */
import type { Leanings } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import type { Replay } from "./replay/replay.ts";
import { unseenSince } from "./second-look.ts";

export function complainOfUnseenParts(replay: Replay, leanings: Leanings): void {
  for (const part of replay.parts.values()) {
    const since = unseenSince(replay, part);
    const leaning = since && leanings.on(part.node, since, "parts");
    if (since === undefined || leaning === undefined) continue;
    replay.complainOf(
      part.node,
      "not-seen",
      since.place,
      { what: part.node.path },
      { seeAlso: [leaningPlace(leaning)] },
    );
  }
}
