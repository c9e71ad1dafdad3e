/**
 * What depends on a reading, as a call hierarchy: what would have to be looked at again if it were other. Incoming are
 * the calculations, comparisons, joints and hold points that build on it; outgoing is what it builds on itself.
 */
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
} from "vscode-languageserver";
import { SymbolKind } from "vscode-languageserver";
import type { Position } from "../../../grammar/document.ts";
import type { Build } from "../../build/build.ts";
import { readingsOf } from "../../build/characteristic.ts";
import { coverOf } from "../../build/cover.ts";
import type { Place } from "../../build/source.ts";
import { placeAt, textAt } from "../../build/source.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import type { Occurrence } from "../names/occurrences.ts";
import { occurrenceAt, occurrencesOf, occurrencesWithin } from "../names/occurrences.ts";
import type { Thing } from "../names/thing.ts";
import { sameThing } from "../names/thing.ts";
import { itemAt } from "../text/statement-at.ts";
import { rangeOf } from "../to-protocol.ts";
import type { FileView } from "../view.ts";
import { definitionsOf } from "./definition.ts";

/** Things that can depend on each other. */
type Link = Extract<Thing, { is: "characteristic" | "calc" | "node" | "named" }>;

/** Enough to find a thing again when the editor asks further. */
interface ItemData {
  readonly is: Link["is"];
  readonly path: string;
  readonly name: string;
}

/** The characteristic or calculated value at the cursor. */
export function prepareDependents(view: FileView, position: Position): CallHierarchyItem[] {
  const at = view.placeAt(position);
  const here = at && occurrenceAt(view, at);
  return (here?.things ?? []).flatMap((thing) =>
    thing.is === "characteristic" || thing.is === "calc" ? (itemOf(view, thing) ?? []) : [],
  );
}

export function dependents(view: FileView, item: CallHierarchyItem): CallHierarchyIncomingCall[] {
  const thing = thingOf(view.build, item.data as ItemData);
  if (thing === undefined) return [];
  const users = occurrencesOf(view.build, [thing]);
  const byUser = new Map<string, { readonly from: CallHierarchyItem; readonly places: Place[] }>();
  for (const occurrence of users) {
    const user = userOf(view.build, occurrence);
    const from = user === undefined || sameThing(user, thing) ? undefined : itemOf(view, user);
    if (from === undefined) continue;
    const key = JSON.stringify(from.data);
    const known = byUser.get(key);
    if (known === undefined) byUser.set(key, { from, places: [occurrence.place] });
    else known.places.push(occurrence.place);
  }
  const lines = [...byUser.values()].map(({ from, places }) => ({
    from,
    fromRanges: places.filter((place) => view.uriOf(place.site.file) === from.uri).map(rangeOf),
  }));
  return [...lines, ...holdsOn(view, thing)];
}

export function dependencies(view: FileView, item: CallHierarchyItem): CallHierarchyOutgoingCall[] {
  const thing = thingOf(view.build, item.data as ItemData);
  if (thing === undefined) return [];
  return groundsOf(view.build, thing).flatMap(({ thing: ground, place }) => {
    const to = itemOf(view, ground);
    return to === undefined ? [] : [{ to, fromRanges: [rangeOf(place)] }];
  });
}

/** The thing whose line names another: a calculation, a comparison, a joint that is set by it. */
function userOf(build: Build, { place }: Occurrence): Link | undefined {
  const { site, start } = place;
  const item = itemAt(site.block, start);
  if (item?.kind !== "record") return undefined;
  const word = item.word.text;
  if (word === "calc" || word === "pair" || word === "fit" || word === "limit") {
    const [name] = occurrencesWithin(build, { site, start: item.start, end: item.end }).filter(
      (each) => each.name.defines,
    );
    return name?.things.find((thing): thing is Link => thing.is === "characteristic" || thing.is === "calc");
  }
  if (word !== "set_by") return undefined;
  const header = site.block.header?.values.get("name");
  const node = header?.kind === "word" ? build.standing.gathered.tree.at(header.text) : undefined;
  return node === undefined ? undefined : { is: "node", node };
}

