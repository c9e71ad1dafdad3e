/**
 * Findings: what the build has noticed, as data. A finding is a verdict without words or severity; the rule of its
 * code (floor above) says it, grades it and mends it.
 */
import type { SyntaxFix } from "../../grammar/syntax.ts";
import type { FindingData } from "./finding-data.ts";
import type { Place } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

export type FindingCode = keyof FindingData;

/** Another place that belongs to a finding, with what it is in a few words: `limit`, `removed first`. */
export interface RelatedPlace {
  readonly place: Place;
  readonly role: string;
}

export type Finding<C extends FindingCode = FindingCode> = {
  [Code in C]: {
    readonly code: Code;
    readonly place: Place;
    readonly data: FindingData[Code];
    readonly seeAlso: readonly RelatedPlace[];
    /** What it is about, where that is one thing of the tree. */
    readonly subject: TreeNode | undefined;
    /** True where the subject's failure can hurt. */
    readonly critical: boolean;
    /**
     * `past` where the complaint has been overtaken (a newer reading, a new item): it is then information, whatever its
     * rule says.
     */
    readonly standing: "current" | "past";
    /** Mends that the text itself offers; those that need thought are the rule's. */
    readonly fixes: readonly SyntaxFix[];
  };
}[C];

/** What can be left out of a finding when it is made. */
export interface FindingExtras {
  readonly seeAlso?: readonly RelatedPlace[];
  readonly subject?: TreeNode | undefined;
  readonly critical?: boolean;
  readonly standing?: "current" | "past";
  readonly fixes?: readonly SyntaxFix[];
}

export function finding<C extends FindingCode>(
  code: C,
  place: Place,
  data: FindingData[C],
  { seeAlso = [], subject, critical = false, standing = "current", fixes = [] }: FindingExtras = {},
): Finding {
  return { code, place, data, seeAlso, subject, critical, standing, fixes } as unknown as Finding;
}
