/**
 * The fenced blocks of a page of the documents, and the page with everything that Cotter says in it made anew.
 *
 *     ```cotter NAME          writes the file NAME of the page's build
 *     ```cotter NAME +        adds to its end
 *     ```cotter NAME instead  puts each block in the place of the one with the same word and name
 *     ```console              lines that begin with `$ cotter` are run in the build's folder; what stands between is their output
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { cotter, folderWith } from "../command-line/program.ts";

interface Fence {
  readonly language: string;
  /** What follows the language: the file's name and what is done with it. */
  readonly words: readonly string[];
  readonly text: string;
  /** Where the text stands in the page. */
  readonly from: number;
  readonly to: number;
}

export function fencesOf(page: string): readonly Fence[] {
  return [...page.matchAll(/^```([a-z]*)([^\n]*)\n([\s\S]*?)^```$/gm)].map((found) => {
    const [, language = "", words = "", text = ""] = found;
    const from = found.index + `\`\`\`${language}${words}\n`.length;
    return {
      language,
      words: words.split(" ").filter((word) => word !== ""),
      text,
      from,
      to: from + text.length,
    };
  });
}

/** The page with the output of its commands as it is now. */
export async function pageAsRun(page: string): Promise<string> {
  const folder = folderWith({});
  let fresh = "";
  let end = 0;
  for (const fence of fencesOf(page)) {
    if (fence.language === "cotter") write(folder, fence);
    if (fence.language !== "console") continue;
    fresh += page.slice(end, fence.from) + (await consoleAsRun(fence.text, folder));
    end = fence.to;
  }
  return fresh + page.slice(end);
}

export function commandsIn(fence: Fence): readonly string[] {
  return fence.text
    .split("\n")
    .filter((line) => line.startsWith("$ "))
    .map((line) => line.slice(2));
}

async function consoleAsRun(text: string, folder: string): Promise<string> {
  let printed = "";
  for (const line of text.split("\n").filter((one) => one.startsWith("$ "))) {
    const [program, ...words] = wordsOf(line.slice(2));
    if (program !== "cotter") throw new Error(`a console block runs cotter and nothing else: ${line}`);
    const { out, err } = await cotter(words, folder);
    const said = `${out}${err}`.trimEnd();
    printed += `${printed === "" ? "" : "\n"}${line}\n${said === "" ? "" : `${said}\n`}`;
  }
  return printed;
}

function wordsOf(line: string): readonly string[] {
  return [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
}

function write(folder: string, { words: [name = "", how], text }: Fence): void {
  const file = path.join(folder, name);
  mkdirSync(path.dirname(file), { recursive: true });
  if (how === undefined) writeFileSync(file, text);
  else if (how === "+") writeFileSync(file, `${readFileSync(file, "utf8")}\n${text}`);
  else if (how === "instead") writeFileSync(file, replaced(readFileSync(file, "utf8"), text));
  else throw new Error(`"${how}" is nothing that a block can do with ${name}`);
}

/** The log with each block of the text in the place of the one that has the same word and name. */
function replaced(log: string, text: string): string {
  const blocks = blocksOf(log);
  for (const block of blocksOf(text)) {
    const at = blocks.findIndex((one) => headOf(one) === headOf(block));
    if (at < 0) throw new Error(`there is no block ${headOf(block)} to replace`);
    blocks[at] = block;
  }
  return `${blocks.join("\n\n")}\n`;
}

function blocksOf(log: string): string[] {
  return log.split(/\n(?=[a-z])/).map((block) => block.trim());
}

function headOf(block: string): string {
  return block.split(/\s/, 2).join(" ");
}
