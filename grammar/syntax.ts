/**
 * The syntax tree of the notation: what the parser yields and everything above it reads.
 *
 * Positions are UTF-16 offsets, relative to the first character of the block a node stands in, so that a block
 * keeps its tree when text above it changes. `end` is exclusive.
 */

/** A stretch of a block's text. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface WordNode extends Span {
  readonly kind: "word";
  readonly text: string;
}

/** A string with its escapes resolved; `closed` is false where the line ended before the closing quote. */
export interface StringNode extends Span {
  readonly kind: "string";
  readonly text: string;
  readonly closed: boolean;
}

/** An ISO 8601 calendar date as written; whether the day exists in its month has been checked. */
export interface DateNode extends Span {
  readonly kind: "date";
  readonly text: string;
}

export interface DateRangeNode extends Span {
  readonly kind: "dateRange";
  readonly from: DateNode;
  readonly to: DateNode;
}

/** A number as written: `12`, `-1.5`, `1e-3`, `3/8`, `1-3/8`. */
export interface NumberNode extends Span {
  readonly kind: "number";
  readonly text: string;
}

export interface UnitNode extends Span {
  readonly kind: "unit";
  readonly text: string;
}

/** A number and, unless it is bare, its unit. */
export interface QuantityPart {
  readonly number: NumberNode;
  readonly unit: UnitNode | undefined;
}

/** One value: one part, or several of a falling chain (`1 deg 30 arcmin`). */
export interface QuantityNode extends Span {
  readonly kind: "quantity";
  readonly parts: readonly [QuantityPart, ...QuantityPart[]];
  /** `each`: said of one side where the total is the rule (toe). */
  readonly each: boolean;
}

/** `62.00 GBP`, or `40 GBP/h` where a rate of money is asked for. */
export interface MoneyNode extends Span {
  readonly kind: "money";
  readonly number: NumberNode;
  readonly currency: UnitNode;
  readonly per: string | undefined;
}

export interface ExchangeNode extends Span {
  readonly kind: "exchange";
  readonly from: MoneyNode;
  readonly to: MoneyNode;
}

/** `± 0.05 mm`, `± 5 %`, `± 4 % of reading`. */
export interface ToleranceNode extends Span {
  readonly kind: "tolerance";
  readonly value: QuantityNode;
}

/** What a value must satisfy. A bare bound takes the unit of its neighbour. */
export type LimitsNode = Span & { readonly kind: "limits"; readonly fresh: QuantityNode | undefined } & (
    | {
        readonly form: "bounds";
        readonly lower: QuantityNode | undefined;
        readonly upper: QuantityNode | undefined;
      }
    | { readonly form: "tolerance"; readonly nominal: QuantityNode; readonly tolerance: QuantityNode }
    | {
        readonly form: "asymmetric";
        readonly nominal: QuantityNode;
        readonly above: NumberNode;
        readonly below: NumberNode;
        readonly unit: UnitNode | undefined;
      }
    | { readonly form: "iso286"; readonly size: NumberNode; readonly toleranceClass: WordNode }
    | { readonly form: "nominal"; readonly nominal: QuantityNode }
  );

/** One segment of a reference: a name, every name (`*`), or a choice of sub-paths (`{disc, hub}`). */
export type ReferenceSegment =
  | { readonly is: "name"; readonly text: string }
  | { readonly is: "every" }
  | { readonly is: "choice"; readonly options: readonly string[] };

export interface ReferenceNode extends Span {
  readonly kind: "reference";
  /** As written, white space inside braces included. */
  readonly text: string;
  readonly segments: readonly ReferenceSegment[];
}

export interface ReferencesNode extends Span {
  readonly kind: "references";
  readonly items: readonly ReferenceNode[];
}

/** `4 x REF`; `count` is undefined where none was written. */
export interface CountedReferenceNode extends Span {
  readonly kind: "counted";
  readonly count: NumberNode | undefined;
  readonly reference: ReferenceNode;
  readonly at: MoneyNode | undefined;
}

export interface CountedReferencesNode extends Span {
  readonly kind: "countedReferences";
  readonly items: readonly CountedReferenceNode[];
}

export interface WordsNode extends Span {
  readonly kind: "words";
  readonly items: readonly WordNode[];
}

