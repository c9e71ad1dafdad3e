/** What an editor has to know of the notation to help with typing: comments, pairs, indentation, folding. */
import { vocabulary } from "./vocabulary/vocabulary.ts";

export interface LanguageConfiguration {
  readonly comments: { readonly lineComment: string };
  readonly brackets: readonly (readonly [string, string])[];
  readonly autoClosingPairs: readonly {
    readonly open: string;
    readonly close: string;
    readonly notIn?: readonly string[];
  }[];
  readonly surroundingPairs: readonly (readonly [string, string])[];
  readonly wordPattern: string;
  readonly indentationRules: {
    readonly increaseIndentPattern: string;
    readonly decreaseIndentPattern: string;
  };
  readonly onEnterRules: readonly {
    readonly beforeText: string;
    readonly action: { readonly indent: "none" | "indent" | "outdent"; readonly appendText?: string };
  }[];
  readonly folding: { readonly offSide: true };
}

export function languageConfiguration(): LanguageConfiguration {
  const words = vocabulary.blocks.map(({ word }) => word).join("|");
  const notIn = ["string", "comment"];
  return {
    comments: { lineComment: "#" },
    brackets: [
      ["{", "}"],
      ["(", ")"],
    ],
    autoClosingPairs: [
      { open: "{", close: "}", notIn },
      { open: "(", close: ")", notIn },
      { open: '"', close: '"', notIn },
    ],
    surroundingPairs: [
      ["{", "}"],
      ["(", ")"],
      ['"', '"'],
    ],
    // A path is several words: each of its names is completed and renamed by itself.
    wordPattern: "[A-Za-z][A-Za-z0-9_]*|\\d+(?:\\.\\d+)?",
    indentationRules: {
      increaseIndentPattern: `^(?:${words})\\s+\\S`,
      // Nothing closes a block but the next header, which is typed in column 0.
      decreaseIndentPattern: "^(?!)",
    },
    onEnterRules: [
      // Behind a comma the record goes on, indented further.
      { beforeText: "^\\s+[a-z][a-z_]*:\\s.*,\\s*$", action: { indent: "indent" } },
    ],
    folding: { offSide: true },
  };
}
