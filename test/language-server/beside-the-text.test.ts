/** What stands between and above the lines, and behind them: hints, states, links, forms. */
import { describe, expect, test } from "vitest";
import { codeLenses, lensWords } from "../../server/language-server/features/code-lens.ts";
import { inlayHints } from "../../server/language-server/features/inlay-hints.ts";
import { documentLinks } from "../../server/language-server/features/links.ts";
import { signatureHelp } from "../../server/language-server/features/signature-help.ts";
import { DEFAULT_SETTINGS } from "../../server/language-server/settings.ts";
import { marked, seen } from "./marked-build.ts";

const WHOLE = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

/** Lines with their hints in brackets. */
function hinted(text: string, shown = DEFAULT_SETTINGS.inlayHints): string[] {
  const { view } = marked(text);
  const lines = view.document.text.split("\n");
  const hints = inlayHints(view, WHOLE, shown);
  return hints.map(({ position, label }) => {
    const line = lines[position.line] ?? "";
    return `${line.slice(0, position.character).trim()} [${label as string}]${line.slice(position.character)}`;
  });
}

describe("hints", () => {
  test("the value of a calculation", () => {
    expect(hinted("day 2026-05-02\n  calc: rest = 9.12 mm - 8.4 mm\n")).toEqual([
      "calc: rest = 9.12 mm - 8.4 mm [= 0.72 mm]",
    ]);
  });

  test("what a reading proves, and how much is left", () => {
    expect(
      hinted(`
        part disc
          limit: thickness min 8.4 mm new 9.5 mm
          limit: runout max 0.10 mm
        day 2026-05-02
          measured: disc thickness 9.12, 9.10 mm "worst at the lip"
          measured: disc runout 0.14 mm
      `),
    ).toEqual([
      'measured: disc thickness 9.12, 9.10 mm [within, 0.70 mm left] "worst at the lip"',
      "measured: disc runout 0.14 mm [outside by 0.04 mm]",
    ]);
  });

  // 0.35 in = 8.89 mm exactly; 18 lbf.ft = 24.4 N.m (NIST SP 811).
  test("a value in the unit of its limit", () => {
    const text = `
      part disc
        limit: thickness min 8.4 mm
      joint bolts
        torque: 24 N.m ± 10 %
      day 2026-05-02
        measured: disc thickness 0.35 in
        torqued: bolts 18 lbf.ft
    `;
    expect(hinted(text)).toEqual([
      "measured: disc thickness 0.35 in [= 8.89 mm, within, 0.0193 in left]",
      "torqued: bolts 18 lbf.ft [= 24.4 N.m]",
    ]);
    expect(hinted(text, { ...DEFAULT_SETTINGS.inlayHints, converted: false })).toEqual([
      "measured: disc thickness 0.35 in [within, 0.0193 in left]",
    ]);
  });

  test("running so far, with that of what is above", () => {
    expect(
      hinted(`
        part engine.block
        day 2026-05-02
          ran: vehicle 0.5 h
          ran: engine 0.25 h 2 km
      `),
    ).toEqual(["ran: engine 0.25 h 2 km [0.75 h so far]"]);
  });

  test("of the lines that are shown alone", () => {
    const { view } = marked("day 2026-05-02\n  calc: a = 1 mm + 1 mm\n  calc: b = 2 mm + 2 mm\n");
    const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 5 } };
    expect(inlayHints(view, range, DEFAULT_SETTINGS.inlayHints).map(({ label }) => label)).toEqual([
      "= 4 mm",
    ]);
  });
});

test("above each block of a thing stands how it is", () => {
  const { view } = marked(`
    vehicle "V"
      past: known
    part disc
    joint bolts
      joins: disc
    job paint
    hold ready
      covers: disc
      needs: parts
      planned: 2026-07-01
    hold before
      needs: snags
    day 2026-05-01
      released: before
    day 2026-05-02
      removed: disc
      decided: disc renew
  `);
  const said = codeLenses(view).map(({ range, data }) => [
    range.start.line,
    lensWords(view, (data as { block: number }).block),
  ]);
  expect(said).toEqual([
    [0, "1 of 1 part not on, 1 of 1 joint not secured, 1 to order"],
    [2, "off since 2026-05-02, condemned: renew"],
    [3, "not secured: open since 2026-05-02"],
    [6, "1 open, planned for 2026-07-01"],
    [10, "released on 2026-05-01"],
  ]);
});

