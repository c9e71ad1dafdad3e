/** Complaints: findings put into words by their rules, graded, waived or not, in the order of the text. */

import type { ItemNode, WaiverNode } from "../../grammar/syntax.ts";
import type { Build } from "../build/build.ts";
import type { Finding } from "../build/finding.ts";
import type { BlockSite, Place } from "../build/source.ts";
import { compareCodePoints, placeAt } from "../build/source.ts";
import { catalogue } from "./catalogue.ts";
import type { FindingRule, Fix, Notice, Rule, Severity } from "./rule.ts";

export interface Complaint {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly seeAlso: readonly { readonly place: Place; readonly message: string }[];
  readonly fixes: readonly Fix[];
}

/** A complaint that a line of the log has set aside, with its reason. */
export interface Waived {
  readonly complaint: Complaint;
  readonly reason: string;
}

export interface Complaints {
  readonly complaints: readonly Complaint[];
  readonly waived: readonly Waived[];
}

/** Severities that a build or an editor sets otherwise; `off` silences the rule. */
export type SeverityOverrides = ReadonlyMap<string, Severity | "off">;

export function complaintsOf(build: Build, overrides: SeverityOverrides = new Map()): Complaints {
  const graded = [...catalogue.values()].flatMap((rule) => [...complaintsOfRule(rule, build, overrides)]);
  const unique = [...new Map(graded.map((one) => [keyOf(one.complaint), one])).values()];
  const { complaints, waived } = applyWaivers(build, unique, overrides);
  return { complaints: [...complaints].sort(inTextOrder), waived };
}

interface Graded {
  readonly complaint: Complaint;
  readonly waivable: boolean;
}

function* complaintsOfRule(rule: Rule, build: Build, overrides: SeverityOverrides): Generator<Graded> {
  const override = overrides.get(rule.code);
  if (override === "off") return;
  if (rule.of === "finding") {
    for (const finding of build.findings) {
      if (finding.code !== rule.code) continue;
      const severity =
        finding.standing === "past" ? mildest(rule.severity) : (rule.grade?.(finding) ?? rule.severity);
      yield graded(rule, override ?? severity, wordFinding(rule, finding, build), finding.critical);
    }
  } else {
    // One rule that throws must not take the others with it.
    let notices: readonly Notice[] = [];
    try {
      notices = [...rule.check(build)];
    } catch (error) {
      yield* failed(rule, build, error);
    }
    for (const notice of notices) {
      yield graded(
        rule,
        override ?? notice.severity ?? rule.severity,
        { seeAlso: [], fixes: [], ...notice },
        notice.critical ?? false,
      );
    }
  }
}

/** An overtaken complaint is information, or a hint where it was one. */
function mildest(severity: Severity): Severity {
  return severity === "hint" ? "hint" : "information";
}

function wordFinding(
  rule: FindingRule,
  finding: Finding,
  build: Build,
): Pick<Complaint, "place" | "message" | "seeAlso" | "fixes"> {
  const textFixes: Fix[] = finding.fixes.map(({ title, sure, text, start, end }) => ({
    title,
    sure,
    edits: [{ place: placeAt(finding.place.site, { start, end }), text }],
  }));
  return {
    place: finding.place,
    message: rule.message(finding),
    seeAlso: finding.seeAlso.map(({ place, role }) => ({ place, message: role })),
    fixes: [...textFixes, ...(rule.fixes?.(finding, build) ?? [])],
  };
}

function graded(
  { code }: Rule,
  severity: Severity,
  { place, message, seeAlso, fixes }: Pick<Complaint, "place" | "message" | "seeAlso" | "fixes">,
  critical: boolean,
): Graded {
  return {
    complaint: { code, severity, message, place, seeAlso, fixes },
    waivable: !(severity === "error" && critical),
  };
}

function* failed(rule: Rule, build: Build, error: unknown): Generator<Graded> {
  const [site] = build.sites;
  if (site === undefined) return;
  const message = `the rule ${rule.code} failed and has checked nothing: ${error instanceof Error ? error.message : String(error)}`;
  yield graded(
    rule,
    "warning",
    { place: placeAt(site, { start: 0, end: 0 }), message, seeAlso: [], fixes: [] },
    false,
  );
}

/** A waiver in the text, and the item whose complaints it can set aside. */
interface StandingWaiver {
  readonly waiver: WaiverNode;
  readonly site: BlockSite;
  readonly item: ItemNode;
}

function applyWaivers(build: Build, all: readonly Graded[], overrides: SeverityOverrides): Complaints {
  const waivers = waiversIn(build);
  const used = new Set<StandingWaiver>();
  const complaints: Complaint[] = [];
  const waived: Waived[] = [];
  for (const { complaint, waivable } of all) {
    const match = waivers.find(
      ({ waiver, site, item }) =>
        waiver.code === complaint.code && site === complaint.place.site && holds(item, complaint.place),
    );
    if (match !== undefined) used.add(match);
    if (match === undefined || !waivable) complaints.push(complaint);
    else waived.push({ complaint, reason: match.waiver.reason });
  }
  for (const standing of waivers)
    complaints.push(...complaintsOfWaiver(standing, used.has(standing), overrides));
  return { complaints, waived };
}

function complaintsOfWaiver(
  { waiver, site }: StandingWaiver,
  used: boolean,
  overrides: SeverityOverrides,
): Complaint[] {
  const place = placeAt(site, waiver);
  const complaint = (code: string, severity: Severity, message: string): Complaint[] => {
    const override = overrides.get(code);
    return override === "off"
      ? []
      : [{ code, severity: override ?? severity, message, place, seeAlso: [], fixes: [] }];
  };
  if (!used) {
    const known = catalogue.has(waiver.code);
    const why = known
      ? `nothing on this line brings ${waiver.code}`
      : `there is no complaint called ${waiver.code}`;
    return complaint("unused-waiver", "hint", `this waiver is not needed: ${why}`);
  }
  if (waiver.reason !== "") return [];
  return complaint(
    "waiver-without-reason",
    "warning",
    `${waiver.code} is waived without a reason: write it behind a colon`,
  );
}

function waiversIn({ sites }: Build): StandingWaiver[] {
  return sites.flatMap((site) =>
    site.block.items.flatMap((item) => {
      if (item.kind !== "record" && item.kind !== "header") return [];
      return item.comments.flatMap(({ waiver }) => (waiver === undefined ? [] : [{ waiver, site, item }]));
    }),
  );
}

function holds(item: ItemNode, { start }: Place): boolean {
  return item.start <= start && start < item.end;
}

/** One complaint of a code for each place and message. */
function keyOf({ code, place, message }: Complaint): string {
  return `${code} ${place.site.file.path} ${place.site.index} ${place.start} ${message}`;
}

function inTextOrder(a: Complaint, b: Complaint): number {
  return (
    compareCodePoints(a.place.site.file.path, b.place.site.file.path) ||
    a.place.site.index - b.place.site.index ||
    a.place.start - b.place.start ||
    (a.code < b.code ? -1 : a.code > b.code ? 1 : 0)
  );
}
