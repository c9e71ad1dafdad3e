/** Markdown that shows a log's own words as they stand: nothing in them is formatting, a link or HTML. */

/** What means something within a line. */
const SPECIAL = /[\\`*_{}[\]<>&|~#!$^]/g;
/** What means something at the start of one: a list, a heading's underline. */
const LEADING = /^(\s*)(\+|-+|=+|\d+[.)])(?=\s|$)/;
const CONTROL = /\p{Cc}|\p{Cf}/gu;

/** Words of a log within a line of Markdown. */
export function escaped(text: string): string {
  return text
    .replaceAll(/\s+/g, " ")
    .replaceAll(CONTROL, "\ufffd")
    .replaceAll(SPECIAL, "\\$&")
    .replace(LEADING, leading);
}

function leading(_: string, space: string, mark: string): string {
  return `${space}${mark.slice(0, -1)}\\${mark.at(-1)}`;
}

/** Words of a log as code, whatever quotes they hold. */
export function code(text: string): string {
  const plain = text.replaceAll(/\s+/g, " ").replaceAll(CONTROL, "\ufffd");
  const fence = fenceFor(plain, 1);
  const pad = plain.startsWith("`") || plain.endsWith("`") ? " " : "";
  return fence + pad + plain + pad + fence;
}

/** Words of the project's own, in which code stands between backquotes already. */
export function prose(text: string): string {
  return text
    .split("`")
    .map((piece, index) => (index % 2 === 0 ? escaped(piece) : code(piece)))
    .join("");
}

/** The same where no Markdown is read. */
export function plainProse(text: string): string {
  return text.replaceAll("`", "");
}

/** Lines of a log, or a drawing in text, as a block. */
export function block(text: string, language = ""): string {
  const fence = fenceFor(text, 3);
  return `${fence}${language}\n${text}\n${fence}`;
}

/** Paragraphs that have something to say. */
export function paragraphs(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== "").join("\n\n");
}

export function list(items: readonly string[]): string {
  return items.map((item) => `- ${item}`).join("\n");
}

/** Backquotes enough to hold those within. */
function fenceFor(text: string, least: number): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  return "`".repeat(Math.max(least, longest + 1));
}
