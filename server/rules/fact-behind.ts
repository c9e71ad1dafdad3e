/** Mends that write down a fact which was done and forgotten: a line behind the one that made it due. */
import { contentEndOf } from "../../grammar/lines.ts";
import type { RecordNode } from "../../grammar/syntax.ts";
import type { Place } from "../build/source.ts";
import type { Fix } from "./rule.ts";

/**
 * Writes a fact on a line of its own behind the fact that a place is in; nothing where the place is in no day. Never
 * sure: only who did the work knows whether it was done.
 */
export function factBehind(place: Place, fact: string): readonly Fix[] {
  const record = factAt(place);
  if (record === undefined) return [];
  const { site } = place;
  const { text } = site.block;
  const end = contentEndOf(text, record.start, record.end);
  const lineEnd = text.startsWith("\r\n", end) ? "\r\n" : "\n";
  const indent = /^[^\S\r\n]*/.exec(text.slice(record.start))?.[0] ?? "  ";
  const edit = { place: { site, start: end, end }, text: `${lineEnd}${indent}${fact}` };
  return [{ title: `It was done: write ${fact}`, sure: false, edits: [edit] }];
}

/** The fact of a day that a place is in. */
export function factAt({ site, start }: Place): RecordNode | undefined {
  if (site.block.header?.block !== "day") return undefined;
  const item = site.block.items.find((each) => each.start <= start && start < each.end);
  return item?.kind === "record" ? item : undefined;
}
