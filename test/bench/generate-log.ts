/**
 * Writes builds of any length for measuring: a vehicle of many corners, each stripped, measured, decided, ordered,
 * fitted and torqued over a diary of years, with prose between the facts and a share of lines as people mistype them.
 * The same request always gives the same text.
 */

export interface LogRequest {
  /** Lines of all files together, met to within a day's block. */
  readonly lines: number;
  /** Share of the diary's facts that are broken, 0 to 1. */
  readonly broken: number;
  readonly seed?: number;
}

export interface GeneratedFile {
  readonly path: string;
  readonly text: string;
}

/** The files of a build: the vehicle, its parts by axle, and its diary by year. */
export function generateLog({ lines, broken, seed = 1 }: LogRequest): readonly GeneratedFile[] {
  const chance = new Chance(seed);
  const axles = Math.max(1, Math.round(lines / 900));
  const parts = Array.from({ length: axles }, (_, index) => axleFile(index));
  const used = [vehicleFile(axles, ""), ...parts].reduce((sum, file) => sum + lineCount(file.text), 0);
  const diary = diaryFiles(axles, Math.max(0, lines - used), broken, chance);
  // All of the diary counts: today is its last day.
  const today =
    diary
      .at(-1)
      ?.text.match(/^day (\S+)/gm)
      ?.at(-1)
      ?.slice(4) ?? "2020-02-01";
  return [vehicleFile(axles, today), ...parts, ...diary];
}

/** Pseudo-random choices that repeat: a linear congruential generator (Numerical Recipes' constants). */
class Chance {
  private state: number;

  constructor(seed: number) {
    this.state = seed;
  }

  /** 0 up to, not including, 1. */
  next(): number {
    this.state = (Math.imul(this.state, 1664525) + 1013904223) >>> 0;
    return this.state / 2 ** 32;
  }

  of<T>(options: readonly T[]): T {
    return options[Math.floor(this.next() * options.length)] as T;
  }

  between(low: number, high: number, places: number): string {
    return (low + this.next() * (high - low)).toFixed(places);
  }
}

const SIDES = ["left", "right"] as const;

/** Parts of one corner, with what they are measured by. */
const CORNER_PARTS = [
  { name: "upright", records: ["material: aluminium", "safety: critical"] },
  { name: "hub", records: ["material: steel", "safety: critical", "limit: end_float 0.05..0.13 mm"] },
  { name: "inner_bearing", records: ["price: 11.80 GBP", "supplier: marrick"] },
  { name: "outer_bearing", records: ["price: 9.40 GBP", "supplier: marrick"] },
  { name: "seal", records: ["single_use: yes", "price: 3.10 GBP", "supplier: marrick"] },
  {
    name: "disc",
    records: [
      "material: cast_iron",
      "safety: critical",
      "limit: thickness min 8.4 mm new 9.5 mm",
      "limit: runout max 0.10 mm",
      "price: 46.00 GBP",
      "supplier: tatlow",
    ],
  },
  { name: "caliper", records: ["material: cast_iron", "safety: critical", "kit: stores.caliper_kit"] },
  { name: "caliper.pistons", records: ["count: 2", "safety: critical", "price: 18.75 GBP"] },
  { name: "hose", records: ["safety: critical", "price: 16.20 GBP", "life: 6 year from made"] },
  { name: "top_arm", records: ["material: steel", "safety: critical"] },
  { name: "bottom_arm", records: ["material: steel", "safety: critical"] },
  { name: "damper", records: ["size: closed 286 mm", "size: extended 402 mm"] },
  { name: "spring", records: ["material: steel", "limit: rate 26.5..29.5 N/mm"] },
] as const;

