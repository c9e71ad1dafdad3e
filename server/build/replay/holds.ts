/**
 * Hold points: released where nothing is open, refused where something is, lapsed where something is open again; and
 * what goes on behind one that is shut.
 */

import { connectionsOf } from "../connections.ts";
import { coverOf } from "../cover.ts";
import { isCritical } from "../criticality.ts";
import type { FindingExtras } from "../finding.ts";
import {
  comesBefore,
  firstShut,
  isShut,
  jobsStoppedBy,
  predecessorsOf,
  stopsRunning,
} from "../hold-order.ts";
import { asksFor } from "../leaning.ts";
import { isInUse, isOver, livesOf } from "../lives.ts";
import type { LostLine } from "../lost-lines.ts";
import type { FactWord } from "../lowering/fact.ts";
import type { OpenItem } from "../open-item.ts";
import { openItem, sayOpenItemByName } from "../open-item.ts";
import { openItemsOf, openSnagsAndTests } from "../openness.ts";
import type { DatedFact, HoldState, LapsedReleases } from "../states.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Handlers, Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";

export function holdsAtStart(replay: Replay): void {
  for (const definition of replay.names.every("hold")) {
    replay.holds.set(definition, {
      definition,
      released: undefined,
      lapsed: undefined,
      refused: undefined,
      passedBy: [],
      due: undefined,
    });
  }
}

export const holdHandlers: Handlers = {
  released: (replay, fact) => {
    lapseWhatIsDue(replay, () => true);
    for (const reference of fact.fact.what) {
      const definition = replay.named("hold", reference);
      const hold = definition && replay.holds.get(definition);
      if (hold !== undefined) release(replay, hold, fact);
    }
  },

  ran: (replay, fact) => {
    const run = new Set(replay.everythingOf([fact.fact.target]).map(({ node }) => node));
    lapseWhatIsDue(replay, (node) => run.has(node));
    lapseWhatHasAged(replay);
    const named = replay.names.one(fact.fact.target, TREE_KINDS);
    const targets = named === undefined ? [...run] : [named];
    const stopping = shutHolds(replay).filter(({ definition }) => stopsRunning(replay, definition, targets));
    if (stopping.length > 0)
      complainOfPassing(replay, fact, "running", named?.path ?? fact.fact.target.text, stopping);
    noteWhatFallsDue(replay, fact, run);
  },

  started: (replay, fact) => goOnWith(replay, fact, fact.fact.what),
  worked: (replay, fact) => goOnWith(replay, fact, [fact.fact.on]),
  done: (replay, fact) => goOnWith(replay, fact, fact.fact.what),
};

const TREE_KINDS = ["assembly", "part", "joint", "system", "circuit"] as const;

/** Once a fact has been heard by all: the releases that it takes back, in one complaint. */
export function settleHolds(replay: Replay, fact: DatedFact): void {
  const { inspections } = replay;
  if (!inspections.begun) return;
  const touched = withConnected(replay, new Set([...replay.touched, ...nodesOf(replay, fact)]));
  inspections.touch(touched);
  const released = releasedHolds(replay);
  if (released.length === 0) return;
  const besides = replay.touched.size > 0 || fact.fact.word === "tested";
  if (touched.size === 0 && !besides) return;
  const lapsed = released.flatMap((hold) => {
    forgetWhatIsDone(replay, hold, touched);
    const waiting = (node: TreeNode) => hold.due?.nodes.has(node) === true && !replay.touched.has(node);
    const open = [...openItemsOf(replay, hold.definition, touched)].filter(
      ({ node }) => node === undefined || !waiting(node),
    );
    if (besides) open.push(...openSnagsAndTests(replay, hold.definition));
    if (open.length === 0) return [];
    hold.lapsed = { fact, date: fact.date, open };
    return [hold];
  });
  noteLapse(replay, fact, lapsed);
}

/** A line that could not be read may have opened what it is about. Its own complaint is enough. */
export function loseLine(replay: Replay, line: LostLine): void {
  replay.lose(line);
  const { nodes, text, place } = line;
  if (nodes === undefined) return;
  for (const hold of releasedHolds(replay)) {
    const covered = coverOf(replay, hold.definition).nodes;
    if (![...nodes].some((node) => covered.has(node))) continue;
    hold.lapsed = {
      fact: undefined,
      date: replay.date,
      open: [openItem("line-unread", "", { text }, place)],
    };
    lapseThoseAfter(replay, hold);
  }
}

/** At the end of the diary: what fell due and was not done. */
export function finishHolds(replay: Replay): void {
  lapseWhatIsDue(replay, () => true);
  lapseWhatHasAged(replay);
  for (const lapse of replay.lapses) complainOfLapse(replay, lapse);
}

