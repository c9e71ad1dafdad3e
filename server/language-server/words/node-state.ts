/** How a thing of the tree stands, in a few words: for hovers, lists and the line above its block. */
import type { Build } from "../../build/build.ts";
import { circuitFaults } from "../../build/circuits.ts";
import { condemnation } from "../../build/condemnation.ts";
import { outsideLimits } from "../../build/judgement.ts";
import { securing } from "../../build/securing.ts";
import type { Standing } from "../../build/standing.ts";
import type { DatedFact } from "../../build/states.ts";
import { systemLack } from "../../build/system-check.ts";
import { testLack } from "../../build/tests.ts";
import type { TreeNode } from "../../build/tree/node.ts";
import { below } from "../../build/tree/node.ts";
import { whereabouts } from "../../build/whereabouts.ts";
import { sayPlace } from "../../rules/order/place-words.ts";

/** `off since 2026-05-02, to be renewed`; `not secured: not locked`; `3 of 12 parts not on, 2 of 5 joints not secured`. */
export function stateOf(build: Build, node: TreeNode): string {
  switch (node.kind) {
    case "part":
      return ofPart(build, node);
    case "joint":
      return ofJoint(build, node);
    case "system":
      return ofSystem(build, node);
    case "circuit":
      return ofCircuit(build, node);
    default:
      return ofAssembly(build, node);
  }
}

/** Whether a thing is not as it will have to be: not on, not secured, not tested. */
export function isAmiss(build: Build, node: TreeNode): boolean {
  const { standing } = build;
  switch (node.kind) {
    case "part":
      return whereabouts(standing, node)?.place !== "on" || isCondemned(build, node);
    case "joint":
      return standing.joints.has(node) && !securing(standing, node).secured;
    case "system": {
      const state = standing.systems.get(node);
      return state !== undefined && systemLack(standing, state) !== undefined;
    }
    case "circuit":
      return testLack(standing, node) !== undefined || circuitFaults(standing, node).length > 0;
    default:
      return false;
  }
}

/** Whether a part is on although its newest reading is outside a limit. */
export function isOnOutOfLimits(standing: Standing, node: TreeNode): boolean {
  return limitsMissed(standing, node).length > 0;
}

/** The characteristics of a part that is on whose newest reading is outside a limit. */
function limitsMissed(standing: Standing, node: TreeNode): readonly string[] {
  const part = standing.parts.get(node);
  if (part === undefined || whereabouts(standing, node)?.place !== "on") return [];
  return [...new Set(outsideLimits(standing, part.item).map(({ reading }) => reading.name))];
}

/** Of goods that are kept on the shelf, how many there are; undefined of what is not on the shelf. */
export function goodsInHand(standing: Standing, node: TreeNode): number | undefined {
  if (whereabouts(standing, node)?.place !== "shelf") return undefined;
  return standing.supply.get(node)?.inHand ?? 0;
}

function sayInHand(count: number): string {
  return count === 0 ? "none in hand" : `${count} in hand`;
}

function isCondemned({ standing }: Build, node: TreeNode): boolean {
  const part = standing.parts.get(node);
  return part !== undefined && condemnation(standing, part) !== undefined;
}

function ofPart({ standing }: Build, node: TreeNode): string {
  const part = standing.parts.get(node);
  const where = whereabouts(standing, node);
  if (part === undefined || where === undefined) return "";
  const { place, state } = where;
  const with_ = state.node === node ? "" : ` with ${state.node.path}`;
  const condemned = condemnation(standing, part);
  const inHand = goodsInHand(standing, node);
  const whereItIs = inHand === undefined ? sayPlace(place) : sayInHand(inHand);
  const { decision } = part;
  const missed = limitsMissed(standing, node);
  const words = [
    part.missing ? sayPlace("missing") : `${whereItIs}${with_}${since(state.placed)}`,
    missed.length === 0 ? undefined : `out of limits: ${missed.join(", ")}`,
    condemned === undefined ? undefined : `condemned: ${condemned.why.replaceAll("_", " ")}`,
    decision === undefined || decision.settled !== undefined || decision.decision === condemned?.why
      ? undefined
      : `decided: ${decision.decision}`,
  ];
  return words.filter((word) => word !== undefined).join(", ");
}

function ofJoint({ standing }: Build, node: TreeNode): string {
  if (!standing.joints.has(node)) return "";
  const { secured, lacks } = securing(standing, node);
  return secured ? "secured" : `not secured: ${lacks.join(", ")}`;
}

function ofSystem({ standing }: Build, node: TreeNode): string {
  const state = standing.systems.get(node);
  if (state === undefined) return "";
  const lack = systemLack(standing, state);
  const stage = state.stage.replaceAll("_", " ");
  return lack === undefined ? stage : `${stage}, wants ${lack}`;
}

function ofCircuit({ standing }: Build, node: TreeNode): string {
  const faults = circuitFaults(standing, node).map(({ is }) => is);
  const untested = testLack(standing, node);
  const words = [...faults, ...(untested === undefined ? [] : [`not tested (${TESTS[untested]})`])];
  return words.length === 0 ? "tested" : words.join(", ");
}

const TESTS = { never: "not tried", failed: "it failed", disturbed: "disturbed since" } as const;

function ofAssembly(build: Build, node: TreeNode): string {
  const inner = [...below(node)];
  const parts = inner.filter(({ kind }) => kind === "part");
  const off = parts.filter((part) => whereabouts(build.standing, part)?.place !== "on");
  const joints = inner.filter(({ kind }) => kind === "joint");
  const open = joints.filter((joint) => isAmiss(build, joint));
  const words = [
    parts.length === 0 ? undefined : countOf(off.length, parts.length, "part", "not on", "on"),
    joints.length === 0 ? undefined : countOf(open.length, joints.length, "joint", "not secured", "secured"),
  ];
  return words.filter((word) => word !== undefined).join(", ");
}

function countOf(some: number, all: number, what: string, not: string, is: string): string {
  const plural = all === 1 ? what : `${what}s`;
  return some === 0 ? `${all} ${plural} ${is}` : `${some} of ${all} ${plural} ${not}`;
}

function since(fact: DatedFact | undefined): string {
  return fact === undefined ? "" : ` since ${fact.date}`;
}
