/** How what was noticed becomes a complaint: the rule of its code says it and grades it. */
import type { Build } from "../build/build.ts";
import type { Finding } from "../build/finding.ts";
import { Remembered } from "../build/remembered.ts";
import type { BlockSite } from "../build/source.ts";
import { placeAt } from "../build/source.ts";
import type { Complaint } from "./complaint.ts";
import type { CheckingRule, FindingRule, Fix, Notice, Severity } from "./rule.ts";

/** Findings last from one build to the next, and so do their words. */
const worded = new WeakMap<Finding, Complaint>();

/** @throws what the rule throws */
export function wordFinding(rule: FindingRule, finding: Finding): Complaint {
  const known = worded.get(finding);
  if (known !== undefined) return known;
  const complaint = wordAfresh(rule, finding);
  worded.set(finding, complaint);
  return complaint;
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

/**
 * What a rule that looks at the build itself complains of.
 *
 * @throws what the rule throws
 */
export function complaintsOfCheck(rule: CheckingRule, build: Build): Complaint[] {
  const notices = rule.check(build);
  return told.of(notices, [rule], () => [...notices].map((notice) => wordNotice(rule, notice)));
}

/** What a rule notices again is one list as long as it is kept (`KeptOfEach`), and told in one list too. */
const told = new Remembered<Iterable<Notice>, Complaint[]>();

function wordNotice({ code, severity: own }: CheckingRule, notice: Notice): Complaint {
  const { place, message, severity = own, seeAlso = [], critical = false, fixes = [] } = notice;
  return graded({ code, severity, message, place, seeAlso, fixes: () => fixes }, critical);
}

/** Goes by the rule's own severity: another one asked for changes what is shown, not what may be waived. */
function graded(complaint: Omit<Complaint, "waivable">, critical: boolean): Complaint {
  return { ...complaint, waivable: !(complaint.severity === "error" && critical) };
}

/** What there is to say of a rule that threw, at the start of the build. */
export function wordFailure(code: string, site: BlockSite, error: unknown): Complaint {
  const reason = error instanceof Error ? error.message : String(error);
  const message = `the rule ${code} failed and has checked nothing: ${reason}`;
  const place = placeAt(site, { start: 0, end: 0 });
  return { code, severity: "warning", message, place, seeAlso: [], fixes: () => [], waivable: true };
}
