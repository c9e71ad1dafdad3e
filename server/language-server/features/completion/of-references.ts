/** Things that a place can refer to: those first that the fact can be told of as they stand. */
import { CompletionItemKind } from "vscode-languageserver";
import type { ReferenceKind } from "../../../../grammar/vocabulary/shape.ts";
import { TREE_KINDS } from "../../../../grammar/vocabulary/shape.ts";
import type { NamedKind } from "../../../build/block-definition.ts";
import type { Build } from "../../../build/build.ts";
import type { NamedDefinition } from "../../../build/definitions.ts";
import { gaugeReads, recordOf } from "../../../build/judgement.ts";
import type { TreeKind, TreeNode } from "../../../build/tree/node.ts";
import { sayLimits } from "../../../reports/parts.ts";
import { nodesNamed } from "../../names/meaning.ts";
import { quantityOfNode } from "../hover/of-value.ts";
import type { Asked, Proposal, Rank } from "./item.ts";
import { KIND_OF_NODE } from "./item.ts";

const IN_TREE: ReadonlySet<string> = new Set(TREE_KINDS);

export function referenceProposals(
  asked: Asked,
  kinds: readonly ReferenceKind[],
  member: boolean,
): readonly Proposal[] {
  const { recentBuild: build } = asked.view;
  const inTree = kinds.filter((kind): kind is ReferenceKind & TreeKind => IN_TREE.has(kind));
  const others = kinds.filter((kind) => !IN_TREE.has(kind));
  return [
    ...(inTree.length === 0 ? [] : nodeProposals(asked, inTree, member)),
    ...others.flatMap((kind) => (kind === "snag" ? snags(build) : named(asked, kind as NamedKind))),
  ];
}

function nodeProposals(asked: Asked, kinds: readonly TreeKind[], member: boolean): readonly Proposal[] {
  const { recentBuild: build } = asked.view;
  const { tree } = build.standing.gathered;
  const branch = branchUnderWay(asked);
  const shown = new Set<TreeKind>([...(member ? TREE_KINDS : kinds), "assembly", "vehicle"]);
  const isShown = ({ kind }: TreeNode) => shown.has(kind);
  const fits = FITTING[asked.place.statement.word.text];
  const proposal = (node: TreeNode, label: string): Proposal => ({
    label,
    kind: KIND_OF_NODE[node.kind],
    rank: rankOf(build, node, kinds, fits),
    detail: node.title,
    documented: { is: "node", path: node.path },
  });
  if (branch !== undefined) {
    return branch.nodes.flatMap((node) =>
      node.children
        .filter(isShown)
        .map((child) => proposal(child, branch.before + child.path.slice(node.path.length + 1))),
    );
  }
  const ofNodes = tree.all.filter(isShown).map((node) => proposal(node, node.path));
  return member ? [...ofNodes, ...memberProposals(asked)] : ofNodes;
}

