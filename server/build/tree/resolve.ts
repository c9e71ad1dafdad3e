/**
 * From references to things. A full path wins; else an unambiguous tail among the kinds that the place takes; an
 * assembly means everything of the wanted kinds below it; `{a, b}` and `*` are sets.
 */

import type { ReferenceNode, ReferenceSegment } from "../../../grammar/syntax.ts";
import { likelyPaths } from "./likely-paths.ts";
import { matches } from "./match.ts";
import type { TreeKind, TreeNode, Turn } from "./node.ts";
import { below, isWithin } from "./node.ts";
import type { Tree } from "./tree.ts";

/** A thing that a reference means, and the thing above it through which it does, if it is not named itself. */
export interface Target {
  readonly node: TreeNode;
  readonly through: TreeNode | undefined;
}

export type ReferenceFault =
  | { readonly is: "unknown"; readonly text: string; readonly nearest: readonly string[] }
  | { readonly is: "ambiguous"; readonly text: string; readonly candidates: readonly string[] }
  /** Of another kind than the place takes, or an assembly that holds nothing of it. */
  | {
      readonly is: "kind";
      readonly text: string;
      readonly path: string;
      readonly kind: TreeKind;
      readonly wanted: readonly TreeKind[];
    }
  /** A thing where a characteristic of one is due; `names` are those that the thing is known by. */
  | {
      readonly is: "nameless";
      readonly text: string;
      readonly path: string;
      readonly names: readonly string[];
    };

export interface Resolution {
  readonly targets: readonly Target[];
  readonly faults: readonly ReferenceFault[];
}

/** A characteristic of a thing: `front.left.disc.thickness`. */
export type MemberResolution =
  | { readonly node: TreeNode; readonly name: string; readonly fault: undefined }
  | { readonly node: undefined; readonly name: string; readonly fault: ReferenceFault };

type Kinds = readonly TreeKind[];

/** Resolves references against one tree, remembering the answers. */
/** Who knows the names of what can be measured. */
export interface Naming {
  readonly characteristics: (node: TreeNode) => readonly string[];
}

export class Resolver {
  private readonly tree: Tree;
  private readonly sets = new Memory<Resolution>();
  private readonly ones = new Memory<TreeNode | ReferenceFault>();

  constructor(tree: Tree) {
    this.tree = tree;
  }

  /** What a reference means in a place that takes these kinds, turned if its record was copied. */
  resolve(reference: ReferenceNode, kinds: Kinds, turns: readonly Turn[] = []): Resolution {
    const resolution = this.sets.of(kinds, reference.text, () => this.resolveAfresh(reference, kinds));
    if (turns.length === 0) return resolution;
    const targets = resolution.targets.map((target) => ({
      ...target,
      node: this.turned(target.node, turns),
    }));
    return { ...resolution, targets };
  }

  /** One thing by reference; an assembly is that assembly where the place takes one. */
  resolveOne(reference: ReferenceNode, kinds: Kinds, turns: readonly Turn[] = []): TreeNode | ReferenceFault {
    const one = this.ones.of(kinds, reference.text, () => this.resolveOneAfresh(reference, kinds));
    return "is" in one ? one : this.turned(one, turns);
  }

  /** `REF.NAME`: the thing before the last dot, and the name of its characteristic, whether or not it has one of that name. */
  resolveBeforeName(
    reference: ReferenceNode,
    turns: readonly Turn[] = [],
  ): { readonly found: TreeNode | ReferenceFault; readonly name: string } {
    const { text, segments } = reference;
    const dot = text.lastIndexOf(".");
    const thing: ReferenceNode = {
      ...reference,
      text: text.slice(0, Math.max(0, dot)),
      segments: segments.slice(0, -1),
    };
    const found = dot < 0 ? this.unknown(text, MEMBER_KINDS) : this.resolveOne(thing, MEMBER_KINDS, turns);
    return { found, name: text.slice(dot + 1) };
  }

