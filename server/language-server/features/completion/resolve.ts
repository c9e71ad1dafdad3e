/** The documentation of a completion, made when it is looked at. */
import { blockEntry, entriesOf } from "../../../../grammar/vocabulary/vocabulary.ts";
import type { Build } from "../../../build/build.ts";
import { ruleTexts } from "../../../rules/texts.ts";
import { paragraphs, prose } from "../../markdown.ts";
import { describeThing } from "../hover/hover.ts";
import { describeEntry } from "../hover/of-word.ts";
import type { Documented } from "./item.ts";

/** Markdown; empty where there is nothing to tell, or no longer. */
export function documentation(build: Build, documented: Documented): string {
  const { gathered, names } = build.standing;
  switch (documented.is) {
    case "node": {
      const node = gathered.tree.at(documented.path);
      return node === undefined ? "" : describeThing(build, { is: "node", node });
    }
    case "characteristic": {
      const node = gathered.tree.at(documented.path);
      return node === undefined
        ? ""
        : describeThing(build, { is: "characteristic", node, name: documented.name });
    }
    case "named": {
      const definition = names.named(documented.kind, documented.name);
      return definition === undefined ? "" : describeThing(build, { is: "named", definition });
    }
    case "block": {
      const entry = blockEntry(documented.word);
      return entry === undefined ? "" : describeEntry(entry);
    }
    case "record": {
      const entry = entriesOf(documented.word).find(({ blocks }) =>
        (blocks as readonly string[]).includes(documented.block),
      );
      return entry === undefined ? "" : describeEntry(entry);
    }
    case "rule": {
      const rule = ruleTexts.get(documented.code);
      return rule === undefined ? "" : paragraphs(prose(rule.why), prose(rule.remedy));
    }
    default:
      return describeThing(build, documented);
  }
}
