/** Whether a reading can be what it says: of another dimension than its limit, ten times off, or of nothing known. */
import { withArticle } from "../../grammar/article.ts";
import { namesIn } from "../expressions/names.ts";
import { compatible, describeDimension } from "../quantities/dimension.ts";
import type { Quantity } from "../quantities/quantity.ts";
import {
  compare,
  convert,
  formatQuantity,
  hasDimension,
  multiply,
  quantityOf,
} from "../quantities/quantity.ts";
import { isFault, unlessFault } from "../quantities/quantity-fault.ts";
import type { Calculation } from "./calculation.ts";
import { SLIP_FACTOR } from "./figures.ts";
import { recordsOf } from "./judgement.ts";
import type { DefinitionRecord } from "./lowering/definition-record.ts";
import type { LoweredFact } from "./lowering/fact.ts";
import { memberReference } from "./reference-uses.ts";
import { Remembered } from "./remembered.ts";
import type { Review } from "./review.ts";
import type { Place } from "./source.ts";
import { placeAt, textAt } from "./source.ts";
import type { Reading } from "./states.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";
import type { MemberResolution } from "./tree/resolve.ts";

const uses = new Remembered<object, ReadonlySet<string>>();
const USES = new AspectSet("fit", "pair", "set_by", "calc", "characteristics");

/**
 * Characteristics by path and name, and the bare names that donors are known by, of which something is made: the same
 * set as long as nothing else is made of them.
 *
 * @param calculations those of the days
 */
export function usedReadings(review: Review, calculations: readonly Calculation[]): ReadonlySet<string> {
  const used = uses.of(review.definitions.since(USES), calculations, () => findUsed(review, calculations));
  return review.memory?.sameSet(uses, used) ?? used;
}

/** Looks at readings. */
export class ReadingMeaning {
  private readonly review: Review;
  private readonly used: ReadonlySet<string>;

  /** @param used what something is made of (`usedReadings`) */
  constructor(review: Review, used: ReadonlySet<string>) {
    this.review = review;
    this.used = used;
  }

  /** Complains, and is true, where the reading cannot be judged as what it says. */
  complainOf(reading: Reading, standing: "current" | "past"): boolean {
    const nominals = this.nominals(reading.node, reading.name);
    if (nominals.length === 0) {
      if (!this.isUsed(reading)) this.complainOfNoLimit(reading, standing);
      return false;
    }
    return this.complainOfDimension(reading, nominals) || this.complainOfSlip(reading, standing);
  }

  private complainOfDimension({ node, values, fact }: Reading, nominals: readonly Quantity[]): boolean {
    const [value] = values;
    const [nominal] = nominals;
    if (nominal === undefined || nominals.some((each) => compatible(value.dimension, each.dimension)))
      return false;
    const place = this.review.placeIn(fact, fact.fact.readingsAt);
    const expected = `${withArticle(describeDimension(nominal.dimension))}, as in ${formatQuantity(nominal)}`;
    const feet = hasDimension(nominal, "length") ? feetMark(place) : undefined;
    if (feet === undefined) {
      const data = { found: formatQuantity(value), expected, reason: undefined };
      this.review.complainOf(node, "wrong-dimension", place, data);
    } else {
      const data = { found: "'", expected, reason: undefined };
      const fix = { start: feet.start, end: feet.end, text: " ft", title: "Write ft", sure: true };
      this.review.complainOf(node, "unknown-unit", feet, data, { fixes: [fix] });
    }
    return true;
  }

  private complainOfSlip({ node, name, values, fact }: Reading, standing: "current" | "past"): boolean {
    const nominal = this.nominal(node, name);
    const slip = nominal && slips.of(fact.fact, [nominal], () => slipOf(values, nominal));
    if (slip === undefined || nominal === undefined) return false;
    const place = this.review.placeIn(fact, fact.fact.readingsAt);
    const data = { characteristic: name, ...slip, nominal };
    this.review.complainOf(node, "implausible-value", place, data, { standing });
    return true;
  }

  private complainOfNoLimit({ node, name, fact }: Reading, standing: "current" | "past"): void {
    const known = this.review.definitions.all(node, "limit").map(({ record }) => record.name);
    const place = this.review.placeIn(fact, fact.fact.readingsAt);
    this.review.complainOf(
      node,
      "measured-without-limit",
      place,
      { what: node.path, characteristic: name, known: [...new Set(known)] },
      { standing },
    );
  }

