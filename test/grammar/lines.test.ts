import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import { expectMarked, faultsIn, headerOf, linesOf, log, recordIn, said, straysIn } from "./marked-log.ts";

const DAY = "day 2026-05-02\n";

/** The kind of a line under a day. */
function kindOf(line: string): string | undefined {
  return linesOf(Document.read(`${DAY}${line}`))[1];
}

describe("the kinds of lines", () => {
  it("reads a diary as a diary: header, prose and records by their colon", () => {
    const document = expectMarked(`
      day 2026-05-02 5.5 h
        Stripped the left front corner. Both pins came out with a drift, the lower one was dry.
        removed: front.left.{hub, disc}
        measured: front.left.disc thickness 9.12, 9.10, 9.14 mm with mic25

        found: front.left.balljoint play "0.5 mm at the pin, boot split"
        # not for print
        decided: front.left.balljoint renew
    `);
    expect(linesOf(document)).toEqual([
      "header day",
      "prose",
      "record removed",
      "record measured",
      "blank",
      "record found",
      "comment",
      "record decided",
    ]);
  });

  it.each([
    ["  # a comment", "comment"],
    ["# a comment in column 0", "comment"],
    ["  #", "comment"],
    ["#", "comment"],
    ["  #2 cylinder is down", "prose"],
    ["\t#\ttab behind it", "comment"],
    ["", undefined],
    ["   ", "blank"],
    ["\t \u00a0", "blank"],
    ["  Plain words", "prose"],
    ["\tTabs indent too", "prose"],
    ["  | removed: only said", "prose"],
    ["| in column 0", "prose"],
    ["  note left at the gate", "prose"],
    ["  http://somewhere", "prose"],
    ["  10:30 tea", "prose"],
    ["  (made: in the shed)", "prose"],
    ["  2: second try", "prose"],
    ["  Well: no", "prose"],
    ["  mic25: read twice", "prose"],
    ["  _odd: line", "prose"],
    ["  made bracket: two holes", "prose"],
    ["  removed: hub", "record removed"],
    ["  bled:", "record bled"],
    ["  bled:\tbrakes", "record bled"],
    ["  bled:\u00a0brakes", "record bled"],
    ["unindented", "stray"],
    ["#2 cylinder in column 0", "stray"],
    ["\u00a0no-break spaces do not indent", "stray"],
    ["\u2009thin spaces do not indent", "stray"],
    ["removed: hub", "stray"],
  ])("%j is %s", (line, kind) => {
    expect(kindOf(line)).toBe(kind);
  });
});

describe("a misspelt record is an error, never silently prose", () => {
  it("names the nearest word and offers it, and to keep the line as prose", () => {
    const [fault] = recordIn("day", "remvoed: front.left.hub").faults;
    expect(fault).toMatchObject({ code: "unknown-record", found: "remvoed", expected: "removed" });
    expect(fault?.fixes.map(({ text, sure }) => [text, sure])).toEqual([
      ["removed", true],
      ["| ", false],
    ]);
  });

  it("complains of any other word with a colon too", () => {
    expectMarked(`
      day 2026-05-02
        remvoed: front.left.hub
        ^^^^^^^ unknown-record
        sundries: two rags
        ^^^^^^^^ unknown-record
    `);
  });

  it("complains of a known word in other case, or with its colon misplaced", () => {
    expectMarked(`
      day 2026-05-02
        Removed: front.left.hub
        ^^^^^^^^ unknown-record
        REMOVED: front.left.hub
        ^^^^^^^^ unknown-record
        removed:front.left.hub
        ^^^^^^^^ unknown-record
        removed : front.left.hub
        ^^^^^^^^^ unknown-record
        Removed :front.left.hub
        ^^^^^^^^^ unknown-record
    `);
  });

  it.each([
    ["Removed: hub", "removed: hub"],
    ["removed:hub", "removed: hub"],
    ["removed :  hub", "removed: hub"],
    ["REMOVED :hub", "removed: hub"],
    ["removed\u00a0: hub", "removed: hub"],
  ])("mends %j to %j", (line, mended) => {
    const [fix] = recordIn("day", line).faults[0]?.fixes ?? [];
    const offset = "day 2026-05-02 6 h\n  ".length;
    expect(fix?.sure).toBe(true);
    expect(line.slice(0, (fix?.start ?? 0) - offset) + fix?.text + line.slice((fix?.end ?? 0) - offset)).toBe(
      mended,
    );
  });

  it("says where a word belongs that this block does not take", () => {
    const [fault] = recordIn("day", "torque: 24 N.m").faults;
    expect(fault).toMatchObject({ code: "record-not-here", expected: "it in a block of joint" });
  });
});

