/** What a client with views of its own is told of a build. Lines are counted from 1 here, as one reads them. */
import { describe, expect, test } from "vitest";
import { book } from "../../server/language-server/features/views/book.ts";
import { branch } from "../../server/language-server/features/views/branch.ts";
import { calculated } from "../../server/language-server/features/views/calculate.ts";
import { ChosenBuild, chooseBuild } from "../../server/language-server/features/views/chosen-build.ts";
import { describeThingAt } from "../../server/language-server/features/views/describe.ts";
import { fileName } from "../../server/language-server/features/views/file-name.ts";
import { overview } from "../../server/language-server/features/views/overview.ts";
import { report } from "../../server/language-server/features/views/report.ts";
import { stillOpen } from "../../server/language-server/features/views/still-open.ts";
import { toOrder } from "../../server/language-server/features/views/to-order.ts";
import { dayPlace, partPlace } from "../../server/language-server/features/views/writing-places.ts";
import type { Spot } from "../../server/language-server/protocol.ts";
import type { BookPhoto } from "../../server/reports/book-photo.ts";
import { marked } from "./marked-build.ts";

function chosen(text: string): ChosenBuild {
  return new ChosenBuild(marked(text).snapshot);
}

/** `log.cotter:3` */
function at(spot: Spot | null): string {
  return spot === null ? "nowhere" : `${spot.uri.replace(/^.*\//, "")}:${spot.line + 1}`;
}

const CORNER = `
  vehicle "The Sprint"
    past: known
    today: 2026-05-16
    currency: GBP
    week: sat 6 h
  supplier northgate "Northgate <Spares>"
    carriage: 8.50 GBP
    lead: 5 d
  assembly front "Front"
  part front.disc "Brake disc"
    safety: critical
    price: 62.00 GBP
    supplier: northgate
  part front.pads
  part front.hub
    as_found: shelf
  joint front.bolts "Disc to hub"
    joins: front.disc
    torque: 24 N.m
  system brakes "Brakes"
    parts: front.disc
    bleed: yes
  job disc "Fit the disc"
    on: front.disc
    needs: 1 x front.disc
    takes: 2 h
  hold later "Show day"
    needs: jobs
    planned: 2026-09-01
  hold first_run "First run"
    covers: front.disc
    needs: parts, joints
    planned: 2026-06-06
  day 2026-05-02 3 h
    removed: front.disc, front.pads
    found: front.disc cracked
    decided: front.disc renew
  day 2026-05-09
    sent: front.pads to northgate for "relining"
`;

describe("a build in a few figures", () => {
  test("names the first hold point that is shut, by its day", () => {
    const { name, today, next, toOrder: lines, spot } = overview(chosen(CORNER));
    expect({ name, today, next, lines, at: at(spot) }).toEqual({
      name: "The Sprint",
      today: "2026-05-16",
      next: { title: "First run", planned: "2026-06-06", open: 2, isWhole: false },
      lines: 1,
      at: "log.cotter:1",
    });
  });

  test("without hold points tells of the vehicle as a whole, while something is open", () => {
    const open = 'vehicle "V"\n  past: known\npart disc\nday 2026-05-02\n  removed: disc\n';
    expect(overview(chosen(open)).next).toEqual({
      title: "V",
      planned: null,
      open: 1,
      isWhole: true,
    });
    expect(overview(chosen(open.replace("removed", "cleaned"))).next).toBeNull();
  });

  test("is called as its file where there is no vehicle", () => {
    expect(overview(chosen("part disc\n"))).toMatchObject({ name: "log.cotter", spot: null });
  });

  test("is that of the log one is in, else the first with a vehicle", () => {
    const [lone, whole] = [marked("part a\n").snapshot, marked('vehicle "V"\n').snapshot];
    const loose = Object.assign(Object.create(Object.getPrototypeOf(lone)), lone, { hasVehicle: false });
    expect(chooseBuild([loose, whole], undefined)).toBe(whole);
    expect(chooseBuild([loose, whole], loose)).toBe(loose);
    expect(chooseBuild([loose], undefined)).toBe(loose);
    expect(chooseBuild([], undefined)).toBeUndefined();
  });
});

