/** Whether a torque may be taken from the strength class of the bolt. */
import { isCritical, joinedParts } from "./criticality.ts";
import type { FromClassDoubt } from "./finding-data/joints.ts";
import { boltOf } from "./joint-bolt.ts";
import type { Standing } from "./standing.ts";
import type { TreeNode } from "./tree/node.ts";

/** Materials whose thread strips before a bolt of class 8.8 has its preload (common practice, no source). */
const SOFT_THREADS: ReadonlySet<string> = new Set([
  "aluminium",
  "magnesium",
  "brass",
  "bronze",
  "copper",
  "copper_nickel",
]);
/** Materials that give way under the head (common practice, no source). */
const SOFT_PARTS: ReadonlySet<string> = new Set([
  "rubber",
  "plastic",
  "timber",
  "leather",
  "composite",
  "glass",
  "copper",
  "magnesium",
]);

/** Joints that are tightened to something else than the bolt's strength, known by what the author calls them. */
const NAMED = ["pivot", "bearing", "banjo"] as const;

/** The gravest reason against it; undefined where there is none. */
export function classTorqueDoubt(
  standing: Pick<Standing, "definitions" | "names">,
  joint: TreeNode,
): FromClassDoubt | undefined {
  const { definitions } = standing;
  const nut = definitions.one(joint, "nut")?.record.nut;
  const thread = nut?.form === "tapped" ? nut.material : undefined;
  const parts = joinedParts(standing, joint);
  const materials = parts.flatMap((part) => definitions.one(part, "material")?.record.choice ?? []);
  if (thread === "titanium" || materials.includes("titanium")) return { is: "titanium" };
  if (isStainless(standing, joint)) return { is: "stainless" };
  if (thread !== undefined && (SOFT_THREADS.has(thread) || SOFT_PARTS.has(thread)))
    return { is: "soft thread", material: thread };
  const soft = materials.find((material) => SOFT_PARTS.has(material));
  if (soft !== undefined) return { is: "soft part", material: soft };
  const called = [joint, ...parts].map(({ path, title }) => `${path} ${title ?? ""}`.toLowerCase());
  const named = NAMED.find((word) => called.some((text) => text.includes(word)));
  if (named !== undefined) return { is: named };
  return isCritical(standing, joint) ? { is: "critical" } : undefined;
}

function isStainless(standing: Pick<Standing, "definitions">, joint: TreeNode): boolean {
  const friction = standing.definitions.one(joint, "friction")?.record.friction;
  const word = friction?.form === "nut factor" ? friction.friction.word : undefined;
  return boltOf(standing, joint)?.strength?.system === "ISO 3506-1" || word === "stainless";
}
