/** A joint that is set not by torque but by a measurement: the newest one, and what it proves. */
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import type { Verdict } from "../quantities/verdict.ts";
import { judge } from "../quantities/verdict.ts";
import { judgeReading, nearShare } from "./judgement.ts";
import { listUnder } from "./list-under.ts";
import { madeOnce } from "./remembered.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact, JointState, Reading } from "./states.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

/** A measurement, or a setting as adjusted. */
export interface JointSetting {
  readonly node: TreeNode;
  readonly name: string;
  readonly fact: DatedFact<"measured" | "set">;
  /** Undefined where no limit of that name can judge it. */
  readonly verdict: Verdict | undefined;
}

export interface SetBy {
  readonly node: TreeNode;
  readonly name: string;
  readonly sourced: SourcedRecord<"set_by">;
}

/** What a joint is set by; undefined where it is set by torque, or the reference means nothing. */
export function setBy(
  { definitions, names }: Pick<Standing, "definitions" | "names">,
  joint: TreeNode,
): SetBy | undefined {
  const sourced = definitions.one(joint, "set_by");
  if (sourced === undefined) return undefined;
  const { node, name } = names.member(definitions, sourced.record.reference, sourced.turns);
  return node && { node, name, sourced };
}

/** The newest measurement or setting of what a joint is set by, taken since it was opened or run up last. */
export function newestOf(
  standing: Pick<Standing, "definitions" | "gathered" | "names" | "parts" | "readings" | "settings">,
  { node: joint, opened, nipped }: JointState,
): JointSetting | undefined {
  const by = setBy(standing, joint);
  if (by === undefined) return undefined;
  const { node, name } = by;
  const readings = standing.parts.get(node)?.item.readings ?? standing.readings.get(node) ?? [];
  const measured = readings.findLast((reading) => reading.name === name);
  const set = [...(standing.settings.get(node)?.values() ?? [])].findLast((one) => one.name === name);
  const since = Math.max(opened?.order ?? -1, nipped?.order ?? -1);
  const newer =
    set !== undefined && (measured === undefined || set.fact.order > measured.fact.order)
      ? { fact: set.fact, verdict: judgeSetting(standing, node, name, set.value) }
      : measured && { fact: measured.fact, verdict: judgeMeasured(standing, measured) };
  return newer === undefined || newer.fact.order < since ? undefined : { node, name, ...newer };
}

/** The verdict of the least margin, of several limits. */
function judgeMeasured(
  standing: Pick<Standing, "definitions" | "gathered">,
  reading: Reading,
): Verdict | undefined {
  const verdicts = judgeReading(standing, reading).map(({ verdict }) => verdict);
  return (
    verdicts.find(({ verdict }) => verdict === "outside") ??
    verdicts.find(({ verdict }) => verdict === "uncertain") ??
    verdicts[0]
  );
}

function judgeSetting(
  standing: Pick<Standing, "definitions" | "gathered">,
  node: TreeNode,
  name: string,
  value: Quantity,
): Verdict | undefined {
  const wanted: Limits | undefined = standing.definitions
    .all(node, "setting")
    .findLast(({ record }) => record.name === name)?.record.limits;
  return unlessFault(wanted && judge([value], undefined, wanted, nearShare(standing)));
}

const SET_BY = new AspectSet("set_by");
const remembered = new WeakMap<object, ReadonlyMap<TreeNode, readonly SetJoint[]>>();

interface SetJoint {
  readonly joint: TreeNode;
  readonly name: string;
}

/** The joints that are set by a characteristic of a thing, with the definitions in force. */
export function jointsSetBy(
  standing: Pick<Standing, "definitions" | "gathered" | "names">,
  node: TreeNode,
  name: string,
): readonly TreeNode[] {
  const { definitions } = standing;
  const known = madeOnce(remembered, definitions.since(SET_BY), () => everySetJoint(standing));
  if (!definitions.characteristics(node).includes(name)) return [];
  return (known.get(node) ?? []).flatMap((set) => (set.name === name ? [set.joint] : []));
}

/** By the thing that is named, whether or not it has a characteristic of that name. */
function everySetJoint({
  definitions,
  names,
  gathered,
}: Pick<Standing, "definitions" | "gathered" | "names">): ReadonlyMap<TreeNode, readonly SetJoint[]> {
  const found = new Map<TreeNode, SetJoint[]>();
  for (const joint of gathered.tree.ofKind("joint")) {
    const sourced = definitions.one(joint, "set_by");
    const by = sourced && names.memberOf(sourced.record.reference, sourced.turns);
    if (by?.node !== undefined) listUnder(found, by.node, { joint, name: by.name });
  }
  return found;
}