test("above a part that is on stands which limits it misses", () => {
  const { view } = marked(`
    vehicle "V"
    part disc
      limit: thickness min 8.4 mm
    day 2026-05-02
      removed: disc
      measured: disc thickness 8.2 mm
      fitted: disc
  `);
  const said = codeLenses(view).map(({ data }) => lensWords(view, (data as { block: number }).block));
  expect(said.slice(1)).toEqual(["on since 2026-05-02, out of limits: thickness"]);
});

test("photos, pages and mail addresses can be opened, and nothing else", () => {
  const build = marked(`
    supplier northgate
      web: "https://northgate.example"
      email: "parts@northgate.example"
      phone: "01632 960113"
    supplier other
      web: "command:workbench.action.quit"
    day 2026-05-02
      photo: "photos/a b.png"
      photo: "../outside.png"
      photo: "file:///etc/passwd"
  `);
  const links = documentLinks(build.view).map(({ range, target }) => [
    seen(build, "file:///garage/sprint/log.cotter", range),
    target,
  ]);
  expect(links).toEqual([
    ["log.cotter:2 https://northgate.example", "https://northgate.example"],
    ["log.cotter:3 parts@northgate.example", "mailto:parts@northgate.example"],
    ["log.cotter:8 photos/a b.png", "file:///garage/sprint/photos/a%20b.png"],
  ]);
});

describe("the form of a line", () => {
  /** The form, with the part at the cursor in brackets. */
  function form(text: string): string {
    const { view, position } = marked(text);
    const help = signatureHelp(view, position);
    const [signature] = help?.signatures ?? [];
    if (signature === undefined) return "";
    const parameter = signature.parameters?.[help?.activeParameter ?? -1]?.label;
    if (parameter === undefined) return signature.label;
    const [start, end] =
      typeof parameter === "string"
        ? [signature.label.indexOf(parameter), signature.label.indexOf(parameter) + parameter.length]
        : parameter;
    return `${signature.label.slice(0, start)}<${signature.label.slice(start, end)}>${signature.label.slice(end)}`;
  }
  const inDay = (line: string) => form(`part disc\nday 2026-05-02\n  ${line}\n`);

  test("shows what is due at the cursor", () => {
    expect(inDay("sent: ⁞")).toContain("sent: <REF[, …]> to SUPPLIER");
    expect(inDay("sent: disc to ⁞")).toContain("<to SUPPLIER>");
    expect(inDay("decided: disc ⁞")).toContain("<DECISION>");
    expect(inDay('tagged: disc "L, d⁞ot')).toContain('<"…">');
  });

  test("of a record within a record", () => {
    expect(inDay("changed: disc limit ⁞")).toContain("limit: <NAME>");
  });

  test("of a function, by its arguments", () => {
    expect(inDay("calc: f = preload(⁞")).toMatch(/^preload\(<torque>/);
    expect(inDay("calc: f = preload(24 N.m, M8⁞")).toMatch(/^preload\(torque, <thread>/);
    expect(inDay("calc: f = sqrt(max(1, ⁞")).toMatch(/^max\(/);
  });

  test("has its code words as code in its help", () => {
    const { view, position } = marked("part disc\nday 2026-05-02\n  measured: ⁞\n");
    const documentation = signatureHelp(view, position)?.signatures[0]?.documentation;
    expect(documentation).toMatchObject({ value: expect.stringContaining("`REF.NAME` may be written too") });
  });

  test("is silent in prose", () => {
    expect(inDay("All dry⁞ today")).toBe("");
  });
});
