/** The bolt of a joint: what is stated of it, and how long its thread and its shank are. Lengths in m. */
import { coherentFloat } from "../quantities/coherent.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { computedQuantity, convert } from "../quantities/quantity.ts";
import { unlessFault } from "../quantities/quantity-fault.ts";
import { unit } from "../quantities/unit.ts";
import { threadLength, threadLengthStandard } from "../trade/bolts.ts";
import { printBolt } from "../trade/thread.ts";
import { isInchThread } from "../trade/threads.ts";
import type { Bolt } from "./lowering/values.ts";
import type { Standing } from "./standing.ts";
import type { SourcedRecord, TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions">;

/** The bolt or stud of a joint. */
export function boltOf(standing: Defined, joint: TreeNode): Bolt | undefined {
  return boltRecord(standing, joint)?.record.bolt;
}

/** The record that states the bolt or stud; a bolt counts before a stud. */
export function boltRecord(
  { definitions }: Defined,
  joint: TreeNode,
): SourcedRecord<"bolt"> | SourcedRecord<"stud"> | undefined {
  return definitions.one(joint, "bolt") ?? definitions.one(joint, "stud");
}

/** The bolt or stud of a joint in the words of its record: `4 x M8x1.25x30 class 8.8`. */
export function jointBolt(standing: Defined, joint: TreeNode): string | undefined {
  const bolt = boltOf(standing, joint);
  if (bolt === undefined) return undefined;
  const { count, thread, length, strength } = bolt;
  const size = printBolt(length === undefined ? { thread } : { thread, length });
  return [`${count} x ${size}`, ...(strength === undefined ? [] : [strength.text])].join(" ");
}

/** The part of a bolt that bears no thread, and the standard that it was reckoned by where no one stated it. */
export interface Shank {
  readonly length: number;
  readonly standard: string | undefined;
}

/** Undefined for a stud, which has thread at both ends, and where no length is stated. */
export function shankOf({ definitions }: Defined, joint: TreeNode): Shank | undefined {
  const bolt = definitions.one(joint, "bolt")?.record.bolt;
  if (bolt?.length === undefined) return undefined;
  const stated = definitions.one(joint, "thread_length")?.record.quantity;
  const thread = stated === undefined ? threadLength(bolt.thread, bolt.length) : coherentFloat(stated);
  return {
    length: Math.max(0, bolt.length - thread),
    standard: stated === undefined ? threadLengthStandard(bolt.thread) : undefined,
  };
}

/** What lies under the head and the nut: the grip and all washers; undefined where no grip is stated. */
export function clampedLength({ definitions }: Defined, joint: TreeNode): number | undefined {
  const grip = definitions.one(joint, "grip")?.record.quantity;
  const washers = definitions.one(joint, "washers")?.record;
  if (grip === undefined) return undefined;
  return coherentFloat(grip) + (washers === undefined ? 0 : washers.count * coherentFloat(washers.thickness));
}

/** A length of a joint in the unit that its grip is written in; else in mm, or inches for an inch thread. */
export function lengthAsWritten(standing: Defined, joint: TreeNode, metres: number): Quantity {
  const grip = standing.definitions.one(joint, "grip")?.record.quantity;
  const thread = boltOf(standing, joint)?.thread;
  const written = grip?.unit ?? unit(thread !== undefined && isInchThread(thread) ? "in" : "mm");
  // To the tenth of a micrometre: what is beyond comes of the arithmetic.
  const length = computedQuantity(Number(metres.toFixed(7)), unit("m"), 3);
  return unlessFault(convert(length, written)) ?? length;
}
