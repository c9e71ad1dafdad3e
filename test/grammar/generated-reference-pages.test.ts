import { readdirSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { ebnf } from "../../grammar/reference/ebnf.ts";
import { LINE_FORMS } from "../../grammar/reference/line-forms.ts";
import { referencePages } from "../../grammar/reference/pages.ts";
import type { Production } from "../../grammar/reference/production.ts";
import { expressionRules, PATTERNS, statementRule, valueRules } from "../../grammar/reference/production.ts";
import { railroad } from "../../grammar/reference/railroad.ts";
import { VALUE_FORMS } from "../../grammar/reference/value-forms.ts";
import { vocabulary } from "../../grammar/vocabulary/vocabulary.ts";
import { faultsOf, recordIn } from "./marked-log.ts";

const folder = "../../docs/notation";
const pages = referencePages();

describe("the reference pages", () => {
  it.each([...pages])("%s is current: `npm run generate` writes it", async (name, text) => {
    await expect(text).toMatchFileSnapshot(`${folder}/${name}`);
  });

  it("are all there is, beside the example build and its photos", () => {
    const files = readdirSync(path.join(import.meta.dirname, folder)).filter((name) => name !== "photos");
    expect(files.sort()).toEqual([...pages.keys(), "example.cotter"].sort());
  });

  it("lead nowhere that does not exist", () => {
    const files = new Set([...pages.keys(), "example.cotter"]);
    const dead = [...pages].flatMap(([name, text]) =>
      [...text.matchAll(/\]\(([^)#]+)(?:#([^)]+))?\)|href="#([^"]+)"/g)].flatMap(([, file, heading, id]) => {
        if (id !== undefined) return text.includes(`id="${id}"`) ? [] : [`${name}: #${id}`];
        if (file === undefined || !files.has(file)) return [`${name}: ${file}`];
        return heading === undefined || pages.get(file)?.includes(`## \`${heading}:\``)
          ? []
          : [`${name}: ${file}#${heading}`];
      }),
    );
    expect(dead).toEqual([]);
  });

  it("explain every word with its meaning, a line that reads and one that is refused", () => {
    for (const { word, help, example, bad, blocks } of vocabulary.records) {
      for (const block of blocks) {
        const page = pages.get(block === "day" ? "facts.md" : `${block}.md`) ?? "";
        for (const text of [`## \`${word}:\``, help, example, bad.text, bad.code])
          expect(page).toContain(text);
      }
    }
  });
});

/** The codes of a log's complaints. */
function codesIn(text: string): string[] {
  return Document.read(text).blocks.flatMap((block) => faultsOf(block).map(({ code }) => code));
}

describe("the examples of lines and values", () => {
  it.each(LINE_FORMS.map((form) => [form.name, form] as const))("%s", (_, { good, bad }) => {
    expect(codesIn(good)).toEqual([]);
    for (const { text, code } of bad) expect(codesIn(text), text).toEqual([code]);
  });

  it.each(VALUE_FORMS.map((form) => [form.name, form] as const))("%s", (_, { good, bad }) => {
    const codes = (text: string) => {
      const [, block = "", line = ""] = /^(\w+): (.*)$/.exec(text) ?? [];
      return recordIn(block, line).faults.map(({ code }) => code);
    };
    for (const text of good) expect(codes(text), text).toEqual([]);
    for (const { text, code } of bad) expect(codes(text), text).toEqual([code]);
  });
});

/** The names that a production refers to. */
function namesIn(production: Production): string[] {
  switch (production.is) {
    case "text":
      return [];
    case "name":
      return [production.name];
    case "sequence":
    case "choice":
      return production.of.flatMap(namesIn);
    case "optional":
      return namesIn(production.of);
    case "list":
      return [
        ...namesIn(production.of),
        ...(production.separator === undefined ? [] : namesIn(production.separator)),
      ];
  }
}

describe("the productions", () => {
  const rules = [...valueRules(), ...expressionRules()];
  const statements = [...vocabulary.blocks, ...vocabulary.records].map(statementRule);

  it("refer only to rules and patterns that are described", () => {
    const described = new Set([...rules, ...PATTERNS].map(({ name }) => name));
    const names = [...rules, ...statements].flatMap(({ definition }) => namesIn(definition));
    expect(names.filter((name) => !described.has(name) && name !== "arguments-of-that-record")).toEqual([]);
  });

  it("print as EBNF", () => {
    const printed = (name: string) => rules.filter((rule) => rule.name === name).map(ebnf)[0];
    expect(printed("limits")).toBe('limits ::= (minimum | maximum | around-nominal) ("new" quantity)?');
    expect(printed("life")).toBe('life ::= quantity ("running" | "from" ("made" | "fitted"))');
    expect(printed("expression-call")).toBe(
      'expression-call ::= NAME "(" (expression ("," expression)*)? ")"',
    );
    expect(statements.map(ebnf)).toContain(
      'rechecked ::= "rechecked:" reference ("," reference)* quantity? ("held" | "moved")? ("with" reference)? ("by" string)? TEXT?',
    );
  });

  it("draw as diagrams whose boxes lie inside them", () => {
    for (const rule of [...rules, ...statements]) {
      const svg = railroad(rule, () => undefined);
      const [, width, height] = /width="(\d+)" height="(\d+)"/.exec(svg)?.map(Number) ?? [];
      for (const [, x, y, w, h] of svg.matchAll(
        /<rect class="\w+" x="([-\d.]+)" y="([-\d.]+)" width="(\d+)" height="(\d+)"/g,
      )) {
        expect(Number(x)).toBeGreaterThanOrEqual(0);
        expect(Number(y)).toBeGreaterThanOrEqual(0);
        expect(Number(x) + Number(w)).toBeLessThanOrEqual(width ?? 0);
        expect(Number(y) + Number(h)).toBeLessThanOrEqual(height ?? 0);
      }
    }
  });
});
