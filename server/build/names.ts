/** What a reference means, whichever name space it is of, and what is wrong with those that mean nothing. */

import { nearest } from "../../grammar/nearest.ts";
import type { ReferenceNode, SyntaxFix } from "../../grammar/syntax.ts";
import type { ReferenceKind } from "../../grammar/vocabulary/shape.ts";
import type { NamedKind } from "./block-definition.ts";
import type { Defined, NamedDefinition } from "./definitions.ts";
import type { Finding } from "./finding.ts";
import { finding } from "./finding.ts";
import { kindInWords } from "./finding-data.ts";
import { asKept } from "./list-under.ts";
import type { ReferenceUse } from "./reference-uses.ts";
import { referenceUses } from "./reference-uses.ts";
import { madeOnce, Remembered } from "./remembered.ts";
import type { BlockSite, Place, SourceFile } from "./source.ts";
import { OfBlocks, placeAt } from "./source.ts";
import type { TreeKind, TreeNode, Turn } from "./tree/node.ts";
import type { MemberResolution, Naming, ReferenceFault, Resolution, Target } from "./tree/resolve.ts";
import { Resolver } from "./tree/resolve.ts";
import type { Tree } from "./tree/tree.ts";
import type { Written } from "./tree/written.ts";

const TREE_KINDS: ReadonlySet<ReferenceKind> = new Set(["assembly", "part", "joint", "system", "circuit"]);

/** A reference in the text, and what it leads to. */
export interface ReferenceLink {
  readonly place: Place;
  readonly use: ReferenceUse;
  readonly nodes: readonly TreeNode[];
  readonly named: NamedDefinition | undefined;
}

interface Linked {
  /** What its references lead to outside of the tree. */
  readonly named: ReadonlySet<NamedDefinition>;
  readonly findings: readonly Finding[];
}

/** What most blocks share: all of their references lead into the tree. */
const LEADS_NOWHERE_ELSE: Linked = { named: new Set(), findings: [] };

const NO_NAMES: readonly object[] = [];

const remembered = new WeakMap<Tree, Names>();

/** The names of what is defined: the same as long as that is the same. */
export function namesOf(defined: Defined): Names {
  return madeOnce(remembered, defined.tree, () => new Names(defined));
}

/** The name spaces of one build. */
export class Names {
  private readonly byKind: Defined["named"];
  private readonly resolver: Resolver;
  private readonly linked = new Remembered<BlockSite, Linked>();
  private readonly linkedFiles = new Remembered<SourceFile, Pick<Linked, "findings" | "named">>();
  private readonly linkedBlocks = new OfBlocks<Linked>();
  private readonly sets = new WeakMap<Resolution, Followed>();

