/** Lifed items: when the life of the item in a part's place ends, or how much of it is used. */
import { addDuration } from "../quantities/calendar-duration.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert, hasDimension, quantityOf, subtract } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import { condemnation } from "./condemnation.ts";
import { pastUnknown } from "./past.ts";
import { Remembered } from "./remembered.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { Item, PartState } from "./states.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { SourcedRecord } from "./tree/node.ts";

/** One life of an item; `place` is what says so. */
export type Life = { readonly place: Place } & (
  | {
      readonly is: "dated";
      /** The last day on which it is good. */
      readonly ends: IsoDate;
      readonly counted: "expires" | "made" | "fitted";
      readonly from: IsoDate | undefined;
      readonly duration: Quantity | undefined;
    }
  | {
      readonly is: "running";
      readonly amount: Quantity;
      readonly used: Quantity;
      readonly left: Quantity;
      /** False where it has run before the log, nobody knows how much. */
      readonly known: boolean;
    }
  | { readonly is: "unknown"; readonly counted: "made" | "fitted"; readonly duration: Quantity }
);

const remembered = new Remembered<Item, readonly Life[]>();
const OF_PART = new AspectSet("life", "expires");
const OF_VEHICLE = new AspectSet("past");

/** The lives of the item in a part's place, in the order in which they are written, `expires` last. */
export function livesOf(standing: Standing, part: PartState): readonly Life[] {
  const { definitions, gathered } = standing;
  const grounds = [
    definitions.ofThing(part.node, OF_PART),
    definitions.ofThing(gathered.tree.root, OF_VEHICLE),
  ];
  return remembered.of(part.item, grounds, () => count(standing, part));
}

function count(standing: Standing, { node, item }: PartState): readonly Life[] {
  const stated = standing.definitions.all(node, "life").flatMap((life) => lifeOf(standing, item, life) ?? []);
  const expiry = expiryOf(standing, node, item);
  return expiry === undefined ? stated : [...stated, expiry];
}

/** Whether a life is over on a day. */
export function isOver(life: Life, on: IsoDate): boolean {
  if (life.is === "dated") return life.ends < on;
  return life.is === "running" && !life.left.value.greaterThan(0);
}

/** True of a part whose item is on the vehicle or may go back: whose life concerns anybody. */
export function isInUse(standing: Standing, part: PartState): boolean {
  if (part.place === "gone" || part.place === "shelf") return false;
  return part.place === "on" || part.place === "trial" || condemnation(standing, part) === undefined;
}

function lifeOf(standing: Standing, item: Item, sourced: SourcedRecord<"life">): Life | undefined {
  const { life } = sourced.record;
  const place = placeAt(sourced.site, sourced.record.at);
  if (life.counted === "running") {
    const used = usedOf(item, life.amount);
    const left = unlessFault(subtract(life.amount, used));
    const known = item.number > 1 || !pastUnknown(standing);
    return left && { is: "running", place, amount: life.amount, used, left, known };
  }
  const { counted, duration } = life;
  const from = counted === "made" ? item.made : item.since?.date;
  if (from === undefined) return { is: "unknown", counted, duration, place: item.since?.place ?? place };
  const ends = addDuration(from, duration);
  return isDate(ends) ? { is: "dated", place, ends, counted, from, duration } : undefined;
}

function expiryOf({ definitions }: Standing, node: PartState["node"], item: Item): Life | undefined {
  if (item.expires === undefined) return undefined;
  const fitted = item.since?.fact.expires === item.expires ? item.since.place : undefined;
  const sourced = definitions.one(node, "expires");
  const place = fitted ?? (sourced && placeAt(sourced.site, sourced.record.at));
  return (
    place && {
      is: "dated",
      place,
      ends: item.expires,
      counted: "expires",
      from: undefined,
      duration: undefined,
    }
  );
}

/** The running of an item in the terms of a life: hours, distance or runs. */
function usedOf({ running }: Item, amount: Quantity): Quantity {
  if (hasDimension(amount, "time")) return inUnitOf(running.hours, "h", amount);
  return hasDimension(amount, "length")
    ? inUnitOf(running.metres, "m", amount)
    : quantityOf(running.runs, amount.unit);
}

function inUnitOf(value: Decimal, counted: "h" | "m", amount: Quantity): Quantity {
  const used = quantityOf(value, unit(counted));
  return unlessFault(convert(used, amount.unit)) ?? used;
}

function isDate(ends: ReturnType<typeof addDuration>): ends is IsoDate {
  return typeof ends === "string";
}