/** Hold points that cover a thing whose limit or setting they ask about. */
function holdsOn(view: FileView, thing: Link): readonly CallHierarchyIncomingCall[] {
  if (thing.is !== "characteristic") return [];
  const { standing } = view.build;
  const asked = standing.gathered.written
    .records(thing.node)
    .some(
      ({ record }) => (record.word === "limit" || record.word === "setting") && record.name === thing.name,
    );
  if (!asked) return [];
  return [...standing.names.every("hold")].flatMap((definition) => {
    const from = coverOf(standing, definition).nodes.has(thing.node)
      ? itemOf(view, { is: "named", definition })
      : undefined;
    return from === undefined ? [] : [{ from, fromRanges: [from.selectionRange] }];
  });
}

/** What a calculation uses; of a reading, the gauge that took it. */
function groundsOf(build: Build, thing: Link): readonly { readonly thing: Link; readonly place: Place }[] {
  const calculations = build.calculations.filter(
    ({ name, node }) =>
      thing.is !== "node" && thing.is !== "named" && name === thing.name && node === nodeOf(thing),
  );
  const used = calculations.flatMap(({ place, expression }) =>
    occurrencesWithin(build, { site: place.site, start: expression.start, end: expression.end }).flatMap(
      (each) =>
        each.things.flatMap((other) =>
          other.is === "characteristic" || other.is === "calc" ? [{ thing: other, place: each.place }] : [],
        ),
    ),
  );
  if (thing.is !== "characteristic") return used;
  const gauges = readingsOf(build.standing, thing.node).flatMap(({ name, gauge, fact }) =>
    name === thing.name && gauge !== undefined
      ? [{ thing: { is: "named", definition: gauge } as const, place: fact.place }]
      : [],
  );
  return [...used, ...gauges];
}

function nodeOf(thing: Link): TreeNode | undefined {
  return thing.is === "characteristic" ? thing.node : undefined;
}

function itemOf(view: FileView, thing: Link): CallHierarchyItem | undefined {
  const place = placeOf(view.build, thing);
  if (place === undefined) return undefined;
  const data: ItemData =
    thing.is === "characteristic"
      ? { is: thing.is, path: thing.node.path, name: thing.name }
      : thing.is === "node"
        ? { is: thing.is, path: thing.node.path, name: "" }
        : thing.is === "named"
          ? { is: thing.is, path: thing.definition.kind, name: thing.definition.name }
          : { is: thing.is, path: "", name: thing.name };
  return {
    name:
      data.path === "" || thing.is === "named" ? data.name : [data.path, data.name].filter(Boolean).join("."),
    kind: KINDS[thing.is],
    detail: textAt(place).split("\n")[0] ?? "",
    uri: view.uriOf(place.site.file),
    range: rangeOf(place),
    selectionRange: rangeOf(place),
    data,
  };
}

const KINDS: Readonly<Record<Link["is"], SymbolKind>> = {
  characteristic: SymbolKind.Field,
  calc: SymbolKind.Variable,
  node: SymbolKind.Struct,
  named: SymbolKind.Event,
};

/** Where a thing is defined; a characteristic that nothing asks for, where it was measured last. */
function placeOf(build: Build, thing: Link): Place | undefined {
  const [defined] = definitionsOf(build, thing);
  if (defined !== undefined) return defined.place;
  if (thing.is !== "characteristic") return undefined;
  const reading = readingsOf(build.standing, thing.node).findLast(({ name }) => name === thing.name);
  return reading && placeAt(reading.fact.place.site, reading.fact.fact.at);
}

function thingOf({ standing }: Build, { is, path, name }: ItemData): Link | undefined {
  const node = standing.gathered.tree.at(path);
  switch (is) {
    case "characteristic":
      return node === undefined ? undefined : { is, node, name };
    case "node":
      return node === undefined ? undefined : { is, node };
    case "named": {
      const definition = standing.names.named(path as "hold", name);
      return definition === undefined ? undefined : { is, definition };
    }
    case "calc":
      return { is, name };
  }
}
