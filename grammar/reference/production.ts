/** Productions of the notation as data, from the parsers and from the vocabulary: what the EBNF and the diagrams show. */
import type { ISerializedGast } from "chevrotain";
import { ExpressionParser } from "../expression-parser.ts";
import { StatementReader } from "../statement.ts";
import * as token from "../tokens.ts";
import { clausesByChoice } from "../vocabulary/describe.ts";
import type { ArgumentShape, BlockEntry, Clause, RecordEntry, Shape } from "../vocabulary/shape.ts";

/** What a rule is made of. */
export type Production =
  /** Text as it is written. */
  | { readonly is: "text"; readonly text: string }
  /** Something that another rule, or a pattern of characters, describes. */
  | { readonly is: "name"; readonly name: string }
  | { readonly is: "sequence" | "choice"; readonly of: readonly Production[] }
  | { readonly is: "optional"; readonly of: Production }
  /** Once or more, with something between. */
  | { readonly is: "list"; readonly of: Production; readonly separator: Production | undefined };

export interface Rule {
  readonly name: string;
  readonly definition: Production;
}

/** A kind of token that a pattern describes, in words. */
export interface Pattern {
  readonly name: string;
  readonly help: string;
}

const text = (written: string): Production => ({ is: "text", text: written });
const named = (name: string): Production => ({ is: "name", name });
const optional = (of: Production): Production => ({ is: "optional", of });
const sequence = (of: readonly Production[]): Production =>
  of.length === 1 && of[0] !== undefined ? of[0] : { is: "sequence", of };
const choice = (of: readonly Production[]): Production =>
  of.length === 1 && of[0] !== undefined ? of[0] : { is: "choice", of };
const commaList = (of: Production): Production => ({ is: "list", of, separator: text(",") });

/** The tokens that are patterns, as the rules below name them. */
export const PATTERNS: readonly Pattern[] = [
  {
    name: "TEXT",
    help: 'A string in quotation marks on one line, with `\\"` and `\\\\` for those two characters.',
  },
  { name: "DATE", help: "A day by ISO 8601: `2026-05-02`." },
  { name: "NUMBER", help: "`12`, `-1.5`, `9.12`, `1e-3`; a sign belongs to it." },
  { name: "FRACTION", help: "`3/8`, without spaces." },
  { name: "MIXED", help: "`1-3/8` or `1 3/8`, before `in` or `ft` only." },
  { name: "DEVIATIONS", help: "`+0.05/-0.00`; a nought needs no sign." },
  { name: "UNSIGNED", help: "A number in an expression, where a sign is an operator." },
  {
    name: "EXPRESSION_FRACTION",
    help: "`3/8` or `1-3/8` in an expression: behind a space, `(`, `,` or `=` and before `in` or `ft`.",
  },
  {
    name: "UNIT",
    help: "A unit behind a number: `mm`, `N.m`, `kgf/cm2`, `%`, `°`; letters, joined by `.`, `·` or `/`, with a power `2 3 4`.",
  },
  {
    name: "THREAD",
    help: "`M10x1.25`, `3/8-24 UNF`, `1/4 BSW`, `2 BA`; `LH` and a bolt's length may stand behind.",
  },
  {
    name: "PATH",
    help: "Names of letters, digits and underscores, the first a letter, joined by dots; `*` or `{a, b}` in place of a name.",
  },
  { name: "WORD", help: "A path, or any word that values are built with." },
  { name: "NAME", help: "A name or path in an expression." },
  { name: "PLUS_MINUS", help: "`±`, or `+-` or `+/-`." },
];

const LABELS: ReadonlyMap<string, Production> = new Map([
  ...[...token.KEYWORDS].map(([word, { name }]) => [name, text(word)] as const),
  ["Text", named("TEXT")],
  ["DateText", named("DATE")],
  ["Decimal", named("NUMBER")],
  ["Fraction", named("FRACTION")],
  ["Mixed", named("MIXED")],
  ["Deviations", named("DEVIATIONS")],
  ["UnsignedDecimal", named("UNSIGNED")],
  ["ExpressionFraction", named("EXPRESSION_FRACTION")],
  ["Unit", named("UNIT")],
  ["Thread", named("THREAD")],
  ["Path", named("PATH")],
  ["Word", named("WORD")],
  ["Name", named("NAME")],
  ["PlusMinus", named("PLUS_MINUS")],
  ["Range", text("..")],
  ["Comma", text(",")],
  ["Equals", text("=")],
  ["ConvertTo", text("in")],
  ["Open", text("(")],
  ["Close", text(")")],
  ["Plus", text("+")],
  ["Minus", text("-")],
  ["Times", choice([text("*"), text("×"), text("·")])],
  ["Divide", text("/")],
  ["Power", text("^")],
]);

/** Tokens that are read only to be complained about. */
const REFUSED: ReadonlySet<string> = new Set(["OtherDate", "OpenText", "DecimalComma", "BareFraction"]);

