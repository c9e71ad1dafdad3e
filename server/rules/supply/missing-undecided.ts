import type { Build } from "../../build/build.ts";
import { KeptOfEach } from "../../build/kept-of-each.ts";
import type { Place } from "../../build/source.ts";
import { placeAt } from "../../build/source.ts";
import type { Standing } from "../../build/standing.ts";
import type { PartState } from "../../build/states.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import type { Notice } from "../rule.ts";
import { checkingRule } from "../rule.ts";

export const missingUndecided = checkingRule({
  code: "missing-undecided",
  group: "Lives and supply",
  severity: "information",
  summary: "A part is missing, and nothing has been decided about it",
  why: "A missing part alone orders nothing: it could be made, bought, or not be wanted at all.",
  remedy: "Write decided: and renew, make or scrap.",
  bad: `part dust_cap "Hub dust cap"
  price: 3.10 GBP

day 2026-05-02
  found: dust_cap missing
`,
  good: `part dust_cap "Hub dust cap"
  price: 3.10 GBP

day 2026-05-02
  found: dust_cap missing
  decided: dust_cap renew
`,
  check: undecidedParts,
});

const ofParts = new KeptOfEach<TreeNode, Notice>();

function undecidedParts({ standing }: Build): readonly Notice[] {
  return ofParts.of(standing, standing.gathered.tree.ofKind("part"), [], (own, node) => {
    const part = own.parts.get(node);
    if (part === undefined || !part.missing || part.decision !== undefined) return [];
    const place = placeOf(own, part);
    if (place === undefined) return [];
    const message = `${node.path} is missing and nothing is decided about it: expected renew, make or scrap`;
    return [{ place, message }];
  });
}

/** Where the log says that it is missing. */
function placeOf({ definitions }: Standing, { node, placed }: PartState): Place | undefined {
  const found = definitions.one(node, "as_found");
  return placed?.place ?? (found === undefined ? node.header : placeAt(found.site, found.record.at));
}
