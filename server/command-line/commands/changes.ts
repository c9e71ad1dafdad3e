import { changesReport } from "../../history/changes-report.ts";
import { changesTable } from "../../history/changes-table.ts";
import { compareRevisions } from "../../history/compare-revisions.ts";
import { isGitFault, sayGitFault } from "../../history/git-fault.ts";
import type { Command } from "../command.ts";
import { Failure } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const changes: Command = {
  name: "changes",
  operands: "[FROM [TO]]",
  summary: "what changed since the last commit or between two revisions: what was altered stands out",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter changes", "cotter changes 2026-10-01 HEAD", "cotter changes main --markdown"],
  run: async (call) => {
    const [from = "HEAD", to, ...more] = call.operands;
    if (more.length > 0) throw new Failure("name two revisions at most; --build says which build");
    const comparison = await compareRevisions(await call.openFiles(), from, to);
    if (isGitFault(comparison)) throw new Failure(sayGitFault(comparison));
    return print(call, {
      report: () => changesReport(comparison),
      table: () => changesTable(comparison),
    });
  },
};
