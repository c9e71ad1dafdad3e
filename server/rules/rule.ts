/**
 * A rule is one code: its words, its severity, its help and its mends. A rule of the first kind puts a finding of the
 * build into words; one of the second looks at the whole build itself. Neither decides anything that a state needs.
 */
import type { WaiverNode } from "../../grammar/syntax.ts";
import type { Build } from "../build/build.ts";
import type { Finding, FindingCode } from "../build/finding.ts";
import type { Place } from "../build/source.ts";

export type Severity = "error" | "warning" | "information" | "hint";

export const SEVERITIES: readonly Severity[] = ["error", "warning", "information", "hint"];

export type RuleGroup =
  | "Notation"
  | "Order of things"
  | "Limits and measurements"
  | "Joints"
  | "Systems and circuits"
  | "Lives and supply"
  | "Care";

/** What the help page and the settings say of a rule. */
interface RuleText {
  readonly group: RuleGroup;
  readonly severity: Severity;
  /** What is wrong, in one line without a full stop. */
  readonly summary: string;
  /** Why it matters. */
  readonly why: string;
  /** What to do about it. */
  readonly remedy: string;
  /** The published source of what it asks, or "common practice, no source"; absent where it is the notation's own. */
  readonly source?: string;
  /** A short log that brings exactly this complaint, once. One without a vehicle is read with one whose past is known. */
  readonly bad: string;
  /** The same log put right: it brings no complaint at all. */
  readonly good: string;
}

/** A mend: replacements of stretches of text, carried out together. */
export interface Fix {
  readonly title: string;
  /** True when nothing else can have been meant: it may be applied with others at once. */
  readonly sure: boolean;
  readonly edits: readonly { readonly place: Place; readonly text: string }[];
}

export interface FindingRule<C extends FindingCode = FindingCode> extends RuleText {
  readonly of: "finding";
  readonly code: C;
  /** What was found and what was expected, with both figures. */
  readonly message: (finding: Finding<C>) => string;
  /** Another severity than the rule's for this finding. */
  readonly grade?: (finding: Finding<C>) => Severity | undefined;
  readonly fixes?: (finding: Finding<C>, build: Build) => readonly Fix[];
}

/** What a checking rule has noticed. */
export interface Notice {
  readonly place: Place;
  readonly message: string;
  readonly severity?: Severity;
  readonly seeAlso?: readonly { readonly place: Place; readonly message: string }[];
  /** True where it is about something whose failure can hurt. */
  readonly critical?: boolean;
  readonly fixes?: readonly Fix[];
}

export interface CheckingRule extends RuleText {
  readonly of: "check";
  readonly code: string;
  readonly check: (build: Build) => Iterable<Notice>;
}

/** A rule about waivers that set nothing aside, which is known only when everything else has been said. */
export interface WaiverRule extends RuleText {
  readonly of: "waiver";
  readonly code: string;
  /** @param known whether there is a rule of the waiver's code */
  readonly message: (waiver: WaiverNode, known: boolean) => string;
}

export type Rule = FindingRule | CheckingRule | WaiverRule;

/** Defines a rule that words a finding of the build. */
export function findingRule<C extends FindingCode>(rule: Omit<FindingRule<C>, "of">): FindingRule {
  return { ...rule, of: "finding" } as unknown as FindingRule;
}

/** Defines a rule that looks at the build itself. */
export function checkingRule(rule: Omit<CheckingRule, "of">): CheckingRule {
  return { ...rule, of: "check" };
}

/** Defines a rule about waivers. */
export function waiverRule(rule: Omit<WaiverRule, "of">): WaiverRule {
  return { ...rule, of: "waiver" };
}
