/** Names and functions within a calculation. */
import { CompletionItemKind } from "vscode-languageserver";
import { TREE_KINDS } from "../../../../grammar/vocabulary/shape.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { describeFunction } from "../../../expressions/function-description.ts";
import { functionNames } from "../../../expressions/function-names.ts";
import type { Asked, Proposal } from "./item.ts";
import { characteristicsOf, referenceProposals } from "./of-references.ts";

export function expressionProposals(asked: Asked, subjects: readonly TreeNode[]): readonly Proposal[] {
  const { recentBuild: build } = asked.view;
  const functions = functionNames.map(
    (name): Proposal => ({
      label: name,
      kind: CompletionItemKind.Function,
      rank: 1,
      detail: describeFunction(name)?.summary,
      text: `${name}(`,
      snippet: `${name}($0)`,
      documented: { is: "function", name },
    }),
  );
  const own = subjects.flatMap((node) =>
    characteristicsOf(build, node).map(
      ({ name, detail }): Proposal => ({
        label: name,
        kind: CompletionItemKind.Field,
        rank: 0,
        detail,
        documented: { is: "characteristic", path: node.path, name },
      }),
    ),
  );
  const computed = [...build.standing.calculated.keys()].map(
    (name): Proposal => ({
      label: name,
      kind: CompletionItemKind.Variable,
      rank: 0,
      documented: { is: "calc", name },
    }),
  );
  return [...own, ...computed, ...functions, ...referenceProposals(asked, TREE_KINDS, true)];
}
