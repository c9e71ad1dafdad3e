/** A table for a terminal: columns under their headings, remarks below their row, nothing wider than need be. */
import { plain } from "./plain-text.ts";
import type { Cell, Column, Table, TableRow } from "./table.ts";
import { textOf } from "./table.ts";

const TONES: Readonly<Record<"good" | "open" | "bad" | "faint", string>> = {
  good: "32",
  open: "33",
  bad: "31",
  faint: "2",
};
const GAP = "  ";

export function renderText(
  table: Table,
  { colour, width = 100 }: { readonly colour: boolean; readonly width?: number },
): string {
  const columns = table.columns.filter(({ key }) =>
    table.sections.some(({ rows }) => rows.some(({ cells }) => textOf(cells[key]) !== "")),
  );
  const rows = table.sections.flatMap((section) => section.rows);
  const natural = columns.map(({ key, heading }) =>
    Math.max(heading.length, ...rows.map(({ cells }) => shown(cells[key]).length)),
  );
  const words = columns.map(({ key, heading }) =>
    Math.max(
      heading.length,
      ...rows.flatMap(({ cells }) =>
        shown(cells[key])
          .split(" ")
          .map((word) => word.length),
      ),
    ),
  );
  const widths = narrowed(natural, words, width);
  const paint = (code: string, text: string) => (colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  const head = columns
    .map(({ heading, align }, index) => pad(heading, widths[index] ?? 0, align))
    .join(GAP)
    .trimEnd();
  const lines = [paint("1", plain(table.title)), ""];
  for (const { heading, rows: own, foot } of table.sections) {
    if (heading !== "") lines.push(paint("1", plain(heading)));
    if (own.length > 0) lines.push(paint("2", head));
    for (const row of own) lines.push(...rowLines(row, columns, widths, paint, width));
    for (const line of foot ?? []) lines.push(...wrap(plain(line), width, ""));
    lines.push("");
  }
  for (const note of [...table.notes, ...table.cautions]) lines.push(...wrap(plain(note), width, ""));
  return `${lines.join("\n").trimEnd()}\n`;
}

function rowLines(
  { cells, remarks }: TableRow,
  columns: readonly Column[],
  widths: readonly number[],
  paint: (code: string, text: string) => string,
  width: number,
): string[] {
  const broken = columns.map(({ key }, index) => wrap(shown(cells[key]), widths[index] ?? 0, ""));
  const height = Math.max(1, ...broken.map((lines) => lines.length));
  const lines = Array.from({ length: height }, (_, line) =>
    columns
      .map(({ key, align }, index) => {
        const cell = cells[key];
        const padded = pad(broken[index]?.[line] ?? "", widths[index] ?? 0, align);
        const tone = typeof cell === "object" ? cell.tone : undefined;
        return tone === undefined ? padded : paint(TONES[tone], padded);
      })
      .join(GAP)
      .trimEnd(),
  );
  return [...lines, ...(remarks ?? []).flatMap((remark) => wrap(plain(remark), width, "    "))];
}

/** Widths at which the columns fit side by side: the widest give way first, none below its longest word. */
function narrowed(natural: readonly number[], longestWords: readonly number[], width: number): number[] {
  const widths = [...natural];
  const gaps = GAP.length * Math.max(0, natural.length - 1);
  for (let over = widths.reduce((sum, one) => sum + one, gaps) - width; over > 0; over--) {
    const spare = widths.map((one, index) => (one > (longestWords[index] ?? 0) ? one : 0));
    const widest = Math.max(...spare);
    if (widest === 0) break;
    widths[spare.indexOf(widest)] = widest - 1;
  }
  return widths;
}

function shown(cell: Cell | undefined): string {
  const box = typeof cell === "object" && cell.box === true ? "[ ] " : "";
  return (box + plain(textOf(cell))).replaceAll("\t", " ");
}

function pad(text: string, width: number, align: Column["align"]): string {
  return align === "right" ? text.padStart(width) : text.padEnd(width);
}

/** Breaks at spaces; a word longer than the width stays whole. */
export function wrap(text: string, width: number, indent: string): string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(" ")) {
    const joined = line === indent ? line + word : `${line} ${word}`;
    if (joined.length > width && line !== indent) {
      lines.push(line);
      line = indent + word;
    } else line = joined;
  }
  return [...lines, line];
}
