/** Parts that nobody else has looked at since they were put on, once something leans on them. */
import type { Leanings } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import { unseenSince } from "./second-look.ts";

export function complainOfUnseenParts(review: Review, leanings: Leanings): void {
  for (const node of thingsThatSay(review, "second_check")) {
    const part = review.parts.get(node);
    const since = part && unseenSince(review, part);
    const leaning = since && leanings.on(node, since, "parts");
    if (since === undefined || leaning === undefined) continue;
    review.complainOf(
      node,
      "not-seen",
      since.place,
      { what: node.path },
      { seeAlso: [leaningPlace(leaning)] },
    );
  }
}
