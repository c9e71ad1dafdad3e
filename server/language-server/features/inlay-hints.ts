/** What can be read between the values: results of calculations, verdicts with margins, other units, running so far. */
import type { InlayHint, Range } from "vscode-languageserver";
import { InlayHintKind } from "vscode-languageserver";
import type { Build } from "../../build/build.ts";
import { torqueLimits } from "../../build/joint-torque.ts";
import { judgeReading } from "../../build/judgement.ts";
import type { Place } from "../../build/source.ts";
import type { DatedFact, Reading } from "../../build/states.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { formatValue } from "../../expressions/value.ts";
import type { Decimal } from "../../quantities/decimal.ts";
import { formatDecimal, ZERO } from "../../quantities/decimal.ts";
import type { Quantity } from "../../quantities/quantity.ts";
import { convert, formatQuantity } from "../../quantities/quantity.ts";
import { isFault } from "../../quantities/quantity-fault.ts";
import { sayLimits } from "../../reports/parts.ts";
import type { Settings } from "../settings.ts";
import { rangeOf } from "../to-protocol.ts";
import type { FileView } from "../view.ts";
import { sayVerdict } from "../words/measurements.ts";

export function inlayHints(view: FileView, range: Range, shown: Settings["inlayHints"]): InlayHint[] {
  const { build, file } = view;
  const inView = (place: Place) => {
    if (place.site.file !== file) return false;
    const { start, end } = rangeOf(place);
    return start.line <= range.end.line && end.line >= range.start.line;
  };
  const facts = build.facts.filter(({ place }) => inView(place));
  return [
    ...(shown.computed ? computed(build, inView) : []),
    ...facts.flatMap((fact) => [
      ...(shown.verdicts || shown.converted ? ofReading(build, fact, shown) : []),
      ...(shown.converted ? ofTorque(build, fact) : []),
      ...(shown.running ? ofRunning(build, fact) : []),
    ]),
  ];
}

function computed({ calculations }: Build, inView: (place: Place) => boolean): readonly InlayHint[] {
  return calculations.flatMap(({ place, expression, outcome }) => {
    if (!inView(place) || outcome.is !== "value") return [];
    const { start, end } = expression;
    return [hintBehind({ site: place.site, start, end }, `= ${formatValue(outcome.value)}`)];
  });
}

/** Readings by the fact that tells of them. */
const readingsByBuild = new WeakMap<Build, ReadonlyMap<DatedFact, Reading>>();

function readingOf(build: Build, fact: DatedFact): Reading | undefined {
  let readings = readingsByBuild.get(build);
  if (readings === undefined) {
    const { parts, readings: ofOthers } = build.standing;
    const ofParts = [...parts.values()].flatMap(({ item, earlier }) =>
      [...earlier, item].flatMap((each) => each.readings),
    );
    readings = new Map([...ofParts, ...[...ofOthers.values()].flat()].map((each) => [each.fact, each]));
    readingsByBuild.set(build, readings);
  }
  return readings.get(fact);
}

function ofReading(build: Build, fact: DatedFact, shown: Settings["inlayHints"]): readonly InlayHint[] {
  if (fact.fact.word !== "measured") return [];
  const reading = readingOf(build, fact);
  const [judged] = reading === undefined ? [] : judgeReading(build.standing, reading);
  if (judged === undefined) return [];
  const { verdict, limit } = judged;
  const inUnits = shown.converted ? inUnitsOf(verdict.reading, verdict.limit) : undefined;
  const words = [
    ...(inUnits === undefined ? [] : [`= ${inUnits}`]),
    ...(shown.verdicts ? [sayVerdict(verdict)] : []),
  ];
  const place = { site: fact.place.site, ...fact.fact.readingsAt };
  return words.length === 0 ? [] : [hintBehind(place, words.join(", "), sayLimits(limit.record.limits))];
}

/** A torque in the unit in which the joint asks for it. */
function ofTorque({ standing }: Build, fact: DatedFact): readonly InlayHint[] {
  if (fact.fact.word !== "torqued") return [];
  const { what, torque, torqueAt } = fact.fact;
  const [joint] = what.flatMap((reference) => standing.names.targets(reference, ["joint"]));
  const limits = joint && torqueLimits(standing, joint.node);
  const asked = limits?.upper ?? limits?.lower;
  const inUnits = asked && inUnitsOf(torque, asked);
  if (limits === undefined || inUnits === undefined) return [];
  return [hintBehind({ site: fact.place.site, ...torqueAt }, `= ${inUnits}`, sayLimits(limits))];
}

function inUnitsOf(quantity: Quantity, { unit }: Quantity): string | undefined {
  if (quantity.unit.symbol === unit.symbol) return undefined;
  const converted = convert(quantity, unit);
  return isFault(converted) ? undefined : formatQuantity(converted);
}

/** Running hours of a thing after each `ran:`, those of what is above it included. */
const runningByBuild = new WeakMap<Build, ReadonlyMap<DatedFact, Decimal>>();

function ofRunning(build: Build, fact: DatedFact): readonly InlayHint[] {
  if (fact.fact.word !== "ran" || fact.fact.hours === undefined) return [];
  let running = runningByBuild.get(build);
  if (running === undefined) {
    running = runningAfterEach(build);
    runningByBuild.set(build, running);
  }
  const hours = running.get(fact);
  if (hours === undefined || hours.equals(fact.fact.hours)) return [];
  const text = `${formatDecimal(hours, hours.decimalPlaces())} h so far`;
  return [hintBehind(fact.place, text)];
}

function runningAfterEach({ facts, standing }: Build): ReadonlyMap<DatedFact, Decimal> {
  const own = new Map<TreeNode, Decimal>();
  const after = new Map<DatedFact, Decimal>();
  for (const dated of facts) {
    const { fact } = dated;
    if (fact.word !== "ran" || fact.hours === undefined) continue;
    const node = standing.names.one(fact.target, ["assembly", "part", "joint", "system", "circuit"]);
    if (node === undefined) continue;
    own.set(node, (own.get(node) ?? ZERO).plus(fact.hours));
    let sum = ZERO;
    for (let above: TreeNode | undefined = node; above !== undefined; above = above.parent)
      sum = sum.plus(own.get(above) ?? ZERO);
    after.set(dated, sum);
  }
  return after;
}

function hintBehind(place: Place, label: string, tooltip?: string): InlayHint {
  return {
    position: rangeOf(place).end,
    label,
    kind: InlayHintKind.Type,
    paddingLeft: true,
    ...(tooltip === undefined ? {} : { tooltip }),
  };
}
