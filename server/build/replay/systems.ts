/** Fluid systems: opened by what comes off or loose, drained, filled, bled and proved. */
import { compare, convert, multiply, quantityOf } from "../../quantities/quantity.ts";
import { isFault, unlessFault } from "../../quantities/quantity-fault.ts";
import { connectionsOf } from "../connections.ts";
import { CHANGE_SHARE } from "../figures.ts";
import type { ProofComplaint } from "../finding-data/systems.ts";
import type { DatedFact, SystemStage, SystemState } from "../states.ts";
import { proofDoubt, wrongFluid } from "../system-check.ts";
import type { TreeNode } from "../tree/node.ts";
import type { Handlers, Replay } from "./replay.ts";
import type { Growing } from "./state-table.ts";

/** Every system as the log begins. */
export function systemsAtStart(replay: Replay): void {
  for (const node of replay.gathered.tree.ofKind("system")) {
    replay.systems.set(node, {
      node,
      stage: "as_found",
      opened: undefined,
      filled: undefined,
      bled: undefined,
      proved: undefined,
      refusedProof: undefined,
      drained: undefined,
      freshened: undefined,
    });
  }
}

/** A joint was opened: so are the systems that it is on. */
export function openSystemsOn(replay: Replay, joint: TreeNode, fact: DatedFact): void {
  for (const system of connectionsOf(replay).systemsOn(joint))
    openSystem(replay, stateOf(replay, system), fact);
}

export const systemHandlers: Handlers = {
  removed: (replay, fact) => openAroundParts(replay, fact, fact.fact.asUnit),
  stripped: (replay, fact) => openAroundParts(replay, fact, false),
  fitted: (replay, fact) => openAroundParts(replay, fact, false),
  sent: (replay, fact) => openAroundParts(replay, fact, false),

  opened: (replay, fact) => {
    for (const system of systemsIn(replay, fact)) openSystem(replay, system, fact);
  },

  drained: (replay, fact) => {
    for (const system of systemsIn(replay, fact)) {
      openSystem(replay, system, fact);
      system.drained = fact;
    }
  },

  filled: (replay, fact) => {
    for (const system of systemsIn(replay, fact)) {
      complainOfFilling(replay, system, fact);
      if (isChange(replay, system, fact)) system.freshened = fact;
      system.drained = undefined;
      system.filled = fact;
      restage(system);
    }
  },

  bled: (replay, fact) => {
    for (const system of systemsIn(replay, fact)) {
      system.bled = fact;
      restage(system);
    }
  },

  proved: (replay, fact) => {
    for (const system of systemsIn(replay, fact)) {
      const doubt = proofDoubt(replay, system, fact.fact);
      if (doubt === undefined) Object.assign(system, { proved: fact, refusedProof: undefined });
      else {
        system.refusedProof = fact;
        complainOfProof(replay, system, fact, doubt);
      }
      restage(system);
    }
  },
};

/** Whatever was done to it is undone. The first opening since it was last closed is the one that counts. */
function openSystem(replay: Replay, system: Growing<SystemState>, fact: DatedFact): void {
  if (system.stage !== "open") system.opened = fact;
  Object.assign(system, {
    stage: "open",
    filled: undefined,
    bled: undefined,
    proved: undefined,
    refusedProof: undefined,
  } satisfies Partial<SystemState>);
  replay.disturb(system.node, fact);
}

/** The systems of the parts that a fact took off or put on open, but for those that came off whole within a unit. */
function openAroundParts(replay: Replay, fact: DatedFact, asUnit: boolean): void {
  const moved = new Set(
    [...replay.touched].filter((node) => replay.parts.get(node)?.placed?.order === fact.order),
  );
  const { systemsOf } = connectionsOf(replay);
  const whole = asUnit ? unitsWithin(replay, moved) : new Set<TreeNode>();
  for (const system of new Set([...moved].flatMap((part) => systemsOf(part)))) {
    if (!whole.has(system)) openSystem(replay, stateOf(replay, system), fact);
  }
}

/** The systems all of whose parts are among these. */
function unitsWithin(replay: Replay, parts: ReadonlySet<TreeNode>): ReadonlySet<TreeNode> {
  const { systemsOf, partsOf } = connectionsOf(replay);
  const systems = [...parts].flatMap((part) => systemsOf(part));
  return new Set(systems.filter((system) => partsOf(system).every((part) => parts.has(part))));
}

/**
 * The age of the fluid starts with a filling after it was drained, or one of a good part of what the system holds:
 * topping up makes old fluid no younger.
 */
function isChange(replay: Replay, system: SystemState, { fact: { volume } }: DatedFact<"filled">): boolean {
  if (system.drained !== undefined) return true;
  const capacity = replay.definitions.one(system.node, "capacity")?.record.quantity;
  if (capacity === undefined || volume === undefined) return system.stage === "open";
  const least = multiply(capacity, LEAST_CHANGE);
  return !isFault(least) && compare(volume, least) !== -1;
}

const LEAST_CHANGE = quantityOf(CHANGE_SHARE);

function complainOfFilling(replay: Replay, { node }: SystemState, fact: DatedFact<"filled">): void {
  const wrong = wrongFluid(replay, { node }, fact);
  if (wrong !== undefined) {
    replay.complainOf(node, "wrong-fluid", fact.place, { system: node.path, ...wrong });
  }
  const capacity = replay.definitions.one(node, "capacity")?.record.quantity;
  const { volume } = fact.fact;
  if (capacity === undefined || volume === undefined || compare(volume, capacity) !== 1) return;
  const inUnit = unlessFault(convert(capacity, volume.unit)) ?? capacity;
  const data = { system: node.path, volume, capacity: inUnit };
  replay.complainOf(node, "overfilled", fact.place, data);
}

function complainOfProof(
  replay: Replay,
  { node, opened }: SystemState,
  fact: DatedFact<"proved">,
  doubt: ProofComplaint,
): void {
  const seeAlso = opened === undefined ? [] : [{ place: opened.place, role: "opened" }];
  replay.complainOf(node, "proved-while-open", fact.place, { system: node.path, ...doubt }, { seeAlso });
}

function systemsIn(
  replay: Replay,
  fact: DatedFact<"opened" | "drained" | "filled" | "bled" | "proved">,
): Growing<SystemState>[] {
  return replay.targetsOf(fact.fact.what, "system").map(({ node }) => stateOf(replay, node));
}

function stateOf(replay: Replay, node: TreeNode): Growing<SystemState> {
  const system = replay.systems.get(node);
  if (system === undefined) throw new Error(`no state for the system ${node.path}`);
  return system;
}

/** The stage is the furthest of what has been done since it was last opened. */
function restage(system: Growing<SystemState>): void {
  system.stage = stageOf(system);
}

function stageOf({ opened, filled, bled, proved }: SystemState): SystemStage {
  if (proved !== undefined) return "proved";
  if (bled !== undefined) return "bled";
  if (filled !== undefined) return "filled";
  return opened === undefined ? "as_found" : "open";
}
