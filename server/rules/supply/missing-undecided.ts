import type { Build } from "../../build/build.ts";
import type { Place } from "../../build/source.ts";
import { placeAt } from "../../build/source.ts";
import type { PartState } from "../../build/states.ts";
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

function* undecidedParts(build: Build): Generator<Notice> {
  for (const part of build.standing.parts.values()) {
    if (!part.missing || part.decision !== undefined) continue;
    const place = placeOf(build, part);
    if (place === undefined) continue;
    yield {
      place,
      message: `${part.node.path} is missing and nothing is decided about it: expected renew, make or scrap`,
    };
  }
}

/** Where the log says that it is missing. */
function placeOf({ standing }: Build, { node, placed }: PartState): Place | undefined {
  const found = standing.definitions.one(node, "as_found");
  return placed?.place ?? (found === undefined ? node.header : placeAt(found.site, found.record.at));
}
