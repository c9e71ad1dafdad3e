/** Settings: what is wanted, and what was set or measured, the newest of each setup. */
import type { Build } from "../build/build.ts";
import type { AsSet, SettingCheck } from "../build/setting-check.ts";
import { settingsOf, verdictOf } from "../build/setting-check.ts";
import { lineOf } from "../build/source.ts";
import type { Standing } from "../build/standing.ts";
import type { SourcedRecord, TreeNode } from "../build/tree/node.ts";
import type { Limits } from "../quantities/limits.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { VerdictName } from "../quantities/verdict.ts";
import type { JsonQuantity } from "./json-values.ts";
import { jsonQuantity } from "./json-values.ts";
import type { Cell, Table, TableRow } from "./table.ts";
import { column } from "./table.ts";

export interface SettingsReport {
  readonly schema: "cotter/settings/1";
  readonly today: string;
  readonly settings: readonly SettingReport[];
  readonly setups: readonly {
    readonly ref: string;
    readonly title: string | null;
    readonly with: string | null;
  }[];
  readonly caution: string;
}

interface SettingReport {
  readonly ref: string;
  readonly title: string | null;
  readonly name: string;
  readonly wanted: {
    readonly lower: JsonQuantity | null;
    readonly upper: JsonQuantity | null;
    readonly text: string;
  };
  /** Said of one side. */
  readonly each: boolean;
  /** Of the newest; `not set` where there is none, `unknown` where it cannot be compared. */
  readonly state: VerdictName | "not set" | "unknown";
  /** Newest first. */
  readonly set: readonly {
    readonly setup: string | null;
    readonly value: JsonQuantity | null;
    readonly verdict: VerdictName | "unknown";
    readonly by: "set" | "measured";
    readonly date: string;
    readonly file: string;
    readonly line: number;
  }[];
  readonly file: string;
  readonly line: number;
}

const CAUTION =
  "Settings are the log's own: the maker's figures come first, and a brake, steering or suspension setting is tried standing, at walking pace, and only then further.";

export function settingsReport({ standing, today }: Build): SettingsReport {
  return {
    schema: "cotter/settings/1",
    today,
    settings: everySetting(standing).map(({ node, check }) => settingReport(node, check)),
    setups: [...standing.names.every("setup")].map(({ name, title, records }) => ({
      ref: name,
      title: title ?? null,
      with: records.flatMap(({ record }) => (record.word === "with" ? [record.text] : [])).at(-1) ?? null,
    })),
    caution: CAUTION,
  };
}

function everySetting(standing: Standing): { readonly node: TreeNode; readonly check: SettingCheck }[] {
  return [...standing.gathered.tree.nodes()].flatMap((node) =>
    settingsOf(standing, node).map((check) => ({ node, check })),
  );
}

function settingReport(node: TreeNode, { wanted, asSet, verdict }: SettingCheck): SettingReport {
  const { name, limits, each, at } = wanted.record;
  const { lower, upper } = limits;
  return {
    ref: node.path,
    title: node.title ?? null,
    name,
    wanted: { lower: jsonQuantity(lower), upper: jsonQuantity(upper), text: sayWanted(limits, each) },
    each,
    state: asSet.length === 0 ? "not set" : (verdict?.verdict ?? "unknown"),
    set: asSet.map((one) => setReport(wanted, one)),
    file: wanted.site.file.path,
    line: lineOf({ site: wanted.site, ...at }),
  };
}

function setReport(wanted: SourcedRecord<"setting">, one: AsSet): SettingReport["set"][number] {
  const { setup, fact, values } = one;
  const verdict = verdictOf(one, wanted);
  return {
    setup: setup?.name ?? null,
    value: jsonQuantity(verdict?.reading ?? values[0]),
    verdict: verdict?.verdict ?? "unknown",
    by: fact.fact.word,
    date: fact.date,
    file: fact.place.site.file.path,
    line: lineOf(fact.place),
  };
}

/** `132 mm, 129 mm to 135 mm`: what is aimed at, and between what. */
function sayWanted({ nominal, lower, upper }: Limits, each: boolean): string {
  const say = (bound: Quantity) => formatQuantity(bound);
  const bounds =
    lower !== undefined && upper !== undefined
      ? `${say(lower)} to ${say(upper)}`
      : lower !== undefined
        ? `min ${say(lower)}`
        : upper === undefined
          ? ""
          : `max ${say(upper)}`;
  const aimed = nominal === undefined ? "" : say(nominal);
  return [aimed, bounds].filter((text) => text !== "").join(", ") + (each ? " each" : "");
}

const STATES: Readonly<Record<SettingReport["state"], Cell>> = {
  within: { text: "within", tone: "good" },
  near: { text: "near its limit", tone: "good" },
  uncertain: { text: "not proved either way", tone: "open" },
  outside: { text: "out", tone: "bad" },
  "not set": { text: "not set", box: true },
  unknown: { text: "cannot be compared", tone: "open" },
};

export function settingsTable(build: Build): Table {
  const { settings, setups, today, caution } = settingsReport(build);
  const things = [...new Set(settings.map(({ ref }) => ref))];
  return {
    title: `Settings on ${today}`,
    columns: [
      column("name", "Setting"),
      column("wanted", "Wanted"),
      column("set", "As set", "right"),
      column("setup", "Condition"),
      column("date", "On"),
      column("state", "State"),
    ],
    sections: things.map((ref) => {
      const own = settings.filter((setting) => setting.ref === ref);
      const title = own[0]?.title ?? null;
      return {
        heading: title === null ? ref : `${title} (${ref})`,
        rows: own.flatMap(settingRows),
      };
    }),
    notes: [
      ...(settings.length === 0 ? ["The log has no settings."] : []),
      ...setups.map(
        (setup) => `${setup.ref}: ${setup.title ?? setup.ref}${setup.with === null ? "" : `, ${setup.with}`}`,
      ),
    ],
    cautions: [caution],
  };
}

function settingRows({ name, wanted, state, set }: SettingReport): readonly TableRow[] {
  const [newest, ...others] = set;
  if (newest === undefined) return [{ cells: { name, wanted: wanted.text, state: STATES[state] } }];
  return [
    { cells: { name, wanted: wanted.text, ...setCells(newest) } },
    ...others.map((one) => ({ cells: { name: "", wanted: "", ...setCells(one) } })),
  ];
}

function setCells({ value, setup, date, verdict }: SettingReport["set"][number]): Record<string, Cell> {
  return { set: value?.text ?? "", setup: setup ?? "", date, state: STATES[verdict] };
}
