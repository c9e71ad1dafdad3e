/**
 * From references to things. A full path wins; else an unambiguous tail among the kinds that the place takes; an
 * assembly means everything of the wanted kinds below it; `{a, b}` and `*` are sets.
 */

import { nearest } from "../../../grammar/nearest.ts";
import type { ReferenceNode, ReferenceSegment } from "../../../grammar/syntax.ts";
import type { TreeKind, TreeNode, Turn } from "./node.ts";
import { below, isWithin } from "./node.ts";
import type { Tree } from "./tree.ts";

/** A thing that a reference means, and the assembly through which it does, if it is not named itself. */
export interface Target {
  readonly node: TreeNode;
  readonly through: TreeNode | undefined;
}

export type ReferenceFault =
  | { readonly is: "unknown"; readonly text: string; readonly nearest: readonly string[] }
  | { readonly is: "ambiguous"; readonly text: string; readonly candidates: readonly string[] }
  | {
      readonly is: "kind";
      readonly text: string;
      readonly path: string;
      readonly kind: TreeKind;
      readonly wanted: readonly TreeKind[];
    };

export interface Resolution {
  readonly targets: readonly Target[];
  readonly faults: readonly ReferenceFault[];
}

/** A characteristic of a thing: `front.left.disc.thickness`. */
export type MemberResolution =
  | { readonly node: TreeNode; readonly name: string; readonly fault: undefined }
  | { readonly node: undefined; readonly name: string; readonly fault: ReferenceFault };

/** Resolves references against one tree, remembering the answers. */
export class Resolver {
  private readonly tree: Tree;
  private readonly remembered = new Map<string, Resolution>();

  constructor(tree: Tree) {
    this.tree = tree;
  }

  /** What a reference means in a place that takes these kinds, turned if its record was copied. */
  resolve(reference: ReferenceNode, kinds: readonly TreeKind[], turns: readonly Turn[] = []): Resolution {
    const key = `${kinds.join()} ${reference.text}`;
    let resolution = this.remembered.get(key);
    if (resolution === undefined) {
      resolution = this.resolveAfresh(reference, kinds);
      this.remembered.set(key, resolution);
    }
    return turns.length === 0 ? resolution : this.turned(resolution, turns);
  }

  /** One thing by reference; an assembly is that assembly where the place takes one. */
  resolveOne(
    reference: ReferenceNode,
    kinds: readonly TreeKind[],
    turns: readonly Turn[] = [],
  ): TreeNode | ReferenceFault {
    const [first, second] = expansions(reference.segments);
    if (second !== undefined || first === undefined || first.includes("*")) {
      return { is: "ambiguous", text: reference.text, candidates: expansions(reference.segments) };
    }
    const found = this.named(first, kinds);
    if (!("path" in found) || "is" in found) return found as ReferenceFault;
    return turns.reduce((node, turn) => this.turn(node, turn), found);
  }

  /** `REF.NAME`: the longest part that names a thing, and the rest as the characteristic's name. */
  resolveMember(reference: ReferenceNode, turns: readonly Turn[] = []): MemberResolution {
    const dot = reference.text.lastIndexOf(".");
    const name = reference.text.slice(dot + 1);
    if (dot < 0)
      return { node: undefined, name, fault: { is: "unknown", text: reference.text, nearest: [] } };
    const found = this.named(reference.text.slice(0, dot), MEMBER_KINDS);
    if ("is" in found) return { node: undefined, name, fault: found };
    return { node: turns.reduce((node, turn) => this.turn(node, turn), found), name, fault: undefined };
  }

  private resolveAfresh(reference: ReferenceNode, kinds: readonly TreeKind[]): Resolution {
    const targets = new Map<string, Target>();
    const faults: ReferenceFault[] = [];
    for (const path of expansions(reference.segments)) {
      const found = path.includes("*")
        ? this.matching(path, kinds, reference.text)
        : this.named(path, [...kinds, "assembly"]);
      for (const node of Array.isArray(found) ? found : [found]) {
        if ("is" in node) faults.push(node);
        else
          for (const target of expand(node, kinds))
            targets.set(target.node.path, targets.get(target.node.path) ?? target);
      }
    }
    if (targets.size === 0 && faults.length === 0) faults.push(this.unknown(reference.text, kinds));
    return { targets: [...targets.values()], faults };
  }

