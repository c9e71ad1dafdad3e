import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { beforeAll, describe, expect, it } from "vitest";
import { createOnigScanner, createOnigString, loadWASM } from "vscode-oniguruma";
import type { IGrammar, IRawGrammar } from "vscode-textmate";
import { INITIAL, Registry } from "vscode-textmate";
import { Document } from "../../grammar/document.ts";
import { languageConfiguration } from "../../grammar/language-configuration.ts";
import type { BlockNode, ItemNode } from "../../grammar/syntax.ts";
import { textMateGrammar } from "../../grammar/text-mate.ts";
import { Values } from "../../grammar/values.ts";
import { vocabulary } from "../../grammar/vocabulary/vocabulary.ts";
import { sampleLogs } from "./corpus.ts";
import { log } from "./marked-log.ts";

const generated = "../../grammar/generated";

describe("the generated files for editors", () => {
  it("are current: `npm run generate` writes them", async () => {
    const json = (value: unknown) => `${JSON.stringify(value, undefined, 2)}\n`;
    await expect(json(textMateGrammar())).toMatchFileSnapshot(`${generated}/cotter.tmLanguage.json`);
    await expect(json(languageConfiguration())).toMatchFileSnapshot(
      `${generated}/language-configuration.json`,
    );
  });
});

/** The scopes of every character of a text, line by line. */
type Scopes = (line: number, character: number) => string;

let grammar: IGrammar;

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm");
  await loadWASM(readFileSync(wasm));
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: () => Promise.resolve(textMateGrammar() as unknown as IRawGrammar),
  });
  const loaded = await registry.loadGrammar("source.cotter");
  if (loaded === null) throw new Error("the grammar was not loaded");
  grammar = loaded;
});

function scopesOf(text: string): Scopes {
  let stack = INITIAL;
  const lines = text.split(/\r\n|\r|\n/).map((line) => {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
    stack = ruleStack;
    return tokens;
  });
  return (line, character) =>
    lines[line]
      ?.find(({ startIndex, endIndex }) => startIndex <= character && character < endIndex)
      ?.scopes.join(" ") ?? "";
}

/** The scope that a node has to begin in; undefined for one whose form alone shows nothing. */
const SCOPE_OF_NODE: Readonly<Record<string, string>> = {
  number: "constant.numeric",
  unit: "keyword.other.unit",
  date: "constant.numeric.date|entity.name.section.day",
  string: "string.quoted.double",
  thread: "constant.other.thread",
  reference: "variable.other.path|meta.set",
};

interface Expectation {
  readonly at: number;
  readonly scope: string;
}

function expectationsOf(item: ItemNode, text: string): Expectation[] {
  const first = item.start + text.slice(item.start, item.end).search(/\S/);
  switch (item.kind) {
    case "blank":
      return [];
    case "comment":
      return [{ at: first, scope: "comment.line" }];
    case "prose":
      return [{ at: first, scope: "markup.other.prose" }];
    case "stray":
      return [{ at: first, scope: "invalid.illegal.line" }];
    case "header":
      if (item.block !== item.word.text) return [{ at: first, scope: "invalid.illegal" }];
      return [{ at: first, scope: "keyword.declaration" }, ...nodesIn(item.values), ...commentsOf(item)];
    default: {
      if (!item.known) {
        const misplaced = item.faults.some(({ code }) => code === "record-not-here");
        return [{ at: first, scope: misplaced ? "keyword.other.record" : "invalid.illegal.record" }];
      }
      const read = item.faults.length === 0 ? nodesIn(item.values) : [];
      return [{ at: first, scope: "keyword.other.record" }, ...read, ...commentsOf(item)];
    }
  }
}

function commentsOf({
  comments,
}: {
  readonly comments: readonly { readonly start: number }[];
}): Expectation[] {
  return comments.map(({ start }) => ({ at: start, scope: "comment.line" }));
}

function nodesIn(value: unknown): Expectation[] {
  if (typeof value !== "object" || value === null) return [];
  const { kind = "", start } = value as { readonly kind?: string; readonly start?: number };
  const scope = SCOPE_OF_NODE[kind];
  const own = scope !== undefined && start !== undefined ? [{ at: start, scope }] : [];
  const inner = value instanceof Values ? [...value.values()] : Object.values(value);
  return [...own, ...inner.flatMap(nodesIn)];
}

