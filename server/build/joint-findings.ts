/**
 * What is wrong with joints once the diary is read: as they are specified, at the record that says so; and what was not
 * done, at the fact that made it due, once something leans on the joint.
 */
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import { isCritical, joinedParts } from "./criticality.ts";
import type { Finding, RelatedPlace } from "./finding.ts";
import type { JointFindings } from "./finding-data/joints.ts";
import type { FindingData } from "./finding-data.ts";
import { awaitedBy, awaitingOf } from "./joint-awaiting.ts";
import type { JointFault } from "./joint-faults.ts";
import { faultsOf } from "./joint-faults.ts";
import { KeptOfAll, KeptOfEach } from "./kept-of-each.ts";
import { later } from "./later.ts";
import type { Leaning } from "./leaning.ts";
import { leaningPlace } from "./leaning.ts";
import type { Review } from "./review.ts";
import { securing } from "./securing.ts";
import type { Place } from "./source.ts";
import { lineOf, placeAt } from "./source.ts";
import type { DatedFact } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";
import type { Wanting } from "./wanting.ts";
import { whereabouts } from "./whereabouts.ts";

const ofFaults = new KeptOfAll<readonly Finding[]>();
const ofAbsences = new KeptOfEach<TreeNode, Finding>();

export function complaintsOfJoints(review: Review): readonly (readonly Finding[])[] {
  const { tree } = review.gathered;
  return [
    ofFaults.complaints(review, [], complainOfFaults),
    ofAbsences.complaints(review, tree.ofKind("joint"), [], complainOfAbsences),
  ];
}

/** Joints copied from one definition have one mistake: it is said of the first, and weighs as the gravest of them. */
function complainOfFaults(review: Review): void {
  const found = new Map<string, { fault: JointFault; joint: TreeNode; critical: boolean }>();
  for (const joint of review.gathered.tree.ofKind("joint")) {
    for (const fault of faultsOf(review, joint)) {
      if (fault.place === undefined || isOfSource(review, joint, fault)) continue;
      const key = keyOf(fault, fault.place);
      const critical = (found.get(key)?.critical ?? false) || isCritical(review, joint);
      const first = found.get(key);
      found.set(key, first === undefined ? { fault, joint, critical } : { ...first, critical });
    }
  }
  for (const { fault, joint, critical } of found.values()) {
    if (fault.place !== undefined)
      review.complainOf(joint, fault.code, fault.place, fault.data, { seeAlso: fault.seeAlso, critical });
  }
}

/** What a copy does not say because its source does not say it either is the source's. */
function isOfSource(review: Review, joint: TreeNode, fault: JointFault): boolean {
  const source = joint.copyOf === undefined ? undefined : review.gathered.tree.at(joint.copyOf);
  if (source?.kind !== "joint" || fault.place !== joint.header) return false;
  return faultsOf(review, source).some(({ code }) => code === fault.code);
}

function keyOf({ code, data }: JointFault, place: Place): string {
  const { joint: _, ...rest } = data;
  return `${code} ${place.site.file.path}:${lineOf(place)}:${place.start} ${JSON.stringify(rest, asWritten)}`;
}

/** Quantities are the same where they read the same. */
function asWritten(_: string, value: unknown): unknown {
  const isQuantity = typeof value === "object" && value !== null && "unit" in value && "dimension" in value;
  return isQuantity ? formatQuantity(value as Quantity) : value;
}

/** What was not done. Until something leans on it, it is still to be done, and no more. */
function complainOfAbsences(review: Review, joint: TreeNode): void {
  for (const want of securing(review, joint).wanting)
    complainOfAbsence(review, joint, want, review.leaningOn(joint, want.since, "joints"));
}

function complainOfAbsence(
  review: Review,
  joint: TreeNode,
  want: Wanting,
  leaning: Leaning | undefined,
): void {
  const related = leaning === undefined ? [] : [leaningPlace(leaning)];
  switch (want.code) {
    case "joint-open":
      complainOfWaiting(review, joint, "open", want, leaning);
      break;
    case "joint-nipped":
      complainOfWaiting(review, joint, STATES[want.by], want, leaning);
      break;
    case "joint-not-set":
      if (want.verdict === "none") complainOfWaiting(review, joint, "unset", want, leaning);
      break;
    case "lock-missing":
      // A lock that is there but not as asked is wrong at once.
      if (leaning !== undefined || want.lack.is !== "not locked")
        complain(review, joint, "lock-missing", want, { joint: joint.path, ...want.lack }, [
          ...recordPlace(review, joint, "lock"),
          ...related,
        ]);
      break;
    case "mark-missing":
      if (leaning !== undefined) complain(review, joint, want.code, want, { joint: joint.path }, related);
      break;
    case "not-seen":
      if (leaning !== undefined) complain(review, joint, want.code, want, { what: joint.path }, related);
      break;
    case "recheck-due":
      if (leaning !== undefined)
        complain(review, joint, want.code, want, { joint: joint.path, ...want.recheck }, related);
      break;
    default:
    // The others were complained of at the fact itself, or are only still to be done.
  }
}

function complain<C extends keyof JointFindings>(
  review: Review,
  joint: TreeNode,
  code: C,
  { place }: Pick<Wanting, "place">,
  data: JointFindings[C],
  seeAlso: readonly RelatedPlace[],
): void {
  if (place !== undefined) review.complainOf(joint, code, place, data as FindingData[C], { seeAlso });
}

/**
 * Not tightened. Waiting for a job or hold point it is in order, but for running, which does not wait; after that it
 * is due, and a complaint once something leans on the joint, at the fact that ended the wait.
 */
function complainOfWaiting(
  review: Review,
  joint: TreeNode,
  state: JointFindings["final-torque-waiting"]["state"],
  want: Pick<Wanting, "place" | "since">,
  leaning: Leaning | undefined,
): void {
  const awaited = awaitedBy(review, joint);
  const met = lastMet(review, joint);
  const due =
    leaning !== undefined && (awaited === undefined || leaning.is === "ran") && isTogether(review, joint);
  const waits = state === "nipped" && awaitingOf(review, joint).length > 0;
  if (!due && !waits) return;
  const since = due && awaited === undefined ? later(want.since, met) : want.since;
  const data: JointFindings["final-torque-waiting"] = {
    joint: joint.path,
    state,
    awaited: awaited && { kind: awaited.kind, name: awaited.definition.name },
    due,
  };
  const related = [...recordPlace(review, joint, "after"), ...(due ? [leaningPlace(leaning)] : [])];
  const place = since?.place ?? want.place;
  complain(review, joint, "final-torque-waiting", { place }, data, related);
}

const STATES = { nipped: "nipped", torqued: "stage", rechecked: "moved" } as const;

/** A joint with a part still off is no joint yet: the part is what is missing. */
function isTogether(review: Review, joint: TreeNode): boolean {
  return joinedParts(review, joint).every((part) => whereabouts(review, part)?.place === "on");
}

function lastMet(review: Review, joint: TreeNode): DatedFact | undefined {
  return awaitingOf(review, joint)
    .map(({ met }) => met)
    .reduce<DatedFact | undefined>((last, met) => later(last, met), undefined);
}

function recordPlace(review: Review, joint: TreeNode, word: "lock" | "after"): RelatedPlace[] {
  const sourced = review.definitions.one(joint, word);
  return sourced === undefined ? [] : [{ place: placeAt(sourced.site, sourced.record.at), role: word }];
}
