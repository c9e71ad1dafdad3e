/** What may be written at the cursor, by what stands before it. */

import { describe, expect, test } from "vitest";
import type { CompletionItem } from "vscode-languageserver";
import { completion } from "../../server/language-server/features/completion/completion.ts";
import type { Documented } from "../../server/language-server/features/completion/item.ts";
import { documentation } from "../../server/language-server/features/completion/resolve.ts";
import { edited, marked } from "./marked-build.ts";

function items(text: string, snippets = false): CompletionItem[] {
  const { view, position } = marked(text);
  return completion(view, position, snippets).items.sort((a, b) =>
    (a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1,
  );
}

const labels = (text: string) => items(text).map(({ label }) => label);

/** The labels of the best rank. */
function best(text: string): string[] {
  const all = items(text);
  const [rank] = all[0]?.sortText ?? "";
  return all.filter(({ sortText }) => sortText?.[0] === rank).map(({ label }) => label);
}

const BUILD = `
  vehicle "Halvorsen Sprint"
    currency: SEK
  gauge mic25 "Micrometer"
    reads: 0..25 mm
  gauge rule300 "Steel rule"
    reads: 0..300 mm
  gauge old_mic "Old micrometer"
    reads: 0..25 mm
    calibrated: 2020-01-01 for 12 month
  supplier northgate "Northgate Motor Factors"
  setup driver_up "Driver aboard"
  part front.left.hub "Hub"
    test: free_turning "spins two turns"
  part front.left.disc "Brake disc"
    limit: thickness min 8.4 mm
    setting: camber -1 deg ± 15 arcmin
  joint front.left.bolts "Disc to hub"
    joins: front.left.disc, front.left.hub
  job strip "Strip it"
  job paint "Paint it"
  hold ready "Ready to roll"
  day 2026-05-02
    removed: front.left.disc
    done: strip
    snag: rub on front.left
    calc: gap = 2 mm
    ordered: 2 x front.left.hub from northgate ref "N-1"
`;
const onDay = (line: string) => `${BUILD}  day 2026-05-03\n    ${line}\n`;

describe("at the start of a line", () => {
  test("in column 0 blocks, as forms to fill in where the editor can", () => {
    expect(labels("par⁞\n")).toContain("part");
    const part = items("par⁞\n", true).find(({ label }) => label === "part");
    expect(part?.textEdit?.newText).toBe(["part $", "{1:path}", ' "$', '{2:Title}"', "\n  $0"].join(""));
    expect(items("par⁞\n").find(({ label }) => label === "part")?.textEdit?.newText).toBe("part ");
  });

  test("a day has today's date", () => {
    expect(items("⁞").find(({ label }) => label === "day")?.textEdit?.newText).toBe("day 2026-06-01");
  });

  test("indented, the records of the block that are not there yet or may repeat", () => {
    const found = labels("part disc\n  material: steel\n  limit: a min 1 mm\n  ⁞\n");
    expect(found).toEqual(expect.arrayContaining(["limit", "price", "safety"]));
    expect(found).not.toContain("material");
    expect(found).not.toContain("removed");
  });

  test("in a day, facts", () => {
    expect(labels("day 2026-05-02\n  me⁞\n")).toEqual(expect.arrayContaining(["measured", "removed"]));
  });

  test("not within prose", () => {
    expect(labels("day 2026-05-02\n  All dry to⁞\n")).toEqual([]);
    expect(labels("day 2026-05-02\n  removed: a  # a com⁞\n")).toEqual([]);
  });
});

describe("references", () => {
  test("of the kinds that the place takes, with their titles, assemblies behind them", () => {
    const found = items(onDay("torqued: fr⁞"));
    expect(found.map(({ label }) => label)).toEqual(["front.left.bolts", "front", "front.left", "vehicle"]);
    expect(found[0]?.detail).toBe("Disc to hub");
  });

  test("those first that the fact can be told of: fitted is what is off", () => {
    expect(best(onDay("fitted: ⁞"))).toEqual(["front.left.disc"]);
    expect(best(onDay("removed: ⁞"))).toEqual(["front.left.hub"]);
    expect(best(onDay("received: 1 x ⁞"))).toEqual(["front.left.hub"]);
  });

  test("the whole path that is under way is replaced", () => {
    const { view, position, text } = marked(onDay("removed: front.le⁞"));
    const item = completion(view, position, false).items.find(({ label }) => label === "front.left.hub");
    const edit = item?.textEdit;
    expect(edit && "range" in edit && edited(text, [edit])).toContain("removed: front.left.hub\n");
  });

  test("within braces what is below the path before them", () => {
    const { view, position, text } = marked(onDay("removed: front.left.{disc, h⁞"));
    const item = completion(view, position, false).items.find(({ label }) => label.endsWith("hub"));
    const edit = item?.textEdit;
    expect(edit && "range" in edit && edited(text, [edit])).toContain("removed: front.left.{disc, hub\n");
  });

  test("behind a comma another one, also on the next line", () => {
    expect(labels(onDay("removed: front.left.disc, ⁞"))).toContain("front.left.hub");
    expect(labels(onDay("removed: front.left.disc,\n      ⁞"))).toContain("front.left.hub");
  });

  test("jobs not done, snags not cleared, suppliers, hold points", () => {
    expect(best(onDay("started: ⁞"))).toEqual(["paint"]);
    expect(labels(onDay("cleared: ⁞"))).toEqual(["rub"]);
    expect(labels(onDay("sent: front.left.disc to ⁞"))).toEqual(["northgate"]);
    expect(labels(onDay("released: ⁞"))).toEqual(["ready"]);
  });

  test("behind a thing and a dot its characteristics, where the place takes one", () => {
    expect(labels("part a\n  limit: gap min 1 mm\njoint j\n  set_by: a.⁞\n")).toContain("a.gap");
  });

  test("paths of assemblies for the header of a block", () => {
    expect(labels(`${BUILD}  part front.le⁞\n`)).toContain("front.left");
  });
});

describe("behind what is read", () => {
  test("the characteristics of the thing, with what they must be; limits first for a measurement", () => {
    const found = items(onDay("measured: front.left.disc ⁞"));
    expect(found.slice(0, 2).map(({ label, detail }) => [label, detail])).toEqual([
      ["thickness", "limit min 8.4 mm"],
      ["camber", expect.stringContaining("setting")],
    ]);
    expect(best(onDay("set: front.left.disc ⁞"))).toEqual(["camber"]);
  });

  test("the tests of the thing, and their results", () => {
    expect(labels(onDay("tested: front.left.hub ⁞"))).toEqual(["fail", "free_turning", "pass"]);
  });

  test("units of the right dimension behind a number, the author's first", () => {
    expect(best(onDay("measured: front.left.disc thickness 9.12 ⁞"))).toEqual(["mm"]);
    expect(labels(onDay("torqued: front.left.bolts 24 ⁞"))).toEqual(
      expect.arrayContaining(["N.m", "lbf.ft"]),
    );
    expect(labels(onDay("torqued: front.left.bolts 24 ⁞"))).not.toContain("mm");
    expect(labels(onDay("measured: front.left.disc camber 9 ⁞"))).not.toContain("mm");
  });

  test("nothing while the number itself is written", () => {
    expect(labels(onDay("measured: front.left.disc thickness 9.1⁞"))).not.toContain("mm");
  });

  test("the clauses that are still free", () => {
    const found = labels(onDay("measured: front.left.disc thickness 9 mm with mic25 ⁞"));
    expect(found).toEqual(expect.arrayContaining(["at", "for", "by"]));
    expect(found).not.toContain("with");
  });

  test("gauges in range and in date first", () => {
    expect(labels(onDay("measured: front.left.disc thickness 9 mm with ⁞"))).toEqual([
      "mic25",
      "rule300",
      "old_mic",
    ]);
    expect(best(onDay("measured: front.left.disc width 90 mm with ⁞"))).toEqual(["rule300"]);
  });

  test("choices, and the rest of words that go together", () => {
    expect(labels(onDay("decided: front.left.disc ⁞"))).toEqual(
      expect.arrayContaining(["renew", "recondition"]),
    );
    expect(labels(onDay("found: front.left.disc worn, ⁞"))).toContain("scored");
    expect(labels(onDay("torqued: front.left.bolts 24 N.m on ⁞"))).toEqual(["new hardware"]);
  });

  test("dates around today", () => {
    expect(best(onDay("sent: front.left.disc to northgate due ⁞"))).toEqual(["2026-06-01"]);
  });

  test("currencies, the build's own first", () => {
    expect(best('vehicle "V"\n  currency: SEK\npart a\n  price: 12.00 ⁞\n')).toEqual(["SEK"]);
    expect(labels(onDay("ordered: 1 x front.left.hub at 12 ⁞"))).toContain("SEK");
  });

  test("what a changed definition can be", () => {
    expect(labels(onDay("changed: front.left.bolts ⁞"))).toEqual(expect.arrayContaining(["torque", "bolt"]));
    expect(labels(onDay("changed: front.left.bolts torque 26 ⁞"))).toContain("N.m");
    expect(labels(onDay("changed: front.left.bolts lock ⁞"))).toContain("split_pin");
  });

  test("names and functions in a calculation", () => {
    expect(labels(onDay("calc: rest = ga⁞"))).toEqual(
      expect.arrayContaining(["gap", "sqrt", "preload", "front.left.disc"]),
    );
    expect(labels(onDay("calc: rest = front.left.disc.⁞"))).toContain("front.left.disc.thickness");
  });
});

describe("within quotation marks", () => {
  test("open orders, people, fluids", () => {
    expect(labels(onDay('received: order "⁞'))).toEqual(["N-1"]);
    expect(labels(`${BUILD}    seen: front.left.bolts by "KT"\n    seen: front.left by "⁞\n`)).toEqual([
      "KT",
    ]);
    expect(labels(onDay('found: front.left.disc worn "lip⁞'))).toEqual([]);
  });
});

test("behind `# waived` the codes, those of the line first", () => {
  expect(best("part a\nday 2026-05-02\n  removed: wing  # waived ⁞\n")).toEqual(["unknown-reference"]);
});

test("documentation is made when an item is looked at", () => {
  const { view, position } = marked(onDay("fitted: ⁞"));
  const item = completion(view, position, false).items.find(({ label }) => label === "front.left.disc");
  const data: { documented: Documented } | undefined = item?.data;
  expect(data && documentation(view.build, data.documented)).toContain("off since 2026-05-02");
});

test("code words in the project's own words are code, and plain where no Markdown is read", () => {
  const documented: Documented = { is: "rule", code: "mark-missing" };
  expect(documentation(marked("").view.build, documented)).toContain("write `marked:`");
  const { view, position } = marked(onDay("⁞"));
  const details = completion(view, position, false).items.map(({ detail }) => detail ?? "");
  expect(details.some((detail) => detail.includes("REF.NAME may be written too"))).toBe(true);
  expect(details.filter((detail) => detail.includes("`"))).toEqual([]);
});

describe("in a vehicle of many parts", () => {
  const many = Array.from({ length: 300 }, (_, index) => `part rear.bolt_${index} "Bolt"`).join("\n  ");
  const at = (written: string) => {
    const { view, position } = marked(`
  ${many}
  part front.left.hub "Hub"

  day 2026-05-02
    removed: ${written}⁞
  `);
    return completion(view, position, false);
  };

  test("some are offered, and the client is told to ask again", () => {
    const { isIncomplete, items } = at("");
    expect(isIncomplete).toBe(true);
    expect(items).toHaveLength(200);
  });

  test("those are offered that can still become what is written", () => {
    const { isIncomplete, items } = at("fhub");
    expect(isIncomplete).toBe(true);
    expect(items.map(({ label }) => label)).toEqual(["front.left.hub"]);
  });

  test("of few all are offered, whatever is written", () => {
    const { view, position } = marked(`
  part front.left.hub "Hub"

  day 2026-05-02
    removed: zz⁞
  `);
    const { isIncomplete, items } = completion(view, position, false);
    expect(isIncomplete).toBe(false);
    expect(items.map(({ label }) => label)).toContain("front.left.hub");
  });
});
