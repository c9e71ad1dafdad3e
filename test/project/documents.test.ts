/** The pages that are written by hand: what they show is what Cotter says, and every link leads somewhere. */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { commands } from "../../server/command-line/commands.ts";
import { commandsIn, fencesOf, pageAsRun } from "./page-blocks.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

const everyPage = [
  "README.md",
  "DEVELOPERS.md",
  "CHANGELOG.md",
  ...readdirSync(path.join(root, "docs"), { recursive: true, encoding: "utf8" })
    .map((name) => `docs/${name.replaceAll("\\", "/")}`)
    .filter((name) => name.endsWith(".md")),
].sort();

/** Pages that are made by a program have tests of their own. */
const GENERATED = /^docs\/(?:notation|rules|schema)\/|^docs\/functions\.md$/;
const written = everyPage.filter((page) => !GENERATED.test(page));

function textOf(page: string): string {
  return readFileSync(path.join(root, page), "utf8");
}

describe("What a page shows", () => {
  const pages = written.filter((page) => fencesOf(textOf(page)).some(({ words }) => words.length > 0));

  it.each(pages)("%s: logs and output are current", async (page) => {
    await expect(await pageAsRun(textOf(page))).toMatchFileSnapshot(path.join(root, page));
  });

  it.each(pages)("%s: every log is read by a command under it, on a day that stays", (page) => {
    const fences = fencesOf(textOf(page));
    const last = fences.findLastIndex(({ language }) => language === "cotter");
    expect(fences.slice(last).filter(({ language }) => language === "console")).not.toEqual([]);
    expect(fences.find(({ text }) => text.startsWith("vehicle "))?.text).toMatch(/^ {2}today: \d/m);
  });

  it.each(["docs/tutorial.md", "docs/how-to", "docs/explanation"])("%s is among them", (name) => {
    expect(pages.some((page) => page.startsWith(name))).toBe(true);
  });
});

describe("A command in a page", () => {
  const called = written
    .filter((page) => page !== "CHANGELOG.md")
    .flatMap((page) => {
      const text = textOf(page);
      const fenced = fencesOf(text)
        .filter(({ language }) => language === "console" || language === "sh")
        .flatMap((fence) => (fence.language === "sh" ? fence.text.split("\n") : commandsIn(fence)));
      const inline = [...text.matchAll(/(?<!`)`(cotter [^`\n]+)`(?!`)/g)].map(([, line = ""]) => line);
      return [...fenced, ...inline]
        .map((line) => /^(?:node dist\/)?cotter(?:\.cjs)? (\S[^#]*)/.exec(line)?.[1]?.trim())
        .filter((line) => line !== undefined)
        .filter((line) => !/^(?:COMMAND|--)/.test(line))
        .map((line) => ({ page, line }));
    });

  it.each(called)("$page: cotter $line", async ({ line }) => {
    const [name = "", ...words] = line.split(/\s+/);
    const command = await commands.get(name)?.();
    expect(command?.name).toBe(name);
    const given = words.filter((word) => /^--[a-z]/.test(word)).map((word) => word.slice(2));
    const taken = [
      "build",
      "on",
      "json",
      "help",
      "no-colour",
      ...(command?.options.map((one) => one.name) ?? []),
    ];
    expect(given.filter((option) => !taken.includes(option))).toEqual([]);
  });
});

describe("A link", () => {
  it.each(everyPage)("in %s leads to a file of the project, and to a heading in it", (page) => {
    const lost = linksOf(textOf(page)).filter((link) => !leadsSomewhere(page, link));
    expect(lost).toEqual([]);
  });

  it("to each page that is written by hand stands on the index of the documents", () => {
    const linked = linksOf(textOf("docs/README.md")).map((link) =>
      path.posix.join("docs", link.split("#")[0] ?? ""),
    );
    const own = written.filter((page) => page.startsWith("docs/") && page !== "docs/README.md");
    expect(own.filter((page) => !linked.includes(page))).toEqual([]);
  });
});

/** Relative links and pictures, outside fenced blocks. */
function linksOf(text: string): readonly string[] {
  const prose = text.replace(/^```[\s\S]*?^```$/gm, "").replace(/`[^`\n]*`/g, "");
  const markdown = [...prose.matchAll(/\]\(<?([^)\s>]+)>?(?: "[^"]*")?\)/g)].map(([, link = ""]) => link);
  const html = [...prose.matchAll(/(?:href|src|srcset)="([^"]+)"/g)].map(([, link = ""]) => link);
  return [...markdown, ...html].filter((link) => !/^[a-z]+:/.test(link));
}

function leadsSomewhere(page: string, link: string): boolean {
  const [name = "", heading] = link.split("#");
  const file = name === "" ? path.join(root, page) : path.join(root, path.dirname(page), decodeURI(name));
  if (!existsSync(file)) return false;
  if (heading === undefined || statSync(file).isDirectory() || !file.endsWith(".md")) return true;
  return anchorsOf(readFileSync(file, "utf8")).has(heading);
}

/** The anchors that a renderer of GitHub flavoured Markdown gives to headings, and those that are written out. */
function anchorsOf(text: string): ReadonlySet<string> {
  const headings = [...text.replace(/^```[\s\S]*?^```$/gm, "").matchAll(/^#+ (.+)$/gm)].map(
    ([, title = ""]) =>
      title
        .toLowerCase()
        .replace(/[^\p{L}\p{N}\s_-]/gu, "")
        .trim()
        .replaceAll(" ", "-"),
  );
  const times = new Map<string, number>();
  const anchors = headings.map((heading) => {
    const before = times.get(heading) ?? 0;
    times.set(heading, before + 1);
    return before === 0 ? heading : `${heading}-${before}`;
  });
  const named = [...text.matchAll(/<a (?:id|name)="([^"]+)"/g)].map(([, id = ""]) => id);
  return new Set([...anchors, ...named]);
}
