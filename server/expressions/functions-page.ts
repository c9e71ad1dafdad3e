/** The reference page of the functions, written from their descriptions and their examples. */
import { calculate, calculationLines } from "./calculation.ts";
import type { FunctionDescription } from "./function-description.ts";
import { allDescriptions, parameterLine } from "./function-description.ts";

const INTRODUCTION = `# Functions

These functions can be called in every expression: in \`calc:\` records and by \`cotter calc\`. Arguments are
quantities with their units, whatever unit is at hand; results come in the unit of the author where an argument has
the dimension of the result, else in the customary one, imperial where all arguments are. \`in UNIT\` behind it asks for
another.

A result is shown with as many significant figures as the least precise argument, at least three; counts, threads and
tolerance classes are exact. Words such as \`steel\` or \`oiled\` and values such as \`class 8.8\`, \`grade 5\`, \`AWG 14\` and
\`M10x1.25\` are written bare, other texts in quotes.

Figures from tables and formulas are estimates for those who know the work. Where something can hurt somebody, the
maker's manual comes first.

This page is written by \`npm run generate\` from the functions themselves.
`;

/** Markdown of the whole page. Each example is shown with what it gives. */
export function functionsPage(): string {
  const descriptions = allDescriptions();
  const groups = [...new Set(descriptions.map(({ group }) => group))];
  const sections = groups.map((group) =>
    section(
      group,
      descriptions.filter((each) => each.group === group),
    ),
  );
  return [INTRODUCTION, ...sections].join("\n");
}

function section(group: string, functions: readonly FunctionDescription[]): string {
  return [`## ${capitalised(group)}\n`, ...functions.map(entry)].join("\n");
}

function entry(description: FunctionDescription): string {
  const { signature, aliases, summary, formula, parameters, returns, meaning, limits, source, example } =
    description;
  const facts = [
    ["Formula", formula],
    ["Gives", returns],
    ["Meaning", meaning],
    ["Limits", limits],
    ["Source", source],
  ] as const;
  return [
    `### \`${signature}\`\n`,
    `${summary}${aliases.length === 0 ? "" : ` Also read: ${aliases.map((name) => `\`${name}\``).join(", ")}.`}\n`,
    `${parameters.map(parameterLine).join("\n")}\n`,
    ...facts.flatMap(([title, text]) => (text === undefined ? [] : [`${title}: ${text}\n`])),
    ...(example === undefined ? [] : [worked(example)]),
  ].join("\n");
}

/** An example with what the program prints for it. */
function worked(example: string): string {
  const lines = calculationLines(example, calculate(example));
  return ["```", `> ${example}`, ...lines, "```", ""].join("\n");
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
