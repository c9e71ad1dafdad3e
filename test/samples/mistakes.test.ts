import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import type { SourceFile } from "../../server/build/source.ts";
import { lineOf } from "../../server/build/source.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import type { Complaint } from "../../server/rules/complaint.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";

const LIST = readFileSync("test/samples/roadster-mistakes.md", "utf8");
/** After the last day of every sample that does not say `today:`. */
const CLOCK = "2026-12-01" as IsoDate;

interface Mistake {
  readonly code: string;
  readonly file: string;
  readonly line: string;
}

/** The rows under a heading of the list: code, file and line, each the first thing in backticks of its column. */
function listed(sample: string): readonly Mistake[] {
  const section = LIST.split(/^## /m).find((text) => text.startsWith(sample)) ?? "";
  return [...section.matchAll(/^\| `([^`]+)`[^|]*\| `([^`]+)`[^|]*\| `([^`]+)`/gm)].map(
    ([, code = "", file = "", line = ""]) => ({ code, file, line }),
  );
}

function complaintsIn(sample: string): readonly Complaint[] {
  const paths = readdirSync(sample, { recursive: true, encoding: "utf8" });
  const files = paths
    .filter((path) => path.endsWith(".cotter"))
    .map((path): SourceFile => {
      const text = readFileSync(join(sample, path), "utf8");
      return { path: path.replaceAll("\\", "/"), document: Document.read(text) };
    });
  const photos = (path: string) => paths.includes(path);
  return complaintsOf(readBuild(files, { clock: CLOCK, photos })).complaints;
}

/** The line that a complaint is about, as it stands. */
function lineTextOf({ place }: Complaint): string {
  const lines = place.site.file.document.text.split(/\r?\n/);
  return (lines[lineOf(place) - 1] ?? "").trim();
}

function isSerious({ severity }: Complaint): boolean {
  return severity === "error" || severity === "warning";
}

describe.each(["samples/roadster", "samples/evening", "samples/trials"])("%s", (sample) => {
  const mistakes = listed(sample);
  const complaints = complaintsIn(sample);

  it("has its mistakes found, each at its line", () => {
    const unfound = mistakes.filter(
      ({ code, file, line }) =>
        !complaints.some(
          (one) => one.code === code && one.place.site.file.path === file && lineTextOf(one).startsWith(line),
        ),
    );
    expect(unfound).toEqual([]);
  });

  it("has nothing else that is an error or a warning", () => {
    const unlisted = complaints
      .filter(isSerious)
      .filter(
        (one) => !mistakes.some(({ code, line }) => one.code === code && lineTextOf(one).startsWith(line)),
      );
    expect(unlisted.map((one) => `${one.place.site.file.path}:${lineOf(one.place)} ${one.code}`)).toEqual([]);
  });
});

describe("samples/roadster", () => {
  const complaints = complaintsIn("samples/roadster").filter(({ severity }) => severity !== "hint");

  it.each([
    ["measured: front.left.hub end_float 0.31 mm", "over-limit"],
    ["measured: front.right.disc thickness 8.35, 8.33, 8.36 mm", "under-limit"],
    ["measured: engine compression 9.6, 9.4, 9.5, 7.2 bar", "under-limit"],
    ["measured: engine.block bore 81.04, 81.05, 81.06, 81.11 mm", "under-limit"],
    ["measured: engine.head flatness 0.11 mm", "over-limit"],
  ])("says no more than it has to of what was answered later: %s", (line, code) => {
    const said = complaints.filter((one) => lineTextOf(one).startsWith(line));
    expect(said.map((one) => [one.code, one.severity])).toContainEqual([code, "information"]);
  });
});
