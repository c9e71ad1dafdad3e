import type { Expression, Span } from "../../grammar/syntax.ts";
import { tradeFunction } from "../trade/catalogue.ts";
import { parameterAt } from "./signature.ts";
import { wordFor } from "./trade-argument.ts";

export interface NameInExpression extends Span {
  readonly text: string;
}

/**
 * The names that an evaluation would ask its lookup for, in the order they are written: without the words that stand
 * for a material, a friction or a class.
 */
export function namesIn(tree: Expression): readonly NameInExpression[] {
  const names: NameInExpression[] = [];
  collect(tree, names);
  return names;
}

function collect(node: Expression, names: NameInExpression[]): void {
  switch (node.is) {
    case "name":
      names.push({ text: node.text, start: node.start, end: node.end });
      return;
    case "negative":
    case "conversion":
      collect(node.of, names);
      return;
    case "binary":
      collect(node.left, names);
      collect(node.right, names);
      return;
    case "call":
      collectArguments(node, names);
      return;
    default:
      return;
  }
}

function collectArguments(node: Expression & { is: "call" }, names: NameInExpression[]): void {
  const parameters = tradeFunction(node.name.text)?.parameters ?? [];
  for (const [place, argument] of node.arguments.entries()) {
    const parameter = parameterAt(parameters, place);
    const isWord =
      argument.is === "name" && parameter !== undefined && wordFor(parameter, argument.text) !== undefined;
    if (!isWord) collect(argument, names);
  }
}
