/** The help pages of the rules, as Markdown: one for each, an index, and the figures that they judge by. */
import type { Build } from "../build/build.ts";
import { catalogue } from "./catalogue.ts";
import type { Complaint } from "./complaint.ts";
import { currentComplaints, exampleText, readExample } from "./example.ts";
import type { Figure } from "./figures.ts";
import { figures } from "./figures.ts";
import type { Rule, RuleGroup } from "./rule.ts";

const GENERATED = "<!-- Generated from the rules: see `npm run generate`. -->";

const GROUPS: readonly RuleGroup[] = [
  "Notation",
  "Order of things",
  "Limits and measurements",
  "Joints",
  "Systems and circuits",
  "Lives and supply",
  "Care",
];

/** The index: every rule by its group, each with an anchor of its code. */
export function rulesIndex(): string {
  const sections = GROUPS.map((group) => {
    const rows = [...catalogue.values()]
      .filter((rule) => rule.group === group)
      .map(
        ({ code, severity, summary }) =>
          `| <a id="${code}"></a>[\`${code}\`](${code}.md) | ${severity} | ${cell(summary)} |`,
      );
    return [`## ${group}`, "", "| rule | severity | what is wrong |", "| --- | --- | --- |", ...rows].join(
      "\n",
    );
  });
  return page([
    "# What Cotter says about a log",
    "",
    "Each rule has one code, and a page that says why it matters and what to do. Severities are those at the start: a rule may be milder or sharper in a single case, which its page or its message says.",
    "",
    'An editor grades a rule otherwise with the setting `cotter.severity`, as in `{ "near-limit": "off" }`. A line of the log sets one complaint aside with a comment that gives the reason, `# waived CODE: reason`. Neither changes what is secured, open or released, and an error on something safety-critical cannot be waived.',
    "",
    "The figures that the rules judge by, with their sources, are in [one table](figures.md).",
    "",
    ...sections.flatMap((section) => [section, ""]),
  ]);
}

/** The page of one rule. What its bad example brings is what the rule really says. */
export function rulePage(rule: Rule): string {
  const { code, group, severity, summary, why, remedy, source, bad, good } = rule;
  const example = readExample(exampleText(rule, bad));
  const judgedBy = figures.filter(({ rules }) => rules.includes(code));
  return page([
    `# ${code}`,
    "",
    `${summary}.`,
    "",
    `${group}, ${severity}.`,
    "",
    "## Why it matters",
    "",
    why,
    "",
    "## What to do",
    "",
    remedy,
    "",
    "## For example",
    "",
    ...log(bad),
    "",
    ...currentComplaints(example).flatMap((complaint) => said(complaint, example)),
    "",
    "Put right:",
    "",
    ...log(good),
    ...(source === undefined
      ? []
      : ["", "## Source", "", `${source.charAt(0).toUpperCase()}${source.slice(1)}.`]),
    ...(judgedBy.length === 0 ? [] : ["", "## Figures", "", ...judgedBy.map(figureLine)]),
    "",
    "[All rules](README.md)",
  ]);
}

/** The table of the figures, with what each rule makes of them. */
export function figuresPage(): string {
  return page([
    "# Figures that the rules judge by",
    "",
    'Where a source is named, the figure was taken from it; "from memory" means that it has not been compared with the printed text. The maker\'s figure comes first, always. A figure that a build cannot change belongs to a rule that it can grade otherwise or waive.',
    "",
    "| figure | value | source | another for a build by | rules |",
    "| --- | --- | --- | --- | --- |",
    ...figures.map(figureRow),
    "",
    "[All rules](README.md)",
  ]);
}

function figureLine({ name, value, source, change }: Figure): string {
  const otherwise = change === undefined ? "" : ` A build has another by ${change}.`;
  return `- ${name}: ${value} (${source}).${otherwise}`;
}

function page(lines: readonly string[]): string {
  return `${GENERATED}\n\n${lines.join("\n").trimEnd()}\n`;
}

function log(text: string): readonly string[] {
  return ["```cotter", text.trimEnd(), "```"];
}

/** What is said of the line, and the mends that are offered. */
function said({ severity, code, message, place, fixes }: Complaint, build: Build): readonly string[] {
  const { block } = place.site;
  const start = block.text.lastIndexOf("\n", place.start - 1) + 1;
  const [line = ""] = block.text.slice(start).split("\n");
  const offers = fixes(build).map(({ title, sure }) => `${title}${sure ? " (sure)" : ""}`);
  return [
    `> \`${line.trim()}\`\\`,
    `> ${severity} ${code}: ${escaped(message)}`,
    ...(offers.length === 0 ? [] : ["", `Mends offered: ${offers.map(escaped).join("; ")}.`]),
  ];
}

function figureRow({ name, value, source, change, rules }: Figure): string {
  const links = rules.map((code) => `[${code}](${code}.md)`).join(" ");
  return `| ${[name, value, source, change ?? ""].map(cell).join(" | ")} | ${links} |`;
}

function cell(text: string): string {
  return text.replaceAll("|", "\\|");
}

/** Text of a log in Markdown: what would be read as a mark or a tag is not. */
function escaped(text: string): string {
  return text.replace(/[\\`*_[\]<>|#]/g, (mark) => `\\${mark}`);
}
