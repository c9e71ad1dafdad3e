/** The torque sheet: each joint, its torque, how it locks, what it stands at, and what it still wants. */
import type { Build } from "../build/build.ts";
import { lengthAsWritten } from "../build/joint-bolt.ts";
import type { Standing } from "../build/standing.ts";
import type { TreeNode } from "../build/tree/node.ts";
import type { Wanting } from "../build/wanting.ts";
import { sayWanting } from "../build/wanting-words.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { computedQuantity, formatQuantity } from "../quantities/quantity.ts";
import { unit } from "../quantities/unit.ts";
import type { JointRow, TorqueSheet } from "./joint-row.ts";
import { jointRow, SCATTER } from "./joint-row.ts";
import type { JsonQuantity, JsonWhy } from "./json-values.ts";
import { jsonQuantity, jsonWhy, sayPlace } from "./json-values.ts";
import type { Cell, Table, TableRow, TableSection } from "./table.ts";
import { column, ESTIMATES_CAUTION } from "./table.ts";

export interface JointsReport {
  readonly schema: "cotter/joints/1";
  readonly today: string;
  readonly joints: readonly JointReport[];
  readonly unsecured: number;
  readonly caution: string;
}

interface JointReport {
  readonly ref: string;
  readonly title: string | null;
  readonly state: string;
  readonly secured: boolean;
  readonly bolt: string | null;
  readonly torque: {
    readonly text: string;
    readonly target: JsonQuantity | null;
    readonly lower: JsonQuantity | null;
    readonly upper: JsonQuantity | null;
    readonly angle: JsonQuantity | null;
    /** True where it is computed from the strength class. */
    readonly estimated: boolean;
  } | null;
  readonly setBy: string | null;
  /** An estimate, at what is aimed at and the middle of the friction. */
  readonly preload: JsonQuantity | null;
  /** What the scatter of tightening by torque leaves of it. */
  readonly preloadRange: { readonly lower: JsonQuantity | null; readonly upper: JsonQuantity | null } | null;
  /** Of the proof load; an estimate too, and null where the class is unknown. */
  readonly percentOfProof: number | null;
  readonly friction: string | null;
  readonly frictionAssumed: boolean;
  readonly protrusion: JsonQuantity | null;
  readonly protrusionPitches: number | null;
  readonly lock: string | null;
  readonly mark: boolean;
  readonly after: readonly { readonly ref: string; readonly met: boolean }[];
  readonly wanting: readonly {
    readonly code: string;
    readonly text: string;
    readonly file: string | null;
    readonly line: number | null;
  }[];
  readonly why: readonly JsonWhy[];
}

/** Under every sheet: what its figures are worth. */
const CAUTION = `${ESTIMATES_CAUTION} Tightening by torque leaves the preload anywhere within ± 25 to 35 %.`;

export function jointsReport({ standing, today }: Build): JointsReport {
  const rows = rowsOf(standing);
  return {
    schema: "cotter/joints/1",
    today,
    joints: rows.map((row) => jointReport(standing, row)),
    unsecured: rows.filter(({ securing }) => !securing.secured).length,
    caution: CAUTION,
  };
}

function rowsOf(standing: Standing): readonly JointRow[] {
  return [...standing.joints.values()].map((state) => jointRow(standing, state));
}

function jointReport(standing: Standing, row: JointRow): JointReport {
  const { node, state, securing, torque, loading, protrusion, done } = row;
  return {
    ref: node.path,
    title: node.title ?? null,
    state: state.stage,
    secured: securing.secured,
    bolt: row.bolt ?? null,
    torque: torque === undefined ? null : jsonTorque(torque),
    setBy: row.setBy ?? null,
    preload: loading === undefined ? null : { ...kilonewtons(loading.preload), text: aboutPreload(row) },
    preloadRange:
      loading === undefined
        ? null
        : {
            lower: kilonewtons(loading.preload * SCATTER.least),
            upper: kilonewtons(loading.preload * SCATTER.most),
          },
    percentOfProof: percentOfProof(row) ?? null,
    friction: loading?.friction ?? null,
    frictionAssumed: loading?.assumed ?? false,
    protrusion:
      protrusion === undefined ? null : jsonQuantity(lengthAsWritten(standing, node, protrusion.length)),
    protrusionPitches: protrusion === undefined ? null : Number(protrusion.pitches.toFixed(2)),
    lock: row.lock ?? null,
    mark: row.marks,
    after: row.after.map(({ name, met }) => ({ ref: name, met })),
    wanting: securing.wanting.map(jsonWanting),
    why: done.map(({ text, fact }) => jsonWhy({ text: `${text} on ${fact.date}`, place: fact.place })),
  };
}

function jsonTorque({ text, target, limits, angle, estimated }: TorqueSheet): JointReport["torque"] {
  return {
    text,
    target: jsonQuantity(target),
    lower: jsonQuantity(limits?.lower),
    upper: jsonQuantity(limits?.upper),
    angle: jsonQuantity(angle),
    estimated,
  };
}

function jsonWanting(wanting: Wanting): JointReport["wanting"][number] {
  const { place } = wanting;
  const code = wanting.code === "joint-wrong" ? wanting.fault.code : wanting.code;
  const where = place === undefined ? { file: null, line: null } : jsonWhy({ text: "", place });
  return { code, text: sayWanting(wanting), file: where.file, line: where.line };
}

