/** From values to the arguments of a function of the trade. */
import { nearest } from "../../grammar/nearest.ts";
import type { DimensionName } from "../quantities/dimension.ts";
import { compatible, dimensionNamed, RATIO, sameExponents } from "../quantities/dimension.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { asDifference, formatQuantity, hasDimension } from "../quantities/quantity.ts";
import { adviseUnit, unitsOf } from "../quantities/unit.ts";
import { readWireGauge, wireArea } from "../trade/electrics.ts";
import { frictionWords, readFriction } from "../trade/friction.ts";
import type {
  AnyQuantityParameter,
  ArgumentValue,
  NumberParameter,
  Parameter,
  QuantityParameter,
} from "../trade/function.ts";
import { materialNames, readMaterial } from "../trade/materials.ts";
import { readClass } from "../trade/strength-class.ts";
import { readThread } from "../trade/thread.ts";
import type { Refusal } from "./refusal.ts";
import { refuse } from "./refusal.ts";
import { siOf } from "./si.ts";
import { takes } from "./trade-words.ts";
import type { Value } from "./value.ts";
import { describeValue, quoted } from "./value.ts";

/** An argument as a function of the trade takes it, and what was made of the value on the way. */
export interface Argument {
  readonly value: ArgumentValue;
  /** The quantity it was, from which the result takes its unit; absent of words and counts. */
  readonly quantity?: Quantity;
  /** Significant figures of what was written, or of the published figures that a word stands for; absent where exact. */
  readonly figures?: number;
  readonly note?: string;
}

/** Significant figures of published nut factors, of typical properties of materials, and of standard strengths. */
const FIGURES = { friction: 2, material: 3, class: 4 } as const;

/** The value that a bare word stands for where a parameter takes words: a material, a friction, a class. */
export function wordFor(parameter: Parameter, word: string): Value | undefined {
  switch (parameter.is) {
    case "material":
      return readMaterial(word) === undefined ? undefined : { kind: "word", word };
    case "friction":
      return readFriction(word) === undefined ? undefined : { kind: "word", word };
    case "class": {
      const strength = readClass(`class ${word}`);
      return strength === undefined ? undefined : { kind: "class", class: strength };
    }
    default:
      return undefined;
  }
}

/** Words of a parameter that are near to one that is none. */
export function nearestWords(parameter: Parameter, word: string): readonly string[] {
  if (parameter.is === "material") return nearest(word, materialNames);
  return parameter.is === "friction" ? nearest(word, frictionWords) : [];
}

/**
 * The argument of a parameter, in SI units. `first` is the first of the quantities that must be of one dimension.
 */
export function argumentFrom(
  called: string,
  parameter: Parameter,
  value: Value,
  first: Quantity | undefined,
): Argument | Refusal {
  switch (parameter.is) {
    case "quantity":
      return quantityArgument(called, parameter, value);
    case "any quantity":
      return anyQuantityArgument(called, parameter, value, first);
    case "number":
      return numberArgument(called, parameter, value);
    case "text":
      return value.kind === "text" ? { value: value.text } : wrongKind(called, parameter, value);
    case "thread":
      return threadArgument(called, parameter, value);
    case "class":
      return classArgument(called, parameter, value);
    case "material":
      return materialArgument(called, parameter, value);
    case "friction":
      return frictionArgument(called, parameter, value);
  }
}

function quantityArgument(called: string, parameter: QuantityParameter, value: Value): Argument | Refusal {
  if (value.kind === "text" && parameter.dimension === "area") {
    const gauge = readWireGauge(value.text);
    if (gauge !== undefined) return { value: wireArea(gauge), note: `${value.text}: area by ASTM B258` };
  }
  if (value.kind !== "quantity") return wrongKind(called, parameter, value);
  const { quantity } = value;
  if (parameter.dimension === "temperature_difference" && quantity.dimension.kind === "point") {
    const rise = asDifference(quantity);
    const note = `${formatQuantity(quantity)} is read as a rise, not as a reading`;
    return { ...measured(rise), note };
  }
  if (!hasDimension(quantity, parameter.dimension)) {
    return refuse("wrong-dimension", unlike(called, parameter, value), {
      units: unitsMeant(quantity, parameter.dimension),
    });
  }
  return measured(quantity);
}

