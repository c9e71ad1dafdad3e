/** What can be done at a place, and what the text is afterwards. */
import { describe, expect, test } from "vitest";
import type { Action } from "../../server/language-server/features/actions/action.ts";
import { actions } from "../../server/language-server/features/actions/actions.ts";
import type { MarkedBuild } from "./marked-build.ts";
import { edited, marked } from "./marked-build.ts";

function offered(
  text: string,
  only: readonly string[] = [],
): { build: MarkedBuild; found: readonly Action[] } {
  const build = marked(text);
  const { position } = build;
  return { build, found: actions(build.view, { start: position, end: position }, only) };
}

const titles = (text: string) => offered(text).found.map(({ title }) => title);

/** The files after an action. */
function done(text: string, title: string, only: readonly string[] = []): string {
  const { build, found } = offered(text, only);
  const action = found.find((each) => each.title === title);
  if (action === undefined) return `no action ${title} among ${found.map((each) => each.title).join("; ")}`;
  const { files } = build.view.build;
  return files.map((file) => edited(file.document.text, action.edits.get(file) ?? [])).join("");
}

describe("a complaint", () => {
  test("is mended as its rule says, a sure mend preferred", () => {
    const text = "part disc\nday 2026-05-02\n  rem⁞vd: disc\n".replace("rem⁞vd", "remvoe⁞d");
    const { found } = offered(text);
    expect(found[0]).toMatchObject({ title: "Write removed", kind: "quickfix", preferred: true });
    expect(done(text, "Write removed")).toBe("part disc\nday 2026-05-02\n  removed: disc\n");
    expect(done(text, "Keep the line as prose")).toBe("part disc\nday 2026-05-02\n  | remvoed: disc\n");
  });

  test("about a thing that is not there is answered by defining it", () => {
    expect(done("part disc\nday 2026-05-02\n  removed: wi⁞ng\n", "Define the part wing")).toContain(
      'part wing "Wing"\n',
    );
  });

  test("about a thing of any kind is answered by the kind that the place wants", () => {
    const defining = (line: string) =>
      titles(`part disc\nday 2026-05-02\n  ${line}\n`).filter((title) => title.startsWith("Define"));
    expect(defining("torqued: wi⁞ng 24 N.m")).toEqual(["Define the joint wing"]);
    expect(defining("done: wi⁞ng")).toEqual(["Define the job wing"]);
    // A reading may be of anything in the tree, most of which are parts; so may what was found, of a gauge too.
    expect(defining("measured: wi⁞ng bore 3 mm")).toEqual(["Define the part wing"]);
    expect(defining("found: wi⁞ng worn")).toEqual(["Define the part wing", "Define the gauge wing"]);
  });

  test("can be waived, with a reason to write", () => {
    const text = "part disc\n  limit: a max 1 mm\nday 2026-05-02\n  measured: disc a ⁞2 mm\n";
    expect(done(text, "Waive over-limit, with a reason")).toContain(
      "measured: disc a 2 mm  # waived over-limit: \n",
    );
  });

  test("about something whose failure can hurt is not waived", () => {
    const text =
      "part disc\n  safety: critical\n  limit: a max 1 mm\nday 2026-05-02\n  measured: disc a ⁞2 mm\n";
    expect(marked(text).view.complaints.map(({ code }) => code)).toContain("over-limit");
    expect(titles(text).filter((title) => title.startsWith("Waive"))).toEqual([]);
  });

  test("about the text itself is not waived", () => {
    expect(titles("part disc\n  mat⁞erail: steel\n").filter((title) => title.startsWith("Waive"))).toEqual(
      [],
    );
  });

  test("about a joint without a torque offers the line for it", () => {
    expect(done("part a\njoint bol⁞ts\n  joins: a\n  bolt: 2 x M8x30 class 8.8\n", "State its torque")).toBe(
      "part a\njoint bolts\n  joins: a\n  bolt: 2 x M8x30 class 8.8\n  torque: \n",
    );
  });
});

test("every sure mend of a file at once, for those who ask for it on saving; what is not sure stays", () => {
  const text = "⁞part disc\nday 2026-05-02\n  remvoed: disc\n  found: disc wron\n  cleened: disc\n";
  expect(done(text, "Carry out every sure mend in this file", ["source.fixAll"])).toBe(
    "part disc\nday 2026-05-02\n  removed: disc\n  found: disc worn\n  cleened: disc\n",
  );
  expect(titles(text)).not.toContain("Carry out every sure mend in this file");
});

