import { isGitFault, sayGitFault } from "../../history/git-fault.ts";
import type { ThingHistory } from "../../history/history-of-thing.ts";
import { historyOfThing } from "../../history/history-of-thing.ts";
import { historyReport } from "../../history/history-report.ts";
import { historyTable } from "../../history/history-table.ts";
import type { SubjectFault } from "../../history/record/subject.ts";
import { list } from "../../rules/words.ts";
import type { Command } from "../command.ts";
import { Failure } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const history: Command = {
  name: "history",
  operands: "REF",
  summary: "what the log said of one part, joint, system or reading over time, and when that was written",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter history front.left.disc", "cotter history front.left.disc.thickness --json"],
  run: async (call) => {
    const [ref, ...more] = call.operands;
    if (ref === undefined) throw new Failure("name a part, a joint, a system or a reading: front.left.disc");
    if (more.length > 0) throw new Failure("name one thing; --build says which build");
    const found = await historyOfThing(await call.openFiles(), ref);
    if ("is" in found) throw new Failure(saySubjectFault(found));
    if (isGitFault(found)) throw new Failure(sayGitFault(found));
    if (found.entries.length === 0) throw new Failure(sayNothing(ref, found));
    return print(call, { report: () => historyReport(found), table: () => historyTable(found) });
  },
};

function sayNothing(ref: string, { subject: { what } }: ThingHistory): string {
  if (what === undefined) return `the build defines no ${ref}, and no commit ever did`;
  return what === "assembly"
    ? `the log says nothing of ${ref} itself: name a part or joint below it`
    : `the log says nothing of ${ref}`;
}

function saySubjectFault(fault: SubjectFault): string {
  if (fault.is === "unreadable") return `${fault.text} is no path such as front.left.disc`;
  return `${fault.text} can be ${list(fault.candidates, "or")}: name one of them in full`;
}
