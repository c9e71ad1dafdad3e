/** What the readings say, once the whole diary has been read: each at its own line, overtaken ones as past. */
import { zone } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import type { Verdict } from "../quantities/verdict.ts";
import type { Wear, WearReading } from "../quantities/wear.ts";
import { EarlierReadings, wear } from "../quantities/wear.ts";
import { calculatedLimits } from "./calculated-limits.ts";
import type { Calculation } from "./calculation.ts";
import { meanOfReading } from "./characteristic.ts";
import { condemnation } from "./condemnation.ts";
import type { Finding } from "./finding.ts";
import type { LimitData } from "./finding-data/limits.ts";
import type { JudgedLimit } from "./judgement.ts";
import { judgeReading, newestReadings, precisionOf } from "./judgement.ts";
import { complainOnce, Kept } from "./kept.ts";
import { KeptOfEach } from "./kept-of-each.ts";
import type { DefinitionRecord } from "./lowering/definition-record.ts";
import type { LoweredFact } from "./lowering/fact.ts";
import { ReadingMeaning, usedReadings } from "./reading-meaning.ts";
import { Remembered } from "./remembered.ts";
import type { Review } from "./review.ts";
import { thingsThatSay } from "./sayers.ts";
import { isSetInFitting } from "./set-in-fitting.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { ItemEvent, PartState, Reading } from "./states.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

type ReadingStanding = "current" | "past";

const ofParts = new KeptOfEach<TreeNode, Finding>();
const ofOthers = new KeptOfEach<TreeNode, Finding>();
const ofReadings = new Kept<Reading, readonly Finding[]>();
const ofCalculations = new KeptOfEach<TreeNode, Finding>();

/**
 * @param ofDiary what was complained of while the diary was read
 * @param calculations those of the days
 * @returns what was complained of, with what has been answered since as past; then what the readings say
 */
export function complaintsOfReadings(
  review: Review,
  ofDiary: readonly Finding[],
  calculations: readonly Calculation[],
): readonly (readonly Finding[])[] {
  const { tree } = review.gathered;
  const { findings, regardless } = fittedRegardless(review, ofDiary);
  const used = usedReadings(review, calculations);
  return [
    findings,
    ofParts.complaints(review, tree.ofKind("part"), [used, regardless], (own, node) =>
      complainOfPart(own, used, node, regardless),
    ),
    ofOthers.complaints(review, tree.besideParts, [used], (own, node) =>
      complainOfItem(own, used, own.readings.get(node) ?? [], (_, newest) => (newest ? "current" : "past")),
    ),
    ofCalculations.complaints(review, thingsThatSay(review, "limit"), [], complainOfCalculated),
  ];
}

/** @param regardless readings that it went on in spite of */
function complainOfPart(
  review: Review,
  used: ReadonlySet<string>,
  node: TreeNode,
  regardless: ReadonlySet<LoweredFact>,
): void {
  const part = review.parts.get(node);
  if (part === undefined || (part.item.readings.length === 0 && part.earlier.length === 0)) return;
  for (const { readings } of part.earlier) complainOfItem(review, used, readings, () => "past");
  const usable = mayGoBack(review, part);
  complainOfItem(review, used, part.item.readings, (reading, newest) =>
    newest && usable && !regardless.has(reading.fact.fact) ? "current" : "past",
  );
  complainOfWear(review, part);
}

/** Neither gone nor condemned: a verdict on it still matters. */
function mayGoBack(review: Review, part: PartState): boolean {
  return part.place !== "gone" && condemnation(review, part) === undefined;
}

const overtaken = new Remembered<Finding, Finding>();

/**
 * Readings that a part went on in spite of: the mistake is then the fitting, and is complained about there. Fittings
 * that a newer reading, a new item or another removal has answered become past.
 */
function fittedRegardless(
  review: Review,
  ofDiary: readonly Finding[],
): { readonly findings: readonly Finding[]; readonly regardless: ReadonlySet<LoweredFact> } {
  const regardless = new Set<LoweredFact>();
  let withOvertaken: Finding[] | undefined;
  for (let index = 0; index < ofDiary.length; index++) {
    const found = ofDiary[index] as Finding;
    if (found.code !== "fitted-out-of-limit") continue;
    const part = found.subject && review.parts.get(found.subject);
    const { measured } = found.data;
    const stands =
      part?.place === "on" && newestReadings(part.item).some(({ fact }) => fact.fact === measured);
    if (stands) regardless.add(measured);
    else {
      withOvertaken ??= [...ofDiary];
      withOvertaken[index] = overtaken.of(found, [], () => ({ ...found, standing: "past" }));
    }
  }
  return {
    findings: withOvertaken ?? ofDiary,
    regardless: review.memory?.sameSet(fittedRegardless, regardless) ?? regardless,
  };
}

function complainOfItem(
  review: Review,
  used: ReadonlySet<string>,
  readings: readonly Reading[],
  standingOf: (reading: Reading, newest: boolean) => ReadingStanding,
): void {
  const newest = new Set(newestReadings({ readings }));
  for (const reading of readings) {
    const standing = standingOf(reading, newest.has(reading));
    complainOnce(ofReadings, review, reading, [standing, used], (own) => {
      // What cannot be what it says is not judged as if it were.
      if (new ReadingMeaning(own, used).complainOf(reading, standing)) return;
      for (const judged of judgeReading(own, reading)) complainOfLimit(own, judged, standing);
    });
  }
}

