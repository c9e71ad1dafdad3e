/** Every report of every sample, in every form that people take away; and the samples as `cotter format` would have them. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { format } from "../../grammar/printer.ts";
import type { Build } from "../../server/build/build.ts";
import { planOf } from "../../server/plan/plan.ts";
import { costsTable } from "../../server/reports/costs.ts";
import { jointsTable } from "../../server/reports/joints.ts";
import { livesTable } from "../../server/reports/lives.ts";
import { orderTable } from "../../server/reports/order.ts";
import { outstandingTable } from "../../server/reports/outstanding.ts";
import { partsTable } from "../../server/reports/parts.ts";
import { renderCsv } from "../../server/reports/render-csv.ts";
import { renderHtml } from "../../server/reports/render-html.ts";
import { renderMarkdown } from "../../server/reports/render-markdown.ts";
import { renderText } from "../../server/reports/render-text.ts";
import { settingsTable } from "../../server/reports/settings.ts";
import type { Table } from "../../server/reports/table.ts";
import { timelineTable } from "../../server/reports/timeline.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { builds } from "../reports/sample-builds.ts";

const TABLES: Readonly<Record<string, (build: Build) => Table>> = {
  order: (build) => orderTable(build, planOf(build)),
  timeline: (build) => timelineTable(build, planOf(build)),
  outstanding: (build) => outstandingTable(build, complaintsOf(build).waived),
  joints: jointsTable,
  parts: (build) => partsTable(build, planOf(build)),
  lives: livesTable,
  costs: costsTable,
  settings: settingsTable,
};

/** What a value that was forgotten looks like in print. */
const FORGOTTEN = /\bundefined\b|\bNaN\b|\[object|Infinity|\{\{|\$\{/;

describe.each(Object.entries(builds))("of %s", (_, read) => {
  const build = read();

  it.each(Object.keys(TABLES))("cotter %s is printed whole in every form", (name) => {
    const table = TABLES[name]?.(build) as Table;
    const text = renderText(table, { colour: false, width: 80 });
    const forms = [text, renderMarkdown(table), renderHtml(table), renderCsv(table)];
    for (const form of forms) expect(form).not.toMatch(FORGOTTEN);
    expect(text).toContain(table.title);
    const told = [...table.notes, ...table.cautions].map((line) => line.split(" ").slice(0, 3).join(" "));
    for (const words of told) expect(text.replace(/\s+/g, " ")).toContain(words);
    expect(renderHtml(table).match(/<tr>/g)?.length ?? 0).toBe(
      table.sections.reduce((sum, { rows }) => sum + (rows.length === 0 ? 0 : rows.length + 1), 0),
    );
  });
});

const logs = readdirSync("samples", { recursive: true, encoding: "utf8" }).filter((name) =>
  name.endsWith(".cotter"),
);

it.each(logs)("%s stands in the canonical layout", (name) => {
  const text = readFileSync(join("samples", name), "utf8");
  expect(format(text)).toBe(text);
});
