/**
 * What is said at the edges: on the very day, at exactly the limit, of one and of several, of what was done twice. The
 * stories stand in the files of `edges/`, each behind a line `== what is expected`. Beside the marks of a story there may be
 * lines `open for HOLD: WHAT`, which are all that is open for that hold point at the end, in their order.
 */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { sayOpenItemByName } from "../../../server/build/open-item.ts";
import { openItems } from "../../../server/build/openness.ts";
import { readLogs } from "../read-log.ts";
import { readStory } from "../story.ts";

const OPEN = /^open for (\S+): (.*)$/;
const MARK = /^ *\^+ (?:error|warning|information|hint) /;

const folder = new URL("edges/", import.meta.url);

const stories = readdirSync(folder)
  .flatMap((name) => readFileSync(new URL(name, folder), "utf8").split(/^== /m).slice(1))
  .map((part) => {
    const [title = "", ...lines] = part.split("\n");
    const open = lines.flatMap((line) => {
      const [, hold, what] = OPEN.exec(line) ?? [];
      return hold === undefined || what === undefined ? [] : [{ hold, what }];
    });
    const story = lines.filter((line) => !OPEN.test(line)).join("\n");
    const own = story.includes("\nvehicle ") || story.startsWith("vehicle ");
    return { title, story: own ? story : `${story}\nvehicle "Example"\n  past: known\n`, open };
  });

function openAtTheEnd(story: string, name: string): readonly string[] {
  const text = story
    .split("\n")
    .filter((line) => !MARK.test(line))
    .join("\n");
  const { standing } = readLogs([{ path: "log.cotter", text }]);
  const hold = standing.names.named("hold", name);
  if (hold === undefined) throw new Error(`no hold point ${name}`);
  const open = openItems(standing, hold).map(sayOpenItemByName);
  return open.length === 0 ? ["nothing"] : open;
}

it.each(stories)("$title", ({ story, open }) => {
  const { marked, complained } = readStory(story);
  expect(complained).toEqual(marked);
  for (const name of new Set(open.map(({ hold }) => hold)))
    expect(openAtTheEnd(story, name)).toEqual(
      open.filter(({ hold }) => hold === name).map(({ what }) => what),
    );
});