function complainOfLimit(
  review: Review,
  { limit, reading, verdict }: JudgedLimit,
  standing: ReadingStanding,
): void {
  const { node, fact, name, values } = reading;
  const place = review.placeIn(fact, fact.fact.readingsAt);
  complainOfVerdict(review, { node, name, readings: values.length, verdict, limit, place }, standing);
}

/** A limit that a calculation answers, at the line of the calculation. */
function complainOfCalculated(review: Review, node: TreeNode): void {
  const part = review.parts.get(node);
  const standing = part === undefined || mayGoBack(review, part) ? "current" : "past";
  for (const { limit, calculation, verdict } of calculatedLimits(review, node)) {
    const { name, place } = calculation;
    if (verdict !== undefined)
      complainOfVerdict(review, { node, name, readings: 1, verdict, limit, place }, standing);
  }
}

const CODES = {
  outside: { upper: "over-limit", lower: "under-limit" },
  uncertain: "limit-uncertain",
} as const;

/** A verdict with all that its complaint says. */
interface Judged {
  readonly node: TreeNode;
  readonly name: string;
  readonly readings: number;
  readonly verdict: Verdict;
  readonly limit: SourcedRecord<"limit">;
  readonly place: Place;
}

function complainOfVerdict(
  review: Review,
  { node, name, readings, verdict, limit, place }: Judged,
  standing: ReadingStanding,
): void {
  if (verdict.verdict === "within") return;
  const data: LimitData = {
    what: node.path,
    characteristic: name,
    reading: verdict.reading,
    limit: verdict.limit,
    side: verdict.side,
    by: verdict.excess ?? verdict.margin,
    uncertainty: verdict.uncertainty,
    readings,
    spread: verdict.spread,
  };
  const extras = { standing, seeAlso: [{ place: placeAt(limit.site, limit.record.at), role: "limit" }] };
  if (verdict.verdict === "outside")
    review.complainOf(node, CODES.outside[verdict.side], place, data, extras);
  else if (verdict.verdict === "uncertain") review.complainOf(node, CODES.uncertain, place, data, extras);
  else {
    const whole = zone(limit.record.limits);
    if (whole === undefined) return;
    const left = shareOf(verdict.margin, whole);
    review.complainOf(node, "near-limit", place, { ...data, zone: whole, shareLeft: left }, extras);
  }
}

function shareOf(part: Quantity, whole: Quantity): number {
  const same = unlessFault(convert(part, whole.unit));
  return same === undefined || whole.value.isZero() ? 0 : same.value.div(whole.value).toNumber();
}

/** How fast the newest readings of one kind head for their limit: of the whole, under one setup. */
function complainOfWear(review: Review, { node, item }: PartState): void {
  const worked = item.events.findLast((event) => WORK.has(event.is))?.fact.order ?? -1;
  const taken = item.readings.filter(({ fact }) => fact.order > worked);
  for (const { record } of review.definitions.all(node, "limit")) {
    const readings = comparable(taken.filter(({ name }) => name === record.name));
    const last = readings.at(-1);
    if (readings.length < 2 || isSetInFitting(review, node, record.name)) continue;
    const worn = last && wearOf(readings, last, record);
    if (worn === undefined || last === undefined) continue;
    const { rate, over, remaining: left, limit } = worn;
    const place = review.placeIn(last.fact, last.fact.fact.readingsAt);
    review.complainOf(node, "wear-rate", place, { characteristic: record.name, rate, over, left, limit });
  }
}

const wears = new Remembered<LoweredFact, Wear | undefined>();
const earlierOnes = new Remembered<LoweredFact, EarlierReadings>();

/** Undefined where the last reading has no mean. */
function wearOf(
  readings: readonly Reading[],
  last: Reading,
  limit: DefinitionRecord<"limit">,
): Wear | undefined {
  const { fact, gauge, uncertainty } = last;
  return wears.of(fact.fact, [limit, gauge && precisionOf(gauge), ...readings], () => {
    const [newest] = wearReadings([last]);
    const earlier = readings.slice(0, -1);
    const key = earlier.at(-1)?.fact.fact;
    if (newest === undefined || key === undefined) return undefined;
    // While the last one is being written those before it stay as they are.
    const known = earlierOnes.of(key, earlier, () => new EarlierReadings(wearReadings(earlier)));
    return wear(known, newest, limit.limits, uncertainty);
  });
}

function wearReadings(readings: readonly Reading[]): WearReading[] {
  return readings.flatMap((reading) => {
    const value = unlessFault(meanOfReading(reading));
    return value === undefined ? [] : [{ date: reading.fact.date, runningHours: reading.hours, value }];
  });
}

/** After these the part is not what it was: readings before and after show no wear. */
const WORK: ReadonlySet<ItemEvent["is"]> = new Set(["back", "repaired", "reconditioned"]);

/** Those taken at the same spot and under the same setup as the last one: others say nothing of wear. */
function comparable(readings: readonly Reading[]): readonly Reading[] {
  const last = readings.at(-1);
  return readings.filter(
    ({ fact, setup }) => fact.fact.spot === last?.fact.fact.spot && setup === last?.setup,
  );
}
