/** What is told of the word at the cursor. */
import { describe, expect, test } from "vitest";
import { hover } from "../../server/language-server/features/hover/hover.ts";
import { marked, seen, undented } from "./marked-build.ts";

/** The Markdown that is shown; empty where nothing is. */
function told(text: string): string {
  const { view, position } = marked(text);
  const shown = hover(view, position);
  return shown === undefined ? "" : (shown.contents as { value: string }).value;
}

const BUILD = `
  vehicle "Halvorsen Sprint"
    past: known
  gauge mic25 "Micrometer"
    uncertainty: ± 0.004 mm
    calibrated: 2026-01-10 for 12 month
  supplier northgate "Northgate Motor Factors"
  part hub "Hub"
  part disc "Brake disc"
    number: "TH-D240"
    material: cast_iron
    safety: critical
    limit: thickness min 8.4 mm new 9.5 mm
    limit: runout max 0.10 mm
  joint bolts "Disc to hub"
    joins: disc, hub
    bolt: 4 x M8x1.25x30 class 8.8
    torque: 24 N.m ± 10 %
    friction: nut_factor 0.2
    nut: tapped 20 mm in steel
    grip: 8 mm
  job strip "Strip it"
    takes: 6 h
  hold ready "Ready to roll"
    planned: 2026-07-01
  day 2026-05-02 5 h
    measured: disc thickness 9.00 mm with mic25
    removed: disc
    found: disc worn "lipped"
    worked: 3 h on strip
    snag: rub on hub "at full lock"
    ordered: 1 x disc at 46.00 GBP from northgate due 2026-06-10 ref "N-1"
    calc: rest = disc.thickness - 8.4 mm
`;

describe("a part", () => {
  const shown = told(`${BUILD}  day 2026-05-03\n    cleaned: di⁞sc\n`);

  test("with its title, path, kind, and that its failure can hurt", () => {
    expect(shown).toContain("**Brake disc** `disc`  \n*part, safety critical*");
  });

  test("where it is, and what is known of it", () => {
    expect(shown).toContain("off since 2026-05-02");
    expect(shown).toContain("TH-D240, cast iron");
    expect(shown).toContain("found worn “lipped”, 2026-05-02");
  });

  // 9.00 less 8.4 leaves 0.60; the zone from 8.4 to 9.5 drawn in 32 signs puts 9.00 at sign 17.45: the 18th.
  test("its readings against its limits, drawn to scale", () => {
    expect(shown).toContain(
      "thickness 9.00 mm ± 0.004 mm, 2026-05-02 with mic25: within, 0.60 mm left (min 8.4 mm)\n" +
        "  8.4  ┃·················●··············┆  9.5",
    );
    expect(shown).toContain("runout: not measured, max 0.10 mm");
  });

  test("the edition of the standard whose decision rule is used", () => {
    expect(shown).toContain("ISO 14253-1");
  });
});

describe("a part of unknown identity", () => {
  const bearing = (measured: string) =>
    told(`
      part hub.bearing "Hub bearing"
      part hub.seal
      day 2026-05-02
        removed: hub.be⁞aring, hub.seal
${measured}
    `);
  // ISO 15, dimension series 02: bore 20, outside 47, width 14 mm is the deep groove ball bearing 6204.
  const MEASURED = `
        measured: hub.bearing bore 20.00 mm
        measured: hub.bearing outside 47.00 mm
        measured: hub.bearing width 13.95 mm`;

  test("can be what its dimensions fit, with how far off each is", () => {
    const shown = bearing(MEASURED);
    expect(shown).toContain("What it can be, best first:");
    expect(shown).toMatch(
      /- \*\*6204\*\* \(rolling bearing\), score [01]\.\d\d: bore 20 mm exactly, outside 47 mm exactly, width 0\.05 mm under 14 mm/,
    );
    expect(shown).toContain("markings and the maker's manual come first");
  });

  test("near to what is known, but no more, is said to be that", () => {
    const shown = bearing(MEASURED.replace("13.95", "14.15"));
    expect(shown).toContain("Nothing in the tables or among the donors fits. Nearest:");
    expect(shown).toContain("width 0.15 mm over 14 mm: too far off");
  });

  test("with one dimension is not guessed at", () => {
    expect(bearing("        measured: hub.bearing bore 20.00 mm")).not.toContain("can be");
  });

  test("is that no longer once its number or a day says what it is", () => {
    expect(bearing(`${MEASURED}\n        identified: hub.bearing as "6204"`)).not.toContain("can be");
  });

  test("is compared with the donors of the build too", () => {
    const shown = told(`
      donor van_shaft "Pryce van, driveshaft"
        size: length 512 mm
        size: spline_diameter 24 mm
      part rear.shaft
      day 2026-05-02
        measured: rear.sha⁞ft length 512.0 mm
        measured: rear.shaft spline_diameter 24.0 mm
    `);
    expect(shown).toContain("**Pryce van, driveshaft** (donor), score");
  });
});

