import { costsReport, costsTable } from "../../reports/costs.ts";
import type { Command } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const costs: Command = {
  name: "costs",
  operands: "[PATH]",
  summary: "money and hours by assembly, supplier and month, against the budget",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter costs", "cotter costs samples/roadster --csv"],
  run: async (call) => {
    const { build } = await call.openBuild(call.operands[0]);
    return print(call, { report: () => costsReport(build), table: () => costsTable(build) });
  },
};