describe("as it stands", () => {
  const rows = (path: string | null) =>
    branch(chosen(CORNER), path)?.map(({ path: of, kind, look, hasMore, spot }) =>
      [of, kind, look, hasMore ? "more" : "", at(spot)].join(" "),
    );

  test("each level with what is directly below, by state", () => {
    expect(rows(null)).toEqual([
      "front assembly unsettled more log.cotter:9",
      "brakes system unsettled  log.cotter:20",
    ]);
    expect(rows("front")).toEqual([
      "front.disc part condemned  log.cotter:10",
      "front.pads part away  log.cotter:14",
      "front.hub part plain  log.cotter:15",
      "front.bolts joint unsettled  log.cotter:17",
    ]);
  });

  test("the state of each, for a client to word", () => {
    const states = ["front", null].flatMap((path) => branch(chosen(CORNER), path) ?? []);
    expect(states.map(({ state }) => state)).toEqual([
      { is: "part", place: "off", since: "2026-05-02", condemned: true, inHand: null, outOfLimits: false },
      { is: "part", place: "away", since: "2026-05-09", condemned: false, inHand: null, outOfLimits: false },
      { is: "part", place: "shelf", since: null, condemned: false, inHand: 0, outOfLimits: false },
      { is: "joint", secured: false },
      { is: "assembly", wanting: 3, of: 4 },
      { is: "system", lack: "bleeding" },
    ]);
  });

  test("a part that is on is not in order while its newest reading is out of limits", () => {
    const worn = "part hub\n  limit: runout max 0.1 mm\nday 2026-05-02\n  measured: hub runout 0.2 mm\n";
    const stateAfter = (log: string) => branch(chosen(log), null)?.map(({ look, state }) => [look, state]);
    const hub = { is: "part", place: "on", since: null, condemned: false, inHand: null };
    expect(stateAfter(worn)).toEqual([["unsettled", { ...hub, outOfLimits: true }]]);
    const trued = `${worn}  measured: hub runout 0.05 mm\n`;
    expect(stateAfter(trued)).toEqual([["plain", { ...hub, outOfLimits: false }]]);
  });

  test("nothing where there is no such thing any more", () => {
    expect(rows("rear")).toBeUndefined();
    expect(describeThingAt(chosen(CORNER), "rear")).toBeNull();
  });

  test("an assembly without a block of its own leads nowhere", () => {
    expect(branch(chosen("part a.b.c\n"), null)?.map(({ path, spot }) => [path, at(spot)])).toEqual([
      ["a", "nowhere"],
    ]);
  });

  test("all about a thing, with its words as they stand", () => {
    const told = describeThingAt(chosen('part disc "<img src=x>"\n'), "disc");
    expect(told).toContain("\\<img src=x\\>");
  });
});

test("still open: each hold point with what keeps it shut, and the lines to look at", () => {
  const said = stillOpen(chosen(CORNER)).map(({ ref, released, lapsed, spot, open }) => [
    `${ref} ${released} ${lapsed} ${at(spot)}`,
    ...open.map(
      ({ ref: what, title, message, critical, spot: line }) =>
        `${what} (${title}) ${message}${critical ? "!" : ""} ${at(line)}`,
    ),
  ]);
  expect(said).toEqual([
    ["later null null log.cotter:27", "disc (Fit the disc) the job is not begun log.cotter:23"],
    [
      "first_run null null log.cotter:30",
      "front.disc (Brake disc) off since 2026-05-02! log.cotter:35",
      "front.bolts (Disc to hub) not secured: open since 2026-05-02! log.cotter:35",
    ],
  ]);
});

test("still open: why, for a client to word, and the days of releases", () => {
  const text = `${CORNER.trimEnd()}
  day 2026-05-10
    started: disc
  hold done "Done"
    needs: jobs
  hold seen "Seen"
    covers: front.hub
  day 2026-05-11
    released: seen
  `;
  const holds = stillOpen(chosen(text));
  expect(holds.map(({ ref, released }) => [ref, released])).toContainEqual(["seen", "2026-05-11"]);
  expect(holds.find(({ ref }) => ref === "done")?.open.map(({ why }) => why)).toEqual([
    { code: "job-not-done", since: null, where: null, begun: true },
  ]);
  expect(holds.find(({ ref }) => ref === "first_run")?.open.map(({ why }) => why)).toEqual([
    { code: "part-off", since: "2026-05-02", where: "off", begun: false },
    { code: "joint-unsecured", since: null, where: null, begun: false },
  ]);
});

