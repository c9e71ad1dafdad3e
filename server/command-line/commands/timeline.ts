import { planOf } from "../../plan/plan.ts";
import { timelineReport, timelineTable } from "../../reports/timeline.ts";
import type { Command } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const timeline: Command = {
  name: "timeline",
  operands: "[PATH]",
  summary: "what happened, what is to come, and when it will be done",
  options: PRINTABLE_OPTIONS,
  examples: [
    "cotter timeline",
    "cotter timeline samples/roadster --on 2026-11-24",
    "cotter timeline --html > programme.html",
  ],
  run: async (call) => {
    const { build } = await call.openBuild(call.operands[0]);
    const plan = planOf(build);
    return print(call, {
      report: () => timelineReport(build, plan),
      table: () => timelineTable(build, plan),
      drawing: async () => {
        const [{ drawProgramme }, { programmeOf }] = await Promise.all([
          import("../../reports/programme-drawing.ts"),
          import("../../reports/programme-of.ts"),
        ]);
        return drawProgramme(programmeOf(build, plan)).join("\n");
      },
    });
  },
};
