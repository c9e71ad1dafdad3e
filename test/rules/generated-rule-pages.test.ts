import { existsSync, readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { catalogue } from "../../server/rules/catalogue.ts";
import { figuresPage, rulePage, rulesIndex } from "../../server/rules/rule-pages.ts";

const PAGES = "docs/rules";

test.each([...catalogue.values()])("the page of $code is current", async (rule) => {
  await expect(rulePage(rule)).toMatchFileSnapshot(`../../${PAGES}/${rule.code}.md`);
});

test("the index of the rules is current", async () => {
  await expect(rulesIndex()).toMatchFileSnapshot(`../../${PAGES}/README.md`);
});

test("the page of the figures is current", async () => {
  await expect(figuresPage()).toMatchFileSnapshot(`../../${PAGES}/figures.md`);
});

test("there is no page of a rule that is no more", () => {
  const pages = readdirSync(PAGES).map((name) => name.replace(/\.md$/, ""));
  expect(pages.filter((name) => !catalogue.has(name)).sort()).toEqual(["README", "figures"]);
});

test("every link between the pages leads to one", () => {
  const linked = [rulesIndex(), figuresPage()].flatMap((text) =>
    [...text.matchAll(/\]\(([\w-]+\.md)\)/g)].map(([, name]) => name ?? ""),
  );
  expect([...new Set(linked)].filter((name) => !existsSync(`${PAGES}/${name}`))).toEqual([]);
});
