/** What a name in a log can stand for. */
import type { NamedDefinition } from "../../build/definitions.ts";
import type { TreeNode } from "../../build/tree/node.ts";

export type Thing =
  /** The vehicle, or something of its tree. */
  | { readonly is: "node"; readonly node: TreeNode }
  /** A job, hold point, supplier, gauge, setup or donor. */
  | { readonly is: "named"; readonly definition: NamedDefinition }
  /** Something that is measured, set, tested or computed of a thing: `front.left.disc.thickness`. */
  | { readonly is: "characteristic"; readonly node: TreeNode; readonly name: string }
  | { readonly is: "snag"; readonly name: string }
  /** The reference under which something was ordered. */
  | { readonly is: "order"; readonly name: string }
  /** A `calc:` of a day, known in the whole build. */
  | { readonly is: "calc"; readonly name: string }
  | { readonly is: "function"; readonly name: string };

/** Whether two names stand for the same thing. */
export function sameThing(a: Thing, b: Thing): boolean {
  switch (a.is) {
    case "node":
      return b.is === "node" && a.node === b.node;
    case "named":
      return b.is === "named" && a.definition === b.definition;
    case "characteristic":
      return b.is === "characteristic" && a.node === b.node && a.name === b.name;
    default:
      return a.is === b.is && a.name === (b as { name: string }).name;
  }
}
