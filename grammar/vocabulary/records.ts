/** The records of the blocks that define: what may stand in each, and its shape. */
import { BUILD_RECORDS } from "./build-records.ts";
import { JOINT_RECORDS } from "./joint-records.ts";
import { PLAN_RECORDS } from "./plan-records.ts";
import type { RecordEntry } from "./shape.ts";
import { SYSTEM_RECORDS } from "./system-records.ts";
import { TREE_RECORDS } from "./tree-records.ts";

export const RECORDS: readonly RecordEntry[] = [
  ...BUILD_RECORDS,
  ...TREE_RECORDS,
  ...JOINT_RECORDS,
  ...SYSTEM_RECORDS,
  ...PLAN_RECORDS,
];