/** The rules of values, in the order of the parser. */
export function valueRules(): Rule[] {
  return rulesOf(new StatementReader().getSerializedGastProductions(), "").filter(
    ({ name }) => name !== "statement",
  );
}

/** The rules of expressions; those whose name a rule of values has too are told apart by a prefix. */
export function expressionRules(): Rule[] {
  return rulesOf(new ExpressionParser().getSerializedGastProductions(), "expression-");
}

/** What the serialized productions of chevrotain hold beyond their declared type. */
interface Gast extends ISerializedGast {
  readonly name?: string;
  readonly definition?: Gast[];
  readonly separator?: Gast;
}

function rulesOf(rules: readonly ISerializedGast[], prefix: string): Rule[] {
  return (rules as readonly Gast[]).map(({ name = "", definition = [] }) => ({
    name: ruleName(name, prefix),
    definition: sequenceOf(definition, prefix),
  }));
}

function ruleName(name: string, prefix: string): string {
  const spelt = name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  return spelt === "expression" || prefix === "" ? spelt : prefix + spelt;
}

function sequenceOf(parts: readonly Gast[], prefix: string): Production {
  return sequence(parts.map((part) => productionOf(part, prefix)));
}

function productionOf(gast: Gast, prefix: string): Production {
  const { type, name = "", definition = [], separator } = gast;
  switch (type) {
    case "NonTerminal":
      return named(ruleName(name, prefix));
    case "Terminal":
      return LABELS.get(name) ?? named(name);
    case "Option":
      return optional(sequenceOf(definition, prefix));
    case "Repetition":
      return optional({ is: "list", of: sequenceOf(definition, prefix), separator: undefined });
    case "RepetitionWithSeparator":
      return optional({
        is: "list",
        of: sequenceOf(definition, prefix),
        separator: separator && productionOf(separator, prefix),
      });
    case "Alternation":
      return alternatives(definition, prefix);
    default:
      return sequenceOf(definition, prefix);
  }
}

function alternatives(definition: readonly Gast[], prefix: string): Production {
  const read = definition.filter(
    ({ definition: parts = [] }) => !(parts.length === 1 && REFUSED.has(parts[0]?.name ?? "")),
  );
  const filled = read.filter(({ definition: parts = [] }) => parts.length > 0);
  const chosen = choice(filled.map(({ definition: parts = [] }) => sequenceOf(parts, prefix)));
  return filled.length < read.length ? optional(chosen) : chosen;
}

/** The statement of a header or record, by its entry. */
export function statementRule(entry: BlockEntry | RecordEntry): Rule {
  const isRecord = "blocks" in entry;
  return {
    name: entry.word,
    definition: sequence([text(isRecord ? `${entry.word}:` : entry.word), ...argumentsOf(entry)]),
  };
}

/** Elements in their places, then clauses in any order, then a note. */
function argumentsOf({ elements, clauses, note }: ArgumentShape): Production[] {
  const placed = elements.map(({ shape, optional: may }) =>
    may ? optional(shapeProduction(shape)) : shapeProduction(shape),
  );
  const behind = clausesByChoice(clauses).map((group) => {
    const read = choice(group.map(clauseProduction));
    return group[0].required ? read : optional(read);
  });
  const noted = named("TEXT");
  return [...placed, ...behind, ...(note === "required" ? [noted] : note ? [optional(noted)] : [])];
}

function clauseProduction({ words, shape }: Clause): Production {
  const written = words.map((word) => (word === "±" ? named("PLUS_MINUS") : text(word)));
  return sequence(shape === undefined ? written : [...written, shapeProduction(shape)]);
}

/** The rule, or list of rules, by which a shape reads. */
function shapeProduction(shape: Shape): Production {
  switch (shape.value) {
    case "word":
      return "choices" in shape.of ? choice(shape.of.choices.map(text)) : named("PATH");
    case "words":
      return commaList("choices" in shape.of ? choice(shape.of.choices.map(text)) : named("PATH"));
    case "references":
      return commaList(named("reference"));
    case "countedReferences":
      return commaList(named("counted-reference"));
    case "quantities":
      return commaList(named("quantity"));
    case "ranges":
      return commaList(named("limits"));
    case "sequence":
      return { is: "list", of: named("quantity"), separator: undefined };
    case "either":
      return choice(shape.options.map(shapeProduction));
    case "week":
      return commaList(
        sequence([choice(["mon", "tue", "wed", "thu", "fri", "sat", "sun"].map(text)), named("quantity")]),
      );
    case "stops":
      return commaList(sequence([optional(text("ran")), named("reference")]));
    case "definition":
      return sequence([named("WORD"), named("arguments-of-that-record")]);
    case "expression":
      return sequence([text("="), named("expression")]);
    default:
      return named(ruleName(shape.value, ""));
  }
}
