/** The records of the blocks that define: what may stand in each, and its shape. */
import type { BlockWord } from "../syntax.ts";
import type { Clause, Element, RecordEntry, Shape } from "./shape.ts";
import {
  characteristic,
  choice,
  choices,
  clause,
  date,
  either,
  element,
  flag,
  limits,
  member,
  money,
  newName,
  number,
  optional,
  quantities,
  quantity,
  reference,
  references,
  required,
  string,
  TREE_KINDS,
} from "./shape.ts";
import { AS_FOUND, HOLD_NEEDS, LOCKS, MATERIALS } from "./words.ts";

/** The blocks of the one tree of the vehicle. */
const TREE: readonly BlockWord[] = TREE_KINDS;

interface Extra {
  readonly repeats?: true;
  readonly note?: true;
  readonly clauses?: readonly Clause[];
  readonly choice?: string;
}

function record(
  blocks: BlockWord | readonly BlockWord[],
  word: string,
  elements: Shape | readonly Element[],
  help: string,
  example: string,
  extra: Extra = {},
): RecordEntry {
  return {
    word,
    blocks: typeof blocks === "string" ? [blocks] : blocks,
    elements: "value" in elements ? [element("value", elements)] : elements,
    clauses: extra.clauses ?? [],
    note: extra.note ?? false,
    repeats: extra.repeats ?? false,
    help,
    example,
    ...(extra.choice === undefined ? {} : { choice: extra.choice }),
  };
}

const counted = (count: "required" | "optional"): Shape => ({
  value: "countedReferences",
  to: ["part"],
  count,
});

const VEHICLE: readonly RecordEntry[] = [
  record("vehicle", "chassis", string, "The chassis or frame number.", 'chassis: "HS 0147"'),
  record("vehicle", "year", number, "The year it was built.", "year: 1963"),
  record(
    "vehicle",
    "currency",
    { value: "word", of: { names: "currency" } },
    "The currency of the build's totals (ISO 4217).",
    "currency: GBP",
  ),
  record(
    "vehicle",
    "rate",
    { value: "exchange" },
    "What one currency is worth in another.",
    "rate: 1 EUR = 0.86 GBP",
    { repeats: true },
  ),
  record("vehicle", "tax", quantity("ratio"), "Tax added to prices in totals, and shown apart.", "tax: 20 %"),
  record(
    "vehicle",
    "labour",
    { value: "moneyRate" },
    "What an hour of own work is reckoned at.",
    "labour: 40 GBP/h",
  ),
  record("vehicle", "budget", money, "What the build may cost.", "budget: 9500.00 GBP"),
  record(
    "vehicle",
    "week",
    { value: "week" },
    "The hours that one pair of hands has on each day of the week.",
    "week: tue 2 h, thu 2 h, sat 6 h",
  ),
  record("vehicle", "hands", number, "How many pairs of hands work at once.", "hands: 1"),
  record(
    "vehicle",
    "closed",
    either({ value: "dateRange" }, date),
    "Days on which no work is done.",
    "closed: 2026-08-01..2026-08-14",
    {
      repeats: true,
      choice: "A single date closes that one day.",
    },
  ),
  record(
    "vehicle",
    "protrusion",
    number,
    "How many thread pitches must stand out past a nut.",
    "protrusion: 2",
  ),
  record(
    "vehicle",
    "near",
    quantity("ratio"),
    "A limit is near when less than this share of its zone is left.",
    "near: 10 %",
  ),
  record(
    "vehicle",
    "past",
    choice("unknown", "known"),
    "Whether joints as found may be trusted (`known`) or are unproven.",
    "past: unknown",
  ),
  record(
    "vehicle",
    "today",
    date,
    "The day that reports are made for; without it, the clock decides.",
    "today: 2026-11-24",
  ),
];

const SUPPLIER: readonly RecordEntry[] = [
  record(
    ["supplier", "part"],
    "lead",
    quantity("time"),
    "Calendar days from order to delivery.",
    "lead: 5 d",
  ),
  record("supplier", "carriage", money, "What one delivery costs.", "carriage: 8.50 GBP"),
  record("supplier", "minimum", money, "The smallest order taken.", "minimum: 25.00 GBP"),
  record("supplier", "web", string, "Where it is found on the web.", 'web: "https://northgate.example"'),
  record("supplier", "email", string, "Its address for mail.", 'email: "parts@northgate.example"'),
  record("supplier", "phone", string, "Its telephone number.", 'phone: "01632 960 144"'),
];

