/**
 * What is said of a value that cannot be meant, at which words, and what is offered instead: `unread-values.txt`. A line
 * at the margin is the kind of block and what stands in it; below it what is said, below that the mends, with an
 * exclamation mark where one is sure. With nothing below it a value is read; where one is refused the whole line means
 * nothing, unless `the rest is read`.
 */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { lowerBlock } from "../../server/build/lowering/block.ts";
import { textAt } from "../../server/build/source.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { readLogs } from "./read-log.ts";

const CODES: ReadonlySet<string> = new Set(["unreadable-value", "wrong-dimension", "unknown-unit"]);

const BESIDE =
  'vehicle "Example"\n  past: known\n\npart hub "Hub"\n\njoint flange "Flange"\n  torque: 24 N.m\n\n';

const REST = "  the rest is read";

function textOf(block: string, records: string): string {
  const lines = records.split(" / ").map((record) => `  ${record}\n`);
  const header = { vehicle: 'vehicle "Thing"', day: "day 2026-05-02" }[block] ?? `${block} thing "Thing"`;
  return `${header}\n${lines.join("")}`;
}

function said(block: string, records: string): readonly string[] {
  const text = `${block === "vehicle" ? "" : BESIDE}${textOf(block, records)}`;
  const build = readLogs([{ path: "log.cotter", text }]);
  return complaintsOf(build)
    .complaints.filter(({ code }) => CODES.has(code))
    .flatMap(({ place, code, message, fixes }) => [
      `  "${textAt(place)}" ${code}: ${message}`,
      ...fixes(build).map(({ title, sure, edits }) => {
        const written = edits.map((edit) => `${textAt(edit.place)} → ${edit.text}`);
        return `    ${title}${sure ? "!" : ""}: ${written.join(", ")}`;
      }),
    ]);
}

/** How many lines of a block mean nothing. */
function lostOf(block: string, records: string): number {
  const [node] = Document.read(textOf(block, records)).blocks;
  const lowered = node && lowerBlock(node);
  return lowered === undefined || lowered.is === "nothing" ? 0 : lowered.lost.length;
}

const cases = readFileSync(new URL("unread-values.txt", import.meta.url), "utf8")
  .trimEnd()
  .split(/\n(?! )/)
  .map((lines) => {
    const [asked = "", ...expected] = lines.split("\n");
    const [block = ""] = asked.split(" ");
    const complained = expected.filter((line) => line !== REST);
    const lost = complained.length > 0 && complained.length === expected.length ? 1 : 0;
    return { block, records: asked.slice(block.length + 1), complained, lost };
  });

it.each(cases)("in a block of $block, $records", ({ block, records, complained, lost }) => {
  expect(said(block, records)).toEqual(complained);
  expect(lostOf(block, records)).toBe(lost);
});
