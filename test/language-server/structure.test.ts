/** What follows from the text alone: outline, folding, growing selections. */
import { describe, expect, test } from "vitest";
import { foldingRanges } from "../../server/language-server/features/folding.ts";
import { selectionRanges } from "../../server/language-server/features/selection.ts";
import { documentSymbols, workspaceSymbols } from "../../server/language-server/features/symbols.ts";
import { marked } from "./marked-build.ts";

const LOG = `
  vehicle "Halvorsen Sprint"
    year: 1962

  part disc "Brake disc"
    limit: thickness min 8.4 mm
    limit: runout max 0.10 mm
    It came with a lip.

  day 2026-05-02 5 h
    # Dry all day, so
    # outside.
    Stripped the corner.
    Both pins came out.
    removed: disc
    ordered: 1 x disc,
      2 x disc
    calc: wear = 1 mm
`;

test("the outline holds blocks, and below them the records with a name", () => {
  const { view } = marked(LOG);
  const outline = documentSymbols(view.document).map(({ name, detail, children = [] }) => [
    name,
    detail,
    children.map((child) => `${child.detail} ${child.name}`),
  ]);
  expect(outline).toEqual([
    ["Halvorsen Sprint", "vehicle", []],
    ["disc", "Brake disc", ["limit thickness", "limit runout"]],
    ["2026-05-02", "day", ["calc wear"]],
  ]);
});

test("a name is selected within its range, as the protocol asks", () => {
  const { view } = marked(LOG);
  for (const { range, selectionRange } of documentSymbols(view.document)) {
    expect(range.start.line).toBeLessThanOrEqual(selectionRange.start.line);
    expect(range.end.line).toBeGreaterThanOrEqual(selectionRange.end.line);
  }
});

test("the workspace is searched by letters in their order", () => {
  const { snapshot } = marked(LOG);
  const found = (query: string) =>
    workspaceSymbols([snapshot], query, () => () => "file:///log").map(({ name }) => name);
  expect(found("dsc")).toEqual(["disc"]);
  expect(found("BRAKE")).toEqual(["disc"]);
  expect(found("2026-05")).toEqual(["2026-05-02"]);
  expect(found("xyz")).toEqual([]);
});

test("blocks fold without the blank lines behind them; so do prose, comments and long records", () => {
  const { view } = marked(LOG);
  const ranges = foldingRanges(view.document).map(({ startLine, endLine, kind }) => [
    startLine,
    endLine,
    kind ?? "",
  ]);
  expect(ranges).toEqual([
    [0, 1, ""],
    [3, 6, ""],
    [8, 16, ""],
    [9, 10, "comment"],
    [11, 12, ""],
    [14, 15, ""],
  ]);
});

describe("a selection grows", () => {
  function grown(text: string): string[] {
    const { view, positions } = marked(text);
    const { document } = view;
    const texts: string[] = [];
    for (let at = selectionRanges(document, positions)[0]; at !== undefined; at = at.parent) {
      const { start, end } = at.range;
      texts.push(document.text.slice(document.offsetAt(start), document.offsetAt(end)));
    }
    return texts;
  }

  test("from a number to its quantity, the list, the line, the block and the file", () => {
    expect(
      grown(`
        part disc
        day 2026-05-02
          measured: disc thickness 9.⁞12, 9.10 mm with mic25
      `),
    ).toEqual([
      "9.12",
      "9.12, 9.10 mm",
      "measured: disc thickness 9.12, 9.10 mm with mic25",
      "day 2026-05-02\n  measured: disc thickness 9.12, 9.10 mm with mic25",
      "part disc\nday 2026-05-02\n  measured: disc thickness 9.12, 9.10 mm with mic25\n",
    ]);
  });

  test("in prose from the line", () => {
    expect(grown("day 2026-05-02\n  Dry⁞ all day.\n")).toEqual([
      "Dry all day.",
      "day 2026-05-02\n  Dry all day.",
      "day 2026-05-02\n  Dry all day.\n",
    ]);
  });
});