describe("continuation lines", () => {
  it("go on with a record that ends in a comma", () => {
    const document = expectMarked(`
      day 2026-05-02
        removed: front.left.hub,
          front.left.disc,
          front.left.caliper "all at once"
        Then tea.
    `);
    expect(linesOf(document)).toEqual(["header day", "record removed", "prose"]);
    expect(said(document.blocks[0]?.items[1] as never)).toEqual({
      what: ["front.left.hub", "front.left.disc", "front.left.caliper"],
      note: '"all at once"',
    });
  });

  it("may have comments behind the comma, and waivers on any line", () => {
    const document = expectMarked(`
      day 2026-05-02
        ordered: 1 x hub at 3.00 GBP,  # the left one
          2 x disc at 46.00 GBP,\t# waived order-late: collected
          4 x disc_nut from northgate
    `);
    const record = document.blocks[0]?.items[1];
    expect(record?.kind === "record" && record.comments.map(({ waiver }) => waiver?.code)).toEqual([
      undefined,
      "order-late",
    ]);
  });

  it("carry a set in braces across lines", () => {
    expectMarked(`
      day 2026-05-02
        removed: front.left.{hub,
          disc, caliper}
    `);
  });

  it("are none after a comma when a blank, a comment, a bar, a record or the end follows: the comma is the error", () => {
    expectMarked(`
      day 2026-05-02
        removed: front.left.hub,
                               ^ unreadable-value

        removed: front.left.hub,
                               ^ unreadable-value
        # a comment
        removed: front.left.hub,
                               ^ unreadable-value
        | a bar
        removed: front.left.hub,
                               ^ unreadable-value
        bled: brakes.front,
                          ^ unreadable-value
        Removed: front.left.hub
        ^^^^^^^^ unknown-record
        bled: brakes.front,
                          ^ unreadable-value
      # column 0
        bled: brakes.front,
                          ^ unreadable-value
      day 2026-05-03
        bled: brakes.front,
                          ^ unreadable-value
    `);
  });

  it("are not asked for by a comma inside a string, closed or not", () => {
    const document = expectMarked(`
      day 2026-05-02
        tagged: hub "left,"
        Prose.
        tagged: hub "left,
                    ^^^^^^ unclosed-string
        Prose.
    `);
    expect(linesOf(document).filter((kind) => kind === "prose")).toHaveLength(2);
  });

  it("belong to a misspelt record as well", () => {
    const document = Document.read(`${DAY}  remvoed: hub,\n    disc\n  Prose.`);
    expect(linesOf(document)).toEqual(["header day", "record remvoed", "prose"]);
  });
});

describe("comments behind a header or record", () => {
  it("need two spaces or a tab before, and a space or nothing behind", () => {
    expectMarked(`
      day 2026-05-02 6 h  # long
        bled: brakes.front  # all four
        bled: brakes.front  #
        bled: brakes.front\t# tab
        bled: brakes.front # one space
                           ^^^^^^^^^^^ unreadable-value
        bled: brakes.front  #none
                            ^^^^^ unreadable-value
    `);
  });

  it("do not start inside a string, but behind one", () => {
    expectMarked(`
      day 2026-05-02
        bled: brakes.front "until clear  # then twice"  # a comment "
        bled: brakes.front "a \\"  # still inside"
    `);
  });

  it("start behind an inch mark, which opens no string", () => {
    expectMarked(`
      day 2026-05-02
        measured: hub bore 3/8"  # as told
                              ^ unknown-unit
    `);
  });

  it("hold a waiver: a code and a reason", () => {
    const [comment] = headerOf("day 2026-05-02 9 h  # waived hours-over-day: two of us").comments;
    expect(comment?.waiver).toMatchObject({ code: "hours-over-day", reason: "two of us" });
  });

  it("complain of a waiver without its reason", () => {
    expectMarked(`
      day 2026-05-02
        bled: brakes.front  # waived not-proved
                            ^^^^^^^^^^^^^^^^^^^ waiver-without-reason
        bled: brakes.front  # waived not-proved:
                            ^^^^^^^^^^^^^^^^^^^^ waiver-without-reason
        bled: brakes.front  # waived not-proved because it leaks
                            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ waiver-without-reason
        bled: brakes.front  # waived by the scrutineer
    `);
  });
});

