/** A table as a page: what a narrow screen, a reader aloud and a hostile log meet. */
import { describe, expect, it } from "vitest";
import { renderHtml } from "../../server/reports/render-html.ts";
import type { Table } from "../../server/reports/table.ts";
import { column } from "../../server/reports/table.ts";

const table = (text: string): Table => ({
  title: "Torque sheet",
  columns: [column("what", "What"), column("torque", "Torque", "right"), column("mark", "")],
  sections: [
    {
      heading: "Front",
      rows: [
        { cells: { what: text, torque: "24 N.m", mark: "done" }, remarks: ["torqued on 2026-05-02"] },
        { cells: { what: "Caliper bolts", mark: "done" } },
      ],
    },
  ],
  notes: [],
  cautions: [],
});

describe("a table as a page", () => {
  it("keeps headings with the cells behind the first, since a narrow screen shows rows as cards", () => {
    const page = renderHtml(table("Disc to hub"));
    expect(page).toContain(
      '<tr><td>Disc to hub</td><td data-label="Torque" class="figure">24 N.m</td><td>done</td></tr>',
    );
    expect(page).toMatch(/@media screen and \(max-width: \d+rem\)/);
  });

  it("has no heading without words", () => {
    expect(renderHtml(table("Disc to hub"))).not.toMatch(/<th[^>]*><\/th>/);
  });

  it("lets nothing of the log become an element or run", () => {
    const page = renderHtml(table(`<img src=x onerror="alert(1)">'&`));
    expect(page).toContain("&lt;img src=x onerror=&quot;alert(1)&quot;&gt;&#39;&amp;");
    expect(page).not.toContain("<img");
    expect(page).toContain("default-src 'none'");
  });

  it("puts a drawing in a place of its own, which keys can scroll", () => {
    expect(renderHtml(table(""), "<svg></svg>")).toMatch(
      /<div class="drawing" role="group" aria-label="[^"]+" tabindex="0"><svg><\/svg><\/div>/,
    );
    expect(renderHtml(table(""))).not.toContain('class="drawing"');
  });
});
