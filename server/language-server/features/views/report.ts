/** A report as a client shows it in a page of its own look, and as a page to keep. */
import { costsTable } from "../../../reports/costs.ts";
import { jointsTable } from "../../../reports/joints.ts";
import { orderTable } from "../../../reports/order.ts";
import { outstandingTable } from "../../../reports/outstanding.ts";
import { drawProgramme } from "../../../reports/programme-drawing.ts";
import { programmeOf } from "../../../reports/programme-of.ts";
import { escapeHtml, htmlSections, renderHtml } from "../../../reports/render-html.ts";
import type { Table } from "../../../reports/table.ts";
import { timelineTable } from "../../../reports/timeline.ts";
import type { Report, ReportName, Spot } from "../../protocol.ts";
import type { ChosenBuild } from "./chosen-build.ts";
import { fileName } from "./file-name.ts";

export function report(chosen: ChosenBuild, name: ReportName): Report {
  const table = tableOf(chosen, name);
  const spots = new Spots();
  const drawing = name === "timeline" ? drawn(chosen, spots) : "";
  const sections = linkedPlaces(chosen, htmlSections(table, 2), spots);
  return {
    title: table.title,
    fragment: `<h1>${escapeHtml(table.title)}</h1>\n${drawing}\n${sections}`,
    spots: spots.all,
    page: renderHtml(table, name === "timeline" ? programmeSheets(chosen).join("\n") : ""),
    fileName: fileName(chosen.name, name, chosen.build.today),
  };
}

function tableOf({ build, plan, snapshot }: ChosenBuild, name: ReportName): Table {
  switch (name) {
    case "order":
      return orderTable(build, plan);
    case "timeline":
      return timelineTable(build, plan);
    case "joints":
      return jointsTable(build);
    case "outstanding":
      return outstandingTable(build, snapshot.complaints.waived);
    case "costs":
      return costsTable(build);
  }
}

/** Places that links of a page lead to, each once. */
class Spots {
  readonly all: Spot[] = [];
  private readonly indices = new Map<string, number>();

  indexOf(spot: Spot): number {
    const key = `${spot.uri} ${spot.line} ${spot.character}`;
    const known = this.indices.get(key);
    if (known !== undefined) return known;
    this.indices.set(key, this.all.length);
    return this.all.push(spot) - 1;
  }
}

function programmeSheets({ build, plan }: ChosenBuild, linked = false): readonly string[] {
  return drawProgramme(programmeOf(build, plan), { linked });
}

/** The drawing, whose rows lead to the blocks of the jobs and hold points. */
function drawn(chosen: ChosenBuild, spots: Spots): string {
  const blocks = new Map(spotsByRef(chosen).map(([ref, spot]) => [escapeHtml(ref), spot]));
  return programmeSheets(chosen, true)
    .join("\n")
    .replace(/ data-ref="([^"]*)"/g, (_, ref: string) => {
      const spot = blocks.get(ref);
      return spot === undefined ? "" : ` data-spot="${spots.indexOf(spot)}"`;
    });
}

function spotsByRef(chosen: ChosenBuild): readonly (readonly [string, Spot])[] {
  const { names } = chosen.build.standing;
  return (["job", "hold"] as const).flatMap((kind) =>
    [...names.every(kind)].map(({ name, header }) => [name, chosen.spotOf(header)] as const),
  );
}

/** Makes links of the places that a report names as `file:line`. */
function linkedPlaces(chosen: ChosenBuild, html: string, spots: Spots): string {
  const files = new Map(chosen.build.files.map((file) => [escapeHtml(file.path), chosen.uriOf(file)]));
  const named = placePattern(files.keys());
  return html
    .split(/(<[^<>]*>)/)
    .map((piece) =>
      piece.startsWith("<")
        ? piece
        : piece.replace(named, (words, before: string, path: string, line: string) => {
            const uri = files.get(path);
            if (uri === undefined) return words;
            const index = spots.indexOf({ uri, line: Number(line) - 1, character: 0 });
            return `${before}<a href="#" data-spot="${index}">${path}:${line}</a>`;
          }),
    )
    .join("");
}

/** Longer paths first, so that none is taken for the end of another. */
function placePattern(paths: Iterable<string>): RegExp {
  const alternatives = [...paths]
    .sort((a, b) => b.length - a.length)
    .map((path) => path.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return new RegExp(`(^|[\\s(])(${alternatives.join("|")}):(\\d+)`, "g");
}
