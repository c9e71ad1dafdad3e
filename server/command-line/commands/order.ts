import { planOf } from "../../plan/plan.ts";
import { orderReport, orderTable } from "../../reports/order.ts";
import type { Command } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const order: Command = {
  name: "order",
  operands: "[PATH]",
  summary: "the parts to order: by supplier, with why, prices, carriage and the day to order by",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter order", "cotter order samples/roadster --markdown", "cotter order --json"],
  run: async (call) => {
    const { build } = await call.openBuild(call.operands[0]);
    const plan = planOf(build);
    return print(call, { report: () => orderReport(build, plan), table: () => orderTable(build, plan) });
  },
};
