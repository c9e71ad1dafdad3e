import { livesReport, livesTable } from "../../reports/lives.ts";
import type { Command } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const lives: Command = {
  name: "lives",
  operands: "[PATH]",
  summary: "lifed items: what ends, when, and what is due",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter lives", "cotter lives samples/roadster --html > lives.html"],
  run: async (call) => {
    const { build } = await call.openBuild(call.operands[0]);
    return print(call, { report: () => livesReport(build), table: () => livesTable(build) });
  },
};
