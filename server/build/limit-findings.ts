/** What the readings say, once the whole diary has been read: each at its own line, overtaken ones as past. */
import { zone } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert, meanOf } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import type { Verdict } from "../quantities/verdict.ts";
import type { Wear } from "../quantities/wear.ts";
import { wear } from "../quantities/wear.ts";
import { calculatedLimits } from "./calculated-limits.ts";
import { condemnation } from "./condemnation.ts";
import type { Finding } from "./finding.ts";
import type { LimitData } from "./finding-data/limits.ts";
import type { JudgedLimit } from "./judgement.ts";
import { judgeReading, newestReadings, precisionOf } from "./judgement.ts";
import type { DefinitionRecord } from "./lowering/definition-record.ts";
import type { LoweredFact } from "./lowering/fact.ts";
import { ReadingMeaning } from "./reading-meaning.ts";
import { Remembered } from "./remembered.ts";
import { LostIndex } from "./replay/lost-reasons.ts";
import type { Replay } from "./replay/replay.ts";
import { isSetInFitting } from "./set-in-fitting.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Item, ItemEvent, PartState, Reading } from "./states.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

type ReadingStanding = "current" | "past";

const ofItems = new Remembered<Item, readonly Finding[]>();
const ofOthers = new Remembered<readonly Reading[], readonly Finding[]>();
const ofReadings = new Remembered<Reading, readonly Finding[]>();

export function complainOfReadings(replay: Replay): void {
  const fitted = fittedRegardless(replay);
  const meaning = new ReadingMeaning(replay);
  const lost = new LostIndex(replay.lost);
  const common = [replay.definitions, meaning.used];
  for (const part of replay.parts.values()) {
    const { node, item, earlier, place } = part;
    if (item.readings.length === 0 && earlier.length === 0) continue;
    const regardless = item.readings.filter(({ fact }) => fitted.has(fact.place));
    const ofEach = [...common, ...lost.about(node)];
    const inputs = [...ofEach, earlier, place === "gone", ...regardless];
    replay.complainOnce(ofItems, item, inputs, () => complainOfPart(replay, meaning, part, fitted, ofEach));
  }
  for (const [node, readings] of replay.readings) {
    const ofEach = [...common, ...lost.about(node)];
    replay.complainOnce(ofOthers, readings, ofEach, () =>
      complainOfItem(replay, meaning, readings, ofEach, (_, newest) => (newest ? "current" : "past")),
    );
  }
  for (const node of replay.gathered.tree.nodes()) complainOfCalculated(replay, node);
}

function complainOfPart(
  replay: Replay,
  meaning: ReadingMeaning,
  part: PartState,
  fitted: ReadonlySet<Place>,
  ofEach: readonly unknown[],
): void {
  for (const { readings } of part.earlier) complainOfItem(replay, meaning, readings, ofEach, () => "past");
  const usable = mayGoBack(replay, part);
  complainOfItem(replay, meaning, part.item.readings, ofEach, (reading, newest) =>
    newest && usable && !fitted.has(reading.fact.place) ? "current" : "past",
  );
  complainOfWear(replay, part);
}

/** Neither gone nor condemned: a verdict on it still matters. */
function mayGoBack(replay: Replay, part: PartState): boolean {
  return part.place !== "gone" && condemnation(replay, part) === undefined;
}

/**
 * Readings that a part went on in spite of: the mistake is then the fitting, and is complained about there. Fittings
 * that a newer reading, a new item or another removal has answered become past.
 */
function fittedRegardless(replay: Replay): ReadonlySet<Place> {
  const regardless = new Set<Place>();
  for (const [index, found] of replay.findings.entries()) {
    if (found.code !== "fitted-out-of-limit") continue;
    const part = found.subject && replay.parts.get(found.subject);
    const measured = found.seeAlso.find(({ role }) => role === "measured")?.place;
    const stands =
      part?.place === "on" && newestReadings(part.item).some(({ fact }) => fact.place === measured);
    if (stands && measured !== undefined) regardless.add(measured);
    else replay.findings[index] = { ...found, standing: "past" };
  }
  return regardless;
}

