import { checkReport } from "../../reports/check.ts";
import { printCheck } from "../../reports/check-text.ts";
import { complaintsOf } from "../../rules/complaints.ts";
import type { Command } from "../command.ts";

export const check: Command = {
  name: "check",
  operands: "[PATH]",
  summary: "everything that the log gives reason to say, line by line",
  options: [{ name: "strict", help: "warnings count as errors for the exit status" }],
  examples: ["cotter check", "cotter check samples/roadster", "cotter check --strict --json"],
  run: async ({ operands, options, out, openBuild }) => {
    const { build } = await openBuild(operands[0]);
    const { complaints } = complaintsOf(build);
    out.write(
      options.has("json")
        ? `${JSON.stringify(checkReport(complaints), undefined, 2)}\n`
        : printCheck(complaints, out),
    );
    const fatal = options.has("strict") ? ["error", "warning"] : ["error"];
    return complaints.some(({ severity }) => fatal.includes(severity)) ? 1 : 0;
  },
};
