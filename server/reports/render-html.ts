/** A table as one HTML page without scripts: prints on A4 and Letter, light and dark on a screen. */
import type { Cell, Column, Table, TableRow } from "./table.ts";
import { textOf } from "./table.ts";

/** @param drawing a picture made elsewhere, as SVG that is already safe; it stands above the table */
export function renderHtml(table: Table, drawing = ""): string {
  return htmlPage(
    table.title,
    [`<h1>${escapeHtml(table.title)}</h1>`, htmlDrawing(drawing), htmlSections(table, 2)].join("\n"),
  );
}

/** A picture that scrolls sideways by itself where the screen is too narrow for its words. */
export function htmlDrawing(drawing: string): string {
  if (drawing === "") return "";
  return `<div class="drawing" role="group" aria-label="Drawing" tabindex="0">${drawing}</div>`;
}

/** All of a table below its title, to stand in a page; its own headings begin at a level. */
export function htmlSections({ columns, sections, notes, cautions }: Table, level: 2 | 3 | 4): string {
  const shown = columns.filter(({ key }) =>
    sections.some(({ rows }) => rows.some(({ cells }) => textOf(cells[key]) !== "")),
  );
  const parts = sections.map(({ heading, rows, foot }) =>
    [
      heading === "" ? "" : `<h${level}>${escapeHtml(heading)}</h${level}>`,
      rows.length === 0 ? "" : htmlTable(shown, rows),
      ...(foot ?? []).map((line) => `<p class="foot">${escapeHtml(line)}</p>`),
    ].join("\n"),
  );
  return [
    ...parts,
    ...notes.map((note) => `<p>${escapeHtml(note)}</p>`),
    ...cautions.map((caution) => `<p class="caution"><strong>Caution.</strong> ${escapeHtml(caution)}</p>`),
  ].join("\n");
}

function htmlTable(columns: readonly Column[], rows: readonly TableRow[]): string {
  const head = columns.map(htmlHeading).join("");
  const body = rows.map((row) => htmlRow(columns, row)).join("\n");
  return `<table>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody>\n</table>`;
}

function htmlHeading({ heading, align }: Column): string {
  // A column whose cells need no words above them: an empty heading would be read out as one.
  if (heading === "") return "<td></td>";
  return `<th scope="col"${classOf(align === "right" ? ["figure"] : [])}>${escapeHtml(heading)}</th>`;
}

function htmlRow(columns: readonly Column[], { cells, remarks }: TableRow): string {
  const own = columns.map((each, index) => htmlCell(cells[each.key], each, index > 0)).join("");
  const below = (remarks ?? []).map((remark) => escapeHtml(remark)).join("<br>");
  const remark =
    below === "" ? "" : `\n<tr class="remark"><td colspan="${columns.length}">${below}</td></tr>`;
  return `<tr>${own}</tr>${remark}`;
}

/** @param named keeps the heading with the cell: on a narrow screen a row is a card, and what follows its first cell needs names */
function htmlCell(cell: Cell | undefined, { align, heading }: Column, named: boolean): string {
  const tone = typeof cell === "object" ? cell.tone : undefined;
  const box =
    typeof cell === "object" && cell.box === true
      ? '<span class="box" role="img" aria-label="box to tick"></span>'
      : "";
  const drawing = typeof cell === "object" && cell.drawing !== undefined ? ` ${cell.drawing}` : "";
  const label = named && heading !== "" ? ` data-label="${escapeHtml(heading)}"` : "";
  const classes = [
    ...(align === "right" ? ["figure"] : []),
    ...(DATE.test(textOf(cell)) ? ["date"] : []),
    ...(tone === undefined ? [] : [tone]),
  ];
  return `<td${label}${classOf(classes)}>${box}${escapeHtml(textOf(cell))}${drawing}</td>`;
}

/** Must not be parted at its hyphens. */
const DATE = /^\d{4}-\d\d-\d\d$/;

function classOf(names: readonly string[]): string {
  return names.length === 0 ? "" : ` class="${names.join(" ")}"`;
}

/** A whole page around a body: language, character set, a policy without scripts, the house's style and more of it. */
export function htmlPage(title: string, body: string, style = ""): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${escapeHtml(title)}</title>
<style>${STYLE}${style}</style>
</head>
<body>
<main>
${body}
</main>
</body>
</html>
`;
}

/** Text that stays text, in elements and in quoted attributes. */
export function escapeHtml(text: string): string {
  return text
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

const STYLE = `
:root { color-scheme: light dark; --ink: #1c2126; --paper: #fdfcf9; --rule: #b9b4a8; --faint: #5d6468; --good: #1d5f3a; --open: #7a4b00; --bad: #99231b; }
@media (prefers-color-scheme: dark) { :root { --ink: #e8e4da; --paper: #1b1f23; --rule: #555a5e; --faint: #a3a9ac; --good: #8fd0a5; --open: #f0c06a; --bad: #ff9d92; } }
body { margin: 0; background: var(--paper); color: var(--ink); font: 15px/1.45 Georgia, "Times New Roman", serif; }
main { max-width: 68rem; margin: 0 auto; padding: 1.5rem; }
h1 { font-size: 1.6rem; margin: 0 0 1rem; }
h2 { font-size: 1.15rem; margin: 1.6rem 0 .4rem; break-after: avoid; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-top: 1px solid var(--rule); }
th { font-weight: 600; border-top: 0; color: var(--faint); }
td.figure, th.figure { text-align: right; } td.date { white-space: nowrap; }
tr { break-inside: avoid; }
tr.remark td { border-top: 0; color: var(--faint); font-size: .87rem; padding-left: 1.2rem; }
.good { color: var(--good); } .open { color: var(--open); } .bad { color: var(--bad); font-weight: 600; } .faint { color: var(--faint); }
.box { display: inline-block; width: .8em; height: .8em; border: 1.5px solid currentColor; vertical-align: -.05em; margin-right: .3em; }
.foot { margin: .3rem 0 0; } .caution { border-left: 3px solid var(--open); padding-left: .8rem; }
@media screen and (max-width: 44rem) {
  main { padding: 1rem; } h1 { overflow-wrap: anywhere; }
  table, tbody { display: block; } thead { display: none; }
  tr { display: flex; flex-wrap: wrap; column-gap: 1.1rem; padding: .45rem 0; border-top: 1px solid var(--rule); }
  td, td.figure { border: 0; padding: 0; text-align: left; max-width: 100%; overflow-wrap: anywhere; }
  td:empty { display: none; }
  td[data-label]::before { content: attr(data-label) " "; color: var(--faint); font-size: .82em; font-weight: 400; }
  tr:not(.remark) > td:first-child:not(.figure) { flex-basis: 100%; font-weight: 600; }
  tr.remark { border: 0; padding: 0 0 .3rem; } tr.remark td { padding: 0; }
  .drawing { overflow-x: auto; } .drawing svg { min-width: 46rem; }
}
@media print { :root { --ink: #000; --paper: #fff; --rule: #999; --faint: #444; --good: #000; --open: #000; --bad: #000; } body { font-size: 10.5pt; } table { font-size: 9pt; } main { max-width: none; padding: 0; } @page { margin: 16mm 14mm; } }
`;