  /** The same where the thing has a characteristic of that name. */
  resolveMember(naming: Naming, reference: ReferenceNode, turns?: readonly Turn[]): MemberResolution {
    const { found, name } = this.resolveBeforeName(reference, turns);
    const knows = !("is" in found) && naming.characteristics(found).includes(name);
    const fault = knows
      ? undefined
      : (this.nameless(naming, reference.text) ?? ("is" in found ? found : undefined));
    if (fault !== undefined || "is" in found)
      return { node: undefined, name, fault: fault ?? (found as ReferenceFault) };
    return { node: found, name, fault: undefined };
  }

  /** A thing itself, where the text of a characteristic names one. */
  private nameless(naming: Naming, text: string): ReferenceFault | undefined {
    const tails = this.tree.withTail(text);
    const thing = this.tree.at(text) ?? (tails.length === 1 ? tails[0] : undefined);
    if (thing === undefined) return undefined;
    return { is: "nameless", text, path: thing.path, names: naming.characteristics(thing) };
  }

  private resolveAfresh(reference: ReferenceNode, kinds: Kinds): Resolution {
    const targets = new Map<TreeNode, Target>();
    const faults: ReferenceFault[] = [];
    for (const path of expansions(reference.segments)) {
      const meant = path.includes("*") ? this.matching(path, kinds) : this.meant(path, kinds);
      if ("is" in meant) faults.push(meant);
      else for (const target of meant) if (!targets.has(target.node)) targets.set(target.node, target);
    }
    return { targets: [...targets.values()], faults };
  }

  private resolveOneAfresh(reference: ReferenceNode, kinds: Kinds): TreeNode | ReferenceFault {
    const [first, another] = expansions(reference.segments);
    if (first !== undefined && another === undefined && !first.includes("*"))
      return this.named(first, (node) => takes(node, kinds), kinds);
    const { targets, faults } = this.resolveAfresh(reference, kinds);
    const named = targets.filter(({ through }) => through === undefined);
    const [only, second] = named.length === 0 ? targets : named;
    if (only !== undefined && second === undefined) return only.node;
    const [fault] = faults;
    if (only === undefined) return fault ?? this.unknown(reference.text, kinds);
    return { is: "ambiguous", text: reference.text, candidates: targets.map(({ node }) => node.path) };
  }

  /** What a plain path means: the thing that it names, or what that holds. */
  private meant(path: string, kinds: Kinds): readonly Target[] | ReferenceFault {
    const named = this.named(path, (node) => takes(node, kinds) || holdsAny(node, kinds), kinds);
    return "is" in named ? named : [...expand(named, kinds)];
  }

  /** The thing that a plain path names: in full, or as the only tail among those that the place takes. */
  private named(path: string, taken: (node: TreeNode) => boolean, wanted: Kinds): TreeNode | ReferenceFault {
    const whole = this.tree.at(path);
    if (whole !== undefined && taken(whole)) return whole;
    const tails = this.tree.withTail(path).filter(taken);
    const [only, another] = tails;
    if (only !== undefined && another === undefined) return only;
    if (only !== undefined)
      return { is: "ambiguous", text: path, candidates: tails.map((node) => node.path) };
    const other = whole ?? this.tree.withTail(path)[0];
    return other === undefined ? this.unknown(path, wanted) : unlike(path, other, wanted);
  }

  /** Everything of the wanted kinds that a path with `*` means. */
  private matching(pattern: string, kinds: Kinds): readonly Target[] | ReferenceFault {
    const everything = pattern === "*" || pattern.endsWith(".*");
    // `*` at the end stands for everything below.
    const fixed = everything ? pattern.slice(0, -2) : pattern;
    const found = matches(this.tree, fixed);
    if ("candidates" in found) {
      const candidates = everything ? found.candidates.map((path) => `${path}.*`) : found.candidates;
      return { is: "ambiguous", text: pattern, candidates };
    }
    const targets = found.nodes.flatMap((node) =>
      everything ? [...within(node, kinds)] : [...expand(node, kinds)],
    );
    if (targets.length > 0) return targets;
    const [other] = found.nodes;
    return other === undefined ? this.unknown(pattern, kinds) : unlike(pattern, other, kinds);
  }

