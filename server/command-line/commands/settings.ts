import { settingsReport, settingsTable } from "../../reports/settings.ts";
import type { Command } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const settings: Command = {
  name: "settings",
  operands: "[PATH]",
  summary: "the settings, wanted and as set",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter settings", "cotter settings samples/roadster --html > settings.html"],
  run: async (call) => {
    const { build } = await call.openBuild(call.operands[0]);
    return print(call, { report: () => settingsReport(build), table: () => settingsTable(build) });
  },
};
