/**
 * Whether a joint is secured: torqued within its torque by a wrench in range and in date, or set within its limit;
 * locked, marked and seen as it asks; nothing loosened since, no recheck due, and nothing wrong with it that is an error
 * by the rules. What a build makes of a rule's severity, or waives, changes none of this.
 */
import { isCritical, joinedParts } from "./criticality.ts";
import { faultsOf } from "./joint-faults.ts";
import { lockLack } from "./joint-lock.ts";
import { dueRecheck } from "./joint-recheck.ts";
import type { JointSetting, SetBy } from "./joint-setting.ts";
import { newestOf, setBy } from "./joint-setting.ts";
import { isGrave, torqueFault } from "./joint-torque.ts";
import { Kept } from "./kept.ts";
import { later } from "./later.ts";
import { pastUnknown } from "./past.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact, JointState } from "./states.ts";
import type { TreeNode } from "./tree/node.ts";
import type { Wanting } from "./wanting.ts";
import { sayWanting } from "./wanting-words.ts";
import { whereabouts } from "./whereabouts.ts";

export interface Securing {
  readonly secured: boolean;
  /** What comes first is to be done first. */
  readonly wanting: readonly Wanting[];
  /** What is wanting, in a few words each. */
  readonly lacks: readonly string[];
  /** Where the first of it stands. */
  readonly place: Place | undefined;
}

export function securing(standing: Standing, joint: TreeNode): Securing {
  return securings.of(standing, joint, [], (own) => secure(own, joint));
}

const securings = new Kept<TreeNode, Securing>();

function secure(standing: Standing, joint: TreeNode): Securing {
  const wanting = [...new Wants(standing, joint).all()];
  return {
    secured: wanting.length === 0,
    wanting,
    lacks: wanting.map(sayWanting),
    place: wanting.find(({ place }) => place !== undefined)?.place,
  };
}

class Wants {
  private readonly standing: Standing;
  private readonly node: TreeNode;
  private readonly state: JointState;

  constructor(standing: Standing, node: TreeNode) {
    const state = standing.joints.get(node);
    if (state === undefined) throw new Error(`${node.path} is no joint`);
    this.standing = standing;
    this.node = node;
    this.state = state;
  }

  *all(): Generator<Wanting> {
    yield* this.ofTightness();
    for (const fault of faultsOf(this.standing, this.node)) {
      if (fault.grave) yield { code: "joint-wrong", fault, place: fault.place, since: undefined };
    }
  }

  private *ofTightness(): Generator<Wanting> {
    const { stage, apart, opened, nipped, tightened } = this.state;
    const by = setBy(this.standing, this.node);
    if (by !== undefined && !this.isTrusted()) yield* this.ofSetting(by);
    else if (tightened !== undefined) yield* this.ofTightening(tightened);
    else if (nipped !== undefined) yield { code: "joint-nipped", by: nipped.fact.word, ...this.due(nipped) };
    else if (stage === "open" || apart) yield { code: "joint-open", ...this.due(this.lastOpening(opened)) };
    else if (!this.isTrusted()) yield { code: "joint-unproven", ...this.due(undefined) };
    else yield* this.ofRecheck();
  }

  /** As found, on a vehicle whose past is known. */
  private isTrusted(): boolean {
    return this.state.stage === "as_found" && !pastUnknown(this.standing);
  }

  private *ofTightening(tightened: DatedFact<"torqued" | "tightened" | "rechecked">): Generator<Wanting> {
    const { without, hardware } = this.state;
    if (without !== undefined)
      yield { code: "torqued-before-fitted", part: without.path, ...this.due(tightened) };
    yield* this.ofTrial();
    yield* this.ofFigure(tightened);
    if (hardware === "self-locking used again" && isCritical(this.standing, this.node))
      yield { code: "self-locking-reused", ...this.due(tightened) };
    if (hardware === "single-use used again") yield { code: "single-use-refitted", ...this.due(tightened) };
    yield* this.ofFinish(tightened);
    yield* this.ofRecheck();
  }