describe("rewriting", () => {
  // 40 lbf.ft = 54.23 N.m (NIST SP 811, B.9).
  test("a value in another unit", () => {
    expect(done("joint j\nday 2026-05-02\n  torqued: j 4⁞0 lbf.ft\n", "Write 54.2 N.m")).toContain(
      "torqued: j 54.2 N.m\n",
    );
  });

  test("a line that cannot be read, as prose", () => {
    expect(done("part disc\nday 2026-05-02\n  removed: ⁞, ,\n", "Keep the line as prose")).toContain(
      "  | removed: , ,\n",
    );
  });
});

describe("writing down", () => {
  test("an order for what is needed, from where it is bought, at the end of today's day", () => {
    const text = `
      vehicle "V"
        today: 2026-05-03
      supplier northgate
      part disc "Disc"
        price: 46.00 GBP
        supplier: northgate
        count: 2
      day 2026-05-03
        decided: di⁞sc renew

      job paint
    `;
    expect(done(text, "Order 2 x disc")).toContain(
      "  decided: disc renew\n  ordered: 2 x disc at 46.00 GBP from northgate\n\njob paint",
    );
  });

  test("on a new day where there is none for today", () => {
    const text = `
      part disc
      day 2026-05-02
        snag: rub on disc
        found: disc worn "see r⁞ub"
    `;
    expect(
      done(text.replace('"see r⁞ub"', "").replace("snag: rub", "snag: r⁞ub"), "Clear the snag rub"),
    ).toContain("\n\nday 2026-06-01\n  cleared: rub");
  });

  test("the marks of all joints of an assembly that only want them", () => {
    const text = `
      vehicle "V"
        past: known
        today: 2026-05-02
      part front.disc
      joint front.bolts
        joins: front.disc
        torque: 24 N.m
        mark: yes
      joint front.studs
        joins: front.disc
        torque: 24 N.m
        mark: yes
      day 2026-05-02
        torqued: fro⁞nt 24 N.m
    `;
    expect(done(text, "Mark 2 joints of front")).toContain("  marked: front.bolts, front.studs\n");
  });
});

describe("writing down what a part is", () => {
  // ISO 15, dimension series 02: bore 20, outside 47, width 14 mm is the deep groove ball bearing 6204.
  const text = (width: string, facts = "") => `
    part hub.bearing "Hub bearing"
    part hub.seal
    day 2026-06-01
      measured: hub.bea⁞ring bore 20.00 mm
      measured: hub.bearing outside 47.00 mm
      measured: hub.bearing width ${width}
${facts}`;
  const offers = (of: string) => titles(of).filter((title) => title.includes("that it is"));

  test("is offered for each of the best that fit", () => {
    expect(offers(text("14.0 mm"))).toEqual(["Write down that it is 6204 (rolling bearing)"]);
    expect(done(text("14.0 mm"), "Write down that it is 6204 (rolling bearing)")).toContain(
      '  measured: hub.bearing width 14.0 mm\n  identified: hub.bearing as "6204"',
    );
  });

  test("names the donor that it is like", () => {
    const shaft = `
      donor van_shaft "Pryce van, \\"long\\" shaft"
        size: length 512 mm
        size: spline_diameter 24 mm
      part rear.shaft
      day 2026-06-01
        measured: rear.sha⁞ft length 512.0 mm
        measured: rear.shaft spline_diameter 24.0 mm
    `;
    const [title = ""] = offers(shaft);
    expect(done(shaft, title)).toMatch(/identified: rear\.shaft as ".*" from van_shaft\n/);
  });

  test("is not offered for what is only near, nor where it is known", () => {
    expect(offers(text("14.15 mm"))).toEqual([]);
    expect(offers(text("14.0 mm", '      identified: hub.bearing as "6204"\n'))).toEqual([]);
  });
});

test("only what is asked for is offered", () => {
  const text = "part disc\nday 2026-05-02\n  removed: wi⁞ng\n";
  expect(offered(text, ["refactor"]).found).toEqual([]);
  expect(offered(text, ["quickfix"]).found.length).toBeGreaterThan(0);
});