/** A thread or bolt designation as written, `LH` and length included. */
export interface ThreadNode extends Span {
  readonly kind: "thread";
  readonly text: string;
}

/** The strength class behind `class` or `grade`: `8.8`, `A2-70`, `S`, `unknown`. */
export interface ClassNode extends Span {
  readonly kind: "class";
  readonly system: "class" | "grade";
  readonly text: string;
}

export interface BoltNode extends Span {
  readonly kind: "bolt";
  readonly count: NumberNode | undefined;
  readonly thread: ThreadNode;
  readonly strength: ClassNode | undefined;
}

export interface NutNode extends Span {
  readonly kind: "nut";
  readonly form: WordNode;
  readonly insert: WordNode | undefined;
  readonly thread: ThreadNode | undefined;
  readonly strength: ClassNode | undefined;
  readonly height: QuantityNode | undefined;
  /** Of a tapped hole: how deep the thread goes, and in what. */
  readonly depth: QuantityNode | undefined;
  readonly material: WordNode | undefined;
}

export interface CountedQuantityNode extends Span {
  readonly kind: "countedQuantity";
  readonly count: NumberNode | undefined;
  readonly value: QuantityNode;
}

export type TorqueNode = Span & { readonly kind: "torque" } & (
    | {
        readonly form: "limits";
        readonly limits: LimitsNode;
        readonly then: QuantityNode | undefined;
        readonly toSlot: boolean;
      }
    | { readonly form: "fromClass" }
    | { readonly form: "byHand" }
  );

export interface QuantitiesNode extends Span {
  readonly kind: "quantities";
  readonly items: readonly QuantityNode[];
}

export type FrictionNode = Span & { readonly kind: "friction" } & (
    | { readonly form: "nutFactor"; readonly value: NumberNode }
    | { readonly form: "coefficients"; readonly thread: NumberNode; readonly head: NumberNode }
    | { readonly form: "word"; readonly word: WordNode }
  );

/** `5 year from made`, `20 h running`. */
export interface LifeNode extends Span {
  readonly kind: "life";
  readonly value: QuantityNode;
  readonly counted: "made" | "fitted" | "running";
}

/** `after 1 h running, then every 10 h running`. */
export interface RecheckNode extends Span {
  readonly kind: "recheck";
  readonly after: QuantityNode | undefined;
  readonly every: QuantityNode | undefined;
}

export interface WeekNode extends Span {
  readonly kind: "week";
  readonly days: readonly { readonly day: WordNode; readonly hours: QuantityNode }[];
}

/** `6 h` or `4..6..10 h`. */
export interface TakesNode extends Span {
  readonly kind: "takes";
  readonly values: readonly [QuantityNode] | readonly [QuantityNode, QuantityNode, QuantityNode];
}

export interface RangesNode extends Span {
  readonly kind: "ranges";
  readonly items: readonly LimitsNode[];
}

export interface PackNode extends Span {
  readonly kind: "pack";
  readonly count: NumberNode;
  readonly at: MoneyNode | undefined;
}

/** `AWG 14`. */
export interface WireGaugeNode extends Span {
  readonly kind: "wireGauge";
  readonly number: NumberNode;
}

/** What a hold point stops: jobs by name, or the running of something. */
export interface StopsNode extends Span {
  readonly kind: "stops";
  readonly jobs: readonly ReferenceNode[];
  readonly ran: readonly ReferenceNode[];
}

/** `WORD VALUE` of `changed:` and `default:`: a record of another word, in place. */
export interface DefinitionNode extends Span {
  readonly kind: "definition";
  readonly word: WordNode;
  readonly values: ReadonlyMap<string, ValueNode>;
}

export interface ExpressionNode extends Span {
  readonly kind: "expression";
  readonly tree: Expression;
}

export type Expression = Span &
  (
    | { readonly is: "quantity"; readonly value: QuantityNode }
    | { readonly is: "text"; readonly value: StringNode }
    | { readonly is: "thread"; readonly value: ThreadNode }
    | { readonly is: "class"; readonly value: ClassNode }
    | { readonly is: "wireGauge"; readonly value: WireGaugeNode }
    | { readonly is: "name"; readonly text: string }
    | { readonly is: "call"; readonly name: WordNode; readonly arguments: readonly Expression[] }
    | { readonly is: "negative"; readonly of: Expression }
    | {
        readonly is: "binary";
        readonly operator: "+" | "-" | "*" | "/" | "^";
        readonly left: Expression;
        readonly right: Expression;
      }
    | { readonly is: "conversion"; readonly of: Expression; readonly unit: UnitNode }
  );