function anyQuantityArgument(
  called: string,
  parameter: AnyQuantityParameter,
  value: Value,
  first: Quantity | undefined,
): Argument | Refusal {
  if (value.kind !== "quantity") return wrongKind(called, parameter, value);
  const { among } = parameter;
  const quantity = asDifference(value.quantity);
  if (among !== undefined && !among.some((name) => hasDimension(quantity, name))) {
    return refuse("wrong-dimension", unlike(called, parameter, value), {
      units: among.flatMap((name) => unitsOf(name).slice(0, 2)),
    });
  }
  if (first !== undefined && !areAlike(first, quantity)) {
    return refuse(
      "wrong-dimension",
      `${called} takes quantities of one dimension: ${describeValue({ kind: "quantity", quantity: first })} and ${describeValue(value)} do not go together`,
    );
  }
  return measured(quantity);
}

/** One dimension; and one unit, where readings of two temperature scales would be taken as differences. */
function areAlike(a: Quantity, b: Quantity): boolean {
  const isTemperature = sameExponents(a.dimension, dimensionNamed("temperature"));
  return isTemperature ? a.unit === b.unit : compatible(a.dimension, b.dimension);
}

function numberArgument(called: string, parameter: NumberParameter, value: Value): Argument | Refusal {
  if (value.kind !== "quantity") return wrongKind(called, parameter, value);
  const { quantity } = value;
  if (quantity.dimension !== RATIO) return refuse("wrong-dimension", unlike(called, parameter, value));
  return parameter.whole ? { value: siOf(quantity) } : measured(quantity);
}

function threadArgument(called: string, parameter: Parameter, value: Value): Argument | Refusal {
  if (value.kind === "thread") return { value: value.thread };
  const thread = value.kind === "text" ? readThread(value.text) : undefined;
  return thread === undefined || "fault" in thread ? wrongKind(called, parameter, value) : { value: thread };
}

function classArgument(called: string, parameter: Parameter, value: Value): Argument | Refusal {
  if (value.kind === "class") return { value: value.class, figures: FIGURES.class };
  const text = value.kind === "text" ? value.text : value.kind === "word" ? value.word : "";
  const strength = readClass(text) ?? readClass(`class ${text}`);
  return strength === undefined
    ? wrongKind(called, parameter, value)
    : { value: strength, figures: FIGURES.class };
}

function materialArgument(called: string, parameter: Parameter, value: Value): Argument | Refusal {
  const material = readMaterial(wordOf(value));
  return material === undefined
    ? wrongKind(called, parameter, value)
    : { value: material, figures: FIGURES.material };
}

function frictionArgument(called: string, parameter: Parameter, value: Value): Argument | Refusal {
  if (value.kind === "quantity" && value.quantity.dimension === RATIO) {
    return measured(value.quantity);
  }
  const friction = readFriction(wordOf(value));
  if (friction === undefined) return wrongKind(called, parameter, value);
  if (friction.kind === "friction") return { value: friction, figures: FIGURES.friction };
  return refuse(
    "out-of-range-argument",
    `${friction.word} has no nut factor of its own (${friction.source}); write the number`,
  );
}

function measured(quantity: Quantity): Argument {
  const { figures } = quantity;
  return { value: siOf(quantity), quantity, ...(figures === undefined ? {} : { figures }) };
}

function wordOf(value: Value): string {
  if (value.kind === "word") return value.word;
  return value.kind === "text" ? value.text : "";
}

function wrongKind(called: string, parameter: Parameter, value: Value): Refusal {
  return refuse("wrong-dimension", unlike(called, parameter, value));
}

function unlike(called: string, parameter: Parameter, value: Value): string {
  const given = value.kind === "text" ? `the text ${quoted(value.text)}` : describeValue(value);
  return `${called}: ${parameter.name} is ${takes(parameter)}, not ${given}`;
}

/** Units that a quantity of another dimension, or a bare number, was probably meant in. */
function unitsMeant(quantity: Quantity, due: DimensionName): readonly string[] {
  return quantity.dimension === RATIO ? unitsOf(due).slice(0, 3) : adviseUnit(quantity.unit, due).nearest;
}