const CORNER_JOINTS = [
  {
    name: "disc_bolts",
    joins: ["disc", "hub"],
    records: ["bolt: 4 x M8x1.25x30 class 8.8", "torque: 24 N.m ± 10 %", "lock: lockwire"],
    torque: "24 N.m",
    lock: true,
  },
  {
    name: "caliper_bolts",
    joins: ["caliper", "upright"],
    records: [
      "bolt: 2 x M10x1.25x40 class 8.8",
      "nut: tapped 26 mm in aluminium",
      "grip: 12.5 mm",
      "torque: 38 N.m ± 10 %",
      "lock: lockwire",
      "mark: yes",
    ],
    torque: "38 N.m",
    lock: true,
  },
  {
    name: "top_pivot",
    joins: ["top_arm", "upright"],
    records: [
      "bolt: 1 x M12x1.25x80 class 8.8",
      "nut: self_locking nylon M12x1.25 class 8 height 12 mm",
      "grip: 58 mm",
      "torque: 70 N.m ± 10 %",
      "lock: self_locking",
      "uses: 1 x stores.nut_m12",
    ],
    torque: "70 N.m on new hardware",
    lock: false,
  },
  {
    name: "damper_lower",
    joins: ["damper", "bottom_arm"],
    records: ["bolt: 1 x M10x1.25x60 class 8.8", "torque: 45 N.m ± 10 %", "lock: none"],
    torque: "45 N.m",
    lock: false,
  },
  {
    name: "hose_banjo",
    joins: ["hose", "caliper"],
    records: ["torque: 20 N.m ± 10 %", "lock: none", "uses: 2 x stores.copper_washers"],
    torque: "20 N.m on new hardware",
    lock: false,
  },
] as const;

const PROSE = [
  "Rain on the roof all day, radio on, nobody rang.",
  "The lower pin came out with a drift and some language; the upper one fell out by itself.",
  "Laid everything out on the sheet in the order it came off and took a picture.",
  "Found the missing spacer in the tray under the vice, where I had looked twice.",
  "KT came by at four and held the lamp, which he does better than most.",
  "Not happy with the look of that thread; chased it and it went up by hand.",
  "Tea. Then the same again on the other side, in half the time.",
] as const;

function vehicleFile(axles: number, today: string): GeneratedFile {
  const text = [
    'vehicle "Tarrant Plover, works long chassis"',
    "  currency: GBP",
    "  tax: 20 %",
    "  labour: 40 GBP/h",
    "  week: tue 2 h, thu 2 h, sat 6 h",
    "  past: unknown",
    `  today: ${today}`,
    "",
    'supplier marrick "Marrick Bearings"',
    "  lead: 3 d",
    "  carriage: 4.80 GBP",
    "",
    'supplier tatlow "Tatlow Brakes"',
    "  lead: 9 d",
    "  minimum: 25 GBP",
    "",
    'gauge mic25 "Micrometer, 0 to 25 mm"',
    "  reads: 0..25 mm",
    "  resolution: 0.01 mm",
    "  uncertainty: ± 0.004 mm",
    "  calibrated: 2020-01-10 for 600 month",
    "",
    'gauge wrench "Torque wrench"',
    "  reads: 10..100 N.m",
    "  uncertainty: ± 4 %",
    "  calibrated: 2020-01-10 for 600 month",
    "",
    'part stores.caliper_kit "Caliper seal kit"',
    "  as_found: shelf",
    "  stock: 4",
    "  price: 24.50 GBP",
    "",
    'part stores.nut_m12 "Self-locking nut M12"',
    "  as_found: shelf",
    "  stock: 200",
    "  keep: 10",
    "  price: 0.62 GBP",
    "  pack: 20",
    "",
    'part stores.copper_washers "Copper washers"',
    "  as_found: shelf",
    "  stock: 400",
    "  price: 0.10 GBP",
    "",
    ...Array.from({ length: axles }, (_, axle) => [
      `job strip${axle} "Strip axle ${axle}"`,
      `  on: axle${axle}`,
      "  takes: 4..6..10 h",
      "",
      `job build${axle} "Build axle ${axle}"`,
      `  on: axle${axle}`,
      `  after: strip${axle}`,
      "  takes: 12..16..24 h",
      `  needs: 2 x stores.caliper_kit, 1 x axle${axle}.left.disc`,
      "",
    ]).flat(),
    'hold first_run "First run under its own power"',
    "  planned: 2035-06-01",
    "",
  ];
  return { path: "vehicle.cotter", text: text.join("\n") };
}

