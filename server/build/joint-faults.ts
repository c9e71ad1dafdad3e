/** What is wrong with a joint as it is specified, whatever was done to it: its bolt, nut, thread, torque and friction. */
import { coherentFloat } from "../quantities/coherent.ts";
import { nutBears } from "../trade/strength-class.ts";
import { heavyShare, lightShare, mostPitchesPastNut, nutHeights } from "../trade/tables/joint-figures.ts";
import { sameThread } from "../trade/thread.ts";
import type { RelatedPlace } from "./finding.ts";
import type { JointFindings } from "./finding-data/joints.ts";
import { boltOf, boltRecord, clampedLength, lengthAsWritten, shankOf } from "./joint-bolt.ts";
import { classTorqueDoubt } from "./joint-class-torque.ts";
import { loadingOf } from "./joint-loading.ts";
import { engagementOf, protrusionOf } from "./joint-reach.ts";
import { torqueLimits } from "./joint-torque.ts";
import type { RecordWord } from "./lowering/definition-record.ts";
import { madeOnce } from "./remembered.ts";
import type { Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import { AspectSet } from "./tree/aspect.ts";
import type { TreeNode } from "./tree/node.ts";

type Defined = Pick<Standing, "definitions" | "gathered" | "names">;

type FaultCode =
  | "bolt-too-short"
  | "bolt-too-long"
  | "engagement-short"
  | "threadbound"
  | "hand-differs"
  | "mixed-thread"
  | "class-mismatch"
  | "torque-over-proof"
  | "torque-low-preload"
  | "torque-not-stated"
  | "friction-assumed"
  | "lock-missing";

export type JointFault<C extends FaultCode = FaultCode> = {
  [Code in C]: {
    readonly code: Code;
    readonly data: JointFindings[Code];
    /** The record that says so; the joint's header where none does. Undefined where a joint has neither. */
    readonly place: Place | undefined;
    readonly seeAlso: readonly RelatedPlace[];
    /** An error by the figures of the rules: such a joint is never secured. */
    readonly grave: boolean;
  };
}[C];

const remembered = new WeakMap<object, Map<TreeNode, readonly JointFault[]>>();

/** All that a fault can come from: as long as none of it changes, neither do the faults. */
const GROUNDS = new AspectSet(
  "bolt",
  "stud",
  "thread_length",
  "nut",
  "washers",
  "grip",
  "torque",
  "set_by",
  "friction",
  "lock",
  "joins",
  "material",
  "safety",
  "protrusion",
);

/** With the definitions in force; found once for as long as none of these words changes. */
export function faultsOf(standing: Defined, joint: TreeNode): readonly JointFault[] {
  const ofDefinitions = madeOnce(
    remembered,
    standing.definitions.since(GROUNDS),
    () => new Map<TreeNode, readonly JointFault[]>(),
  );
  const faults = madeOnce(ofDefinitions, joint, () => [...new Specification(standing, joint).faults()]);
  return faults.some(saysNoTorque) && hasLostTorque(standing, joint)
    ? faults.filter((fault) => !saysNoTorque(fault))
    : faults;
}

function saysNoTorque({ code, data }: JointFault): boolean {
  return code === "torque-not-stated" && data.is === "nothing";
}

/** A torque that could not be read is complained of where it stands; so is that of the joint that this is a copy of. */
function hasLostTorque({ definitions, gathered }: Defined, joint: TreeNode): boolean {
  const { tree } = gathered;
  const path = new Set<TreeNode>();
  for (let node: TreeNode | undefined = joint; node !== undefined && !path.has(node); ) {
    if (definitions.unread(node).some((word) => word === "torque" || word === "set_by")) return true;
    path.add(node);
    node = node.copyOf === undefined ? undefined : tree.at(node.copyOf);
  }
  return false;
}

/** Below a hundredth of a millimetre nothing is short or long; floats are not exact. */
const TOLERANCE = 1e-5;

/** One joint as it is specified. Each check says nothing where the joint does not state what it needs. */
class Specification {
  private readonly standing: Defined;
  private readonly joint: TreeNode;

  constructor(standing: Defined, joint: TreeNode) {
    this.standing = standing;
    this.joint = joint;
  }

  *faults(): Generator<JointFault> {
    yield* this.ofThreads();
    yield* this.ofProtrusion();
    yield* this.ofEngagement();
    yield* this.ofNutHeight();
    yield* this.ofShank();
    yield* this.ofClasses();
    yield* this.ofTorque();
    yield* this.ofLoad();
    yield* this.ofThreadlocker();
  }

  private *ofThreads(): Generator<JointFault> {
    const bolt = boltOf(this.standing, this.joint)?.thread;
    const nut = this.nut()?.thread;
    if (bolt === undefined || nut === undefined || sameThread(bolt, nut)) return;
    const onlyHand = sameThread({ ...bolt, hand: "right" }, { ...nut, hand: "right" });
    const data = { joint: this.joint.path, bolt: bolt.designation, nut: nut.designation };
    yield this.fault(onlyHand ? "hand-differs" : "mixed-thread", data, "nut", ["bolt", "stud"], true);
  }

  private *ofProtrusion(): Generator<JointFault> {
    const past = protrusionOf(this.standing, this.joint);
    const pitch = boltOf(this.standing, this.joint)?.thread.pitch;
    if (past === undefined || pitch === undefined) return;
    const { pitches, neededPitches, heightStated, atMost } = past;
    const joint = this.joint.path;
    const length = this.say(past.length);
    const related: RecordWord[] = ["nut", "grip", "washers"];
    if (past.length < neededPitches * pitch - TOLERANCE) {
      const needed = this.say(neededPitches * pitch);
      const data = {
        joint,
        into: "nut",
        past: length,
        pitches,
        needed,
        neededPitches,
        heightStated,
        atMost,
      } as const;
      yield this.fault("bolt-too-short", data, this.boltWord(), related, true);
    } else if (pitches > mostPitchesPastNut && !atMost) {
      const data = { joint, into: "nut", past: length, pitches, most: mostPitchesPastNut } as const;
      yield this.fault("bolt-too-long", data, this.boltWord(), related, false);
    }
  }

  /**
   * Short is the hole where no longer bolt would help, else the bolt. A hole is taken as blind: that the bolt comes out
   * behind is not stated.
   */
  private *ofEngagement(): Generator<JointFault> {
    const engagement = engagementOf(this.standing, this.joint);
    if (engagement?.needed === undefined) {
      if (engagement !== undefined) yield* this.ofBottoming(engagement.reach, engagement.depth);
      return;
    }
    const { reach, depth, needed } = engagement;
    const joint = this.joint.path;
    if (needed.is === "insert") {
      yield this.fault(
        "engagement-short",
        { joint, is: "insert", material: needed.material },
        "nut",
        [],
        true,
      );
    } else if (depth !== undefined && depth < needed.length - TOLERANCE) {
      const data = {
        joint,
        is: "hole",
        depth: this.say(depth),
        needed: this.say(needed.length),
        why: needed.why,
      } as const;
      yield this.fault("engagement-short", data, "nut", ["bolt", "stud"], true);
    } else if (reach !== undefined && reach < needed.length - TOLERANCE) {
      const data = {
        joint,
        into: "hole",
        reach: this.say(reach),
        needed: this.say(needed.length),
        short: this.say(needed.length - reach),
        why: needed.why,
      } as const;
      yield this.fault("bolt-too-short", data, this.boltWord(), ["nut", "grip", "washers"], true);
    }
    yield* this.ofBottoming(reach, depth);
  }

  private *ofBottoming(reach: number | undefined, depth: number | undefined): Generator<JointFault> {
    if (reach === undefined || depth === undefined || reach <= depth + TOLERANCE) return;
    const data = {
      joint: this.joint.path,
      into: "hole",
      reach: this.say(reach),
      depth: this.say(depth),
      by: this.say(reach - depth),
    } as const;
    yield this.fault("bolt-too-long", data, this.boltWord(), ["nut", "grip", "washers"], true);
  }

  /** A nut is a hole too: one of less than half the diameter holds nothing, a thin one not its class. */
  private *ofNutHeight(): Generator<JointFault> {
    const nut = this.nut();
    const diameter = boltOf(this.standing, this.joint)?.thread.majorDiameter;
    if (nut === undefined || nut.form === "tapped" || nut.height === undefined || diameter === undefined)
      return;
    const share = coherentFloat(nut.height) / diameter;
    if (share >= nutHeights.full - 1e-3) return;
    const thin = share >= nutHeights.thin - 1e-3;
    const needed = this.say((thin ? nutHeights.full : nutHeights.thin) * diameter);
    const data = { joint: this.joint.path, is: "nut", height: nut.height, needed, share, thin } as const;
    yield this.fault("engagement-short", data, "nut", ["bolt", "stud"], !thin);
  }

  private *ofShank(): Generator<JointFault> {
    const shank = shankOf(this.standing, this.joint);
    const clamped = clampedLength(this.standing, this.joint);
    if (shank === undefined || clamped === undefined || shank.length <= clamped + TOLERANCE) return;
    const data = {
      joint: this.joint.path,
      shank: this.say(shank.length),
      clamped: this.say(clamped),
      by: this.say(shank.length - clamped),
      standard: shank.standard,
    };
    yield this.fault("threadbound", data, "bolt", ["thread_length", "grip", "washers"], true);
  }

  private *ofClasses(): Generator<JointFault> {
    const nut = this.nut();
    const strength = boltOf(this.standing, this.joint)?.strength;
    if (nut === undefined || nut.form === "tapped" || nut.strength === undefined || strength === undefined)
      return;
    if (nutBears(nut.strength, strength) !== false) return;
    const needed = `class ${Math.floor(Number(strength.name))}`;
    const data = { joint: this.joint.path, bolt: strength.text, nut: nut.strength.text, needed };
    yield this.fault("class-mismatch", data, "nut", ["bolt", "stud"], false);
  }

  private *ofTorque(): Generator<JointFault> {
    const joint = this.joint.path;
    const torque = this.standing.definitions.one(this.joint, "torque")?.record.torque;
    if (torque === undefined) {
      if (this.standing.definitions.one(this.joint, "set_by") === undefined)
        yield this.fault("torque-not-stated", { joint, is: "nothing" }, undefined, [], false);
      return;
    }
    if (torque.form !== "from class") return;
    if (torqueLimits(this.standing, this.joint) === undefined) {
      const bolt = boltOf(this.standing, this.joint);
      const known = bolt?.strength !== undefined && bolt.strength.system !== "unknown";
      const missing = bolt === undefined ? "bolt" : known ? "friction" : "class";
      yield this.fault("torque-not-stated", { joint, is: "not computed", missing }, "torque", [], false);
      return;
    }
    const doubt = classTorqueDoubt(this.standing, this.joint);
    if (doubt === undefined) return;
    const grave = doubt.is !== "critical";
    yield this.fault("torque-not-stated", { joint, is: "from class", doubt }, "torque", [], grave);
  }

  private *ofLoad(): Generator<JointFault> {
    const loading = loadingOf(this.standing, this.joint);
    if (loading?.proof === undefined) return;
    const { torque, preload, highest, proof, friction, assumed, topless } = loading;
    const joint = this.joint.path;
    const related: RecordWord[] = ["bolt", "stud", "friction"];
    if (assumed) yield this.fault("friction-assumed", { joint, friction }, "torque", ["bolt", "stud"], false);
    const asked = this.standing.definitions.one(this.joint, "torque")?.record.torque;
    // A torque from the class is three quarters of proof by its own making.
    if (asked?.form !== "limits") return;
    const share = highest / proof.load;
    const { strength } = proof;
    if (share >= heavyShare) {
      const over = share > 1;
      const data = { joint, torque, percent: share * 100, strength, friction, over };
      yield this.fault("torque-over-proof", data, "torque", related, over);
    }
    if (topless || asked.then !== undefined || preload / proof.load >= lightShare) return;
    const atMost = share < lightShare && !assumed;
    const percent = (atMost ? share : preload / proof.load) * 100;
    yield this.fault(
      "torque-low-preload",
      { joint, torque, percent, strength, friction, atMost },
      "torque",
      related,
      false,
    );
  }

  /** Threadlocker bonds to clean, dry threads (common practice; its makers say so). */
  private *ofThreadlocker(): Generator<JointFault> {
    const { definitions } = this.standing;
    const lock = definitions.one(this.joint, "lock")?.record.choice;
    const friction = definitions.one(this.joint, "friction")?.record.friction;
    if (lock !== "threadlocker" || friction?.form !== "nut factor") return;
    const { word } = friction.friction;
    if (word !== "oiled" && word !== "moly") return;
    const data = { joint: this.joint.path, lock, is: "greasy", friction: word } as const;
    yield this.fault("lock-missing", data, "lock", ["friction"], false);
  }

  private nut() {
    return this.standing.definitions.one(this.joint, "nut")?.record.nut;
  }

  private boltWord(): "bolt" | "stud" {
    return boltRecord(this.standing, this.joint)?.record.word ?? "bolt";
  }

  private say(metres: number) {
    return lengthAsWritten(this.standing, this.joint, metres);
  }

  private fault<C extends FaultCode>(
    code: C,
    data: JointFindings[C],
    word: RecordWord | undefined,
    related: readonly RecordWord[],
    grave: boolean,
  ): JointFault {
    const place = (word && this.placeOf(word)) ?? this.joint.header;
    const seeAlso = related.flatMap((other) => {
      const at = this.placeOf(other);
      return at === undefined ? [] : [{ place: at, role: other.replace("_", " ") }];
    });
    return { code, data, place, seeAlso, grave } as unknown as JointFault;
  }

  private placeOf(word: RecordWord): Place | undefined {
    const sourced = this.standing.definitions.one(this.joint, word);
    return sourced && placeAt(sourced.site, sourced.record.at);
  }
}
