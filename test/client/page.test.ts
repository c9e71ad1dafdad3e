/** The page of a panel: nothing runs in it but its own script, and what it says is checked. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readFromPage } from "../../client/panels/messages.ts";
import { allowedFragment, newNonce, panelPage } from "../../client/panels/page.ts";

const page = panelPage({
  nonce: "abc",
  script: "https://media.example/report.js?a=1&b=2",
  style: 'https://media.example/"report".css',
  title: '<Torque> & "sheet"',
  waiting: "Reading…",
});

describe("the page", () => {
  test("lets in nothing but what carries its number", () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1];
    expect(policy?.split("; ")).toEqual([
      "default-src 'none'",
      "img-src data:",
      "style-src 'nonce-abc'",
      "script-src 'nonce-abc'",
    ]);
    expect(page.match(/<(script|link|style)[^>]*>/g)?.filter((tag) => !tag.includes('nonce="abc"'))).toEqual(
      [],
    );
  });

  test("has no script in the text, no handler, no style on an element", () => {
    expect(page).toMatch(/<script [^>]*><\/script>/);
    expect(page).not.toMatch(/\son[a-z]+=|\sstyle=|javascript:/i);
  });

  test("writes words as words", () => {
    expect(page).toContain("<title>&lt;Torque&gt; &amp; &quot;sheet&quot;</title>");
    expect(page).toContain('href="https://media.example/&quot;report&quot;.css"');
  });

  test("has a language, a title and a main part", () => {
    expect(page).toMatch(/<html lang="en">/);
    expect(page).toMatch(/<main id="report" aria-busy="true">/);
  });

  test("has a number of its own each time", () => {
    const numbers = new Set(Array.from({ length: 100 }, newNonce));
    expect(numbers.size).toBe(100);
    expect([...numbers].filter((number) => !/^[0-9a-f]{48}$/.test(number))).toEqual([]);
  });

  test("allows the style of drawings, and nothing that a log says", () => {
    const fragment = "<svg><style>.a {}</style></svg><p>&lt;style&gt;</p>";
    expect(allowedFragment(fragment, "abc")).toBe(
      '<svg><style nonce="abc">.a {}</style></svg><p>&lt;style&gt;</p>',
    );
  });
});

describe("what the page says", () => {
  test("that it is there, or which link was followed in which report", () => {
    expect(readFromPage({ is: "ready", more: 1 })).toEqual({ is: "ready" });
    expect(readFromPage({ is: "go", spot: 3, report: 1 })).toEqual({ is: "go", spot: 3, report: 1 });
  });

  test.each([
    undefined,
    null,
    "ready",
    { is: "run" },
    { is: "go", spot: "3", report: 1 },
    { is: "go", spot: 1.5, report: 1 },
    { is: "go", spot: 1 },
    { is: "go", uri: "file:///etc/passwd", report: 1 },
  ])("is not heard: %j", (message) => {
    expect(readFromPage(message)).toBeUndefined();
  });
});

test("the script of the page opens no connection, and writes nothing but the report as markup", () => {
  const script = readFileSync(new URL("../../media/report.js", import.meta.url), "utf8");
  expect(script).not.toMatch(/\b(fetch|XMLHttpRequest|WebSocket|eval|Function|import)\b\(/);
  expect(script.match(/innerHTML/g)).toHaveLength(1);
});
