/** Complaints for a terminal: a line that editors can follow, then the text with what is meant underlined. */
import { contentEndOf } from "../../grammar/lines.ts";
import type { Place } from "../build/source.ts";
import type { Complaint } from "../rules/complaint.ts";
import type { Severity } from "../rules/rule.ts";
import { countSeverities, reportPlace } from "./check.ts";
import { plain } from "./plain-text.ts";

const COLOURS: Readonly<Record<Severity, string>> = {
  error: "31",
  warning: "33",
  information: "36",
  hint: "2",
};

export function printCheck(
  complaints: readonly Complaint[],
  { colour }: { readonly colour: boolean },
): string {
  const paint = (code: string, text: string) => (colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  const printed = complaints.map((complaint) => printComplaint(complaint, paint));
  return `${[...printed, summary(complaints)].join("\n")}\n`;
}

function printComplaint(
  { code, severity, message, place, seeAlso }: Complaint,
  paint: (code: string, text: string) => string,
): string {
  const { file, from } = reportPlace(place);
  const { line, underline } = excerpt(place);
  const number = String(from.line);
  const margin = " ".repeat(number.length);
  const others = seeAlso.map((other) => {
    const { file: otherFile, from: otherFrom } = reportPlace(other.place);
    return `  ${margin}   ${plain(other.message)}: ${plain(otherFile)}:${otherFrom.line}`;
  });
  return [
    `${plain(file)}:${from.line}:${from.column}: ${paint(COLOURS[severity], `${severity} ${code}`)}: ${plain(message)}`,
    `  ${number} | ${plain(line)}`,
    `  ${margin} | ${paint(COLOURS[severity], underline)}`,
    ...others,
    "",
  ].join("\n");
}

/** The first line of a place, and carets under what is meant of it; tabs stay tabs so that the carets stand right. */
function excerpt({ site, start, end }: Place): { line: string; underline: string } {
  const { text, lineStarts } = site.block;
  const index = lineStarts.findLastIndex((lineStart) => lineStart <= start);
  const lineStart = lineStarts[index] ?? 0;
  const lineEnd = contentEndOf(text, lineStart, lineStarts[index + 1] ?? text.length);
  const from = lineEnd - lineStart > LONGEST_LINE ? Math.max(lineStart, start - BEFORE_CUT) : lineStart;
  const to = Math.min(lineEnd, from + LONGEST_LINE);
  const [cutBefore, cutBehind] = [from > lineStart ? "…" : "", to < lineEnd ? "…" : ""];
  const before = cutBefore.replace("…", " ") + text.slice(from, start).replace(/[^\t]/g, " ");
  const length = Math.max(1, Math.min(end, to) - start);
  return { line: cutBefore + text.slice(from, to) + cutBehind, underline: before + "^".repeat(length) };
}

/** Characters of a line that are shown; of a longer one those about the place. */
const LONGEST_LINE = 240;
const BEFORE_CUT = 80;

function summary(complaints: readonly Complaint[]): string {
  const counts = countSeverities(complaints);
  const words: readonly (readonly [Severity, string, string])[] = [
    ["error", "error", "errors"],
    ["warning", "warning", "warnings"],
    ["information", "piece of information", "pieces of information"],
    ["hint", "hint", "hints"],
  ];
  const said = words.flatMap(([severity, one, many]) =>
    counts[severity] === 0 ? [] : [`${counts[severity]} ${counts[severity] === 1 ? one : many}`],
  );
  return said.length === 0 ? "nothing to complain about" : said.join(", ");
}
