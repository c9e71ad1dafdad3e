import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import { planOf } from "../../server/plan/plan.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { printCheck } from "../../server/reports/check-text.ts";
import { orderReport } from "../../server/reports/order.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { disk } from "../../server/workspace/disk.ts";
import { openBuild } from "../../server/workspace/open-build.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const clock = "2026-11-25" as IsoDate;
const readme = readFileSync(`${root}README.md`, "utf8");

/** The text of the page with every marked block made anew from the samples. */
async function withFreshBlocks(page: string): Promise<string> {
  let fresh = page;
  for (const [marker = "", what = "", argument = ""] of page.matchAll(
    /<!-- (sample|output check) (\S+) -->/g,
  )) {
    const text = what === "sample" ? readFileSync(root + argument, "utf8") : await checkOutput(argument);
    const fence = what === "sample" ? "```" : `\`\`\`\n$ cotter check ${argument}`;
    const block = `${marker}\n${fence}\n${text.trimEnd()}\n\`\`\`\n`;
    const start = fresh.indexOf(marker);
    const old = /^<!--[^\n]*-->\n(?:```[\s\S]*?\n```\n)?/.exec(fresh.slice(start))?.[0] ?? "";
    fresh = fresh.slice(0, start) + block + fresh.slice(start + old.length);
  }
  return fresh;
}

async function checkOutput(folder: string): Promise<string> {
  const opened = await openBuild(disk, root + folder);
  if (opened.is !== "build") throw new Error(`no build at ${folder}`);
  return printCheck(complaintsOf(readBuild(opened.files, { clock })).complaints, { colour: false });
}

describe("The README", () => {
  it("shows samples and output as they are", async () => {
    await expect(await withFreshBlocks(readme)).toMatchFileSnapshot(`${root}README.md`);
  });

  it("has a first log that does what the text under it says", () => {
    const log = /```\n(vehicle "My hillclimb car"[\s\S]*?)\n```/.exec(readme)?.[1] ?? "";
    const build = readBuild([{ path: "build.cotter", document: Document.read(log) }], { clock });
    expect(complaintsOf(build).complaints.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
      "information under-limit",
    ]);
    expect(orderReport(build, planOf(build)).lines.map(({ ref, quantity }) => `${quantity} ${ref}`)).toEqual([
      "1 front.left.disc",
    ]);
  });
});
