/**
 * A reading against its limits as a small picture: the allowed stretch as a band between gateposts, the reading as a
 * tick with its uncertainty as a line. Drawn in the colour of the text, so that it prints and reads in light and dark.
 */
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { escapeHtml } from "./render-html.ts";

const WIDTH = 180;
const HEIGHT = 22;
const MIDDLE = HEIGHT / 2;
/** Room left of the lowest and right of the highest figure, as a share of the whole. */
const MARGIN = 0.12;

/** @param said the reading and its verdict in words, for those who cannot see the picture */
export function plotReading(
  reading: Quantity,
  uncertainty: Quantity | undefined,
  limits: Limits,
  said: string,
): string {
  const at = (quantity: Quantity | undefined) => inUnitOf(quantity, reading);
  const value = at(reading) ?? 0;
  const [lower, upper, fresh] = [at(limits.lower), at(limits.upper), at(limits.fresh)];
  const spread = at(uncertainty) ?? 0;
  const shown = [value - spread, value + spread, lower, upper, fresh].filter(
    (figure) => figure !== undefined,
  );
  const [least, most] = [Math.min(...shown), Math.max(...shown)];
  const span = most - least || Math.abs(most) || 1;
  const x = (figure: number) => round(((figure - least + MARGIN * span) / (span * (1 + 2 * MARGIN))) * WIDTH);
  const from = lower === undefined ? 0 : x(lower);
  const to = upper === undefined ? WIDTH : x(upper);
  const post = (figure: number | undefined) =>
    figure === undefined
      ? ""
      : `<path d="M${x(figure)} 2V${HEIGHT - 2}" stroke="currentColor" stroke-width="2"/>`;
  return [
    `<svg class="reading" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escapeHtml(said)}">`,
    `<rect x="${from}" y="${MIDDLE - 4}" width="${round(to - from)}" height="8" fill="currentColor" opacity="0.15"/>`,
    post(lower),
    post(upper),
    spread === 0
      ? ""
      : `<path d="M${x(value - spread)} ${MIDDLE}H${x(value + spread)}" stroke="currentColor" stroke-width="1.5"/>`,
    `<path d="M${x(value)} ${MIDDLE - 7}l4 7l-4 7l-4 -7z" fill="currentColor"/>`,
    "</svg>",
  ].join("");
}

function inUnitOf(quantity: Quantity | undefined, other: Quantity): number | undefined {
  if (quantity === undefined) return undefined;
  const converted = convert(quantity, other.unit);
  return isFault(converted) ? undefined : converted.value.toNumber();
}

function round(figure: number): number {
  return Math.round(figure * 100) / 100;
}
