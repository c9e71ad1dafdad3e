import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { ExpressionParser } from "../../grammar/expression-parser.ts";
import { StatementReader } from "../../grammar/statement.ts";
import type { SyntaxFaultCode } from "../../grammar/syntax.ts";
import type { BlockEntry, RecordEntry } from "../../grammar/vocabulary/shape.ts";
import { UNIT_SYMBOLS } from "../../grammar/vocabulary/units.ts";
import { blockEntry, entriesIn, recordEntry, vocabulary } from "../../grammar/vocabulary/vocabulary.ts";
import { RESERVED_NAMES } from "../../grammar/vocabulary/words.ts";
import { everySymbol, namedUnit } from "../../server/quantities/unit-definitions.ts";
import { exampleBuild as example } from "./corpus.ts";
import { faultsOf } from "./marked-log.ts";

const build = Document.read(example);

/** Every code that the reading of text alone can bring. */
const SYNTAX_CODES: Readonly<Record<SyntaxFaultCode, true>> = {
  "unreadable-line": true,
  "unknown-block": true,
  "unknown-record": true,
  "record-not-here": true,
  "missing-value": true,
  "unreadable-value": true,
  "decimal-comma": true,
  "bad-date": true,
  "unknown-unit": true,
  "unclosed-string": true,
  "friction-unnamed": true,
  "unreadable-expression": true,
  "waiver-without-reason": true,
};

/** The example build with one line put in another's place. */
function withLine(good: string, bad: string): Document {
  const at = example.search(new RegExp(`^ *${good.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`, "m"));
  const start = at + (/^ */.exec(example.slice(at))?.[0].length ?? 0);
  return Document.read(example.slice(0, start) + bad + example.slice(start + good.length));
}

function codesIn(document: Document): string[] {
  return document.blocks.flatMap((block) => faultsOf(block).map(({ code }) => code));
}

const entries: readonly (readonly [string, BlockEntry | RecordEntry])[] = [
  ...vocabulary.blocks.map((entry) => [`block ${entry.word}`, entry] as const),
  ...vocabulary.records.map((entry) => [`${entry.blocks.join(" ")}: ${entry.word}`, entry] as const),
];

describe("the example build", () => {
  it("reads without a complaint", () => expect(codesIn(build)).toEqual([]));

  it.each(entries)("holds the example of %s", (_, { example: line, ...entry }) => {
    const places = build.blocks.flatMap(({ header, items, text }) =>
      items.flatMap((item) => {
        if (item.kind !== "record" && item.kind !== "header") return [];
        const written = text
          .slice(item.word.start, item.kind === "record" ? item.contentEnd : item.end)
          .trimEnd();
        return written === line ? [header?.block] : [];
      }),
    );
    const allowed = "blocks" in entry ? entry.blocks : [entry.word];
    expect(
      places.some((block) => block !== undefined && (allowed as readonly string[]).includes(block)),
    ).toBe(true);
  });
});

describe("the bad examples", () => {
  const isSyntax = ({ bad }: BlockEntry | RecordEntry) => Object.hasOwn(SYNTAX_CODES, bad.code);

  it.each(entries.filter(([, entry]) => isSyntax(entry)))(
    "%s: exactly the complaint that is named",
    (_, entry) => {
      expect(codesIn(withLine(entry.example, entry.bad.text))).toEqual([entry.bad.code]);
    },
  );

  it.each(entries.filter(([, entry]) => !isSyntax(entry)))("%s: none from the text alone", (_, entry) => {
    expect(codesIn(withLine(entry.example, entry.bad.text))).toEqual([]);
  });
});

describe("the table", () => {
  it("has each word once in each block", () => {
    for (const { word } of vocabulary.blocks) {
      const words = vocabulary.records
        .filter(({ blocks }) => blocks.includes(word))
        .map((entry) => entry.word);
      expect(words).toEqual([...new Set(words)]);
      expect(entriesIn(word).map((entry) => entry.word)).toEqual(words);
    }
  });

  it("finds an entry by its block and word", () => {
    expect(blockEntry("joint")?.word).toBe("joint");
    expect(blockEntry("wheel")).toBeUndefined();
    expect(recordEntry("part", "made")?.help).toContain("the start");
    expect(recordEntry("day", "made")?.help).toContain("workshop");
    expect(recordEntry("job", "torque")).toBeUndefined();
  });

  it("says what it means in one line that ends in a full stop", () => {
    for (const [, { help, example: line }] of entries) {
      expect(help).toMatch(/^[A-Z`][^\n]*\.$/);
      expect(line).not.toContain("\n");
    }
  });

  it("takes `calc:` in every block", () => {
    for (const { word } of vocabulary.blocks) expect(recordEntry(word, "calc")).toBeDefined();
  });

  it("lets the records repeat that may, and of those that define no others", () => {
    const repeating = vocabulary.records.filter(({ repeats, blocks }) => repeats && !blocks.includes("day"));
    expect([...new Set(repeating.map(({ word }) => word))].sort()).toEqual(
      // `default` and `stops` are choices made here: each line of them says something of its own.
      "calc closed default fit life limit load needs pair rate setting size stops test uses".split(" "),
    );
  });

  it("keeps the words that clauses start with from being names of one segment", () => {
    const starters = vocabulary.records.flatMap(({ clauses }) => clauses.map(({ words }) => words[0]));
    const reserved: readonly string[] = RESERVED_NAMES;
    const free = [...new Set(starters)].filter((word) => !reserved.includes(word)).sort();
    expect(free).toEqual(["clearance", "every", "expires", "interference", "made", "within", "±"]);
  });
});

describe("the unit symbols that an expression may join", () => {
  it("are the units that exist, with their prefixes", () => {
    for (const symbol of UNIT_SYMBOLS) expect(namedUnit(symbol), symbol).toBeDefined();
    for (const symbol of everySymbol().filter((each) => /^[A-Za-zµ]/.test(each)))
      expect(UNIT_SYMBOLS.has(symbol), symbol).toBe(true);
  });
});

describe("the definitions of both parsers", () => {
  it("pass the checks that are left out at every start", () => {
    expect(() => new StatementReader(true)).not.toThrow();
    expect(() => new ExpressionParser(true)).not.toThrow();
  });
});
