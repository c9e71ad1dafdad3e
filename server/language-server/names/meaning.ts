/** What a written name means in a build. */
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import type { ReferenceKind } from "../../../grammar/vocabulary/shape.ts";
import { TREE_KINDS } from "../../../grammar/vocabulary/shape.ts";
import type { Build } from "../../build/build.ts";
import type { BlockSite } from "../../build/source.ts";
import type { TreeKind, TreeNode } from "../../build/tree/node.ts";
import { functionNames } from "../../expressions/function-names.ts";
import type { SpelledPath } from "../text/reference-segments.ts";
import { spelledPaths } from "../text/reference-segments.ts";
import type { Thing } from "./thing.ts";
import type { WrittenName } from "./written-names.ts";

const FUNCTIONS: ReadonlySet<string> = new Set(functionNames);

/** Every thing that a name stands for: none where it leads nowhere, several where it is a set. */
export function meaningOf(build: Build, site: BlockSite, name: WrittenName): readonly Thing[] {
  const { standing } = build;
  switch (name.is) {
    case "vehicle":
      return [{ is: "node", node: standing.gathered.tree.root }];
    case "in path":
      return nodes(standing.gathered.tree.at(name.path));
    case "named":
      return name.kinds.flatMap((kind): Thing[] => {
        const definition = standing.names.named(kind, name.text);
        return definition === undefined ? [] : [{ is: "named", definition }];
      });
    case "in reference":
      return distinct(
        name.in.flatMap(({ path, index }) => nodesOnPath(build, path, index, name.use.kinds)),
      ).map((node) => ({ is: "node", node }));
    case "characteristic":
      return distinct(ownersOf(build, site, name.of)).map((node) => ({
        is: "characteristic",
        node,
        name: name.text,
      }));
    case "calculated":
      return calculated(build, site, name.text);
    case "snag":
    case "order":
      return [{ is: name.is, name: name.text }];
    case "function":
      return FUNCTIONS.has(name.text) ? [{ is: "function", name: name.text }] : [];
  }
}

/** The thing that a block of the tree defines. */
export function nodeOfBlock(build: Build, { block }: BlockSite): TreeNode | undefined {
  const { tree } = build.standing.gathered;
  if (block.header?.block === "vehicle") return tree.root;
  const name = block.header?.values.get("name");
  if (name?.kind !== "word" || !(TREE_KINDS as readonly string[]).includes(block.header?.block ?? ""))
    return undefined;
  return tree.at(name.text);
}

/** The things that a reference names itself: an assembly, not what is below it. */
export function nodesNamed(
  build: Build,
  reference: Pick<ReferenceNode, "text" | "start">,
  kinds: readonly ReferenceKind[] = TREE_KINDS,
): readonly TreeNode[] {
  return distinct(
    spelledPaths(reference).flatMap((path) => nodesOnPath(build, path, path.length - 1, kinds)),
  );
}

function ownersOf(
  build: Build,
  site: BlockSite,
  of: (WrittenName & { is: "characteristic" })["of"],
): readonly TreeNode[] {
  if (of === "block") return [nodeOfBlock(build, site)].filter((node) => node !== undefined);
  if ("text" in of) return nodesNamed(build, of);
  return nodesOnPath(build, of, of.length - 1, TREE_KINDS);
}

/** A name without dots: a characteristic of the block's own thing, or what a `calc:` of a day has given. */
function calculated(build: Build, site: BlockSite, name: string): readonly Thing[] {
  const node = nodeOfBlock(build, site);
  if (node !== undefined && site.block.header?.block !== "vehicle")
    return [{ is: "characteristic", node, name }];
  return [{ is: "calc", name }];
}

/**
 * The things that the names of a path up to `index` stand for. The path may be a tail, and hold `*`: it is laid along
 * the paths of the things that it means.
 */
function nodesOnPath(
  build: Build,
  path: SpelledPath,
  index: number,
  kinds: readonly ReferenceKind[],
): readonly TreeNode[] {
  const { tree } = build.standing.gathered;
  const names = path.map(({ text }) => text);
  const fixed = names.at(-1) === "*" ? names.slice(0, -1) : names;
  const upTo = Math.min(index, fixed.length - 1);
  return distinct(
    namedBy(build, names, fixed, kinds).flatMap((node) => {
      const whole = node.path.split(".");
      const end = whole.length - fixed.length + upTo + 1;
      return tree.at(whole.slice(0, end).join(".")) ?? [];
    }),
  );
}

function namedBy(
  build: Build,
  names: readonly string[],
  fixed: readonly string[],
  kinds: readonly ReferenceKind[],
): readonly TreeNode[] {
  const { tree } = build.standing.gathered;
  const text = names.join(".");
  if (fixed.length === 0) return [];
  const inTree = kinds.filter((kind): kind is TreeKind & ReferenceKind =>
    (TREE_KINDS as readonly string[]).includes(kind),
  );
  const reference: ReferenceNode = {
    kind: "reference",
    text,
    segments: names.map((name) => (name === "*" ? { is: "every" } : { is: "name", text: name })),
    start: 0,
    end: text.length,
  };
  const meant = build.standing.names.targets(reference, inTree).map(({ node }) => node);
  const found = meant.flatMap((node) => [...upwards(node)]).filter((node) => endsIn(node.path, fixed));
  if (found.length > 0) return distinct(found);
  // An assembly with nothing below it that the place could take: it is named all the same.
  const whole = tree.at(text);
  const tails = whole === undefined ? tree.withTail(text) : [whole];
  return tails.length === 1 ? tails : [];
}

function* upwards(node: TreeNode): Generator<TreeNode> {
  for (let above: TreeNode | undefined = node; above !== undefined; above = above.parent) yield above;
}

function endsIn(path: string, names: readonly string[]): boolean {
  const whole = path.split(".");
  if (whole.length < names.length) return false;
  const tail = whole.slice(whole.length - names.length);
  return names.every((name, index) => name === "*" || name === tail[index]);
}

function nodes(node: TreeNode | undefined): readonly Thing[] {
  return node === undefined ? [] : [{ is: "node", node }];
}

function distinct<T>(items: readonly T[]): readonly T[] {
  return [...new Set(items)];
}
