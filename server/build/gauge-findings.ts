/** Gauges used beyond their range or date, too coarse for what they judge, or found wrong after they were used. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Limits } from "../quantities/limits.ts";
import { zone } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { convert } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import type { NamedDefinition } from "./definitions.ts";
import type { FactList } from "./fact-list.ts";
import { COARSE_SHARE } from "./figures.ts";
import type { Finding } from "./finding.ts";
import { newestReadings, recordOf } from "./judgement.ts";
import { KeptOfAll, KeptOfEach } from "./kept-of-each.ts";
import type { Condition } from "./lowering/fact.ts";
import type { Review } from "./review.ts";
import type { Place } from "./source.ts";
import type { DatedFact, GaugeDoubt, Reading } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

/** Something that a gauge showed and that still counts. */
interface Use {
  readonly node: TreeNode;
  readonly gauge: NamedDefinition;
  readonly fact: DatedFact;
  readonly place: Place;
}

const ofParts = new KeptOfEach<TreeNode, Finding>();
const ofOthers = new KeptOfEach<TreeNode, Finding>();
const ofDoubts = new KeptOfAll<readonly Finding[]>();
const ofSettings = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfGauges(review: Review, facts: FactList): readonly (readonly Finding[])[] {
  const { tree } = review.gathered;
  const others = tree.besideParts;
  return [
    ofParts.complaints(review, tree.ofKind("part"), [], complainOfPart),
    ofOthers.complaints(review, others, [], (own, node) =>
      complainOfItem(own, own.readings.get(node) ?? [], true),
    ),
    ofSettings.complaints(review, tree.all, [], complainOfSettings),
    ofDoubts.complaints(review, [facts.of("calibrated")], (own) => complainOfDoubts(own, facts)),
  ];
}

function complainOfSettings(review: Review, thing: TreeNode): void {
  for (const { node, doubt, fact } of review.settings.get(thing)?.values() ?? [])
    complainOfUse(review, node, doubt, fact, fact.place, "current");
}

function complainOfPart(review: Review, node: TreeNode): void {
  const part = review.parts.get(node);
  if (part === undefined) return;
  for (const { readings } of part.earlier) complainOfItem(review, readings, false);
  complainOfItem(review, part.item.readings, true);
}

/** @param there false of an item that is no longer on the vehicle */
function complainOfItem(review: Review, readings: readonly Reading[], there: boolean): void {
  const newest = new Set(there ? newestReadings({ readings }) : []);
  for (const reading of readings) {
    const { node, doubt, fact } = reading;
    const place = review.placeIn(fact, fact.fact.readingsAt);
    complainOfUse(review, node, doubt, fact, place, newest.has(reading) ? "current" : "past");
    if (newest.has(reading)) complainOfCoarseness(review, reading);
  }
}

/** A gauge that could not have shown that, or was out of date: one complaint, however many readings it took. */
function complainOfUse(
  review: Review,
  node: TreeNode,
  doubt: GaugeDoubt | undefined,
  fact: DatedFact,
  place: Place,
  standing: "current" | "past",
): void {
  if (doubt === undefined) return;
  const { gauge } = doubt;
  const extras = { standing, seeAlso: [{ place: gauge.header, role: "gauge" }] };
  if (doubt.is === "out of range") {
    const { reading, range } = doubt;
    review.complainOf(node, "gauge-out-of-range", place, { gauge: gauge.name, reading, range }, extras);
  } else {
    const data = { gauge: gauge.name, good: doubt.good, used: fact.date };
    review.complainOf(node, "gauge-out-of-date", place, data, extras);
  }
}

/** A gauge whose uncertainty takes up much of what it is to judge. */
function complainOfCoarseness(review: Review, { node, name, gauge, uncertainty, fact }: Reading): void {
  if (gauge === undefined || uncertainty === undefined) return;
  for (const { record } of review.definitions.all(node, "limit")) {
    const coarse = record.name === name ? shareOfZone(uncertainty, record.limits, COARSE_SHARE) : undefined;
    if (coarse === undefined) continue;
    const data = { gauge: gauge.name, uncertainty, ...coarse, most: COARSE_SHARE };
    const place = review.placeIn(fact, fact.fact.gauge ?? fact.fact.readingsAt);
    review.complainOf(node, "gauge-too-coarse", place, { is: "coarse for a limit", ...data });
    return;
  }
}