  /** Everything that a reading of that name can be compared with: limits, settings, nominal sizes. */
  private nominals(node: TreeNode, name: string): readonly Quantity[] {
    const { definitions } = this.review;
    const limited = [...definitions.all(node, "limit"), ...definitions.all(node, "setting")].flatMap(
      ({ record }) => {
        const { nominal, fresh, lower, upper } = record.limits;
        const bound = nominal ?? fresh ?? lower ?? upper;
        return record.name === name && bound !== undefined ? [bound] : [];
      },
    );
    const sizes = definitions
      .all(node, "size")
      .flatMap(({ record }) => (record.name === name && "value" in record.size ? [record.size] : []));
    return [...sizes, ...limited];
  }

  /** The value that a reading should be near: a nominal size, the size when new, or the foot of narrow limits. */
  private nominal(node: TreeNode, name: string): Quantity | undefined {
    const { definitions } = this.review;
    for (const { record } of definitions.all(node, "size")) {
      if (record.name === name && "value" in record.size) return record.size;
    }
    for (const { record } of definitions.all(node, "limit")) {
      if (record.name !== name) continue;
      const { nominal, fresh, lower, upper } = record.limits;
      if (nominal !== undefined || fresh !== undefined) return nominal ?? fresh;
      if (lower === undefined || upper === undefined) continue;
      if (narrow.of(record, [], () => isNarrow(lower, upper))) return lower;
    }
    return undefined;
  }

  /** True where something is made of the reading: a fit, a pair, a joint set by it, a calculation, an identification. */
  private isUsed({ node, name }: Reading): boolean {
    return this.used.has(keyOf(node, name)) || this.used.has(name);
  }
}

function findUsed(review: Review, calculations: readonly Calculation[]): ReadonlySet<string> {
  const { gathered, names } = review;
  return new Set([
    ...[...gathered.tree.nodes()].flatMap((node) => [...comparedBy(review, node)]),
    ...calculations.flatMap((calculation) => [...readBy(review, calculation)]),
    ...[...names.every("donor")].flatMap((donor) => recordsOf(donor, "size").map(({ name }) => name)),
  ]);
}

/** What the fits, pairs, joints and calculations of a thing's block look at. */
function* comparedBy({ definitions, names }: Review, node: TreeNode): Generator<string> {
  for (const word of ["fit", "pair"] as const) {
    for (const { record, turns } of definitions.all(node, word)) {
      yield keyOf(node, record.name);
      yield* memberKey(names.member(definitions, record.other, turns));
    }
  }
  for (const { record, turns } of definitions.all(node, "set_by"))
    yield* memberKey(names.member(definitions, record.reference, turns));
  for (const { record, turns } of definitions.all(node, "calc")) {
    for (const { text } of namesIn(record.expression.tree)) {
      if (text.includes(".")) yield* memberKey(names.member(definitions, memberReference({ text }), turns));
      else yield keyOf(node, text);
    }
  }
}

/** What a calculation of a day looks at. */
function* readBy({ names, definitions }: Review, { expression }: Calculation): Generator<string> {
  for (const { text } of namesIn(expression.tree))
    if (text.includes(".")) yield* memberKey(names.member(definitions, memberReference({ text })));
}

function* memberKey({ node, name }: MemberResolution): Generator<string> {
  if (node !== undefined) yield keyOf(node, name);
}

function keyOf(node: TreeNode, name: string): string {
  return `${node.path} ${name}`;
}

interface Slip {
  readonly reading: Quantity;
  readonly factor: number;
}

const slips = new Remembered<LoweredFact, Slip | undefined>();

/** The first reading that is off by about ten. */
function slipOf(values: readonly Quantity[], nominal: Quantity): Slip | undefined {
  for (const reading of values) {
    const factor = factorOff(reading, nominal);
    if (factor !== undefined) return { reading, factor };
  }
  return undefined;
}

const narrow = new Remembered<DefinitionRecord<"limit">, boolean>();

/** Limits less than a factor of two apart have a middle worth the name. */
function isNarrow(lower: Quantity, upper: Quantity): boolean {
  const doubled = multiply(lower, quantityOf(2));
  return !isFault(doubled) && compare(upper, doubled) === -1;
}

function factorOff(value: Quantity, nominal: Quantity): number | undefined {
  if (nominal.value.isZero() || value.value.isZero() || hasDimension(nominal, "temperature"))
    return undefined;
  const same = unlessFault(convert(value, nominal.unit));
  if (same === undefined) return undefined;
  const factor = same.value.div(nominal.value).abs().toNumber();
  return factor >= SLIP_FACTOR || factor <= 1 / SLIP_FACTOR ? factor : undefined;
}

/** The one `'` behind the readings, which reads as minutes of arc: of a length it means feet. */
function feetMark(place: Place): Place | undefined {
  const [before, after, ...others] = textAt(place).split("'");
  if (before === undefined || after === undefined || others.length > 0 || !/\d$/.test(before))
    return undefined;
  const start = place.start + before.length;
  return placeAt(place.site, { start, end: start + 1 });
}
