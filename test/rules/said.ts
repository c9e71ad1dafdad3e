import { complaintsOf } from "../../server/rules/complaints.ts";
import { readLogs } from "./read-log.ts";

/** What is said of a log behind a vehicle of which nothing is in doubt, in the order of the text, but for the cautions of a day's work. */
export function said(log: string): readonly string[] {
  const text = log.startsWith("vehicle")
    ? log
    : `vehicle "Example"\n  past: known\n${/^\w+:/.test(log) ? "  " : "\n"}${log}`;
  const { complaints } = complaintsOf(readLogs([{ path: "log.cotter", text }]));
  return complaints
    .filter(({ code }) => code !== "safety-caution")
    .map(({ severity, code, message }) => `${severity} ${code}: ${message}`);
}
