/** What a part of the build can be: its sizes and newest readings against the standard tables and the build's donors. */
import { quoted } from "../../grammar/quoted.ts";
import type { Quantity } from "../quantities/quantity.ts";
import {
  absolute,
  asDifference,
  compare,
  computedQuantity,
  meanOf,
  quantityOf,
  subtract,
} from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import type { Candidate, DonorCandidate, DonorSize } from "../trade/identification/candidate.ts";
import { donorCandidate } from "../trade/identification/candidate.ts";
import type { GivenDimension } from "../trade/identification/given.ts";
import { givenDimension } from "../trade/identification/given.ts";
import type { Identification } from "../trade/identification.ts";
import { identify } from "../trade/identification.ts";
import type { Thread } from "../trade/thread.ts";
import type { Gathered, NamedDefinition } from "./definitions.ts";
import { newestReadings, recordsOf } from "./judgement.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { Item, Reading } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

/** A dimension that is known of a part, as its author wrote it. */
export interface KnownDimension {
  readonly given: GivenDimension;
  readonly quantity: Quantity;
  /** Expanded, as stated; undefined where nothing states it. */
  readonly uncertainty: Quantity | undefined;
  /** Asked for on the spot, measured on a day, measured on the item that was there before, or a `size:` of its block. */
  readonly from: "given" | "measured" | "measured before" | "size";
  readonly place: Place | undefined;
}

export interface PartIdentification {
  readonly node: TreeNode;
  readonly dimensions: readonly KnownDimension[];
  readonly identification: Identification;
}

/** What a part can be; undefined where nothing that could tell is known of it. */
export function identifyPart(standing: Standing, node: TreeNode): PartIdentification | undefined {
  const dimensions = dimensionsOfPart(standing, node);
  if (dimensions.length === 0) return undefined;
  const given = dimensions.map((dimension) => dimension.given);
  return { node, dimensions, identification: identify(given, donorsOf(standing.gathered)) };
}

/** A dimension as a candidate is asked for it; undefined for what is no size. */
function knownDimension(
  name: string,
  quantity: Quantity,
  uncertainty: Quantity | undefined,
  from: KnownDimension["from"],
  place?: Place,
): KnownDimension | undefined {
  const given = givenDimension(name, quantity, uncertainty);
  return "fault" in given ? undefined : { given, quantity, uncertainty, from, place };
}

/** What is known of a part: of the item that is there, or while nobody has measured it, of the last that was measured. */
export function dimensionsOfPart(standing: Standing, node: TreeNode): readonly KnownDimension[] {
  const part = standing.parts.get(node);
  if (part === undefined) return [];
  const { item, earlier } = part;
  const before =
    item.readings.length > 0 ? undefined : earlier.findLast(({ readings }) => readings.length > 0);
  return dimensionsOf(standing, node, before ?? item).map((known) =>
    before !== undefined && known.from === "measured" ? { ...known, from: "measured before" } : known,
  );
}

/** The newest reading of each characteristic of an item, and the sizes of its block that have none. */
export function dimensionsOf(
  { definitions }: Pick<Standing, "definitions">,
  node: TreeNode,
  item: Pick<Item, "readings">,
): readonly KnownDimension[] {
  const readings = new Map<string, Reading>();
  for (const reading of newestReadings(item)) {
    const before = readings.get(reading.name);
    if (before === undefined || before.fact.order < reading.fact.order) readings.set(reading.name, reading);
  }
  const sizes = definitions.all(node, "size").flatMap(({ record: { name, size, at }, site }) => {
    if (readings.has(name)) return [];
    const place = placeAt(site, at);
    return quantitiesOf(name, size).flatMap(
      ([own, quantity]) => knownDimension(own, quantity, undefined, "size", place) ?? [],
    );
  });
  return [...[...readings.values()].flatMap((reading) => fromReading(reading) ?? []), ...sizes];
}

/** Several readings are their mean, and as uncertain as they differ. */
function fromReading({ name, values, uncertainty, fact }: Reading): KnownDimension | undefined {
  const mean = meanOf(values);
  if (isFault(mean)) return undefined;
  // A mean is shown with more decimals than it was read with: what was read says how well it is known.
  const value = values.length === 1 ? values[0] : { ...mean, places: values[0].places };
  const place = placeAt(fact.place.site, fact.fact.readingsAt);
  return knownDimension(name, value, greater(uncertainty, halfSpread(values)), "measured", place);
}

function halfSpread(values: readonly [Quantity, ...Quantity[]]): Quantity | undefined {
  const [first, ...others] = values;
  if (others.length === 0) return undefined;
  let [least, most] = [first, first];
  for (const value of others) {
    if (compare(value, least) === -1) least = value;
    if (compare(value, most) === 1) most = value;
  }
  const spread = subtract(most, least);
  if (isFault(spread) || spread.value.isZero()) return undefined;
  return computedQuantity(spread.value.div(2), spread.unit, 3);
}

function greater(one: Quantity | undefined, other: Quantity | undefined): Quantity | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return compare(absolute(asDifference(one)), asDifference(other)) === -1 ? other : one;
}

/** A thread as a size is known by its major diameter and its pitch. */
function quantitiesOf(name: string, size: Quantity | Thread): readonly (readonly [string, Quantity])[] {
  if ("unit" in size) return [[name, size]];
  const millimetres = (metres: number) => quantityOf(Number((metres * 1000).toFixed(6)), unit("mm"));
  return [
    ["major", millimetres(size.majorDiameter)],
    ["pitch", millimetres(size.pitch)],
  ];
}

/** The donors of a build as candidates. */
export function donorsOf({ named }: Pick<Gathered, "named">): readonly DonorCandidate[] {
  return [...(named.get("donor")?.values() ?? [])].map(donorOf);
}

/** A known part of the build's own, by its `size:` records. */
export function donorOf(definition: NamedDefinition): DonorCandidate {
  const sizes = recordsOf(definition, "size")
    .flatMap(({ name, size }) => quantitiesOf(name, size))
    .flatMap(([name, quantity]): DonorSize[] => {
      const given = givenDimension(name, quantity);
      return "fault" in given ? [] : [{ name, value: given.value, is: given.is }];
    });
  const number = recordsOf(definition, "number").at(-1)?.text;
  return donorCandidate(definition.name, definition.title ?? definition.name, sizes, number);
}

/** The fact that says what an unknown part turned out to be: `identified: REF as "…" [from DONOR]`. */
export function identifiedFact(reference: string, candidate: Candidate): string {
  const from = candidate.is === "donor" ? ` from ${candidate.donor}` : "";
  return `identified: ${reference} as ${quoted(candidate.name)}${from}`;
}
