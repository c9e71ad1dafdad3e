/** What is told of a part of unknown identity: the best candidates, how far off each is, and what would tell them apart. */
import type { Build } from "../../../build/build.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { cautionsOf } from "../../../reports/identify.ts";
import { kindOf, sayCompared, sayDifference } from "../../../reports/identify-words.ts";
import type { Match } from "../../../trade/identification/match.ts";
import { escaped, list, paragraphs } from "../../markdown.ts";
import type { PossibleIdentity } from "../../words/possible-identity.ts";
import { possibleIdentity } from "../../words/possible-identity.ts";

export function describeIdentity(build: Build, node: TreeNode): string | undefined {
  const possible = possibleIdentity(build, node);
  if (possible === undefined) return undefined;
  const { shown, dimensions, identification } = possible;
  const [difference] = identification.tellApart;
  const fits = identification.candidates.length > 0;
  const more = identification.candidates.length - shown.length;
  return paragraphs(
    fits ? "What it can be, best first:" : "Nothing in the tables or among the donors fits. Nearest:",
    list([
      ...shown.map((match) => sayMatch(match, possible)),
      ...(more > 0 ? [`and ${more} more: another dimension would rule most of them out`] : []),
    ]),
    difference && escaped(`To tell: ${sayDifference(difference, dimensions)}.`),
    `*${escaped(cautionsOf(identification).join(" "))}*`,
  );
}

function sayMatch({ candidate, score, dimensions }: Match, { dimensions: known }: PossibleIdentity): string {
  const figures = dimensions.map((compared) => {
    const name = compared.given.name.replaceAll("_", " ");
    const dimension = known.find(({ given }) => given === compared.given);
    if (compared.is === "not stated" || dimension === undefined) return `${name} not stated`;
    return `${name} ${sayCompared(dimension, compared)}`;
  });
  const words = ` (${kindOf(candidate)}), score ${score.toFixed(2)}: ${figures.join(", ")}`;
  return `**${escaped(candidate.name)}**${escaped(words)}`;
}
