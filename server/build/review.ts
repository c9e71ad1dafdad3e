/**
 * A diary that has been read, while verdicts are made of it: how things stand, and what there is to complain of. No state
 * changes any more, so that what follows from the states can be kept (`Kept`).
 */
import type { IsoDate } from "../quantities/dates.ts";
import { isCritical } from "./criticality.ts";
import type { Finding, FindingCode, FindingExtras } from "./finding.ts";
import { finding } from "./finding.ts";
import type { FindingData } from "./finding-data.ts";
import type { Source } from "./lookups.ts";
import { lostReasons } from "./lost-reasons.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

export class Review implements Standing {
  readonly source: Source;
  /** Whether another build may go on from this one, so that keeping results is worth the while. */
  readonly keeps: boolean;
  readonly names: Standing["names"];
  readonly definitions: Standing["definitions"];
  /** Today. */
  readonly date: IsoDate;
  readonly gathered: Standing["gathered"];
  readonly parts: Standing["parts"];
  readonly joints: Standing["joints"];
  readonly readings: Standing["readings"];
  readonly systems: Standing["systems"];
  readonly settings: Standing["settings"];
  readonly tests: Standing["tests"];
  readonly holdTests: Standing["holdTests"];
  readonly snags: Standing["snags"];
  readonly jobs: Standing["jobs"];
  readonly holds: Standing["holds"];
  readonly gauges: Standing["gauges"];
  readonly supply: Standing["supply"];
  readonly calculated: Standing["calculated"];
  readonly disturbed: Standing["disturbed"];
  readonly findings: Finding[] = [];

  constructor(source: Source, keeps: boolean) {
    const { standing } = source;
    this.source = source;
    this.keeps = keeps;
    this.names = standing.names;
    this.definitions = standing.definitions;
    this.date = standing.date;
    this.gathered = standing.gathered;
    this.parts = standing.parts;
    this.joints = standing.joints;
    this.readings = standing.readings;
    this.systems = standing.systems;
    this.settings = standing.settings;
    this.tests = standing.tests;
    this.holdTests = standing.holdTests;
    this.snags = standing.snags;
    this.jobs = standing.jobs;
    this.holds = standing.holds;
    this.gauges = standing.gauges;
    this.supply = standing.supply;
    this.calculated = standing.calculated;
    this.disturbed = standing.disturbed;
  }

  get lost(): Standing["lost"] {
    return this.source.standing.lost;
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
    const reasons = lostReasons(code, () => this.source.lostAbout(node));
    const seeAlso = [...(extras.seeAlso ?? []), ...reasons];
    const critical = isCritical(this, node);
    this.complain(code, place, data, { subject: node, critical, ...extras, seeAlso });
  }

  /** The place of a stretch of a fact's line. */
  placeIn(fact: DatedFact, span: { readonly start: number; readonly end: number }): Place {
    return placeAt(fact.place.site, span);
  }
}