export function jointsTable({ standing, today }: Build): Table {
  const rows = rowsOf(standing);
  const open = rows.filter(({ securing }) => !securing.secured).length;
  return {
    title: `Torque sheet on ${today}`,
    columns: [
      column("joint", "Joint"),
      column("name", "Name"),
      column("bolt", "Bolt"),
      column("torque", "Torque"),
      column("lock", "Lock"),
      column("mark", "Mark"),
      column("after", "After"),
      column("state", "State"),
      column("secured", "Secured"),
      column("preload", "Preload", "right"),
      column("proof", "Of proof", "right"),
      column("protrusion", "Past nut", "right"),
    ],
    sections: sectionsOf(standing, rows),
    notes:
      rows.length === 0
        ? ["The log has no joint."]
        : [
            `${rows.length} ${rows.length === 1 ? "joint" : "joints"}, ${open} of them not secured.`,
            "A box is still to be done. Preload and its share of proof are estimates, at what is aimed at and the middle of the friction; in brackets what the scatter of tightening by torque may make of the preload.",
            ...frictionsOf(rows),
          ],
    cautions: [CAUTION],
  };
}

/** The figures of each friction that was reckoned with, once. */
function frictionsOf(rows: readonly JointRow[]): readonly string[] {
  const said = rows.flatMap(({ loading }) =>
    loading === undefined
      ? []
      : [`Friction ${loading.assumed ? "not stated, taken as " : ""}${loading.friction}.`],
  );
  return [...new Set(said)];
}

/** One section for each assembly, in the order in which its first joint is defined. */
function sectionsOf(standing: Standing, rows: readonly JointRow[]): readonly TableSection[] {
  const byParent = new Map<TreeNode | undefined, JointRow[]>();
  for (const row of rows) {
    const those = byParent.get(row.node.parent);
    if (those === undefined) byParent.set(row.node.parent, [row]);
    else those.push(row);
  }
  return [...byParent].map(([parent, those]) => ({
    heading: headingOf(parent),
    rows: those.map((row) => tableRow(standing, row)),
  }));
}

function headingOf(parent: TreeNode | undefined): string {
  if (parent === undefined || parent.kind === "vehicle") return "";
  return parent.title === undefined ? parent.path : `${parent.title} (${parent.path})`;
}

function tableRow(standing: Standing, row: JointRow): TableRow {
  const { node, state, securing, protrusion, after } = row;
  const percent = percentOfProof(row);
  const wants = (...codes: readonly Wanting["code"][]) =>
    securing.wanting.some(({ code }) => codes.includes(code));
  const tightened = !wants("joint-unproven", "joint-open", "joint-nipped", "joint-not-set", "torque-outside");
  return {
    cells: {
      joint: node.title ?? node.path,
      name: node.path.slice(node.path.lastIndexOf(".") + 1),
      bolt: row.bolt ?? "",
      torque: toDo(
        row.torque?.text ?? (row.setBy === undefined ? "not stated" : `set by ${row.setBy}`),
        tightened,
      ),
      lock:
        row.lock === undefined || row.lock === "none" ? "" : toDo(words(row.lock), isLocked(row, tightened)),
      mark: row.marks ? toDo("mark", tightened && !wants("mark-missing")) : "",
      after: after.map(({ name, met }) => (met ? name : `${name}, not yet`)).join(", "),
      state: words(state.stage),
      secured: securing.secured ? { text: "secured", tone: "good" } : { text: "open", tone: "open" },
      preload: row.loading === undefined ? "" : aboutPreload(row),
      proof: percent === undefined ? "" : `${Math.round(percent)} %`,
      protrusion:
        protrusion === undefined
          ? ""
          : `${formatQuantity(lengthAsWritten(standing, node, protrusion.length))}, ${protrusion.pitches.toFixed(1)} pitches`,
    },
    remarks: remarksOf(row),
  };
}

function toDo(text: string, done: boolean): Cell {
  return done ? { text, tone: "good" } : { text, box: true };
}

/** A nut that locks itself needs nothing more than its torque. */
function isLocked({ securing, lock }: JointRow, tightened: boolean): boolean {
  return (
    tightened && (lock === "self_locking" || !securing.wanting.some(({ code }) => code === "lock-missing"))
  );
}

function remarksOf({ securing, done }: JointRow): readonly string[] {
  const wanting = securing.wanting.map(
    (want) => `${sayWanting(want)}${want.place === undefined ? "" : `: ${sayPlace(want.place)}`}`,
  );
  const last = done.at(-1);
  return [
    ...wanting,
    ...(securing.secured && last !== undefined
      ? [`${last.text} on ${last.fact.date}: ${sayPlace(last.fact.place)}`]
      : []),
  ];
}

function percentOfProof({ loading }: JointRow): number | undefined {
  if (loading?.proof === undefined) return undefined;
  return Number(((loading.preload / loading.proof.load) * 100).toFixed(1));
}

function aboutPreload({ loading }: JointRow): string {
  if (loading === undefined) return "";
  const { preload } = loading;
  const [middle, least, most] = [1, SCATTER.least, SCATTER.most].map((share) =>
    formatQuantity(inKilonewtons(preload * share)),
  );
  return `about ${middle} (${least} to ${most})`;
}

function kilonewtons(newtons: number): JsonQuantity {
  const force = inKilonewtons(newtons);
  return { value: force.value.toNumber(), unit: force.unit.symbol, text: formatQuantity(force) };
}

/** Three figures are more than any estimate of a preload deserves. */
function inKilonewtons(newtons: number): Quantity {
  return computedQuantity(Number((newtons / 1000).toPrecision(3)), unit("kN"), 3);
}

function words(word: string): string {
  return word.replaceAll("_", " ");
}
