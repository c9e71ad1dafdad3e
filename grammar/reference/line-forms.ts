/** How lines read, with a log of each form and what is refused: the page of lines, and its tests. */
import type { BadExample } from "../vocabulary/shape.ts";

export interface LineForm {
  readonly name: string;
  readonly help: string;
  readonly choice?: string;
  /** A log that reads without a complaint. */
  readonly good: string;
  /** Logs that bring one complaint each. */
  readonly bad: readonly BadExample[];
}

export const LINE_FORMS: readonly LineForm[] = [
  {
    name: "Header",
    help: "In column 0: a block word and what it defines. It starts a block, which holds the indented lines below it.",
    good: 'part front.left.disc "Brake disc"\n  count: 1\n\nday 2026-05-02 6 h',
    bad: [
      { text: 'prt front.left.disc "Brake disc"', code: "unknown-block" },
      { text: "day 2026-05-02\nThe rest of the day was spent on tea.", code: "unreadable-line" },
    ],
    choice:
      "A line that means to be a header starts a block even where its date or name cannot be read: what is below it must not fall to the block above.",
  },
  {
    name: "Record",
    help: "Indented: a word, a colon, and a space or the end of the line. A word that the block does not know is an error with the nearest word, never silently prose.",
    good: "day 2026-05-02\n  removed: front.left.hub",
    bad: [
      { text: "day 2026-05-02\n  remvoed: front.left.hub", code: "unknown-record" },
      { text: "day 2026-05-02\n  Removed: front.left.hub", code: "unknown-record" },
      { text: "day 2026-05-02\n  removed:front.left.hub", code: "unknown-record" },
      { text: "day 2026-05-02\n  removed : front.left.hub", code: "unknown-record" },
      { text: "day 2026-05-02\n  torque: 24 N.m", code: "record-not-here" },
    ],
  },
  {
    name: "Continuation",
    help: "A record whose line ends in a comma goes on with the next line, if that is indented and neither blank, a comment, a bar nor a record.",
    good: "day 2026-05-02\n  removed: front.left.hub,  # first\n    front.left.disc",
    bad: [{ text: "day 2026-05-02\n  removed: front.left.hub,\n\n  Then tea.", code: "unreadable-value" }],
  },
  {
    name: "Prose",
    help: "Any other indented line, and any that starts with `|`. It is kept word for word and never computed.",
    good: "day 2026-05-02\n  Both pins came out with a drift, the lower one was dry.\n  | note: a bar keeps even this line as prose",
    bad: [{ text: "day 2026-05-02\n  note: without the bar this is a record", code: "unknown-record" }],
  },
  {
    name: "Comment",
    help: "`#` and a space, first on a line or behind two spaces on a header or record. `#2` without the space is prose.",
    good: "# Above all\nday 2026-05-02 6 h  # a long one\n  bled: brakes.front  # all four corners\n  #2 cylinder is down on compression",
    bad: [{ text: "day 2026-05-02\n  bled: brakes.front # one space", code: "unreadable-value" }],
    choice: "A tab counts as two spaces.",
  },
  {
    name: "Waiver",
    help: "A comment `# waived CODE: reason` behind a header or record silences one complaint about it; what is waived is listed.",
    good: "day 2026-05-02\n  bled: brakes.front  # waived not-proved: proved with the rear on Sunday",
    bad: [
      { text: "day 2026-05-02\n  bled: brakes.front  # waived not-proved", code: "waiver-without-reason" },
    ],
  },
  {
    name: "Characters",
    help: "UTF-8. Lines end with CR, LF or CRLF. A byte order mark is not counted. No-break and thin spaces read as spaces but do not indent.",
    good: "day\u00a02026-05-02\n\tremoved:\u00a0front.left.hub,\u2009front.left.disc",
    bad: [{ text: "day 2026-05-02\n\u00a0removed: front.left.hub", code: "unreadable-line" }],
  },
];
