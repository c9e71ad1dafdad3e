/** How a joint is locked, and what of that is missing. */
import type { Lock } from "./lowering/definition-record.ts";
import type { Standing } from "./standing.ts";
import type { JointState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";

export type LockLack =
  | { readonly is: "not locked"; readonly lock: Lock }
  | { readonly is: "another"; readonly lock: Lock; readonly found: Lock }
  /** Threadlocker that did not go on with the final torque. */
  | { readonly is: "another day"; readonly lock: Lock };

/** Locks that need no word in the diary: none, and a nut that is its own lock. */
const SELF_EVIDENT: ReadonlySet<Lock> = new Set(["none", "self_locking"]);

/** What a joint lacks of the lock that it asks for; undefined where it asks for none or has it. */
export function lockLack(
  { definitions }: Pick<Standing, "definitions">,
  { node, locked }: JointState,
): LockLack | undefined {
  const lock = definitions.one(node, "lock")?.record.choice;
  if (lock === undefined || SELF_EVIDENT.has(lock)) return undefined;
  if (locked === undefined) return { is: "not locked", lock };
  if (locked.lock !== lock) return { is: "another", lock, found: locked.lock };
  return locked.holds ? undefined : { is: "another day", lock };
}

/** Whether a joint is held by a self-locking nut: one that has been off is not the nut it was. */
export function isSelfLocking({ definitions }: Pick<Standing, "definitions">, joint: TreeNode): boolean {
  return (
    definitions.one(joint, "nut")?.record.nut.form === "self_locking" ||
    definitions.one(joint, "lock")?.record.choice === "self_locking"
  );
}
