/** One thing through the commits: what the log said of it, when that was written, and by which commit. */

import type { IsoDate } from "../../quantities/dates.ts";
import { daysBetween } from "../../quantities/dates.ts";
import type { CommitWithLogs } from "../commit.ts";
import type { Statement, Statements } from "./statements.ts";
import type { PlacedBlock, Step } from "./steps.ts";

export type EntryKind = "written" | "altered" | "taken out";

/** One thing that one commit did to what is said of the subject. */
export interface Entry {
  readonly is: EntryKind;
  /** Undefined of what is on disk and has not been committed. */
  readonly commit: CommitWithLogs | undefined;
  readonly before: PlacedStatement | undefined;
  readonly after: PlacedStatement | undefined;
  /** So many days after the day that it tells of; undefined of what was written on its day, and of definitions. */
  readonly daysLater: number | undefined;
}

export interface PlacedStatement extends Statement {
  /** From the root of the repository. */
  readonly path: string;
  /** In the file of that commit, counted from 1. */
  readonly lineInFile: number;
}

/** @param today when what is on disk is taken to be written */
export function historyOf(steps: readonly Step[], statements: Statements, today: IsoDate): readonly Entry[] {
  return steps.flatMap((step) => entriesOf(step, statements, step.commit?.day ?? today));
}

function entriesOf(step: Step, statements: Statements, written: string): readonly Entry[] {
  const said = (blocks: readonly PlacedBlock[]) => blocks.flatMap((block) => placedIn(block, statements));
  const [was, is] = [said(step.gone), said(step.come)];
  if (was.length === 0 && is.length === 0) return [];
  const own = ownOf(step, less(was, is), less(is, was), statements);
  const entry = (before: PlacedStatement | undefined, after: PlacedStatement | undefined): Entry => ({
    is: before === undefined ? "written" : after === undefined ? "taken out" : "altered",
    commit: step.commit,
    before,
    after,
    daysLater: daysLater((after ?? before)?.day, written),
  });
  const pairs = pairsOf(own.gone, own.come);
  const later = new Map(pairs.map(([before, after]) => [after, before]));
  const paired = new Set(pairs.flat());
  return [
    ...own.come.map((statement) => entry(later.get(statement), statement)),
    ...own.gone.filter((statement) => !paired.has(statement)).map((statement) => entry(statement, undefined)),
  ].sort(byDay);
}

function placedIn({ block, path, line }: PlacedBlock, statements: Statements): readonly PlacedStatement[] {
  return statements
    .in(block)
    .map((statement) => ({ ...statement, path, lineInFile: line + statement.line + 1 }));
}

/** Each as often as it is there more often than among the others: what only moved is no change. */
function less(
  statements: readonly PlacedStatement[],
  others: readonly PlacedStatement[],
): readonly PlacedStatement[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(other.key, (left.get(other.key) ?? 0) + 1);
  return statements.filter((statement) => {
    const count = left.get(statement.key) ?? 0;
    left.set(statement.key, count - 1);
    return count <= 0;
  });
}

interface Own {
  readonly gone: readonly PlacedStatement[];
  readonly come: readonly PlacedStatement[];
}

/** What a merge took over from a branch is the branch's; its own is what no parent had, or every one. */
function ownOf(
  { others }: Step,
  gone: readonly PlacedStatement[],
  come: readonly PlacedStatement[],
  statements: Statements,
): Own {
  if (others.length === 0) return { gone, come };
  const inOthers = others.map(
    (blocks) => new Set(blocks.flatMap((block) => statements.in(block).map(({ key }) => key))),
  );
  return {
    gone: gone.filter((statement) => inOthers.every((keys) => keys.has(statement.key))),
    come: come.filter((statement) => !inOthers.some((keys) => keys.has(statement.key))),
  };
}

/** What stands for what: of the same day, word and characteristic; else the same words on another day. */
function pairsOf(
  gone: readonly PlacedStatement[],
  come: readonly PlacedStatement[],
): [PlacedStatement, PlacedStatement][] {
  const pairs: [PlacedStatement, PlacedStatement][] = [];
  const [restGone, restCome] = [new Set(gone), new Set(come)];
  const pairBy = (key: (statement: PlacedStatement) => string | undefined) => {
    for (const before of [...restGone]) {
      const after = [...restCome].find((statement) => key(statement) === key(before));
      if (after === undefined || key(before) === undefined) continue;
      pairs.push([before, after]);
      restGone.delete(before);
      restCome.delete(after);
    }
  };
  pairBy(({ day, word, name }) => `${day} ${word} ${name}`);
  pairBy(({ day, word, text }) => day && `${word} ${text}`);
  return pairs;
}

function daysLater(day: string | undefined, written: string): number | undefined {
  if (day === undefined) return undefined;
  const days = daysBetween(day as IsoDate, written as IsoDate);
  return days > 0 ? days : undefined;
}

/** Definitions first, then by the day that they tell of. */
function byDay(a: Entry, b: Entry): number {
  const of = ({ before, after }: Entry) => (after ?? before)?.day ?? "";
  return of(a) < of(b) ? -1 : of(a) > of(b) ? 1 : 0;
}