test("to order: by supplier, each line with its reasons", () => {
  const [supplier, ...others] = toOrder(chosen(CORNER));
  expect(others).toEqual([]);
  expect([supplier?.ref, supplier?.title, supplier?.goods, supplier?.carriage]).toEqual([
    "northgate",
    "Northgate <Spares>",
    ["62.00 GBP"],
    "8.50 GBP",
  ]);
  expect([supplier?.unpriced, supplier?.short, at(supplier?.spot ?? null)]).toEqual([
    0,
    null,
    "log.cotter:6",
  ]);
  const lines = supplier?.lines.map(({ ref, quantity, total, why, spot, late }) => ({
    line: `${quantity} x ${ref} ${total} ${at(spot)}`,
    late,
    why: why.map(({ text, spot: line }) => `${text} ${at(line)}`),
  }));
  expect(lines).toEqual([
    {
      line: "1 x front.disc 62.00 GBP log.cotter:10",
      late: false,
      why: ["decided: renew log.cotter:37", "needed by the job disc log.cotter:25"],
    },
  ]);
});

test("to order: two suppliers of one title stay two", () => {
  const text = `
    supplier one "The shop"
    supplier two "The shop"
      minimum: 50.00 GBP
    part a
      supplier: one
    part b
      supplier: two
      price: 20.00 GBP
    part c
    day 2026-05-02
      removed: a, b, c
      decided: a renew
      decided: b renew
      decided: c renew
  `;
  const suppliers = toOrder(chosen(text));
  expect(suppliers.map(({ ref, title, unpriced }) => [ref, title, unpriced])).toEqual(
    expect.arrayContaining([
      ["one", "The shop", 1],
      ["two", "The shop", 0],
      [null, null, 1],
    ]),
  );
  expect(suppliers.find(({ ref }) => ref === "two")?.short).toEqual({
    by: "30.00 GBP",
    minimum: "50.00 GBP",
  });
});

