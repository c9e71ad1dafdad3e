/** Complaints: findings put into words by their rules, graded, waived or not, in the order of the text. */
import type { ItemNode, WaiverNode } from "../../grammar/syntax.ts";
import type { Build } from "../build/build.ts";
import type { Finding } from "../build/finding.ts";
import { listUnder } from "../build/list-under.ts";
import { Remembered } from "../build/remembered.ts";
import type { BlockSite, Place } from "../build/source.ts";
import { placeAt } from "../build/source.ts";
import { catalogue } from "./catalogue.ts";
import type { CheckingRule, FindingRule, Fix, Notice, Rule, Severity, WaiverRule } from "./rule.ts";

export interface Complaint {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  readonly seeAlso: readonly { readonly place: Place; readonly message: string }[];
  /** Its mends in the build that it is of. */
  readonly fixes: (build: Build) => readonly Fix[];
  /** False for an error on something whose failure can hurt: a reason beside it does not set it aside. */
  readonly waivable: boolean;
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

const NOTHING_SET: SeverityOverrides = new Map();

/** @param overrides the same object as long as the same is set */
export function complaintsOf(build: Build, overrides = NOTHING_SET): Complaints {
  const bySite = gradedBySite(build, overrides);
  const complaints: Complaint[] = [];
  const waived: Waived[] = [];
  for (const site of build.sites) {
    const graded = bySite.get(site) ?? NONE;
    if (graded.length === 0 && waiversIn(site).length === 0) continue;
    const inputs = [site.block, overrides, ...graded];
    const inBlock = inBlocks.of(site, inputs, () => settle(site, graded, overrides));
    complaints.push(...inBlock.complaints);
    waived.push(...inBlock.waived);
  }
  return { complaints, waived };
}

const NONE: readonly Complaint[] = [];

/** What all rules have to complain of, by the block where it stands. */
function gradedBySite(
  build: Build,
  overrides: SeverityOverrides,
): ReadonlyMap<BlockSite, readonly Complaint[]> {
  const findings = findingsByCode(build);
  const bySite = new Map<BlockSite, Complaint[]>();
  for (const rule of catalogue.values()) {
    if (overrides.get(rule.code) === "off") continue;
    for (const complaint of complaintsOfRule(rule, build, findings.get(rule.code) ?? [])) {
      listUnder(bySite, complaint.place.site, complaint);
    }
  }
  return bySite;
}

/** As long as a block has the same complaints, the same is made of them. */
const inBlocks = new Remembered<BlockSite, Complaints>();

/** The complaints of one block, each once, waived or not, graded as asked, in the order of the text. */
function settle(site: BlockSite, graded: readonly Complaint[], overrides: SeverityOverrides): Complaints {
  const unique = [...new Map(graded.map((one) => [keyOf(one), one])).values()];
  const { standing, waived, unused } = applyWaivers(site, unique);
  const complaints = [...standing, ...complaintsOfWaivers(unused, overrides)].map((complaint) => {
    const severity = overrides.get(complaint.code);
    return severity === undefined || severity === "off" ? complaint : { ...complaint, severity };
  });
  return { complaints: complaints.sort(inBlockOrder), waived };
}

function findingsByCode({ findingLists }: Build): ReadonlyMap<string, readonly Finding[]> {
  const byCode = new Map<string, Finding[]>();
  for (const list of findingLists) for (const finding of list) listUnder(byCode, finding.code, finding);
  return byCode;
}

function complaintsOfRule(rule: Rule, build: Build, findings: readonly Finding[]): readonly Complaint[] {
  // One rule that throws must not take the others with it.
  try {
    switch (rule.of) {
      case "finding":
        return findings.map((finding) => wordFinding(rule, finding));
      case "check":
        return [...rule.check(build)].map((notice) => wordNotice(rule, notice));
      case "waiver":
        return [];
    }
  } catch (error) {
    return failed(rule, build, error);
  }
}

/** Findings last from one build to the next, and so do their words. */
const worded = new WeakMap<Finding, Complaint>();

function wordFinding(rule: FindingRule, finding: Finding): Complaint {
  const known = worded.get(finding) ?? wordAfresh(rule, finding);
  worded.set(finding, known);
  return known;
}

function wordAfresh(rule: FindingRule, finding: Finding): Complaint {
  const { place, seeAlso, critical, standing } = finding;
  const own = rule.grade?.(finding) ?? rule.severity;
  const severity = standing === "past" ? mildest(own) : own;
  return graded(
    {
      code: rule.code,
      severity,
      message: severity === own ? rule.message(finding) : `${rule.message(finding)} (${ANSWERED})`,
      place,
      seeAlso: seeAlso.map((related) => ({ place: related.place, message: related.role })),
      fixes: (build) => [...textFixesOf(finding), ...(rule.fixes?.(finding, build) ?? [])],
    },
    critical,
  );
}

function textFixesOf({ fixes, place: { site } }: Finding): readonly Fix[] {
  return fixes.map(({ title, sure, text, start, end }) => ({
    title,
    sure,
    edits: [{ place: placeAt(site, { start, end }), text }],
  }));
}

/** Why a complaint that would weigh more is information: a newer reading or item, a decision, or the fitting itself. */
const ANSWERED = "only information: another line answers it";

/** An overtaken complaint is information, or a hint where it was one. */
function mildest(severity: Severity): Severity {
  return severity === "hint" ? "hint" : "information";
}

function wordNotice({ code, severity: own }: CheckingRule, notice: Notice): Complaint {
  const { place, message, severity = own, seeAlso = [], critical = false, fixes = [] } = notice;
  return graded({ code, severity, message, place, seeAlso, fixes: () => fixes }, critical);
}

/** Goes by the rule's own severity: another one asked for changes what is shown, not what may be waived. */
function graded(complaint: Omit<Complaint, "waivable">, critical: boolean): Complaint {
  return { ...complaint, waivable: !(complaint.severity === "error" && critical) };
}

function failed({ code }: Rule, build: Build, error: unknown): readonly Complaint[] {
  const [site] = build.sites;
  if (site === undefined) return [];
  const reason = error instanceof Error ? error.message : String(error);
  const message = `the rule ${code} failed and has checked nothing: ${reason}`;
  const place = placeAt(site, { start: 0, end: 0 });
  return [graded({ code, severity: "warning", message, place, seeAlso: [], fixes: () => [] }, false)];
}

/** A waiver in the text, and the item whose complaints it can set aside. */
interface StandingWaiver {
  readonly waiver: WaiverNode;
  readonly site: BlockSite;
  readonly item: ItemNode;
}

interface AfterWaivers {
  readonly standing: readonly Complaint[];
  readonly waived: readonly Waived[];
  readonly unused: readonly StandingWaiver[];
}

function applyWaivers(site: BlockSite, all: readonly Complaint[]): AfterWaivers {
  const inBlock = waiversIn(site);
  const used = new Set<StandingWaiver>();
  const standing: Complaint[] = [];
  const waived: Waived[] = [];
  for (const complaint of all) {
    const { code, place, waivable } = complaint;
    const match = inBlock.find(
      ({ waiver, item }) => waiver.code === code && item.start <= place.start && place.start < item.end,
    );
    if (match !== undefined) used.add(match);
    if (match === undefined) standing.push(complaint);
    else if (waivable) waived.push({ complaint, reason: match.waiver.reason });
    else standing.push({ ...complaint, message: `${complaint.message} (${NOT_WAIVED})` });
  }
  const unused = inBlock.filter((waiver) => !used.has(waiver));
  return { standing, waived, unused };
}

const NOT_WAIVED = "not waived: an error on something safety-critical stands until it is put right";

function complaintsOfWaivers(unused: readonly StandingWaiver[], overrides: SeverityOverrides): Complaint[] {
  const rules = [...catalogue.values()].filter(
    (rule): rule is WaiverRule => rule.of === "waiver" && overrides.get(rule.code) !== "off",
  );
  return rules.flatMap(({ code, severity, message }) =>
    unused.map(({ waiver, site }) => ({
      code,
      severity,
      message: message(waiver, catalogue.has(waiver.code)),
      place: placeAt(site, waiver),
      seeAlso: [],
      fixes: () => [withoutWaiver(site, waiver)],
      waivable: false,
    })),
  );
}

/** The comment taken out, with the spaces before it. */
function withoutWaiver(site: BlockSite, { start, end }: WaiverNode): Fix {
  const spaces = /(?<![ \t])[ \t]*$/.exec(site.block.text.slice(0, start))?.[0].length ?? 0;
  const place = placeAt(site, { start: start - spaces, end });
  return { title: "Take the waiver out", sure: false, edits: [{ place, text: "" }] };
}

const waivers = new Remembered<BlockSite, readonly StandingWaiver[]>();

function waiversIn(site: BlockSite): readonly StandingWaiver[] {
  return waivers.of(site, [site.block], () =>
    site.block.items.flatMap((item) =>
      item.kind === "record" || item.kind === "header"
        ? item.comments.flatMap(({ waiver }) => (waiver === undefined ? [] : [{ waiver, item, site }]))
        : [],
    ),
  );
}

/** One complaint of a code for each place and message. */
function keyOf({ code, place, message }: Complaint): string {
  return `${code} ${place.start} ${message}`;
}

function inBlockOrder(a: Complaint, b: Complaint): number {
  return a.place.start - b.place.start || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);
}
