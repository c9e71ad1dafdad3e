/** What a hold point still finds open: one thing that keeps it shut, as data, and in a few words. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Quantity } from "../quantities/quantity.ts";
import { formatQuantity } from "../quantities/quantity.ts";
import type { Condition, Decision } from "./lowering/fact.ts";
import type { Place } from "./source.ts";
import type { TreeNode } from "./tree/node.ts";

/** A figure that is not as it must be. */
export interface OutsideData {
  readonly name: string;
  readonly reading: Quantity;
  readonly limit: Quantity;
  readonly side: "lower" | "upper";
  readonly uncertainty: Quantity | undefined;
}

/** What each kind of open item knows. */
export interface OpenItemData {
  "part-off": { readonly where: "off" | "away" | "missing" | "gone"; readonly since: IsoDate | undefined };
  "part-on-trial": { readonly since: IsoDate | undefined };
  "part-condemned": { readonly why: Condition | Decision; readonly since: IsoDate };
  /** It asks for a second pair of eyes, and has had none since it was put on. */
  "part-not-seen": { readonly since: IsoDate };
  "limit-refused": OutsideData;
  "limit-unproven": OutsideData;
  "limit-unmeasured": { readonly name: string };
  "joint-unsecured": { readonly lacks: readonly string[] };
  "system-open": { readonly since: IsoDate | undefined };
  "system-not-bled": { readonly since: IsoDate | undefined };
  "system-not-proved": { readonly since: IsoDate | undefined; readonly refused: boolean };
  "system-wrong-fluid": { readonly asked: string; readonly filled: string };
  "circuit-at-fault": { readonly fault: "fuse over wire" | "fuse under load" };
  "circuit-untested": { readonly why: TestLack };
  "setting-not-set": { readonly name: string };
  "setting-out": OutsideData;
  "life-over":
    | { readonly is: "date"; readonly ends: IsoDate; readonly by: IsoDate }
    | { readonly is: "running"; readonly used: Quantity; readonly amount: Quantity };
  "age-unknown": { readonly counted: "made" | "fitted" | "running" };
  "test-not-passed": { readonly name: string; readonly how: string | undefined; readonly why: TestLack };
  "snag-open": { readonly name: string; readonly note: string | undefined };
  "job-not-done": { readonly started: boolean };
  "hold-shut": { readonly lapsed: boolean };
  "line-unread": { readonly text: string };
}

/** Why a test does not count: never tried, tried and failed, or passed before the thing was disturbed. */
export type TestLack = "never" | "failed" | "disturbed";

export type OpenCode = keyof OpenItemData;

export type OpenItem<C extends OpenCode = OpenCode> = {
  [Code in C]: {
    readonly code: Code;
    /** The thing of the tree that it is about; undefined of a snag on nothing, a job, a hold point, a line. */
    readonly node: TreeNode | undefined;
    /** The path of the thing, or the name of the job, hold point or snag; empty of a line. */
    readonly ref: string;
    readonly data: OpenItemData[Code];
    /** The line to look at: what opened it, else what asks for it. */
    readonly place: Place;
  };
}[C];

export function openItem<C extends OpenCode>(
  code: C,
  subject: TreeNode | string,
  data: OpenItemData[C],
  place: Place,
): OpenItem {
  const [node, ref] = typeof subject === "string" ? [undefined, subject] : [subject, subject.path];
  return { code, node, ref, data, place } as unknown as OpenItem;
}

type Say = { readonly [C in OpenCode]: (data: OpenItemData[C]) => string };

const SAY: Say = {
  "part-off": ({ where, since }) => `${where === "gone" ? "not there" : where}${sinceThe(since)}`,
  "part-on-trial": ({ since }) => `fitted for trial only${sinceThe(since)}`,
  "part-condemned": ({ why, since }) => `condemned: ${why.replaceAll("_", " ")} on ${since}`,
  "part-not-seen": ({ since }) => `no second pair of eyes since ${since}`,
  "limit-refused": (data) => `${data.name} ${figures(data)}: ${data.side === "upper" ? "over" : "under"} it`,
  "limit-unproven": (data) => `${data.name} ${figures(data)}: not proved either way`,
  "limit-unmeasured": ({ name }) => `${name} is not measured`,
  "joint-unsecured": ({ lacks }) => `not secured: ${lacks.join(", ")}`,
  "system-open": ({ since }) => `opened${onThe(since)} and not filled since`,
  "system-not-bled": ({ since }) => `not bled${sinceThe(since)}`,
  "system-not-proved": ({ since, refused }) =>
    `not proved${sinceThe(since)}${refused ? "; the proof there is does not count" : ""}`,
  "system-wrong-fluid": ({ asked, filled }) => `filled with ${filled} where ${asked} is asked for`,
  "circuit-at-fault": ({ fault }) =>
    fault === "fuse over wire" ? "its fuse is over what the wire carries" : "its fuse is under the load",
  "circuit-untested": ({ why }) => `not tested: ${lackInWords(why)}`,
  "setting-not-set": ({ name }) => `${name} is not set`,
  "setting-out": (data) => `${data.name} ${figures(data)}: out of its setting`,
  "life-over": (data) =>
    data.is === "date"
      ? `its life ends on ${data.ends}, before ${data.by}`
      : `its life of ${formatQuantity(data.amount)} running is used up: ${formatQuantity(data.used)}`,
  "age-unknown": ({ counted }) =>
    counted === "running" ? "its running before the log is unknown" : `when it was ${counted} is unknown`,
  "test-not-passed": ({ name, how, why }) =>
    `test ${name}${how === undefined ? "" : ` (${how})`}: ${lackInWords(why)}`,
  "snag-open": ({ name, note }) => `snag ${name}${note === undefined ? "" : ` (${note})`} is not cleared`,
  "job-not-done": ({ started }) => (started ? "the job is not finished" : "the job is not begun"),
  "hold-shut": ({ lapsed }) => (lapsed ? "its release has lapsed" : "it is not released"),
  "line-unread": ({ text }) => `this line could not be read: ${text}`,
};

/** What is open, in words that follow its name. */
export function sayOpenItem({ code, data }: OpenItem): string {
  return (SAY[code] as (data: OpenItemData[OpenCode]) => string)(data);
}

/** With its name before it: `front.left.hub: off since 2026-05-02`. */
export function sayOpenItemByName(item: OpenItem): string {
  return item.ref === "" ? sayOpenItem(item) : `${item.ref}: ${sayOpenItem(item)}`;
}

function figures({ reading, limit, side, uncertainty }: OutsideData): string {
  const doubt = uncertainty === undefined ? "" : ` ± ${formatQuantity(uncertainty)}`;
  return `${formatQuantity(reading)}${doubt} against ${side === "upper" ? "max" : "min"} ${formatQuantity(limit)}`;
}

function lackInWords(why: TestLack): string {
  return { never: "not tried", failed: "it failed", disturbed: "disturbed since it passed" }[why];
}

function sinceThe(date: IsoDate | undefined): string {
  return date === undefined ? "" : ` since ${date}`;
}

function onThe(date: IsoDate | undefined): string {
  return date === undefined ? "" : ` on ${date}`;
}