const GAUGE: readonly RecordEntry[] = [
  record(
    "gauge",
    "reads",
    { value: "ranges" },
    "What it can read; several ranges by comma.",
    "reads: 0..25 mm",
  ),
  record("gauge", "resolution", quantity("any"), "The smallest step it shows.", "resolution: 0.01 mm"),
  record(
    "gauge",
    "uncertainty",
    { value: "tolerance" },
    "Its expanded uncertainty (k = 2), absolute or in % of the reading.",
    "uncertainty: ± 0.004 mm",
    { clauses: [flag("ofReading", "of", "reading")] },
  ),
  record(
    "gauge",
    "calibrated",
    [element("date", date)],
    "When it was last calibrated, and for how long that holds.",
    "calibrated: 2026-01-15 for 12 month",
    {
      clauses: [clause("for", "for", quantity("time"))],
    },
  ),
];

const TREE_RECORDS: readonly RecordEntry[] = [
  record(
    "assembly",
    "default",
    { value: "definition" },
    "What holds for everything below that says nothing itself.",
    "default: friction oiled",
    { repeats: true },
  ),
  record(
    TREE,
    "limit",
    [element("name", characteristic), element("limits", limits)],
    "What a measurement, or a `calc:` of that name, must satisfy.",
    "limit: thickness min 8.4 mm new 9.5 mm",
    { repeats: true },
  ),
  record(
    TREE,
    "setting",
    [element("name", characteristic), element("limits", limits)],
    "Something that is adjusted, and its tolerance.",
    "setting: camber -1.5 deg ± 15 arcmin",
    { repeats: true },
  ),
  record(
    TREE,
    "test",
    [element("name", newName), optional("how", string)],
    "Something to be tried before a hold point.",
    'test: free_turning "spins two turns by hand"',
    { repeats: true },
  ),
  record(
    TREE,
    "safety",
    choice("critical"),
    "Its failure can hurt: brakes, steering, wheels, harness, fuel.",
    "safety: critical",
    {
      choice: "May be said of any block of the tree; it holds for everything below an assembly.",
    },
  ),
  record(
    TREE,
    "second_check",
    choice("yes", "no"),
    "A second pair of eyes is asked for.",
    "second_check: yes",
  ),
];

const PART: readonly RecordEntry[] = [
  record("part", "count", number, "How many of it are on the vehicle (default 1).", "count: 4"),
  record(["part", "donor"], "number", string, "The part number.", 'number: "HS-2201"'),
  record("part", "maker", string, "Who made it.", 'maker: "Halvorsen"'),
  record(
    "part",
    "donor",
    string,
    "What it was made for, when it came off something else.",
    'donor: "small saloon, front hub"',
  ),
  record("part", "material", choice(...MATERIALS), "What it is made of.", "material: steel"),
  record(
    ["part", "assembly", "joint", "system", "circuit", "donor"],
    "size",
    [element("name", characteristic), element("value", either({ value: "thread" }, quantity("any")))],
    "A nominal dimension, for calculations and identification.",
    "size: bore 54 mm",
    {
      repeats: true,
      choice: "A thread may be given as a size; assemblies, joints, systems and circuits may have sizes too.",
    },
  ),
  record(
    ["part", "assembly"],
    "fit",
    [element("name", characteristic)],
    "A clearance or interference between two things that are measured or sized.",
    "fit: diameter in front.left.hub.bore clearance 0.01..0.04 mm",
    {
      repeats: true,
      clauses: [
        required("in", "in", member),
        clause("clearance", "clearance", limits),
        clause("interference", "interference", limits),
      ],
    },
  ),
  record(
    ["part", "assembly"],
    "pair",
    [element("name", characteristic)],
    "Side to side: two measurements must agree.",
    "pair: thickness with front.right.disc.thickness within 2 %",
    {
      repeats: true,
      clauses: [required("with", "with", member), required("within", "within", quantity("any"))],
    },
  ),
  record("part", "price", money, "What one costs, without tax.", "price: 62.00 GBP"),
  record("part", "supplier", reference("supplier"), "Where it is bought.", "supplier: northgate"),
  record(
    "part",
    "pack",
    { value: "pack" },
    "How many come in a pack, and what a pack costs each.",
    "pack: 10",
  ),
  record("part", "stock", number, "How many are on the shelf at the start.", "stock: 2"),
  record("part", "keep", number, "How many should be on the shelf always.", "keep: 2"),
  record("part", "kit", reference("part"), "The reconditioning kit for it.", "kit: caliper_kit"),
  record(
    "part",
    "single_use",
    choice("yes", "no"),
    "Never refitted: a new one whenever it has been off.",
    "single_use: yes",
  ),
  record("part", "life", { value: "life" }, "How long it may serve.", "life: 5 year from made", {
    repeats: true,
  }),
  record("part", "expires", date, "The day its life ends.", "expires: 2027-03-31"),
  record("part", "service", [], "How often it is serviced.", "service: every 24 month", {
    clauses: [required("every", "every", quantity("time"))],
  }),
  record("part", "made", date, "When the one on the vehicle at the start was made.", "made: 2021-06-01"),
  record(
    "part",
    "as_found",
    choice(...AS_FOUND),
    "Where it was at the start of the log (default `on`).",
    "as_found: missing",
  ),
];