/** Where the colours say other than the tree: the line, the place, what was expected and found. */
function differences(text: string): string[] {
  const document = Document.read(text);
  const scopes = scopesOf(text);
  const inBlock = (block: BlockNode, index: number) =>
    block.items
      .flatMap((item) => expectationsOf(item, block.text))
      .flatMap(({ at, scope }) => {
        const { line, character } = document.positionIn(index, at);
        const found = scopes(line, character);
        const agrees = scope.split("|").some((each) => found.includes(each));
        return agrees ? [] : [`${line + 1}:${character} ${scope}, not ${found}: ${text.split("\n")[line]}`];
      });
  return document.blocks.flatMap(inBlock);
}

describe("the colours of an editor", () => {
  it.each(sampleLogs.map((text) => [text.slice(0, text.indexOf("\n")), text]))(
    "agree with the tree on kinds of lines, numbers, units, dates, texts, threads, references: %s",
    (_, text) => expect(differences(text)).toEqual([]),
  );

  it("agree with it on every example of the vocabulary", () => {
    const lines = vocabulary.records.map(({ blocks, example }) => {
      const header = vocabulary.blocks.find(({ word }) => word === blocks[0])?.example ?? "";
      return `${header}\n  ${example}\n`;
    });
    expect(lines.flatMap(differences)).toEqual([]);
  });

  it("agree with it on lines that are hard to tell apart", () => {
    const text = log(`
      # column 0
      column 0 prose
      day 2026-05-02 5.5 h  # a comment
        # indented
        #2 cylinder
        | a bar
        removed: front.left.{hub, disc},  # more
          rear.*.hub "all # of it"  # and
        Prose with numbers 12 mm and "quotes".
        removed: hub,
        | not a continuation
        removed: hub,
        bled: brakes.front
        removed: hub,

        removed: hub,
        # comment
        Removed: hub
        removed:hub
        removed : hub
        remvoed: hub
        10:30 tea
        measured: hub bore 1-3/8 in, 5 % ± 0.1 %
        measured: hub bore 12mm with mic25
        ordered: 2 x hub at 3.00 GBP from north
        calc: a = 3/8 in + b.c-d/2 in mm by "JR" "note"
        calc: f = max(a, 2 mm) * pitch(M10x1.25)
      part hub "Hub"
        size: thread 3/8-24 UNF
        torque: 3 N.m
      dya 2026-05-02
      part of the story
    `);
    expect(differences(text)).toEqual([]);
  });

  it("show an unclosed text, an escape, and what is no line of the notation", () => {
    const scopes = scopesOf('day 2026-05-02\n  tagged: hub "open\n  tagged: hub "a \\" b"\nnonsense');
    expect(scopes(1, 14)).toContain("invalid.illegal.unclosed-string");
    expect(scopes(2, 17)).toContain("constant.character.escape");
    expect(scopes(3, 0)).toContain("invalid.illegal.line");
  });
});

describe("the help with typing", () => {
  const { indentationRules, onEnterRules, wordPattern } = languageConfiguration();

  it("indents below a header, and not below prose or records", () => {
    const increase = new RegExp(indentationRules.increaseIndentPattern);
    for (const { example } of vocabulary.blocks) expect(increase.test(example)).toBe(true);
    for (const line of ["  removed: hub", "  Prose", "partial words", "day"])
      expect(increase.test(line)).toBe(false);
    expect(new RegExp(indentationRules.decreaseIndentPattern).test("  anything")).toBe(false);
  });

  it("indents further behind a comma, where the record goes on", () => {
    const [rule] = onEnterRules;
    const before = new RegExp(rule?.beforeText ?? "");
    expect(before.test("  removed: hub, ")).toBe(true);
    expect(before.test("  Prose, with commas,")).toBe(false);
  });

  it("takes each name of a path as a word", () => {
    expect("front.left.disc_2 9.12 mm".match(new RegExp(wordPattern, "g"))).toEqual([
      "front",
      "left",
      "disc_2",
      "9.12",
      "mm",
    ]);
  });
});
