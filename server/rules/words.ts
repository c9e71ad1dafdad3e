/** Values in the words of a message: figures with their units, as the author wrote them. */
import type { Quantity } from "../quantities/quantity.ts";
import { convert, formatQuantity } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";

/** A quantity as it is read aloud: `9.12 mm`. */
export function say(quantity: Quantity): string {
  return formatQuantity(quantity);
}

/** A quantity without its sign, in the unit of another where that is possible: how far one lies from the other. */
export function sayIn(quantity: Quantity, other: Quantity): string {
  const converted = convert(quantity, other.unit);
  return formatQuantity(isFault(converted) ? quantity : converted);
}

/** `a`, `a and b`, `a, b and c`. */
export function list(items: readonly string[], joiner = "and"): string {
  if (items.length < 2) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} ${joiner} ${items.at(-1)}`;
}

/** `, with several readings 0.02 mm apart`, where there were several. */
export function sayReadings({
  readings,
  spread,
}: {
  readonly readings: number;
  readonly spread: Quantity | undefined;
}): string {
  return readings < 2 || spread === undefined
    ? ""
    : ` (the worst of ${readings} readings, ${say(spread)} apart)`;
}

/** ` ± 0.05 mm`, where an uncertainty is known. */
export function sayUncertainty({ uncertainty }: { readonly uncertainty: Quantity | undefined }): string {
  return uncertainty === undefined ? "" : ` ± ${say(uncertainty)}`;
}

/**
 * A share of one as a percentage of two figures: `4.5 %`, `15 %`.
 *
 * @param bound the share that it is over or under: it has as many figures more as tell the two apart
 */
export function sayShare(share: number, bound = share): string {
  const percent = share * 100;
  const rounded = percent < 10 ? Number(percent.toPrecision(2)) : Math.round(percent);
  if (share === bound || rounded !== Math.round(bound * 100)) return `${rounded} %`;
  const closer = [3, 4, 5].map((figures) => Number(percent.toPrecision(figures)));
  return `${closer.find((one) => one !== rounded) ?? rounded} %`;
}

/** A computed number of two decimals at most: `1.8`, `2`. */
export function sayNumber(value: number): string {
  return String(Number(value.toFixed(2)));
}

/** A computed percentage without decimals: `104 %`. */
export function sayPercent(percent: number): string {
  return `${Math.round(percent)} %`;
}
