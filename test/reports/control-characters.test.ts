/** What a log carries cannot steer the terminal on which a report is read, in whichever form it is printed. */
import { expect, test } from "vitest";
import { renderCsv } from "../../server/reports/render-csv.ts";
import { renderMarkdown } from "../../server/reports/render-markdown.ts";
import type { Table } from "../../server/reports/table.ts";

const RINGS = "Hub\u0007\u001b[2J";

const table: Table = {
  title: RINGS,
  columns: [{ key: "what", heading: "What", align: "left" }],
  sections: [{ heading: "", rows: [{ cells: { what: `${RINGS}\nand its nut` } }] }],
  notes: [RINGS],
  cautions: [],
};

test.each([
  ["Markdown", renderMarkdown],
  ["CSV", renderCsv],
])("%s holds no control characters", (_, render) => {
  const printed = render(table);
  expect(printed).toContain("Hub");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
  expect(printed).not.toMatch(/[\u0000-\u0009\u000b\u000c\u000e-\u001f\u007f-\u009f]/);
});

test("a cell of CSV keeps its lines", () => {
  expect(renderCsv(table)).toMatch(/"Hub[^\n"]*\nand its nut"/);
});
