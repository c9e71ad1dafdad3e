import { planOf } from "../../plan/plan.ts";
import { partsReport, partsTable } from "../../reports/parts.ts";
import type { Command } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const parts: Command = {
  name: "parts",
  operands: "[PATH]",
  summary: "the parts schedule: where each part is, what was decided, its measurements against limits",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter parts", "cotter parts samples/roadster --json"],
  run: async (call) => {
    const { build } = await call.openBuild(call.operands[0]);
    const plan = planOf(build);
    return print(call, { report: () => partsReport(build, plan), table: () => partsTable(build, plan) });
  },
};
