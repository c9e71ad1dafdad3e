/** How things stand today by the one revision and by the other. */
import type { Build } from "../../build/build.ts";
import type { NamedDefinition } from "../../build/definitions.ts";
import { securing } from "../../build/securing.ts";
import type { Place } from "../../build/source.ts";
import type {
  DatedFact,
  HoldState,
  JobState,
  JointState,
  PartState,
  SnagState,
  SystemState,
  TestState,
} from "../../build/states.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { sayPlace } from "../../rules/order/place-words.ts";
import type { Change, ChangedThing } from "./change.ts";
import { change, inAfter } from "./change.ts";
import type { PairedThings } from "./things.ts";

/** A state in words, and the line that it came from. */
interface SaidState {
  readonly text: string;
  readonly place: Place | undefined;
  /** It was passed, and is open again. */
  readonly lapsed?: boolean;
}

export function stateChanges(before: Build, after: Build, { both }: PairedThings): Change[] {
  const ofThings = both.flatMap(({ before: old, after: later }) => {
    const was = old.node ? stateOfNode(before, old.node) : stateOfNamed(before, old.named);
    const is = later.node ? stateOfNode(after, later.node) : stateOfNamed(after, later.named);
    return was === undefined || is === undefined ? [] : moved(later, was, is);
  });
  return [...ofThings, ...snagChanges(before, after), ...testChanges(before, after)];
}

function moved(
  { ref, what, title }: { ref: string; what: ChangedThing; title: string | undefined },
  was: SaidState,
  is: SaidState,
): Change[] {
  if (was.text === is.text) return [];
  const standsOut = is.lapsed === true;
  const [before, at] = [was.text, inAfter(is.place)];
  return [change({ kind: "state-changed", ref, what, title, before, after: is.text, standsOut, at })];
}

function stateOfNode({ standing }: Build, node: TreeNode): SaidState | undefined {
  const part = standing.parts.get(node);
  if (part !== undefined) return ofPart(part);
  const joint = standing.joints.get(node);
  if (joint !== undefined) return ofJoint(joint, securing(standing, node).secured);
  const system = standing.systems.get(node);
  return system && ofSystem(system);
}

function stateOfNamed({ standing }: Build, named: NamedDefinition | undefined): SaidState | undefined {
  const job = named && standing.jobs.get(named);
  if (job !== undefined) return ofJob(job);
  const hold = named && standing.holds.get(named);
  return hold && ofHold(hold);
}

function ofPart({ place, placed, missing, item, decision }: PartState): SaidState {
  const words = [
    sayPlace(missing ? "missing" : place),
    item.number > 1 && !item.inHand ? `no. ${item.number} in its place` : "",
    decision === undefined
      ? ""
      : `${decision.settled === undefined ? "to " : ""}${sayDecision(decision.decision, decision.settled !== undefined)}`,
  ];
  return {
    text: words.filter((word) => word !== "").join(", "),
    place: newest([placed, decision?.fact, decision?.settled]),
  };
}

const DONE: Readonly<Record<string, string>> = {
  reuse: "used again",
  recondition: "reconditioned",
  repair: "repaired",
  renew: "renewed",
  make: "made",
  modify: "modified",
  scrap: "scrapped",
};

function sayDecision(decision: string, settled: boolean): string {
  return settled ? (DONE[decision] ?? decision) : decision;
}

function ofJoint(state: JointState, secured: boolean): SaidState {
  const { stage, opened, nipped, tightened, locked, marked, seen, rechecked } = state;
  const text = `${stage.replace("_", " ")}, ${secured ? "secured" : "not secured"}`;
  return { text, place: newest([opened, nipped, tightened, locked?.fact, marked, seen, rechecked]) };
}

function ofSystem({ stage, opened, filled, bled, proved, drained }: SystemState): SaidState {
  return { text: stage.replace("_", " "), place: newest([opened, filled, bled, proved, drained]) };
}

function ofJob({ started, done }: JobState): SaidState {
  if (done !== undefined) return { text: `done on ${done.date}`, place: done.place };
  if (started !== undefined) return { text: `begun on ${started.date}`, place: started.place };
  return { text: "not begun", place: undefined };
}

function ofHold({ released, lapsed }: HoldState): SaidState {
  if (lapsed !== undefined)
    return { text: `release lapsed on ${lapsed.date}`, place: lapsed.fact?.place, lapsed: true };
  if (released !== undefined) return { text: `released on ${released.date}`, place: released.place };
  return { text: "shut", place: undefined };
}

function newest(facts: readonly (DatedFact | undefined)[]): Place | undefined {
  const known = facts.filter((fact) => fact !== undefined);
  return known.sort((a, b) => a.order - b.order).at(-1)?.place;
}

function snagChanges(before: Build, after: Build): Change[] {
  return [...after.standing.snags].flatMap(([name, snag]) => {
    const old = before.standing.snags.get(name);
    const [was, is] = [old && sayReported(old), sayReported(snag)];
    if (was === is) return [];
    const place = newest([snag.fact, snag.cleared, snag.conceded]);
    const about = { kind: "state-changed", ref: name, what: "snag" } as const;
    return [change({ ...about, before: was, after: is, at: inAfter(place) })];
  });
}

function sayReported({ fact, cleared, conceded }: SnagState): string {
  if (cleared !== undefined) return `cleared on ${cleared.date}`;
  if (conceded !== undefined) return `conceded on ${conceded.date}`;
  return `open since ${fact.date}`;
}

function testChanges(before: Build, after: Build): Change[] {
  const old = new Map(testsOf(before).map((test) => [test.ref, test.state]));
  return testsOf(after).flatMap(({ ref, state }) => {
    const was = old.get(ref);
    if (was?.pass === state.pass) return [];
    const about = { kind: "state-changed", ref, what: "test" } as const;
    return [
      change({
        ...about,
        before: was === undefined ? "not tested" : sayTest(was),
        after: sayTest(state),
        at: inAfter(state.fact.place),
      }),
    ];
  });
}

function testsOf({ standing }: Build): { readonly ref: string; readonly state: TestState }[] {
  const ofNodes = [...standing.tests].map(([{ path }, tests]) => [path, tests] as const);
  const ofHolds = [...standing.holdTests].map(([{ name }, tests]) => [name, tests] as const);
  return [...ofNodes, ...ofHolds].flatMap(([path, tests]) =>
    [...tests.values()].map((state) => ({
      ref: state.name === undefined ? path : `${path}.${state.name}`,
      state,
    })),
  );
}

function sayTest({ pass, fact }: TestState): string {
  return `${pass ? "passed" : "failed"} on ${fact.date}`;
}