  private unknown(text: string, kinds: Kinds): ReferenceFault {
    const { tree } = this;
    let found: readonly string[] | undefined;
    return {
      is: "unknown",
      text,
      // Looked for only where somebody asks: most of what resolves nothing is not complained about.
      get nearest() {
        found ??= likelyPaths(tree, text, (node) => takes(node, kinds) || holdsAny(node, kinds));
        return found;
      },
    };
  }

  private turned(node: TreeNode, turns: readonly Turn[]): TreeNode {
    return turns.reduce((turning, turn) => this.turn(turning, turn), node);
  }

  private turn(node: TreeNode, { from, to }: Turn): TreeNode {
    const turned = isWithin(node.path, from)
      ? to + node.path.slice(from.length)
      : isWithin(node.path, to)
        ? from + node.path.slice(to.length)
        : node.path;
    return this.tree.at(turned) ?? node;
  }
}

const MEMBER_KINDS: Kinds = ["assembly", "part", "joint", "system", "circuit"];

const BITS: Readonly<Record<TreeKind, number>> = {
  vehicle: 1,
  assembly: 2,
  part: 4,
  joint: 8,
  system: 16,
  circuit: 32,
};

/** Answers by the kinds that were asked for and the text of the reference. */
class Memory<T> {
  private readonly answers = new Map<number, Map<string, T>>();

  of(kinds: Kinds, text: string, find: () => T): T {
    const ofKinds = this.ofKinds(kinds);
    const known = ofKinds.get(text);
    if (known !== undefined) return known;
    const found = find();
    ofKinds.set(text, found);
    return found;
  }

  private ofKinds(kinds: Kinds): Map<string, T> {
    let key = 0;
    for (const kind of kinds) key |= BITS[kind];
    const known = this.answers.get(key);
    if (known !== undefined) return known;
    const made = new Map<string, T>();
    this.answers.set(key, made);
    return made;
  }
}

function takes(node: TreeNode, kinds: Kinds): boolean {
  return kinds.includes(node.kind === "vehicle" ? "assembly" : node.kind);
}

function isHolder({ kind }: TreeNode): boolean {
  return kind === "assembly" || kind === "vehicle";
}

/** Whether an assembly holds something of the kinds. */
function holdsAny(node: TreeNode, kinds: Kinds): boolean {
  return isHolder(node) && !within(node, kinds).next().done;
}

function unlike(text: string, { path, kind }: TreeNode, wanted: Kinds): ReferenceFault {
  return { is: "kind", text, path, kind, wanted };
}

/** The thing itself where its kind is wanted; of an assembly, everything of the wanted kinds below it. */
function* expand(node: TreeNode, kinds: Kinds): Generator<Target> {
  if (takes(node, kinds)) yield { node, through: undefined };
  if (isHolder(node)) yield* within(node, kinds);
}

/** What is below a thing, assemblies left out. */
function* within(node: TreeNode, kinds: Kinds): Generator<Target> {
  for (const inner of below(node)) {
    if (inner.kind !== "assembly" && kinds.includes(inner.kind)) yield { node: inner, through: node };
  }
}

/** Choices within choices multiply; no honest reference means more things than this. */
const MOST_EXPANSIONS = 1000;

/** Every plain path that the choices of a reference stand for; `*` is kept. */
function expansions(segments: readonly ReferenceSegment[]): string[] {
  return segments.reduce<string[]>((paths, segment) => {
    const options = segment.is === "choice" ? segment.options : [segment.is === "every" ? "*" : segment.text];
    if (paths.length === 0) return [...options];
    return paths.flatMap((path) => options.map((option) => `${path}.${option}`)).slice(0, MOST_EXPANSIONS);
  }, []);
}
