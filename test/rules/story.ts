/**
 * Stories: logs as literal text, with marks under the lines that are complained about.
 *
 *     day 2026-05-02
 *       measured: disc runout 0.14 mm
 *                             ^^^^^^^ error over-limit: over its limit of 0.10 mm by 0.04 mm
 *
 * A mark says where, how severe and which code; what stands behind the colon must be part of the message. Marks and
 * complaints match one to one; cautions count only in a story that marks one. A line `-- diary/may.cotter --` begins
 * another file.
 */
import type { Complaint } from "../../server/rules/complaint.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { readLogs } from "./read-log.ts";

/** Said of almost any day's work, and beside the point of most stories. */
const CAUTION = "safety-caution";

interface Mark {
  readonly place: string;
  readonly fragment: string | undefined;
}

interface StoryFile {
  readonly path: string;
  readonly text: string;
  readonly marks: readonly Mark[];
}

const FILE = /^-- (\S+) --$/;
const MARK = /^( *)(\^+) (error|warning|information|hint) ([a-z-]+)(?:: (.*))?$/;

interface ReadStory {
  /** The marks, and the complaints in the same form: a test expects them to be the same. */
  readonly marked: readonly string[];
  readonly complained: readonly string[];
}

export function readStory(story: string): ReadStory {
  const files = storyFiles(story);
  const marks = files.flatMap((file) => file.marks);
  const { complaints } = complaintsOf(readLogs(files));
  const cautious = marks.some(({ place }) => place.endsWith(` ${CAUTION}`));
  const meant = complaints.filter(({ code }) => cautious || code !== CAUTION);
  const complained = meant.map((complaint) => {
    const place = placeOf(complaint);
    const { message } = complaint;
    const fragments = marks.flatMap((mark) => (mark.place === place ? [mark.fragment] : []));
    const said = fragments.find((fragment) => fragment === undefined || message.includes(fragment));
    return inOneLine({
      place,
      fragment: said === undefined && !fragments.includes(undefined) ? message : said,
    });
  });
  return { marked: marks.map(inOneLine).sort(), complained: complained.sort() };
}

function inOneLine({ place, fragment }: Mark): string {
  return fragment === undefined ? place : `${place}: ${fragment}`;
}

function storyFiles(story: string): StoryFile[] {
  const files: { path: string; lines: string[]; marks: Mark[] }[] = [];
  let file: (typeof files)[number] | undefined;
  for (const line of story.replace(/^\n/, "").split("\n")) {
    const [, path] = FILE.exec(line) ?? [];
    if (path !== undefined || file === undefined) {
      file = { path: path ?? "log.cotter", lines: [], marks: [] };
      files.push(file);
      if (path !== undefined) continue;
    }
    const [, indent = "", carets = "", severity = "", code = "", fragment] = MARK.exec(line) ?? [];
    if (carets === "") file.lines.push(line);
    else {
      const span = `${indent.length}-${indent.length + carets.length}`;
      file.marks.push({ place: `${file.path}:${file.lines.length}:${span} ${severity} ${code}`, fragment });
    }
  }
  return files.map(({ path, lines, marks }) => ({ path, text: lines.join("\n"), marks }));
}

/** `log.cotter:2:24-31 error over-limit`; a place that reaches further than its line ends with it. */
function placeOf({ code, severity, place }: Complaint): string {
  const { file, index, block } = place.site;
  const { line, character } = file.document.positionIn(index, place.start);
  const text = block.text.slice(place.start, place.end).split("\n")[0] ?? "";
  return `${file.path}:${line + 1}:${character}-${character + text.length} ${severity} ${code}`;
}
