/** The book as a page: whole in itself, in order, readable, and deaf to markup in the log. */
import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { planOf } from "../../server/plan/plan.ts";
import { photosOf, renderBook } from "../../server/reports/book.ts";
import type { BookPhoto } from "../../server/reports/book-photo.ts";
import { builds, readLogs, readSample } from "./sample-builds.ts";

const PIXEL =
  "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mNkYAAAAAYAAjCB0C8AAAAASUVORK5CYII=";

function bookOf(build: Build, photos: ReadonlyMap<string, BookPhoto> = shown(build)): string {
  return renderBook(build, planOf(build), photos);
}

function shown(build: Build): ReadonlyMap<string, BookPhoto> {
  return new Map(
    photosOf(build).map((path) => [path, { is: "picture", uri: PIXEL, size: { width: 1, height: 1 } }]),
  );
}

function all(page: string, pattern: RegExp): readonly string[] {
  return [...page.matchAll(pattern)].map(([, found = ""]) => found);
}

describe.each(Object.entries(builds))("the book of %s", (_, read) => {
  const page = bookOf(read());

  it("fetches nothing and runs nothing", () => {
    expect(page).toContain(`http-equiv="Content-Security-Policy" content="default-src 'none'`);
    expect(page).not.toMatch(/<script|<link|<iframe|\son\w+=|javascript:/i);
    expect(all(page, /\s(?:src|href)="([^"]*)"/g).filter((to) => !/^(?:#|data:image\/)/.test(to))).toEqual(
      [],
    );
  });

  it("has one title, and headings that leave no level out", () => {
    const levels = all(page, /<h([1-6])[ >]/g).map(Number);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels[0]).toBe(1);
    expect(levels.filter((level, index) => index > 0 && level > (levels[index - 1] ?? 0) + 1)).toEqual([]);
  });

  it("has contents that lead to every chapter, under ids that stand once", () => {
    const ids = all(page, /\sid="([^"]+)"/g);
    expect(new Set(ids).size).toBe(ids.length);
    const links = all(page, /href="#([^"]+)"/g);
    expect(links.filter((link) => !ids.includes(link))).toEqual([]);
    expect(all(page, /<section id="([^"]+)"/g).filter((id) => !links.includes(id))).toEqual([]);
  });

  it("carries the cautions", () => {
    expect(page).toContain("the maker&#39;s figure comes first");
    expect(page).toMatch(/The log shows .* open; it does not prove the vehicle safe; inspection decides\./);
  });
});

describe("the book of the roadster", () => {
  const build = readSample("roadster");
  const page = bookOf(build);

  it("names the vehicle, its chassis and its year", () => {
    expect(page).toContain("<h1>Ledbrook Shrike 1600</h1>");
    expect(page).toContain("<dt>Chassis</dt><dd>LS/R/0047</dd>");
    expect(page).toContain("<dt>Year</dt><dd>1963</dd>");
  });

  it("shows each photo with its caption, said and written", () => {
    const caption = "drawn from life, it would not photograph";
    expect(page).toContain(
      `<figure><img src="${PIXEL}" alt="${caption}" width="1" height="1"><figcaption>${caption}</figcaption></figure>`,
    );
    expect(all(page, /<img [^>]*alt="([^"]*)"/g).filter((alt) => alt === "")).toEqual([]);
  });

  it("frames the path of a photo that cannot be shown", () => {
    const without = bookOf(
      build,
      new Map([["photos/damper-bracket-crack.png", { is: "missing", why: "the file cannot be read" }]]),
    );
    expect(without).toContain(
      '<figure class="missing"><p>No picture: photos/damper-bracket-crack.png. The file cannot be read.</p>',
    );
  });

  it("draws each judged reading, with the words for those who do not see it", () => {
    const plots = all(page, /<svg class="reading"[^>]*aria-label="([^"]*)"/g);
    expect(plots).toContain("0.14 mm, max 0.10 mm: outside");
    expect(plots).toContain("15.89 mm, max 15.94 mm: within");
  });

  it("draws the build programme", () => {
    expect(page).toContain('class="programme"');
  });

  it("names what is open at the first hold point that it is open for, and counts it at the others", () => {
    const open = page.slice(page.indexOf('<section id="open"'), page.indexOf('<section id="waived"'));
    expect(all(open, /(brakes\.front_circuit)/g)).toHaveLength(1);
    expect(open).toMatch(/\d+ more open, named above/);
  });

  it("says what was waived, and why", () => {
    expect(page.slice(page.indexOf('<section id="waived"'))).toContain("<strong>safety-weld</strong>");
  });
});

it("a log cannot add markup", () => {
  const bad = `<img src=x onerror=alert(1)>'&lt;`;
  const build = readLogs({
    "build.cotter": `vehicle "${bad}"
  chassis: "${bad}"
  today: 2026-05-04
  ${bad} and more.

part hub "${bad}"
  limit: bore max 5 mm

day 2026-05-02 1 h
  Prose ${bad} goes on.
  measured: hub bore 4 mm at "${bad}"
  photo: "photos/${bad}.png" of hub "${bad}"
  found: hub worn "${bad}"
`,
  });
  const missing = bookOf(build, new Map());
  for (const page of [missing, bookOf(build)]) {
    expect(page).not.toContain("<img src=x");
    expect(page).not.toContain("'&lt;");
    expect(page).toContain("&lt;img src=x onerror=alert(1)&gt;&#39;&amp;lt;");
  }
});

/** Contrast of at least 4.5 to 1 for text (WCAG 2.2, 1.4.3; relative luminance as defined there). */
describe("the inks of the page stand out from its paper", () => {
  const page = bookOf(builds["a fresh build"]?.() as Build);
  const palettes = all(page, /:root \{([^}]*)\}/g);

  it("in light, in dark and in print", () => {
    expect(palettes).toHaveLength(3);
    for (const palette of palettes) {
      const colours = new Map(
        [...palette.matchAll(/--(\w+): #([0-9a-f]{3,6})/g)].map(([, name = "", hex = ""]) => [name, hex]),
      );
      const paper = luminance(colours.get("paper") ?? "");
      for (const ink of ["ink", "faint", "good", "open", "bad"]) {
        const [light, dark] = [paper, luminance(colours.get(ink) ?? "")].sort((a, b) => b - a);
        expect(((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05)).toBeGreaterThanOrEqual(4.5);
      }
    }
  });
});

function luminance(hex: string): number {
  const full = hex.length === 3 ? hex.replace(/./g, "$&$&") : hex;
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) => {
    const share = Number.parseInt(full.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
