/** A table as CSV (RFC 4180): one row for each row, the section's heading in the first column. */
import { plain } from "./plain-text.ts";
import type { Table } from "./table.ts";
import { textOf } from "./table.ts";

export function renderCsv({ columns, sections }: Table): string {
  const grouped = sections.some(({ heading }) => heading !== "");
  const head = [...(grouped ? ["section"] : []), ...columns.map(({ heading }) => heading)];
  const rows = sections.flatMap(({ heading, rows: own }) =>
    own.map(({ cells }) => [...(grouped ? [heading] : []), ...columns.map(({ key }) => textOf(cells[key]))]),
  );
  return [head, ...rows].map((row) => `${row.map(escapeCsv).join(",")}\r\n`).join("");
}

const NUMBER = /^[+-]?\d+(?:\.\d+)?$/;
const FORMULA = /^[=+\-@\t\r]/;

/**
 * A cell that a spreadsheet would take for a formula is made text; a true number stays one. Its lines keep to themselves
 * on a terminal.
 */
export function escapeCsv(written: string): string {
  const text = written
    .split(/(\r?\n)/)
    .map((line) => (/^\r?\n$/.test(line) ? line : plain(line)))
    .join("");
  const safe = FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
