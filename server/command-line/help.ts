/** The help of the program and of each command. */
import type { Command, CommandOption } from "./command.ts";
import { SUMMARIES } from "./commands.ts";

const GLOBAL_OPTIONS: readonly CommandOption[] = [
  {
    name: "build",
    value: "PATH",
    help: "the build, by a file or folder of it (default: the one around this folder)",
  },
  { name: "on", value: "DATE", help: "take this day as today" },
  { name: "json", help: "the stable form for machines" },
  { name: "no-colour", help: "plain text; so does NO_COLOR, and so does a pipe" },
  { name: "help", help: "this help" },
];

export function programHelp(): string {
  return `cotter: a build diary in plain text, read, checked and reckoned with

cotter COMMAND [WORDS] [OPTIONS]

${columns([...SUMMARIES])}

cotter COMMAND --help shows what a command takes, with an example.
`;
}

export function commandHelp({ name, operands, summary, options, examples }: Command): string {
  const shown = [...options, ...GLOBAL_OPTIONS].map(
    ({ name: option, value, help }) =>
      [`--${option}${value === undefined ? "" : ` ${value}`}`, help] as const,
  );
  return `cotter ${[name, operands].filter((part) => part !== "").join(" ")}

${summary}

${columns(shown)}

For example:
${examples.map((example) => `  ${example}`).join("\n")}
`;
}

function columns(rows: readonly (readonly [string, string])[]): string {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join("\n");
}
