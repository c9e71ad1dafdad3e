import type { Rule } from "../rule.ts";
import { afterCycle } from "./after-cycle.ts";
import { ambiguousReference } from "./ambiguous-reference.ts";
import { badDate } from "./bad-date.ts";
import { calcCycle } from "./calc-cycle.ts";
import { decimalComma } from "./decimal-comma.ts";
import { duplicateName } from "./duplicate-name.ts";
import { frictionUnnamed } from "./friction-unnamed.ts";
import { likeCycle } from "./like-cycle.ts";
import { likePointsBack } from "./like-points-back.ts";
import { missingValue } from "./missing-value.ts";
import { noVehicle } from "./no-vehicle.ts";
import { outOfRangeArgument } from "./out-of-range-argument.ts";
import { photoNotFound } from "./photo-not-found.ts";
import { recordNotHere } from "./record-not-here.ts";
import { referenceKind } from "./reference-kind.ts";
import { reservedName } from "./reserved-name.ts";
import { secondVehicle } from "./second-vehicle.ts";
import { unclosedString } from "./unclosed-string.ts";
import { unknownBlock } from "./unknown-block.ts";
import { unknownFunction } from "./unknown-function.ts";
import { unknownRecord } from "./unknown-record.ts";
import { unknownReference } from "./unknown-reference.ts";
import { unknownUnit } from "./unknown-unit.ts";
import { unreadableExpression } from "./unreadable-expression.ts";
import { unreadableLine } from "./unreadable-line.ts";
import { unreadableValue } from "./unreadable-value.ts";
import { unusedDefinition } from "./unused-definition.ts";
import { unusedWaiver } from "./unused-waiver.ts";
import { waiverWithoutReason } from "./waiver-without-reason.ts";
import { wrongDimension } from "./wrong-dimension.ts";

export const notationRules: readonly Rule[] = [
  afterCycle,
  ambiguousReference,
  badDate,
  calcCycle,
  decimalComma,
  duplicateName,
  frictionUnnamed,
  likeCycle,
  likePointsBack,
  missingValue,
  noVehicle,
  outOfRangeArgument,
  photoNotFound,
  recordNotHere,
  referenceKind,
  reservedName,
  secondVehicle,
  unclosedString,
  unknownBlock,
  unknownFunction,
  unknownRecord,
  unknownReference,
  unknownUnit,
  unreadableExpression,
  unreadableLine,
  unreadableValue,
  unusedDefinition,
  unusedWaiver,
  waiverWithoutReason,
  wrongDimension,
];