/** A clause of fixed words that carries no value: `as a unit`, `on new hardware`. */
export interface FlagNode extends Span {
  readonly kind: "flag";
}

export type ValueNode =
  | WordNode
  | StringNode
  | DateNode
  | DateRangeNode
  | NumberNode
  | QuantityNode
  | MoneyNode
  | ExchangeNode
  | ToleranceNode
  | LimitsNode
  | ReferenceNode
  | ReferencesNode
  | CountedReferencesNode
  | WordsNode
  | ThreadNode
  | BoltNode
  | NutNode
  | CountedQuantityNode
  | TorqueNode
  | QuantitiesNode
  | FrictionNode
  | LifeNode
  | RecheckNode
  | WeekNode
  | TakesNode
  | RangesNode
  | PackNode
  | WireGaugeNode
  | StopsNode
  | DefinitionNode
  | ExpressionNode
  | FlagNode;

/** The codes of what can be wrong with the text itself, before any meaning. */
export type SyntaxFaultCode =
  | "unreadable-line"
  | "unknown-block"
  | "unknown-record"
  | "record-not-here"
  | "missing-value"
  | "unreadable-value"
  | "decimal-comma"
  | "bad-date"
  | "unknown-unit"
  | "unclosed-string"
  | "friction-unnamed"
  | "unreadable-expression"
  | "waiver-without-reason";

/** A replacement of a stretch of text that mends a fault; `sure` when nothing else can have been meant. */
export interface SyntaxFix extends Span {
  readonly text: string;
  readonly title: string;
  readonly sure: boolean;
}

export interface SyntaxFault extends Span {
  readonly code: SyntaxFaultCode;
  /** What stands there, as written. */
  readonly found: string;
  /** What would be read there, in words: `a length, such as 9.12 mm`. */
  readonly expected: string;
  /** What is wrong, in words, where it is not that something else stands there. */
  readonly reason?: string;
  readonly fixes: readonly SyntaxFix[];
}

/** `# waived CODE: reason` behind a header or record. */
export interface WaiverNode extends Span {
  readonly code: string;
  readonly reason: string;
}

export interface CommentNode extends Span {
  readonly waiver: WaiverNode | undefined;
}

/** Shared by a block's header and its records: a word, what was read behind it, and what could not be. */
interface Statement extends Span {
  readonly word: WordNode;
  readonly values: ReadonlyMap<string, ValueNode>;
  /** True when something it cannot do without is missing or unreadable: it then means nothing. */
  readonly broken: boolean;
  readonly faults: readonly SyntaxFault[];
  readonly comments: readonly CommentNode[];
}

export interface HeaderNode extends Statement {
  readonly kind: "header";
  /** The block word it is read as; undefined where no known word is near. */
  readonly block: BlockWord | undefined;
}

export interface RecordNode extends Statement {
  readonly kind: "record";
  /** The end of what was written, without a trailing comment and the line's end. */
  readonly contentEnd: number;
  /** False where the word is not one of the vocabulary, or is misspelt in case or colon. */
  readonly known: boolean;
}

export type LineNode = Span & { readonly kind: "blank" | "comment" | "prose" };

/** A column-0 line that starts no block. */
export interface StrayNode extends Span {
  readonly kind: "stray";
  readonly faults: readonly SyntaxFault[];
}

/** The items of a block tile its text: each starts where the one before it ends. */
export type ItemNode = HeaderNode | RecordNode | LineNode | StrayNode;

export interface BlockNode {
  readonly text: string;
  /** Undefined for what stands above the first header of a file. */
  readonly header: HeaderNode | undefined;
  readonly items: readonly ItemNode[];
  /** Offset of the start of each line of the block, the first being 0. */
  readonly lineStarts: readonly number[];
}

export type BlockWord =
  | "vehicle"
  | "supplier"
  | "gauge"
  | "assembly"
  | "part"
  | "joint"
  | "system"
  | "circuit"
  | "job"
  | "hold"
  | "setup"
  | "donor"
  | "day";
