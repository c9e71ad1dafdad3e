/** The pages of the reference, made from the vocabulary and the parsers. */
import { describeArguments, describeClause, describeShape, placeholder } from "../vocabulary/describe.ts";
import type { ArgumentShape, BadExample, BlockEntry, RecordEntry } from "../vocabulary/shape.ts";
import { entriesIn, vocabulary } from "../vocabulary/vocabulary.ts";
import { RESERVED_NAMES } from "../vocabulary/words.ts";
import { ebnf } from "./ebnf.ts";
import { LINE_FORMS } from "./line-forms.ts";
import type { Rule } from "./production.ts";
import { expressionRules, PATTERNS, statementRule, valueRules } from "./production.ts";
import { escaped, railroad } from "./railroad.ts";
import { VALUE_FORMS } from "./value-forms.ts";

const GENERATED =
  "<!-- Generated from the vocabulary of the notation: `npm run generate` writes it anew. -->";

/** Every page by the name of its file. */
export function referencePages(): ReadonlyMap<string, string> {
  const blocks = vocabulary.blocks.filter(({ word }) => word !== "day");
  return new Map([
    ["README.md", indexPage()],
    ["lines.md", linesPage()],
    ["values.md", valuesPage()],
    ...blocks.map((entry) => [`${entry.word}.md`, blockPage(entry)] as const),
    ["facts.md", factsPage()],
    ["grammar.md", grammarPage()],
    ["railroad.html", railroadPage()],
  ]);
}

function page(title: string, ...parts: readonly string[]): string {
  return `${[`# ${title}`, GENERATED, ...parts].join("\n\n")}\n`;
}

function code(text: string): string {
  return `\`\`\`cotter\n${text}\n\`\`\``;
}

function indexPage(): string {
  const link = ({ word, help }: BlockEntry) =>
    `| [\`${word}\`](${word === "day" ? "facts" : word}.md) | ${help.replaceAll("|", "\\|")} |`;
  return page(
    "The notation",
    "A log is a list of blocks. A block starts in column 0 and holds the indented lines below it: records, which are " +
      "data, and prose, which is kept word for word.",
    "- [Lines](lines.md): headers, records, prose, comments\n- [Values](values.md): numbers, units, dates, limits, threads, expressions\n" +
      "- [Facts](facts.md): what a day can tell\n- [Grammar](grammar.md) in EBNF, and as [railroad diagrams](railroad.html)\n" +
      "- [The example build](example.cotter), which holds every example of these pages",
    `| block | what it is |\n| --- | --- |\n${vocabulary.blocks.map(link).join("\n")}`,
    `## Reserved names\n\nThese words are no names of one segment: ${RESERVED_NAMES.map((word) => `\`${word}\``).join(" ")}. ` +
      "Nor is a word that reads as a thread, such as `M10`.",
    wordsTable(),
  );
}

/** Every word that can stand before a colon, with the blocks that take it. */
function wordsTable(): string {
  const words = [...new Set(vocabulary.records.map(({ word }) => word))].sort();
  const rows = words.map((word) => {
    const blocks = vocabulary.records.filter((entry) => entry.word === word).flatMap((entry) => entry.blocks);
    const links = blocks.map((block) => `[${block}](${block === "day" ? "facts" : block}.md#${word})`);
    return `| \`${word}:\` | ${blocks.length === vocabulary.blocks.length ? "every block" : links.join(" ")} |`;
  });
  return `## Words\n\n| word | in |\n| --- | --- |\n${rows.join("\n")}`;
}

function blockPage(entry: BlockEntry): string {
  return page(
    `\`${entry.word}\``,
    entry.help,
    ...formOf(entry, entry.word),
    ...examplesOf(entry),
    ...entriesIn(entry.word).map((record) => recordSection(record)),
  );
}

function factsPage(): string {
  const day = vocabulary.blocks.find(({ word }) => word === "day");
  return page(
    "Facts",
    "A `day` block tells what happened. Clauses in brackets may come in any order; a fact may say `by` whom, and may end " +
      "in a text, its note.",
    ...(day === undefined ? [] : ["## `day`", day.help, ...formOf(day, day.word), ...examplesOf(day)]),
    ...entriesIn("day").map((record) => recordSection(record)),
  );
}

function recordSection(entry: RecordEntry): string {
  const repeats = entry.repeats && !entry.blocks.includes("day") ? ["May be written more than once."] : [];
  return [
    `## \`${entry.word}:\``,
    entry.help,
    ...formOf(entry, `${entry.word}:`),
    ...repeats,
    ...examplesOf(entry),
  ].join("\n\n");
}

/** The signature, and what each of its places takes. */
function formOf(shape: ArgumentShape, start: string): string[] {
  const places = shape.elements.map(
    ({ shape: inner, role }) =>
      `- \`${placeholder(inner, role)}\`${inner.value === "string" ? ` (${role})` : ""}: ${describeShape(inner)}`,
  );
  const clauses = shape.clauses
    .filter(({ role, required }) => role !== "by" || required)
    .map(
      (clause) =>
        `- \`${describeClause(clause)}\`${clause.shape === undefined ? "" : `: ${describeShape(clause.shape)}`}`,
    );
  return [code(`${start} ${describeArguments(shape)}`), [...places, ...clauses].join("\n")];
}

function examplesOf({ example, bad, choice }: BlockEntry | RecordEntry): string[] {
  return [
    `Reads:\n\n${code(example)}`,
    badExample(bad),
    ...(choice === undefined ? [] : [`Choice made here: ${choice}`]),
  ];
}

function badExample({ code: complaint, text }: BadExample): string {
  return `Is refused with \`${complaint}\`:\n\n${code(text)}`;
}

