/** The book of a build: one page that holds all of its record, to keep, to print and to hand on with the vehicle. */
import type { Build } from "../build/build.ts";
import type { DefinitionRecord, RecordWord } from "../build/lowering/definition-record.ts";
import type { Plan } from "../plan/plan.ts";
import type { Waived } from "../rules/complaint.ts";
import { complaintsOf } from "../rules/complaints.ts";
import { measurementsTable } from "./book-measurements.ts";
import type { BookPhoto } from "./book-photo.ts";
import { storyMonths, storySection } from "./book-story.ts";
import { BOOK_STYLE } from "./book-style.ts";
import { countSeverities } from "./check.ts";
import { costsTable } from "./costs.ts";
import { jointsTable } from "./joints.ts";
import { sayPlace } from "./json-values.ts";
import { livesTable } from "./lives.ts";
import { outstandingTable } from "./outstanding.ts";
import { partsTable } from "./parts.ts";
import { drawProgramme } from "./programme-drawing.ts";
import { programmeOf } from "./programme-of.ts";
import { escapeHtml, htmlDrawing, htmlPage, htmlSections } from "./render-html.ts";
import { settingsTable } from "./settings.ts";
import { proseOf, storyOf } from "./story.ts";
import type { Table, TableRow } from "./table.ts";
import { textOf } from "./table.ts";
import { timelineTable } from "./timeline.ts";

interface Chapter {
  readonly id: string;
  readonly title: string;
  readonly body: string;
  /** Of a chapter in parts: what the contents list below it. */
  readonly parts?: readonly { readonly id: string; readonly title: string }[];
}

/** The page, whole: no script, nothing fetched. @param photos by the path that the log gives */
export function renderBook(build: Build, plan: Plan, photos: ReadonlyMap<string, BookPhoto>): string {
  const title = build.standing.gathered.vehicle.title ?? "A build without a vehicle";
  const chapters = chaptersOf(build, plan, photos);
  const body = [
    titlePage(build, title),
    contents(chapters),
    ...chapters.map(
      ({ id, title: heading, body: own }) =>
        `<section id="${id}" aria-labelledby="${id}-title">\n<h2 id="${id}-title">${escapeHtml(heading)}</h2>\n${own}\n</section>`,
    ),
  ].join("\n");
  return htmlPage(`${title}: build record`, body, BOOK_STYLE);
}

/** The paths of the photos that the book shows. */
export function photosOf(build: Build): readonly string[] {
  const paths = storyOf(build).flatMap(({ parts }) =>
    parts.flatMap((part) => (part.is === "photo" ? [part.path] : [])),
  );
  return [...new Set(paths)];
}

function titlePage(build: Build, title: string): string {
  const { header } = build.standing.gathered.vehicle;
  const chassis = ofVehicle(build, "chassis")?.text;
  const year = ofVehicle(build, "year")?.count;
  const days = storyOf(build);
  const said = [
    ...(chassis === undefined ? [] : [["Chassis", chassis]]),
    ...(year === undefined ? [] : [["Year", String(year)]]),
    ["Record to", build.today],
    ...(days.length === 0
      ? []
      : [["Days in the diary", `${days.length}, from ${days[0]?.date} to ${days.at(-1)?.date}`]]),
  ];
  return [
    "<header>",
    `<p class="kind">Build record</p>`,
    `<h1>${escapeHtml(title)}</h1>`,
    `<dl>${said.map(([term = "", text = ""]) => `<dt>${term}</dt><dd>${escapeHtml(text)}</dd>`).join("")}</dl>`,
    ...(header === undefined ? [] : proseOf(header.site.block).map((text) => `<p>${escapeHtml(text)}</p>`)),
    "</header>",
  ].join("\n");
}

function ofVehicle<W extends RecordWord>({ standing }: Build, word: W): DefinitionRecord<W> | undefined {
  const found = standing.gathered.vehicle.records.findLast(({ record }) => record.word === word)?.record;
  return found as DefinitionRecord<W> | undefined;
}

function contents(chapters: readonly Chapter[]): string {
  const link = ({ id, title }: { readonly id: string; readonly title: string }) =>
    `<a href="#${id}">${escapeHtml(title)}</a>`;
  const lines = chapters.map((chapter) => {
    const parts = (chapter.parts ?? []).map((part) => `<li>${link(part)}</li>`).join("");
    return `<li>${link(chapter)}${parts === "" ? "" : `<ul>${parts}</ul>`}</li>`;
  });
  return `<nav aria-labelledby="contents"><h2 id="contents">Contents</h2>\n<ol>${lines.join("\n")}</ol></nav>`;
}