/** Within braces: what stands below the path before them. */
function branchUnderWay({ view, partial }: Asked) {
  const match = /^([\w.*]+)\.(\{(?:[^{}]*,)?\s*)[\w.]*$/.exec(partial);
  if (match === null) return undefined;
  const [, path = "", braces = ""] = match;
  return { nodes: nodesNamed(view.recentBuild, { text: path, start: 0 }), before: `${path}.${braces}` };
}

function rankOf(
  build: Build,
  node: TreeNode,
  kinds: readonly TreeKind[],
  fits: ((build: Build, node: TreeNode) => boolean) | undefined,
): Rank {
  if (!kinds.includes(node.kind)) return 3;
  if (node.kind === "assembly" || node.kind === "vehicle") return 2;
  return fits === undefined || fits(build, node) ? 0 : 1;
}

const placeOf = ({ standing }: Build, node: TreeNode) => standing.parts.get(node)?.place;
const stageOf = ({ standing }: Build, node: TreeNode) => standing.joints.get(node)?.stage;
const systemOf = ({ standing }: Build, node: TreeNode) => standing.systems.get(node)?.stage;

/** Which things a fact can be told of next, as they stand. */
const FITTING: Readonly<Record<string, (build: Build, node: TreeNode) => boolean>> = {
  removed: (build, node) => placeOf(build, node) === "on" || placeOf(build, node) === "trial",
  stripped: (build, node) => placeOf(build, node) === "off",
  fitted: (build, node) => placeOf(build, node) !== "on",
  back: (build, node) => placeOf(build, node) === "away",
  sent: (build, node) => placeOf(build, node) === "off",
  decided: ({ standing }, node) => standing.parts.get(node)?.decision === undefined,
  reconditioned: ({ standing }, node) => standing.parts.get(node)?.decision?.decision === "recondition",
  repaired: ({ standing }, node) => standing.parts.get(node)?.decision?.decision === "repair",
  made: ({ standing }, node) => standing.parts.get(node)?.decision?.decision === "make",
  received: ({ standing }, node) =>
    standing.supply.get(node)?.orders.some(({ count, received }) => received < count) === true,
  rejected: ({ standing }, node) => (standing.supply.get(node)?.inHand ?? 0) > 0,
  used: ({ standing }, node) => (standing.supply.get(node)?.inHand ?? 0) > 0,
  nipped: (build, node) => stageOf(build, node) === "open",
  torqued: (build, node) => stageOf(build, node) === "open" || stageOf(build, node) === "nipped",
  tightened: (build, node) => stageOf(build, node) === "open" || stageOf(build, node) === "nipped",
  locked: (build, node) => stageOf(build, node) === "torqued",
  marked: (build, node) => stageOf(build, node) === "torqued" || stageOf(build, node) === "locked",
  filled: (build, node) => systemOf(build, node) === "open",
  bled: (build, node) => systemOf(build, node) === "filled",
  proved: (build, node) => systemOf(build, node) === "bled" || systemOf(build, node) === "filled",
};

/** Behind a thing and a dot, its characteristics. */
function memberProposals({ view, partial }: Asked): readonly Proposal[] {
  const dot = partial.lastIndexOf(".");
  if (dot <= 0) return [];
  const path = partial.slice(0, dot);
  return nodesNamed(view.recentBuild, { text: path, start: 0 }).flatMap((node) =>
    characteristicsOf(view.recentBuild, node).map(({ name, detail }) => ({
      label: `${path}.${name}`,
      kind: CompletionItemKind.Field,
      rank: 0 as const,
      detail,
      documented: { is: "characteristic" as const, path: node.path, name },
    })),
  );
}

/** What can be measured, set or read of a thing, and what it should be; readings that nothing asks for come last. */
export function characteristicsOf(
  { standing }: Build,
  node: TreeNode,
): readonly { readonly name: string; readonly detail: string; readonly word: string }[] {
  const { definitions } = standing;
  const known = new Map<string, { name: string; detail: string; word: string }>();
  const add = (name: string, detail: string, word: string) => {
    if (!known.has(name)) known.set(name, { name, detail, word });
  };
  for (const { record } of definitions.all(node, "limit"))
    add(record.name, `limit ${sayLimits(record.limits)}`, "limit");
  for (const { record } of definitions.all(node, "setting"))
    add(record.name, `setting ${sayLimits(record.limits)}`, "setting");
  for (const word of ["size", "fit", "pair", "calc"] as const)
    for (const { record } of definitions.all(node, word)) add(record.name, word, word);
  const readings = standing.parts.get(node)?.item.readings ?? standing.readings.get(node) ?? [];
  for (const { name } of readings) add(name, "measured before", "measured");
  return [...known.values()];
}

function named(asked: Asked, kind: NamedKind): readonly Proposal[] {
  const { recentBuild: build } = asked.view;
  return [...build.standing.names.every(kind)].map((definition) => ({
    label: definition.name,
    kind: kind === "job" || kind === "hold" ? CompletionItemKind.Event : CompletionItemKind.Variable,
    rank: rankOfNamed(asked, definition),
    detail: detailOf(build, definition),
    documented: { is: "named", kind, name: definition.name },
  }));
}

function detailOf({ standing }: Build, definition: NamedDefinition): string | undefined {
  if (definition.kind !== "gauge") return definition.title;
  const ranges = recordOf(definition, "reads")?.ranges.map(sayLimits).join(", ");
  const until = standing.gauges.get(definition)?.calibrated?.until;
  const over = until !== undefined && until < standing.date ? `calibration over since ${until}` : undefined;
  return [definition.title, ranges, over].filter((words) => words !== undefined).join(", ");
}

/** Gauges that read what was read and are in date, jobs that are not done, hold points that are shut. */
function rankOfNamed({ view: { recentBuild: build }, place }: Asked, definition: NamedDefinition): Rank {
  const { standing } = build;
  switch (definition.kind) {
    case "gauge":
      return gaugeRank(build, definition, place);
    case "job":
      return standing.jobs.get(definition)?.done === undefined ? 0 : 2;
    case "hold": {
      const hold = standing.holds.get(definition);
      return hold?.released === undefined || hold.lapsed !== undefined ? 0 : 2;
    }
    default:
      return 0;
  }
}

function gaugeRank({ standing }: Build, gauge: NamedDefinition, { values }: Asked["place"]): Rank {
  const value = values.get("readings") ?? values.get("torque") ?? values.get("value");
  const first = value?.kind === "quantities" ? value.items[0] : value;
  const reading = first?.kind === "quantity" ? quantityOfNode(first) : undefined;
  const until = standing.gauges.get(gauge)?.calibrated?.until;
  if (reading !== undefined && gaugeReads(gauge, reading) === false) return 3;
  return until !== undefined && until < standing.date ? 2 : reading === undefined ? 1 : 0;
}

function snags({ standing }: Build): readonly Proposal[] {
  return [...standing.snags.values()].map(({ name, cleared, fact }) => ({
    label: name,
    kind: CompletionItemKind.Variable,
    rank: cleared === undefined ? 0 : 2,
    detail: fact.fact.note,
    documented: { is: "snag", name },
  }));
}