test("a set tells of each thing that it means", () => {
  const shown = told("part a.disc\npart b.disc\nday 2026-05-03\n  cleaned: *.di⁞sc\n");
  expect(shown).toContain("`a.disc`");
  expect(shown).toContain("`b.disc`");
});

test("a copy says what it is like", () => {
  expect(told('part a "One"\npart b like a\nday 2026-05-03\n  removed: b⁞\n')).toContain("like `a`");
});

test("an assembly counts what is below it, and names what is amiss", () => {
  const shown = told(`
    vehicle "V"
      past: known
    part front.disc
    part front.hub
    day 2026-05-02
      removed: front.hub
      cleaned: fr⁞ont
  `);
  expect(shown).toContain("1 of 2 parts not on");
  expect(shown).toContain("- `front.hub` off since 2026-05-02");
  expect(shown).not.toContain("front.disc");
});

// 24 N.m / (0.2 x 8 mm) = 15.0 kN; proof load of M8 class 8.8 is 21.2 kN (ISO 898-1, table 5).
test("a joint: torque in other units, preload and share of proof with the working, reach", () => {
  const shown = told(`${BUILD}  day 2026-05-03\n    loosened: bol⁞ts\n`);
  expect(shown).toContain("torque 24 N.m, 21.6 N.m to 26.4 N.m (17.7 lbf.ft, 212 lbf.in, 2.45 kgf.m)");
  expect(shown).toContain("preload 15.0 kN, 71 % of proof in each M8 class 8.8");
  expect(shown).toContain("proof load 21.2 kN");
  expect(shown).toContain("22.0 mm into the hole");
  expect(shown).toContain("maker’s manual");
});

describe("other names", () => {
  test("a gauge with its calibration and its records", () => {
    const shown = told(`${BUILD}  day 2026-05-03\n    measured: hub bore 52 mm with mic⁞25\n`);
    expect(shown).toContain("**Micrometer** `mic25`  \n*gauge*");
    expect(shown).toContain("calibrated on 2026-01-10, good until 2027-01-10");
    expect(shown).toContain("uncertainty: ± 0.004 mm");
  });

  test("a job with the hours worked", () => {
    expect(told(`${BUILD}  day 2026-05-03\n    done: st⁞rip\n`)).toContain("3 h worked");
  });

  test("a hold point with what is open", () => {
    const shown = told(`${BUILD}  day 2026-05-03\n    tested: rea⁞dy pass\n`);
    expect(shown).toContain("not released, planned for 2026-07-01");
    expect(shown).toContain("- disc: off since 2026-05-02");
  });

  test("a characteristic with its readings", () => {
    const shown = told(`${BUILD}  day 2026-05-03\n    measured: disc thick⁞ness 9.00 mm\n`);
    expect(shown).toContain("limit: thickness min 8.4 mm new 9.5 mm");
    expect(shown).not.toContain("runout");
  });

  test("a snag, an order, and a computed value", () => {
    expect(told(`${BUILD}    cleared: r⁞ub\n`)).toContain("raised on 2026-05-02 on hub “at full lock”");
    expect(told(`${BUILD}    received: order "N⁞-1"\n`)).toContain("1 x disc, 1 received, due 2026-06-10");
    expect(told(`${BUILD}    calc: more = re⁞st + 1 mm\n`)).toContain("`rest = 0.60 mm`");
  });
});