describe("line ends and invisible characters", () => {
  const text = log(`
    day 2026-05-02
      Prose one.
      removed: hub,
        disc
      bled:
  `);

  it.each([
    ["LF", "\n"],
    ["CRLF", "\r\n"],
    ["CR", "\r"],
  ])("reads the same lines with %s", (_, end) => {
    const document = Document.read(text.replaceAll("\n", end));
    expect(linesOf(document)).toEqual(["header day", "prose", "record removed", "record bled"]);
    expect(document.lineCount).toBe(6);
    expect(faultsIn(document)).toEqual(["5:7+0 missing-value"]);
    expect(document.text).toBe(text.replaceAll("\n", end));
  });

  it("takes off the byte order mark and does not count it", () => {
    const document = Document.read(`\ufeff${text}`);
    expect(document.text).toBe(text);
    expect(document.blocks[0]?.header?.block).toBe("day");
  });

  it("does not end a line at U+2028, U+2029 or NEL", () => {
    const document = Document.read(`${DAY}  tagged: hub "a\u2028b\u2029c\u0085d"\n  one\u2028two`);
    expect(faultsIn(document)).toEqual([]);
    expect(linesOf(document)).toEqual(["header day", "record tagged", "prose"]);
  });

  it("reads no-break and thin spaces as spaces", () => {
    const document = Document.read(
      'day\u00a02026-05-02\u202f6\u2009h\u00a0\u00a0# c\n  removed:\u00a0hub,\u2003disc\u00a0by\u00a0"JR"\n',
    );
    expect(faultsIn(document)).toEqual([]);
    expect(said(document.blocks[0]?.items[1] as never)).toEqual({ what: ["hub", "disc"], by: '"JR"' });
  });

  it("reads tabs as indentation and between values", () => {
    const document = Document.read("day\t2026-05-02\t6 h\n\tremoved:\thub,\tdisc\n\t\tProse.\n");
    expect(faultsIn(document)).toEqual([]);
  });
});

describe("lines in column 0 that start no block", () => {
  it("are errors and belong to the block above", () => {
    const document = expectMarked(`
      day 2026-05-02
        bled: brakes.front
      Then I went home, it was late.
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ unreadable-line
        bled: brakes.rear
      bled: brakes.rear
      ^^^^^^^^^^^^^^^^^ unreadable-line
    `);
    expect(document.blocks).toHaveLength(1);
  });

  it("take no records above the first block, where these belong to none", () => {
    expectMarked(`
      # The car.
        removed: front.left.hub
        ^^^^^^^ record-not-here
        Prose is welcome.
      day 2026-05-02
        removed: front.left.hub
    `);
  });

  it("may stand above the first block, as may comments and blanks", () => {
    const document = expectMarked(`
      # The car.

      Notes, before all else.
      ^^^^^^^^^^^^^^^^^^^^^^^ unreadable-line
      vehicle "Halvorsen Sprint"
    `);
    expect(document.blocks.map(({ header }) => header?.block)).toEqual([undefined, "vehicle"]);
  });

  it("offer to indent the line, and show how a known word starts a block", () => {
    const [stray] = straysIn(Document.read("day\n"));
    expect(stray?.faults[0]).toMatchObject({
      code: "unreadable-line",
      expected: "day as in: day 2026-05-02 6 h",
      fixes: [{ start: 0, end: 0, text: "  " }],
    });
  });
});
