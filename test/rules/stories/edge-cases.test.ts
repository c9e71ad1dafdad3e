/**
 * What is said at the edges: on the very day, at exactly the limit, of one and of several, of what was done twice. The
 * stories stand in the files of `edges/`, each behind a line `== what is expected`. Behind a story there may be lines
 * `open for HOLD: WHAT`, which are all that is open for that hold point at the end, in their order; and lines
 * `beside CODE: WHY: LINE`, which are all the lines that complaints of that code show beside theirs.
 */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import type { Build } from "../../../server/build/build.ts";
import { sayOpenItemByName } from "../../../server/build/open-item.ts";
import { openItems } from "../../../server/build/openness.ts";
import type { Place } from "../../../server/build/source.ts";
import { lineOf } from "../../../server/build/source.ts";
import { complaintsOf } from "../../../server/rules/complaints.ts";
import { readLogs } from "../read-log.ts";
import { readStory } from "../story.ts";

const AFTER = /^(open for|beside) (\S+): (.*)$/;
const MARK = /^ *\^+ (?:error|warning|information|hint) /;

const folder = new URL("edges/", import.meta.url);

const stories = readdirSync(folder)
  .flatMap((name) => readFileSync(new URL(name, folder), "utf8").split(/^== /m).slice(1))
  .map((part) => {
    const [title = "", ...lines] = part.split("\n");
    const story = lines.filter((line) => !AFTER.test(line)).join("\n");
    const own = story.includes("\nvehicle ") || story.startsWith("vehicle ");
    return {
      title,
      story: own ? story : `${story}\nvehicle "Example"\n  past: known\n`,
      open: grouped(lines, "open for"),
      beside: grouped(lines, "beside"),
    };
  });

/** What stands behind a story, by the hold point or code. */
function grouped(lines: readonly string[], word: string): Readonly<Record<string, readonly string[]>> {
  const groups: Record<string, string[]> = {};
  for (const line of lines) {
    const [, first, of, what] = AFTER.exec(line) ?? [];
    if (first !== word || of === undefined || what === undefined) continue;
    groups[of] = [...(groups[of] ?? []), what];
  }
  return groups;
}

function openFor({ standing }: Build, name: string): readonly string[] {
  const hold = standing.names.named("hold", name);
  if (hold === undefined) throw new Error(`no hold point ${name}`);
  const open = openItems(standing, hold).map(sayOpenItemByName);
  return open.length === 0 ? ["nothing"] : open;
}

function shownBeside(build: Build, code: string): readonly string[] {
  return complaintsOf(build)
    .complaints.filter((complaint) => complaint.code === code)
    .flatMap(({ seeAlso }) => seeAlso.map(({ message, place }) => `${message}: ${lineAround(place)}`));
}

function lineAround(place: Place): string {
  return place.site.file.document.text.split("\n")[lineOf(place) - 1]?.trim() ?? "";
}

/** The same for each key that is expected. */
function forEach(expected: Readonly<Record<string, unknown>>, of: (key: string) => readonly string[]) {
  return Object.fromEntries(Object.keys(expected).map((key) => [key, of(key)]));
}

it.each(stories)("$title", ({ story, open, beside }) => {
  const { marked, complained } = readStory(story);
  expect(complained).toEqual(marked);
  const text = story
    .split("\n")
    .filter((line) => !MARK.test(line))
    .join("\n");
  const build = readLogs([{ path: "log.cotter", text }]);
  expect(forEach(open, (name) => openFor(build, name))).toEqual(open);
  expect(forEach(beside, (code) => shownBeside(build, code))).toEqual(beside);
});