function release(replay: Replay, hold: Growing<HoldState>, fact: DatedFact<"released">): void {
  const { definition } = hold;
  const open = replay.inspections.openItems(replay, definition);
  if (open.length === 0) {
    Object.assign(hold, {
      released: fact,
      lapsed: undefined,
      refused: undefined,
      passedBy: [],
      due: undefined,
    } satisfies Partial<HoldState>);
    return;
  }
  hold.refused = { fact, open };
  replay.complain(
    "released-with-open-items",
    fact.place,
    { hold: definition.name, title: definition.title, open: open.map(sayOpenItemByName) },
    aboutOpen(replay, open),
  );
}

function aboutOpen(replay: Replay, open: readonly OpenItem[]): FindingExtras {
  return {
    seeAlso: open.map((item) => ({ place: item.place, role: sayOpenItemByName(item) })),
    critical: open.some(({ node }) => node !== undefined && isCritical(replay, node)),
  };
}

function shutHolds({ holds }: Replay): Growing<HoldState>[] {
  return [...holds.growing()].filter(isShut);
}

function releasedHolds({ holds }: Replay): Growing<HoldState>[] {
  return [...holds.growing()].filter((hold) => !isShut(hold));
}

/** Jobs that are begun, worked on or finished while a hold point stops them: one complaint for each, until it is released. */
function goOnWith(
  replay: Replay,
  fact: DatedFact<"started" | "worked" | "done">,
  references: DatedFact<"started">["fact"]["what"],
): void {
  lapseWhatHasAged(replay);
  for (const reference of references) {
    const job = replay.named("job", reference);
    if (job === undefined) continue;
    const stopping = shutHolds(replay).filter(
      ({ definition }) =>
        jobsStoppedBy(replay, definition).includes(job) || predecessorsOf(replay, job).includes(definition),
    );
    const anew = stopping.filter(({ passedBy }) => !passedBy.includes(job));
    if (anew.length > 0 && anew.length === stopping.length)
      complainOfPassing(replay, fact, "job", job.name, stopping);
    for (const hold of anew) hold.passedBy = [...hold.passedBy, job];
  }
}

function complainOfPassing(
  replay: Replay,
  fact: DatedFact,
  is: "job" | "running",
  what: string,
  stopping: readonly HoldState[],
): void {
  const among = stopping.map(({ definition }) => definition);
  const first = firstShut(replay, among);
  const hold = first && replay.holds.get(first);
  if (first === undefined || hold === undefined) return;
  const { lapsed, refused } = hold;
  const seeAlso = [{ place: first.header, role: "hold point" }];
  if (refused !== undefined) seeAlso.push({ place: refused.fact.place, role: "release refused" });
  for (const { place } of lapsed?.open ?? []) seeAlso.push({ place, role: "open again" });
  const open = refused?.open ?? lapsed?.open ?? [];
  replay.complain(
    "past-hold",
    fact.place,
    {
      is,
      what,
      hold: first.name,
      title: first.title,
      stoppedBy: among.includes(first) ? undefined : among[0]?.name,
      lapsed: lapsed?.date,
      refused: refused?.fact.date,
      unread: open.length > 0 && open.every(({ code }) => code === "line-unread"),
    },
    { seeAlso },
  );
}

/** A release that was given behind a hold point that is shut again is none either. */
function lapseThoseAfter(replay: Replay, hold: HoldState): Growing<HoldState>[] {
  return releasedHolds(replay).filter((other) => {
    if (!comesBefore(replay, hold.definition, other.definition)) return false;
    const { lapsed } = hold;
    other.lapsed = lapsed;
    return lapsed !== undefined;
  });
}

function noteLapse(replay: Replay, fact: DatedFact, lapsed: readonly HoldState[]): void {
  if (lapsed.length === 0) return;
  const all = [...lapsed, ...lapsed.flatMap((hold) => lapseThoseAfter(replay, hold))];
  const open = new Map(
    lapsed.flatMap((hold) => hold.lapsed?.open ?? []).map((item) => [sayOpenItemByName(item), item]),
  );
  replay.lapses.push({
    fact,
    holds: all.map(({ definition }) => definition),
    open: [...open.values()],
  });
}

/** A release that was taken back is of the past once it has been given again. */
function complainOfLapse(replay: Replay, { fact, holds, open }: LapsedReleases): void {
  const releasedAgain = holds.every((hold) => (replay.holds.get(hold)?.released?.order ?? -1) > fact.order);
  replay.complain(
    "release-lapsed",
    fact.place,
    { holds: holds.map(({ name }) => name), open: open.map(sayOpenItemByName) },
    { ...aboutOpen(replay, open), standing: releasedAgain ? "past" : "current" },
  );
}