function chaptersOf(build: Build, plan: Plan, photos: ReadonlyMap<string, BookPhoto>): readonly Chapter[] {
  const { complaints, waived } = complaintsOf(build);
  const tables = {
    parts: partsTable(build, plan),
    measurements: measurementsTable(build),
    joints: withoutColumn(jointsTable(build), "name"),
    settings: settingsTable(build),
    lives: livesTable(build),
    timeline: timelineTable(build, plan),
    costs: costsTable(build),
    outstanding: outstandingTable(build, waived),
  };
  const months = storyMonths(storyOf(build));
  return [
    {
      id: "story",
      title: "The story",
      body: storySection(months, photos),
      parts: months.map(({ id, title }) => ({ id, title })),
    },
    {
      id: "parts",
      title: "Parts schedule",
      body: chapterOf(withoutRemarks(tables.parts), "No part is defined."),
    },
    {
      id: "measurements",
      title: "Measurements against limits",
      body: chapterOf(tables.measurements, "Nothing has been measured."),
    },
    { id: "joints", title: "Torque sheet", body: chapterOf(tables.joints, "No joint is defined.") },
    { id: "settings", title: "Settings", body: chapterOf(tables.settings, "No setting is wanted.") },
    { id: "lives", title: "Lifed items", body: chapterOf(tables.lives, "Nothing is lifed.") },
    { id: "programme", title: "Build programme", body: programmeChapter(build, plan, tables.timeline) },
    { id: "costs", title: "What was spent", body: chapterOf(tables.costs, "Nothing has been spent.") },
    {
      id: "open",
      title: "What is still open",
      body: [
        `<p>${sayComplaints(complaints)}</p>`,
        htmlSections({ ...eachOnce(tables.outstanding), notes: [] }, 3),
      ].join("\n"),
    },
    { id: "waived", title: "What was waived", body: waivedChapter(waived) },
    { id: "cautions", title: "Cautions", body: cautionsChapter(Object.values(tables)) },
  ];
}

function chapterOf(table: Table, nothing: string): string {
  const empty = table.sections.every(({ rows }) => rows.length === 0);
  return empty ? `<p>${nothing}</p>` : htmlSections(table, 3);
}

/** The schedule of parts names its measurements in remarks; the book has a chapter for them. */
function withoutRemarks(table: Table): Table {
  const bare = ({ cells }: TableRow): TableRow => ({ cells });
  const [, ...others] = table.notes;
  return {
    ...table,
    sections: table.sections.map((section) => ({ ...section, rows: section.rows.map(bare) })),
    notes: others,
  };
}

/** A torque sheet in a book has no room for the short name; the log's line is named below it. */
function withoutColumn(table: Table, key: string): Table {
  return { ...table, columns: table.columns.filter((column) => column.key !== key) };
}

/** What is open for several hold points is named at the first of them; the others say how much that is. */
function eachOnce(table: Table): Table {
  const seen = new Set<string>();
  const sections = table.sections.map((section) => {
    const rows = section.rows.filter(({ cells }) => {
      const key = table.columns.map((column) => textOf(cells[column.key])).join(" ");
      return !seen.has(key) && seen.add(key);
    });
    const above = section.rows.length - rows.length;
    const foot = above === 0 ? [] : [`${above} ${rows.length === 0 ? "" : "more "}open, named above`];
    return { ...section, rows, foot: [...(section.foot ?? []), ...foot] };
  });
  return { ...table, sections };
}

/** The days that have been are told in the story: the table here says what is to come. */
function programmeChapter(build: Build, plan: Plan, timeline: Table): string {
  const programme = programmeOf(build, plan);
  const drawings = programme.entries.length === 0 ? [] : drawProgramme(programme, { entriesPerSheet: 18 });
  const [, ...toCome] = timeline.sections;
  return [...drawings.map(htmlDrawing), chapterOf({ ...timeline, sections: toCome }, "No job is open.")].join(
    "\n",
  );
}

function sayComplaints(complaints: Parameters<typeof countSeverities>[0]): string {
  const { error, warning } = countSeverities(complaints);
  const count = (figure: number, one: string) => `${figure} ${one}${figure === 1 ? "" : "s"}`;
  return `The log stands with ${count(error, "error")} and ${count(warning, "warning")}; <code>cotter check</code> lists them.`;
}

function waivedChapter(waived: readonly Waived[]): string {
  if (waived.length === 0) return "<p>No complaint was set aside.</p>";
  const lines = waived.map(
    ({ complaint: { code, message, place }, reason }) =>
      `<li><strong>${escapeHtml(code)}</strong>: ${escapeHtml(message)}<br>Set aside because: ${escapeHtml(reason === "" ? "no reason given" : reason)} <span class="faint">(${escapeHtml(sayPlace(place))})</span></li>`,
  );
  return `<p>Complaints that the log sets aside, each with the reason it gives.</p>\n<ul>${lines.join("\n")}</ul>`;
}

function cautionsChapter(tables: readonly Table[]): string {
  const cautions = [
    "This record says what was written down. It takes the place of no maker's manual, no local rule and no licensed practitioner.",
    ...tables.flatMap((table) => table.cautions),
  ];
  return `<ul>${[...new Set(cautions)].map((text) => `<li>${escapeHtml(text)}</li>`).join("\n")}</ul>`;
}
