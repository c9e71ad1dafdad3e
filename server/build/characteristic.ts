/** A characteristic of a thing, `REF.NAME`, at one moment: what was last measured or set, else what it should be. */
import type { Quantity } from "../quantities/quantity.ts";
import { meanOf } from "../quantities/quantity.ts";
import type { QuantityFault } from "../quantities/quantity-fault.ts";
import { isFault, unlessFault } from "../quantities/quantity-fault.ts";
import { combineExpanded } from "../quantities/uncertainty.ts";
import type { Thread } from "../trade/thread.ts";
import type { NamedDefinition } from "./definitions.ts";
import { newestReadings, uncertaintyFor } from "./judgement.ts";
import type { LoweredFact } from "./lowering/fact.ts";
import { Remembered } from "./remembered.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact, Reading, SettingState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

type Stated = Pick<Standing, "definitions" | "parts" | "readings" | "settings">;

/** What is known of a characteristic, and from where. */
export interface Characteristic {
  /** Of several readings the mean. */
  readonly value: Quantity | Thread;
  readonly from: "measured" | "set" | "calculated" | "setting" | "size";
  /** Expanded, k = 2; undefined where nothing states it. */
  readonly uncertainty: Quantity | undefined;
  /** The condition under which it was measured or set. */
  readonly setup: NamedDefinition | undefined;
  readonly place: Place;
  /** The fact that says it; undefined of what is calculated, a setting or a size. */
  readonly fact: DatedFact<"measured" | "set"> | undefined;
}

export type QuantityCharacteristic = Characteristic & { readonly value: Quantity };

/** Whether a characteristic is known, and is no thread. */
export function isQuantity(known: Characteristic | undefined): known is QuantityCharacteristic {
  return known !== undefined && "unit" in known.value;
}

/** Of a difference of two characteristics (k = 2); undefined where neither states one. */
export function combinedUncertainty(one: Characteristic, other: Characteristic): Quantity | undefined {
  const [first, ...others] = [one.uncertainty, other.uncertainty].filter((each) => each !== undefined);
  return unlessFault(first && combineExpanded(first, ...others));
}

/** The newest of what was measured and set; undefined where it was neither. */
export function newestKnown(standing: Stated, node: TreeNode, name: string): Characteristic | undefined {
  const measured = newestReadingOf(standing, node, name);
  const set = newestSettingOf(standing, node, name);
  if (set === undefined) return measured && fromReading(measured);
  if (measured === undefined || measured.fact.order < set.fact.order) return fromSetting(set);
  return fromReading(measured);
}

/** The readings of a thing: of a part those of the item in its place. */
export function readingsOf({ parts, readings }: Pick<Standing, "parts" | "readings">, node: TreeNode) {
  return parts.get(node)?.item.readings ?? readings.get(node) ?? [];
}

function newestReadingOf(standing: Stated, node: TreeNode, name: string): Reading | undefined {
  return newestReadings({ readings: readingsOf(standing, node) })
    .filter((reading) => reading.name === name)
    .reduce<Reading | undefined>(later, undefined);
}

function newestSettingOf({ settings }: Stated, node: TreeNode, name: string): SettingState | undefined {
  return [...(settings.get(node)?.values() ?? [])]
    .filter((setting) => setting.name === name)
    .reduce<SettingState | undefined>(later, undefined);
}

function later<T extends { readonly fact: DatedFact }>(one: T | undefined, other: T): T {
  return one === undefined || other.fact.order > one.fact.order ? other : one;
}

const means = new Remembered<LoweredFact, Quantity | QuantityFault>();

/** The mean of what one reading took. */
export function meanOfReading({ values, fact }: Reading): Quantity | QuantityFault {
  return means.of(fact.fact, [], () => meanOf(values));
}

function fromReading(reading: Reading): Characteristic | undefined {
  const { uncertainty, setup, fact } = reading;
  const value = meanOfReading(reading);
  const place = placeAt(fact.place.site, fact.fact.readingsAt);
  return isFault(value) ? undefined : { value, from: "measured", uncertainty, setup, place, fact };
}

function fromSetting({ value, gauge, setup, fact }: SettingState): Characteristic {
  const uncertainty = uncertaintyFor(undefined, gauge, value);
  return { value, from: "set", uncertainty, setup, place: fact.place, fact };
}

/** What it should be: a setting's nominal value, else a nominal size. */
export function nominalOf({ definitions }: Stated, node: TreeNode, name: string): Characteristic | undefined {
  const setting = definitions
    .all(node, "setting")
    .findLast(({ record }) => record.name === name && record.limits.nominal !== undefined);
  const value = setting?.record.limits.nominal;
  if (setting !== undefined && value !== undefined) {
    const place = placeAt(setting.site, setting.record.at);
    return { value, from: "setting", ...STATED, place };
  }
  const size = definitions.all(node, "size").findLast(({ record }) => record.name === name);
  if (size === undefined) return undefined;
  const place = placeAt(size.site, size.record.at);
  return { value: size.record.size, from: "size", ...STATED, place };
}

/** Nobody measured it: it is what it should be. */
const STATED = { uncertainty: undefined, setup: undefined, fact: undefined } as const;
