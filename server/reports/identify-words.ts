/** What an identification says, in words. */
import type { KnownDimension } from "../build/identification.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { absolute, formatQuantity, hasDimension, quantityOf } from "../quantities/quantity.ts";
import { unit } from "../quantities/unit.ts";
import { list } from "../rules/words.ts";
import type { Candidate } from "../trade/identification/candidate.ts";
import type { ComparedDimension } from "../trade/identification/match.ts";
import type { Difference, DimensionDifference } from "../trade/identification/tell-apart.ts";
import { asWritten, offBy } from "../trade/identification/written.ts";

/** `rolling bearing`, `donor`. */
export function kindOf(candidate: Candidate): string {
  return candidate.is === "donor" ? "donor" : candidate.family.name;
}

type Compared = Extract<ComparedDimension, { is: "compared" }>;

/** How a dimension lies to what a candidate lists: `14 mm exactly`, `0.055 mm under 6.35 mm: worn`. */
export function sayCompared(known: KnownDimension, compared: Compared): string {
  const { nominal } = compared.expected;
  const off = offBy(known, nominal);
  const listed = formatQuantity(asWritten(known, nominal));
  const figures = off.value.isZero()
    ? `${listed} exactly`
    : `${formatQuantity(absolute(off))} ${off.value.isNegative() ? "under" : "over"} ${listed}`;
  return compared.state === "as made" ? figures : `${figures}: ${STATES[compared.state]}`;
}

const STATES: Readonly<Record<Compared["state"], string>> = {
  "as made": "as new",
  "within the uncertainty": "within the uncertainty",
  worn: "worn",
  outside: "too far off",
};

/** How the best candidate is told from others: `… and … differ in pitch by …: measure the pitch over ten threads`. */
export function sayDifference(difference: Difference, known: readonly KnownDimension[]): string {
  const { between, by } = difference;
  const labels = labelsOf(between, by === undefined);
  const names = between.map((candidate) => labels.get(candidate) ?? candidate.name);
  if (by === undefined) return `${list(names)} ${sayAlike(between)}`;
  return between.length === 2
    ? sayPair(difference, names, known)
    : `${by.measuring.how}: ${sayValues(by.dimension, labels, known, by.measuring.times)}`;
}

function sayAlike(between: readonly Candidate[]): string {
  const kinds = new Set(between.map(kindOf));
  return kinds.size > 1
    ? "are different kinds of part: look which it is"
    : "have the same dimensions here: markings and what is inside tell them apart";
}

function sayPair(
  { between, differ, by }: Difference,
  names: readonly string[],
  known: readonly KnownDimension[],
): string {
  const telling = by?.dimension.name;
  const [best] = between;
  const shown = differ.filter(
    ({ name }) => name === telling || (best !== undefined && known.some((one) => means(best, one, name))),
  );
  const differences = shown.map((dimension) => `in ${plain(dimension.name)} by ${sayGap(dimension, known)}`);
  const figures = by && ` (${sayEach(by.dimension, known, by.measuring.times).join(" against ")})`;
  return `${list(names)} differ ${list(differences)}: ${by?.measuring.how}${figures ?? ""}`;
}

/** Whether a known dimension is the one that a candidate lists under a name. */
function means(candidate: Candidate, { given }: KnownDimension, name: string): boolean {
  if (candidate.is === "donor") return given.name === name;
  return candidate.family.dimensions.some(
    (dimension) =>
      dimension.name === name &&
      [dimension.name, ...dimension.synonyms, ...(dimension.perInch ?? [])].includes(given.name),
  );
}

function sayGap({ values, is }: DimensionDifference, known: readonly KnownDimension[]): string {
  const [one, other] = values;
  if (one === undefined || other === undefined) return "";
  return formatQuantity(inUsualUnit(Math.abs(one.value - other.value), is, known, 3));
}

function sayEach(
  { values, is }: DimensionDifference,
  known: readonly KnownDimension[],
  times = 1,
): readonly string[] {
  return values.map(({ value }) => formatQuantity(inUsualUnit(times * value, is, known, 4)));
}

/** `14 mm is 6204, 18 mm is 2204`; those with one value stand together. */
function sayValues(
  dimension: DimensionDifference,
  labels: ReadonlyMap<Candidate, string>,
  known: readonly KnownDimension[],
  times?: number,
): string {
  const texts = sayEach(dimension, known, times);
  const byText = new Map<string, string[]>();
  for (const [place, { candidate }] of dimension.values.entries()) {
    const text = texts[place] ?? "";
    byText.set(text, [...(byText.get(text) ?? []), labels.get(candidate) ?? candidate.name]);
  }
  return [...byText].map(([text, names]) => `${text} is ${list(names, "or")}`).join(", ");
}

/** Names, with the kind of part behind those that several have, or where the kinds are the point. */
function labelsOf(candidates: readonly Candidate[], byKind: boolean): ReadonlyMap<Candidate, string> {
  const kinds = new Set(candidates.map(kindOf));
  const labelled = (name: string) =>
    kinds.size > 1 && (byKind || candidates.filter((other) => other.name === name).length > 1);
  return new Map(
    candidates.map((candidate) => [
      candidate,
      labelled(candidate.name) ? `${candidate.name} (${kindOf(candidate)})` : candidate.name,
    ]),
  );
}

const UNITS: Readonly<Record<string, { readonly symbol: string; readonly size: number }>> = {
  length: { symbol: "mm", size: 0.001 },
  angle: { symbol: "deg", size: Math.PI / 180 },
  area: { symbol: "mm2", size: 1e-6 },
};

/** In the first unit of its kind that the author used, else in the usual one of the workshop. */
function inUsualUnit(value: number, is: string, known: readonly KnownDimension[], figures: number): Quantity {
  const used = known.find(({ given, quantity }) => given.is === is && isOwnUnit(quantity, is));
  const { symbol, size } = UNITS[is] ?? { symbol: "", size: 1 };
  const own = used && { unit: used.quantity.unit, size: used.given.value / used.quantity.value.toNumber() };
  return quantityOf(Number((value / (own?.size ?? size)).toPrecision(figures)), own?.unit ?? unit(symbol));
}

/** False for a count of threads, which is a length in another dress. */
function isOwnUnit(quantity: Quantity, is: string): boolean {
  return (is !== "length" && is !== "angle" && is !== "area") || hasDimension(quantity, is);
}

function plain(name: string): string {
  return name.replaceAll("_", " ");
}
