/** What a reference means, whichever name space it is of, and what is wrong with those that mean nothing. */

import { nearest } from "../../grammar/nearest.ts";
import type { ReferenceNode, SyntaxFix } from "../../grammar/syntax.ts";
import type { ReferenceKind } from "../../grammar/vocabulary/shape.ts";
import type { Gathered, NamedDefinition, NamedKind } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import { kindInWords } from "./finding-data.ts";
import type { ReferenceUse } from "./reference-uses.ts";
import { referenceUses } from "./reference-uses.ts";
import type { BlockSite, Place } from "./source.ts";
import { placeAt } from "./source.ts";
import type { TreeKind, TreeNode, Turn } from "./tree/node.ts";
import type { MemberResolution, ReferenceFault, Target } from "./tree/resolve.ts";
import { Resolver } from "./tree/resolve.ts";

const TREE_KINDS: ReadonlySet<ReferenceKind> = new Set(["assembly", "part", "joint", "system", "circuit"]);

/** A reference in the text, and what it leads to. */
export interface ReferenceLink {
  readonly place: Place;
  readonly use: ReferenceUse;
  readonly nodes: readonly TreeNode[];
  readonly named: NamedDefinition | undefined;
}

/** The name spaces of one build. */
export class Names {
  private readonly gathered: Gathered;
  private readonly resolver: Resolver;

  constructor(gathered: Gathered) {
    this.gathered = gathered;
    this.resolver = new Resolver(gathered.tree);
  }

  /** Things of the tree by reference; what cannot be resolved is left out. */
  targets(reference: ReferenceNode, kinds: readonly TreeKind[], turns?: readonly Turn[]): readonly Target[] {
    return this.resolver.resolve(reference, kinds, turns).targets;
  }

  /** One thing of the tree; undefined where the reference means none or several. */
  one(reference: ReferenceNode, kinds: readonly TreeKind[], turns?: readonly Turn[]): TreeNode | undefined {
    const found = this.resolver.resolveOne(reference, kinds, turns);
    return "is" in found ? undefined : found;
  }

  member(reference: ReferenceNode, turns?: readonly Turn[]): MemberResolution {
    return this.resolver.resolveMember(reference, turns);
  }

  named(kind: NamedKind, name: string): NamedDefinition | undefined {
    return this.gathered.named.get(kind)?.get(name);
  }

  every(kind: NamedKind): Iterable<NamedDefinition> {
    return this.gathered.named.get(kind)?.values() ?? [];
  }

  /** Every reference of the blocks with what it leads to, and findings for those that lead nowhere. */
  link(sites: readonly BlockSite[]): {
    readonly links: readonly ReferenceLink[];
    readonly findings: readonly Finding[];
  } {
    const links: ReferenceLink[] = [];
    const findings: Finding[] = [];
    for (const site of sites) {
      for (const use of referenceUses(site.block)) {
        const place = placeAt(site, use.reference);
        const { nodes, named, faults } = this.follow(use);
        links.push({ place, use, nodes, named });
        for (const fault of faults) findings.push(this.complaint(fault, use, place));
      }
    }
    return { links, findings };
  }

  private follow(use: ReferenceUse): {
    nodes: readonly TreeNode[];
    named: NamedDefinition | undefined;
    faults: readonly (ReferenceFault | NameFault)[];
  } {
    const inTree = use.kinds.filter((kind): kind is ReferenceKind & TreeKind => TREE_KINDS.has(kind));
    const others = use.kinds.filter((kind) => !TREE_KINDS.has(kind) && kind !== "snag") as NamedKind[];
    for (const kind of others) {
      const named = this.named(kind, use.reference.text);
      if (named !== undefined) return { nodes: [], named, faults: [] };
    }
    if (inTree.length > 0) {
      if (use.member) {
        const { node, fault } = this.member(use.reference);
        return {
          nodes: node === undefined ? [] : [node],
          named: undefined,
          faults: fault === undefined ? [] : [fault],
        };
      }
      const { targets, faults } = this.resolver.resolve(use.reference, inTree);
      return { nodes: targets.map(({ node }) => node), named: undefined, faults };
    }
    if (others.length === 0) return { nodes: [], named: undefined, faults: [] };
    const names = others.flatMap((kind) => [...this.every(kind)].map(({ name }) => name));
    const { text } = use.reference;
    return {
      nodes: [],
      named: undefined,
      faults: [{ is: "name", text, nearest: nearest(text, names, 4) }],
    };
  }

  private complaint(fault: ReferenceFault | NameFault, use: ReferenceUse, place: Place): Finding {
    const fixes = (candidates: readonly string[]) => rewritings(fault.text, use, candidates);
    switch (fault.is) {
      case "unknown":
      case "name":
        return finding(
          "unknown-reference",
          place,
          { text: fault.text, kinds: use.kinds, nearest: fault.nearest },
          { fixes: fixes(fault.nearest) },
        );
      case "ambiguous":
        return finding(
          "ambiguous-reference",
          place,
          { text: fault.text, candidates: fault.candidates },
          { fixes: fixes(fault.candidates) },
        );
      case "kind":
        return finding("reference-kind", place, {
          text: fault.path,
          kind: fault.kind,
          wanted: kindInWords(fault.wanted),
        });
    }
  }
}

/** Other texts for a reference, or for what stands before the name of its characteristic; none within a set. */
function rewritings(text: string, { reference }: ReferenceUse, candidates: readonly string[]): SyntaxFix[] {
  if (!reference.text.startsWith(text)) return [];
  const { start } = reference;
  return candidates.map((candidate) => ({
    start,
    end: start + text.length,
    text: candidate,
    title: `Write ${candidate}`,
    sure: false,
  }));
}

/** A name that no definition of its kinds has. */
interface NameFault {
  readonly is: "name";
  readonly text: string;
  readonly nearest: readonly string[];
}
