/** The commands of the program, each loaded when it is called, so that none waits for what it does not need. */
import type { Command } from "./command.ts";

export const commands: ReadonlyMap<string, () => Promise<Command>> = new Map([
  ["check", async () => (await import("./commands/check.ts")).check],
  ["order", async () => (await import("./commands/order.ts")).order],
  ["timeline", async () => (await import("./commands/timeline.ts")).timeline],
  ["outstanding", async () => (await import("./commands/outstanding.ts")).outstanding],
  ["joints", async () => (await import("./commands/joints.ts")).joints],
  ["parts", async () => (await import("./commands/parts.ts")).parts],
  ["lives", async () => (await import("./commands/lives.ts")).lives],
  ["settings", async () => (await import("./commands/settings.ts")).settings],
  ["costs", async () => (await import("./commands/costs.ts")).costs],
  ["identify", async () => (await import("./commands/identify.ts")).identify],
  ["book", async () => (await import("./commands/book.ts")).book],
  ["changes", async () => (await import("./commands/changes.ts")).changes],
  ["history", async () => (await import("./commands/history.ts")).history],
  ["start", async () => (await import("./commands/start.ts")).start],
  ["merge-file", async () => (await import("./commands/merge-file.ts")).mergeFile],
  ["format", async () => (await import("./commands/format.ts")).format],
  ["calc", async () => (await import("./commands/calc.ts")).calc],
  ["serve", async () => (await import("./commands/serve.ts")).serve],
]);

/** One line for each command, for the program's help: loading them all for it would be slow. A test holds both together. */
export const SUMMARIES: readonly (readonly [string, string])[] = [
  ["check", "everything that the log gives reason to say, line by line"],
  ["order", "the parts to order: by supplier, with why, prices, carriage and the day to order by"],
  ["timeline", "what happened, what is to come, and when it will be done"],
  ["outstanding", "what is still open before each hold point, or before one"],
  ["joints", "the torque sheet: each joint, its torque, how it locks, its state"],
  ["parts", "the parts schedule: where each part is, what was decided, its measurements against limits"],
  ["lives", "lifed items: what ends, when, and what is due"],
  ["settings", "the settings, wanted and as set"],
  ["costs", "money and hours by assembly, supplier and month, against the budget"],
  ["identify", "what an unknown part can be, from a few of its dimensions, best first"],
  ["book", "the whole record as one page to keep and print: story, photos, schedules, torque sheet, costs"],
  ["changes", "what changed since the last commit or between two revisions: what was altered stands out"],
  ["history", "what the log said of one part, joint, system or reading over time, and when that was written"],
  ["start", "a new build folder with a first file to fill in; with --git a repository that understands logs"],
  [
    "merge-file",
    "two versions of a log brought together block by block, for git; cotter start --git sets it up",
  ],
  ["format", "the canonical layout: white space of records put in order, prose left alone"],
  ["calc", "one expression with units, with the names of the build around, if there is one"],
  ["serve", "the language server, for any editor that speaks the protocol"],
];
