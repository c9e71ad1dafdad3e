import { nearest } from "../../../grammar/nearest.ts";
import { outstandingReport, outstandingTable } from "../../reports/outstanding.ts";
import { complaintsOf } from "../../rules/complaints.ts";
import type { Command } from "../command.ts";
import { Failure } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const outstanding: Command = {
  name: "outstanding",
  operands: "[HOLD]",
  summary: "what is still open before each hold point, or before one",
  options: PRINTABLE_OPTIONS,
  examples: [
    "cotter outstanding",
    "cotter outstanding first_run --build samples/roadster",
    "cotter outstanding --json",
  ],
  run: async (call) => {
    const [name] = call.operands;
    const { build } = await call.openBuild();
    const { waived } = complaintsOf(build);
    const hold = name === undefined ? undefined : build.standing.names.named("hold", name);
    if (name !== undefined && hold === undefined) {
      const names = [...build.standing.names.every("hold")].map((definition) => definition.name);
      const near = nearest(name, names, 1)[0] ?? names.join(", ");
      throw new Failure(`there is no hold point ${name}${near === "" ? "" : `; there is ${near}`}`);
    }
    const report = outstandingReport(build, waived, hold);
    await print(call, { report: () => report, table: () => outstandingTable(build, waived, hold) });
    return report.holds.some(({ open }) => open.length > 0) ? 1 : 0;
  },
};
