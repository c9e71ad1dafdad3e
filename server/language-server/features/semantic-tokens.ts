/**
 * What each word is, for highlighting beyond patterns: which names are parts, joints or gauges, which words are values.
 * Words are found once for each block and remembered; only what names lead to is asked of the build.
 */

import type { BlockNode, ItemNode, Span } from "../../../grammar/syntax.ts";
import type { Build } from "../../build/build.ts";
import type { BlockSite } from "../../build/source.ts";
import type { TreeKind } from "../../build/tree/node.ts";
import { meaningOf } from "../names/meaning.ts";
import type { Thing } from "../names/thing.ts";
import type { WrittenName } from "../names/written-names.ts";
import { writtenNames } from "../names/written-names.ts";
import type { InnerNode } from "../text/inner-nodes.ts";
import { innerNodes } from "../text/inner-nodes.ts";
import type { FileView } from "../view.ts";
import { TOKEN_TYPES } from "./token-legend.ts";

type TokenType = (typeof TOKEN_TYPES)[number];

/** Five numbers for each token, as the protocol packs them: lines and columns relative to the token before. */
export function semanticTokens(
  view: FileView,
  lines?: { readonly from: number; readonly to: number },
): number[] {
  const { document, recentBuild: build } = view;
  const packed: number[] = [];
  let [line, character] = [0, 0];
  for (const site of view.sites) {
    const first = document.lines[site.index] as number;
    const last = first + site.block.lineStarts.length - 1;
    if (lines !== undefined && (last < lines.from || first > lines.to)) continue;
    for (const token of tokensOf(site.block)) {
      const at = first + token.line;
      if (lines !== undefined && (at < lines.from || at > lines.to)) continue;
      const type = typeof token.type === "string" ? token.type : typeOfName(build, site, token.type);
      packed.push(at - line, at === line ? token.character - character : token.character);
      packed.push(token.length, TOKEN_TYPES.indexOf(type), token.modifiers);
      [line, character] = [at, token.character];
    }
  }
  return packed;
}

/** An edit of packed tokens: what to replace from where. */
export interface TokensEdit {
  readonly start: number;
  readonly deleteCount: number;
  readonly data: number[];
}

/** What turns one list into another: the stretch between what both begin and end with. */
export function tokensEdit(before: readonly number[], after: readonly number[]): TokensEdit[] {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  if (start === before.length && start === after.length) return [];
  let end = 0;
  while (end < shorter - start && before.at(-1 - end) === after.at(-1 - end)) end++;
  return [{ start, deleteCount: before.length - start - end, data: after.slice(start, after.length - end) }];
}

/** A token in its block; the type of a name is left to the build. */
interface Token {
  readonly line: number;
  readonly character: number;
  readonly length: number;
  readonly type: TokenType | WrittenName;
  readonly modifiers: number;
}

const DECLARATION = 1;
const DOCUMENTATION = 2;
const DEFAULT_LIBRARY = 4;

const remembered = new WeakMap<BlockNode, readonly Token[]>();

function tokensOf(block: BlockNode): readonly Token[] {
  let tokens = remembered.get(block);
  if (tokens === undefined) {
    tokens = readTokens(block);
    remembered.set(block, tokens);
  }
  return tokens;
}

interface Painted extends Span {
  readonly type: TokenType | WrittenName;
  readonly modifiers: number;
}

