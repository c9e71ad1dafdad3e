/** What a history is asked of: a thing, or one characteristic of it, under the name it has now and those it had. */
import type { ReferenceNode } from "../../../grammar/syntax.ts";
import type { NamedKind } from "../../build/block-definition.ts";
import type { Defined } from "../../build/definitions.ts";
import { namesOf } from "../../build/names.ts";
import type { TreeKind, TreeNode } from "../../build/tree/node.ts";
import { Resolver } from "../../build/tree/resolve.ts";

export interface Subject {
  /** The full path, or the name of its own kind. */
  readonly ref: string;
  /** Undefined of what the build does not know now. */
  readonly what: TreeKind | NamedKind | undefined;
  readonly title: string | undefined;
  /** `thickness`: only what is said of that. */
  readonly characteristic: string | undefined;
  /** The thing that it was copied from, which defines it too. */
  readonly copyOf: string | undefined;
}

export type SubjectFault =
  | { readonly is: "unreadable"; readonly text: string }
  | { readonly is: "ambiguous"; readonly text: string; readonly candidates: readonly string[] };

const PATH = /^[A-Za-z]\w*(?:\.[A-Za-z]\w*)*$/;
const TREE: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];
const NAMED: readonly NamedKind[] = ["job", "hold", "gauge", "supplier", "setup", "donor"];

/**
 * What a text may mean, the likeliest first: a thing by its path or an unambiguous tail; a characteristic of one; what
 * may once have had that path.
 */
export function subjectsOf(defined: Defined, text: string): readonly Subject[] | SubjectFault {
  if (!PATH.test(text)) return { is: "unreadable", text };
  const resolver = new Resolver(defined.tree);
  const reference = referenceTo(text);
  const found = resolver.resolveOne(reference, TREE);
  if (!("is" in found)) return [ofNode(found, undefined)];
  if (found.is === "ambiguous") return { is: "ambiguous", text, candidates: found.candidates };
  const names = namesOf(defined);
  for (const kind of NAMED) {
    const named = names.named(kind, text);
    if (named !== undefined) return [{ ...UNKNOWN, ref: text, what: kind, title: named.title }];
  }
  const member = memberOf(resolver, text);
  if (member !== undefined && "is" in member) return member;
  return [...(member === undefined ? [] : [member]), { ...UNKNOWN, ref: text }];
}

const UNKNOWN = {
  what: undefined,
  title: undefined,
  characteristic: undefined,
  copyOf: undefined,
};

/** The path of a thing with one name behind it: of a reading it is not asked whether the thing is known by it. */
function memberOf(resolver: Resolver, text: string): Subject | SubjectFault | undefined {
  const dot = text.lastIndexOf(".");
  if (dot < 0) return undefined;
  const found = resolver.resolveOne(referenceTo(text.slice(0, dot)), TREE);
  const name = text.slice(dot + 1);
  if (!("is" in found)) return ofNode(found, name);
  if (found.is !== "ambiguous") return undefined;
  return { is: "ambiguous", text, candidates: found.candidates.map((path) => `${path}.${name}`) };
}

function ofNode(
  { path, kind, title, copyOf, header }: TreeNode,
  characteristic: string | undefined,
): Subject {
  const own = header?.site.block.header?.values.get("name");
  const isCopied = copyOf !== undefined && !(own?.kind === "word" && own.text === path);
  return { ref: path, what: kind, title, characteristic, copyOf: isCopied ? copyOf : undefined };
}

function referenceTo(text: string): ReferenceNode {
  const segments = text.split(".").map((name) => ({ is: "name", text: name }) as const);
  return { kind: "reference", text, segments, start: 0, end: text.length };
}