  constructor({ tree, named }: Pick<Defined, "named" | "tree">) {
    this.byKind = named;
    this.resolver = new Resolver(tree);
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

  /** A thing itself where a reference means one, else everything that it stands for. */
  things(reference: ReferenceNode, kinds: readonly TreeKind[]): readonly TreeNode[] {
    const one = this.one(reference, kinds);
    return one === undefined ? this.targets(reference, kinds).map(({ node }) => node) : [one];
  }

  /** What can be measured of a thing. */
  member(naming: Naming, reference: ReferenceNode, turns?: readonly Turn[]): MemberResolution {
    return this.resolver.resolveMember(naming, reference, turns);
  }

  /** The same, whether or not anything of that name can be measured of the thing. */
  memberOf(
    reference: ReferenceNode,
    turns?: readonly Turn[],
  ): { readonly node: TreeNode | undefined; readonly name: string } {
    const { found, name } = this.resolver.resolveBeforeName(reference, turns);
    return { node: "is" in found ? undefined : found, name };
  }

  named(kind: NamedKind, name: string): NamedDefinition | undefined {
    return this.byKind.get(kind)?.get(name);
  }

  every(kind: NamedKind): Iterable<NamedDefinition> {
    return this.byKind.get(kind)?.values() ?? [];
  }

  /** Every reference of the blocks with what it leads to. Few ask for it: it is made anew each time. */
  links(sites: readonly BlockSite[], written: Written): readonly ReferenceLink[] {
    return sites.flatMap((site) =>
      referenceUses(site.block).map((use) => {
        const { nodes, named } = this.follow(use, written);
        return { place: placeAt(site, use.reference), use, nodes, named };
      }),
    );
  }

  /** Findings for the references of a file that lead nowhere. */
  findings(file: SourceFile, written: Written): readonly Finding[] {
    return this.linkedIn(file, written).findings;
  }

  /** Whether a reference of a file leads to a definition outside of the tree. */
  uses(file: SourceFile, definition: NamedDefinition, written: Written): boolean {
    return this.linkedIn(file, written).named.has(definition);
  }

  private linkedIn(file: SourceFile, written: Written): Pick<Linked, "findings" | "named"> {
    return this.linkedFiles.of(file, [written.naming], () => {
      const findings: Finding[] = [];
      const named = new Set<NamedDefinition>();
      for (const linked of this.linkedBlocks.of(file, [written.naming], (site) =>
        this.linkedOf(site, written),
      )) {
        if (linked === LEADS_NOWHERE_ELSE) continue;
        for (const each of linked.findings) findings.push(each);
        for (const each of linked.named) named.add(each);
      }
      return { findings, named };
    });
  }

  /** Findings for the references of a block that lead nowhere. */
  findingsIn(site: BlockSite, written: Written): readonly Finding[] {
    return this.linkedOf(site, written).findings;
  }

  private linkedOf(site: BlockSite, written: Written): Linked {
    const names = referenceUses(site.block).some(({ member }) => member) ? [written.naming] : NO_NAMES;
    return this.linked.of(site, [site.block, ...names], () => this.link(site, written));
  }

  private link(site: BlockSite, written: Written): Linked {
    const definitions: NamedDefinition[] = [];
    const findings: Finding[] = [];
    for (const use of referenceUses(site.block)) {
      const { named, faults } = this.follow(use, written);
      if (named !== undefined) definitions.push(named);
      for (const fault of faults) findings.push(complaint(fault, use, placeAt(site, use.reference)));
    }
    if (definitions.length + findings.length === 0) return LEADS_NOWHERE_ELSE;
    return { named: new Set(definitions), findings: asKept(findings) };
  }

  private follow(use: ReferenceUse, written: Written): Followed {
    const inTree = use.kinds.filter((kind): kind is ReferenceKind & TreeKind => TREE_KINDS.has(kind));
    const others = use.kinds.filter((kind) => !TREE_KINDS.has(kind) && kind !== "snag") as NamedKind[];
    for (const kind of others) {
      const named = this.named(kind, use.reference.text);
      if (named !== undefined) return { nodes: [], named, faults: [] };
    }
    if (inTree.length > 0) return this.followInTree(use, inTree, written);
    if (others.length === 0) return { nodes: [], named: undefined, faults: [] };
    return { nodes: [], named: undefined, faults: [this.unnamed(use, others)] };
  }

  private followInTree(use: ReferenceUse, kinds: readonly TreeKind[], written: Written): Followed {
    if (use.member) return followed(...separated(this.resolver.resolveMember(written, use.reference)));
    if (use.one) return followed(...alone(this.resolver.resolveOne(use.reference, kinds)));
    const resolution = this.resolver.resolve(use.reference, wantedOf(kinds));
    return madeOnce(this.sets, resolution, () =>
      followed([...new Set(resolution.targets.flatMap(meant))], resolution.faults),
    );
  }

  private unnamed(use: ReferenceUse, kinds: readonly NamedKind[]): NameFault {
    const names = kinds.flatMap((kind) => [...this.every(kind)].map(({ name }) => name));
    const { text } = use.reference;
    return { is: "name", text, nearest: nearest(text, names, 4) };
  }
}

interface Followed {
  readonly nodes: readonly TreeNode[];
  readonly named: NamedDefinition | undefined;
  readonly faults: readonly (ReferenceFault | NameFault)[];
}

function followed(nodes: readonly TreeNode[], faults: readonly ReferenceFault[]): Followed {
  return { nodes, named: undefined, faults };
}

function separated({ node, fault }: MemberResolution): [TreeNode[], ReferenceFault[]] {
  return node === undefined ? [[], [fault]] : [[node], []];
}

function alone(found: TreeNode | ReferenceFault): [TreeNode[], ReferenceFault[]] {
  return "is" in found ? [[], [found]] : [[found], []];
}

/** A place for one kind takes an assembly for what it holds of that kind, not for itself. */
function wantedOf(kinds: readonly TreeKind[]): readonly TreeKind[] {
  const [first, second, third] = kinds;
  if (second === undefined || third !== undefined) return kinds;
  return first === "assembly" ? [second] : second === "assembly" ? kinds.slice(0, 1) : kinds;
}

/** An assembly that was named leads to itself too. */
function meant({ node, through }: Resolution["targets"][number]): TreeNode[] {
  return through === undefined ? [node] : [through, node];
}

/** A name that no definition of its kinds has. */
interface NameFault {
  readonly is: "name";
  readonly text: string;
  readonly nearest: readonly string[];
}

function complaint(fault: ReferenceFault | NameFault, use: ReferenceUse, place: Place): Finding {
  switch (fault.is) {
    case "unknown":
    case "name":
      return finding(
        "unknown-reference",
        place,
        { text: fault.text, kinds: use.kinds, nearest: fault.nearest },
        { fixes: rewritings(fault.text, use, fault.nearest) },
      );
    case "ambiguous":
      return finding(
        "ambiguous-reference",
        place,
        { text: fault.text, candidates: fault.candidates },
        { fixes: rewritings(fault.text, use, fault.candidates) },
      );
    case "kind":
      return finding("reference-kind", place, {
        text: fault.path,
        kind: fault.kind,
        wanted: kindInWords(fault.wanted),
      });
    case "nameless": {
      const { start, end } = use.reference;
      const such = fault.names.length === 0 ? "thickness" : fault.names.slice(0, 4).join(", ");
      return finding(
        "missing-value",
        place,
        {
          found: fault.text,
          expected: `the name of what is meant of ${fault.path}, such as ${such}`,
          reason: undefined,
        },
        {
          fixes: fault.names
            .map((name) => ({
              start: end,
              end,
              text: ` ${name}`,
              title: `Write ${fault.text} ${name}`,
              sure: false,
            }))
            .filter(() => end > start),
        },
      );
    }
  }
}

/** Other texts for a reference, for what stands before the name of its characteristic, or for one choice of a set. */
function rewritings(text: string, { reference }: ReferenceUse, candidates: readonly string[]): SyntaxFix[] {
  const fixed = (start: number, end: number, replacement: string): SyntaxFix => ({
    start,
    end,
    text: replacement,
    title: `Write ${replacement}`,
    sure: false,
  });
  const { start } = reference;
  if (reference.text.startsWith(text))
    return candidates.map((candidate) => fixed(start, start + text.length, candidate));
  const choice = choiceIn(reference, text);
  if (choice === undefined) return [];
  const { before, option, behind, at } = choice;
  return candidates.flatMap((candidate) => {
    if (!candidate.startsWith(before) || !candidate.endsWith(behind)) return [];
    const other = candidate.slice(before.length, candidate.length - behind.length);
    return other === "" ? [] : [fixed(start + at, start + at + option.length, other)];
  });
}

/** The one of `{a, b}` that a path of the set was made with, and where it stands in the reference. */
function choiceIn({ text }: ReferenceNode, path: string) {
  const set = /^([^{}]*)\{([^{}]*)\}([^{}]*)$/.exec(text);
  const [, before = "", options = "", behind = ""] = set ?? [];
  if (set === null || !path.startsWith(before) || !path.endsWith(behind)) return undefined;
  const option = path.slice(before.length, path.length - behind.length);
  const at = new RegExp(`(?<![\\w.*])${option.replaceAll(/[.*]/g, "\\$&")}(?![\\w.*])`).exec(options)?.index;
  return at === undefined ? undefined : { before, option, behind, at: before.length + 1 + at };
}
