/** The marks of the drawing of a plan: what stands for work, for what is away, for what is done, and for a hold point. */

/** Half the height of a box of work. */
const HALF = 8;
/** Nothing is drawn narrower. */
const LEAST_WIDTH = 5;

/** An outlined box: dashed with round ends for what is away, heavy where it is critical. */
export function workBox(
  left: number,
  right: number,
  y: number,
  { away = false, critical = false } = {},
): string {
  return box(left, right, y, ["work", ...(away ? ["away"] : []), ...(critical ? ["critical"] : [])], away);
}

/** A hatched box. */
export function doneBox(
  left: number,
  right: number,
  y: number,
  hatching: string,
  { away = false } = {},
): string {
  const width = Math.max(LEAST_WIDTH, right - left);
  const fill = `<rect class="hatched" fill="url(#${hatching})" x="${figure(left)}" y="${y - HALF}" width="${figure(width)}" height="${2 * HALF}"/>`;
  return fill + box(left, right, y, ["done", ...(away ? ["away"] : [])], away);
}

/** Diagonal lines, under an id of its own. */
export function hatching(id: string): string {
  return `<pattern id="${id}" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M0 0V6"/></pattern>`;
}

/** A thin line from the end of a box to the day by which it must be done. */
export function floatLine(from: number, to: number, y: number): string {
  return `<path class="float" d="M${figure(from)} ${y}H${figure(to)}M${figure(to)} ${y - 4}V${y + 4}"/>`;
}

/** A thin line from the day on which something was begun to its box. */
export function begunLine(from: number, to: number, y: number): string {
  return `<path class="begun" d="M${figure(from)} ${y - 4}V${y + 4}M${figure(from)} ${y}H${figure(to)}"/>`;
}

/** Width of the leaf of a gate. */
export const GATE_LEAF = 26;

/** The same of an open one, which is seen from the side. */
export const OPEN_LEAF = 9;

const BARS = [-7, -2, 3, 8];

/**
 * A barred gate on a post that stands on its day: four bars, a brace and the stile at the end.
 * @param side on which the leaf hangs: 1 behind the post, -1 before it
 */
export function shutGate(x: number, y: number, side: 1 | -1 = 1): string {
  const end = side * GATE_LEAF;
  const bars = BARS.map((bar) => `M0 ${bar}H${end}`).join("");
  return gate(x, y, `${bars}M0 8L${end} -7M${end} -7V8`);
}

/** The same, swung open. */
export function openGate(x: number, y: number, side: 1 | -1 = 1): string {
  const end = side * OPEN_LEAF;
  const bars = BARS.map((bar) => `M0 ${bar}L${end} ${bar - 5}`).join("");
  return gate(x, y, `${bars}M${end} -12V3`);
}

/** The day a hold point is planned for, where the plan reaches it on another. */
export function plannedPost(x: number, y: number): string {
  return `<path class="post" d="M${figure(x)} ${y - 10}V${y + 10}M${figure(x - 4)} ${y - 10}H${figure(x + 4)}"/>`;
}

/** Between the post and the gate. */
export function plannedLine(from: number, to: number, y: number): string {
  return `<path class="aim" d="M${figure(from)} ${y}H${figure(to)}"/>`;
}

/** A number of the drawing: hundredths are more than is seen. */
export function figure(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function box(left: number, right: number, y: number, classes: readonly string[], round: boolean): string {
  const width = Math.max(LEAST_WIDTH, right - left);
  const ends = round ? ` rx="${HALF}"` : "";
  return `<rect class="${classes.join(" ")}" x="${figure(left)}" y="${y - HALF}" width="${figure(width)}" height="${2 * HALF}"${ends}/>`;
}

function gate(x: number, y: number, leaf: string): string {
  return `<g transform="translate(${figure(x)} ${y})"><path class="leaf" d="${leaf}"/><path class="posts" d="M0 -12V12"/></g>`;
}
