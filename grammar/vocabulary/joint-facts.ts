/** Facts about joints, fluid systems, settings and tests. */
import { fact } from "./entry.ts";
import type { Element, RecordEntry } from "./shape.ts";
import {
  characteristic,
  choice,
  clause,
  element,
  flag,
  newName,
  optional,
  quantity,
  reference,
  references,
  required,
  string,
  TREE_KINDS,
} from "./shape.ts";
import { LOCKS } from "./words.ts";

const JOINTS: Element = element("what", references("joint", "assembly"));
const SYSTEMS: Element = element("what", references("system", "assembly"));
const gauge = clause("with", "gauge", reference("gauge"));

const JOINT_WORK: readonly RecordEntry[] = [
  fact("nipped", [JOINTS], {
    help: "Run up and just pinched, not torqued.",
    example: "nipped: front.left.disc_bolts",
    bad: "nipped: front.left.disc",
    code: "reference-kind",
  }),
  fact("torqued", [JOINTS, element("torque", quantity("torque"))], {
    help: "Finally tightened to a torque. New hardware is spent as the joint's `uses` say.",
    example: "torqued: front.left.disc_bolts 23 N.m on new hardware with wrench60",
    bad: "torqued: front.left.disc_bolts 23 nm on new hardware with wrench60",
    code: "wrong-dimension",
    clauses: [clause("then", "then", quantity("any")), flag("newHardware", "on", "new", "hardware"), gauge],
  }),
  fact("tightened", [JOINTS], {
    help: "Tightened by feel, where the torque is `by hand`.",
    example: "tightened: engine.sump_studs",
    bad: "tightened: engine.sump_studs tight",
    code: "unreadable-value",
  }),
  fact("rechecked", [JOINTS, optional("torque", quantity("torque"))], {
    help: "Checked again. `held` keeps lock and mark, `moved` voids them.",
    example: "rechecked: front.left.disc_bolts 23 N.m held with wrench60",
    bad: "rechecked: front.left.disc_bolts 23 N.m hold with wrench60",
    code: "unreadable-value",
    clauses: [
      { ...flag("held", "held"), insteadOf: "outcome" },
      { ...flag("moved", "moved"), insteadOf: "outcome" },
      gauge,
    ],
  }),
  fact("locked", [JOINTS], {
    help: "Locked, and with what.",
    example: "locked: front.left.balljoint_nut with split_pin",
    bad: "locked: front.left.balljoint_nut with splitpin",
    code: "unreadable-value",
    clauses: [clause("with", "lock", choice(...LOCKS))],
  }),
  fact("marked", [JOINTS], {
    help: "Given its witness mark.",
    example: "marked: front.left.disc_bolts",
    bad: "marked: front.left.disc_bolt",
    code: "unknown-reference",
  }),
  fact("loosened", [JOINTS], {
    help: "Loosened: lock, mark and torque are void.",
    example: "loosened: front.left.disc_bolts",
    bad: "loosend: front.left.disc_bolts",
    code: "unknown-record",
  }),
  fact("seen", [element("what", references(...TREE_KINDS))], {
    help: "Seen by a second pair of eyes: not those of the one who did it.",
    example: 'seen: front.left.disc_bolts by "KT"',
    bad: "seen: front.left.disc_bolts",
    code: "missing-value",
    clauses: [required("by", "by", string)],
  }),
];

const FLUIDS: readonly RecordEntry[] = [
  fact("opened", [SYSTEMS], {
    help: "A fluid system was opened.",
    example: "opened: brakes.front",
    bad: "opened: brakes.front,",
    code: "unreadable-value",
  }),
  fact("drained", [SYSTEMS], {
    help: "Drained.",
    example: "drained: brakes.front",
    bad: "drained: brakes/front",
    code: "unreadable-value",
  }),
  fact("filled", [SYSTEMS, optional("volume", quantity("volume"))], {
    help: "Filled, with how much of what.",
    example: 'filled: brakes.front 0.5 l with "DOT 4"',
    bad: "filled: brakes.front 0.5 l with DOT 4",
    code: "unreadable-value",
    clauses: [clause("with", "fluid", string)],
    choice: "The volume may be left out.",
  }),
  fact("bled", [SYSTEMS], {
    help: "Bled.",
    example: "bled: brakes.front",
    bad: "bled:",
    code: "missing-value",
    choice: "Bleeding without a filling before it counts: who bled it had it filled.",
  }),
  fact("proved", [SYSTEMS], {
    help: "Held pressure without a leak.",
    example: "proved: brakes.front at 70 bar for 2 min",
    bad: "proved: brakes.front at 70 bar for two min",
    code: "unreadable-value",
    clauses: [clause("at", "pressure", quantity("pressure")), clause("for", "time", quantity("time"))],
  }),
];

const SETTING_AND_RUNNING: readonly RecordEntry[] = [
  fact(
    "set",
    [
      element("what", { value: "reference", to: [...TREE_KINDS], member: true }),
      optional("name", characteristic),
      element("value", quantity("any")),
    ],
    {
      help: "A setting as adjusted. `REF.NAME` may be written too.",
      example: "set: front.left camber -1 deg 30 arcmin for driver_up",
      bad: "set: front.left camber for driver_up",
      code: "missing-value",
      clauses: [clause("for", "setup", reference("setup")), gauge],
    },
  ),
  fact(
    "tested",
    [
      element("what", references(...TREE_KINDS, "hold")),
      optional("name", newName),
      element("result", choice("pass", "fail")),
    ],
    {
      help: "A test of it, or the thing as a whole.",
      choice:
        "The name is one of the test: records of the thing or of something below it; a circuit that lists none is answered by a test of any name.",
      example: "tested: front.left.hub free_turning pass",
      bad: "tested: front.left.hub free_turning",
      code: "missing-value",
    },
  ),
  fact(
    "ran",
    [element("what", reference(...TREE_KINDS)), element("running", { value: "sequence", of: "any" })],
    {
      help: "Running time: counts up lives and rechecks below it.",
      example: "ran: vehicle 0.2 h 4 km 5 run",
      bad: "ran: vehicle a little",
      code: "unreadable-value",
      choice: "Time, distance and number of runs may stand in any order.",
    },
  ),
];

export const JOINT_FACTS: readonly RecordEntry[] = [...JOINT_WORK, ...FLUIDS, ...SETTING_AND_RUNNING];
