/** The lines of a day, as far as they matter to add one: read from the text alone. */

/** Lines of a text, by number from 0. */
export interface Lines {
  readonly count: number;
  readonly at: (line: number) => string;
}

const HEADER = /^[^\s#|]/;
const DAY = /^day\s+\d{4}-\d{2}-\d{2}\b/;

/** True of a line within a day block, its header included. */
export function isInDay({ at }: Lines, line: number): boolean {
  for (let above = line; above >= 0; above -= 1) if (HEADER.test(at(above))) return DAY.test(at(above));
  return false;
}

/**
 * The line behind which a new one may stand without parting a record from its continuation: this one, or the last of
 * those that go on with it.
 */
export function lastLineOfRecord({ count, at }: Lines, line: number): number {
  let last = line;
  while (last + 1 < count && goesOn(at(last)) && isIndentedText(at(last + 1))) last += 1;
  return last;
}

/** The indent of the lines around: that of this one or of the nearest above; two spaces where there is none. */
export function indentAt({ at }: Lines, line: number): string {
  for (let above = line; above >= 0; above -= 1) {
    const text = at(above);
    const indent = text.slice(0, text.length - text.trimStart().length);
    if (text !== indent) return indent === "" ? "  " : indent;
  }
  return "  ";
}

function goesOn(text: string): boolean {
  return /^\s+[a-z][a-z_]*:(\s|$)/.test(text) || /^\s+[^|#]/.test(text)
    ? /,\s*$/.test(text.replace(/(?<!\s)\s{2,}#(?:\s.*)?$/s, ""))
    : false;
}

function isIndentedText(text: string): boolean {
  return /^\s+[^\s#|]/.test(text) && !/^\s+[a-z][a-z_]*:(\s|$)/.test(text);
}
