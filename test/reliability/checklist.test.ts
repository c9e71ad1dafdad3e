/** The checklist of docs/reliability.md: what it names is there. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const read = (name: string) => readFileSync(fileURLToPath(new URL(`../../${name}`, import.meta.url)), "utf8");
const page = read("docs/reliability.md");

/** The rows of both lists, from the headings on: a promise, and what shows it. */
const rows = page
  .slice(page.indexOf("## The checklist, line by line"))
  .split("\n")
  .filter((line) => line.startsWith("| ") && !/^\| (?:promise|claim|-)/.test(line))
  .map((line) => line.split(" | ").map((cell) => cell.replace(/^\||\|$/g, "").trim()));

test("has many lines, each with a test, a script, or figures on the page", () => {
  expect(rows.length).toBeGreaterThan(40);
  const without = rows.filter(([, shown = ""]) => !/`(?:test\/|npm run )|\babove\b/.test(shown));
  expect(without).toEqual([]);
});

test("each test that it names is there, and has in it what is quoted", () => {
  const missing = rows.flatMap(([, shown = ""]) =>
    [...shown.matchAll(/`(test\/[\w./-]+)`(?:: "([^"]+)")?/g)].flatMap(([, file = "", quoted = ""]) =>
      existsSync(fileURLToPath(new URL(`../../${file}`, import.meta.url))) && read(file).includes(quoted)
        ? []
        : [`${file} ${quoted}`],
    ),
  );
  expect(missing).toEqual([]);
});

test("each script that it names can be run", () => {
  const { scripts } = JSON.parse(read("package.json")) as { scripts: Record<string, string> };
  const named = rows.flatMap(([, shown = ""]) =>
    [...shown.matchAll(/`npm run ([\w:]+)/g)].map(([, name = ""]) => name),
  );
  expect(named.length).toBeGreaterThan(3);
  expect(named.filter((name) => scripts[name] === undefined)).toEqual([]);
});