  private *ofTrial(): Generator<Wanting> {
    for (const part of joinedParts(this.standing, this.node)) {
      const where = whereabouts(this.standing, part);
      if (where?.place === "trial") {
        yield { code: "part-on-trial", part: part.path, ...this.due(where.state.placed) };
        return;
      }
    }
  }

  private *ofFigure(tightened: DatedFact): Generator<Wanting> {
    const { reading } = this.state;
    if (reading === undefined) {
      const torque = this.standing.definitions.one(this.node, "torque")?.record.torque;
      const byHand = torque === undefined ? !isCritical(this.standing, this.node) : torque.form === "by hand";
      if (!byHand) yield { code: "tightened-by-feel", ...this.due(tightened) };
      return;
    }
    const fault = torqueFault(this.standing, this.node, reading);
    if (fault !== undefined && isGrave(fault))
      yield { code: "torque-outside", fault, ...this.due(reading.fact) };
    for (const { is, gauge } of reading.doubts) {
      const code = is === "out of date" ? "gauge-out-of-date" : "gauge-out-of-range";
      yield { code, gauge: gauge.name, ...this.due(reading.fact) };
    }
  }

  private *ofSetting(by: SetBy): Generator<Wanting> {
    const what = `${by.node.path}.${by.name}`;
    const setting = newestOf(this.standing, this.state);
    if (setting === undefined) {
      const since = this.lastOpening(this.state.nipped ?? this.state.opened);
      const place = since?.place ?? placeAt(by.sourced.site, by.sourced.record.at);
      yield { code: "joint-not-set", what, verdict: "none", place, since };
      return;
    }
    const verdict = refusal(setting);
    if (verdict !== undefined) yield { code: "joint-not-set", what, verdict, ...this.due(setting.fact) };
    yield* this.ofTrial();
    if (this.state.hardware === "single-use used again")
      yield { code: "single-use-refitted", ...this.due(setting.fact) };
    yield* this.ofFinish(setting.fact);
    yield* this.ofRecheck();
  }

  /** Lock, mark and second pair of eyes. */
  private *ofFinish(done: DatedFact): Generator<Wanting> {
    const { locked, marked, seen, seenBySame } = this.state;
    const { definitions } = this.standing;
    const lack = lockLack(this.standing, this.state);
    if (lack !== undefined)
      yield { code: "lock-missing", lack, ...this.due(lack.is === "not locked" ? done : locked?.fact) };
    if (definitions.one(this.node, "mark")?.record.yes === true && marked === undefined)
      yield { code: "mark-missing", ...this.due(done) };
    if (definitions.one(this.node, "second_check")?.record.yes !== true || seen !== undefined) return;
    const last = locked !== undefined && locked.fact.order > done.order ? locked.fact : done;
    if (seenBySame === undefined) yield { code: "not-seen", ...this.due(last) };
    else yield { code: "seen-by-same", ...this.due(seenBySame) };
  }

  private *ofRecheck(): Generator<Wanting> {
    const recheck = dueRecheck(this.standing, this.state);
    if (recheck === undefined) return;
    yield { code: "recheck-due", recheck, ...this.due(this.state.recheckDue ?? this.state.tightened) };
  }

  /** What left it open last: its own opening, or the last of its parts to come to it. */
  private lastOpening(opened: DatedFact | undefined): DatedFact | undefined {
    let last = opened;
    for (const part of joinedParts(this.standing, this.node)) {
      last = later(last, this.standing.parts.get(part)?.placed);
    }
    return last;
  }

  private due(since: DatedFact | undefined): { place: Place | undefined; since: DatedFact | undefined } {
    return { place: since?.place ?? this.node.header, since };
  }
}

function refusal({ verdict }: JointSetting): "no limit" | "outside" | "uncertain" | undefined {
  if (verdict === undefined) return "no limit";
  const { verdict: name } = verdict;
  return name === "outside" || name === "uncertain" ? name : undefined;
}
