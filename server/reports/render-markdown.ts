/** A table as Markdown (CommonMark with tables): every cell escaped, so that a log cannot add markup. */
import { plain } from "./plain-text.ts";
import type { Cell, Table } from "./table.ts";
import { textOf } from "./table.ts";

export function renderMarkdown({ title, columns, sections, notes, cautions }: Table): string {
  const shownColumns = columns.filter(({ key }) =>
    sections.some(({ rows }) => rows.some(({ cells }) => textOf(cells[key]) !== "")),
  );
  const head = `| ${shownColumns.map(({ heading }) => heading).join(" | ")} |`;
  const rule = `| ${shownColumns.map(({ align }) => (align === "right" ? "---:" : "---")).join(" | ")} |`;
  const parts = [`# ${escapeMarkdown(title)}`];
  for (const { heading, rows, foot } of sections) {
    if (heading !== "") parts.push(`## ${escapeMarkdown(heading)}`);
    if (rows.length > 0) {
      const lines = rows.map(
        ({ cells }) => `| ${shownColumns.map(({ key }) => cellText(cells[key])).join(" | ")} |`,
      );
      parts.push([head, rule, ...lines].join("\n"));
    }
    const remarks = rows.flatMap((row) => row.remarks ?? []);
    if (remarks.length > 0) parts.push(remarks.map((remark) => `- ${escapeMarkdown(remark)}`).join("\n"));
    for (const line of foot ?? []) parts.push(escapeMarkdown(line));
  }
  parts.push(...[...notes, ...cautions].map((line) => `*${escapeMarkdown(line)}*`));
  return `${parts.join("\n\n")}\n`;
}

function cellText(cell: Cell | undefined): string {
  const box = typeof cell === "object" && cell.box === true ? "☐ " : "";
  return box + escapeMarkdown(textOf(cell));
}

/** Text that stays text, on a terminal too: markup characters escaped, line ends made spaces, no control characters. */
export function escapeMarkdown(text: string): string {
  return plain(text.replace(/[\r\n]+/g, " ")).replace(/[\\`*_{}[\]<>()#+!|~&]/g, "\\$&");
}
