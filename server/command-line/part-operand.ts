/** A part of the build as it is named on the command line: a path, or a tail of one that is not ambiguous. */
import type { ReferenceNode } from "../../grammar/syntax.ts";
import type { Build } from "../build/build.ts";
import type { TreeNode } from "../build/tree/node.ts";
import { Resolver } from "../build/tree/resolve.ts";
import { list } from "../rules/words.ts";
import { Failure } from "./command.ts";

const PATH = /^[A-Za-z]\w*(?:\.[A-Za-z]\w*)*$/;

export function partNamed({ standing }: Build, text: string): TreeNode {
  if (!PATH.test(text)) throw new Failure(`${text} is no path of a part such as front.left.bearing`);
  const found = new Resolver(standing.gathered.tree).resolveOne(referenceTo(text), ["part"]);
  if (!("is" in found)) return found;
  if (found.is === "ambiguous")
    throw new Failure(`${text} can be ${list(found.candidates, "or")}: name one of them in full`);
  if (found.is === "unknown") {
    const hint = found.nearest.length === 0 ? "" : `; did you mean ${list(found.nearest, "or")}?`;
    throw new Failure(`there is no part ${text}${hint}`);
  }
  throw new Failure(`${found.path} is no part`);
}

function referenceTo(text: string): ReferenceNode {
  const segments = text.split(".").map((name) => ({ is: "name", text: name }) as const);
  return { kind: "reference", text, segments, start: 0, end: text.length };
}
