import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays } from "../../server/quantities/dates.ts";
import type { ProgrammeEntry } from "../../server/reports/programme.ts";
import { drawProgramme } from "../../server/reports/programme-drawing.ts";
import { date, hold, job, planned, programme, shut } from "./programme-entries.ts";

function draw(...entries: readonly ProgrammeEntry[]): string {
  return drawProgramme(programme({ entries })).join("\n");
}

/** What is drawn for the entries, without the key. */
function rows(svg: string): readonly string[] {
  return [...svg.matchAll(/<g><title>.*?<\/title>(.*?)\n<\/g>/gs)].map(([, row = ""]) => row);
}

function attribute(svg: string, mark: RegExp): number {
  const found = mark.exec(svg)?.[1];
  if (found === undefined) throw new Error(`no ${mark} in ${svg}`);
  return Number(found);
}

/** Elements that are not closed, or closed by another's end; empty for well-formed XML. */
function unbalanced(svg: string): readonly string[] {
  const open: string[] = [];
  for (const [, end, name = "", empty] of svg.matchAll(/<(\/?)([a-z]+)(?:\s[a-zA-Z:-]+="[^"<]*")*(\/?)>/g)) {
    if (empty === "/") continue;
    if (end === "") open.push(name);
    else if (open.pop() !== name) return [name];
  }
  return open;
}

describe("work", () => {
  test("to come is an outlined box over its days, both included", () => {
    const [row = ""] = rows(draw(job("Strip", planned("2026-05-09", "2026-05-10"))));
    const left = attribute(row, /<rect class="work" x="([\d.]+)"/);
    const width = attribute(row, /<rect class="work" x="[\d.]+" y="[\d.]+" width="([\d.]+)"/);
    const [next = ""] = rows(draw(job("Strip", planned("2026-05-10", "2026-05-10"))));
    expect(attribute(next, /<rect class="work" x="([\d.]+)"/)).toBeCloseTo(left + width / 2, 1);
  });

  test("that is critical has the heavy outline and the word", () => {
    const [critical = "", other = ""] = rows(
      draw(
        job("Strip", planned("2026-05-09", "2026-05-10", { critical: true })),
        job("Loom", planned("2026-05-09", "2026-05-10")),
      ),
    );
    expect(critical).toMatch(/<rect class="work critical"/);
    expect(critical).toMatch(/<text [^>]*>critical<\/text>/);
    expect(other).not.toMatch(/critical/);
  });

  test("that is away is dashed with round ends", () => {
    const [row = ""] = rows(draw(job("Plating", planned("2026-05-09", "2026-05-20"), "Penrose")));
    expect(row).toMatch(/<rect class="work away"[^>]* rx="8"/);
  });

  test("that is done is hatched", () => {
    const svg = draw(job("Strip", { kind: "done", from: date("2026-04-11"), to: date("2026-04-12") }));
    expect(rows(svg)[0]).toMatch(/fill="url\(#programme-1-hatching\)"/);
    expect(svg).toMatch(/<pattern id="programme-1-hatching"/);
  });

  test("that was begun, or has float, says from when and until when with a thin line", () => {
    const [row = ""] = rows(
      draw(job("Strip", planned("2026-05-02", "2026-05-03", { begun: "2026-04-25", latest: "2026-05-10" }))),
    );
    expect(row).toMatch(/<path class="begun"/);
    expect(row).toMatch(/<path class="float"/);
  });

  test("without a place in the plan has no box", () => {
    const [row = ""] = rows(draw(job("Strip", { kind: "unplanned" })));
    expect(row).toMatch(/no place in the plan/);
    expect(row).not.toMatch(/<rect/);
  });
});

describe("a hold point", () => {
  const gateAt = (row: string) => attribute(row, /<g transform="translate\(([\d.]+) /);

  test("is a barred gate with its name", () => {
    const [row = ""] = rows(draw(hold("First run", shut("2026-05-10"))));
    // A post on its day, and on it four bars, a brace and the stile at their end.
    expect(row).toMatch(/<path class="posts" d="M0 -12V12"\/>/);
    expect(row.match(/M0 -?\d+H26/g)).toHaveLength(4);
    expect(row).toMatch(/M0 8L26 -7M26 -7V8/);
    expect(row).toMatch(/<text class="name"[^>]*>First run<\/text>/);
  });

  test("that is released is an open gate", () => {
    const [row = ""] = rows(draw(hold("First run", { kind: "released", on: date("2026-05-01") })));
    expect(row).toMatch(/<path class="posts"/);
    expect(row).not.toMatch(/H26/);
  });

  test("stands on its day when all before it is done by then, else where the plan reaches it", () => {
    const later = job("Later", planned("2026-06-30", "2026-06-30"));
    const [inTime = "", missed = "", reached = ""] = rows(
      draw(
        hold("In time", shut("2026-05-10"), "2026-05-31"),
        hold("Missed", shut("2026-06-06"), "2026-05-31"),
        hold("Reached", shut("2026-06-06")),
        later,
      ),
    );
    expect(gateAt(inTime)).toBeLessThan(gateAt(missed));
    expect(gateAt(missed)).toBe(gateAt(reached));
    // A post remains on the day that is missed.
    expect(attribute(missed, /<path class="post" d="M([\d.]+) /)).toBe(gateAt(inTime));
    expect(inTime).not.toMatch(/class="post"/);
  });

  test("has its post in the middle of its day", () => {
    const [released = "", shutOnDay = "", oneDay = ""] = rows(
      draw(
        hold("Released", { kind: "released", on: date("2026-05-10") }),
        hold("Shut", shut("2026-05-10")),
        job("That day", planned("2026-05-10", "2026-05-10")),
        job("Later", planned("2026-06-30", "2026-06-30")),
      ),
    );
    const left = attribute(oneDay, /<rect class="work" x="([\d.]+)"/);
    const width = attribute(oneDay, /<rect class="work" x="[\d.]+" y="[\d.]+" width="([\d.]+)"/);
    expect(gateAt(released)).toBeCloseTo(left + width / 2, 1);
    expect(gateAt(shutOnDay)).toBe(gateAt(released));
  });

  test("that is neither planned nor reached has its name and no gate", () => {
    const [row = ""] = rows(draw(hold("First run", shut())));
    expect(row).toMatch(/<text class="name"[^>]*>First run<\/text>/);
    expect(row).not.toMatch(/class="posts"/);
  });
});

describe("the sheet", () => {
  test("marks today, both finishes and the closed days", () => {
    const [svg = ""] = drawProgramme(
      programme({
        entries: [job("Strip", planned("2026-05-09", "2026-06-10"))],
        closed: [{ from: date("2026-05-20"), to: date("2026-05-30") }],
        finish50: date("2026-06-10"),
        finish90: date("2026-06-20"),
      }),
    );
    expect(svg).toMatch(/>today 2026-05-02</);
    expect(svg).toMatch(/>finish 50 % 2026-06-10</);
    expect(svg).toMatch(/>finish 90 % 2026-06-20</);
    expect(svg).toMatch(/<title>closed, 2026-05-20 to 2026-05-30<\/title>/);
  });

  test("says a day that both odds give once", () => {
    const day = date("2026-06-10");
    const [svg = ""] = drawProgramme(programme({ finish50: day, finish90: day }));
    expect([...svg.matchAll(/>(finish [^<]*)</g)].map(([, words]) => words)).toEqual([
      "finish 50 % and 90 % 2026-06-10",
    ]);
    expect(svg.match(/<path class="finish"/g)).toHaveLength(1);
    expect(svg).toContain("Finish at 50 % and at 90 %: 2026-06-10.");
  });

  test("has a stroke for each day of the diary, as high as its hours", () => {
    const [svg = ""] = drawProgramme(
      programme({
        past: [
          { date: date("2026-04-25"), hours: 8 },
          { date: date("2026-04-26"), hours: 4 },
        ],
      }),
    );
    const heights = [...svg.matchAll(/<path class="day" d="M[\d.]+ ([\d.]+)V([\d.]+)"><title>(.*?)</g)].map(
      ([, foot, top, words]) => [Number(foot) - Number(top), words],
    );
    expect(heights).toEqual([
      [24, "2026-04-25, 8 h"],
      [12, "2026-04-26, 4 h"],
    ]);
    expect(svg).toMatch(/>2 days, 12 h</);
  });

  test("leaves out a long past, and says so", () => {
    const [svg = ""] = drawProgramme(
      programme({
        past: [
          { date: date("2021-04-25"), hours: 8 },
          { date: date("2026-04-26"), hours: 4 },
        ],
        entries: [job("Strip", { kind: "done", from: date("2021-05-01"), to: date("2021-06-01") })],
      }),
    );
    expect(svg.match(/<path class="day"[^>]*><title>/g)).toHaveLength(1);
    expect(svg).toMatch(/>2 days, 12 h; 1 before 2026-\d\d-\d\d</);
    expect(rows(svg)[0]).toMatch(/>earlier</);
  });

  test("has only the marks in its key that occur", () => {
    const key = (svg: string) => {
      const [, marks = ""] = /<g class="key">(.*?)<path class="rule"/s.exec(svg) ?? [];
      return [...marks.matchAll(/<text class="small" [^>]*>(.*?)</g)].map(([, words]) => words);
    };
    expect(key(draw(job("Strip", planned("2026-05-09", "2026-05-10"))))).toEqual(["work to come"]);
    expect(key(draw(hold("Run", shut("2026-05-10"))))).toEqual(["hold point"]);
    expect(key(draw(hold("Run", shut("2026-05-10"), "2026-05-09")))).toEqual([
      "hold point",
      "day it was planned for",
    ]);
    const begun = planned("2026-05-09", "2026-05-10", { begun: "2026-05-01", latest: "2026-05-20" });
    expect(key(draw(job("Strip", begun)))).toEqual(["work to come", "begun before", "float"]);
  });

  test("is followed by another when there is more than fits, with ids of its own", () => {
    const entries = Array.from({ length: 5 }, (_, place) =>
      job(`Job ${place}`, planned("2026-05-09", "2026-05-10")),
    );
    const sheets = drawProgramme(programme({ entries }), { id: "plan", entriesPerSheet: 2 });
    expect(sheets.map((svg) => rows(svg).length)).toEqual([2, 2, 1]);
    expect(sheets[2]).toMatch(/<title id="plan-3-title">The plan, sheet 3 of 3<\/title>/);
    const ids = sheets.flatMap((svg) => [...svg.matchAll(/ id="(.*?)"/g)].map(([, id]) => id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("of nothing is still a sheet", () => {
    const [svg = "", ...others] = drawProgramme(programme());
    expect([unbalanced(svg), others]).toEqual([[], []]);
  });
});

describe("the drawing", () => {
  const everything = programme({
    title: `<script>alert("&")</script> & 'more'`,
    past: [{ date: date("2026-04-25"), hours: undefined }],
    entries: [
      job(`</title><script>"&'\u0000\uD800`, planned("2026-05-09", "2026-05-10", { critical: true }), "<b>"),
      job("Done </svg>", { kind: "done", from: date("2026-04-11"), to: date("2026-04-12") }),
      hold("<img src=x onerror=alert(1)>", shut("2026-05-10"), "2026-05-03"),
      hold("]]>", { kind: "released", on: date("2026-05-01") }),
    ],
    closed: [{ from: date("2026-05-20"), to: date("2026-05-30") }],
    finish50: date("2026-06-10"),
    finish90: date("2026-06-20"),
  });
  const [svg = ""] = drawProgramme(everything);

  test("escapes everything that was written by someone", () => {
    expect(unbalanced(svg)).toEqual([]);
    expect(svg).not.toMatch(/<(script|b|img)\b/);
    expect(svg.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\p{Cs}]/u);
    expect(svg.match(/&(?!amp;|lt;|gt;|quot;|#39;)/)).toBeNull();
  });

  test("runs nothing and loads nothing", () => {
    expect(svg).not.toMatch(/\son[a-z]+="|href|@import|javascript:|\sstyle="/);
    expect([...svg.matchAll(/url\((.)/g)].every(([, first]) => first === "#")).toBe(true);
  });

  test("has its title and all its words for those who do not see it", () => {
    expect(svg).toMatch(
      /role="img" aria-labelledby="programme-1-title" aria-describedby="programme-1-words"/,
    );
    expect(svg).toMatch(/<desc id="programme-1-words">Today is 2026-05-02\. Diary: 1 day, 0 h\. /);
  });

  test("has no diamonds, and no red", () => {
    expect(svg).not.toMatch(/<polygon|rotate\(45\)[^"]*"><rect/);
    const colours = [...svg.matchAll(/#([0-9a-f]{6})\b/g)].map(([, hex = ""]) => Number.parseInt(hex, 16));
    const reddish = colours.filter((colour) => (colour >> 16) - ((colour >> 8) & 255) > 24);
    expect([colours.length > 0, reddish]).toEqual([true, []]);
  });

  test("has colours for light, dark and paper", () => {
    expect(svg).toMatch(/@media \(prefers-color-scheme: dark\) \{ \.programme \{/);
    expect(svg).toMatch(/@media print \{ \.programme \{/);
  });

  test("of the same plan is the same", () => {
    expect(drawProgramme(structuredClone(everything))).toEqual([svg]);
  });

  test("keeps every mark on the sheet, whatever the plan", () => {
    const day = fc.integer({ min: -2000, max: 900 }).map((days) => addDays(date("2026-05-02"), days));
    const maybe = fc.option(day, { nil: undefined });
    const progress = fc.oneof(
      fc.record({ kind: fc.constant("done" as const), from: day, to: day }),
      fc.record({
        kind: fc.constant("planned" as const),
        from: day,
        to: day,
        begun: maybe,
        latest: maybe,
        critical: fc.boolean(),
      }),
      fc.constant({ kind: "unplanned" as const }),
    );
    const holdProgress = fc.oneof(
      fc.record({ kind: fc.constant("released" as const), on: day }),
      fc.record({ kind: fc.constant("shut" as const), reached: maybe, lapsed: fc.boolean() }),
    );
    const letter = fc.constantFrom(..."aW <>&\"'/]-\u0000\n\u202E\uD800é漢🛠");
    const title = fc.string({ unit: letter, maxLength: 60 });
    const entry = fc.oneof(
      fc.record({
        kind: fc.constant("job" as const),
        ref: title,
        title,
        awayAt: fc.option(title, { nil: undefined }),
        progress,
      }),
      fc.record({
        kind: fc.constant("hold" as const),
        ref: title,
        title,
        planned: maybe,
        progress: holdProgress,
      }),
    );
    const any = fc.record({
      entries: fc.array(entry, { maxLength: 8 }),
      past: fc.array(
        fc.record({ date: day, hours: fc.option(fc.integer({ min: 0, max: 24 }), { nil: undefined }) }),
        { maxLength: 5 },
      ),
      closed: fc.array(fc.record({ from: day, to: day }), { maxLength: 3 }),
      finish50: maybe,
      finish90: maybe,
    });
    fc.assert(
      fc.property(any, fc.boolean(), (changes, linked) => {
        const [sheet = ""] = drawProgramme(programme(changes), { linked });
        expect(unbalanced(sheet)).toEqual([]);
        expect(sheet).not.toMatch(/NaN|Infinity|undefined/);
        const boxes = [...sheet.matchAll(/<rect [^>]*x="(-?[\d.]+)" y="[\d.]+" width="(-?[\d.]+)"/g)];
        const outside = boxes.filter(
          ([, x, width]) => Number(x) < 0 || Number(width) < 0 || Number(x) + Number(width) > 820,
        );
        const leaves = [...sheet.matchAll(/translate\((-?[\d.]+) .*?M0 8?-?\d*[HL](-?\d+)/g)];
        const gates = leaves.filter(([, x, leaf]) => {
          const ends = [Number(x), Number(x) + Number(leaf)];
          return Math.min(...ends) < 0 || Math.max(...ends) > 820;
        });
        expect([outside, gates]).toEqual([[], []]);
      }),
    );
  });
});

test("On request each row is a link with words of its own, for a page that can follow it", () => {
  const entries = [job('Strip "A"', planned("2026-05-09", "2026-05-10")), hold("First run", shut())];
  const svg = drawProgramme(programme({ entries }), { linked: true }).join("\n");
  expect(unbalanced(svg)).toEqual([]);
  const links = [
    ...svg.matchAll(/<g class="link" role="link" tabindex="0" data-ref="(.*?)"><title>(.*?)<\/title>/g),
  ];
  expect(links.map(([, ref, words]) => [ref, words])).toEqual([
    ["strip_&quot;a&quot;", "Strip &quot;A&quot;: 2026-05-09 to 2026-05-10"],
    ["first_run", "First run: hold point; not reached in the plan"],
  ]);
  // What takes the keyboard may not stand in what is said to be one picture.
  expect(svg).not.toContain('role="img"');
});