/** One axle: the left corner written out, the right one copied with one line. */
function axleFile(axle: number): GeneratedFile {
  const left = `axle${axle}.left`;
  const text = [
    `assembly axle${axle} "Axle ${axle}"`,
    "  default: friction zinc",
    "",
    `assembly ${left} "Left corner, axle ${axle}"`,
    "  setting: camber -1.5 deg ± 0.25 deg",
    "",
    ...CORNER_PARTS.flatMap(({ name, records }) => [
      `part ${left}.${name} "${titled(name)}"`,
      ...records.map((record) => `  ${record}`),
      "",
    ]),
    ...CORNER_JOINTS.flatMap(({ name, joins, records }) => [
      `joint ${left}.${name} "${titled(name)}"`,
      `  joins: ${joins.map((part) => `${left}.${part}`).join(", ")}`,
      ...records.map((record) => `  ${record}`),
      "",
    ]),
    `system axle${axle}.brakes "Brake circuit, axle ${axle}"`,
    '  fluid: "DOT 4"',
    "  capacity: 0.35 l",
    `  parts: ${left}.caliper, axle${axle}.right.caliper, ${left}.hose, axle${axle}.right.hose`,
    "  bleed: yes",
    "  pressure_test: 70 bar for 2 min",
    "",
    `assembly axle${axle}.right "Right corner, axle ${axle}" like ${left}`,
    "",
  ];
  return { path: `parts/axle${String(axle).padStart(3, "0")}.cotter`, text: text.join("\n") };
}