/** @param ofEach what the complaints of one reading follow from, besides the reading and its standing */
function complainOfItem(
  replay: Replay,
  meaning: ReadingMeaning,
  readings: readonly Reading[],
  ofEach: readonly unknown[],
  standingOf: (reading: Reading, newest: boolean) => ReadingStanding,
): void {
  const newest = new Set(newestReadings({ readings }));
  for (const reading of readings) {
    const standing = standingOf(reading, newest.has(reading));
    replay.complainOnce(ofReadings, reading, [standing, ...ofEach], () => {
      // What cannot be what it says is not judged as if it were.
      if (meaning.complainOf(reading, standing)) return;
      for (const judged of judgeReading(replay, reading)) complainOfLimit(replay, judged, standing);
    });
  }
}

function complainOfLimit(
  replay: Replay,
  { limit, reading, verdict }: JudgedLimit,
  standing: ReadingStanding,
): void {
  const { node, fact, name, values } = reading;
  const place = replay.placeIn(fact, fact.fact.readingsAt);
  complainOfVerdict(replay, { node, name, readings: values.length, verdict, limit, place }, standing);
}

/** A limit that a calculation answers, at the line of the calculation. */
function complainOfCalculated(replay: Replay, node: TreeNode): void {
  if (replay.definitions.one(node, "limit") === undefined) return;
  const part = replay.parts.get(node);
  const standing = part === undefined || mayGoBack(replay, part) ? "current" : "past";
  for (const { limit, calculation, verdict } of calculatedLimits(replay, node)) {
    const { name, place } = calculation;
    if (verdict !== undefined)
      complainOfVerdict(replay, { node, name, readings: 1, verdict, limit, place }, standing);
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
  replay: Replay,
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
    replay.complainOf(node, CODES.outside[verdict.side], place, data, extras);
  else if (verdict.verdict === "uncertain") replay.complainOf(node, CODES.uncertain, place, data, extras);
  else {
    const whole = zone(limit.record.limits);
    if (whole === undefined) return;
    const left = shareOf(verdict.margin, whole);
    replay.complainOf(node, "near-limit", place, { ...data, zone: whole, shareLeft: left }, extras);
  }
}

function shareOf(part: Quantity, whole: Quantity): number {
  const same = convert(part, whole.unit);
  return isFault(same) || whole.value.isZero() ? 0 : same.value.div(whole.value).toNumber();
}

/** How fast the newest readings of one kind head for their limit: of the whole, under one setup. */
function complainOfWear(replay: Replay, { node, item }: PartState): void {
  const worked = item.events.findLast((event) => WORK.has(event.is))?.fact.order ?? -1;
  const taken = item.readings.filter(({ fact }) => fact.order > worked);
  for (const { record } of replay.definitions.all(node, "limit")) {
    const readings = comparable(taken.filter(({ name }) => name === record.name));
    const last = readings.at(-1);
    if (readings.length < 2 || isSetInFitting(replay, node, record.name)) continue;
    const worn = last && wearOf(readings, last, record);
    if (worn?.remaining === undefined || last === undefined) continue;
    const { rate, over, remaining: left, limit } = worn;
    const place = replay.placeIn(last.fact, last.fact.fact.readingsAt);
    replay.complainOf(node, "wear-rate", place, { characteristic: record.name, rate, over, left, limit });
  }
}

const wears = new Remembered<LoweredFact, Wear | undefined>();

function wearOf(
  readings: readonly Reading[],
  { fact, gauge, uncertainty }: Reading,
  limit: DefinitionRecord<"limit">,
): Wear | undefined {
  const inputs = readings.flatMap((reading) => [reading.fact.fact, reading.fact.date, `${reading.hours}`]);
  return wears.of(fact.fact, [limit, gauge && precisionOf(gauge), ...inputs], () => {
    const points = readings.flatMap(({ fact: { date }, hours, values }) => {
      const value = meanOf(values);
      return isFault(value) ? [] : [{ date, runningHours: hours, value }];
    });
    return wear(points, limit.limits, uncertainty);
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
