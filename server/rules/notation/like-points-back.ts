import { findingRule } from "../rule.ts";
import { list } from "../words.ts";

export const likePointsBack = findingRule<"like-points-back">({
  code: "like-points-back",
  group: "Notation",
  severity: "warning",
  summary: "A copy that still points at the parts of what it was copied from",
  why: "A single joint or part that is copied to another corner keeps its references, so the copy holds the original's parts, and its own are held by nothing.",
  remedy: "Write the record again in the copy, or copy the whole assembly: then its references turn with it.",
  bad: `part left.disc "Brake disc"
part left.hub "Hub"
part right.disc "Brake disc"
part right.hub "Hub"

joint left.disc_bolts "Disc to hub"
  joins: left.disc, left.hub
  torque: 24 N.m

joint right.disc_bolts "Disc to hub" like left.disc_bolts
`,
  good: `part left.disc "Brake disc"
part left.hub "Hub"
part right.disc "Brake disc"
part right.hub "Hub"

joint left.disc_bolts "Disc to hub"
  joins: left.disc, left.hub
  torque: 24 N.m

joint right.disc_bolts "Disc to hub" like left.disc_bolts
  joins: right.disc, right.hub
`,
  message: ({ data }) =>
    `${data.copy} is like ${data.original}, and its ${data.word}: still means ${list(data.targets)}: expected things of its own corner`,
});