function readTokens(block: BlockNode): readonly Token[] {
  const names = writtenNames(block).map(
    (name): Painted => ({
      start: name.start,
      end: name.end,
      type: name,
      modifiers: (name.defines ? DECLARATION : 0) | (name.is === "function" ? DEFAULT_LIBRARY : 0),
    }),
  );
  // Names first: of two that cover the same stretch, what it is called after wins.
  const all = [...names, ...block.items.flatMap((item) => [...painted(item)])];
  all.sort((a, b) => a.start - b.start || a.end - b.end);
  const tokens: Token[] = [];
  let end = 0;
  let line = 0;
  for (const token of all) {
    // What overlaps was painted before: a name within a string, a value that is a name.
    if (token.start < end || token.end <= token.start) continue;
    while ((block.lineStarts[line + 1] ?? Number.POSITIVE_INFINITY) <= token.start) line++;
    const character = token.start - (block.lineStarts[line] as number);
    const { type, modifiers } = token;
    tokens.push({ line, character, length: token.end - token.start, type, modifiers });
    end = token.end;
  }
  return tokens;
}

function* painted(item: ItemNode): Generator<Painted> {
  if (item.kind === "comment") yield paint(item, "comment");
  if (item.kind !== "header" && item.kind !== "record") return;
  yield paint(item.word, item.kind === "header" ? "keyword" : "property");
  for (const [role, value] of item.values) {
    for (const node of innerNodes(value)) {
      const type = typeOfValue(node, role);
      if (type !== undefined) yield paint(node, type);
    }
  }
  for (const comment of item.comments)
    yield { ...paint(comment, "comment"), modifiers: comment.waiver === undefined ? 0 : DOCUMENTATION };
}

function paint({ start, end }: Span, type: TokenType): Painted {
  return { start, end, type, modifiers: 0 };
}

/** Roles whose word is a name and not one of a list of words. */
const NAMING: ReadonlySet<string> = new Set(["name", "what", "like"]);

function typeOfValue(node: InnerNode, role: string): TokenType | undefined {
  if (!("kind" in node)) return undefined;
  switch (node.kind) {
    case "number":
    case "date":
    case "thread":
      return "number";
    case "unit":
      return "type";
    case "string":
      return "string";
    case "class":
      return "number";
    case "word":
      return NAMING.has(role) ? undefined : "enumMember";
    default:
      return undefined;
  }
}

/** Types by the text of a name and what it can be: a diary names the same few things over and over. */
const typesByBuild = new WeakMap<Build, Map<string, TokenType>>();

function typeOfName(build: Build, site: BlockSite, name: WrittenName): TokenType {
  switch (name.is) {
    case "vehicle":
    case "order":
      return "string";
    case "characteristic":
      return "property";
    case "snag":
      return "variable";
    case "calculated":
      return "variable";
    case "function":
      return "function";
    default: {
      let types = typesByBuild.get(build);
      if (types === undefined) {
        types = new Map();
        typesByBuild.set(build, types);
      }
      const key = keyOf(name);
      let type = types.get(key);
      if (type === undefined) {
        type = typeOfThing(meaningOf(build, site, name)[0]);
        types.set(key, type);
      }
      return type;
    }
  }
}

type Meant = WrittenName & { is: "in path" | "named" | "in reference" };

const keys = new WeakMap<Meant, string>();

function keyOf(name: Meant): string {
  let key = keys.get(name);
  if (key === undefined) {
    key = makeKey(name);
    keys.set(name, key);
  }
  return key;
}

function makeKey(name: Meant): string {
  if (name.is === "in path") return `path ${name.path}`;
  if (name.is === "named") return `${name.kinds.join()} ${name.text}`;
  const paths = name.in.map(({ path, index }) => `${path.map(({ text }) => text).join(".")}@${index}`);
  return `${name.use.kinds.join()} ${paths.join()}`;
}

const TYPES_OF_NODES: Readonly<Record<TreeKind, TokenType>> = {
  vehicle: "namespace",
  assembly: "namespace",
  part: "class",
  joint: "struct",
  system: "interface",
  circuit: "enum",
};

function typeOfThing(thing: Thing | undefined): TokenType {
  if (thing?.is === "node") return TYPES_OF_NODES[thing.node.kind];
  if (thing?.is === "named") {
    const { kind } = thing.definition;
    return kind === "job" || kind === "hold" ? "event" : "variable";
  }
  return "variable";
}
