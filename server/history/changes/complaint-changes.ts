/** Errors and warnings that one revision gives reason for, and the other does not. */
import type { Build } from "../../build/build.ts";
import type { Complaint } from "../../rules/complaint.ts";
import { complaintsOf } from "../../rules/complaints.ts";
import type { Change, ChangeKind } from "./change.ts";
import { change, inAfter, inBefore } from "./change.ts";

export function complaintChanges(before: Build, after: Build): Change[] {
  const [was, is] = [graveOf(before), graveOf(after)];
  return [
    ...less(is, was).map((complaint) =>
      said("complaint-added", complaint, { after: sayComplaint(complaint), at: inAfter(complaint.place) }),
    ),
    ...less(was, is).map((complaint) =>
      said("complaint-gone", complaint, { before: sayComplaint(complaint), at: inBefore(complaint.place) }),
    ),
  ];
}

function said(kind: ChangeKind, { code }: Complaint, more: Partial<Change>): Change {
  return change({ kind, ref: code, what: "build", ...more });
}

function graveOf(build: Build): readonly Complaint[] {
  return complaintsOf(build).complaints.filter(
    ({ severity }) => severity === "error" || severity === "warning",
  );
}

function sayComplaint({ severity, message }: Complaint): string {
  return `${severity}: ${message}`;
}

/** Those of one side that the other does not have, wherever they stand. */
function less(complaints: readonly Complaint[], others: readonly Complaint[]): readonly Complaint[] {
  const left = new Map<string, number>();
  const key = ({ code, message }: Complaint) => `${code} ${message}`;
  for (const other of others) left.set(key(other), (left.get(key(other)) ?? 0) + 1);
  return complaints.filter((complaint) => {
    const count = left.get(key(complaint)) ?? 0;
    left.set(key(complaint), count - 1);
    return count <= 0;
  });
}