const JOINT: readonly RecordEntry[] = [
  record(
    "joint",
    "joins",
    references("part", "assembly"),
    "The parts it holds.",
    "joins: front.left.hub, front.left.disc",
  ),
  record(
    "joint",
    "bolt",
    { value: "bolt" },
    "Its bolts: number, thread, length under the head, class.",
    "bolt: 4 x M8x1.25x30 class 8.8",
  ),
  record(
    "joint",
    "stud",
    { value: "bolt" },
    "Its studs: number, thread, length, class.",
    "stud: 6 x 3/8-24 UNF x 2 in grade 5",
  ),
  record(
    "joint",
    "thread_length",
    quantity("length"),
    "How long the thread is, when known.",
    "thread_length: 22 mm",
  ),
  record(
    "joint",
    "nut",
    { value: "nut" },
    "Its nuts, or the tapped hole.",
    "nut: self_locking M8x1.25 class 8 height 8 mm",
  ),
  record(
    "joint",
    "washers",
    { value: "countedQuantity" },
    "Washers on each bolt, under head and nut together.",
    "washers: 2 x 1.6 mm",
  ),
  record("joint", "grip", quantity("length"), "The thickness that is clamped.", "grip: 14 mm"),
  record("joint", "torque", { value: "torque" }, "What it is tightened to.", "torque: 24 N.m ± 10 %"),
  record(
    "joint",
    "stages",
    quantities("torque"),
    "Steps on the way to the torque.",
    "stages: 15 N.m, 20 N.m",
  ),
  record(
    "joint",
    "set_by",
    member,
    "It is set not by torque but by this measurement.",
    "set_by: front.left.hub.end_float",
  ),
  record(
    "joint",
    "friction",
    { value: "friction" },
    "The friction that preload is reckoned with.",
    "friction: oiled",
  ),
  record("joint", "lock", choice(...LOCKS), "How it is locked.", "lock: threadlocker"),
  record("joint", "mark", choice("yes", "no"), "Needs a witness mark.", "mark: yes"),
  record(
    ["joint", "job", "hold"],
    "after",
    references("job", "hold"),
    "What must come before: for a joint, before its final tightening.",
    "after: strip_front",
  ),
  record(
    "joint",
    "recheck",
    { value: "recheck" },
    "When to tighten or check it again.",
    "recheck: after 1 h running, then every 10 h running",
  ),
  record(
    "joint",
    "uses",
    counted("optional"),
    "Single-use hardware spent when it is tightened again.",
    "uses: 4 x disc_nut",
  ),
];