/** Facts about jobs, hold points and gauges name nothing of the tree. */
const ELSEWHERE: ReadonlySet<FactWord> = new Set(["started", "done", "released", "calibrated"]);

/** What a fact names, as far as it bears on whether something is open. */
function nodesOf(replay: Replay, { fact }: DatedFact): readonly TreeNode[] {
  // Running makes due, which is noted apart; everything else opens or closes what it names.
  if (fact.word === "ran" || ELSEWHERE.has(fact.word)) return [];
  if (fact.word === "changed") return replay.everythingOf([fact.target]).map(({ node }) => node);
  if ("what" in fact) return replay.everythingOf(fact.what).map(({ node }) => node);
  if (fact.word === "decided")
    return replay.everythingOf(fact.items.map(({ reference }) => reference)).map(({ node }) => node);
  if (fact.word === "measured" || fact.word === "set") {
    const node =
      fact.name === undefined ? replay.names.member(replay.definitions, fact.target).node : undefined;
    return node === undefined ? replay.everythingOf([fact.target]).map((target) => target.node) : [node];
  }
  return [];
}

/** What is touched with a thing: the joints and systems of a part, the joints that it sets, the systems that a joint is on. */
function withConnected(replay: Replay, touched: Set<TreeNode>): ReadonlySet<TreeNode> {
  const { jointsOf, jointsSetBy, systemsOf, systemsOn } = connectionsOf(replay);
  const connections = [jointsOf, jointsSetBy, systemsOf, systemsOn];
  for (const node of [...touched]) {
    for (const connected of connections.flatMap((of) => of(node))) touched.add(connected);
  }
  return touched;
}

/** Rechecks and lives that have come due with running lapse a release only when something leans on them undone. */
function noteWhatFallsDue(replay: Replay, fact: DatedFact<"ran">, run: ReadonlySet<TreeNode>): void {
  const { definitions, inspections } = replay;
  if (!inspections.begun) return;
  const wearing = [...run].filter(
    (node) =>
      definitions.one(node, "recheck") !== undefined ||
      definitions.all(node, "life").some(({ record }) => record.life.counted === "running"),
  );
  inspections.touch(wearing);
  for (const hold of releasedHolds(replay)) {
    const open = openItemsOf(replay, hold.definition, wearing).flatMap(({ node }) => node ?? []);
    if (open.length === 0) continue;
    const nodes = new Set([...(hold.due?.nodes ?? []), ...open]);
    hold.due = { fact: hold.due?.fact ?? fact, nodes };
  }
}

/** What has been seen to since it fell due is due no more. */
function forgetWhatIsDone(replay: Replay, hold: Growing<HoldState>, touched: ReadonlySet<TreeNode>): void {
  if (hold.due === undefined) return;
  const { fact, nodes } = hold.due;
  const seenTo = [...nodes].filter((node) => touched.has(node));
  const open = new Set(openItemsOf(replay, hold.definition, seenTo).map(({ node }) => node));
  const left = [...nodes].filter((node) => !touched.has(node) || open.has(node));
  hold.due = left.length === 0 ? undefined : { fact, nodes: new Set(left) };
}

function lapseWhatIsDue(replay: Replay, leansOn: (node: TreeNode) => boolean): void {
  for (const hold of releasedHolds(replay)) {
    const { due } = hold;
    if (due === undefined || ![...due.nodes].some(leansOn)) continue;
    const open = openItemsOf(replay, hold.definition, due.nodes);
    if (open.length === 0) continue;
    hold.lapsed = { fact: due.fact, date: due.fact.date, open };
    noteLapse(replay, due.fact, [hold]);
  }
}

/** Lives that have run out by the calendar lapse a release without a fact; they are complained about themselves. */
function lapseWhatHasAged(replay: Replay): void {
  const asking = releasedHolds(replay).filter(({ definition }) => asksFor(definition, "lives"));
  if (asking.length === 0) return;
  const aged = lifedParts(replay).filter((node) => isAged(replay, node));
  for (const hold of asking) {
    const open = openItemsOf(replay, hold.definition, aged);
    if (open.length === 0) continue;
    hold.lapsed = { fact: undefined, date: replay.date, open };
    lapseThoseAfter(replay, hold);
  }
}

function isAged(replay: Replay, node: TreeNode): boolean {
  const part = replay.parts.get(node);
  if (part === undefined || !isInUse(replay, part)) return false;
  return livesOf(replay, part).some((life) => life.is === "dated" && isOver(life, replay.date));
}

/** The parts that have a life, or whose item has a last day. */
function lifedParts({ parts, definitions }: Replay): readonly TreeNode[] {
  return [...parts.values()]
    .filter(({ node, item }) => item.expires !== undefined || definitions.one(node, "life") !== undefined)
    .map(({ node }) => node);
}
