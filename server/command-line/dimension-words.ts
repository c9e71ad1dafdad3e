/** Dimensions as they are typed: `major=9.47mm`, `bore="20.01 mm ± 0.02 mm"`, `tpi=24`. */
import { withArticle } from "../../grammar/article.ts";
import { nearest } from "../../grammar/nearest.ts";
import type { KnownDimension } from "../build/identification.ts";
import { compoundQuantity } from "../quantities/compound.ts";
import { describeDimension } from "../quantities/dimension.ts";
import { isNumberFault, readNumber } from "../quantities/number.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { absolute, formatQuantity, hasDimension, multiply, writtenQuantity } from "../quantities/quantity.ts";
import { isFault } from "../quantities/quantity-fault.ts";
import { isUnitFault, NO_UNIT, readUnit, unitsOf } from "../quantities/unit.ts";
import { list } from "../rules/words.ts";
import { dimensionNames, dimensionOfFamily, families, isPerInch } from "../trade/identification/family.ts";
import { givenDimension } from "../trade/identification/given.ts";
import { Failure } from "./command.ts";

/** Whether a word of the command line gives a dimension, and is no reference. */
export function isDimensionWord(word: string): boolean {
  return word.includes("=");
}

/** @param donorNames names of the build's donors' sizes, which can be asked for too */
export function readDimensionWord(word: string, donorNames: readonly string[]): KnownDimension {
  const [name, text] = parted(word);
  requireKnownName(name, donorNames);
  const { quantity, uncertainty } = readSize(name, text);
  const given = givenDimension(name, quantity, uncertainty);
  if ("fault" in given) throw new Failure(`${word}: ${given.message}`);
  if (!donorNames.includes(name)) requireKind(name, quantity);
  return { given, quantity, uncertainty, from: "given", place: undefined };
}

function parted(word: string): readonly [name: string, text: string] {
  const at = word.indexOf("=");
  const [name, text] = [word.slice(0, at).trim(), word.slice(at + 1).trim()];
  if (name === "") throw new Failure(`${word} names no dimension: write one such as major=9.47mm`);
  if (text === "") throw new Failure(`${name} has no value: write one such as ${name}=9.47mm`);
  return [name, text];
}

function requireKnownName(name: string, donorNames: readonly string[]): void {
  const known = [...dimensionNames(), ...donorNames];
  if (donorNames.includes(name) || families.some((family) => dimensionOfFamily(family, name) !== undefined))
    return;
  const near = nearest(name, known, 3);
  const hint =
    near.length === 0
      ? "cotter identify --names lists them"
      : `did you mean ${list(near, "or")}? cotter identify --names lists them all`;
  throw new Failure(`no kind of part is known by a dimension ${name}: ${hint}`);
}

/** A length where an area is due, and so on. */
function requireKind(name: string, quantity: Quantity): void {
  if (isPerInch(name)) return;
  const kinds = [...new Set(families.flatMap((family) => dimensionOfFamily(family, name)?.is ?? []))];
  if (kinds.some((kind) => hasDimension(quantity, kind))) return;
  const due = list(kinds, "or");
  const units = kinds.flatMap((kind) => unitsOf(kind).slice(0, 3));
  const found =
    quantity.unit === NO_UNIT ? "a bare number" : withArticle(describeDimension(quantity.dimension));
  throw new Failure(
    `${name} is ${withArticle(due)}, and ${formatQuantity(quantity)} is ${found}: write a unit such as ${list(units, "or")}`,
  );
}

interface Size {
  readonly quantity: Quantity;
  readonly uncertainty: Quantity | undefined;
}

const PLUS_MINUS = /±|\+\/-|\+-/;

function readSize(name: string, text: string): Size {
  const [value = "", within, ...rest] = text.split(PLUS_MINUS).map((part) => part.trim());
  if (rest.length > 0) throw new Failure(`${name}=${text} has more than one ±`);
  const quantity = readQuantity(name, value);
  if (within === undefined) return { quantity, uncertainty: undefined };
  return { quantity, uncertainty: readUncertainty(name, within, quantity) };
}

/** `± 0.02 mm`, `± 0.02` in the unit of the value, or a share of it, `± 1 %`. */
function readUncertainty(name: string, text: string, of: Quantity): Quantity {
  const read = readQuantity(name, text);
  const inUnit = read.unit === NO_UNIT ? writtenQuantity(numberOf(name, text), of.unit) : read;
  const uncertainty = inUnit.unit.symbol === "%" ? multiply(of, inUnit) : inUnit;
  if (isFault(uncertainty) || !hasSameKind(uncertainty, of))
    throw new Failure(`${name}: ± ${text} is no uncertainty of ${formatQuantity(of)}`);
  return absolute(uncertainty);
}

function hasSameKind(one: Quantity, other: Quantity): boolean {
  return one.dimension.exponents.every((power, place) => power === other.dimension.exponents[place]);
}

const NUMBER = String.raw`[-+\u2212]?(?:\d+[- ]\d+/\d+|\d[\d.,/]*(?:[eE][-+]?\d+)?|\.\d+)`;
const PART = new RegExp(`^(${NUMBER})\\s*((?:1/)?[^\\s\\d][^\\s]*)?\\s*`);

/** One quantity, compound where its units fall: `9.47mm`, `3/8in`, `1-3/8 in`, `47 deg 30 arcmin`. */
function readQuantity(name: string, text: string): Quantity {
  const parts: Quantity[] = [];
  for (let rest = text.trim(); rest !== ""; ) {
    const [whole, number, unitText = ""] = PART.exec(rest) ?? [];
    if (whole === undefined || number === undefined)
      throw new Failure(`${name}: ${text} is no figure with a unit such as 9.47mm, 3/8in or 0.373in`);
    parts.push(quantityOfPart(name, number, unitText));
    rest = rest.slice(whole.length);
  }
  const [first, ...others] = parts;
  if (first === undefined) throw new Failure(`${name} has no value: write one such as ${name}=9.47mm`);
  const sum = compoundQuantity([first, ...others]);
  if (isFault(sum)) throw new Failure(`${name}: ${text} is not one quantity: ${sum.message}`);
  return sum;
}

function quantityOfPart(name: string, number: string, unitText: string): Quantity {
  const read = numberOf(name, number);
  if (unitText === "") return writtenQuantity(read, NO_UNIT);
  const found = readUnit(unitText);
  if (!isUnitFault(found)) return writtenQuantity(read, found);
  const { nearest: near, reason } = found;
  const hint = near.length === 0 ? "" : `; did you mean ${list(near, "or")}?`;
  throw new Failure(
    `${name}: there is no unit ${unitText}${hint}${reason === undefined ? "" : ` (${reason})`}`,
  );
}

function numberOf(name: string, text: string) {
  const read = readNumber(text.trim());
  if (!isNumberFault(read)) return read;
  const hint = "corrected" in read ? `; did you mean ${read.corrected}?` : "";
  throw new Failure(`${name}: ${text} is no number${hint}`);
}