describe("reports for a page", () => {
  /** The words of each link, and where it leads. */
  function links({ fragment, spots }: ReturnType<typeof report>): string[] {
    return [...fragment.matchAll(/<a href="#" data-spot="(\d+)">([^<]*)<\/a>/g)].map(
      ([, index, words]) => `${words} -> ${at(spots[Number(index)] ?? null)}`,
    );
  }

  test("lead from each place that they name to its line", () => {
    const order = report(chosen(CORNER), "order");
    expect(links(order)).toEqual(["log.cotter:37 -> log.cotter:37", "log.cotter:25 -> log.cotter:25"]);
    expect(order.fileName).toBe("the-sprint-order-2026-05-16.html");
  });

  test("name a file by the longest of several paths", () => {
    const text = `
      === rear/log.cotter
      part disc
        as_found: missing
      === log.cotter
      vehicle "V"
        past: known
      hold ready
    `;
    expect(links(report(chosen(text), "outstanding"))).toEqual(["rear/log.cotter:1 -> log.cotter:1"]);
  });

  test("the programme: each row of the drawing leads to its job or hold point", () => {
    const { fragment, spots } = report(chosen(CORNER), "timeline");
    const rows = [...fragment.matchAll(/<g class="link"[^>]*data-spot="(\d+)"><title>([^<:]*)/g)];
    expect(rows.map(([, index, words]) => `${words} ${at(spots[Number(index)] ?? null)}`)).toEqual([
      "First run log.cotter:30",
      "Fit the disc log.cotter:23",
      "Show day log.cotter:27",
    ]);
    expect(fragment).not.toContain("data-ref");
  });

  test.each(["order", "timeline", "joints", "outstanding", "costs"] as const)(
    "%s: hostile names stay words, and nothing in it is a script",
    (name) => {
      const hostile = '<script>alert(1)</script><img src=x onerror="alert(2)">';
      const text = CORNER.replace("Brake disc", hostile.replaceAll('"', '\\"'))
        .replace("The Sprint", "<b>V</b>")
        .replace("Fit the disc", "<style>*{}</style>");
      const { fragment, page } = report(chosen(text), name);
      for (const html of [fragment, page]) {
        expect(html).not.toMatch(/<(script|img|b>|a href="[^#])/i);
        expect(html.match(/<style>/g) ?? []).toHaveLength(
          (html === page ? 1 : 0) + (name === "timeline" ? 1 : 0),
        );
      }
    },
  );
});

describe("the book", () => {
  const withPhoto = 'vehicle "V"\nday 2026-05-02\n  photo: "a.png" "Label"\n  photo: "b.png"\n';

  test("holds the photos that could be read, and names the others", async () => {
    const read = (folder: string, paths: readonly string[]) => {
      expect([folder, paths]).toEqual(["file:///garage/sprint", ["a.png", "b.png"]]);
      const shown: BookPhoto = { is: "picture", uri: "data:image/png;base64,AAAA", size: undefined };
      const missing: BookPhoto = { is: "missing", why: "gone" };
      return Promise.resolve(
        new Map<string, BookPhoto>([
          ["a.png", shown],
          ["b.png", missing],
        ]),
      );
    };
    const made = await book(chosen(withPhoto), read);
    expect(made.photos).toBe(1);
    expect(made.missing).toEqual([{ path: "b.png", why: "gone" }]);
    expect(made.page).toContain("data:image/png;base64,AAAA");
  });

  test("is made without photos where none can be read", async () => {
    const made = await book(chosen(withPhoto), undefined);
    expect(made.missing.map(({ path }) => path)).toEqual(["a.png", "b.png"]);
    expect(made.page).toContain("Label");
  });
});

test("expressions with the build's names, or without a build", () => {
  const { build } = chosen("part disc\n  size: bore 20 mm\n");
  expect(calculated(build, "disc.bore + 1 mm")).toEqual({ text: "21 mm", notes: [], failed: false });
  // 1 lbf.ft = 1.355 817 948 N.m (NIST SP 811, appendix B.8).
  expect(calculated(undefined, "40 lbf.ft in N.m").text).toBe("54.2 N.m");
  expect(calculated(undefined, "disc.bore").failed).toBe(true);
  expect(calculated(undefined, "40 mm + 1 N")).toMatchObject({ failed: true });
});

describe("where something new belongs", () => {
  const log = (today: string) => `
    vehicle "V"
      today: ${today}
    part front.disc

    day 2026-05-02 3 h
      removed: front.disc
      A word more.

    # About June.

    part rear.drum
    day 2026-07-01
  `;

  test("a new day behind the newest that has come", () => {
    const place = dayPlace(chosen(log("2026-05-16")), undefined);
    expect(place && [place.date, place.found, at(place.end), place.end.character]).toEqual([
      "2026-05-16",
      null,
      "log.cotter:7",
      "  A word more.".length,
    ]);
  });

  test("of a day that is there its end", () => {
    const place = dayPlace(chosen(log("2026-05-02")), undefined);
    expect([at(place?.found ?? null), at(place?.end ?? null)]).toEqual(["log.cotter:5", "log.cotter:7"]);
  });

  test("a first day at the end of the log one is in", () => {
    const text = '=== a.cotter\nvehicle "V"\n=== b.cotter\npart disc\n  count: 2\n\n';
    const { snapshot, viewOf } = marked(text);
    const place = dayPlace(new ChosenBuild(snapshot), viewOf("b.cotter").log);
    expect(at(place?.end ?? null)).toBe("b.cotter:2");
    expect(at(dayPlace(chosen(""), undefined)?.end ?? null)).toBe("log.cotter:1");
  });

  test("a part beside those of its assembly, in the file where they are", () => {
    const text = `
      === diary.cotter
      vehicle "V"
      day 2026-05-02
      === parts.cotter
      assembly front "Front"
      part front.left.disc
        count: 1
      assembly front.right like front.left
      part rear.drum
    `;
    const { snapshot, viewOf } = marked(text);
    const place = (path: string) => partPlace(new ChosenBuild(snapshot), path, viewOf("diary.cotter").log);
    const ends = ["front.left.hub", "front.arm", "rear.hub", "engine"].map((path) =>
      at(place(path)?.end ?? null),
    );
    expect(ends).toEqual(["parts.cotter:3", "parts.cotter:4", "parts.cotter:5", "diary.cotter:2"]);
    expect(at(place("front.left.disc")?.taken ?? null)).toBe("parts.cotter:2");
    expect(place("front.left.hub")?.taken).toBeNull();
  });
});

test("names of files are plain, whatever the vehicle is called", () => {
  expect(fileName("Pell Otter, 1961", "order", "2026-05-16")).toBe("pell-otter-1961-order-2026-05-16.html");
  expect(fileName("Ähre ../\\:*?", "order", "2026-05-16")).toBe("ahre-order-2026-05-16.html");
  expect(fileName("漢", "order", "2026-05-16")).toBe("order-2026-05-16.html");
});
