/** The samples between them show the whole notation: each of its words is met at least once. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { ValueNode } from "../../grammar/syntax.ts";
import type { RecordEntry, Shape } from "../../grammar/vocabulary/shape.ts";
import { vocabulary } from "../../grammar/vocabulary/vocabulary.ts";

const met = readdirSync("samples", { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".cotter"))
  .flatMap((name) => Document.read(readFileSync(join("samples", name), "utf8")).blocks)
  .flatMap(({ header, items }) =>
    items.flatMap((item) => (item.kind === "record" ? [{ block: header?.block, record: item }] : [])),
  );

/** What the samples say with one entry of the vocabulary: the values of each of its records. */
function saidWith({ word, blocks }: RecordEntry): readonly ReadonlyMap<string, ValueNode>[] {
  return met
    .filter(({ block, record }) => block !== undefined && blocks.includes(block) && record.word.text === word)
    .filter(({ record }) => !record.broken)
    .map(({ record }) => record.values);
}

function choicesOf(shape: Shape | undefined): readonly string[] {
  if (shape?.value === "either") return shape.options.flatMap(choicesOf);
  return (shape?.value === "word" || shape?.value === "words") && "choices" in shape.of
    ? shape.of.choices
    : [];
}

function wordsOf(value: ValueNode | undefined): readonly string[] {
  if (value?.kind === "word") return [value.text];
  return value?.kind === "words" ? value.items.map(({ text }) => text) : [];
}

function priceOf({ elements }: RecordEntry): readonly string[] {
  return elements.some(({ shape }) => "priced" in shape) ? ["at"] : [];
}

/** Records whose every word is met. */
const CHOSEN: readonly string[] = ["decided", "lock", "needs"];

const entries = vocabulary.records.map((entry) => ({
  name: `${entry.blocks.join(", ")}: ${entry.word}`,
  entry,
}));

describe("The samples say", () => {
  it.each(vocabulary.blocks)("$word, as a block", ({ word }) => {
    expect(met.some(({ block }) => block === word)).toBe(true);
  });

  it.each(entries)("$name", ({ entry }) => {
    expect(saidWith(entry)).not.toEqual([]);
  });

  it.each(entries.filter(({ entry }) => entry.clauses.length > 0))("every clause of $name", ({ entry }) => {
    const roles = new Set(saidWith(entry).flatMap((values) => [...values.keys()]));
    // Who did it may stand behind every fact; a price is read into the things it is of.
    const unmet = entry.clauses.filter(({ role }) => !["by", ...priceOf(entry), ...roles].includes(role));
    expect(unmet.map(({ words }) => words.join(" "))).toEqual([]);
  });

  // Of the words to choose from, those that change what is made of a thing.
  const chosen = entries.filter(({ entry }) => CHOSEN.includes(entry.word));
  it.each(chosen)("every word to choose in $name", ({ entry }) => {
    for (const { role, shape } of [...entry.elements, ...entry.clauses]) {
      const said = saidWith(entry).flatMap((values) => wordsOf(values.get(role)));
      expect(choicesOf(shape).filter((choice) => !said.includes(choice))).toEqual([]);
    }
  });
});
