/** What the readings say, once the whole diary has been read: each at its own line, overtaken ones as past. */

import { describeDimension } from "../quantities/dimension.ts";
import { zone } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import {
  compare,
  convert,
  formatQuantity,
  hasDimension,
  meanOf,
  multiply,
  quantityOf,
} from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { wear } from "../quantities/wear.ts";
import { condemnation } from "./condemnation.ts";
import { COARSE_SHARE, SLIP_FACTOR } from "./figures.ts";
import type { LimitData } from "./finding-data/limits.ts";
import type { JudgedLimit } from "./judgement.ts";
import { judgeReading, newestReadings } from "./judgement.ts";
import type { Replay } from "./replay/replay.ts";
import { placeAt } from "./source.ts";
import type { DatedFact, Item, PartState, Reading } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

type ReadingStanding = "current" | "past";

export function complainOfReadings(replay: Replay): void {
  const fitted = fittedRegardless(replay);
  for (const part of replay.parts.values()) {
    for (const item of part.earlier) complainOfItem(replay, part.node, item.readings, () => "past");
    const mayGoBack = part.place !== "gone" && condemnation(replay, part) === undefined;
    complainOfItem(replay, part.node, part.item.readings, (reading, newest) =>
      newest && mayGoBack && !fitted.has(reading.fact) ? "current" : "past",
    );
    complainOfWear(replay, part, part.item);
  }
  for (const [node, readings] of replay.readings) {
    complainOfItem(replay, node, readings, (_, newest) => (newest ? "current" : "past"));
  }
}

/**
 * Readings that a part went on in spite of: the mistake is then the fitting, and is complained about there. Fittings
 * that a newer reading, a new item or another removal has answered become past.
 */
function fittedRegardless(replay: Replay): ReadonlySet<DatedFact> {
  const regardless = new Set<DatedFact>();
  for (const [index, found] of replay.findings.entries()) {
    if (found.code !== "fitted-out-of-limit") continue;
    const part = found.subject && replay.parts.get(found.subject);
    const stands =
      part?.place === "on" && newestReadings(part.item).some(({ fact }) => fact === found.data.measured);
    if (stands) regardless.add(found.data.measured);
    else replay.findings[index] = { ...found, standing: "past" };
  }
  return regardless;
}

function complainOfItem(
  replay: Replay,
  node: TreeNode,
  readings: readonly Reading[],
  standingOf: (reading: Reading, newest: boolean) => ReadingStanding,
): void {
  const newest = new Map(readings.map((reading) => [reading.name, reading]));
  for (const reading of readings) {
    const standing = standingOf(reading, newest.get(reading.name) === reading);
    if (complainOfMeaning(replay, node, reading, standing)) continue;
    for (const judged of judgeReading(replay, reading)) complainOfLimit(replay, judged, standing);
    complainOfCoarseness(replay, reading);
  }
}

/** A reading that cannot be what it says: of another dimension than its limit, or ten times off. True when it was. */
function complainOfMeaning(
  replay: Replay,
  node: TreeNode,
  reading: Reading,
  standing: ReadingStanding,
): boolean {
  const place = replay.placeIn(reading.fact, reading.fact.fact.readingsAt);
  const [value] = reading.values;
  const references = nominals(replay, node, reading.name);
  const unlike = references.length > 0 && references.every((nominal) => isFault(compare(value, nominal)));
  if (unlike) {
    const [nominal] = references;
    const expected =
      nominal === undefined
        ? ""
        : `a ${describeDimension(nominal.dimension)}, as in ${formatQuantity(nominal)}`;
    replay.complainOf(node, "wrong-dimension", place, {
      found: formatQuantity(value),
      expected,
      reason: undefined,
    });
    return true;
  }
  const slipped = reading.values.find(
    (each) => factorOff(each, nominalOf(replay, node, reading.name)) !== undefined,
  );
  const nominal = nominalOf(replay, node, reading.name);
  const factor = slipped && factorOff(slipped, nominal);
  if (slipped === undefined || nominal === undefined || factor === undefined) {
    if (references.length === 0) {
      const known = replay.definitions.all(node, "limit").map(({ record }) => record.name);
      if (replay.definitions.all(node, "setting").every(({ record }) => record.name !== reading.name)) {
        replay.complainOf(
          node,
          "measured-without-limit",
          place,
          { what: node.path, characteristic: reading.name, known },
          { standing },
        );
      }
    }
    return false;
  }
  const data = { characteristic: reading.name, reading: slipped, nominal, factor };
  replay.complainOf(node, "implausible-value", place, data, { standing });
  return true;
}

/** Everything a reading of that name can be compared with: limits, settings, nominal sizes. */
function nominals(replay: Replay, node: TreeNode, name: string): readonly Quantity[] {
  const limited = [
    ...replay.definitions.all(node, "limit"),
    ...replay.definitions.all(node, "setting"),
  ].flatMap(({ record }) => {
    const bound = record.limits.nominal ?? record.limits.fresh ?? record.limits.lower ?? record.limits.upper;
    return record.name === name && bound !== undefined ? [bound] : [];
  });
  const sizes = replay.definitions
    .all(node, "size")
    .flatMap(({ record }) => (record.name === name && "value" in record.size ? [record.size] : []));
  return [...sizes, ...limited];
}

