/** Productions as EBNF, in the notation of the XML specification of the W3C: `?` may be left out, `*` any number, `+` once or more. */
import type { Production, Rule } from "./production.ts";

export function ebnf({ name, definition }: Rule): string {
  const alternatives = definition.is === "choice" ? definition.of : [definition];
  const head = `${name} ::= `;
  const lines = alternatives.map((each) => printed(each, "sequence"));
  const oneLine = head + lines.join(" | ");
  return oneLine.length <= 100 ? oneLine : head + lines.join(`\n${" ".repeat(head.length - 2)}| `);
}

type Context = "choice" | "sequence" | "operand";

function printed(production: Production, context: Context): string {
  switch (production.is) {
    case "text":
      return production.text.includes('"') ? `'${production.text}'` : `"${production.text}"`;
    case "name":
      return production.name;
    case "sequence":
      return grouped(production.of.map((each) => printed(each, "sequence")).join(" "), context === "operand");
    case "choice":
      return grouped(production.of.map((each) => printed(each, "choice")).join(" | "), context !== "choice");
    case "optional":
      return optional(production.of);
    case "list":
      return list(production);
  }
}

function optional(of: Production): string {
  if (of.is === "list" && of.separator === undefined) return `${printed(of.of, "operand")}*`;
  return `${of.is === "list" ? grouped(list(of), true) : printed(of, "operand")}?`;
}

function list({ of, separator }: Production & { is: "list" }): string {
  if (separator === undefined) return `${printed(of, "operand")}+`;
  return `${printed(of, "sequence")} (${printed(separator, "sequence")} ${printed(of, "sequence")})*`;
}

function grouped(text: string, parentheses: boolean): string {
  return parentheses ? `(${text})` : text;
}