/** A zone and the share of it that an uncertainty takes, where that is more than `most`. */
function shareOfZone(
  uncertainty: Quantity,
  limits: Limits,
  most: number,
): { readonly zone: Quantity; readonly ratio: number } | undefined {
  const whole = zone(limits);
  const same = unlessFault(whole && convert(uncertainty, whole.unit));
  if (whole === undefined || same === undefined || whole.value.isZero()) return undefined;
  const ratio = same.value.div(whole.value).abs().toNumber();
  return ratio > most ? { zone: whole, ratio } : undefined;
}

/** A stretch of the diary in which a gauge cannot be trusted, and why. */
interface Doubt {
  readonly gauge: NamedDefinition;
  readonly condition: Condition;
  readonly found: DatedFact<"found">;
  /** When it was last known good: a day before the first fact that is in doubt, or that fact's predecessor in order. */
  readonly good: { readonly date: IsoDate; readonly order: number } | undefined;
  /** Order of the calibration that ends it. */
  readonly until: number;
}

function complainOfDoubts(review: Review, facts: FactList): void {
  const doubts = doubtsOf(review, facts);
  if (doubts.length === 0) return;
  for (const { gauge, fact, place, node } of usesOf(review)) {
    const doubt = doubts.find((one) => one.gauge === gauge && isInDoubt(one, fact));
    if (doubt === undefined) continue;
    const { condition, found, good } = doubt;
    review.complainOf(
      node,
      "gauge-in-doubt",
      place,
      { gauge: gauge.name, good: good?.date, found: condition, on: found.date },
      { seeAlso: [{ place: found.place, role: `found ${condition.replaceAll("_", " ")}` }] },
    );
  }
}

function isInDoubt({ good, until }: Doubt, fact: DatedFact): boolean {
  if (fact.order >= until) return false;
  return good === undefined || (good.order < 0 ? fact.date >= good.date : fact.order > good.order);
}

const HARMLESS: ReadonlySet<Condition> = new Set(["good", "dirty"]);

/** From the last time that a gauge was known good to the calibration after it was found otherwise. */
function doubtsOf(review: Review, facts: FactList): readonly Doubt[] {
  const doubts: Doubt[] = [];
  for (const { definition, found } of review.gauges.values()) {
    const wrong = found.filter(({ condition }) => !HARMLESS.has(condition));
    if (wrong.length === 0) continue;
    const calibrations = facts.of("calibrated").filter((fact) => calibrates(fact, definition));
    const proofs: DatedFact[] = [
      ...calibrations,
      ...found.filter(({ condition }) => condition === "good").map(({ fact }) => fact),
    ];
    for (const { condition, fact } of wrong) {
      const before = proofs.filter(({ order }) => order < fact.order).sort((a, b) => b.order - a.order)[0];
      const stated = recordOf(definition, "calibrated");
      const good =
        before ?? (stated && stated.date <= fact.date ? { date: stated.date, order: -1 } : undefined);
      const until = calibrations.find(({ order }) => order > fact.order)?.order ?? Number.POSITIVE_INFINITY;
      doubts.push({ gauge: definition, condition, found: fact, good, until });
    }
  }
  return doubts;
}

function calibrates({ fact }: DatedFact<"calibrated">, gauge: NamedDefinition): boolean {
  return fact.what.some(({ text }) => text === gauge.name);
}

/** The readings, torques and settings that still count. */
function* usesOf(review: Review): Generator<Use> {
  const ofParts = [...review.parts.values()].map(({ item }) => item);
  const ofOthers = [...review.readings.values()].map((readings) => ({ readings }));
  for (const readings of [...ofParts, ...ofOthers]) {
    for (const { node, gauge, fact } of newestReadings(readings)) {
      const place = review.placeIn(fact, fact.fact.readingsAt);
      if (gauge !== undefined) yield { node, gauge, fact, place };
    }
  }
  for (const { node, reading } of review.joints.values()) {
    if (reading?.gauge === undefined) continue;
    const { gauge, fact } = reading;
    yield { node, gauge, fact, place: fact.place };
  }
  for (const settings of review.settings.values()) {
    for (const { node, gauge, fact } of settings.values())
      if (gauge !== undefined) yield { node, gauge, fact, place: fact.place };
  }
}