function linesPage(): string {
  return page(
    "Lines",
    ...LINE_FORMS.map(({ name, help, choice, good, bad }) =>
      [
        `## ${name}`,
        help,
        `Reads:\n\n${code(good)}`,
        ...bad.map(badExample),
        ...(choice === undefined ? [] : [`Choice made here: ${choice}`]),
      ].join("\n\n"),
    ),
  );
}

function valuesPage(): string {
  const line = (text: string) => text.replace(/^\w+: /, "");
  return page(
    "Values",
    ...VALUE_FORMS.map(({ name, help, choice, good, bad }) =>
      [
        `## ${name}`,
        help,
        `Reads:\n\n${code(good.map(line).join("\n"))}`,
        `Is refused:\n\n${bad.map((each) => `- \`${line(each.text)}\` with \`${each.code}\``).join("\n")}`,
        ...(choice === undefined ? [] : [`Choice made here: ${choice}`]),
      ].join("\n\n"),
    ),
  );
}

const LINE_RULES = `log ::= line*
line ::= header | record | prose | comment | blank
header ::= block-word arguments comment? END
record ::= INDENT record-word ":" (SPACE arguments)? comment? END continuation*
continuation ::= INDENT arguments comment? END   /* behind a line that ends in a comma */
prose ::= INDENT any-other-text END | SPACE* "|" any-text END
comment ::= SPACE* "#" (SPACE any-text)?         /* behind two spaces where something stands before it */
blank ::= SPACE* END
INDENT ::= (" " | TAB) SPACE*
END ::= CR LF | CR | LF`;

function grammarPage(): string {
  const block = (rules: readonly Rule[]) => `\`\`\`ebnf\n${rules.map(ebnf).join("\n")}\n\`\`\``;
  return page(
    "Grammar",
    "The rules of values and of expressions are those of the parsers, the statements those of the vocabulary; both are " +
      "printed from the source. `?` marks what may be left out, `*` any number, `+` once or more. Where a statement has " +
      "several clauses, they may come in any order. Names in capitals are patterns of characters, described below.",
    `## Lines\n\n\`\`\`ebnf\n${LINE_RULES}\n\`\`\``,
    `## Headers\n\n${block(vocabulary.blocks.map(statementRule))}`,
    ...vocabulary.blocks.map(
      ({ word }) =>
        `## ${word === "day" ? "Facts" : `Records of \`${word}\``}\n\n${block(entriesIn(word).map(statementRule))}`,
    ),
    `## Values\n\n${block(valueRules())}`,
    `## Expressions\n\n${block(expressionRules())}`,
    `## Patterns\n\n| name | what it is |\n| --- | --- |\n${PATTERNS.map(({ name, help }) => `| ${name} | ${help} |`).join("\n")}`,
  );
}

const STYLE = `
:root { color-scheme: light dark; --line: #444; --text: #e3edf7; --name: #f4ecd8; --ink: #111; }
@media (prefers-color-scheme: dark) { :root { --line: #bbb; --text: #23364a; --name: #453d2a; --ink: #eee; } }
body { font: 16px/1.5 system-ui, sans-serif; margin: 2rem auto; max-width: 70rem; padding: 0 1rem; }
.diagram { overflow-x: auto; }
h3 { font: bold 15px monospace; margin: 1.2rem 0 0.2rem; }
svg path { fill: none; stroke: var(--line); stroke-width: 1.5; }
svg rect { stroke: var(--line); fill: var(--name); }
svg rect.text { fill: var(--text); }
svg text { font: 13px monospace; text-anchor: middle; fill: var(--ink); }
dt { font-family: monospace; font-weight: bold; }
`;

function railroadPage(): string {
  const values = valueRules();
  const expressions = expressionRules();
  const known = new Set([...values, ...expressions].map(({ name }) => name));
  const patterns = new Set(PATTERNS.map(({ name }) => name));
  const link = (name: string) =>
    known.has(name) ? `#rule-${name}` : patterns.has(name) ? `#pattern-${name}` : undefined;
  const diagram = (rule: Rule, id: string) =>
    `<h3 id="${id}">${escaped(rule.name)}</h3>\n<div class="diagram">${railroad(rule, link)}</div>`;
  const section = (title: string, diagrams: readonly string[]) => `<h2>${title}</h2>\n${diagrams.join("\n")}`;
  const statements = vocabulary.blocks.map(({ word }) =>
    section(
      word === "day" ? "Facts" : `Records of <code>${word}</code>`,
      entriesIn(word).map((entry) => diagram(statementRule(entry), `${word}-${entry.word}`)),
    ),
  );
  const body = [
    "<h1>Railroad diagrams of the notation</h1>",
    "<p>Follow the line from left to right. Round boxes are written as they stand, square ones are described elsewhere on this page. Clauses of a statement may come in any order.</p>",
    section(
      "Headers",
      vocabulary.blocks.map((entry) => diagram(statementRule(entry), `header-${entry.word}`)),
    ),
    ...statements,
    section(
      "Values",
      values.map((rule) => diagram(rule, `rule-${rule.name}`)),
    ),
    section(
      "Expressions",
      expressions.map((rule) => diagram(rule, `rule-${rule.name}`)),
    ),
    `<h2>Patterns</h2>\n<dl>${PATTERNS.map(({ name, help }) => `<dt id="pattern-${name}">${name}</dt><dd>${escaped(help)}</dd>`).join("\n")}</dl>`,
  ];
  return `<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<meta name="viewport" content="width=device-width">\n<title>Railroad diagrams of the notation</title>\n<style>${STYLE}</style>\n</head>\n<body>\n${GENERATED}\n${body.join("\n")}\n</body>\n</html>\n`;
}
