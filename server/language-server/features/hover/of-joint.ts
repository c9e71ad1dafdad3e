/** What is told of a joint: its torque, and what that makes of the bolt, with the working. */
import { boltOf, lengthAsWritten } from "../../../build/joint-bolt.ts";
import type { Loading } from "../../../build/joint-loading.ts";
import { loadingOf } from "../../../build/joint-loading.ts";
import { engagementOf, protrusionOf } from "../../../build/joint-reach.ts";
import { torqueLimits } from "../../../build/joint-torque.ts";
import type { Bolt } from "../../../build/lowering/values.ts";
import type { Standing } from "../../../build/standing.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { computedQuantity, formatQuantity } from "../../../quantities/quantity.ts";
import { unit } from "../../../quantities/unit.ts";
import { sayLimits } from "../../../reports/parts.ts";
import { stressArea } from "../../../trade/threads.ts";
import { escaped, list, paragraphs } from "../../markdown.ts";
import { inOtherUnits } from "../../words/other-units.ts";

export function describeJoint(standing: Standing, joint: TreeNode): string {
  const lines = [
    torque(standing, joint),
    ...loading(standing, joint),
    reach(standing, joint),
    lock(standing, joint),
  ].filter((line) => line !== undefined);
  return paragraphs(list(lines.map(escaped)), lines.length === 0 ? undefined : CAUTION);
}

const CAUTION =
  "*Figures are computed from what is written here. Where a failure can hurt, the maker’s manual decides.*";

function torque(standing: Standing, joint: TreeNode): string | undefined {
  const limits = torqueLimits(standing, joint);
  const spec = standing.definitions.one(joint, "torque")?.record.torque;
  if (limits === undefined) return spec?.form === "by hand" ? "tightened by hand" : undefined;
  const target = limits.nominal ?? limits.upper ?? limits.lower;
  const others = target === undefined ? [] : inOtherUnits(target);
  const nominal = limits.nominal === undefined ? "" : `${formatQuantity(limits.nominal)}, `;
  const aside = others.length === 0 ? "" : ` (${others.join(", ")})`;
  return `torque ${nominal}${sayLimits(limits)}${aside}`;
}

function loading(standing: Standing, joint: TreeNode): readonly string[] {
  const bolt = boltOf(standing, joint);
  const found = loadingOf(standing, joint);
  if (bolt === undefined || found === undefined) return [];
  const assumed = found.assumed ? ", assumed because none is stated" : "";
  const bolts = `${bolt.thread.designation}${found.proof === undefined ? "" : ` ${found.proof.strength}`}`;
  return [
    `preload ${newtons(found.preload)}${share(found, found.preload)} in each ${bolts}; friction ${found.friction}${assumed}`,
    `at most ${newtons(found.highest)}${share(found, found.highest)}: ${formatQuantity(found.torque)} at the least friction`,
    found.proof === undefined
      ? "of class unknown, so no share of its proof load can be told"
      : `proof load ${newtons(found.proof.load)}: proof stress of ${found.proof.strength} on the stress area of ${bolt.thread.designation}, ${area(bolt)}`,
  ];
}

function share({ proof }: Loading, force: number): string {
  return proof === undefined ? "" : `, ${Math.round((force / proof.load) * 100)} % of proof`;
}

function newtons(force: number): string {
  return formatQuantity(computedQuantity(force / 1000, unit("kN"), 3));
}

function area({ thread }: Bolt): string {
  return formatQuantity(computedQuantity(stressArea(thread) * 1e6, unit("mm2"), 3));
}

function reach(standing: Standing, joint: TreeNode): string | undefined {
  const length = (metres: number) => formatQuantity(lengthAsWritten(standing, joint, metres));
  const past = protrusionOf(standing, joint);
  if (past !== undefined) {
    const pitches = `${Number(past.pitches.toFixed(1))} pitches`;
    const height = past.heightStated ? "" : "; the nut’s height is the usual one";
    return `${past.atMost ? "at most " : ""}${length(past.length)} past the nut, ${pitches} where ${past.neededPitches} are asked${height}`;
  }
  const inHole = engagementOf(standing, joint);
  if (inHole?.reach === undefined) return undefined;
  const { needed } = inHole;
  const asked = needed?.is === "length" ? `, where ${length(needed.length)} is asked (${needed.why})` : "";
  return `${length(inHole.reach)} into the hole${asked}`;
}

function lock({ definitions }: Standing, joint: TreeNode): string | undefined {
  const lockWord = definitions.one(joint, "lock")?.record.choice;
  const mark = definitions.one(joint, "mark")?.record.yes === true;
  const words = [
    lockWord === undefined || lockWord === "none" ? undefined : `lock ${lockWord.replaceAll("_", " ")}`,
    mark ? "witness mark" : undefined,
  ].filter((word) => word !== undefined);
  return words.length === 0 ? undefined : words.join(", ");
}
