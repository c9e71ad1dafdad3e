/** Where the things at the cursor are defined. */
import type { LocationLink } from "vscode-languageserver";
import type { Position } from "../../../grammar/document.ts";
import type { Build } from "../../build/build.ts";
import type { Place } from "../../build/source.ts";
import { placeAt } from "../../build/source.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { below } from "../../build/tree/node.ts";
import { occurrenceAt, occurrencesOf } from "../names/occurrences.ts";
import type { Thing } from "../names/thing.ts";
import { rangeOf } from "../to-protocol.ts";
import type { FileView } from "../view.ts";

export function definition(view: FileView, position: Position): LocationLink[] {
  const at = view.placeAt(position);
  const here = at && occurrenceAt(view, at);
  if (here === undefined) return [];
  return here.things.flatMap((thing) =>
    definitionsOf(view.build, thing).map(({ place, whole }) => ({
      originSelectionRange: rangeOf(here.place),
      targetUri: view.uriOf(place.site.file),
      targetRange: rangeOf(whole),
      targetSelectionRange: rangeOf(place),
    })),
  );
}

/** Where a name is given to a thing, and the block or line around it. */
export interface DefinitionPlace {
  readonly place: Place;
  readonly whole: Place;
}

export function definitionsOf(build: Build, thing: Thing): readonly DefinitionPlace[] {
  switch (thing.is) {
    case "node":
      return definitionOfNode(thing.node).map(inBlock);
    case "named":
      return [inBlock(thing.definition.header)];
    case "characteristic":
      return characteristicRecords(build, thing.node, thing.name);
    case "function":
      return [];
    default:
      return [...occurrencesOf(build, [thing])]
        .filter(({ name }) => name.defines)
        .map(({ place }) => ({ place, whole: place }));
  }
}

/** An assembly without a block of its own is where the first thing below it is. */
function definitionOfNode(node: TreeNode): readonly Place[] {
  if (node.header !== undefined) return [node.header];
  for (const inner of below(node)) if (inner.header !== undefined) return [inner.header];
  return [];
}

function characteristicRecords(build: Build, node: TreeNode, name: string): readonly DefinitionPlace[] {
  return build.standing.gathered.written.records(node).flatMap(({ record, site }) => {
    if (!("name" in record) || record.name !== name) return [];
    const place = placeAt(site, record.at);
    return [{ place, whole: place }];
  });
}

function inBlock(place: Place): DefinitionPlace {
  const { site } = place;
  const end = site.block.text.trimEnd().length;
  return { place, whole: { site, start: 0, end: Math.max(end, place.end) } };
}
