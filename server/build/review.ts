/**
 * A diary that has been read, while verdicts are made of it: how things stand, and what there is to complain of. No state
 * changes any more, so that what follows from the states can be kept (`Kept`).
 */
import type { Finding, FindingCode, FindingExtras } from "./finding.ts";
import { finding } from "./finding.ts";
import type { FindingData } from "./finding-data.ts";
import type { Leaning } from "./leaning.ts";
import type { Source } from "./lookups.ts";
import type { HoldNeed } from "./lowering/definition-record.ts";
import type { Memory } from "./memory.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import { StandingView } from "./standing-view.ts";
import type { DatedFact } from "./states.ts";
import { subjectFinding } from "./subject-finding.ts";
import type { TreeNode } from "./tree/node.ts";

export class Review extends StandingView {
  readonly source: Source;
  /** Whether another build may go on from this one, so that keeping results is worth the while. */
  readonly keeps: boolean;
  /** What is known from the builds before; only of the review of a whole build. */
  readonly memory: Memory | undefined;
  readonly findings: Finding[] = [];

  constructor(source: Source, keeps: boolean, memory?: Memory) {
    super(source.standing);
    this.memory = memory;
    this.source = source;
    this.keeps = keeps;
  }

  complain<C extends FindingCode>(code: C, place: Place, data: FindingData[C], extras?: FindingExtras): void {
    this.findings.push(finding(code, place, data, extras));
  }

  /** A complaint about one thing: it knows whether the thing can hurt. */
  complainOf<C extends FindingCode>(
    node: TreeNode,
    code: C,
    place: Place,
    data: FindingData[C],
    extras: FindingExtras = {},
  ): void {
    const { lostAbout } = this.source;
    this.findings.push(subjectFinding(this, lostAbout, node, code, place, data, extras));
  }

  /** The first thing that leans on a node: see `LeaningsOn`. */
  leaningOn(node: TreeNode, since: DatedFact | undefined, need: HoldNeed): Leaning | undefined {
    return this.source.leanings.on(node, since, need);
  }

  /** The place of a stretch of a fact's line. */
  placeIn(fact: DatedFact, span: { readonly start: number; readonly end: number }): Place {
    return placeAt(fact.place.site, span);
  }
}