  /** The thing that a plain path names: in full, or as the only tail among the wanted kinds. */
  private named(path: string, kinds: readonly TreeKind[]): TreeNode | ReferenceFault {
    const whole = this.tree.at(path);
    if (whole !== undefined && this.takes(whole, kinds)) return whole;
    const tails = this.tree.withTail(path).filter((node) => this.takes(node, kinds));
    const [only, another] = tails;
    if (only !== undefined && another === undefined) return only;
    if (only !== undefined)
      return { is: "ambiguous", text: path, candidates: tails.map((node) => node.path) };
    const other = whole ?? this.tree.withTail(path)[0];
    if (other !== undefined)
      return { is: "kind", text: path, path: other.path, kind: other.kind, wanted: kinds };
    return this.unknown(path, kinds);
  }

  private takes(node: TreeNode, kinds: readonly TreeKind[]): boolean {
    if (node.kind === "vehicle") return kinds.includes("assembly");
    return kinds.includes(node.kind);
  }

  private matching(pattern: string, kinds: readonly TreeKind[], text: string): TreeNode[] | ReferenceFault {
    const segments = pattern.split(".");
    const whole = this.everyMatch(segments, kinds, true);
    const found = whole.length > 0 ? whole : this.everyMatch(segments, kinds, false);
    return found.length > 0 ? found : this.unknown(text, kinds);
  }

  /** Things whose path, or the end of it, fits the pattern; a last `*` stands for everything below. */
  private everyMatch(segments: readonly string[], kinds: readonly TreeKind[], whole: boolean): TreeNode[] {
    const last = segments.at(-1) === "*";
    const fixed = last ? segments.slice(0, -1) : segments;
    const found: TreeNode[] = [];
    for (const node of this.tree.nodes()) {
      if (node.kind === "vehicle" || !fits(node.path.split("."), fixed, whole)) continue;
      if (!last) {
        if (this.takes(node, [...kinds, "assembly"])) found.push(node);
      } else
        found.push(
          ...[...below(node)].filter((inner) => kinds.includes(inner.kind) && inner.kind !== "assembly"),
        );
    }
    return found;
  }

  private unknown(text: string, kinds: readonly TreeKind[]): ReferenceFault {
    const paths = [...this.tree.nodes()].filter((node) => this.takes(node, kinds)).map(({ path }) => path);
    const tails = paths.map((path) => path.split(".").slice(-text.split(".").length).join("."));
    const near = nearest(text, new Set([...paths, ...tails]), 4);
    return { is: "unknown", text, nearest: near };
  }

  private turned(resolution: Resolution, turns: readonly Turn[]): Resolution {
    const targets = resolution.targets.map((target) => ({
      ...target,
      node: turns.reduce((node, turn) => this.turn(node, turn), target.node),
    }));
    return { ...resolution, targets };
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

const MEMBER_KINDS: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];

/** The thing itself where its kind is wanted; of an assembly, everything of the wanted kinds below it. */
function* expand(node: TreeNode, kinds: readonly TreeKind[]): Generator<Target> {
  if (node.kind !== "assembly" && node.kind !== "vehicle") {
    yield { node, through: undefined };
    return;
  }
  if (kinds.includes("assembly")) yield { node, through: undefined };
  for (const inner of below(node)) {
    if (inner.kind !== "assembly" && kinds.includes(inner.kind)) yield { node: inner, through: node };
  }
}

/** Choices within choices multiply; no honest reference means more things than this. */
const MOST_EXPANSIONS = 1000;

/** Every plain path that the choices of a reference stand for; `*` is kept. */
export function expansions(segments: readonly ReferenceSegment[]): string[] {
  return segments.reduce<string[]>((paths, segment) => {
    const options = segment.is === "choice" ? segment.options : [segment.is === "every" ? "*" : segment.text];
    if (paths.length === 0) return [...options];
    return paths.flatMap((path) => options.map((option) => `${path}.${option}`)).slice(0, MOST_EXPANSIONS);
  }, []);
}

function fits(path: readonly string[], pattern: readonly string[], whole: boolean): boolean {
  if (pattern.length === 0) return true;
  if (whole ? path.length !== pattern.length : path.length < pattern.length) return false;
  const tail = path.slice(path.length - pattern.length);
  return pattern.every((segment, index) => segment === "*" || segment === tail[index]);
}
