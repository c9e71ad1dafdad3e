/** How things stand at one moment of the diary: what the derived verdicts are functions of. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Calculation } from "./calculation.ts";
import type { Gathered, NamedDefinition } from "./definitions.ts";
import type { LostLine } from "./lost-lines.ts";
import type { Names } from "./names.ts";
import type {
  DatedFact,
  GaugeState,
  HoldState,
  JobState,
  JointState,
  PartState,
  Reading,
  SettingState,
  SnagState,
  SupplyState,
  SystemState,
  TestState,
} from "./states.ts";
import type { Definitions } from "./tree/definitions.ts";
import type { TreeNode } from "./tree/node.ts";

export interface Standing {
  readonly gathered: Gathered;
  readonly names: Names;
  /** The definitions in force. */
  readonly definitions: Definitions;
  /** The day of this moment. */
  readonly date: IsoDate;
  readonly parts: ReadonlyMap<TreeNode, PartState>;
  readonly joints: ReadonlyMap<TreeNode, JointState>;
  /** Readings of assemblies, joints, systems and circuits; those of parts are with their items. */
  readonly readings: ReadonlyMap<TreeNode, readonly Reading[]>;
  readonly systems: ReadonlyMap<TreeNode, SystemState>;
  /** The newest of each setting, by thing, then by name and setup. */
  readonly settings: ReadonlyMap<TreeNode, ReadonlyMap<string, SettingState>>;
  /** The newest of each test, by thing, then by name; the thing as a whole under the empty name. */
  readonly tests: ReadonlyMap<TreeNode, ReadonlyMap<string, TestState>>;
  readonly holdTests: ReadonlyMap<NamedDefinition, ReadonlyMap<string, TestState>>;
  readonly snags: ReadonlyMap<string, SnagState>;
  readonly jobs: ReadonlyMap<NamedDefinition, JobState>;
  readonly holds: ReadonlyMap<NamedDefinition, HoldState>;
  readonly gauges: ReadonlyMap<NamedDefinition, GaugeState>;
  readonly supply: ReadonlyMap<TreeNode, SupplyState>;
  /** What the days so far have calculated, by name: the newest of each. */
  readonly calculated: ReadonlyMap<string, Calculation>;
  /** The last fact that disturbed a thing or anything below it. */
  readonly disturbed: ReadonlyMap<TreeNode, DatedFact>;
  /** Lines that could not be read, or not in full. */
  readonly lost: readonly LostLine[];
}

/** The tables of a standing. */
export const TABLES = [
  "parts",
  "joints",
  "readings",
  "systems",
  "settings",
  "tests",
  "holdTests",
  "snags",
  "jobs",
  "holds",
  "gauges",
  "supply",
  "calculated",
  "disturbed",
] as const satisfies readonly (keyof Standing)[];

export type TableName = (typeof TABLES)[number];