/** The value that a reading should be near: a nominal size, the size when new, or the middle of narrow limits. */
function nominalOf(replay: Replay, node: TreeNode, name: string): Quantity | undefined {
  for (const { record } of replay.definitions.all(node, "size")) {
    if (record.name === name && "value" in record.size) return record.size;
  }
  for (const { record } of replay.definitions.all(node, "limit")) {
    if (record.name !== name) continue;
    const { nominal, fresh, lower, upper } = record.limits;
    if (nominal !== undefined) return nominal;
    if (fresh !== undefined) return fresh;
    if (lower !== undefined && upper !== undefined && !lower.value.isNegative() && isNarrow(lower, upper))
      return lower;
  }
  return undefined;
}

/** Limits less than a factor of two apart have a middle worth the name. */
function isNarrow(lower: Quantity, upper: Quantity): boolean {
  const doubled = multiply(lower, quantityOf(2));
  return !isFault(doubled) && compare(upper, doubled) === -1;
}

function factorOff(value: Quantity, nominal: Quantity | undefined): number | undefined {
  if (nominal === undefined || nominal.value.isZero() || value.value.isZero()) return undefined;
  const same = convert(value, nominal.unit);
  if (isFault(same) || hasDimension(nominal, "temperature")) return undefined;
  const factor = same.value.div(nominal.value).abs().toNumber();
  return factor >= SLIP_FACTOR || factor <= 1 / SLIP_FACTOR ? factor : undefined;
}

const CODES = {
  outside: { upper: "over-limit", lower: "under-limit" },
  uncertain: "limit-uncertain",
  near: "near-limit",
} as const;

function complainOfLimit(
  replay: Replay,
  { limit, reading, verdict }: JudgedLimit,
  standing: ReadingStanding,
): void {
  if (verdict.verdict === "within") return;
  const { node, fact } = reading;
  const place = replay.placeIn(fact, fact.fact.readingsAt);
  const data = limitData(reading, verdict);
  const extras = { standing, seeAlso: [{ place: placeAt(limit.site, limit.record.at), role: "limit" }] };
  if (verdict.verdict === "outside")
    replay.complainOf(node, CODES.outside[verdict.side], place, data, extras);
  else if (verdict.verdict === "uncertain") replay.complainOf(node, "limit-uncertain", place, data, extras);
  else if (verdict.zone !== undefined) {
    const left = convert(verdict.margin, verdict.zone.unit);
    const shareLeft =
      isFault(left) || verdict.zone.value.isZero() ? 0 : left.value.div(verdict.zone.value).toNumber();
    replay.complainOf(node, "near-limit", place, { ...data, zone: verdict.zone, shareLeft }, extras);
  }
}

export function limitData(reading: Pick<Reading, "node" | "name" | "values">, verdict: Verdict): LimitData {
  return {
    what: reading.node.path,
    characteristic: reading.name,
    reading: verdict.reading,
    limit: verdict.limit,
    side: verdict.side,
    by: verdict.excess ?? verdict.margin,
    uncertainty: verdict.uncertainty,
    readings: reading.values.length,
    spread: verdict.spread,
  };
}

/** A gauge whose uncertainty eats too much of the zone (common practice: a tenth; over a quarter it hardly measures). */
function complainOfCoarseness(replay: Replay, reading: Reading): void {
  const { gauge, uncertainty, node, name } = reading;
  if (gauge === undefined || uncertainty === undefined) return;
  for (const { record } of replay.definitions.all(node, "limit")) {
    const whole = record.name === name ? zone(record.limits) : undefined;
    const same = whole && convert(uncertainty, whole.unit);
    if (whole === undefined || same === undefined || isFault(same) || whole.value.isZero()) continue;
    const ratio = same.value.div(whole.value).abs().toNumber();
    if (ratio <= COARSE_SHARE) continue;
    const place = replay.placeIn(reading.fact, reading.fact.fact.gauge ?? reading.fact.fact.readingsAt);
    replay.complainOf(node, "gauge-too-coarse", place, {
      is: "coarse for a limit",
      gauge: gauge.name,
      uncertainty,
      zone: whole,
      ratio,
      most: COARSE_SHARE,
    });
    return;
  }
}

function complainOfWear(replay: Replay, part: PartState, item: Item): void {
  for (const { record } of replay.definitions.all(part.node, "limit")) {
    const readings = item.readings.filter(({ name }) => name === record.name);
    const last = readings.at(-1);
    const points = readings.flatMap(({ fact, hours, values }) => {
      const value = meanOf(values);
      return isFault(value) ? [] : [{ date: fact.date, runningHours: hours, value }];
    });
    const worn = wear(points, record.limits, last?.uncertainty);
    if (worn === undefined || worn.remaining === undefined || last === undefined) continue;
    const { rate, over, remaining: left, limit } = worn;
    const data = { characteristic: record.name, rate, over, left, limit };
    replay.complainOf(part.node, "wear-rate", replay.placeIn(last.fact, last.fact.fact.readingsAt), data);
  }
}
