import { jointsReport, jointsTable } from "../../reports/joints.ts";
import type { Command } from "../command.ts";
import { PRINTABLE_OPTIONS, print } from "../printing.ts";

export const joints: Command = {
  name: "joints",
  operands: "[PATH]",
  summary: "the torque sheet: each joint, its torque, how it locks, its state",
  options: PRINTABLE_OPTIONS,
  examples: ["cotter joints", "cotter joints samples/roadster --html > joints.html"],
  run: async (call) => {
    const { build } = await call.openBuild(call.operands[0]);
    return print(call, { report: () => jointsReport(build), table: () => jointsTable(build) });
  },
};
