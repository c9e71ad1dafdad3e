/** The types and modifiers of tokens, in the order in which the server declares them and tokens name them. */

export const TOKEN_TYPES = [
  "keyword",
  "property",
  "namespace",
  "class",
  "struct",
  "interface",
  "enum",
  "event",
  "variable",
  "function",
  "enumMember",
  "number",
  "type",
  "string",
  "comment",
] as const;

export const TOKEN_MODIFIERS = ["declaration", "documentation", "defaultLibrary"] as const;
