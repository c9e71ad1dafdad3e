/** The forms that the reports which people print can take. */
import type { Table } from "../reports/table.ts";
import type { Call, CommandOption, ExitStatus } from "./command.ts";
import { Failure } from "./command.ts";

export const PRINTABLE_OPTIONS: readonly CommandOption[] = [
  { name: "markdown", help: "as Markdown" },
  { name: "csv", help: "as CSV, for a spreadsheet" },
  { name: "html", help: "as a page to print" },
];

export interface Printable {
  /** The stable form for machines. */
  readonly report: () => unknown;
  readonly table: () => Table;
  /** A picture above the table on a page: SVG that is safe. */
  readonly drawing?: () => Promise<string>;
}

/** Prints a report in the form that the call asks for; one at a time. */
export async function print(
  { options, out }: Call,
  { report, table, drawing }: Printable,
): Promise<ExitStatus> {
  const forms = ["json", "markdown", "csv", "html"].filter((form) => options.has(form));
  if (forms.length > 1)
    throw new Failure(`choose one form: ${forms.map((form) => `--${form}`).join(" or ")}`);
  switch (forms[0]) {
    case "json":
      out.write(`${JSON.stringify(report(), undefined, 2)}\n`);
      break;
    case "markdown":
      out.write((await import("../reports/render-markdown.ts")).renderMarkdown(table()));
      break;
    case "csv":
      out.write((await import("../reports/render-csv.ts")).renderCsv(table()));
      break;
    case "html":
      out.write((await import("../reports/render-html.ts")).renderHtml(table(), await drawing?.()));
      break;
    default:
      out.write((await import("../reports/render-text.ts")).renderText(table(), out));
  }
  return 0;
}
