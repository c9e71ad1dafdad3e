/** Parts that nobody else has looked at since they were put on, once something leans on them. */
import type { Finding } from "./finding.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import { leaningPlace } from "./leaning.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import { unseenSince } from "./second-look.ts";
import type { TreeNode } from "./tree/node.ts";

const ofParts = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfUnseenParts(review: Review): readonly Finding[] {
  return ofParts.complaints(review, thingsThatSay(review, "second_check"), [], (own, node) => {
    const part = own.parts.get(node);
    const since = part && unseenSince(own, part);
    const leaning = since && own.leaningOn(node, since, "parts");
    if (since === undefined || leaning === undefined) return;
    own.complainOf(node, "not-seen", since.place, { what: node.path }, { seeAlso: [leaningPlace(leaning)] });
  });
}