describe("a fact that was written later than its day", () => {
  const late = { written: "2026-05-20", author: "K*T", commit: "0123456789abcdef", daysLater: 18 };
  const of = (text: string) => {
    const { view, position } = marked(text);
    const asked: object[] = [];
    const shown = hover(view, position, (fact) => {
      asked.push(fact);
      return fact.line.startsWith("measured:") ? late : undefined;
    });
    return { asked, shown: shown && (shown.contents as { value: string }).value };
  };

  test("says so above what is told of the word", () => {
    const { asked, shown } = of("part disc\nday 2026-05-02\n  measured: di⁞sc a 9 mm  # seen\n");
    expect(asked).toEqual([{ file: "log.cotter", day: "2026-05-02", line: "measured: disc a 9 mm  # seen" }]);
    expect(shown).toMatch(
      /^\*Written 18 days later, on 2026-05-20, by K\\\*T \(commit 012345678\)\*\n\n`disc`/,
    );
  });

  test("and nothing of a fact that was not, of prose, or of a definition", () => {
    expect(of("part disc\nday 2026-05-02\n  removed: di⁞sc\n").shown).not.toContain("Written");
    expect(of("part disc\nday 2026-05-02\n  Wri⁞tten up.\n")).toEqual({ asked: [], shown: undefined });
    expect(of("part di⁞sc\n").asked).toEqual([]);
  });
});

describe("values", () => {
  const of = (line: string) => told(`${BUILD}  day 2026-05-03\n    ${line}\n`);

  // 40 lbf.ft = 54.23 N.m (NIST SP 811, B.9: 1.355 818 N.m).
  test("a quantity in the other customary units", () => {
    expect(of("torqued: bolts 40⁞ lbf.ft")).toBe(
      ["**40 lbf.ft**", "- 54.2 N.m\n- 480 lbf.in\n- 5.53 kgf.m"].join("\n\n"),
    );
    expect(of("filled: x 0.5⁞ l")).toContain("imp\\_pt");
  });

  test("a date: its day of the week and how far off it is", () => {
    expect(told("day 2026-05⁞-02\n")).toBe("Saturday, 30 days ago");
    expect(of("serviced: hub until 2026-06⁞-02")).toBe("Tuesday, 1 day from today");
  });

  // M8: pitch 1.25 mm, stress area 36.6 mm2 (ISO 898-1, table 4).
  test("a thread with its pitch and stress area", () => {
    const shown = told("joint j\n  bolt: 4 x M⁞8x1.25x30 class 8.8\n");
    expect(shown).toContain("pitch 1.250 mm");
    expect(shown).toContain("stress area 36.6 mm2");
  });
});

describe("words of the notation", () => {
  test("a record with its arguments, its meaning and an example", () => {
    const shown = told("part disc\n  lim⁞it: thickness min 8.4 mm\n");
    expect(shown).toContain("```cotter\nlimit: ");
    expect(shown).toContain("satisf");
  });

  test("a block word", () => {
    expect(told("par⁞t disc\n")).toContain("A part, with its identity");
  });

  test("a function with its formula and source", () => {
    const shown = told("day 2026-05-02\n  calc: f = pre⁞load(24 N.m, M8, 0.2)\n");
    expect(shown).toContain("Formula:");
    expect(shown).toContain("Source:");
  });

  test("a clause", () => {
    expect(told("part disc\nday 2026-05-02\n  measured: disc a 9 mm wi⁞th mic25\n")).toContain("with GAUGE");
  });
});

test("a photo is shown where it is within the folder", () => {
  const line = (path: string) => told(`day 2026-05-02\n  photo: "${path}⁞" "lip"\n`);
  expect(line("photos/disc 1.png")).toContain("![lip](file:///garage/sprint/photos/disc%201.png");
  expect(line("../elsewhere.png")).not.toContain("![");
  expect(line("a) [b](command:x.png")).not.toMatch(/(?<!\\)\]\(command/);
});

test("a log's own words are text: no formatting, link, HTML or image of theirs comes through", () => {
  const shown = told(
    'part disc "**b** [l](command:x) <img src=x> `c` ![i](http://x)"\nday 2026-05-02\n  removed: di⁞sc\n',
  );
  expect(shown).toContain(
    "**\\*\\*b\\*\\* \\[l\\](command:x) \\<img src=x\\> \\`c\\` \\!\\[i\\](http://x)** `disc`",
  );
});

test("prose and comments have nothing to tell", () => {
  expect(told("part disc\nday 2026-05-02\n  The di⁞sc was dry.\n")).toBe("");
  expect(told("# a co⁞mment\npart disc\n")).toBe("");
});

test("the word that is told of is the one that is marked", () => {
  const text = undented("part front.di⁞sc\n");
  const build = marked(text);
  const range = hover(build.view, build.position)?.range;
  expect(range && seen(build, "file:///garage/sprint/log.cotter", range)).toBe("log.cotter:1 disc");
});
