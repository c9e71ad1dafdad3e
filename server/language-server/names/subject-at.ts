/** What a place in a log is about: the thing named there, else the first one of its line, else that of its block. */
import type { Position } from "../../../grammar/document.ts";
import { placeAt } from "../../build/source.ts";
import { statementAt } from "../text/statement-at.ts";
import type { FileView } from "../view.ts";
import type { Occurrence } from "./occurrences.ts";
import { occurrenceAt, occurrencesWithin, siteAt } from "./occurrences.ts";
import type { Thing } from "./thing.ts";

/** Its path or name, as `cotter history` takes it. */
export function subjectAt(view: FileView, position: Position): string | undefined {
  const at = view.placeAt(position);
  if (at === undefined) return undefined;
  const site = siteAt(view, at);
  const statement = statementAt(at.block, at.offset);
  const { header } = at.block;
  const within = [statement, header].flatMap((node) =>
    node === undefined ? [] : withoutSteps(occurrencesWithin(view.build, placeAt(site, node))),
  );
  const things = [occurrenceAt(view, at), ...within].flatMap((occurrence) => occurrence?.things ?? []);
  return things.map(nameOf).find((name) => name !== undefined);
}

/** Of `front.left.disc` only the disc: a name with a dot behind it is a step on the way. */
function withoutSteps(occurrences: readonly Occurrence[]): readonly Occurrence[] {
  return occurrences.filter(({ name, place }) => place.site.block.text[name.end] !== ".");
}

function nameOf(thing: Thing): string | undefined {
  switch (thing.is) {
    case "node":
      return thing.node.path === "" ? undefined : thing.node.path;
    case "named":
      return thing.definition.name;
    case "characteristic":
      return `${thing.node.path}.${thing.name}`;
    default:
      return undefined;
  }
}
