/** How much of a line has to be there for it to mean anything; what is less is lost, and not half understood. */
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { vocabulary } from "../../grammar/vocabulary/vocabulary.ts";
import { lowerBlock } from "../../server/build/lowering/block.ts";

/** Beginnings of the examples of the vocabulary that mean something by themselves; of all others it takes the whole. */
const LEAST: readonly string[] = [
  "week: tue 2 h,",
  "calibrated: 2026-01-15",
  "size: bore 54",
  "limit: thickness min 8.4",
  "setting: camber -1.5",
  "test: free_turning",
  "pack: 50",
  "joins: front.left.hub,",
  "bolt: 4 x M8x1.25x30",
  "stud: 6 x 3/8-24 UNF",
  "nut: self_locking",
  "torque: 24 N.m",
  "stages: 10 N.m,",
  "recheck: after 1 h",
  "parts: front.left.caliper,",
  "pressure_test: 70 bar",
  "covers: front,",
  "needs: parts,",
  "test: no_leaks",
  "calc: reserve = front.left.disc.thickness",
  "calc: wear = 9.5",
  "fitted: front.left.balljoint",
  "cleaned: front.left.caliper",
  "inspected: front.left.hub",
  "serviced: extinguisher",
  "changed: front.left.disc_bolts torque 23 N.m",
  "found: front.left.balljoint play,",
  "measured: front.left.disc thickness 9.12,",
  'identified: front.left.hub as "hub of the small saloon"',
  "sent: front.left.hub to northgate",
  "back: front.left.hub",
  "ordered: 2 x front.left.balljoint",
  "rejected: 1 x front.left.balljoint",
  "returned: 1 x front.left.balljoint to northgate",
  "bought: 10 x disc_nut",
  "used: 1 x brake_fluid",
  "torqued: front.left.disc_bolts 23 N.m",
  "rechecked: front.left.disc_bolts",
  "locked: front.left.balljoint_nut",
  "filled: brakes.front",
  "proved: brakes.front",
  "set: front.left camber -1",
  "ran: vehicle 0.2 h",
  "spent: 12.40 GBP",
  "calibrated: wrench60",
  "snag: stiff_pedal on pedals",
  'photo: "photos/disc.png"',
];

const HEADERS: Readonly<Record<string, string>> = { vehicle: 'vehicle "V"', day: "day 2026-05-02" };

/** What is read of a block of one line, what is lost of it, and what is said. */
function read(block: string, line: string) {
  const [node] = Document.read(`${HEADERS[block] ?? `${block} thing "T"`}\n  ${line}\n`).blocks;
  const lowered = node && lowerBlock(node);
  if (node === undefined || lowered === undefined || lowered.is === "nothing") throw new Error("no block");
  const items = lowered.is === "day" ? lowered.facts : lowered.records;
  return {
    read: items.map(({ word }) => word),
    lost: lowered.lost.map(({ start, end }) => node.text.slice(start, end)),
    codes: lowered.faults.map(({ code }) => code),
  };
}

/** The beginnings of a line, word by word; a text in quotation marks is one. */
function beginnings(line: string): readonly string[] {
  return [...line.matchAll(/(?:"[^"]*"|[^\s"])+/g)].map(({ index, 0: word }) =>
    line.slice(0, index + word.length),
  );
}

describe.each(
  vocabulary.records.map(({ word, example, blocks }) => ({ word, example, block: blocks[0] ?? "" })),
)("$example", ({ word, example, block }) => {
  const least = LEAST.find((line) => example.startsWith(line) && line.startsWith(`${word}:`)) ?? example;

  it("means something from its least on", () => {
    expect(read(block, least)).toMatchObject({ read: [word], lost: [] });
    expect(read(block, example)).toEqual({ read: [word], lost: [], codes: [] });
  });

  it("is lost, and complained of, where there is less", () => {
    for (const line of beginnings(example).filter(({ length }) => length < least.length)) {
      const { codes, ...rest } = read(block, line);
      expect(rest).toEqual({ read: [], lost: [line] });
      expect(codes).not.toEqual([]);
    }
  });
});

it("all these are beginnings of examples", () => {
  const examples = vocabulary.records.map(({ example }) => example);
  for (const line of LEAST) expect(examples.flatMap(beginnings)).toContain(line);
});
