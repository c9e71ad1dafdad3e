/** What is wrong with days as such: their order, their dates, the hours that were worked on them. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import { decimal, ZERO } from "../quantities/decimal.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { quantityOf } from "../quantities/quantity.ts";
import { unit } from "../quantities/unit.ts";
import type { DatedDay, DayBlock, Gathered } from "./definitions.ts";
import { daysIn, isDated } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import { KeptAlong } from "./kept-along.ts";
import { Remembered } from "./remembered.ts";
import type { Place, SourceFile } from "./source.ts";
import { placeAt, stemOf } from "./source.ts";
import { DefinitionsInForce } from "./tree/definitions.ts";

const ofFiles = new Remembered<SourceFile, readonly Finding[]>();
const ofHours = new KeptAlong<readonly Finding[]>();

/** @param today days after it are complained about */
export function dayFindings(
  files: readonly SourceFile[],
  { tree, written }: Pick<Gathered, "tree" | "written">,
  today: IsoDate,
): readonly (readonly Finding[])[] {
  const hands = DefinitionsInForce.of(written).one(tree.root, "hands")?.record.count ?? 1;
  return files.map((file) => ofFiles.of(file, [today, hands], () => findingsIn(file, today, hands)));
}

function findingsIn(file: SourceFile, today: IsoDate, hands: number): readonly Finding[] {
  const days = daysIn(file);
  const hours = ofHours.of(stemOf(file), [hands], [days], (index) =>
    findingsOfHours(days[index] as DayBlock, hands),
  );
  const findings: Finding[] = [];
  let before: DatedDay | undefined;
  for (let index = 0; index < days.length; index++) {
    const day = days[index] as DayBlock;
    if (!isDated(day)) continue;
    if (before !== undefined && day.date < before.date) findings.push(outOfOrder(day, before));
    if (day.date > today) findings.push(finding("future-day", datePlace(day), { date: day.date, today }));
    const here = hours[index] ?? NOTHING;
    if (here !== NOTHING) findings.push(...here);
    before = day;
  }
  return findings;
}

function outOfOrder(day: DatedDay, before: DatedDay): Finding {
  const seeAlso = [{ place: datePlace(before), role: "the day above" }];
  return finding("day-order", datePlace(day), { date: day.date, before: before.date }, { seeAlso });
}

const NOTHING: readonly Finding[] = [];

/** Work booked beyond the hours that the day had for each pair of hands, or a day of more than 24. */
function findingsOfHours(day: DayBlock, hands: number): readonly Finding[] {
  const found: Finding[] = [];
  if (day.hours?.greaterThan(FULL_DAY)) {
    const data = { is: "too long", day: told(day.hours) } as const;
    found.push(finding("hours-over-day", datePlace(day), data));
  }
  const work = day.facts.filter((fact) => fact.word === "worked");
  const booked = work.reduce((sum, { hours }) => sum.plus(hours), ZERO);
  const hours = day.hours ?? FULL_DAY;
  const last = work.at(-1);
  if (last === undefined || !booked.greaterThan(hours.times(hands)))
    return found.length === 0 ? NOTHING : found;
  const data = {
    is: "booked",
    booked: told(booked),
    day: told(hours),
    hands,
  } as const;
  const seeAlso = [{ place: datePlace(day), role: "the day" }];
  return [...found, finding("hours-over-day", placeAt(day.site, last.at), data, { seeAlso })];
}

/** Hours as they are told: times are written to the minute, a sixtieth of one hour. */
function told(hours: Decimal): Quantity {
  return quantityOf(hours.toDecimalPlaces(2), HOUR);
}

/** Hours that a day has where it states none. */
const FULL_DAY = decimal(24);

const HOUR = unit("h");

function datePlace({ site, header }: DayBlock): Place {
  return placeAt(site, site.block.header?.values.get("date") ?? header);
}
