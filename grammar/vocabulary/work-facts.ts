/** Facts about work, money and what is still to be put right. */
import { fact } from "./entry.ts";
import type { Element, RecordEntry } from "./shape.ts";
import {
  clause,
  element,
  money,
  newName,
  quantity,
  reference,
  references,
  required,
  string,
  TREE_KINDS,
} from "./shape.ts";

const JOBS: Element = element("what", references("job"));

export const WORK_FACTS: readonly RecordEntry[] = [
  fact("started", [JOBS], {
    help: "A job was begun.",
    example: "started: strip_front",
    bad: "started: strip-front",
    code: "unreadable-value",
  }),
  fact("worked", [element("hours", quantity("time"))], {
    help: "Time spent on a job.",
    example: "worked: 5 h on strip_front",
    bad: "worked: 5 h",
    code: "missing-value",
    clauses: [required("on", "on", reference("job"))],
  }),
  fact("done", [JOBS], {
    help: "A job is finished.",
    example: "done: strip_front",
    bad: "done: strip_frnt",
    code: "unknown-reference",
  }),
  fact("spent", [element("amount", money)], {
    help: "Money spent.",
    example: "spent: 12.40 GBP on front.left",
    bad: "spent: £12.40 on front.left",
    code: "unreadable-value",
    clauses: [clause("on", "on", reference(...TREE_KINDS))],
  }),
  fact("calibrated", [element("what", references("gauge"))], {
    help: "A gauge was calibrated, and for how long that holds.",
    example: "calibrated: wrench60 for 12 month by northgate",
    bad: "calibrated: wrench60 for a year",
    code: "unreadable-value",
    clauses: [clause("for", "for", quantity("time")), clause("by", "supplier", reference("supplier"))],
  }),
  fact("snag", [element("name", newName)], {
    help: "A defect to put right before the hold points that cover it.",
    example: 'snag: stiff_pedal on pedals "rubs at the pushrod"',
    bad: 'snag: stiff_pedal "rubs at the pushrod"',
    code: "missing-value",
    clauses: [required("on", "on", reference(...TREE_KINDS))],
  }),
  fact("cleared", [element("name", reference("snag"))], {
    help: "A defect was put right.",
    example: "cleared: stiff_pedal",
    bad: "cleared: stiff-pedal",
    code: "unreadable-value",
  }),
  fact("conceded", [element("name", reference("snag"))], {
    help: "A defect carried past the hold points before the one that is named, by whom and why.",
    example: 'conceded: stiff_pedal until first_run by "KT" "the box is changed before it moves"',
    bad: 'conceded: stiff_pedal until first_run by "KT"',
    code: "missing-value",
    clauses: [required("until", "until", reference("hold")), required("by", "by", string)],
    note: "required",
    choice:
      "A snag on something whose failure can hurt cannot be conceded: it stays open for every hold point that covers it.",
  }),
  fact("photo", [element("path", string)], {
    help: "A picture, of what; the string behind it is the caption.",
    example: 'photo: "photos/disc.png" of front.left.disc "lip on the outer edge"',
    bad: "photo: photos/disc.png of front.left.disc",
    code: "unreadable-value",
    clauses: [clause("of", "of", references(...TREE_KINDS))],
    choice: "One picture may be of several things.",
  }),
  fact("released", [element("what", references("hold"))], {
    help: "A hold point was verified and released; refused while anything that it needs is open.",
    example: "released: first_run",
    bad: "released: front.left",
    code: "unknown-reference",
  }),
];