function titled(name: string): string {
  const words = name.replaceAll(/[._]/g, " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What one corner goes through, a day for each stage. */
function stages(axle: number, side: string, chance: Chance): readonly (readonly string[])[] {
  const corner = `axle${axle}.${side}`;
  const each = (names: readonly string[]) => `${corner}.{${names.join(", ")}}`;
  return [
    [
      `started: strip${axle}`,
      `removed: ${each(["caliper", "hose", "disc", "hub", "inner_bearing", "outer_bearing", "seal"])}`,
      `tagged: ${corner}.hub "${side.charAt(0).toUpperCase()}, one dot to the front"`,
      `found: ${corner}.hose perished`,
      `found: ${corner}.caliper corroded "bores clean"`,
      `worked: ${chance.between(1, 4, 1)} h on strip${axle}`,
    ],
    [
      `removed: ${each(["damper", "spring", "top_arm", "bottom_arm", "upright"])}`,
      `cleaned: ${each(["upright", "hub", "top_arm", "bottom_arm"])} by solvent`,
      `inspected: ${each(["upright", "hub", "top_arm", "bottom_arm"])} by penetrant`,
      `measured: ${corner}.disc thickness ${chance.between(8.3, 9.5, 2)}, ${chance.between(8.3, 9.5, 2)} mm with mic25`,
      `measured: ${corner}.spring rate ${chance.between(26, 30, 1)} N/mm ± 0.2 N/mm`,
      `done: strip${axle}`,
    ],
    [
      `decided: ${each(["upright", "hub", "top_arm", "bottom_arm", "damper", "spring"])} reuse "all inside"`,
      `decided: ${each(["inner_bearing", "outer_bearing", "disc", "hose", "seal"])} renew`,
      `decided: ${corner}.caliper recondition`,
      `ordered: 1 x ${corner}.disc at 46.00 GBP, 1 x ${corner}.hose at 16.20 GBP from tatlow ref "A${axle}${side}"`,
      `ordered: 1 x ${corner}.inner_bearing at 11.80 GBP, 1 x ${corner}.outer_bearing at 9.40 GBP, 1 x ${corner}.seal at 3.10 GBP from marrick ref "B${axle}${side}"`,
    ],
    [
      `received: order "A${axle}${side}"`,
      `received: order "B${axle}${side}"`,
      "bought: 1 x stores.caliper_kit at 24.50 GBP from tatlow",
      `reconditioned: ${corner}.caliper`,
      `inspected: ${corner}.caliper by eye`,
    ],
    [
      `started: build${axle}`,
      `fitted: ${each(["upright", "top_arm", "bottom_arm", "inner_bearing", "outer_bearing", "seal", "hub", "disc"])}`,
      `torqued: ${corner}.top_pivot ${CORNER_JOINTS[2].torque} with wrench`,
      `torqued: ${corner}.disc_bolts ${CORNER_JOINTS[0].torque} with wrench`,
      `locked: ${corner}.disc_bolts with lockwire`,
      `measured: ${corner}.hub end_float ${chance.between(0.05, 0.14, 2)} mm`,
      `measured: ${corner}.disc runout ${chance.between(0.02, 0.12, 2)} mm`,
      `worked: ${chance.between(1, 6, 1)} h on build${axle}`,
    ],
    [
      `fitted: ${each(["caliper", "hose", "damper", "spring"])}`,
      `torqued: ${corner}.caliper_bolts ${CORNER_JOINTS[1].torque} with wrench`,
      `locked: ${corner}.caliper_bolts with lockwire`,
      `marked: ${corner}.caliper_bolts`,
      `torqued: ${corner}.damper_lower ${CORNER_JOINTS[3].torque} with wrench`,
      `torqued: ${corner}.hose_banjo ${CORNER_JOINTS[4].torque} with wrench`,
    ],
    [
      `filled: axle${axle}.brakes 0.33 l with "DOT 4"`,
      `bled: axle${axle}.brakes`,
      `proved: axle${axle}.brakes at 72 bar for 2 min`,
      `done: build${axle}`,
    ],
    [
      `changed: ${corner}.damper_lower bolt 1 x M10x1.25x65 class 10.9`,
      `loosened: ${corner}.damper_lower`,
      `torqued: ${corner}.damper_lower ${CORNER_JOINTS[3].torque} with wrench`,
    ],
    [
      `ran: axle${axle} 0.5 h 12 km`,
      `rechecked: ${corner}.caliper_bolts held`,
      `measured: ${corner}.disc thickness ${chance.between(8.6, 9.5, 2)} mm with mic25`,
      `measured: ${corner}.hub end_float ${chance.between(0.05, 0.12, 2)} mm`,
      `inspected: ${corner} by eye`,
      `cleaned: ${corner}.{disc, caliper, upright} by solvent`,
      `greased: ${corner}.hub`,
    ],
  ];
}

/** How people break a line. */
const SLIPS: readonly ((line: string) => string)[] = [
  (line) => line.replace(/(\d)\.(\d)/, "$1,$2"),
  (line) => line.replace(/^(\w)(\w)(\w+):/, "$2$1$3:"),
  (line) => line.replace(/([a-z])([a-z])(?=[^a-z]*$)/, "$2$1"),
  (line) => line.replace(/N\.m/, "nm").replace(/ mm/, " mn"),
  (line) => line.replace(/\.left\b/, ".lefft").replace(/\.right\b/, ".rihgt"),
  (line) => line.replace(/(: ?\S+).*$/, "$1 and then some"),
];

function diaryFiles(axles: number, lines: number, broken: number, chance: Chance): GeneratedFile[] {
  const corners = Array.from({ length: axles }, (_, axle) =>
    SIDES.map((side) => stages(axle, side, chance)),
  ).flat();
  const years = new Map<number, string[]>();
  const day = new Date(Date.UTC(2020, 1, 1));
  let written = 0;
  for (let turn = 0; written < lines; turn++) {
    const stage = Math.floor(turn / corners.length);
    // Once every stage is through, the corners are looked after: the last stage again and again.
    const ofCorner = corners[turn % corners.length] ?? [];
    const facts = ofCorner[Math.min(stage, ofCorner.length - 1)] ?? [];
    const block = dayBlock(day.toISOString().slice(0, 10), facts, broken, chance);
    const year = years.get(day.getUTCFullYear()) ?? [];
    years.set(day.getUTCFullYear(), year);
    year.push(...block);
    written += block.length;
    day.setUTCDate(day.getUTCDate() + 1 + Math.floor(chance.next() * 3));
  }
  return [...years].map(([year, text]) => ({ path: `diary/${year}.cotter`, text: text.join("\n") }));
}

function dayBlock(date: string, facts: readonly string[], broken: number, chance: Chance): string[] {
  const told = facts.flatMap((fact) => {
    const line = chance.next() < broken ? chance.of(SLIPS)(fact) : fact;
    return chance.next() < 0.6 ? [`  ${chance.of(PROSE)}`, `  ${line}`] : [`  ${line}`];
  });
  return [`day ${date} ${chance.of(["2 h", "6 h", "8 h", "3 h 30 min"])}`, ...told, ""];
}

function lineCount(text: string): number {
  return text.split("\n").length;
}