const SYSTEM: readonly RecordEntry[] = [
  record("system", "fluid", string, "The fluid it takes.", 'fluid: "DOT 4"'),
  record("system", "capacity", quantity("volume"), "How much it holds.", "capacity: 0.6 l"),
  record(
    "system",
    "parts",
    references("part", "assembly"),
    "The parts that hold the fluid.",
    "parts: front.left.caliper, front.right.caliper",
  ),
  record("system", "bleed", choice("yes", "no"), "It must be bled.", "bleed: yes"),
  record(
    "system",
    "pressure_test",
    [element("pressure", quantity("pressure"))],
    "Leak test at working pressure, with liquid.",
    "pressure_test: 70 bar for 2 min",
    {
      clauses: [clause("for", "for", quantity("time"))],
    },
  ),
  record("system", "change", [], "How often the fluid is changed.", "change: every 24 month", {
    clauses: [required("every", "every", quantity("time"))],
  }),
];

const end = either(string, references("part", "assembly", "circuit", "joint", "system"));

const CIRCUIT: readonly RecordEntry[] = [
  record("circuit", "supply", quantity("voltage"), "The voltage that feeds it.", "supply: 12 V"),
  record("circuit", "load", quantity("current or power"), "What it draws; several add up.", "load: 11 A", {
    repeats: true,
  }),
  record(
    "circuit",
    "wire",
    either({ value: "wireGauge" }, quantity("area")),
    "The cross-section of the wire.",
    "wire: 2.5 mm2",
  ),
  record(
    "circuit",
    "length",
    quantity("length"),
    "The length of the wire one way; it is doubled.",
    "length: 3.2 m",
  ),
  record(
    "circuit",
    "return",
    choice("frame", "wire"),
    "`frame`: the current comes back through the frame, and the length is not doubled.",
    "return: frame",
  ),
  record("circuit", "fuse", quantity("any"), "Its fuse.", "fuse: 20 A"),
  record("circuit", "drop", limits, "The voltage that may be lost.", "drop: max 3 %"),
  record("circuit", "from", end, "Where it starts, for the loom list.", 'from: "fuse box, 4"'),
  record("circuit", "to", end, "Where it ends, for the loom list.", "to: cooling.fan"),
  record("circuit", "colour", string, "The colour of the wire.", 'colour: "green, black tracer"'),
  record("circuit", "relay", end, "Its relay.", 'relay: "R2, left bulkhead"'),
  record("circuit", "switch", end, "Its switch.", 'switch: "header tank sender"'),
  record("circuit", "earth", end, "Where it is earthed.", 'earth: "stud behind the left lamp"'),
];

const JOB: readonly RecordEntry[] = [
  record("job", "on", references(...TREE_KINDS), "What the work is on.", "on: front.left"),
  record(
    "job",
    "takes",
    { value: "takes" },
    "How long it takes: one figure, or optimistic, likely and pessimistic.",
    "takes: 4..6..10 h",
  ),
  record("job", "by", reference("supplier"), "Who does it, when it is outside work.", "by: northgate"),
  record("job", "needs", counted("optional"), "The parts it uses up.", "needs: 2 x caliper_kit"),
  record("job", "start", date, "It does not start before this day.", "start: 2026-06-01"),
];

const HOLD: readonly RecordEntry[] = [
  record(
    "hold",
    "covers",
    references(...TREE_KINDS),
    "What it looks at (default: the vehicle).",
    "covers: front",
  ),
  record(
    "hold",
    "needs",
    choices(...HOLD_NEEDS),
    "What it asks for (default: everything).",
    "needs: joints, systems",
  ),
  record("hold", "planned", date, "The day it is planned for.", "planned: 2026-07-11"),
  record("hold", "stops", { value: "stops" }, "What must not happen before it.", "stops: ran vehicle", {
    repeats: true,
  }),
  record(
    "hold",
    "test",
    [element("name", newName), optional("how", string)],
    "What must be seen at this hold point.",
    'test: no_leaks "dry after two minutes at pressure"',
    { repeats: true },
  ),
];

const OTHER: readonly RecordEntry[] = [
  record(
    "setup",
    "with",
    string,
    "What is aboard, and how it stands.",
    'with: "two bags of 75 kg, 10 l of fuel"',
  ),
];

export const RECORDS: readonly RecordEntry[] = [
  ...VEHICLE,
  ...SUPPLIER,
  ...GAUGE,
  ...TREE_RECORDS,
  ...PART,
  ...JOINT,
  ...SYSTEM,
  ...CIRCUIT,
  ...JOB,
  ...HOLD,
  ...OTHER,
];
