/** The facts of a day block: what can have happened, and how it is told. */
import { JOINT_FACTS } from "./joint-facts.ts";
import { PART_FACTS } from "./part-facts.ts";
import type { RecordEntry } from "./shape.ts";
import { SUPPLY_FACTS } from "./supply-facts.ts";
import { WORK_FACTS } from "./work-facts.ts";

export const FACTS: readonly RecordEntry[] = [...PART_FACTS, ...SUPPLY_FACTS, ...JOINT_FACTS, ...WORK_FACTS];
