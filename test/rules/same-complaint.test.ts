/** When a complaint that is made again is the one before: where everything that is shown of it is the same. */
import { describe, expect, it } from "vitest";
import type { Complaint } from "../../server/rules/complaint.ts";
import type { Fix } from "../../server/rules/rule.ts";
import { isSameComplaint } from "../../server/rules/same-complaint.ts";
import { readLogs } from "./read-log.ts";

const build = readLogs([{ path: "log.cotter", text: 'part hub "Hub"\n\npart disc "Disc"\n' }]);
const [hub, disc] = build.files.flatMap(({ document }, number) =>
  document.blocks.map((block, index) => ({ file: build.files[number], index, block })),
) as unknown as [Complaint["place"]["site"], Complaint["place"]["site"]];

const place = { site: hub, start: 5, end: 8 };
const beside = { place: { site: disc, start: 0, end: 4 }, message: "the other" };
const edit = { place, text: "hubs" };
const fix: Fix = { title: "Write hubs", sure: false, edits: [edit] };

/** Made anew each time, with no object of another in it. */
function complaint(other: Partial<Complaint> = {}): Complaint {
  return anew({
    code: "unknown-reference",
    severity: "error",
    message: "hub leads to nothing",
    place,
    seeAlso: [beside],
    fixes: () => [anew(fix)],
    waivable: true,
    ...other,
  });
}

/** Copies lists and objects, but for the sites, which are the same only as the same object. */
function anew<T>(value: T): T {
  if (value === hub || value === disc || typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map(anew) as T;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, anew(one)])) as T;
}

describe("a complaint is the one before", () => {
  it("where it says the same of the same place, with the same beside it and the same mends", () => {
    expect(isSameComplaint(complaint(), complaint(), build)).toBe(true);
    const bare = { seeAlso: [], fixes: () => [] };
    expect(isSameComplaint(complaint(bare), complaint(bare), build)).toBe(true);
  });

  const others: Readonly<Record<string, Partial<Complaint>>> = {
    words: { message: "hub leads to two things" },
    severity: { severity: "warning" },
    "whether it may be waived": { waivable: false },
    "its block": { place: { ...place, site: disc } },
    "where it begins": { place: { ...place, start: 6 } },
    "where it ends": { place: { ...place, end: 7 } },
    "how much is beside it": { seeAlso: [] },
    "what is beside it": { seeAlso: [{ ...beside, message: "the first" }] },
    "where that is": { seeAlso: [{ ...beside, place: { ...beside.place, start: 1 } }] },
    "how many mends": { fixes: () => [] },
    "what a mend is called": { fixes: () => [{ ...fix, title: "Write hubb" }] },
    "whether a mend is sure": { fixes: () => [{ ...fix, sure: true }] },
    "how much a mend writes": { fixes: () => [{ ...fix, edits: [edit, edit] }] },
    "what a mend writes": { fixes: () => [{ ...fix, edits: [{ ...edit, text: "hubb" }] }] },
    "where a mend writes": { fixes: () => [{ ...fix, edits: [{ ...edit, place: { ...place, end: 9 } }] }] },
  };

  it.each(Object.entries(others))("not where %s differs", (_, other) => {
    expect(isSameComplaint(complaint(), complaint(other), build)).toBe(false);
    expect(isSameComplaint(complaint(other), complaint(), build)).toBe(false);
  });
});
