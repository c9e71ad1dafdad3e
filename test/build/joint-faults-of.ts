import { Document } from "../../grammar/document.ts";
import { readBuild } from "../../server/build/build.ts";
import type { JointFault } from "../../server/build/joint-faults.ts";
import { faultsOf } from "../../server/build/joint-faults.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";

/** What is wrong with a joint of these records that holds one part of those. */
export function jointFaults(records: string, part = "", title = "Bracket"): readonly JointFault[] {
  const indented = (lines: string) => lines.replace(/^(?=.)/gm, "  ");
  const text = `vehicle "Example"\n\npart bracket "Bracket"\n${indented(part)}\n\njoint bolts "${title}"\n  joins: bracket\n${indented(records)}\n`;
  const files = [{ path: "log.cotter", document: Document.read(text) }];
  const { standing } = readBuild(files, { clock: "2026-06-01" as IsoDate });
  const joint = standing.gathered.tree.at("bolts");
  if (joint === undefined) throw new Error("the joint was not read");
  return faultsOf(standing, joint);
}
